#include "evidence/hands.h"

#include <doctest/doctest.h>

#include "base/random.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

// Three makers with habits of their own, and one-off hands without; three pieces a lot.
StyleTable workshops(int shift_maker, std::uint64_t seed = 1) {
  StyleTable table;
  table.characters = {{"border", CharacterShape::category, "", {}},
                      {"pin", CharacterShape::category, "", {}}};
  for (int v = 0; v < 4; ++v) {
    table.characters[0].vocabulary.add(std::string(1, static_cast<char>('a' + v)));
    table.characters[1].vocabulary.add(std::string(1, static_cast<char>('p' + v)));
  }
  Random random(seed);
  for (int i = 0; i < 150; ++i) {
    const bool one_off = i % 5 == 0;
    const int maker = one_off ? 10 + i : i % 3;
    StylePiece piece;
    piece.lot = i;
    piece.maker = maker + shift_maker;
    const int year = 1900 + (maker % 3) * 30;
    piece.stated = YearSpan{{year}, {year + 10}};
    for (int c = 0; c < 2; ++c) {
      const bool habit = !one_off && random.chance(0.8);
      piece.values.push_back({{habit ? maker : static_cast<int>(random.below(4))}, {}});
    }
    table.pieces.push_back(std::move(piece));
  }
  return table;
}

const YearSpan axis{{1880}, {1999}};

}  // namespace

TEST_CASE("a piece in the habit of a maker is given to that maker") {
  const auto hands = fit_hands(workshops(0), axis, {}, {});
  REQUIRE(hands.ok());
  const std::vector<StyleValue> values{{{1}, {}}, {{1}, {}}};
  const auto judged = hands->judge({&values, std::nullopt});
  REQUIRE(judged.if_listed.size() == 3);
  CHECK(judged.if_listed[0].maker == 1);
  CHECK(judged.if_listed[0].p > 0.7);
  const std::vector<StyleValue> odd{{{3}, {}}, {{3}, {}}};
  CHECK(hands->judge({&odd, std::nullopt}).listed < judged.listed);
  double sum = 0;
  for (const auto& chance : judged.if_listed) {
    sum += chance.p;
  }
  CHECK(sum == doctest::Approx(1));
}

TEST_CASE("renamed makers change nothing but the names") {
  const auto hands = fit_hands(workshops(0), axis, {}, {});
  const auto renamed = fit_hands(workshops(1000), axis, {}, {});
  const std::vector<StyleValue> values{{{2}, {}}, {{0}, {}}};
  const auto a = hands->judge({&values, std::nullopt});
  const auto b = renamed->judge({&values, std::nullopt});
  CHECK(a.listed == b.listed);
  for (std::size_t r = 0; r < a.if_listed.size(); ++r) {
    CHECK(a.if_listed[r].maker + 1000 == b.if_listed[r].maker);
    CHECK(a.if_listed[r].p == b.if_listed[r].p);
  }
}

TEST_CASE("known years settle between two makers of like habits") {
  const auto hands = fit_hands(workshops(0), axis, {}, {});
  const std::vector<StyleValue> between{{{0}, {}}, {{2}, {}}};
  std::vector<double> years(120, 0.0);
  years[85] = 1;  // 1965, when only the third worked
  const auto judged = hands->judge({&between, std::nullopt, &years});
  CHECK(judged.if_listed[0].maker == 2);
  CHECK(judged.if_listed[0].p > 0.85);
}

TEST_CASE("the share of listed hands is the curator's to set") {
  HandSettings settings;
  settings.listed_share = 0.2;
  const auto table = workshops(0);
  const auto learned = fit_hands(table, axis, {}, {});
  const auto set = fit_hands(table, axis, settings, {});
  const std::vector<StyleValue> values{{{1}, {}}, {{1}, {}}};
  CHECK(set->judge({&values, std::nullopt}).listed <
        learned->judge({&values, std::nullopt}).listed);
}

TEST_CASE("without a signed piece no hand can be told") {
  auto table = workshops(0);
  for (auto& piece : table.pieces) {
    piece.maker.reset();
  }
  const auto hands = fit_hands(table, axis, {}, {});
  REQUIRE_FALSE(hands.ok());
  CHECK(hands.problem().what == "no hand can be told by style: no piece has a named maker");
}
