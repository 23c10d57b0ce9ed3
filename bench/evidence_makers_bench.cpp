// Hands of real pieces whose lots are hidden whole, each lot and maker counted once.
// usage: bench_evidence_makers [objects.csv]
#include <ctime>

#include "evidence/dating_score.h"
#include "evidence/hands.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

// Sums over groups of one lot and maker: the mean of the group counts once.
struct NamedScore {
  std::map<std::vector<int>, std::vector<double>> groups;  // n, top 1, top 3, log loss
  std::vector<Answer> first;                               // of the leading name, by piece
  std::vector<double> first_weight;

  void add(const std::vector<int>& group, const HandJudgement& judged, int truth) {
    auto& sums = groups[group];
    sums.resize(4);
    sums[0] += 1;
    double p = 1e-6;
    for (std::size_t r = 0; r < judged.if_listed.size(); ++r) {
      if (judged.if_listed[r].maker == truth) {
        sums[1] += r == 0;
        sums[2] += r < 3;
        p = std::max(p, judged.if_listed[r].p);
      }
    }
    sums[3] -= std::log(p);
    first.push_back({judged.if_listed[0].p, judged.if_listed[0].maker == truth});
  }

  void print(const char* name) const {
    double sums[4] = {};
    double top = 0;
    for (const auto& [group, one] : groups) {
      for (int s = 1; s < 4; ++s) {
        sums[s] +=
            one[static_cast<std::size_t>(s)] / one[0] / static_cast<double>(groups.size());
      }
      top += one[1];
    }
    fmt::print(
        "{:12} {} pieces, {} groups: top-1 {:.2f}, top-3 {:.2f}, log loss {:.2f}, ECE {:.3f}, "
        "top-1 by piece {:.2f}\n",
        name, first.size(), groups.size(), sums[1], sums[2], sums[3], error(),
        top / static_cast<double>(first.size()));
  }

  // Calibration error with each group counted once.
  double error() const {
    double off[10] = {};
    std::size_t at = 0;
    for (const std::vector<int>& group : order) {
      const double weight = 1 / groups.at(group)[0];
      const auto bin = std::min(9, static_cast<int>(first[at].given * 10));
      off[bin] += weight * (first[at].given - (first[at].right ? 1 : 0));
      ++at;
    }
    double sum = 0;
    for (const double bin : off) {
      sum += std::abs(bin);
    }
    return sum / static_cast<double>(groups.size());
  }
  std::vector<std::vector<int>> order;
};

// Chance that a piece of the list is put above one that is not, each group counted once.
double area(std::vector<std::pair<double, bool>> answers) {
  std::sort(answers.begin(), answers.end());
  double below = 0;
  double pairs = 0;
  double off = 0;
  for (const auto& [p, on] : answers) {
    off += !on;
    below += on ? off : 0;
    pairs += on;
  }
  return below / (pairs * off);
}

}  // namespace

int main(int count, char** given) {
  const std::string path =
      count > 1 ? given[1] : BACKMARK_SHARED_DIR "/data/carnegie-decorative/objects.csv";
  const Carnegie data = read_carnegie(path);
  NamedScore plain;
  NamedScore dated;
  std::map<std::vector<int>, std::vector<double>> open;  // n, sum of p, on the list
  const std::clock_t start = std::clock();
  for (int s = 0; s < 20; ++s) {
    Random random = Random::stream(2026, static_cast<std::uint64_t>(s));
    const Split split = split_lots(data, chosen_pieces(data, false, random), 100000, random);
    const StyleTable training = training_table(data, split);
    const auto hands = fit_hands(training, carnegie_axis, {}, {{}, {}, 1});
    StyleSettings settings;
    settings.axis = carnegie_axis;
    const auto style = fit_style(training, settings, {{}, {}, 1});
    if (s == 0) {
      fmt::print("d'");
      for (const double d : hands->likeness().d) {
        fmt::print(" {:.2f}", d);
      }
      fmt::print(" open {:.3f}, share on the list {:.3f}\n", hands->likeness().open,
                 hands->learned_share());
    }
    for (const std::size_t i : split.hidden) {
      const auto& piece = data.table.pieces[i];
      if (!piece.maker) {
        continue;
      }
      const auto believed = style->judge({&piece.values, piece.lot, piece.latest}).p;
      const auto judged = hands->judge({&piece.values, piece.lot, &believed});
      const auto known = hands->pieces().find(*piece.maker);
      const bool on = known != hands->pieces().end() && known->second >= 5;
      const std::vector<int> group{s, piece.lot, *piece.maker};
      auto& sums = open[group];
      sums.resize(3);
      sums[0] += 1;
      sums[1] += judged.listed;
      sums[2] = on;
      if (on) {
        plain.order.push_back(group);
        plain.add(group, judged, *piece.maker);
        std::vector<double> years(416, 0.0);
        for (Year t = piece.stated->first; t <= piece.stated->last; t = t + 1) {
          years[static_cast<std::size_t>(t.value - 1600)] = 1.0 / piece.stated->length();
        }
        dated.order.push_back(group);
        dated.add(group, hands->judge({&piece.values, piece.lot, &years}), *piece.maker);
      }
    }
  }
  plain.print("on the list");
  dated.print("date known");
  std::vector<std::pair<double, bool>> answers;
  std::vector<Answer> chances;
  double loss = 0;
  double truth = 0;
  for (const auto& [group, sums] : open) {
    const double p = sums[1] / sums[0];
    answers.emplace_back(p, sums[2] > 0);
    chances.push_back({p, sums[2] > 0});
    loss -=
        std::log(std::max(1e-6, sums[2] > 0 ? p : 1 - p)) / static_cast<double>(open.size());
    truth += sums[2] / static_cast<double>(open.size());
  }
  fmt::print(
      "open set     {} groups, {:.3f} on the list: AUC {:.2f}, ECE {:.3f}, log loss {:.3f}\n",
      open.size(), truth, area(answers), calibration_error(chances), loss);
  fmt::print("{:.1f} CPU s\n", static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
}
