#include "press/makers.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/text.h"
#include "model/answers.h"
#include "press/chronology.h"
#include "words/maker_phrase.h"
#include "words/seen.h"

namespace backmark::press {

namespace {

constexpr int named_row = 1;  // rows of the table of makers
constexpr int either_row = 4;
constexpr int possibly_row = 6;

// Legends, brackets off, to the maker who struck them.
std::map<std::string, std::int32_t> makers_by_legend(const model::Show& show) {
  std::map<std::string, std::int32_t> makers;
  for (const model::Maker& maker : show.all<model::Maker>()) {
    if (!maker.mark.empty()) {
      makers.emplace(without_brackets(maker.mark), maker.id.value);
    }
  }
  for (const model::Lineage& lineage : show.all<model::Lineage>()) {
    for (const model::Word variant : lineage.variants) {
      if (lineage.maker.value != 0) {
        makers.emplace(without_brackets(show.text(variant)), lineage.maker.value);
      }
    }
  }
  return makers;
}

struct Leave {
  bool years = true;
  bool prose = true;
  bool asked = true;
};

Leave leave_of(const model::Answers& answers, const model::Maker& maker) {
  if (!maker.living) {
    return {};
  }
  const auto* answer = answers.on(maker.id.value, model::Use::print);
  if (answer == nullptr) {
    return {false, false, false};
  }
  const bool given = answer->leave == model::Leave::given;
  return {given && (answer->terms.empty() || contains(answer->terms, "years")),
          given && (answer->terms.empty() || contains(answer->terms, "text")), true};
}

// Titles of papers and books that speak of makers, by the maker's id.
std::map<std::int32_t, std::vector<std::string>> documents_of(const model::Show& show) {
  std::map<std::int32_t, std::vector<std::string>> titles;
  std::set<std::pair<std::int32_t, std::int32_t>> seen;
  for (const model::Claim& claim : show.all<model::Claim>()) {
    const model::Source* source = show.find(claim.source);
    if (claim.about == model::About::maker && source != nullptr &&
        (source->kind == model::SourceKind::document ||
         source->kind == model::SourceKind::publication) &&
        seen.emplace(claim.subject, source->id.value).second) {
      titles[claim.subject].push_back(source->title);
    }
  }
  return titles;
}

class Gathering {
 public:
  Gathering(const PressJob& job, const words::Grammar& grammar, YearSpan span)
      : job_(job),
        grammar_(grammar),
        span_(span),
        legends_(makers_by_legend(job.show)),
        documents_(documents_of(job.show)),
        answers_(job.show) {}

  BookMakers all() {
    for (const words::Place& place : grammar_.numbering().places()) {
      if (place.pick->in_book) {
        add_hand(place);
        add_marks(place);
      }
    }
    for (const model::Maker& maker : job_.show.all<model::Maker>()) {
      close(maker);
    }
    std::stable_sort(book_.makers.begin(), book_.makers.end(),
                     [](const MakerPage& a, const MakerPage& b) {
                       return a.maker->inverted < b.maker->inverted;
                     });
    book_.others = marks_of(0);
    return std::move(book_);
  }

 private:
  struct MarkKey {
    std::int32_t maker;
    std::string legend;
    std::string outline;
    auto operator<=>(const MarkKey&) const = default;
  };

