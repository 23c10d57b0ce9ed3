// Dates of real pieces whose lots are hidden whole, against tuned decade counts.
// usage: bench_evidence_dates [objects.csv] [one|all|speed|small]
#include <ctime>

#include "evidence/decade_counts.h"
#include "evidence/hands.h"

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

Sums measure(const Carnegie& data, bool one, std::size_t most_lots, int splits) {
  Sums sums;
  for (int s = 0; s < splits; ++s) {
    Random random = Random::stream(2026 + (most_lots < 1000 ? most_lots : 0),
                                   static_cast<std::uint64_t>(s));
    const auto chosen = chosen_pieces(data, one, random);
    const Split split = split_lots(data, chosen, most_lots, random);
    StyleSettings settings;
    settings.axis = carnegie_axis;
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

// The pieces grown to a number, each copy in a lot of its own copy and with a quarter of its
// values taken from other pieces, so that no two are the same.
StyleTable grown(const Carnegie& data, std::size_t pieces) {
  StyleTable table = data.table;
  Random random(7);
  const auto first = data.table.pieces.size();
  for (std::size_t i = first; i < pieces; ++i) {
    StylePiece piece = data.table.pieces[i % first];
    piece.lot += static_cast<int>(100000 * (i / first));
    for (std::size_t c = 0; c < piece.values.size(); ++c) {
      if (random.chance(0.25)) {
        piece.values[c] = data.table.pieces[random.below(first)].values[c];
      }
    }
    table.pieces.push_back(std::move(piece));
  }
  table.pieces.resize(pieces);
  return table;
}

void measure_speed(const Carnegie& data) {
  StyleSettings settings;
  settings.axis = carnegie_axis;
  for (const std::size_t pieces :
       std::vector<std::size_t>{500, 1000, 1929, 3000, 10000, 20000}) {
    const StyleTable table = grown(data, pieces);
    const double start = cpu_seconds();
    const auto style = fit_style(table, settings, {{}, {}, 1});
    const double fitted = cpu_seconds();
    const auto hands = fit_hands(table, carnegie_axis, {}, {{}, {}, 1});
    const double handed = cpu_seconds();
    double sum = 0;
    for (std::size_t i = 0; i < 200; ++i) {
      const auto& piece = table.pieces[i];
      const auto years = style->judge({&piece.values, piece.lot, piece.latest, 10, true}).p;
      sum += hands->judge({&piece.values, piece.lot, &years}).listed;
    }
    const double judged = cpu_seconds();
    fmt::print(
        "{:6} pieces, {} makers: fit {:.2f} CPU s, hands {:.2f} CPU s, one piece {:.2f} ms "
        "(left-out score {:.3f}, on the list {:.2f})\n",
        pieces, hands->pieces().size(), fitted - start, handed - fitted,
        (judged - handed) * 1000 / 200, style->left_out_score(), sum / 200);
  }
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
    print("one", measure(data, true, 100000, 10));
  }
  if (what.empty() || what == "all") {
    print("all", measure(data, false, 100000, 10));
  }
  if (what.empty() || what == "speed") {
    measure_speed(data);
  }
  if (what.empty() || what == "small") {
    for (const std::size_t lots : std::vector<std::size_t>{40, 60, 120, 250}) {
      print(fmt::format("{} lots", lots).c_str(), measure(data, true, lots, 20));
    }
  }
}
