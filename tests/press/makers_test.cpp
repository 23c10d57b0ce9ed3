#include "press/makers.h"

#include <algorithm>
#include <set>

#include "base/text.h"
#include "demo_job.h"
#include "press/book/kinds.h"
#include "press/chronology.h"

using namespace backmark;
using namespace backmark::press;

namespace {

BookMakers makers() {
  const DemoPrinting& demo = demo_printing();
  const PressJob job = demo.job(words::Audience::public_);
  static const words::Grammar grammar(demo.show, demo.beliefs, demo.phrases);
  return makers_of(job, grammar, {{1930}, {1990}});
}

const MakerPage* page_of(const BookMakers& all, std::string_view key) {
  const auto at = std::find_if(all.makers.begin(), all.makers.end(),
                               [&](const MakerPage& one) { return one.maker->key == key; });
  return at == all.makers.end() ? nullptr : &*at;
}

}  // namespace

TEST_CASE("a maker's marks are the legends of that maker, each legend and outline once") {
  const BookMakers all = makers();
  const MakerPage* oskeld = page_of(all, "oskeld");
  REQUIRE(oskeld != nullptr);
  std::set<std::pair<std::string, std::string>> seen;
  for (const StruckMark& mark : oskeld->marks) {
    CHECK((contains(mark.legend, "OSKELD") || mark.legend == "M·O"));
    CHECK(seen.emplace(mark.legend, mark.outline).second);
    CHECK_FALSE(mark.places.empty());
  }
  CHECK(seen.size() >= 2);  // the stamp grew shorter
}

TEST_CASE("every mark read on a piece of the book stands with its maker or with the others") {
  const DemoPrinting& demo = demo_printing();
  const BookMakers all = makers();
  std::size_t printed = 0;
  const auto count = [&printed](const std::vector<StruckMark>& marks) {
    for (const StruckMark& mark : marks) {
      printed += mark.places.size();
    }
  };
  for (const MakerPage& maker : all.makers) {
    count(maker.marks);
  }
  count(all.others);
  std::set<std::tuple<int, std::string, std::uint32_t>> expected;  // straight from the record
  for (const model::Pick& pick : demo.show.all<model::Pick>()) {
    for (const model::Mark& mark : demo.show.marks_of(pick.piece)) {
      const auto& known = demo.show.all<model::Maker>();
      const bool signed_so =
          std::any_of(known.begin(), known.end(),
                      [&](const model::Maker& maker) { return maker.mark == mark.text; });
      if (mark.kind == model::MarkKind::engraving && !signed_so) {
        continue;  // a year, a dedication
      }
      if (pick.in_book && mark.seen == model::Seen::value && !mark.text.empty()) {
        expected.emplace(pick.piece.value, without_brackets(mark.text), mark.outline.value);
      }
    }
  }
  CHECK(printed == expected.size());
}

TEST_CASE("of a living maker nobody asked, only the name and the pieces are told") {
  const DemoPrinting& usual = demo_printing();
  model::Show show = show_of(usual.demo);
  show.all<model::Permission>().clear();
  show.settle();
  PressJob job = usual.job(words::Audience::public_);
  const PressJob silent{show,           job.beliefs,  job.phrases, job.fonts,
                        job.photograph, job.audience, job.day};
  const words::Grammar grammar(show, usual.beliefs, usual.phrases);
  const BookMakers all = makers_of(silent, grammar, {{1930}, {1990}});
  std::size_t living = 0;
  for (const MakerPage& maker : all.makers) {
    living += maker.maker->living ? 1 : 0;
    CHECK(maker.tell_prose != maker.maker->living);
    CHECK(maker.tell_years != maker.maker->living);
    CHECK((!maker.maker->living || maker.at_work.empty()));
  }
  CHECK(living > 0);
  CHECK(all.findings.size() == living);
}

TEST_CASE("a mark on one piece of a certain year was seen in that year alone") {
  const model::YearBelief year{{{1950}, {1959}}, {0, 0, 0, 1, 0, 0, 0, 0, 0, 0}};
  CHECK(seen_in({&year}, {{1940}, {1970}}) == YearSpan{{1953}, {1953}});
  CHECK_FALSE(seen_in({}, {{1940}, {1970}}).has_value());
}

TEST_CASE("a piece's number in an essay leads to its entry") {
  PressJob job = demo_printing().job(words::Audience::public_);
  const words::Grammar grammar(job.show, job.beliefs, job.phrases);
  const auto& places = grammar.numbering().places();
  const auto in_book = std::find_if(places.begin(), places.end(),
                                    [](const words::Place& one) { return one.pick->in_book; });
  REQUIRE(in_book != places.end());
  const std::string number = in_book->piece->number;
  job.texts = {{"essays/1.md", "# One\n\n*A. B.*\n\nSee [#" + number + "] there.\n"}};
  const auto plan = book::plan_book(job);
  REQUIRE(plan);
  book::Layout layout(**plan);
  layout.begin_pass();
  book::lay_essays(layout);
  std::size_t links = 0;
  for (const auto& page : layout.pages()) {
    for (const book::Link& link : page->links) {
      links += link.name == "piece " + number ? 1 : 0;
      CHECK(link.box.width > 0);
    }
  }
  CHECK(links == 1);
}
