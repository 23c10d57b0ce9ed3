#include "evidence/trial.h"

#include <algorithm>
#include <map>
#include <set>

#include "base/random.h"
#include "base/text.h"
#include "evidence/comparanda.h"
#include "evidence/gather.h"
#include "evidence/parallel.h"

namespace backmark::evidence {

namespace {

using model::Show;

constexpr int listed_from = 5;  // as the list of hands asks
constexpr double any_smoothing_years = 15;

// Characters whose values name a maker: some maker has a lineage of them.
std::set<std::int32_t> naming_characters(const Show& show) {
  std::set<std::int32_t> naming;
  for (const model::Lineage& lineage : show.all<model::Lineage>()) {
    if (lineage.maker) {
      naming.insert(lineage.character.value);
    }
  }
  return naming;
}

std::string lot_size_words(std::size_t size) {
  return size == 1 ? "alone" : size <= 5 ? "2 to 5" : "6 and more";
}

// The fold of each known piece, dealt by chance; pieces of which nothing is known have none.
class Folds {
 public:
  Folds(const Gathered& gathered, const TrialPlan& plan, std::uint64_t seed)
      : fold_(gathered.pieces.size(), -1) {
    std::map<int, std::vector<std::size_t>> units;
    for (std::size_t i = 0; i < fold_.size(); ++i) {
      const StylePiece& piece = gathered.style.pieces[i];
      if (piece.stated || piece.maker) {
        units[plan.by_lot ? piece.lot : static_cast<int>(i)].push_back(i);
      }
    }
    std::vector<int> order;
    for (const auto& [unit, members] : units) {
      order.push_back(unit);
    }
    Random(seed).shuffle(order);
    for (std::size_t u = 0; u < order.size(); ++u) {
      for (const std::size_t member : units[order[u]]) {
        fold_[member] = static_cast<int>(u % plan.folds);
      }
    }
    units_ = order.size();
  }
  std::vector<char> hide(std::size_t fold) const {
    std::vector<char> marked(fold_.size());
    for (std::size_t i = 0; i < fold_.size(); ++i) {
      marked[i] = fold_[i] == static_cast<int>(fold) ? 1 : 0;
    }
    return marked;
  }
  std::size_t units() const { return units_; }

 private:
  std::vector<int> fold_;
  std::size_t units_ = 0;
};

class Trialler {
 public:
  Trialler(const Show& show, const ReckonSettings& settings, const Gathered& known)
      : show_(show), settings_(settings), known_(known), naming_(naming_characters(show)) {
    for (const model::Pick& pick : show.all<model::Pick>()) {
      if (const model::Section* section = show.find(pick.section)) {
        section_[pick.piece.value] = section->title;
      }
    }
    for (const StylePiece& piece : known.style.pieces) {
      lot_size_[piece.lot] += 1;
    }
  }

  Result<Done> add(const std::vector<char>& hide, const Watch& watch, Trials& into) {
    ReckonSettings settings = settings_;
    for (std::size_t i = 0; i < hide.size(); ++i) {
      if (hide[i] != 0) {
        settings.hidden.insert(show_.all<model::Piece>()[i].id.value);
      }
    }
    const auto reckoning = Reckoning::fit(show_, settings, watch);
    if (!reckoning) {
      return reckoning.problem();
    }
    std::vector<std::size_t> asked;
    std::map<int, int> in_view;
    for (std::size_t i = 0; i < hide.size(); ++i) {
      const auto& maker = known_.style.pieces[i].maker;
      if (hide[i] != 0) {
        asked.push_back(i);
      } else if (maker) {
        in_view[*maker] += 1;
      }
    }
    std::vector<model::PieceBelief> beliefs(asked.size());
    in_shares(asked.size(), watch.threads, [&](std::size_t a) {
      beliefs[a] = reckoning->judge(asked[a], {.records = {}, .characters = naming_});
    });
    const std::vector<double> any = any_curve(hide, reckoning->axis());
    for (std::size_t a = 0; a < asked.size(); ++a) {
      add_year(asked[a], beliefs[a], any, into);
      add_maker(asked[a], beliefs[a], in_view, into);
    }
    return Done{};
  }

 private:
  // The smoothed spans of the pieces in view: what would be said of any piece.
  std::vector<double> any_curve(const std::vector<char>& hide, YearSpan axis) const {
    const YearGrid grid{axis, 1};
    OverallDensity overall(grid, grid.in_cells(any_smoothing_years));
    for (std::size_t i = 0; i < hide.size(); ++i) {
      const StylePiece& piece = known_.style.pieces[i];
      if (hide[i] == 0 && piece.stated && piece.stated->overlaps(axis)) {
        overall.add(piece.lot, *piece.stated, 1);
      }
    }
    return overall.without(std::nullopt);
  }

