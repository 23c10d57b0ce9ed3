#include "press/checklist.h"

#include "base/text.h"
#include "demo_job.h"
#include "press/sheet.h"

using namespace backmark;
using namespace backmark::press;
using words::Audience;

TEST_CASE("the checklist's table has a line for each piece of the show, in its order") {
  const auto printed = print_checklist(demo_printing().job(Audience::public_));
  REQUIRE(printed);
  const words::Numbering numbering(demo_printing().show);
  std::size_t shown = 0;
  for (const words::Place& place : numbering.places()) {
    shown += place.pick->in_show ? 1 : 0;
  }
  const auto lines = split(printed->files[1].bytes, "\r\n");
  CHECK(lines.size() == shown + 2);  // heads before, nothing after the last line end
  long last = 0;
  for (std::size_t at = 1; at + 1 < lines.size(); ++at) {
    const auto number = to_whole(split(lines[at], ",").front());
    REQUIRE(number);
    CHECK(*number > last);
    last = *number;
  }
}

TEST_CASE("a courier's checklist has numbers and titles and no more") {
  const auto printed = print_checklist(demo_printing().job(Audience::courier));
  REQUIRE(printed);
  for (const PrintedFact& fact : printed->facts) {
    CHECK(fact.kind <= words::FactKind::title);
  }
}

TEST_CASE("a lender's checklist has the lender's own pieces, in all their words") {
  const DemoPrinting& demo = demo_printing();
  PressJob job = demo.job(Audience::lender);
  job.only = "Lender 2";
  const auto printed = print_checklist(job);
  REQUIRE(printed);
  bool worded = false;
  for (const PrintedFact& fact : printed->facts) {
    const model::Piece* piece = demo.show.piece(fact.piece);
    REQUIRE(piece != nullptr);
    CHECK(demo.show.find(piece->lender)->code == "Lender 2");
    worded = worded || fact.kind == words::FactKind::materials;
  }
  CHECK(worded);
  job.only = "Lender 99";
  const auto none = print_checklist(job);
  REQUIRE(!none);
  CHECK(none.problem().what == "no piece of \"Lender 99\" is in the show");
}

TEST_CASE("a photograph that cannot be read is a finding with its name; the paper comes out") {
  PressJob job = demo_printing().job(Audience::public_);
  job.photograph = [](const model::Photograph&) { return Result<std::string>("no picture"); };
  const auto printed = print_checklist(job);
  REQUIRE(printed);
  REQUIRE_FALSE(printed->findings.empty());
  CHECK(contains(printed->findings[0].where, "photograph ES-"));
}

TEST_CASE("a common ratio is the largest at which every picture fits") {
  const model::Photograph tall{.pixels_per_mm = 10, .width_px = 200, .height_px = 700};
  const model::Photograph small{.pixels_per_mm = 10, .width_px = 100, .height_px = 100};
  CHECK(common_ratio({&small, nullptr}, {18, 18}) == 1);
  CHECK(common_ratio({&small, &tall}, {18, 18}) == doctest::Approx(1.0 / 4));
}
