#include "evidence/borne_out.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "evidence/evenly.h"
#include "evidence/parallel.h"
#include "evidence/said.h"

namespace backmark::evidence {

namespace {

using model::Claim;
using model::Show;

constexpr std::size_t most_of_a_source = 40;
constexpr double strength = 4;       // of the prior on r, in sayings
constexpr double tells_apart = 0.1;  // |ln L| from here on
constexpr double flat = 0.05;        // share of an even curve in what is said of any piece
constexpr double tiny = 1e-6;

struct Check {
  const Claim* claim = nullptr;
  std::size_t piece = 0;
  const SaidOfYear* year = nullptr;  // one of the two
  const SaidOfMaker* maker = nullptr;
  model::PieceBelief belief;  // without it
};

// The years a saying allows, each 0 to 1.
double true_of(const SaidOfYear& said, const model::YearBelief& year) {
  const std::vector<double> shape =
      statement_shape(said.statement, year.span, {}, year.span.last.value);
  return std::inner_product(shape.begin(), shape.end(), year.p.begin(), 0.0);
}

class Checker {
 public:
  Checker(const Show& show, const Reckoning& reckoning) : show_(show), reckoning_(reckoning) {
    choose();
  }

  Result<BorneOut> run(const Watch& watch) {
    in_shares(checks_.size(), watch.threads, [&](std::size_t c) {
      if (!watch.stop.stop_requested()) {
        checks_[c].belief = reckoning_.judge(checks_[c].piece, without(checks_[c]));
      }
    });
    if (watch.stop.stop_requested()) {
      return stopped();
    }
    weigh_any();
    BorneOut out;
    std::map<std::int32_t, std::map<int, std::vector<double>>> ratios;  // source, lot
    for (const Check& check : checks_) {
      if (check.belief.year.empty()) {
        continue;
      }
      const double p = chance(check, check.belief.year, check.belief.maker);
      out.sayings.push_back({check.claim->id.value, p});
      ratios[check.claim->source.value][lot_of(check.piece)].push_back(
          std::log((p + tiny) / (usual(check) + tiny)));
    }
    std::sort(out.sayings.begin(), out.sayings.end(),
              [](const auto& a, const auto& b) { return a.record < b.record; });
    for (const model::Source& source : show_.all<model::Source>()) {
      add_source(source, ratios[source.id.value], out);
    }
    return out;
  }

 private:
  int lot_of(std::size_t piece) const { return reckoning_.gathered().style.pieces[piece].lot; }

  void choose() {
    const auto& pieces = show_.all<model::Piece>();
    std::map<std::int32_t, std::vector<Check>> by_source;
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      const GatheredPiece& said = reckoning_.gathered().pieces[i];
      for (const Claim& claim : show_.claims_on(pieces[i].id)) {
        for (const SaidOfYear& one : said.years) {
          if (one.record == claim.id.value && !one.opinion) {
            by_source[claim.source.value].push_back({&claim, i, &one, nullptr, {}});
          }
        }
        for (const SaidOfMaker& one : said.makers) {
          if (one.record == claim.id.value) {
            by_source[claim.source.value].push_back({&claim, i, nullptr, &one, {}});
          }
        }
      }
    }
    for (const auto& [source, checks] : by_source) {
      for (Check& check : evenly_spread(checks, most_of_a_source)) {
        checks_.push_back(std::move(check));
      }
    }
  }

  LeftOut without(const Check& check) const {
    LeftOut left;
    left.records.insert(check.claim->id.value);
    const std::string origin = origin_of(show_, check.claim->source);
    for (const Claim& other : show_.claims_on({show_.all<model::Piece>()[check.piece].id})) {
      if (!origin.empty() && origin_of(show_, other.source) == origin) {
        left.records.insert(other.id.value);
      }
    }
    return left;
  }

  // What would be said of any of the pieces looked at.
  void weigh_any() {
    any_.span = reckoning_.axis();
    any_.p.assign(static_cast<std::size_t>(any_.span.length()), 0);
    double count = 0;
    for (const Check& check : checks_) {
      if (check.belief.year.empty()) {
        continue;
      }
      count += 1;
      for (std::size_t t = 0; t < check.belief.year.p.size(); ++t) {
        any_.p[t] += check.belief.year.p[t];
      }
      for (const model::MakerChance& maker : check.belief.maker.makers) {
        any_makers_[maker.maker.value] += maker.p;
      }
    }
    const double even = flat / static_cast<double>(any_.p.size());
    for (double& p : any_.p) {
      p = (1 - flat) * p / std::max(1.0, count) + even;
    }
    for (auto& [maker, p] : any_makers_) {
      p /= std::max(1.0, count);
    }
  }

  double chance(const Check& check,
                const model::YearBelief& year,
                const model::MakerBelief& maker) const {
    return check.year != nullptr ? true_of(*check.year, year) : maker.of(check.claim->maker);
  }

  double usual(const Check& check) const {
    if (check.year != nullptr) {
      return true_of(*check.year, any_);
    }
    const auto at = any_makers_.find(check.claim->maker.value);
    return at == any_makers_.end() ? 0 : at->second;
  }

  void add_source(const model::Source& source,
                  const std::map<int, std::vector<double>>& by_lot,
                  BorneOut& out) const {
    std::vector<double> ratios;
    std::size_t told = 0;
    for (const auto& [lot, logs] : by_lot) {
      ratios.push_back(std::accumulate(logs.begin(), logs.end(), 0.0) /
                       static_cast<double>(logs.size()));
      told += std::abs(ratios.back()) >= tells_apart ? 1 : 0;
    }
    if (told > 0) {
      out.sources.push_back(
          {source.id, share_true(reliability_of(show_, source.id, {}), ratios), told});
    }
  }

  const Show& show_;
  const Reckoning& reckoning_;
  std::vector<Check> checks_;
  model::YearBelief any_;
  std::map<std::int32_t, double> any_makers_;
};

}  // namespace

double share_true(double reliability, const std::vector<double>& log_ratios) {
  constexpr int cells = 200;
  const double mean = std::clamp(reliability, 0.02, 0.98);
  const double a = strength * mean;
  const double b = strength * (1 - mean);
  std::vector<double> log_p;
  for (int c = 0; c < cells; ++c) {
    const double r = (c + 0.5) / cells;
    double log = (a - 1) * std::log(r) + (b - 1) * std::log(1 - r);
    for (const double ratio : log_ratios) {
      log += std::log(r * std::exp(ratio) + 1 - r);
    }
    log_p.push_back(log);
  }
  const double total = log_sum_exp(log_p);
  double share = 0;
  for (int c = 0; c < cells; ++c) {
    share += (c + 0.5) / cells * std::exp(log_p[static_cast<std::size_t>(c)] - total);
  }
  return share;
}

Result<BorneOut> borne_out(const Show& show, const Reckoning& reckoning, const Watch& watch) {
  return Checker(show, reckoning).run(watch);
}

}  // namespace backmark::evidence