  std::map<std::string, std::string> groups_of(std::size_t i) const {
    const model::Piece& piece = show_.all<model::Piece>()[i];
    const StylePiece& known = known_.style.pieces[i];
    std::map<std::string, std::string> groups;
    if (piece.form) {
      groups["form"] = show_.text(piece.form);
    }
    if (known_.pieces[i].place) {
      groups["place"] = show_.text(known_.pieces[i].place);
    }
    if (const auto at = section_.find(piece.id.value); at != section_.end()) {
      groups["section"] = at->second;
    }
    const int middle = known.stated->first.value + (known.stated->length() - 1) / 2;
    groups["decade"] = fmt::format("{}s", middle / 10 * 10);
    groups["lot"] = lot_size_words(lot_size_.at(known.lot));
    return groups;
  }

  void add_year(std::size_t i,
                const model::PieceBelief& belief,
                const std::vector<double>& any,
                Trials& into) const {
    const StylePiece& known = known_.style.pieces[i];
    if (!known.stated || belief.year.empty()) {
      return;
    }
    YearTrial trial{.axis = belief.year.span,
                    .p = belief.year.p,
                    .stated = *known.stated,
                    .lot = known.lot,
                    .groups = groups_of(i)};
    for (std::size_t t = 0; t < any.size(); ++t) {
      const Year year = trial.axis.first + static_cast<int>(t);
      trial.any_mass += trial.stated.contains(year) ? any[t] : 0;
    }
    into.years.push_back(std::move(trial));
  }

  void add_maker(std::size_t i,
                 const model::PieceBelief& belief,
                 const std::map<int, int>& in_view,
                 Trials& into) const {
    const StylePiece& known = known_.style.pieces[i];
    if (!known.maker) {
      return;
    }
    MakerTrial trial{.truth = *known.maker, .lot = known.lot};
    const auto on_list = [&](int maker) {
      const auto count = in_view.find(maker);
      return count != in_view.end() && count->second >= listed_from;
    };
    trial.listed = on_list(*known.maker);
    const auto& makers = show_.all<model::Maker>();
    for (const model::MakerChance& chance : belief.maker.makers) {
      const auto at =
          std::lower_bound(makers.begin(), makers.end(), chance.maker,
                           [](const model::Maker& row, auto id) { return row.id < id; });
      const int maker = static_cast<int>(at - makers.begin());
      if (on_list(maker)) {
        trial.named.push_back({maker, chance.p});
        trial.listed_p += chance.p;
      }
    }
    for (MakerTrial::Named& named : trial.named) {
      named.p /= trial.listed_p;
    }
    into.makers.push_back(std::move(trial));
  }

  const Show& show_;
  const ReckonSettings& settings_;
  const Gathered& known_;
  std::set<std::int32_t> naming_;
  std::map<std::int32_t, std::string> section_;
  std::map<int, std::size_t> lot_size_;
};

}  // namespace

Result<Trials> run_trials(const Show& show,
                          const ReckonSettings& settings,
                          const TrialPlan& plan,
                          const Watch& watch) {
  if (plan.folds < 2) {
    return Problem{Fault::bad_input, "known pieces are hidden in at least two parts", "--folds",
                   "write 10"};
  }
  const Gathered known = gather(show, settings.today);
  const Folds folds(known, plan, settings.seed);
  if (folds.units() < plan.folds) {
    return Problem{Fault::bad_input,
                   fmt::format("{} known {} cannot be hidden in {} parts", folds.units(),
                               plan.by_lot ? "lots" : "pieces", plan.folds),
                   "",
                   folds.units() < 2 ? "record firm dates or marks of some pieces first"
                                     : fmt::format("write --folds {}", folds.units())};
  }
  Trials trials;
  trials.notes.push_back(
      "Limits (acquired, shown, patented), stories and opinions stayed in view, as they do "
      "where "
      "nothing is known.");
  Trialler trialler(show, settings, known);
  for (std::size_t fold = 0; fold < plan.folds; ++fold) {
    Watch part = watch;
    part.progress = [&](double share) {
      watch.tell((static_cast<double>(fold) + share) / static_cast<double>(plan.folds));
    };
    if (auto done = trialler.add(folds.hide(fold), part, trials); !done) {
      return done.problem();
    }
  }
  return trials;
}

model::Calibration calibration_of(const Trials& trials, const TrialPlan& plan) {
  return {.by_lot = plan.by_lot,
          .folds = plan.folds,
          .years = score_years(trials.years),
          .makers = score_makers(trials.makers),
          .groups = score_groups(trials.years),
          .notes = trials.notes};
}

}  // namespace backmark::evidence
