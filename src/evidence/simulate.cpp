#include "evidence/simulate.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <tuple>

#include "evidence/joint_chain.h"
#include "evidence/joint_fashion.h"

namespace backmark::evidence {
namespace {

std::vector<double> dirichlet(const std::vector<double>& weight, Random& random) {
  std::vector<double> p;
  for (const double w : weight) {
    p.push_back(random.gamma(w));
  }
  const double total = std::accumulate(p.begin(), p.end(), 0.0);
  if (!(total > 0)) {
    std::fill(p.begin(), p.end(), 0);
    p[random.weighted(weight)] = 1;
    return p;
  }
  for (double& x : p) {
    x /= total;
  }
  return p;
}

double beta(std::pair<double, double> prior, Random& random) {
  const double x = random.gamma(prior.first);
  const double y = random.gamma(prior.second);
  return x / (x + y);
}

void draw_span(Simulated& simulated, std::size_t maker, Random& random) {
  const JointMaker& known = simulated.show.makers[maker - 1];
  auto& state = simulated.truth;
  if (known.known_span) {
    std::tie(state.start[maker], state.end[maker]) = *known.known_span;
    return;
  }
  const SpanTable table(known.span, simulated.show.years);
  std::vector<double> weight;
  std::vector<std::pair<int, int>> spans;
  for (int s = 0; s < table.years(); ++s) {
    for (int e = s; e < std::min(table.years(), s + table.longest()); ++e) {
      spans.emplace_back(s, e);
      weight.push_back(std::exp(table.log_at(s, e)));
    }
  }
  std::tie(state.start[maker], state.end[maker]) = spans[random.weighted(weight)];
}

void draw_density(const JointSettings& settings, std::vector<double>& density, Random& random) {
  const int years = static_cast<int>(density.size());
  std::fill(density.begin(), density.end(), 1.0 / years);
  if (!settings.learn_density) {
    return;
  }
  const auto cells =
      dirichlet(std::vector<double>(static_cast<std::size_t>((years + 9) / 10), 0.5), random);
  for (int t = 0; t < years; ++t) {
    density[static_cast<std::size_t>(t)] =
        cells[static_cast<std::size_t>(t / 10)] / std::min(10, years - t / 10 * 10);
  }
}

void draw_shared(const SimulationPlan& plan,
                 const JointSettings& settings,
                 Simulated& simulated,
                 Random& random) {
  auto& state = simulated.truth;
  const int years = plan.years.length();
  for (const JointCharacter& character : plan.characters) {
    state.fashion_step.push_back(random.below(settings.fashion_step.size()));
    state.stick.push_back(draw_sticks_prior(character.values, years,
                                            settings.fashion_step[state.fashion_step.back()],
                                            settings.fashion_first_sd, random)
                              .log_odds);
    state.habit_share.push_back(beta(settings.habit_share, random));
    state.concentration.push_back(random.below(settings.concentration.size()));
  }
  state.replaced_share.assign(static_cast<std::size_t>(plan.components), 0);
  for (std::size_t g = 0; g < settings.replaced.size(); ++g) {
    state.replaced_share[g] = beta(settings.replaced[g], random);
  }
  std::vector<double> weight(static_cast<std::size_t>(plan.makers) + 1, settings.maker_weight);
  weight[0] = unlisted_weight(settings, plan.makers);
  state.maker_share = dirichlet(weight, random);
  state.open_share = state.maker_share;
  state.naming.assign(weight.size(), 0);
  state.start.assign(weight.size(), 0);
  state.end.assign(weight.size(), years - 1);
  for (std::size_t m = 1; m < weight.size(); ++m) {
    state.naming[m] = settings.signing ? beta({1, 1}, random) : 0;
    draw_span(simulated, m, random);
  }
  state.density.assign(static_cast<std::size_t>(years), 0);
  draw_density(settings, state.density, random);
  if (plan.stated_doubt) {
    simulated.show.doubts = {*plan.stated_doubt};
    state.doubt_share = {beta(*plan.stated_doubt, random)};
  }
  for (const int variants : plan.lineages) {
    simulated.show.lineages.push_back({variants});
    state.lineage.push_back(draw_lineage_prior(variants, years, settings.mark_overlap, random));
  }
}

// theta_m for each maker and row, drawn once for the whole show.
std::vector<double> draw_habits(const JointShow& show,
                                const JointLayout& layout,
                                const JointSettings& settings,
                                const JointState& state,
                                const std::vector<std::vector<double>>& fashion,
                                Random& random) {
  std::vector<double> theta(static_cast<std::size_t>((layout.makers + 1) * layout.rows), 0);
  for (int m = 1; m <= layout.makers; ++m) {
    const auto at = static_cast<std::size_t>(m);
    const int middle = (state.start[at] + state.end[at]) / 2;
    for (std::size_t c = 0; c < show.characters.size(); ++c) {
      const int values = show.characters[c].values;
      std::vector<double> weight;
      for (int v = 0; v < values; ++v) {
        const double base =
            settings.flat_habit_base
                ? 1.0 / values
                : fashion[c][static_cast<std::size_t>(v * layout.years + middle)];
        weight.push_back(settings.concentration[state.concentration[c]] * base + 1e-12);
      }
      const auto p = dirichlet(weight, random);
      std::copy(p.begin(), p.end(), theta.begin() + m * layout.rows + layout.first_row[c]);
    }
  }
  return theta;
}

// Likelihood of telling `told`, of each true year: normal on the grid, or talk that could be
// any year.
std::vector<double> statement_likelihood(int told, const SimulationPlan& plan) {
  // With a share of empty talk that is itself unknown, only what holds is told here.
  const double wrong = plan.stated_doubt ? 0 : plan.stated_wrong;
  const int years = plan.years.length();
  std::vector<double> like;
  for (int t = 0; t < years; ++t) {
    double total = 0;
    double here = 0;
    for (int d = 0; d < years; ++d) {
      const double z = (d - t) / plan.stated_sd;
      const double p = std::exp(-0.5 * z * z);
      total += p;
      here = d == told ? p : here;
    }
    like.push_back((1 - wrong) * here / total + wrong / years);
  }
  return like;
}

int draw_told(int year, const SimulationPlan& plan, Random& random) {
  std::vector<double> weight;
  for (int d = 0; d < plan.years.length(); ++d) {
    const double z = (d - year) / plan.stated_sd;
    weight.push_back(std::exp(-0.5 * z * z));
  }
  return static_cast<int>(random.weighted(weight));
}

// What the records tell of one piece whose truth is drawn.
void tell(const SimulationPlan& plan,
          const std::vector<std::vector<double>>& told_likelihood,
          Simulated& simulated,
          std::size_t piece,
          Random& random) {
  JointPiece& told = simulated.show.pieces[piece];
  const PieceState& truth = simulated.truth.piece[piece];
  const auto m = static_cast<std::size_t>(truth.maker);
  told.named = truth.maker > 0 && random.chance(simulated.truth.naming[m]);
  if (told.named || random.chance(plan.known_maker)) {
    told.maker = truth.maker;
  }
  if (random.chance(plan.dated)) {
    told.year_weight.assign(static_cast<std::size_t>(plan.years.length()), 0);
    told.year_weight[static_cast<std::size_t>(truth.year)] = 1;
    return;
  }
  if (random.chance(plan.stated)) {
    const bool right = !random.chance(plan.stated_doubt ? simulated.truth.doubt_share.front()
                                                        : plan.stated_wrong);
    const int year =
        right ? draw_told(truth.year, plan, random)
              : static_cast<int>(random.below(static_cast<std::size_t>(plan.years.length())));
    simulated.stated_year[piece] = year;
    simulated.stated_right[piece] = right ? 1 : 0;
    const auto& likelihood = told_likelihood[static_cast<std::size_t>(year)];
    if (plan.stated_doubt) {
      const auto years = static_cast<std::size_t>(plan.years.length());
      told.doubts = {
          {0, likelihood, std::vector<double>(years, 1.0 / static_cast<double>(years))}};
    } else {
      told.year_weight = likelihood;
    }
  }
}

void draw_mark(const SimulationPlan& plan,
               const JointSettings& settings,
               Simulated& simulated,
               std::size_t piece,
               Random& random) {
  if (simulated.show.lineages.empty() || !random.chance(plan.marked)) {
    return;
  }
  const std::size_t lineage = random.below(simulated.show.lineages.size());
  const auto curves = variant_curves(simulated.truth.lineage[lineage], plan.years.length());
  std::vector<double> weight;
  for (const auto& curve : curves) {
    weight.push_back(curve[static_cast<std::size_t>(simulated.truth.piece[piece].year)]);
  }
  const bool stray = random.chance(settings.mark_stray);
  const std::size_t variant = stray ? random.below(curves.size()) : random.weighted(weight);
  simulated.show.pieces[piece].marks = {{static_cast<int>(lineage), static_cast<int>(variant)}};
}

}  // namespace

void simulate_pieces(const SimulationPlan& plan,
                     const JointSettings& settings,
                     Simulated& simulated,
                     Random& random) {
  JointState& state = simulated.truth;
  JointShow& show = simulated.show;
  const int years = plan.years.length();
  const JointLayout layout(show);
  std::vector<std::vector<double>> fashion;
  for (std::size_t c = 0; c < plan.characters.size(); ++c) {
    fashion.push_back(fashion_of({plan.characters[c].values, years, state.stick[c]}));
  }
  const auto theta = draw_habits(show, layout, settings, state, fashion, random);
  std::vector<std::vector<double>> told_likelihood;
  for (int told = 0; told < years; ++told) {
    told_likelihood.push_back(statement_likelihood(told, plan));
  }
  show.pieces.assign(static_cast<std::size_t>(plan.pieces), {});
  state.piece.assign(show.pieces.size(), {});
  simulated.stated_year.assign(show.pieces.size(), -1);
  simulated.stated_right.assign(show.pieces.size(), 0);
  for (std::size_t i = 0; i < show.pieces.size(); ++i) {
    PieceState& piece = state.piece[i];
    piece.maker = static_cast<int>(random.weighted(state.maker_share));
    const auto m = static_cast<std::size_t>(piece.maker);
    piece.year = m == 0
                     ? static_cast<int>(random.weighted(state.density))
                     : state.start[m] + static_cast<int>(random.below(static_cast<std::size_t>(
                                            state.end[m] - state.start[m] + 1)));
    piece.own.assign(plan.characters.size(), 0);
    piece.replaced_year.assign(static_cast<std::size_t>(plan.components), -1);
    for (std::size_t g = 0; g < settings.replaced.size(); ++g) {
      const int from = piece.year + settings.replaced_gap;
      if (from < years && random.chance(state.replaced_share[g])) {
        piece.replaced_year[g] =
            from + static_cast<int>(random.below(static_cast<std::size_t>(years - from)));
      }
    }
    for (std::size_t c = 0; c < plan.characters.size(); ++c) {
      const int later =
          piece.replaced_year[static_cast<std::size_t>(plan.characters[c].component)];
      const bool own = later < 0 && m > 0 && random.chance(state.habit_share[c]);
      piece.own[c] = own ? 1 : 0;
      std::vector<double> weight;
      for (int v = 0; v < plan.characters[c].values; ++v) {
        weight.push_back(own ? theta[m * static_cast<std::size_t>(layout.rows) +
                                     static_cast<std::size_t>(layout.first_row[c] + v)]
                             : fashion[c][static_cast<std::size_t>(
                                   v * years + (later < 0 ? piece.year : later))]);
      }
      const int value = static_cast<int>(random.weighted(weight));
      show.pieces[i].values.push_back(random.chance(plan.missing) ? -1 : value);
    }
    tell(plan, told_likelihood, simulated, i, random);
    draw_mark(plan, settings, simulated, i, random);
  }
}

Simulated simulate_show(const SimulationPlan& plan,
                        const JointSettings& settings,
                        Random& random) {
  Simulated simulated;
  simulated.show.years = plan.years;
  simulated.show.components = plan.components;
  simulated.show.characters = plan.characters;
  simulated.show.makers.assign(static_cast<std::size_t>(plan.makers), {});
  draw_shared(plan, settings, simulated, random);
  simulate_pieces(plan, settings, simulated, random);
  return simulated;
}

}  // namespace backmark::evidence
