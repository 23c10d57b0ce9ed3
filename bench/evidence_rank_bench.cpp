// Simulation-based calibration of the joint sampler, whole and with three planted faults.
// usage: bench_evidence_rank [repeats] [repeats of the controls]
#include <algorithm>
#include <cstdlib>
#include <ctime>

#include "base/text.h"
#include "evidence/rank_test_show.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

void run(const char* name, SamplerFault fault, int repeats, std::uint64_t seed) {
  JointSettings broken = small_settings();
  broken.fault = fault;
  const std::clock_t start = std::clock();
  const auto results =
      rank_test({repeats, 200, 10, 99, 10}, small_plan(), small_settings(), broken, seed);
  const double seconds = static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
  const double limit = 0.05 / static_cast<double>(results.size());
  const auto worst = std::min_element(results.begin(), results.end(),
                                      [](auto& a, auto& b) { return a.p < b.p; });
  const auto below =
      std::count_if(results.begin(), results.end(), [](auto& r) { return r.p < 0.05; });
  const auto failed =
      std::count_if(results.begin(), results.end(), [&](auto& r) { return r.p < limit; });
  fmt::print(
      "{}: {} repeats, {} quantities, {} below 0.05, smallest p {:.2g} ({}), {} below {:.2g}, "
      "{:.0f} CPU s: {}\n",
      name, repeats, results.size(), below, worst->p, worst->name, failed, limit, seconds,
      failed == 0 ? "uniform" : "not uniform");
  for (const RankResult& result : results) {
    if (result.p < 0.05 || std::abs(result.lean_z) > 3) {
      fmt::print("    {}: p {:.2g}, lean z {:.1f}\n", result.name, result.p, result.lean_z);
    }
  }
}

}  // namespace

int main(int count, char** arguments) {
  const int repeats = count > 1 ? std::atoi(arguments[1]) : 500;
  const int controls = count > 2 ? std::atoi(arguments[2]) : 200;
  run("sampler", SamplerFault::none, repeats, 7001);
  run("1/L dropped", SamplerFault::length_dropped, controls, 7101);
  run("stale table counts", SamplerFault::stale_tables, controls, 7201);
  run("own year in the habit base", SamplerFault::own_year_base, controls, 7301);
  return 0;
}
