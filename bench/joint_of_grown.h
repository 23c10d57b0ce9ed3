// A grown show as the joint sampler takes it by itself: fashions, habits, spans, signing, parts
// and statements in one model, learned from the pieces that are dated or signed.
#pragma once

#include <cmath>

#include "evidence/grown_show.h"
#include "evidence/joint_fit.h"

namespace backmark::bench {

inline evidence::JointSettings joint_settings_of_grown() {
  evidence::JointSettings settings;
  settings.replaced = {{1, 999}, {4, 36}, {4, 36}, {4, 36}, {1, 999}};
  return settings;
}

// What is told and recorded of a piece's year, as the reckoning weighs it (statement.h).
inline std::vector<double> year_weight_of(const evidence::Grown& grown,
                                          const evidence::GrowthPlan& plan,
                                          std::size_t i) {
  std::vector<double> weight(static_cast<std::size_t>(plan.years), 1);
  const int told = grown.told[i];
  const int got = grown.acquired[i];
  double inside = 0;
  for (int t = 0; t < plan.years; ++t) {
    inside += std::abs(told - plan.first_year - t) <= 5 ? 1 : 0;
  }
  for (int t = 0; t < plan.years; ++t) {
    double& here = weight[static_cast<std::size_t>(t)];
    const int year = plan.first_year + t;
    if (grown.dated[i] != 0) {
      here = year == grown.year[i] ? 1 : 0;
    } else if (told != 0 && inside > 0) {
      here = 0.3 + (std::abs(told - year) <= 5 ? 0.7 * plan.years / inside : 0);
    }
    if (got != 0) {
      here *= year > got ? 0 : std::exp(-(got - year) / 30.0);
    }
  }
  return weight;
}

inline evidence::JointShow joint_show_of(const evidence::Grown& grown,
                                         const evidence::GrowthPlan& plan) {
  evidence::JointShow show;
  show.years = {Year{plan.first_year}, Year{plan.first_year + plan.years - 1}};
  show.components = evidence::Grower::parts;
  for (std::size_t c = 0; c < grown.fashions.size(); ++c) {
    show.characters.push_back({static_cast<int>(grown.fashions[c].size()),
                               static_cast<int>(c) % evidence::Grower::parts});
  }
  for (const model::Maker& maker : grown.show.all<model::Maker>()) {
    evidence::SpanPrior span;
    if (maker.from) {
      span.start = maker.from->value;
      span.end = maker.to->value;
    }
    show.makers.push_back({span, std::nullopt});
  }
  for (std::size_t i = 0; i < grown.year.size(); ++i) {
    evidence::JointPiece piece;
    piece.values = grown.seen[i];
    piece.named = grown.has_name[i] != 0;
    piece.maker = piece.named ? grown.maker[i] + 1 : -1;
    piece.year_weight = year_weight_of(grown, plan, i);
    piece.teaches = piece.named || grown.dated[i] != 0;
    show.pieces.push_back(std::move(piece));
  }
  return show;
}

}  // namespace backmark::bench
