#include "evidence/in_use.h"

#include <doctest/doctest.h>

#include "base/random.h"
#include "base/text.h"
#include "evidence/number_fifths.h"

using namespace backmark;
using namespace backmark::model;

namespace {

// A show being filled, its pieces dated to the year.
struct Filled {
  Show show;
  std::int32_t next = 1;

  template <class T>
  Id<T> put(T row) {
    row.id.value = next++;
    show.all<T>().push_back(row);
    return row.id;
  }
  Id<Piece> piece(std::optional<int> year) {
    const auto id = put(Piece{.number = fmt::format("ES {}", next)});
    if (year) {
      put(Claim{.source = daybook,
                .subject = id.value,
                .says = Says::made,
                .from = Year{*year},
                .to = Year{*year}});
    }
    return id;
  }
  void see(Id<Piece> piece, Id<Character> character, const char* value, Id<Part> part = {}) {
    put(Observation{
        .piece = piece, .part = part, .character = character, .value = show.pool.take(value)});
  }

  Id<Source> daybook = put(Source{.key = "daybook", .title = "Day-book", .reliability = 0.95});
  Id<Character> fitting = put(Character{.key = "fitting", .label = "Fitting"});
};

const evidence::UseRow* row_of(const std::vector<evidence::UseGroup>& groups,
                               std::string_view value) {
  for (const auto& group : groups) {
    for (const auto& row : group.rows) {
      if (row.value == value) {
        return &row;
      }
    }
  }
  return nullptr;
}

}  // namespace

TEST_CASE("a use begins and ends about its first and last dated pieces, and is sure between") {
  Filled filled;
  for (int year = 1950; year <= 1960; ++year) {
    filled.see(filled.piece(year), filled.fitting, "two loops");
    filled.see(filled.piece(year + 25), filled.fitting, "clip");
  }
  filled.see(filled.piece({}), filled.fitting, "clip");  // not dated: counted, teaches nothing
  filled.show.settle();
  const auto gathered = evidence::gather(filled.show, Year{2020});
  const auto groups = evidence::uses(filled.show, gathered);
  REQUIRE(groups.size() == 1);
  CHECK(groups[0].recorded.size() == 23);
  CHECK(groups[0].known == 22);
  REQUIRE(groups[0].rows.size() == 2);
  CHECK(groups[0].rows[0].value == "two loops");  // the earlier first
  CHECK(groups[0].rows[1].pieces.size() == 12);
  CHECK(groups[0].rows[1].known == 11);
  const evidence::Use& use = *groups[0].rows[0].use;
  CHECK(use.start.p50 >= Year{1947});
  CHECK(use.start.p90 <= Year{1951});
  CHECK(use.end.p10 >= Year{1959});
  CHECK(use.end.p50 <= Year{1963});
  const auto chance = [&](int year) {
    return use.chance.at(static_cast<std::size_t>(year - use.years.first.value));
  };
  CHECK(use.years.first <= Year{1945});
  CHECK(chance(1955) > 0.99);
  CHECK(chance(use.years.first.value) < 0.05);
  CHECK(chance(1980) < 0.05);
}

// Coverage against what was drawn: 16 in 20 of the true starts between the 10 and 90 points;
// with 300 shows chance alone leaves 0.80 plus or minus 0.07 (three standard errors).
TEST_CASE("of uses drawn by chance the start lies between its points as often as said") {
  Random random(11);
  int inside = 0;
  constexpr int shows = 300;
  for (int k = 0; k < shows; ++k) {
    Filled filled;
    // The length as the model has it: gamma, mean 20, sd 15.
    const double shape = 20.0 * 20 / (15 * 15);
    int length = 0;
    while (length < 1 || length > 90) {
      length = static_cast<int>(std::lround(random.gamma(shape) * 20 / shape));
    }
    const int start = 1900 + static_cast<int>(random.below(20));
    for (int i = 0; i < 8; ++i) {
      const int year =
          start + static_cast<int>(random.below(static_cast<std::uint64_t>(length)));
      filled.see(filled.piece(year), filled.fitting, "loop");
    }
    // Others, so that the axis does not end where the use does.
    filled.piece(1860);
    filled.piece(2010);
    filled.show.settle();
    const auto groups = evidence::uses(filled.show, evidence::gather(filled.show, Year{2020}));
    const auto* row = row_of(groups, "loop");
    REQUIRE(row != nullptr);
    inside += row->use->start.p10 <= Year{start} && Year{start} <= row->use->start.p90 ? 1 : 0;
  }
  const double share = static_cast<double>(inside) / shows;
  CAPTURE(share);
  CHECK(share > 0.73);
  CHECK(share < 0.95);  // years are whole, so the points hold more than they say
}

