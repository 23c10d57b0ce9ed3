#include "evidence/looks.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "evidence/look_candidates.h"
#include "evidence/parallel.h"

namespace backmark::evidence {

namespace {

using model::Look;
using model::LookList;
using model::PieceBelief;
using model::Show;

constexpr std::size_t shown_answers = 4;

double entropy_bits(const std::vector<double>& p) {
  double bits = 0;
  for (const double one : p) {
    bits -= one > 0 ? one * std::log2(one) : 0;
  }
  return bits;
}

int width_80(const PieceBelief& belief) {
  return belief.year.empty() ? 0 : belief.year.at(0.9) - belief.year.at(0.1);
}

// One a maker of the show, then the rest.
std::vector<double> makers_of(const Show& show, const PieceBelief& belief) {
  const auto& makers = show.all<model::Maker>();
  std::vector<double> p(makers.size() + 1, 0);
  for (const model::MakerChance& chance : belief.maker.makers) {
    const auto at = std::lower_bound(
        makers.begin(), makers.end(), chance.maker,
        [](const model::Maker& row, model::Id<model::Maker> id) { return row.id < id; });
    p[static_cast<std::size_t>(at - makers.begin())] += chance.p;
  }
  p.back() = belief.maker.unrecorded;
  return p;
}

// H of the mean less the mean of H.
class Gain {
 public:
  void add(double chance, const std::vector<double>& p) {
    mean_.resize(std::max(mean_.size(), p.size()), 0);
    for (std::size_t i = 0; i < p.size(); ++i) {
      mean_[i] += chance * p[i];
    }
    after_ += chance * entropy_bits(p);
  }
  double bits() const { return std::max(0.0, entropy_bits(mean_) - after_); }

 private:
  std::vector<double> mean_;
  double after_ = 0;
};

class Looker {
 public:
  Looker(const Show& show, const Reckoning& reckoning, const LookSettings& settings)
      : show_(show),
        reckoning_(reckoning),
        settings_(settings),
        gathered_(reckoning.gathered()),
        looks_(show, reckoning) {}

  Result<LookList> run(const Watch& watch) {
    Watch quiet = watch;
    quiet.progress = {};
    auto beliefs = reckoning_.judge_all(quiet);
    if (!beliefs) {
      return beliefs.problem();
    }
    beliefs_ = std::move(*beliefs);
    watch.tell(0.2);
    find_candidates();
    const std::size_t weighed = affordable();
    std::vector<std::optional<Look>> looks(weighed);
    in_shares(weighed, settings_.threads, [&](std::size_t i) {
      if (!watch.stop.stop_requested()) {
        looks[i] = weigh(candidates_[i]);
      }
    });
    if (watch.stop.stop_requested()) {
      return stopped();
    }
    watch.tell(1);
    return listed(std::move(looks));
  }

 private:
  void find_candidates() {
    for (std::size_t i = 0; i < beliefs_.pieces.size(); ++i) {
      looks_.add_of(i, beliefs_.pieces[i].year.p, settings_.least_bits / 4, candidates_);
    }
    std::stable_sort(candidates_.begin(), candidates_.end(),
                     [](const LookCandidate& a, const LookCandidate& b) {
                       return a.rough / a.minutes > b.rough / b.minutes;
                     });
  }

  std::size_t affordable() const {
    std::size_t judged = 0;
    std::size_t count = 0;
    while (count < candidates_.size() && judged < settings_.judgements) {
      judged += looks_.answers(candidates_[count]).size();
      ++count;
    }
    return count;
  }

  std::optional<Look> weigh(const LookCandidate& of) const {
    const PieceBelief& now = beliefs_.pieces[of.piece];
    const auto chance = looks_.chances(of, now.year.p);
    if (!chance) {
      return std::nullopt;
    }
    Look look{.piece = now.piece,
              .part = gathered_.columns.parts()[of.column],
              .character = gathered_.columns.ids()[of.column],
              .minutes = of.minutes,
              .again = of.again,
              .p10 = now.year.at(0.1),
              .p50 = now.year.at(0.5),
              .p90 = now.year.at(0.9),
              .answers = {}};
    const auto& answers = looks_.answers(of);
    Gain years;
    Gain makers;
    double width = 0;
    for (std::size_t v = 0; v < answers.size(); ++v) {
      const double p = (*chance)[v];
      if (p == 0) {
        continue;
      }
      const PieceBelief then = looks_.judged_with(of, answers[v]);
      years.add(p, then.year.p);
      makers.add(p, makers_of(show_, then));
      width += p * width_80(then);
      look.answers.push_back(
          {answers[v].words, p, then.year.at(0.1), then.year.at(0.5), then.year.at(0.9)});
    }
    look.bits_year = years.bits();
    look.bits_maker = makers.bits();
    look.gain_bits = look.bits_year + look.bits_maker;
    look.gain_years = width_80(now) - width;
    std::stable_sort(look.answers.begin(), look.answers.end(),
                     [](const auto& a, const auto& b) { return a.p > b.p; });
    look.answers.resize(std::min(look.answers.size(), shown_answers));
    return look;
  }

  LookList listed(std::vector<std::optional<Look>> looks) {
    LookList list;
    for (auto& look : looks) {
      if (look && look->gain_bits >= settings_.least_bits) {
        list.looks.push_back(std::move(*look));
      }
    }
    std::stable_sort(list.looks.begin(), list.looks.end(), [](const Look& a, const Look& b) {
      return a.gain_bits / a.minutes > b.gain_bits / b.minutes;
    });
    list.conflicts = beliefs_.misfits;
    if (looks.size() < candidates_.size()) {
      list.notes.push_back(fmt::format(
          "{} of {} looks were weighed out, the best by a rough figure from the curves.",
          looks.size(), candidates_.size()));
    }
    if (reckoning_.style() == nullptr) {
      list.notes.push_back("No piece is dated: what a look would settle cannot be said.");
    }
    return list;
  }

  const Show& show_;
  const Reckoning& reckoning_;
  LookSettings settings_;
  const Gathered& gathered_;
  LookCandidates looks_;
  model::Beliefs beliefs_;
  std::vector<LookCandidate> candidates_;
};

}  // namespace

Result<LookList> next_looks(const Show& show,
                            const Reckoning& reckoning,
                            const LookSettings& settings,
                            const Watch& watch) {
  return Looker(show, reckoning, settings).run(watch);
}

}  // namespace backmark::evidence
