#include "exchange/guess_map.h"

#include <doctest/doctest.h>

#include "base/text.h"
#include "exchange/import_map.h"
#include "exchange/import_rows.h"

using namespace backmark;
using namespace backmark::exchange;

namespace {

Table table_of(const std::string& text) {
  auto table = read_table(text, "list.csv");
  REQUIRE(table.ok());
  return *std::move(table);
}

std::string words_of(const std::string& text, const model::Show& show = {}) {
  std::vector<std::string> words;
  for (const ColumnReading& one : guess_columns(table_of(text), show)) {
    words.push_back(one.word);
  }
  return join(words, " ");
}

}  // namespace

TEST_CASE("headings in common use are read; what says nothing is kept as a note") {
  CHECK(words_of("id,Title,Artist,made,medium,bought,shelf\nES 1,a,b,c,d,e,f\n") ==
        "number title maker made character:material acquired note");
}

TEST_CASE("a heading may carry its unit; without one it is millimetres or grams") {
  CHECK(words_of("No.,Height (cm),width_in,depth,weight oz,h\n1,2,3,4,5,6\n") ==
        "number measure:height:cm measure:width:in measure:depth:mm measure:mass:oz "
        "measure:height:mm");
}

TEST_CASE("what stands once stands in the first column that says so") {
  CHECK(words_of("title,number,inventory number\na,ES 1,9\n") == "title number note");
}

TEST_CASE(
    "without a heading that says number, the first column all filled and all different is it") {
  CHECK(words_of("title,what,ref\nWave,x,A1\nWave,y,A2\n") == "title number note");
  CHECK(words_of("shelf,box\nhigh,\nhigh,2\n") == "note note");
}

TEST_CASE("a character that the show knows is known by its key or by its label") {
  model::Show show;
  take_rows_of(show, "id,cord\nES 1,leather\n",
               "[columns]\nid = \"number\"\ncord = { character = \"cord_type\", label = "
               "\"Kind of cord\" }\n");
  CHECK(words_of("id,Kind of Cord,cord-type\nES 2,x,y\n", show) ==
        "number character:cord_type character:cord_type");
}

TEST_CASE("the map that is written is one that can be read, whatever the headings hold") {
  const auto text = map_of({{"a \"b\" \\ c\nd", "number"},
                            {"h = [x]", "measure:height:in"},
                            {"medium", "character:material"},
                            {"#", "ignore"}});
  REQUIRE(text.ok());
  const auto map = read_map(*text, "list.csv");
  REQUIRE(map.ok());
  CHECK(map->names("a \"b\" \\ c\nd"));
  CHECK(map->names("h = [x]"));
  CHECK(map->columns.size() == 4);
}

TEST_CASE("a word that no column can be is refused with its column") {
  for (const char* word : {"zebra", "measure:height", "character", "made:2", ""}) {
    const auto text = map_of({{"when", word}});
    REQUIRE_FALSE(text.ok());
    CHECK(text.problem().where == "column when");
  }
}
