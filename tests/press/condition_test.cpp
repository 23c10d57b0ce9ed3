#include "press/condition.h"

#include <algorithm>

#include "base/text.h"
#include "demo_job.h"

using namespace backmark;
using namespace backmark::press;
using words::Audience;

TEST_CASE("conditions are refused to whoever may not see them") {
  for (const Audience audience :
       {Audience::public_, Audience::printer, Audience::courier, Audience::insurer}) {
    const auto printed = print_condition(demo_printing().job(audience));
    REQUIRE_FALSE(printed);
    CHECK(printed.problem().fault == Fault::refused);
  }
}

TEST_CASE("a lender's condition sheets are of own pieces, and carry earlier findings over") {
  PressJob job = demo_printing().job(Audience::lender);
  job.only = "Lender 2";
  const auto printed = print_condition(job);
  REQUIRE(printed);
  const std::string paper = text_in(printed->files[0].bytes);
  if (paper.empty()) {
    return;
  }
  CHECK(not_found_in(paper, printed->facts).empty());
  std::size_t own = 0;
  const words::Numbering numbering(job.show);
  for (const words::Place& place : numbering.places()) {
    const model::Lender* lender = job.show.find(place.piece->lender);
    if (!place.pick->in_show) {
      continue;
    }
    const bool mine = lender != nullptr && lender->code == "Lender 2";
    own += mine ? 1 : 0;
    CHECK_MESSAGE(contains(flattened(paper), "· " + place.piece->number + " ·") == mine,
                  place.piece->number);
    for (const model::Condition& state : job.show.all<model::Condition>()) {
      if (mine && state.piece == place.piece->id) {
        CHECK(contains(flattened(paper), flattened(day_text(state.day))));
      }
    }
  }
  CHECK(contains(flattened(paper), fmt::format("1 of {}", own)));
}

TEST_CASE("a condition sheet is drawn in lines, so that it is small and can be drawn upon") {
  PressJob job = demo_printing().job(Audience::registrar);
  const auto printed = print_condition(job);
  REQUIRE(printed);
  // No picture at all is in the file: outlines only.
  CHECK_FALSE(contains(printed->files[0].bytes, "/Subtype /Image"));
}

TEST_CASE("a piece with more findings than rows has a second sheet") {
  model::Show show = show_of(demo_printing().demo);
  PressJob job{show,
               demo_printing().beliefs,
               demo_printing().phrases,
               demo_printing().fonts,
               demo_printing().job(Audience::registrar).photograph,
               Audience::registrar,
               22'341};
  const words::Numbering numbering(show);
  const auto shown =
      std::find_if(numbering.places().begin(), numbering.places().end(),
                   [](const words::Place& place) { return place.pick->in_show; });
  const model::Piece piece = *shown->piece;
  model::Change change(show, "note", "many findings");
  for (int i = 0; i < 8; ++i) {
    change.add(model::Condition{.piece = piece.id,
                                .part = change.word("ornament"),
                                .state = change.word("scratched"),
                                .text = fmt::format("scratch {}", i),
                                .x_mm = 8.0 * i - 30,
                                .day = 20'000});
  }
  for (const std::string& word : change.new_words()) {
    show.pool.take(word);
  }
  auto records = change.added();
  for (const model::Condition& state : std::get<std::vector<model::Condition>>(records)) {
    show.all<model::Condition>().push_back(state);
  }
  show.settle();
  const auto printed = print_condition(job);
  REQUIRE(printed);
  const std::string paper = flattened(text_in(printed->files[0].bytes));
  if (!paper.empty()) {
    for (int i = 0; i < 8; ++i) {
      CHECK(contains(paper, fmt::format("scratch {}", i)));
    }
  }
}
