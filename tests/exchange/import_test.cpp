#include "exchange/import.h"

#include <doctest/doctest.h>

#include "base/file.h"
#include "base/text.h"
#include "exchange/apply.h"
#include "exchange/csv.h"
#include "exchange/export_csv.h"

using namespace backmark;
using namespace backmark::exchange;
using namespace backmark::model;

namespace {

constexpr std::string_view plain_map = R"(rows = "pieces"
source = "list"
[columns]
id = "number"
title = "title"
artist = "maker"
date = "made"
stone = { character = "stone", split = ";" }
cord = { character = "cord", part = "cord" }
height = { measure = "height", unit = "cm" }
mark = "mark"
got = "acquired"
[options]
unknown = ["", "n/a"]
none = ["none"]
)";

constexpr std::string_view head = "id,title,artist,date,stone,cord,height,mark,got,shelf\n";

ImportMap map_of(std::string_view text) {
  const auto map = read_map(text, "list.toml");
  REQUIRE_MESSAGE(map.ok(), (map.ok() ? "" : to_line(map.problem())));
  return *map;
}

Result<ImportOutcome> import(const Show& show,
                             const std::string& csv,
                             std::string_view map = plain_map,
                             bool skip = false) {
  const auto table = read_csv(csv, "list.csv");
  REQUIRE(table.ok());
  return import_rows(show, *table, map_of(map), {.file = "list.csv", .skip_faulty = skip});
}

ImportOutcome take(Show& show, const std::string& csv, std::string_view map = plain_map) {
  auto out = import(show, csv, map);
  REQUIRE_MESSAGE(out.ok(), (out.ok() ? "" : to_line(out.problem())));
  for (const CellRemark& fault : out->faults) {
    FAIL_CHECK(fault.row << " " << fault.column << ": " << fault.what);
  }
  apply(show, out->change);
  return *std::move(out);
}

const std::string one_row =
    std::string(head) +
    "ES 1,Wave,attributed to Oda Vessen,c. 1955,jet; shell,braided,\"5.5\","
    "OV,1974,top\n";

// The curator sees under the loupe that the cord of ES 1 is plaited, not braided.
Id<Piece> correct_cord(Show& show) {
  const auto piece = show.piece("ES 1")->id;
  Change change(show, "note", "by loupe");
  for (const Observation& seen : show.observations_of(piece)) {
    if (show.text(seen.value) == "braided") {
      change.add(Observation{.piece = piece,
                             .part = seen.part,
                             .character = seen.character,
                             .value = change.word("plaited"),
                             .how = How::loupe,
                             .supersedes = seen.id});
    }
  }
  apply(show, change);
  return piece;
}

}  // namespace

TEST_CASE("the dates behind a maker's name become working years") {
  const std::string_view map =
      "rows = \"makers\"\n[columns]\nname = \"name\"\ndates = \"dates\"\n";
  Show show;
  take(show, "name,dates\nOda Vessen,1902-1977\nIlse Torn,act. 1890-1910\nAske Lund,\n", map);
  const auto& makers = show.all<Maker>();
  REQUIRE(makers.size() == 3);
  CHECK(makers[0].from == Year{1922});  // a life: work begins at twenty
  CHECK(makers[0].to == Year{1977});
  CHECK(makers[1].from == Year{1890});
  CHECK(makers[1].to == Year{1910});
  CHECK_FALSE(makers[2].from);
  const auto bad = import(show, "name,dates\nUna Bree,Norwegian\n", map);
  REQUIRE(bad.ok());
  REQUIRE(bad->faults.size() == 1);
  CHECK(bad->faults[0].what == "\"Norwegian\" dates nobody");
  CHECK(bad->faults[0].column == "dates");
}

TEST_CASE("a row becomes a piece with its claims, observations, mark and event") {
  Show show;
  const auto out = take(show, one_row);
  CHECK(out.pieces_new == 1);
  const Piece* piece = show.piece("ES 1");
  REQUIRE(piece != nullptr);
  CHECK(piece->title == "Wave");
  const auto claims = show.claims_on(piece->id);
  REQUIRE(claims.size() == 2);
  CHECK(claims[0].says == Says::made_by);
  CHECK(show.find(claims[0].maker)->name == "Oda Vessen");
  CHECK(show.text(claims[0].qualifier) == "attributed to");
  CHECK(claims[1].text == "c. 1955");
  CHECK(claims[1].from == Year{1950});
  CHECK(claims[1].to == Year{1960});
  CHECK(show.find(claims[1].source)->kind == SourceKind::record);
  CHECK(show.observations_of(piece->id).size() == 4);
  CHECK(show.character("stone")->shape == Shape::set);
  CHECK(show.character("height")->unit == "mm");
  CHECK(show.parts_of(piece->id).size() == 1);
  CHECK(show.marks_of(piece->id)[0].text == "OV");
  CHECK(show.events_of(piece->id)[0].from == Year{1974});
  // The column that the map does not name.
  REQUIRE(show.notes_of(piece->id).size() == 1);
  CHECK(show.text(show.notes_of(piece->id)[0].heading) == "shelf");
}

