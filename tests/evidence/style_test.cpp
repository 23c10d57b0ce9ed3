#include "evidence/style.h"

#include <doctest/doctest.h>
#include <filesystem>

#include "evidence/decade_counts.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

// Pieces whose form changes every 40 years from 1800 on, with a colour that says nothing.
StyleTable made_up(std::uint64_t seed, int pieces) {
  StyleTable table;
  table.characters = {{"form", CharacterShape::category, "", {}},
                      {"colour", CharacterShape::category, "", {}},
                      {"height", CharacterShape::number, "", {}}};
  for (int v = 0; v < 5; ++v) {
    table.characters[0].vocabulary.add(fmt::format("form {}", v));
    table.characters[1].vocabulary.add(fmt::format("colour {}", v));
  }
  Random random(seed);
  for (int i = 0; i < pieces; ++i) {
    const int year = 1800 + static_cast<int>(random.below(200));
    const int form =
        random.chance(0.9) ? (year - 1800) / 40 : static_cast<int>(random.below(5));
    StylePiece piece;
    piece.lot = i / 2;
    piece.stated = YearSpan{{year - 2}, {year + 2}};
    piece.values = {{{form}, {}},
                    {{static_cast<int>(random.below(5))}, {}},
                    {{}, 20 * std::exp(0.3 * random.normal())}};
    table.pieces.push_back(std::move(piece));
  }
  return table;
}

std::vector<double> years_of(const Style& style, int form) {
  const std::vector<StyleValue> values{{{form}, {}}, {{1}, {}}, {{}, 20.0}};
  return style.judge({&values, std::nullopt}).p;
}

}  // namespace

TEST_CASE("a piece of a form made from 1840 to 1879 is dated to those years") {
  const auto style = fit_style(made_up(1, 300), {}, {});
  REQUIRE(style.ok());
  const auto p = years_of(*style, 1);
  double inside = 0;
  double all = 0;
  for (std::size_t t = 0; t < p.size(); ++t) {
    const int year = style->axis().first.value + static_cast<int>(t);
    all += p[t];
    inside += year >= 1835 && year < 1885 ? p[t] : 0;
  }
  CHECK(all == doctest::Approx(1));
  CHECK(inside > 0.75);
  CHECK(style->likeness().d[0] > 2 * style->likeness().d[1]);
  CHECK(style->weights()[0] > style->weights()[1]);
}

TEST_CASE("the answer is the same to the last bit on any number of threads") {
  const auto table = made_up(2, 400);
  const auto alone = fit_style(table, {}, {{}, {}, 1});
  const auto many = fit_style(table, {}, {{}, {}, 3});
  REQUIRE(alone.ok());
  CHECK(alone->weights() == many->weights());
  CHECK(years_of(*alone, 3) == years_of(*many, 3));
}

TEST_CASE("without a dated piece or a stated window style says that it cannot date") {
  auto table = made_up(3, 20);
  for (auto& piece : table.pieces) {
    piece.stated.reset();
  }
  const auto nothing = fit_style(table, {}, {});
  REQUIRE_FALSE(nothing.ok());
  CHECK(
      nothing.problem().what ==
      "no piece can be dated by style: none has a stated date, and no window of use is stated");
  table.windows.push_back({0, 2, {{1880}, {1919}}, 0.7});
  table.windows.push_back({0, 0, {{1800}, {1839}}, 0.7});
  const auto windowed = fit_style(table, {}, {});
  REQUIRE(windowed.ok());
  REQUIRE(windowed->notes().size() == 1);
  CHECK(windowed->notes()[0] ==
        "no piece is dated: years come from the stated windows of use alone");
  const auto p = years_of(*windowed, 2);
  CHECK(quantile(windowed->axis(), p, 0.5).value > 1870);
  CHECK(quantile(windowed->axis(), years_of(*windowed, 0), 0.5).value < 1850);
}

TEST_CASE("a fit can be stopped") {
  std::stop_source source;
  source.request_stop();
  const auto style = fit_style(made_up(4, 100), {}, {{}, source.get_token()});
  REQUIRE_FALSE(style.ok());
  CHECK(style.problem().fault == Fault::refused);
}

TEST_CASE("a very broken table is the program's fault") {
  auto table = made_up(5, 10);
  table.pieces[3].values.pop_back();
  CHECK_THROWS_AS((void)fit_style(table, {}, {}), BrokenPromise);
}
