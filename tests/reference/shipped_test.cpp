#include "reference/shipped.h"

#include <doctest/doctest.h>
#include <set>

#include "base/file.h"
#include "base/text.h"
#include "reference/condition_word.h"
#include "reference/label_distance.h"
#include "reference/qualifier.h"
#include "reference/term.h"

using namespace backmark;
using namespace backmark::reference;

namespace {

std::string trouble(std::string_view text) {
  const auto rows = rows_of({"made-up.csv", text, {"word", "source", "status"}, 1});
  return rows ? "" : to_line(rows.problem());
}

}  // namespace

TEST_CASE("every table of the folder is built into the program as it stands, and well formed") {
  std::set<std::string> files;
  for (const auto& entry :
       std::filesystem::directory_iterator(Path(BACKMARK_SOURCE_DIR) / "reference")) {
    if (entry.path().extension() == ".csv") {
      files.insert(entry.path().filename().string());
    }
  }
  std::set<std::string> listed;
  for (const Shipped& table : shipped()) {
    listed.emplace(table.file);
    const auto text = read_file(Path(BACKMARK_SOURCE_DIR) / "reference" / table.file);
    REQUIRE(text);
    CHECK(*text == table.text);
    const auto rows = rows_of(table);
    const std::string problem = rows ? "" : to_line(rows.problem());
    CHECK(problem == "");
  }
  CHECK(listed == files);
}

TEST_CASE("a malformed table is named with its row") {
  CHECK(trouble("word,source,status\nsound,common practice,ours\n").empty());
  CHECK(contains(trouble("word,status,source\n"),
                 "made-up.csv, row 1: the headings are not those of the table"));
  CHECK(contains(trouble("word,source,status\nsound,ours\n"),
                 "row 2: the row has 2 cells and the table 3 columns"));
  CHECK(contains(trouble("word,source,status\nsound,,ours\n"),
                 "row 2: the row does not say its source and status"));
  CHECK(contains(trouble("word,source,status\na,b,c\na,d,e\n"),
                 "row 3: \"a\" is empty or stands in the table twice"));
}

TEST_CASE("a table that is not shipped is the program's fault") {
  CHECK_THROWS_AS(own_rows("adhesives.csv"), BrokenPromise);
  CHECK_THROWS_AS(own_number("label-distances.csv", "far"), BrokenPromise);
}

TEST_CASE("a qualifier says whose hand it claims") {
  CHECK(qualifiers().front().phrase == "attributed to");
  REQUIRE(qualifier("workshop of") != nullptr);
  CHECK(qualifier("workshop of")->hand == Hand::shop);
  CHECK(qualifier("formerly attributed to")->hand == Hand::nobody);
  CHECK(qualifier("carved by") == nullptr);
}

TEST_CASE("no two qualifiers are written with the same words") {
  std::set<std::string> words;
  for (const Qualifier& one : qualifiers()) {
    CHECK(words.insert(one.phrase).second);
    for (const auto* list : {&one.before, &one.after}) {
      for (const std::string& word : *list) {
        CHECK_MESSAGE(words.insert(word).second, word);
        CHECK(word == lower_ascii(word));
      }
    }
  }
}

TEST_CASE("an agreed word has a letter of its own, or none") {
  std::set<std::string> letters;
  for (const ConditionWord& one : condition_words()) {
    CHECK(one.letter.size() <= 1);
    CHECK((one.letter.empty() || letters.insert(one.letter).second));
  }
  CHECK(is_condition_word("scratched"));
  CHECK_FALSE(is_condition_word("scratchy"));
}

TEST_CASE("labels fit their paper as often as the table says") {
  for (const LabelDistance& one : label_distances()) {
    CHECK(one.label_width_mm * one.across <= one.paper_width_mm);
    CHECK(one.label_height_mm * one.down <= one.paper_height_mm);
    CHECK(one.text_pt > one.credit_pt);
  }
}

// Numbers of the Art & Architecture Thesaurus are nine digits that begin with 300 (from
// memory).
TEST_CASE("a number of the thesaurus is one, or is left empty") {
  const auto is_number = [](const std::string& aat) {
    return aat.empty() || (aat.size() == 9 && starts_with(aat, "300") && to_whole(aat));
  };
  for (const Term& one : terms()) {
    CHECK_MESSAGE(is_number(one.aat), one.term);
    CHECK((!one.aat.empty() || one.status != "confirmed"));
  }
  for (const Qualifier& one : qualifiers()) {
    CHECK_MESSAGE(is_number(one.aat), one.phrase);
  }
  REQUIRE(term("form", "brooches") != nullptr);
  CHECK(term("form", "brooches")->aat == "300045995");
}
