#include "press/condition.h"

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
