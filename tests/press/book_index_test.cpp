// Letter-by-letter order and locators are those of BS ISO 999 and of common practice, from
// memory.
#include "press/book_index.h"

#include <doctest/doctest.h>

using namespace backmark;
using namespace backmark::press;

TEST_CASE("heads stand letter by letter, whatever spaces and accents they have") {
  const auto index = make_index(
      {{"net loft", "", 3}, {"Netting, Ada", "", 4}, {"Étienne", "", 2}, {"eyes", "", 1}});
  REQUIRE(index.size() == 4);
  CHECK(index[0].words == "Étienne");
  CHECK(index[1].words == "eyes");
  CHECK(index[2].words == "net loft");
  CHECK(index[3].words == "Netting, Ada");
}

TEST_CASE("neighbouring pages are joined, both ends in full, and plates stand apart") {
  const auto index = make_index({{"shell", "", 160},
                                 {"shell", "", 158},
                                 {"shell", "", 159},
                                 {"shell", "", 159},
                                 {"shell", "", 12},
                                 {"shell", "", 12, true}});
  REQUIRE(index.size() == 1);
  REQUIRE(index[0].locators.size() == 2);
  CHECK(index[0].locators[0] == IndexLocator{12, 12, true});
  CHECK(locator_text(index[0].locators[1]) == "158–160");
}

TEST_CASE("sub-entries are sorted by their first word of weight") {
  const auto index = make_index({{"clip", "on the bench", 1}, {"clip", "as a clock", 2}});
  REQUIRE(index[0].subs.size() == 2);
  CHECK(index[0].subs[0].words == "on the bench");
  CHECK(index[0].subs[1].words == "as a clock");
}

TEST_CASE("a see leads to a head that is there, or is left out") {
  const auto index = make_index({{"Vessen, Oda", "", 5}},
                                {{"Oda V.", "Vessen, Oda"}, {"Strand", "Strand, Ivar"}});
  REQUIRE(index.size() == 2);
  CHECK(index[0].see == "Vessen, Oda");
}

TEST_CASE("a head with nine bare page numbers is told") {
  std::vector<IndexMention> mentions;
  for (int page = 1; page <= 17; page += 2) {
    mentions.push_back({"silver", "", page, false});
  }
  CHECK(crowded(make_index(mentions)).size() == 1);
  mentions.pop_back();
  CHECK(crowded(make_index(mentions)).empty());
}

TEST_CASE("plates of a head with too many stand by what they are among") {
  std::vector<IndexMention> mentions;
  for (int page = 1; page <= 17; page += 2) {
    mentions.push_back({"silver", "", page, true, page < 9 ? "tern" : "boat"});
    mentions.push_back({"silver", "", page, false});  // named there too
  }
  const auto split = make_index(mentions).front();
  CHECK(split.locators.empty());
  REQUIRE(split.subs.size() == 2);
  CHECK(split.subs[0].words == "boat");
  CHECK(split.subs[1].locators.size() == 4);
  mentions.resize(16);
  CHECK(make_index(mentions).front().subs.empty());  // eight can be followed
}

TEST_CASE("a locator that leads to a page without the word is found") {
  const auto index = make_index({{"Vessen, Oda", "", 1}, {"Vessen, Oda", "", 2}});
  CHECK(not_on_pages(index, {"Here is VESSEN.", "and Vessen’s bench"}).empty());
  const auto found = not_on_pages(index, {"Here is Vessen.", "nobody"});
  REQUIRE(found.size() == 1);
  CHECK(found[0].what == "the index sends \"Vessen, Oda\" to page 2, where it is not");
  CHECK(not_on_pages(index, {"Vessen"}).size() == 1);
}
