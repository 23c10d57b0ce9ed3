#include "evidence/looks.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "evidence/look_answers.h"
#include "evidence/parallel.h"

namespace backmark::evidence {

namespace {

using model::Look;
using model::LookList;
using model::PieceBelief;
using model::Show;

constexpr double least_error = 0.02;   // of any reading
constexpr double least_answer = 0.01;  // rarer answers are not weighed out
constexpr double least_wrong = 0.03;   // a record surer than that is not re-checked
constexpr std::size_t shown_answers = 4;

struct Candidate {
  std::size_t piece = 0;
  std::size_t column = 0;
  bool again = false;
  double rough = 0;
  double minutes = 0;
};

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
        answers_(show, reckoning) {}

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
      const auto& year = beliefs_.pieces[i].year;
      for (const std::size_t c : answers_.columns()) {
        const bool missing = gathered_.style.pieces[i].values[c].missing();
        if (year.empty() || !answers_.applies(i, c) || (missing && decided(i, c))) {
          continue;
        }
        const double rough = answers_.rough_bits(c, year.p) * (missing ? 1 : doubt(i, c));
        if (rough >= settings_.least_bits / 4) {
          candidates_.push_back({i, c, !missing, rough, minutes_of(c)});
        }
      }
    }
    std::stable_sort(candidates_.begin(), candidates_.end(),
                     [](const Candidate& a, const Candidate& b) {
                       return a.rough / a.minutes > b.rough / b.minutes;
                     });
  }

  // Looked at before, and it cannot be told.
  bool decided(std::size_t piece, std::size_t column) const {
    const auto id = gathered_.columns.ids()[column];
    for (const model::Observation& seen :
         show_.observations_of(show_.all<model::Piece>()[piece].id)) {
      if (seen.character == id) {
        return true;
      }
    }
    return false;
  }

  double minutes_of(std::size_t column) const {
    const model::Character* character = show_.find(gathered_.columns.ids()[column]);
    return std::max(0.25, character->minutes);
  }

  std::optional<std::size_t> answer_of(std::size_t piece, std::size_t column) const {
    const StyleValue& value = gathered_.style.pieces[piece].values[column];
    const auto& answers = answers_.of(column);
    for (std::size_t v = 0; v < answers.size(); ++v) {
      const std::string& name = answers[v].words;
      const bool same =
          value.number
              ? reckoning_.style()->curves().fifth(column, *value.number) == static_cast<int>(v)
              : value.terms.size() == 1 && gathered_.style.characters[column].vocabulary.name(
                                               value.terms.front()) == name;
      if (same) {
        return v;
      }
    }
    return std::nullopt;
  }

  // Certainties differ seldom: found once a piece, in observations_of, not by a search of all.
  double certainty_of(std::size_t piece, std::size_t column) const {
    const auto id = gathered_.columns.ids()[column];
    double certainty = 1;
    for (const model::Observation& seen :
         show_.observations_of(show_.all<model::Piece>()[piece].id)) {
      if (seen.character == id) {
        certainty = std::min(certainty, static_cast<double>(seen.certainty));
      }
    }
    return certainty;
  }

  // The chance that the record is wrong, `chance` being what the rest of the piece says.
  double wrong_chance(std::size_t piece,
                      std::size_t column,
                      const std::vector<double>& chance,
                      std::size_t recorded) const {
    const double error = std::max(least_error, 1 - certainty_of(piece, column));
    const double others =
        error * (1 - chance[recorded]) / static_cast<double>(chance.size() - 1);
    return others / (others + (1 - error) * chance[recorded]);
  }

  // The rough chance that a record is wrong, the piece's own years for the rest's.
  double doubt(std::size_t piece, std::size_t column) const {
    const auto recorded = answer_of(piece, column);
    if (!recorded) {
      return 0;
    }
    const auto chance = answers_.chances(column, beliefs_.pieces[piece].year.p);
    return wrong_chance(piece, column, chance, *recorded);
  }

  std::size_t affordable() const {
    std::size_t judged = 0;
    std::size_t count = 0;
    while (count < candidates_.size() && judged < settings_.judgements) {
      judged += answers_.of(candidates_[count].column).size();
      ++count;
    }
    return count;
  }

  PieceBelief judged_with(const Candidate& of, const PossibleAnswer& answer) const {
    SeenInstead seen{.character = gathered_.columns.ids()[of.column]};
    seen.seen = answer.none ? model::Seen::none : model::Seen::value;
    seen.number = answer.number;
    if (!answer.value.empty()) {
      seen.values.push_back(answer.value);
    }
    WhatIf change;
    change.seen.push_back(std::move(seen));
    return reckoning_.judge_if(of.piece, change);
  }

  std::optional<std::vector<double>> chances_of(const Candidate& of) const {
    if (!of.again) {
      return answers_.chances(of.column, beliefs_.pieces[of.piece].year.p);
    }
    const auto recorded = answer_of(of.piece, of.column);
    const PieceBelief rest = reckoning_.judge(
        of.piece, {.records = {}, .characters = {gathered_.columns.ids()[of.column].value}});
    if (!recorded || rest.year.empty()) {
      return std::nullopt;
    }
    std::vector<double> chance = answers_.chances(of.column, rest.year.p);
    const double wrong = wrong_chance(of.piece, of.column, chance, *recorded);
    if (wrong < least_wrong) {
      return std::nullopt;
    }
    const double others = 1 - chance[*recorded];
    for (std::size_t v = 0; v < chance.size(); ++v) {
      chance[v] = v == *recorded ? 1 - wrong : wrong * chance[v] / others;
    }
    return chance;
  }

  std::optional<Look> weigh(const Candidate& of) const {
    const auto chance = chances_of(of);
    if (!chance) {
      return std::nullopt;
    }
    const PieceBelief& now = beliefs_.pieces[of.piece];
    Look look{.piece = now.piece,
              .part = gathered_.columns.parts()[of.column],
              .character = gathered_.columns.ids()[of.column],
              .minutes = of.minutes,
              .again = of.again,
              .p10 = now.year.at(0.1),
              .p50 = now.year.at(0.5),
              .p90 = now.year.at(0.9),
              .answers = {}};
    const auto& answers = answers_.of(of.column);
    double heard = 0;
    for (std::size_t v = 0; v < answers.size(); ++v) {
      heard += (*chance)[v] >= least_answer ? (*chance)[v] : 0;
    }
    Gain years;
    Gain makers;
    double width = 0;
    for (std::size_t v = 0; v < answers.size(); ++v) {
      if ((*chance)[v] < least_answer) {
        continue;
      }
      const double p = (*chance)[v] / heard;
      const PieceBelief then = judged_with(of, answers[v]);
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
  LookAnswers answers_;
  model::Beliefs beliefs_;
  std::vector<Candidate> candidates_;
};

}  // namespace

Result<LookList> next_looks(const Show& show,
                            const Reckoning& reckoning,
                            const LookSettings& settings,
                            const Watch& watch) {
  return Looker(show, reckoning, settings).run(watch);
}

}  // namespace backmark::evidence
