#include "press/identification.h"

#include <algorithm>

#include "base/text.h"
#include "demo_job.h"

using namespace backmark;
using namespace backmark::press;
using words::Audience;

TEST_CASE("an identification sheet has the fields of Object ID and nothing private") {
  const model::Show& show = demo_printing().show;
  PressJob job = demo_printing().job(Audience::insurer);
  job.only = "Lender 2";
  const auto printed = print_identification(job);
  REQUIRE(printed);
  const std::string paper = flattened(text_in(printed->files[0].bytes));
  if (paper.empty()) {
    return;
  }
  // Object ID, ICOM: the fields, from memory.
  for (const char* field :
       {"Type of object", "Measurements", "Materials", "Techniques", "Inscriptions and marks",
        "Distinguishing features", "Title", "Subject", "Date or period", "Maker",
        "Object number", "Related objects"}) {
    CHECK_MESSAGE(contains(paper, field), field);
  }
  CHECK(not_found_in(paper, printed->facts).empty());
  CHECK(leaks(paper, private_texts(show, Audience::insurer), "identification").empty());
  CHECK_FALSE(contains(paper, "EUR"));
  CHECK_FALSE(contains(paper, "Agnes Rudd"));
}

TEST_CASE("every piece with a loan has one sheet") {
  const model::Show& show = demo_printing().show;
  PressJob job = demo_printing().job(Audience::registrar);
  job.only = "Lender 2";
  const auto printed = print_identification(job);
  REQUIRE(printed);
  const auto own = std::count_if(
      show.all<model::Loan>().begin(), show.all<model::Loan>().end(),
      [&](const model::Loan& loan) { return show.find(loan.lender)->code == "Lender 2"; });
  const std::string paper = flattened(text_in(printed->files[0].bytes));
  if (!paper.empty()) {
    CHECK(contains(paper, fmt::format("{} of {}", own, own)));
    CHECK_FALSE(contains(paper, fmt::format("of {}", own + 1)));
  }
}

TEST_CASE("a missing view is found and the sheet still comes out") {
  PressJob job = demo_printing().job(Audience::registrar);
  job.only = "Lender 2";
  job.photograph = [](const model::Photograph&) {
    return Result<std::string>(Problem{Fault::not_found, "there is no such file", "", ""});
  };
  const auto printed = print_identification(job);
  REQUIRE(printed);
  CHECK(std::count_if(printed->findings.begin(), printed->findings.end(),
                      [](const Problem& one) { return contains(one.where, "photograph"); }) >
        5);
}

TEST_CASE("the sheet is not for the public, the printer or a courier") {
  for (const Audience audience : {Audience::public_, Audience::printer, Audience::courier}) {
    const auto printed = print_identification(demo_printing().job(audience));
    REQUIRE_FALSE(printed);
    CHECK(printed.problem().fault == Fault::refused);
  }
}