TEST_CASE("the same file twice changes nothing") {
  Show show;
  take(show, one_row);
  const auto again = take(show, one_row);
  CHECK(again.pieces_same == 1);
  CHECK(again.change.empty());
}

TEST_CASE("a changed cell supersedes only its own statement") {
  Show show;
  take(show, one_row);
  const auto piece = show.piece("ES 1")->id;
  const auto out = take(show, replace_all(one_row, "c. 1955", "1958"));
  CHECK(out.pieces_changed == 1);
  const auto& claims = std::get<std::vector<Claim>>(out.change.added());
  REQUIRE(claims.size() == 1);
  CHECK(claims[0].text == "1958");
  CHECK(claims[0].supersedes);
  CHECK(show.claims_on(piece).size() == 2);
}

TEST_CASE("an emptied cell is withdrawn, one value of a set alone") {
  Show show;
  take(show, one_row);
  const auto out = take(show, replace_all(one_row, "jet; shell", "jet"));
  CHECK(out.change.withdrawn().size() == 1);
  CHECK(show.observations_of(show.piece("ES 1")->id).size() == 3);
}

TEST_CASE("what the curator corrected stays when the file comes again") {
  Show show;
  take(show, one_row);
  const auto piece = correct_cord(show);
  CHECK(take(show, one_row).change.empty());
  // Another column changes: the correction still stands alone.
  take(show, replace_all(one_row, "Wave", "Wave form"));
  int cords = 0;
  for (const Observation& seen : show.observations_of(piece)) {
    cords += seen.character == show.character("cord")->id ? 1 : 0;
  }
  CHECK(cords == 1);
  CHECK(show.piece("ES 1")->title == "Wave form");
}

TEST_CASE("one bad row and nothing is taken; every fault is listed by row and column") {
  const Show show;
  const std::string csv =
      one_row + ",no number,,,,,,,,\nES 1,again,,,,,,,,\nES 3,,,,,,\"1,250\",,,\n";
  const auto out = import(show, csv);
  REQUIRE(out.ok());
  CHECK(out->change.empty());
  CHECK(out->pieces_new == 0);
  REQUIRE(out->faults.size() == 2);
  CHECK(out->faults[0] == CellRemark{3, "id", "the piece has no number",
                                     "give it a number that no other piece has"});
  CHECK(out->faults[1].what == "the number \"ES 1\" stands in row 2 already");
}

TEST_CASE("skipping faulty rows gives back those rows, which can be mended and taken in") {
  Show show;
  const std::string csv = one_row + ",Shell,,,,,,,,\n";
  auto out = import(show, csv, plain_map, true);
  REQUIRE(out.ok());
  CHECK(out->pieces_new == 1);
  apply(show, out->change);
  const std::string mended = replace_all(out->rest, ",Shell", "ES 2,Shell");
  CHECK(take(show, mended).pieces_new == 1);
  CHECK(show.piece("ES 2") != nullptr);
}

TEST_CASE("decimal commas are found out, mixed ones are refused") {
  Show show;
  take(show, "id;h\n1;12,5\n",
       "[columns]\nid = \"number\"\nh = { measure = \"height\", unit = \"cm\" }\n");
  CHECK(show.observations_of(show.piece("1")->id)[0].number == doctest::Approx(125));
  const auto mixed =
      import(Show(), "id;h\n1;12,5\n2;12.5\n",
             "[columns]\nid = \"number\"\nh = { measure = \"height\", unit = \"cm\" }\n");
  REQUIRE_FALSE(mixed.ok());
  CHECK(mixed.problem().what ==
        "numbers are written with a decimal comma in row 2 and with a full stop in row 3");
}

TEST_CASE("a date that is not understood is kept as written and listed") {
  Show show;
  const auto out = take(show, "id,date\n1,in the old days\n",
                        "[columns]\nid = \"number\"\ndate = \"made\"\n");
  REQUIRE(out.notes.size() == 1);
  CHECK(out.notes[0].what ==
        "the date \"in the old days\" was not understood and is kept as written");
  const auto claims = show.claims_on(show.piece("1")->id);
  REQUIRE(claims.size() == 1);
  CHECK_FALSE(claims[0].from);
}

