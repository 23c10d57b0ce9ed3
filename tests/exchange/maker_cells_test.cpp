// Makers in cells, qualifiers of the shipped table, guards and shapes.
#include <doctest/doctest.h>

#include "base/text.h"
#include "exchange/export_csv.h"
#include "exchange/import_rows.h"
#include "exchange/maker_text.h"
#include "reference/qualifier.h"

using namespace backmark;
using namespace backmark::exchange;
using namespace backmark::model;

TEST_CASE(
    "every qualifier of the shipped table is understood before a name, in all its words") {
  for (const reference::Qualifier& one : reference::qualifiers()) {
    auto written = one.before;
    written.push_back(one.phrase);
    for (const std::string& words : written) {
      INFO(words);
      const auto makers = read_makers(words + " Oda Vessen");
      REQUIRE(makers.size() == 1);
      CHECK(makers[0].name == "Oda Vessen");
      CHECK(makers[0].qualifier == one.phrase);
    }
    for (const std::string& sign : one.after) {
      INFO(sign);
      const auto makers = read_makers("Oda Vessen " + sign);
      REQUIRE(makers.size() == 1);
      CHECK(makers[0].name == "Oda Vessen");
      CHECK(makers[0].qualifier == one.phrase);
    }
  }
}

TEST_CASE("every qualifier survives the way into a show and out again") {
  const std::string map = "[columns]\nid = \"number\"\nby = \"maker\"\n";
  std::string csv = "id,by\n";
  int number = 0;
  for (const reference::Qualifier& one : reference::qualifiers()) {
    csv += fmt::format("{},{} Oda Vessen\n", ++number, one.phrase);
  }
  Show show;
  take_rows_of(show, csv, map);
  CHECK(show.all<Maker>().size() == 1);
  number = 0;
  for (const reference::Qualifier& one : reference::qualifiers()) {
    const auto claims = show.claims_on(show.piece(std::to_string(++number))->id);
    REQUIRE(claims.size() == 1);
    CHECK(show.text(claims[0].qualifier) == one.phrase);
  }
  const auto out = export_rows(show, *read_map(map, "list.toml"));
  CHECK(write_csv(out.headings, out.rows, {.dialect = {.line_end = "\n"}}) == csv);
}

TEST_CASE("several makers keep their own roles and qualifiers, in step") {
  Show show;
  take_rows_of(show,
               "id,by,role,how\n1,Oda Vessen|Ilm Tarrow|Una Bree,designer||stone cutter,"
               "|attributed to|possibly by\n",
               "[columns]\nid = \"number\"\nby = { is = \"maker\", split = \"|\", roles = "
               "\"role\", qualifiers = \"how\" }\n");
  const auto claims = show.claims_on(show.piece("1")->id);
  REQUIRE(claims.size() == 3);
  const auto line = [&show](const Claim& claim) {
    return fmt::format("{}/{}/{}", show.find(claim.maker)->name, show.text(claim.role),
                       show.text(claim.qualifier));
  };
  CHECK(line(claims[0]) == "Oda Vessen/designer/");
  CHECK(line(claims[1]) == "Ilm Tarrow//attributed to");
  CHECK(line(claims[2]) == "Una Bree/stone cutter/possibly by");
}

TEST_CASE("rows at fault of a guarded file come back guarded, are mended and taken in") {
  const std::string map = "[columns]\nid = \"number\"\ntitle = \"title\"\n";
  Show show;
  const auto out = import_of(show, "id,title\n1,'=sum of parts\n,'-left\n", map,
                             {.skip_faulty = true, .guarded = true});
  REQUIRE(out.ok());
  REQUIRE(out->faults.size() == 1);
  apply(show, out->change);
  CHECK(show.piece("1")->title == "=sum of parts");
  take_rows_of(show, replace_all(out->rest, "\n,", "\n2,"), map, {.guarded = true});
  REQUIRE(show.piece("2") != nullptr);
  CHECK(show.piece("2")->title == "-left");
}

TEST_CASE("a character of another shape is refused by name") {
  Show show;
  take_rows_of(
      show, "id,x\n1,5\n",
      "[columns]\nid = \"number\"\nx = { character = \"turns\", shape = \"number\" }\n");
  const auto out = import_of(show, "id,x\n2,many\n",
                             "[columns]\nid = \"number\"\nx = { character = \"turns\" }\n");
  REQUIRE_FALSE(out.ok());
  CHECK(out.problem().fault == Fault::conflict);
  CHECK(contains(out.problem().what, "turns"));
}

TEST_CASE("faults of maker rows are listed by row and column") {
  const auto out = import_of(Show(),
                             "name,from,to,kind\n,1900,1910,person\nOda Vessen,soon,,person\n"
                             "Una Bree,1950,1940,person\nIlm Tarrow,,,ghost\n",
                             "rows = \"makers\"\n[columns]\nname = \"name\"\nfrom = \"from\"\n"
                             "to = \"to\"\nkind = \"kind\"\n");
  REQUIRE(out.ok());
  CHECK(out->change.empty());
  std::vector<std::string> places;
  for (const CellRemark& fault : out->faults) {
    places.push_back(fmt::format("{} {}", fault.row, fault.column));
  }
  CHECK(places == std::vector<std::string>{"2 name", "3 from", "4 from", "5 kind"});
}
