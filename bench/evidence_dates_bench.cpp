// Dates of real pieces whose lots are hidden whole, against tuned decade counts.
// usage: bench_evidence_dates [objects.csv] [one|all|small|speed]
#include <ctime>

#include "evidence/decade_counts.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

double cpu_seconds() {
  return static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

struct Sums {
  double n = 0, style = 0, counts = 0, style_lot = 0, counts_lot = 0, error = 0, cpu = 0;
  double gap_squares = 0, cover[3] = {};
  std::vector<std::vector<Answer>> before = std::vector<std::vector<Answer>>(3);
};

void add(Sums& sums, const DatingScore& style, const DatingScore& counts, double cpu) {
  sums.n += 1;
  sums.style += style.log_mass;
  sums.counts += counts.log_mass;
  sums.style_lot += style.by_lot;
  sums.counts_lot += counts.by_lot;
  sums.error += style.median_error;
  sums.cpu += cpu;
  const double gap = style.log_mass - counts.log_mass;
  sums.gap_squares += gap * gap;
  for (int s = 0; s < 3; ++s) {
    sums.cover[s] += style.cover[s];
  }
  for (std::size_t y = 0; y < 3; ++y) {
    sums.before[y].insert(sums.before[y].end(), style.before[y].begin(), style.before[y].end());
  }
}

void print(const char* name, const Sums& sums) {
  const double gap = (sums.style - sums.counts) / sums.n;
  const double sd = std::sqrt(std::max(0.0, sums.gap_squares / sums.n - gap * gap));
  fmt::print(
      "{:10} log mass {:.3f}, counts {:.3f}, gap {:+.3f} (sd {:.2f}); by lot {:.3f}, gap "
      "{:+.3f}\n",
      name, sums.style / sums.n, sums.counts / sums.n, gap, sd, sums.style_lot / sums.n,
      (sums.style_lot - sums.counts_lot) / sums.n);
  fmt::print("{:10} cover {:.3f} {:.3f} {:.3f}, median error {:.1f} years, fit {:.2f} CPU s\n",
             "", sums.cover[0] / sums.n, sums.cover[1] / sums.n, sums.cover[2] / sums.n,
             sums.error / sums.n, sums.cpu / sums.n);
  for (std::size_t y = 0; y < 3 && !sums.before[y].empty(); ++y) {
    double sure = 0;
    double right = 0;
    for (const Answer& answer : sums.before[y]) {
      sure += answer.given > 0.95;
      right += answer.given > 0.95 && answer.right;
    }
    fmt::print("{:10} made before {}: ECE {:.3f}; given above 0.95: {:.3f} right of {}\n", "",
               asked_years[y].value, calibration_error(sums.before[y]), right / sure, sure);
  }
}

Sums measure(
    const Carnegie& data, bool one, std::size_t most_lots, int splits, bool recalibrate) {
  Sums sums;
  for (int s = 0; s < splits; ++s) {
    Random random = Random::stream(2026 + (most_lots < 1000 ? most_lots : 0),
                                   static_cast<std::uint64_t>(s));
    const auto chosen = chosen_pieces(data, one, random);
    const Split split = split_lots(data, chosen, most_lots, random);
    StyleSettings settings;
    settings.axis = carnegie_axis;
    settings.rank_pseudo_count = recalibrate ? 100 : 0;
    const double start = cpu_seconds();
    const auto style = fit_style(training_table(data, split), settings, {{}, {}, 1});
    const double cpu = cpu_seconds() - start;
    const DecadeCounts counts(data, split.training, tuned_counts(data, split.training));
    add(sums, score(data, split.hidden, predict(data, *style, split.hidden)),
        score(data, split.hidden, counts.predict(split.hidden)), cpu);
    if (s == 0) {
      fmt::print("  first split: {} training, {} hidden, left-out score {:.3f}\n  d",
                 split.training.size(), split.hidden.size(), style->left_out_score());
      for (const double d : style->likeness().d) {
        fmt::print(" {:.2f}", d);
      }
      fmt::print(" open {:.2f}\n  b", style->likeness().open);
      for (const double b : style->weights()) {
        fmt::print(" {:.2f}", b);
      }
      fmt::print("\n");
    }
  }
  return sums;
}

}  // namespace

int main(int count, char** given) {
  const std::string path =
      count > 1 ? given[1] : BACKMARK_SHARED_DIR "/data/carnegie-decorative/objects.csv";
  const std::string what = count > 2 ? given[2] : "";
  const Carnegie data = read_carnegie(path);
  fmt::print("{} pieces, {} characters\n", data.table.pieces.size(),
             data.table.characters.size());
  if (what.empty() || what == "one") {
    print("one", measure(data, true, 100000, 5, true));
  }
  if (what.empty() || what == "all") {
    print("all", measure(data, false, 100000, 5, true));
  }
  if (what.empty() || what == "small") {
    for (const std::size_t lots : {40, 60, 120, 250}) {
      print(fmt::format("{} lots", lots).c_str(), measure(data, true, lots, 20, true));
    }
  }
}
