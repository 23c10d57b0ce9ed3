#include "evidence/component.h"

#include <cmath>
#include <doctest/doctest.h>

#include "base/result.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

std::vector<double> bump_log(double centre, double sd) {
  std::vector<double> log_p(100);
  for (std::size_t t = 0; t < 100; ++t) {
    const double z = (static_cast<double>(t) - centre) / sd;
    log_p[t] = std::log(std::exp(-0.5 * z * z) + 0.01);
  }
  return log_p;
}

const std::vector<double> flat(100, 0.01);

}  // namespace

TEST_CASE("a replaced cord does not date the clasp") {
  const std::vector<ComponentEvidence> parts{
      {bump_log(20, 6), 0.03}, {bump_log(22, 6), 0.05}, {bump_log(80, 6), 0.13}};
  const auto weighed = weigh_components(flat, parts, {10, 2});
  double mean = 0;
  for (std::size_t t = 0; t < 100; ++t) {
    mean += weighed.p[t] * static_cast<double>(t);
  }
  CHECK(mean == doctest::Approx(21).epsilon(0.1));
  CHECK(weighed.replaced_p[2] > 0.9);
  CHECK(weighed.replaced_p[0] < 0.05);
  CHECK(weighed.odd_p[3] > 0.9);
  CHECK(weighed.any_replaced_p > 0.9);
}

TEST_CASE(
    "of an early part and a late one the late one is the odd one: parts are replaced later") {
  const std::vector<ComponentEvidence> parts{{bump_log(80, 6), 0.05}, {bump_log(20, 6), 0.05}};
  const auto weighed = weigh_components(flat, parts, {10, 1});
  CHECK(weighed.replaced_p[1] < 0.05);
  CHECK(weighed.replaced_p[0] > 5 * 0.05);
  CHECK(weighed.odd_p[1] > 10 * weighed.odd_p[2]);
}

TEST_CASE(
    "with slope 1 the odds are those of plain enumeration over which parts were replaced") {
  const std::vector<ComponentEvidence> parts{
      {bump_log(30, 8), 0.04}, {bump_log(45, 8), 0.10}, {bump_log(50, 5), 0.08}};
  std::vector<double> base(100);
  double base_sum = 0;
  for (std::size_t t = 0; t < 100; ++t) {
    base[t] = 1 + static_cast<double>(t) / 50;
    base_sum += base[t];
  }
  for (double& x : base) {
    x /= base_sum;
  }
  const auto weighed = weigh_components(base, parts, {10, 1});
  std::vector<std::vector<double>> later;
  for (const auto& part : parts) {
    std::vector<double> mean(100);
    for (std::size_t t = 0; t < 100; ++t) {
      double sum = 0;
      int n = 0;
      for (std::size_t u = t + 10; u < 100; ++u) {
        sum += std::exp(part.weight_log[u]);
        ++n;
      }
      mean[t] = n > 0 ? sum / n : std::exp(part.weight_log[t]);
    }
    later.push_back(mean);
  }
  double total = 0;
  double replaced[3] = {0, 0, 0};
  std::vector<double> year(100, 0);
  for (unsigned world = 0; world < 8; ++world) {
    for (std::size_t t = 0; t < 100; ++t) {
      double p = base[t];
      for (std::size_t g = 0; g < 3; ++g) {
        const double rho = parts[g].replaced_share;
        p *= (world >> g & 1U) != 0 ? rho * later[g][t]
                                    : (1 - rho) * std::exp(parts[g].weight_log[t]);
      }
      total += p;
      year[t] += p;
      for (std::size_t g = 0; g < 3; ++g) {
        replaced[g] += (world >> g & 1U) != 0 ? p : 0;
      }
    }
  }
  for (std::size_t g = 0; g < 3; ++g) {
    CHECK(weighed.replaced_p[g] == doctest::Approx(replaced[g] / total));
  }
  for (std::size_t t = 0; t < 100; ++t) {
    CHECK(weighed.p[t] == doctest::Approx(year[t] / total));
  }
}

TEST_CASE("doubling the slope doubles the log of the factor and leaves the prior odds") {
  const std::vector<ComponentEvidence> parts{{bump_log(30, 8), 0.04}, {bump_log(60, 8), 0.10}};
  const auto logit = [](double p) { return std::log(p / (1 - p)); };
  const auto one = weigh_components(flat, parts, {10, 1});
  const auto two = weigh_components(flat, parts, {10, 2});
  const double prior = logit(0.10);
  CHECK(logit(two.replaced_p[1]) - prior ==
        doctest::Approx(2 * (logit(one.replaced_p[1]) - prior)));
}

TEST_CASE("near the end of the grid no replacement can be told") {
  const auto log_p = bump_log(50, 10);
  const auto later = later_log(log_p, 10);
  CHECK(later[95] == log_p[95]);
  CHECK(later[89] == doctest::Approx(log_p[99]));
  CHECK(later_log({}, 10).empty());
  CHECK(later_log({1.0, 2.0}, 10) == std::vector<double>{1.0, 2.0});
}

TEST_CASE("no component leaves the year as it was") {
  const auto weighed = weigh_components(flat, {}, {10, 2});
  CHECK(weighed.p == flat);
  CHECK(weighed.odd_p == std::vector<double>{1.0});
  CHECK(weighed.any_replaced_p == 0);
}
