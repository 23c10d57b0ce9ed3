#include "press/values.h"

#include "base/text.h"
#include "demo_job.h"
#include "press/table.h"

using namespace backmark;
using namespace backmark::press;
using words::Audience;
using Kind = TableLine::Kind;

TEST_CASE("money is written with its minor units, as ISO 4217 has them") {
  CHECK(money_text({124'000, "EUR"}) == "1,240.00");
  CHECK(money_text({5, "EUR"}) == "0.05");
  CHECK(money_text({123'456'789, "EUR"}) == "1,234,567.89");
  CHECK(money_text({1240, "JPY"}) == "1,240");
  CHECK(totals_text({{"EUR", 100}, {"USD", 250}}) == "EUR 1.00, USD 2.50");
}

TEST_CASE("values are refused to whoever may not see them") {
  for (const Audience audience :
       {Audience::public_, Audience::printer, Audience::designer, Audience::courier}) {
    const auto printed = print_values(demo_printing().job(audience));
    REQUIRE_FALSE(printed);
    CHECK(printed.problem().fault == Fault::refused);
  }
  CHECK_FALSE(print_values(demo_printing().job(Audience::lender)));
}

TEST_CASE("a lender's schedule has the lender's own pieces and nobody else's name") {
  PressJob job = demo_printing().job(Audience::lender);
  job.only = "Lender 2";
  const auto printed = print_values(job);
  REQUIRE(printed);
  const std::string& table = printed->files[1].bytes;
  for (const model::Lender& lender : job.show.all<model::Lender>()) {
    CHECK_MESSAGE(contains(table, lender.code + " ·") == (lender.code == "Lender 2"),
                  lender.code);
  }
}

TEST_CASE("the insurer sees codes, the registrar names") {
  const auto insurer = print_values(demo_printing().job(Audience::insurer));
  const auto registrar = print_values(demo_printing().job(Audience::registrar));
  REQUIRE(insurer);
  REQUIRE(registrar);
  CHECK_FALSE(contains(insurer->files[1].bytes, "Agnes Rudd"));
  CHECK(contains(registrar->files[1].bytes, "Agnes Rudd"));
}

TEST_CASE("the sum on the paper is the sum of the table's rows") {
  const auto printed = print_values(demo_printing().job(Audience::registrar));
  REQUIRE(printed);
  // Reckoned here from the table, not by the code that printed the total.
  std::int64_t cents = 0;
  const auto lines = split(printed->files[1].bytes, "\r\n");
  for (std::size_t at = 1; at + 1 < lines.size(); ++at) {
    const auto from = lines[at].find(",EUR,");
    if (from != std::string_view::npos) {
      const auto figure = split(lines[at].substr(from + 5), ",").front();
      cents += *to_whole(split(figure, ".")[0]) * 100 + *to_whole(split(figure, ".")[1]);
    }
  }
  CHECK(cents > 0);
  const std::string paper = text_in(printed->files[0].bytes);
  if (!paper.empty()) {
    CHECK(contains(paper, "Together, by both routes EUR " + money_text({cents, "EUR"})));
    CHECK(contains(paper, "No appraisal."));
  }
}

TEST_CASE("no group head stands alone, small groups stay whole, a sum takes a row along") {
  const TableLine group{Kind::group, {"g"}};
  const TableLine row{Kind::row, {"r"}};
  const TableLine sum{Kind::sum, {"s"}};
  // Room for 6: a group of 3 with sum (5.5) fits once; the next begins a page.
  const std::vector<TableLine> lines{group, row, row, row, sum, group, row, row, row, sum};
  CHECK(page_starts(lines, 6) == std::vector<std::size_t>{0, 5});
  const std::vector<TableLine> plain{row, row, row, row, sum};
  CHECK(page_starts(plain, 4) == std::vector<std::size_t>{0, 2});  // not a last row alone
  CHECK(page_starts({}, 4).empty());
  // A group that runs over says its head again: of room for 6, four and a half are left.
  const std::vector<TableLine> longer{group, row, row, row, row, row, row, row, row, row};
  CHECK(page_starts(longer, 6) == std::vector<std::size_t>{0, 5, 8});
}

TEST_CASE("one piece is a piece, in the sums too") {
  PressJob job = demo_printing().job(Audience::registrar);
  bool alone = false;
  for (int code = 1; code <= 16; ++code) {
    job.only = fmt::format("Lender {}", code);
    const auto printed = print_values(job);
    const std::string text = printed ? text_in(printed->files.front().bytes) : "";
    CHECK_FALSE(contains(text, ", 1 pieces"));
    alone =
        alone || text.empty() || contains(text, ", 1 piece\n") || contains(text, ", 1 piece ");
  }
  CHECK(alone);
}

TEST_CASE("a page that goes on with a group names it again") {
  const PressJob job = demo_printing().job(Audience::registrar);
  const std::string text = text_in(print_values(job)->files.front().bytes);
  CHECK((text.empty() || contains(text, ", continued")));
}

TEST_CASE("a cell that wraps makes its row higher and loses no word") {
  const PressJob job = demo_printing().job(Audience::registrar);
  Sheets sheets(job, {"Trial", ""});
  const std::string text = "one two three four five six seven eight nine ten";
  add_table(sheets, job, {{"", 30, draw::Align::left, false, true}, {"", 20}},
            {{Kind::row, {text, text}}, {Kind::row, {"short", "last"}}}, {}, "");
  const auto pdf = sheets.finish();
  REQUIRE(pdf);
  const std::string paper = flattened(text_in(*pdf));
  if (!paper.empty()) {
    CHECK(contains(paper, text));
    CHECK(contains(paper, "…"));  // the column that does not wrap is cut
  }
}