TEST_CASE("the map's mistakes are named with the nearest word") {
  const auto problem = [](std::string_view text) { return read_map(text, "m.toml").problem(); };
  CHECK(problem("[columns]\nid = \"numbr\"\n").fix == "did you mean \"number\"?");
  CHECK(problem("[columns]\nid = \"numbr\"\n").where == "m.toml, column \"id\"");
  CHECK(problem("rows = \"peices\"\n").fix == "did you mean \"pieces\"?");
  CHECK(problem("[columns]\nid = \"number\"\n[options]\nunknwn = []\n").fix ==
        "did you mean \"unknown\"?");
  CHECK(problem("[columns]\ntitle = \"title\"\n").what == "no column is the number");
  CHECK(problem("[columns\n").where == "m.toml, line 1");
  CHECK(
      problem("[columns]\nid = \"number\"\nh = { measure = \"h\", unit = \"inch\" }\n").what ==
      "the unit \"inch\" is not known");
}

TEST_CASE("a column that the file lacks is named with the nearest heading") {
  const auto out = import(Show(), "idd,x\n1,2\n", "[columns]\nid = \"number\"\n");
  REQUIRE_FALSE(out.ok());
  CHECK(out.problem().what == "the file has no column \"id\"");
}

TEST_CASE("export gives every cell back as it was, and importing it changes nothing") {
  Show show;
  take(show, one_row);
  const CsvExport out = export_rows(show, map_of(plain_map));
  const auto table = read_csv(one_row, "list.csv");
  CHECK(out.headings == table->headings);
  REQUIRE(out.rows.size() == 1);
  CHECK(out.rows[0] == table->rows[0].cells);
  CHECK(out.as_written == 1);
  CHECK(take(show, write_csv(out.headings, out.rows, {})).change.empty());
}

TEST_CASE("export writes a cell anew where the show overrules it") {
  Show show;
  take(show, one_row);
  correct_cord(show);
  const CsvExport out = export_rows(show, map_of(plain_map));
  CHECK(out.rewritten == 1);
  CHECK(out.rows[0][5] == "plaited");
  CHECK(out.rows[0][3] == "c. 1955");
}

TEST_CASE("sources come in any order of rows and know whom they follow") {
  Show show;
  const auto out = take(show, "key,title,from\ngrandson,Letter,daybook\ndaybook,Daybook,\n",
                        "rows = \"sources\"\nsource = \"s\"\n[columns]\nkey = \"key\"\ntitle = "
                        "\"title\"\nfrom = \"derives-from\"\n");
  CHECK(out.others_new == 2);
  REQUIRE(show.source("grandson")->derives_from.size() == 1);
  CHECK(show.source("grandson")->derives_from[0] == show.source("daybook")->id);
}

TEST_CASE("open museum records come in without a fault and go out as they were") {
  struct Set {
    const char* folder;
    const char* map;
    int pieces;
  };
  for (const Set& set : {Set{"carnegie-decorative", "carnegie", 2691},
                         Set{"indianapolis-small-works", "indianapolis", 2744}}) {
    const Path folder = Path(BACKMARK_SHARED_DIR) / "data" / set.folder;
    const Path maps = Path(BACKMARK_SOURCE_DIR) / "docs/manual/maps";
    const auto objects = read_file(folder / "objects.csv");
    const auto makers = read_file(folder / "makers.csv");
    if (!objects || !makers) {
      MESSAGE("skipped: no " << folder.string());
      continue;
    }
    const std::string name = set.map;
    const auto map = read_file(maps / (name + ".toml"));
    const auto makers_map = read_file(maps / (name + "-makers.toml"));
    REQUIRE(map.ok());
    REQUIRE(makers_map.ok());
    Show show;
    const auto out = take(show, *objects, *map);
    CHECK(out.pieces_new == set.pieces);
    CHECK(take(show, *objects, *map).change.empty());
    const auto table = read_csv(*objects, "objects.csv");
    const CsvExport given = export_rows(show, map_of(*map));
    REQUIRE(given.rows.size() == table->rows.size());
    int different = 0;
    for (std::size_t i = 0; i < given.rows.size(); ++i) {
      different += given.rows[i] == table->rows[i].cells ? 0 : 1;
    }
    CHECK(different == 0);
    CHECK(take(show, write_csv(given.headings, given.rows, {}), *map).change.empty());
    const auto named = take(show, *makers, *makers_map);
    MESSAGE(name << ": " << out.notes.size() << " notes, " << show.all<Claim>().size()
                 << " claims, " << show.all<Observation>().size() << " observations, "
                 << show.all<Maker>().size() << " makers");
    CHECK(named.others_new + named.others_changed > 200);
  }
}