  void add_hand(const words::Place& place) {
    const model::Phrases& phrases = grammar_.phrases_of(place.piece->id);
    const auto claimed = words::claimed_makers(job_.show, phrases.maker);
    for (const model::Id<model::Maker> maker : claimed.makers) {
      MakerPage& page = pages_[maker.value];
      const bool named = claimed.row == named_row || claimed.row == either_row;
      (named                         ? page.named
       : claimed.row == possibly_row ? page.possible
                                     : page.attributed)
          .push_back(&place);
    }
    if (starts_with(phrases.maker, "unrecorded maker")) {
      unrecorded(phrases.place).places.push_back(&place);
    }
    const model::PieceBelief* belief = job_.beliefs.of(place.piece->id);
    if (belief != nullptr && belief->dated && !belief->maker.makers.empty() &&
        belief->maker.makers.front().p >= 0.5) {
      pages_[belief->maker.makers.front().maker.value].middles.push_back(belief->year.at(0.5));
    }
  }
  UnrecordedHands& unrecorded(const std::string& place) {
    auto at = std::find_if(book_.unrecorded.begin(), book_.unrecorded.end(),
                           [&](const UnrecordedHands& one) { return one.place == place; });
    if (at == book_.unrecorded.end()) {
      at = book_.unrecorded.insert(at, {place, {}});
    }
    return *at;
  }
  void add_marks(const words::Place& place) {
    bool first = true;  // the one its picture shows
    for (const model::Mark& mark : job_.show.marks_of(place.piece->id)) {
      const std::string legend = without_brackets(mark.text);
      const auto maker = legends_.find(legend);
      const bool inscription =
          mark.kind == model::MarkKind::engraving && maker == legends_.end();
      if (mark.seen != model::Seen::value || legend.empty() || inscription) {
        continue;
      }
      StruckMark& struck = marks_[{maker == legends_.end() ? 0 : maker->second, legend,
                                   std::string(job_.show.text(mark.outline))}];
      struck.legend = legend;
      struck.outline = job_.show.text(mark.outline);
      if (struck.places.empty() || struck.places.back() != &place) {
        struck.places.push_back(&place);
      }
      if (struck.photograph == nullptr && first) {
        struck.photograph = photograph_of(job_.show, place.piece->id, model::View::mark);
      }
      first = false;
    }
  }
  void finish(StruckMark& mark) const {
    std::vector<const model::YearBelief*> years;
    for (const words::Place* place : mark.places) {
      const model::PieceBelief* belief = job_.beliefs.of(place->piece->id);
      if (belief != nullptr && belief->dated && !belief->year.empty()) {
        years.push_back(&belief->year);
      }
    }
    mark.years = seen_in(years, span_);
  }
  std::vector<StruckMark> marks_of(std::int32_t maker) {
    std::vector<StruckMark> marks;
    for (auto at = marks_.lower_bound({maker, "", ""});
         at != marks_.end() && at->first.maker == maker; ++at) {
      finish(at->second);
      marks.push_back(at->second);
    }
    by_years(marks);
    return marks;
  }
  static void by_years(std::vector<StruckMark>& marks) {
    std::stable_sort(marks.begin(), marks.end(), [](const StruckMark& a, const StruckMark& b) {
      return (a.years ? a.years->first.value : 9999) < (b.years ? b.years->first.value : 9999);
    });
  }
  void close(const model::Maker& maker) {
    MakerPage page = std::move(pages_[maker.id.value]);
    page.marks = marks_of(maker.id.value);
    const bool told = !page.named.empty() || !page.attributed.empty() ||
                      !page.possible.empty() || !page.marks.empty();
    if (!told || maker.kind == model::MakerKind::unrecorded) {
      return;
    }
    page.maker = &maker;
    const Leave leave = leave_of(answers_, maker);
    if (!leave.asked) {
      book_.findings.push_back(
          {Fault::conflict, maker.name + " is living and was not asked what may be printed",
           "the makers of the book", "ask, and record the answer; only the name is printed"});
    }
    page.tell_years = leave.years;
    page.tell_prose = leave.prose;
    if (leave.years) {
      page.at_work = at_work(maker, span_);
    }
    if (leave.prose) {
      page.documents = documents_[maker.id.value];
    }
    std::sort(page.middles.begin(), page.middles.end());
    book_.makers.push_back(std::move(page));
  }

  const PressJob& job_;
  const words::Grammar& grammar_;
  YearSpan span_;
  std::map<std::string, std::int32_t> legends_;
  std::map<std::int32_t, std::vector<std::string>> documents_;
  model::Answers answers_;
  std::map<std::int32_t, MakerPage> pages_;
  std::map<MarkKey, StruckMark> marks_;
  BookMakers book_;
};

}  // namespace

std::string without_brackets(std::string_view legend) {
  return replace_all(replace_all(std::string(legend), "[", ""), "]", "");
}

BookMakers makers_of(const PressJob& job, const words::Grammar& grammar, YearSpan span) {
  return Gathering(job, grammar, span).all();
}

}  // namespace backmark::press
