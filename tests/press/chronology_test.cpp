#include "press/chronology.h"

#include <doctest/doctest.h>

using namespace backmark;
using namespace backmark::press;

namespace {

constexpr YearSpan span{{1940}, {1949}};

model::YearBelief even(int first, int last) {
  model::YearBelief belief{span, std::vector<double>(10, 0.0)};
  for (int year = first; year <= last; ++year) {
    belief.p[static_cast<std::size_t>(year - 1940)] = 1.0 / (last - first + 1);
  }
  return belief;
}

}  // namespace

TEST_CASE(
    "between two pieces of known years a fitting was in use, and outside it is not said") {
  const auto first = even(1942, 1942);
  const auto last = even(1945, 1945);
  const auto p = in_use({&first, &last}, span);
  REQUIRE(p.size() == 10);
  CHECK(p[1] == 0);
  for (std::size_t at = 2; at <= 5; ++at) {
    CHECK(p[at] == doctest::Approx(1));
  }
  CHECK(p[6] == 0);
  CHECK(in_use({}, span).empty());
}

TEST_CASE("the start of a band fades as the odds of the first piece do") {
  const auto first = even(1940, 1943);  // a quarter each year
  const auto last = even(1948, 1948);
  const auto p = in_use({&first, &last}, span);
  CHECK(p[0] == doctest::Approx(0.25));
  CHECK(p[1] == doctest::Approx(0.5));
  CHECK(p[3] == doctest::Approx(1));
}

TEST_CASE("a maker is at work for certain amid a long span and by one half at its edge") {
  model::Maker maker;
  maker.from = Year{1942};
  maker.from_sd = 1;
  const auto p = at_work(maker, span);
  REQUIRE(p.size() == 10);
  CHECK(p[9] == doctest::Approx(1).epsilon(1e-6));
  CHECK(p[2] == doctest::Approx(0.6915).epsilon(1e-3));  // normal table at 0.5
  CHECK(at_work(model::Maker{}, span).empty());
}
