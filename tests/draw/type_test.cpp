#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

#include "base/random.h"
#include "draw/break_lines.h"
#include "draw/fonts.h"

using namespace backmark;
using namespace backmark::draw;

namespace {

const Fonts& fonts() {
  static const Fonts loaded = [] {
    auto result = Fonts::load();
    REQUIRE_MESSAGE(result.ok(), "the font packages of scripts/install-packages are needed");
    return std::move(*result);
  }();
  return loaded;
}

Style in(Face face, double size_pt) {
  Style style;
  style.face = face;
  style.size_pt = size_pt;
  return style;
}

// A paragraph of random words at natural width.
std::vector<BreakPlace> random_places(Random& random, int words) {
  std::vector<BreakPlace> places;
  double at = 0;
  double spaces = 0;
  int letters = 0;
  for (int word = 0; word < words; ++word) {
    at += 4 + 14 * random.uniform();
    letters += 5;
    const bool last = word + 1 == words;
    places.push_back({last ? BreakKind::end : BreakKind::space, at, 0, at + 0.85, 0, spaces,
                      spaces + 0.85, letters});
    at += 0.85;
    spaces += 0.85;
  }
  return places;
}

}  // namespace

TEST_CASE("width grows with size in proportion, and kerning makes a pair narrower") {
  const double one = fonts().width("Long Quay", in(Face::sans, 8));
  CHECK(fonts().width("Long Quay", in(Face::sans, 16)) == doctest::Approx(2 * one));
  const Style text = in(Face::text, 12);
  CHECK(fonts().width("AV", text) < fonts().width("A", text) + fonts().width("V", text));
}

TEST_CASE("tabular figures are all of one width, proportional ones are not") {
  Style style = in(Face::sans, 8);
  CHECK(fonts().width("1", style) < fonts().width("0", style));
  style.tabular = true;
  for (const char* figure : {"1", "2", "3", "4", "5", "6", "7", "8", "9"}) {
    CHECK(fonts().width(figure, style) == doctest::Approx(fonts().width("0", style)));
  }
}

TEST_CASE("a letter no face has is named") {
  CHECK(fonts().missing("Ennet", in(Face::text, 12)).empty());
  CHECK(fonts().missing("\u4E00", in(Face::text, 12)) == std::u32string(1, 0x4E00));
}

TEST_CASE("the whole paragraph weighed at once is never worse than line by line") {
  Random random(3);
  for (int trial = 0; trial < 200; ++trial) {
    const auto places = random_places(random, 20 + static_cast<int>(random.below(80)));
    const Measure measure{118};
    Measure relaxed = measure;
    relaxed.tightest = -tightest_space / 0.24;
    const double best = demerits(places, break_justified(places, measure), relaxed);
    CHECK(best <= demerits(places, break_first_fit(places, measure), relaxed));
  }
}

TEST_CASE("ragged lines are the best of all ways to break a short paragraph") {
  Random random(9);
  const auto cost = [](const std::vector<BreakPlace>& places, const std::vector<int>& breaks) {
    double sum = 0;
    int from = -1;
    for (const int to : breaks) {
      const double start = from < 0 ? 0 : places[static_cast<std::size_t>(from)].next_at;
      const double slack = 60 - (places[static_cast<std::size_t>(to)].at - start);
      if (slack < 0) {
        return HUGE_VAL;
      }
      const bool last = to + 1 == static_cast<int>(places.size());
      const int letters = places[static_cast<std::size_t>(to)].letters_at -
                          (from < 0 ? 0 : places[static_cast<std::size_t>(from)].letters_at);
      const bool scrap = from >= 0 && (60 - slack < 10 || letters < 7);
      sum += last ? (scrap ? 60 * 60 : 0) : slack * slack;
      from = to;
    }
    return sum;
  };
  for (int trial = 0; trial < 50; ++trial) {
    const auto places = random_places(random, 12);
    // The naive twin: every one of the 2^11 choices.
    double least = HUGE_VAL;
    for (unsigned choice = 0; choice < 2048; ++choice) {
      std::vector<int> breaks;
      for (int at = 0; at < 11; ++at) {
        if ((choice >> static_cast<unsigned>(at)) & 1U) {
          breaks.push_back(at);
        }
      }
      breaks.push_back(11);
      least = std::min(least, cost(places, breaks));
    }
    CHECK(cost(places, break_ragged(places, {60})) == doctest::Approx(least));
  }
}

namespace {

// As random_places, with a place to divide in the midst of every third word.
std::vector<BreakPlace> random_places_with_hyphens(Random& random, int words) {
  std::vector<BreakPlace> places;
  double at = 0;
  double spaces = 0;
  int letters = 0;
  for (int word = 0; word < words; ++word) {
    const double width = 4 + 14 * random.uniform();
    if (word % 3 == 1) {
      const auto kind = word % 2 == 0 ? BreakKind::hyphen_own : BreakKind::hyphen_existing;
      places.push_back(
          {kind, at + width / 2, 0.5, at + width / 2, 0, spaces, spaces, letters + 3});
    }
    at += width;
    letters += 6;
    const bool last = word + 1 == words;
    places.push_back({last ? BreakKind::end : BreakKind::space, at, 0, at + 0.85, 0, spaces,
                      spaces + 0.85, letters});
    at += 0.85;
    spaces += 0.85;
  }
  return places;
}

// As a share of the natural one; lines that fill themselves count as 1.
double widest_space(const std::vector<BreakPlace>& places,
                    const std::vector<int>& breaks,
                    const Measure& measure) {
  double widest = 1;
  int from = -1;
  for (const int to : breaks) {
    if (places[static_cast<std::size_t>(to)].kind != BreakKind::end) {
      widest = std::max(widest, 1 + 0.5 * fit_line(places, from, to, measure).ratio);
    }
    from = to;
  }
  return widest;
}

}  // namespace

// The naive twin of D. E. Knuth and M. F. Plass (1981): every choice of breaks, each weighed by
// itself.
TEST_CASE("justified lines are the best of all ways to break a short paragraph") {
  Random random(27);
  int possible = 0;
  for (int trial = 0; trial < 60; ++trial) {
    const auto places = random_places_with_hyphens(random, 11);
    const int choices = static_cast<int>(places.size()) - 1;
    const Measure measure{38.0 + static_cast<double>(random.below(30)), 4.233,
                          trial % 2 == 0 ? 0.0 : 5.0};
    double least = HUGE_VAL;
    std::vector<int> best;
    for (unsigned choice = 0; choice < 1U << static_cast<unsigned>(choices); ++choice) {
      std::vector<int> breaks;
      for (int at = 0; at < choices; ++at) {
        if ((choice >> static_cast<unsigned>(at)) & 1U) {
          breaks.push_back(at);
        }
      }
      breaks.push_back(choices);
      if (const double one = demerits(places, breaks, measure); one < least) {
        least = one;
        best = breaks;
      }
    }
    const auto found = break_justified(places, measure);
    const bool holes = least < HUGE_VAL && widest_space(places, best, measure) > 1.5;
    possible += least < HUGE_VAL ? 1 : 0;
    if (least < HUGE_VAL && !holes) {
      CHECK(demerits(places, found, measure) == doctest::Approx(least));
    }
    // A paragraph with holes is tried again with narrower spaces, and gets no worse ones.
    if (holes) {
      CHECK(widest_space(places, found, measure) <= widest_space(places, best, measure) + 1e-9);
    }
  }
  CHECK(possible >= 30);  // else nothing was tested
}
