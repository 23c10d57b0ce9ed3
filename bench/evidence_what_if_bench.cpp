// How long one piece takes to be judged again after a change, against a whole reckoning, and
// what the whole takes of processor and memory. Usage: bench_evidence_what_if [PIECES MAKERS
// [THREADS]]
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdlib>
#include <ctime>
#include <sys/resource.h>

#include "base/text.h"
#include "evidence/grown_show.h"
#include "evidence/reckon.h"

namespace {

using namespace backmark;

double seconds_since(std::chrono::steady_clock::time_point start) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

double peak_mb() {
  rusage used{};
  getrusage(RUSAGE_SELF, &used);
  return static_cast<double>(used.ru_maxrss) / 1024;
}

void measure(int pieces, int makers, int threads) {
  const evidence::Grown grown =
      evidence::Grower({.pieces = pieces, .makers = makers, .seed = 7}).grow();
  const std::clock_t began = std::clock();
  auto start = std::chrono::steady_clock::now();
  const auto reckoning = evidence::Reckoning::fit(grown.show, {}, {.threads = threads});
  const double fit = seconds_since(start);
  const double fit_cpu = static_cast<double>(std::clock() - began) / CLOCKS_PER_SEC;
  const auto& characters = grown.show.all<model::Character>();
  std::vector<double> times;
  double worst_sum = 0;
  for (std::size_t i = 0; i < 200; ++i) {
    const std::size_t row = i * static_cast<std::size_t>(pieces) / 200;
    const auto& observations =
        grown.show.observations_of(grown.show.all<model::Piece>()[row].id);
    const auto character = characters[i % characters.size()].id;
    const std::string value(observations.empty() ? "new"
                                                 : grown.show.text(observations[0].value));
    start = std::chrono::steady_clock::now();
    const auto belief =
        reckoning->judge_if(row, {.seen = {{.character = character, .values = {value}}}});
    times.push_back(1000 * seconds_since(start));
    double sum = 0;
    for (const double p : belief.year.p) {
      sum += p;
    }
    worst_sum = std::max(worst_sum, std::abs(sum - 1));
  }
  const std::clock_t judging = std::clock();
  start = std::chrono::steady_clock::now();
  const auto all = reckoning->judge_all({.threads = threads});
  const double judged = seconds_since(start);
  const double judged_cpu = static_cast<double>(std::clock() - judging) / CLOCKS_PER_SEC;
  std::sort(times.begin(), times.end());
  fmt::print(
      "{:>6} pieces {:>4} makers  what-if median {:.2f} ms, 95 in 100 {:.2f} ms, worst {:.2f} "
      "ms; fit {:.1f} s ({:.1f} CPU s), all pieces {:.1f} s ({:.1f} CPU s), {:.0f} MB; R-hat "
      "to "
      "{:.3f}; a refit is {:.0f} what-ifs; sums off by {:.1g}\n",
      pieces, makers, times[100], times[190], times.back(), fit, fit_cpu, judged, judged_cpu,
      peak_mb(), all->rhat_max, 1000 * (fit + judged) / times[100], worst_sum);
}

}  // namespace

int main(int argc, char** argv) {
  if (argc >= 3) {
    measure(std::atoi(argv[1]), std::atoi(argv[2]), argc > 3 ? std::atoi(argv[3]) : 1);
    return 0;
  }
  measure(3000, 40, 1);
  measure(3000, 200, 1);
  measure(10000, 200, 1);
}
