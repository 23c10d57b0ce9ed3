// Who made a piece: by style, by what is said, and what a maker's working years say of its
// year.
#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

#include "evidence/evenly.h"
#include "evidence/reckon_inside.h"

namespace backmark::evidence {

namespace {

constexpr double least_share = 1e-4;  // of a maker whom only a statement names
constexpr double least_p = 1e-12;     // what a year keeps, whatever is said

double mass_inside(const std::vector<double>& p, YearSpan axis, YearSpan stated) {
  double mass = 0;
  for (std::size_t t = 0; t < p.size(); ++t) {
    const int year = axis.first.value + static_cast<int>(t);
    mass += year >= stated.first.value && year <= stated.last.value ? p[t] : 0;
  }
  return mass;
}

}  // namespace

void Reckoning::Inside::learn_named_odds() {
  if (settings.unlisted_share >= 0 || gathered.pieces.empty()) {
    return;
  }
  double named = 1;  // one of each kind to begin with
  for (const GatheredPiece& piece : gathered.pieces) {
    named += piece.makers.empty() ? 0 : 1;
  }
  named_odds = named / (static_cast<double>(gathered.pieces.size()) + 2 - named);
}

// A maker counts once, and once more for each piece that is known to be theirs.
void Reckoning::Inside::learn_usual_hands() {
  const auto& makers = show->all<model::Maker>();
  std::vector<double> weight(makers.size(), 0);
  for (std::size_t m = 0; m < makers.size(); ++m) {
    weight[m] = makers[m].kind == model::MakerKind::unrecorded ? 0 : 1;
  }
  for (const StylePiece& piece : gathered.style.pieces) {
    if (piece.maker) {
      weight[static_cast<std::size_t>(*piece.maker)] += 1;
    }
  }
  const double all = std::accumulate(weight.begin(), weight.end(), 0.0);
  const double listed = settings.unlisted_share >= 0 ? 1 - settings.unlisted_share
                                                     : named_odds / (1 + named_odds);
  usual_hands.assign(makers.size() + 1, 0);
  usual_hands.back() = all > 0 ? 1 - listed : 1;
  for (std::size_t m = 0; m < makers.size() && all > 0; ++m) {
    usual_hands[m] = listed * weight[m] / all;
  }
}

// By the log mass on the stated years of dated pieces that nobody named, judged as if undated,
// with a normal prior about the usual power.
void Reckoning::Inside::learn_makers_power(const Watch& watch) {
  constexpr std::size_t most_pieces = 300;
  constexpr std::array<double, 5> powers{0, 0.25, 0.5, 0.75, 1};
  constexpr double prior_sd = 0.2;
  std::vector<std::size_t> rows;
  for (std::size_t i = 0; i < gathered.pieces.size(); ++i) {
    if (gathered.style.pieces[i].stated && gathered.pieces[i].makers.empty()) {
      rows.push_back(i);
    }
  }
  rows = evenly_spread(rows, most_pieces);
  std::vector<std::array<double, powers.size()>> score(rows.size());
  in_shares(rows.size(), watch.threads, [&](std::size_t r) {
    if (watch.stop.stop_requested()) {
      return;
    }
    const Asked one = asked(rows[r], {.known_year = true});
    Judged before;
    before.axis = axis;
    weigh_style(one, false, false, before);
    weigh_parts(one, before);
    weigh_said(one, before);
    const std::vector<double> prior = maker_prior(one, before.p);
    for (std::size_t k = 0; k < powers.size(); ++k) {
      Judged judged{.p = before.p};
      join_years(prior, powers[k], judged);
      score[r][k] = std::log(std::max(
          least_p, mass_inside(judged.p, axis, *gathered.style.pieces[rows[r]].stated)));
    }
  });
  double best = -std::numeric_limits<double>::infinity();
  for (std::size_t k = 0; k < powers.size(); ++k) {
    const double off = (powers[k] - usual_makers_power) / prior_sd;
    double total = -0.5 * off * off;
    for (const auto& one : score) {
      total += one[k];
    }
    if (total > best) {
      best = total;
      style_makers_power = powers[k];
    }
  }
}

// A piece of a known place is by a maker of that place nine times in ten, if by anyone listed.
void Reckoning::Inside::weigh_places(model::Word place, std::vector<double>& prior) const {
  constexpr double at_home = 0.9;
  const auto& makers = show->all<model::Maker>();
  double here = 0;
  double away = 0;
  for (std::size_t m = 0; m < makers.size(); ++m) {
    if (makers[m].place) {
      (makers[m].place == place ? here : away) += prior[m];
    }
  }
  if (!place || !(here > 0) || !(away > 0)) {
    return;
  }
  const double all = here + away;
  for (std::size_t m = 0; m < makers.size(); ++m) {
    if (makers[m].place) {
      prior[m] *= makers[m].place == place ? at_home * all / here : (1 - at_home) * all / away;
    }
  }
}

// A maker of whose years nothing is known worked when the others of the place did.
void Reckoning::Inside::borrow_years_of_places() {
  const auto& makers = show->all<model::Maker>();
  const auto years = static_cast<std::size_t>(axis.length());
  struct Place {
    double floor = 0, makers = 0;
    std::vector<double> rise;
  };
  std::map<model::Word, Place> places;
  for (std::size_t m = 0; m < makers.size(); ++m) {
    if (makers[m].place && !at_work[m].rise.empty()) {
      Place& place = places[makers[m].place];
      place.rise.resize(years, 0);
      place.floor += at_work[m].floor;
      place.makers += 1;
      for (std::size_t t = 0; t < at_work[m].rise.size(); ++t) {
        place.rise[at_work[m].first + t] += at_work[m].rise[t];
      }
    }
  }
  for (std::size_t m = 0; m < makers.size(); ++m) {
    const auto found = places.find(makers[m].place);
    if (found != places.end() && at_work[m].rise.empty() &&
        makers[m].kind != model::MakerKind::unrecorded) {
      const Place& place = found->second;
      at_work[m] = {place.floor / place.makers, 0, place.rise};
      for (double& rise : at_work[m].rise) {
        rise /= place.makers;
      }
    }
  }
}

std::vector<double> Reckoning::Inside::maker_prior(const Asked& asked,
                                                   const std::vector<double>& year) const {
  std::vector<double> prior = usual_hands;
  weigh_places(asked.said.place, prior);
  if (!hands) {
    return prior;
  }
  const HandJudgement by_style =
      hands->judge({.values = &asked.values, .lot = asked.lot, .years = &year});
  const double listed =
      by_style.listed * named_odds / (by_style.listed * named_odds + 1 - by_style.listed);
  // "Nobody whom style can tell" may still be a maker with few pieces to go by.
  for (const HandChance& chance : by_style.if_listed) {
    prior[static_cast<std::size_t>(chance.maker)] = 0;
  }
  const double others = std::accumulate(prior.begin(), prior.end(), 0.0);
  for (double& p : prior) {
    p *= (1 - listed) / others;
  }
  for (const HandChance& chance : by_style.if_listed) {
    prior[static_cast<std::size_t>(chance.maker)] = listed * chance.p;
  }
  return prior;
}

void Reckoning::Inside::weigh_makers(const Asked& asked, Judged& out) const {
  std::vector<double> prior = maker_prior(asked, out.p);
  for (const SaidOfMaker& said : asked.said.makers) {
    // r on the one named; the rest keep their shares of 1 - r.
    const double before = std::max(least_share, prior[said.maker]);
    for (std::size_t m = 0; m < prior.size(); ++m) {
      prior[m] = m == said.maker
                     ? said.reliability
                     : prior[m] / std::max(least_p, 1 - before) * (1 - said.reliability);
    }
  }
  join_years(prior, asked.said.makers.empty() ? style_makers_power : 1, out);
}

// p(t, m) = prior(m) at_work_m(t) p(t), summed to makers and, to a power, to years. A span is a
// floor and what rises above it in some years, so the work grows with the years in which a
// maker may have worked.
void Reckoning::Inside::join_years(const std::vector<double>& prior,
                                   double power,
                                   Judged& out) const {
  out.maker_p.assign(prior.size(), 0);
  std::vector<double> share(out.p.size(), 0);  // of the years, above the floor
  double floor = 0;
  for (std::size_t m = 0; m < prior.size(); ++m) {
    if (prior[m] <= 0) {
      continue;
    }
    if (m + 1 == prior.size() || at_work[m].rise.empty()) {
      floor += prior[m];
      out.maker_p[m] = prior[m];
      continue;
    }
    const WorkingYears& work = at_work[m];
    double inside = 0;
    for (std::size_t t = 0; t < work.rise.size(); ++t) {
      share[work.first + t] += prior[m] * work.rise[t];
      inside += work.rise[t] * out.p[work.first + t];
    }
    floor += prior[m] * work.floor;
    out.maker_p[m] = prior[m] * (work.floor + inside);
  }
  double sum = 0;
  for (const double p : out.maker_p) {
    sum += p;
  }
  for (double& p : out.maker_p) {
    p /= sum;
  }
  std::vector<double> by_makers(out.p.size());
  for (std::size_t t = 0; t < out.p.size(); ++t) {
    by_makers[t] = std::pow((floor + share[t]) / sum, power);
  }
  multiply_to_one(by_makers, out.p);
}

}  // namespace backmark::evidence
