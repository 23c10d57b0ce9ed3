#include "evidence/curves.h"

#include <cmath>
#include <doctest/doctest.h>

#include "base/random.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

const YearGrid decades{{{1800}, {1899}}, 10};

StyleTable two_forms() {
  StyleTable table;
  table.characters = {{"form", CharacterShape::category, "", {}},
                      {"height", CharacterShape::number, "", {}}};
  table.characters[0].vocabulary.add("early");
  table.characters[0].vocabulary.add("late");
  table.characters[0].vocabulary.add("never seen");
  Random random(5);
  for (int i = 0; i < 60; ++i) {
    const int year = 1800 + static_cast<int>(random.below(100));
    StylePiece piece;
    piece.lot = i / 5;
    piece.stated = YearSpan{{year}, {year}};
    piece.values = {{{year < 1850 ? 0 : 1}, {}}, {{}, 10.0 + i}};
    table.pieces.push_back(std::move(piece));
  }
  return table;
}

EvidenceCurves curves_of(const StyleTable& table, const std::vector<std::size_t>& members) {
  return {table, members, std::vector<double>(members.size(), 1.0), decades, {12, 5, 10, 1, 0}};
}

std::vector<std::size_t> all_but(const StyleTable& table, int lot) {
  std::vector<std::size_t> members;
  for (std::size_t i = 0; i < table.pieces.size(); ++i) {
    if (table.pieces[i].lot != lot) {
      members.push_back(i);
    }
  }
  return members;
}

}  // namespace

TEST_CASE("leaving a lot out of the curves is the same as never having had it") {
  const auto table = two_forms();
  const auto whole = curves_of(table, all_but(table, -1));
  const auto less = curves_of(table, all_but(table, 3));
  const std::vector<StyleValue> values{{{1}, {}}, {}};
  const auto left_out = whole.lines(values, 3);
  const auto never = less.lines(values, std::nullopt);
  REQUIRE(left_out[0].size() == 10);
  CHECK(left_out[1].empty());
  for (std::size_t bin = 0; bin < 10; ++bin) {
    CHECK(left_out[0][bin] == doctest::Approx(never[0][bin]).epsilon(1e-9));
  }
}

TEST_CASE("with no smoothing a curve is the log of a ratio of counts") {
  StyleTable table = two_forms();
  table.pieces.resize(4);
  const int years[] = {1805, 1806, 1855, 1856};
  for (std::size_t i = 0; i < 4; ++i) {
    table.pieces[i].stated = YearSpan{{years[i]}, {years[i]}};
    table.pieces[i].values[0].terms = {i == 1 || i > 1 ? 1 : 0};
  }
  const EvidenceCurves curves(table, {0, 1, 2, 3}, {1, 1, 1, 1}, decades, {0, 5, 10});
  const auto line = curves.line(0, 1);
  // Share of "late" 3/4; first decade 1 of 2, sixth decade 2 of 2, the others empty.
  CHECK(line[0] == doctest::Approx(std::log((1 + 5 * 0.75) / 7 / 0.75)));
  CHECK(line[5] == doctest::Approx(std::log((2 + 5 * 0.75) / 7 / 0.75)));
  CHECK(line[3] == doctest::Approx(0));
  CHECK(curves.line(0, 2).empty());
}

TEST_CASE("a stated window shapes a curve until dated pieces overrule it") {
  auto table = two_forms();
  table.windows = {{0, 2, {{1840}, {1859}}, 0.7}, {0, 1, {{1800}, {1819}}, 0.7}};
  const auto curves = curves_of(table, all_but(table, -1));
  const auto unseen = curves.line(0, 2);
  CHECK(unseen[4] > unseen[0] + 1);
  CHECK(curves.line(0, 1)[0] > 0);  // a wrong window, against six pieces a decade
  const auto members = all_but(table, -1);
  const EvidenceCurves many(table, members, std::vector<double>(members.size(), 10.0), decades,
                            {12, 5, 10, 1, 0});
  const auto late = many.line(0, 1);  // and against sixty
  CHECK(late[8] > late[0] + 0.5);
}

TEST_CASE("several terms of one character count less than their sum") {
  StyleTable table = two_forms();
  table.characters[0].shape = CharacterShape::terms;
  const auto curves = curves_of(table, all_but(table, -1));
  const auto both = curves.lines({{{0, 1}, {}}, {}}, std::nullopt)[0];
  const auto early = curves.line(0, 0);
  const auto late = curves.line(0, 1);
  CHECK(both[2] == doctest::Approx((early[2] + late[2]) / std::sqrt(2.0)));
}
