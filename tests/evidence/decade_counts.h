// The yardstick: counts of ten characters over decades, taken as independent, every setting
// chosen by threefold scoring over the training lots.
#pragma once

#include "evidence/dating_score.h"

namespace backmark::evidence {

struct CountSettings {
  double smoothing = 10, pseudo = 5, lot_power = 0.5;
  double kappa = 0.6;  // exponent of all characters
  double mix = 0.1;    // share of the overall density
};

// classification, first material, last title word, gilding, printing, nation, number of
// materials, width, height, height to width
inline const std::vector<std::size_t> counted_characters{0, 1, 2, 3, 4, 5, 8, 9, 10, 12};

class DecadeCounts {
 public:
  DecadeCounts(const Carnegie& data,
               const std::vector<std::size_t>& training,
               const CountSettings& settings)
      : data_(data), settings_(settings) {
    StyleTable table;
    for (const std::size_t c : counted_characters) {
      table.characters.push_back(data.table.characters[c]);
    }
    std::map<int, double> sizes;
    for (const std::size_t i : training) {
      ++sizes[data.table.pieces[i].lot];
    }
    std::vector<std::size_t> members;
    std::vector<double> weights;
    overall_.assign(bins_.cells(), 0.01);
    for (const std::size_t i : training) {
      StylePiece piece = data.table.pieces[i];
      piece.values = values(i);
      members.push_back(members.size());
      weights.push_back(std::pow(sizes[piece.lot], -settings.lot_power));
      add_span(bins_, *piece.stated, weights.back(), overall_);
      table.pieces.push_back(std::move(piece));
    }
    Smoother(bins_.cells(), bins_.in_cells(15)).apply(overall_);
    double sum = 0;
    for (const double value : overall_) {
      sum += value;
    }
    for (double& value : overall_) {
      value /= sum;
    }
    curves_ = EvidenceCurves(table, members, weights, bins_,
                             {settings.smoothing, settings.pseudo, 10});
  }

  std::vector<std::vector<double>> lines(std::size_t piece) const {
    return curves_.lines(values(piece), std::nullopt);
  }

  std::vector<double> years(const std::vector<std::vector<double>>& lines,
                            double kappa,
                            double mix) const {
    std::vector<std::vector<double>> all = lines;
    std::vector<double> b(all.size(), kappa);
    all.emplace_back();
    for (const double p : overall_) {
      all.back().push_back(std::log(p));
    }
    b.push_back(1);
    std::vector<double> p = stacked(b, all, bins_.cells());
    for (std::size_t bin = 0; bin < p.size(); ++bin) {
      p[bin] = (1 - mix) * p[bin] + mix * overall_[bin];
    }
    return to_years(bins_, p);
  }

  std::vector<Prediction> predict(const std::vector<std::size_t>& hidden) const {
    std::vector<Prediction> predictions;
    for (const std::size_t i : hidden) {
      predictions.push_back({years(lines(i), settings_.kappa, settings_.mix), {}});
      limit(predictions.back().p, data_.table.pieces[i].latest);
    }
    return predictions;
  }

 private:
  std::vector<StyleValue> values(std::size_t piece) const {
    std::vector<StyleValue> values;
    for (const std::size_t c : counted_characters) {
      values.push_back(data_.table.pieces[piece].values[c]);
    }
    return values;
  }

  const Carnegie& data_;
  CountSettings settings_;
  YearGrid bins_{carnegie_axis, 10};
  std::vector<double> overall_;
  EvidenceCurves curves_;
};

// Tries 27 ways of counting times 24 of combining on three folds of the training lots.
inline CountSettings tuned_counts(const Carnegie& data,
                                  const std::vector<std::size_t>& training) {
  std::map<std::vector<double>, double> scores;
  for (int fold = 0; fold < 3; ++fold) {
    std::vector<std::size_t> inside;
    std::vector<std::size_t> outside;
    for (const std::size_t i : training) {
      // Lots are numbered in order of the file, which is by chance.
      (data.table.pieces[i].lot % 3 == fold ? outside : inside).push_back(i);
    }
    for (const double smoothing : {10.0, 18.0, 30.0}) {
      for (const double pseudo : {2.0, 8.0, 25.0}) {
        for (const double power : {0.0, 0.5, 1.0}) {
          const DecadeCounts counts(data, inside, {smoothing, pseudo, power, 0, 0});
          for (const std::size_t i : outside) {
            const auto lines = counts.lines(i);
            for (const double kappa : {0.3, 0.45, 0.6, 0.8, 1.0, 1.3}) {
              for (const double mix : {0.02, 0.08, 0.2, 0.35}) {
                Prediction one{counts.years(lines, kappa, mix), {}};
                limit(one.p, data.table.pieces[i].latest);
                scores[{smoothing, pseudo, power, kappa, mix}] +=
                    score(data, {i}, {one}).log_mass;
              }
            }
          }
        }
      }
    }
  }
  const auto best =
      std::max_element(scores.begin(), scores.end(),
                       [](const auto& a, const auto& b) { return a.second < b.second; });
  const auto& s = best->first;
  return {s[0], s[1], s[2], s[3], s[4]};
}

}  // namespace backmark::evidence
