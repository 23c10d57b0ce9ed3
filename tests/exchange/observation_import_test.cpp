// Rows of observations: what was looked at on pieces that are in the show already.
#include <doctest/doctest.h>

#include "base/text.h"
#include "exchange/import_rows.h"

using namespace backmark;
using namespace backmark::exchange;
using namespace backmark::model;

namespace {

constexpr std::string_view looks_map = R"(rows = "observations"
source = "day-1"
[columns]
piece = "number"
part = "part"
what = "character"
saw = "value"
sure = "certainty"
how = "how"
who = "by"
[options]
none = ["none"]
cannot_tell = ["?"]
)";
const std::string looks_head = "piece,part,what,saw,sure,how,who\n";

Show with_pieces() {
  Show show;
  take_rows_of(show, "id,h\nES 1,5\nES 2,6\n",
               "[columns]\nid = \"number\"\nh = { measure = \"height\", unit = \"cm\" }\n");
  return show;
}

std::vector<std::string> faults_of(const Show& show, const std::string& rows) {
  const auto out = import_of(show, looks_head + rows, looks_map);
  REQUIRE(out.ok());
  CHECK(out->change.empty());
  std::vector<std::string> lines;
  for (const CellRemark& fault : out->faults) {
    lines.push_back(fmt::format("{} {}: {}", fault.row, fault.column, fault.what));
  }
  return lines;
}

}  // namespace

TEST_CASE("a look is an observation with part, manner, hand and certainty") {
  Show show = with_pieces();
  const auto out = take_rows_of(
      show, looks_head + "ES 1,cord,Cord type,Braided,0.8,loupe,I.R.\n", looks_map);
  CHECK(out.pieces_changed == 1);
  const Character* character = show.character("cord_type");
  REQUIRE(character != nullptr);
  bool found = false;
  for (const Observation& seen : show.observations_of(show.piece("ES 1")->id)) {
    if (seen.character == character->id) {
      found = true;
      CHECK(show.text(seen.value) == "braided");
      CHECK(seen.how == How::loupe);
      CHECK(show.text(seen.by) == "I.R.");
      CHECK(seen.certainty == doctest::Approx(0.8));
      CHECK(seen.part);
    }
  }
  CHECK(found);
}

TEST_CASE("looked for and not there, and undecidable, are two things") {
  Show show = with_pieces();
  take_rows_of(show, looks_head + "ES 1,,inscription,none,,eye,\nES 2,,inscription,?,,eye,\n",
               looks_map);
  std::vector<Seen> seen;
  for (const Observation& one : show.all<Observation>()) {
    if (one.character == show.character("inscription")->id) {
      seen.push_back(one.seen);
    }
  }
  CHECK(seen == std::vector<Seen>{Seen::none, Seen::cannot_tell});
}

TEST_CASE("every fault of a look is listed, and nothing is taken") {
  const Show show = with_pieces();
  const auto faults = faults_of(show,
                                "ES 9,,cord,braided,,,\n"
                                "ES 1,,,braided,,,\n"
                                "ES 1,,cord,,,,\n"
                                "ES 1,,cord,braided,2,smell,\n"
                                "ES 1,,height,tall,,,\n"
                                "ES 1,,cord,plain,1,eye,\n");
  CHECK(faults == std::vector<std::string>{"2 piece: there is no piece \"ES 9\"",
                                           "3 what: the row names no character",
                                           "4 saw: nothing was seen",
                                           "5 how: \"smell\" is no way of looking",
                                           "5 sure: \"2\" is not a share between 0 and 1",
                                           "6 saw: \"tall\" is not a number of mm"});
}

TEST_CASE("the same looks twice change nothing") {
  Show show = with_pieces();
  const std::string rows = looks_head + "ES 1,cord,cord type,braided,,loupe,I.R.\n";
  take_rows_of(show, rows, looks_map);
  CHECK(take_rows_of(show, rows, looks_map).change.empty());
}
