#include "evidence/habits.h"

#include <cmath>
#include <doctest/doctest.h>

#include "evidence/gather.h"
#include "evidence/grown_show.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

// Eight dated pieces of 1950, alike in nothing else; maker 0 made six of them and always ties
// the cord one way, maker 1 two.
StyleTable small_table() {
  StyleTable table;
  table.characters.push_back({.name = "knot"});
  table.characters.back().vocabulary.add("reef");
  table.characters.back().vocabulary.add("loop");
  for (int i = 0; i < 8; ++i) {
    StylePiece piece;
    piece.lot = i;
    piece.stated = YearSpan{Year{1950}, Year{1950}};
    piece.maker = i < 6 ? 0 : 1;
    piece.values = {{.terms = {i < 6 ? 0 : 1}}};
    table.pieces.push_back(piece);
  }
  return table;
}

Grown grown(double own_habit, std::uint64_t seed) {
  return Grower({.pieces = 2000, .own_habit = own_habit, .seed = seed}).grow();
}

std::vector<std::size_t> all_columns(const StyleTable& table) {
  std::vector<std::size_t> columns(table.characters.size());
  for (std::size_t c = 0; c < columns.size(); ++c) {
    columns[c] = c;
  }
  return columns;
}

}  // namespace

TEST_CASE(
    "a maker who always ties reef knots makes a reef knot likelier and a loop unlikelier") {
  const StyleTable table = small_table();
  const Habits habits(table, {0});
  const double w = habits.share();
  REQUIRE(w > 0);
  // By hand: of 8 pieces of one year 6 show it, so pi = (6 + 5 x 6.5 / 9) / 13; the
  // concentration is one of the grid.
  const double pi = (6 + 5 * 6.5 / 9) / 13;
  const double lift = habits.lift(0, table.pieces[0].values, {0}, std::nullopt);
  double nearest = 1e9;
  for (const double a : {0.5, 1.0, 2.0, 4.0}) {
    nearest = std::min(nearest, std::abs(lift - (1 - w + w * (6 / pi + a) / (6 + a))));
  }
  CHECK(nearest < 1e-12);
  CHECK(lift > 1);
  CHECK(habits.lift(0, table.pieces[7].values, {0}, std::nullopt) < 1);
}

TEST_CASE("a piece says nothing of the habits that it is itself held against") {
  const StyleTable table = small_table();
  const Habits habits(table, {0});
  const double pi = (6 + 5 * 6.5 / 9) / 13;
  const double lift = habits.lift(0, table.pieces[0].values, {0}, 0);
  double nearest = 1e9;
  for (const double a : {0.5, 1.0, 2.0, 4.0}) {
    nearest = std::min(nearest, std::abs(lift - (1 - habits.share() +
                                                 habits.share() * (5 / pi + a) / (5 + a))));
  }
  CHECK(nearest < 1e-12);
}

TEST_CASE("of an unknown maker, an unknown value and another column habits say nothing") {
  const StyleTable table = small_table();
  const Habits habits(table, {0});
  CHECK(habits.lift(7, table.pieces[0].values, {0}, std::nullopt) == 1);
  CHECK(habits.lift(0, {{}}, {0}, std::nullopt) == 1);
  CHECK(habits.lift(0, {{.terms = {5}}}, {0}, std::nullopt) == 1);
  CHECK(Habits(table, {}).lift(0, table.pieces[0].values, {0}, std::nullopt) == 1);
}

// w is what predicts best, not what made the show: where fashions are badly known, habits stand
// in.
TEST_CASE(
    "where makers have ways of their own, habits count for more than where they have none") {
  for (const std::uint64_t seed : {1, 2, 3}) {
    const StyleTable own = gather(grown(0.4, seed).show, Year{2026}).style;
    const StyleTable fashion = gather(grown(0, seed).show, Year{2026}).style;
    CHECK(Habits(own, all_columns(own)).share() >
          Habits(fashion, all_columns(fashion)).share() + 0.2);
  }
}

TEST_CASE("parts that were planted from elsewhere have less of their maker's habits") {
  const Grown show = grown(0.4, 4);
  const StyleTable table = gather(show.show, Year{2026}).style;
  const Habits habits(table, all_columns(table));
  double wins = 0;
  double pairs = 0;
  std::vector<double> original;
  std::vector<double> later;
  for (std::size_t i = 0; i < table.pieces.size(); ++i) {
    const StylePiece& piece = table.pieces[i];
    for (std::size_t c = 1; piece.maker && c < 4; ++c) {  // one character of each later part
      if (!piece.values[c].missing()) {
        (show.replaced[i][c] != 0 ? later : original)
            .push_back(habits.lift(*piece.maker, piece.values, {c}, piece.lot));
      }
    }
  }
  REQUIRE(later.size() > 50);
  for (const double a : later) {
    for (const double b : original) {
      wins += a < b ? 1 : a == b ? 0.5 : 0;
      pairs += 1;
    }
  }
  const double area = wins / pairs;
  CHECK(area > 0.6);  // measured 0.67; chance is 0.5
}
