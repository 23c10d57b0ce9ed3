#include "press/loans.h"

#include <algorithm>

#include "base/text.h"
#include "demo_job.h"

using namespace backmark;
using namespace backmark::press;
using words::Audience;

TEST_CASE("a loan schedule is for registrar, insurer, curator and the lender alone") {
  for (const Audience audience :
       {Audience::public_, Audience::printer, Audience::designer, Audience::courier}) {
    const auto printed = print_loans(demo_printing().job(audience));
    REQUIRE_FALSE(printed);
    CHECK(printed.problem().fault == Fault::refused);
  }
  CHECK_FALSE(print_loans(demo_printing().job(Audience::lender)));
}

TEST_CASE("the schedule has every loan with its days, and the table as many rows") {
  const auto printed = print_loans(demo_printing().job(Audience::registrar));
  REQUIRE(printed);
  const model::Show& show = demo_printing().show;
  const auto rows = split(printed->files[1].bytes, "\r\n").size() - 2;
  CHECK(rows == show.all<model::Loan>().size());
  const std::string paper = flattened(text_in(printed->files[0].bytes));
  if (paper.empty()) {
    return;
  }
  CHECK(not_found_in(paper, printed->facts).empty());
  for (const model::Loan& loan : show.all<model::Loan>()) {
    const std::string number = show.find(loan.piece)->number;
    CHECK_MESSAGE(contains(paper, number), number);
  }
  CHECK(contains(paper, "17 May 2027"));
  CHECK(contains(paper, "insured by the Harbour Museum"));
}

TEST_CASE("a lender's schedule names no other lender, and the insurer's no owner") {
  const model::Show& show = demo_printing().show;
  PressJob own = demo_printing().job(Audience::lender);
  own.only = "Lender 2";
  const auto lender = print_loans(own);
  REQUIRE(lender);
  const std::string mine = flattened(text_in(lender->files[0].bytes));
  const auto insurer = print_loans(demo_printing().job(Audience::insurer));
  REQUIRE(insurer);
  const std::string codes = flattened(text_in(insurer->files[0].bytes));
  if (mine.empty() || codes.empty()) {
    return;
  }
  CHECK(contains(mine, "Agnes Rudd"));
  CHECK_FALSE(contains(mine, "Josse Lamb"));
  for (const model::Lender& one : show.all<model::Lender>()) {
    const bool there = contains(mine + lender->files[1].bytes, one.code + " ·");
    CHECK_MESSAGE(there == (one.code == "Lender 2"), one.code);
  }
  CHECK(leaks(codes, private_texts(show, Audience::insurer), "loans").empty());
  CHECK(
      leaks(insurer->files[1].bytes, private_texts(show, Audience::insurer), "loans").empty());
  CHECK(contains(codes, "EUR"));
}

TEST_CASE("a loan to be back before it ends is found") {
  const model::Show& show = demo_printing().show;
  const auto printed = print_loans(demo_printing().job(Audience::registrar));
  REQUIRE(printed);
  const auto early =
      std::count_if(show.all<model::Loan>().begin(), show.all<model::Loan>().end(),
                    [](const model::Loan& loan) { return loan.return_by < loan.to; });
  const auto found = std::count_if(
      printed->findings.begin(), printed->findings.end(),
      [](const Problem& one) { return contains(one.what, "before its loan ends"); });
  CHECK(early > 0);
  CHECK(found == early);
}

TEST_CASE("no loans at all, or of a lender nobody knows, is one clear message") {
  PressJob job = demo_printing().job(Audience::registrar);
  job.only = "Lender 99";
  const auto printed = print_loans(job);
  REQUIRE_FALSE(printed);
  CHECK(printed.problem().fault == Fault::not_found);
  CHECK(printed.problem().what == "no loan of \"Lender 99\" is on record");
}
