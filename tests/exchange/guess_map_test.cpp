#include "exchange/guess_map.h"

#include <doctest/doctest.h>

#include "exchange/import_map.h"

using namespace backmark;
using namespace backmark::exchange;

namespace {

std::vector<std::string> words_of(std::string_view csv) {
  const auto table = read_table(csv, "list.csv");
  REQUIRE(table);
  std::vector<std::string> words;
  for (const ColumnReading& reading : guess_columns(*table, {})) {
    words.push_back(reading.word);
  }
  return words;
}

}  // namespace

TEST_CASE("headings in common use say what a column is; any other is a note") {
  CHECK(words_of("Accession Number,Title,Artist,Date,Remarkable\n1,Tie,Ann,1950,yes\n") ==
        std::vector<std::string>{"number", "title", "maker", "made", "note"});
}

TEST_CASE("without a heading for it, numbers are the first column that is filled and tells apart") {
  CHECK(words_of("tray,which,year\nA,x 1,1950\nA,x 2,1951\n")[1] == "number");
}

TEST_CASE("a second column of what can stand only once is a note") {
  const auto words = words_of("number,id,title\n1,2,Tie\n2,3,Clasp\n");
  CHECK(words[0] == "number");
  CHECK(words[1] == "note");
}

TEST_CASE("what was guessed is a map that the import reads; a word of no kind is refused") {
  const auto map = map_of({{"No", "number"}, {"Date", "made"}});
  REQUIRE(map);
  CHECK(read_map(*map, "guess.toml").ok());
  CHECK_FALSE(map_of({{"No", "nonsense"}}));
}