TEST_CASE("a part that was changed later does not date the variant it shows") {
  Filled filled;
  for (int year = 1950; year <= 1960; ++year) {
    filled.see(filled.piece(year), filled.fitting, "two loops");
  }
  const auto odd = filled.piece(1912);
  const auto part = filled.put(Part{.piece = odd, .originality = Originality::replaced});
  filled.see(odd, filled.fitting, "two loops", part);
  filled.show.settle();
  const auto groups = evidence::uses(filled.show, evidence::gather(filled.show, Year{2020}));
  CHECK(row_of(groups, "two loops")->pieces.size() == 11);
  CHECK(row_of(groups, "two loops")->use->start.p10 >= Year{1945});
}

TEST_CASE("variants of a lineage stand in its order, seen or not; a window alone gives years") {
  Filled filled;
  const auto word = [&](const char* text) { return filled.show.pool.take(text); };
  filled.put(Lineage{.character = filled.fitting,
                     .variants = {word("tubes"), word("single loop"), word("two loops")},
                     .source = filled.daybook});
  filled.put(Window{.character = filled.fitting,
                    .value = word("single loop"),
                    .from = Year{1945},
                    .to = Year{1953},
                    .source = filled.daybook});
  filled.see(filled.piece(1950), filled.fitting, "two loops");
  filled.show.settle();
  const auto groups = evidence::uses(filled.show, evidence::gather(filled.show, Year{2020}));
  REQUIRE(!groups.empty());
  CHECK(groups[0].lineage != nullptr);
  REQUIRE(groups[0].rows.size() == 3);
  CHECK(groups[0].rows[0].value == "tubes");
  CHECK(!groups[0].rows[0].use);
  REQUIRE(groups[0].rows[1].use);
  CHECK(std::abs(groups[0].rows[1].use->start.p50 - Year{1945}) <= 3);
  CHECK(groups[0].rows[1].told.size() == 1);
}

TEST_CASE("measures are cut in fifths, and equal ones stay together") {
  std::vector<evidence::Measured> numbers;
  for (std::size_t i = 0; i < 20; ++i) {
    numbers.push_back({20 + static_cast<double>(i % 10), i});
  }
  const auto fifths = evidence::in_fifths(numbers);
  REQUIRE(fifths.size() == 5);
  std::size_t all = 0;
  for (const auto& fifth : fifths) {
    CHECK(fifth.pieces.size() == 4);
    all += fifth.pieces.size();
  }
  CHECK(all == 20);
  CHECK(evidence::words_for(fifths.front(), "mm") == "20 to 21 mm");
  for (auto& number : numbers) {
    number.first = 7;
  }
  CHECK(evidence::in_fifths(numbers).size() == 1);
  CHECK(evidence::words_for(evidence::in_fifths(numbers).front(), "") == "7");
  CHECK(evidence::in_fifths({{1, 0}}).empty());
}

TEST_CASE("of a maker of whom nothing is known nothing is drawn") {
  Filled filled;
  filled.put(Maker{.key = "unknown", .name = "Nobody Known"});
  const auto vessen = filled.put(
      Maker{.key = "vessen", .name = "Oda Vessen", .from = Year{1946}, .to = Year{1971}});
  filled.piece(1950);
  filled.show.settle();
  const auto makers =
      evidence::maker_uses(filled.show, evidence::gather(filled.show, Year{2020}));
  REQUIRE(makers.size() == 1);
  CHECK(makers[0].maker == vessen);
  CHECK(std::abs(makers[0].use.start.p50 - Year{1946}) <= 2);
}
