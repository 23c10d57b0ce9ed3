// The fit step by step, and what of it is kept for the next.
#include <algorithm>
#include <numeric>

#include "base/text.h"
#include "evidence/fingerprint.h"
#include "evidence/reckon_inside.h"

namespace backmark::evidence {

namespace {

// The number of characters for which a distance weight of 1 is a fair beginning.
constexpr double usual_characters = 8;

// Years that span more teach too little of when a value was in use.
constexpr int longest_lesson = 40;

// What is only told of a piece teaches at half its reliability; half and the whole were
// measured (docs/manual/method-joint.md).
void teach_by_hearsay(const GatheredPiece& told, StylePiece& piece) {
  constexpr double share = 0.5;
  const Statement* best = nullptr;
  for (const SaidOfYear& said : told.years) {
    const Statement& one = said.statement;
    if (one.saying == Saying::interval && !said.opinion && !said.limit &&
        one.last - one.first < longest_lesson &&
        (best == nullptr || one.reliability > best->reliability)) {
      best = &one;
    }
  }
  if (best != nullptr) {
    piece.stated = YearSpan{Year{best->first}, Year{best->last}};
    piece.hearsay = true;
    piece.weight *= share * best->reliability;
  }
}

std::string in_words(const ReckonSettings& settings) {
  return fmt::format("today {}, seed {}, {} chains, {} rounds, unlisted {}",
                     settings.today.value, settings.seed, settings.chains, settings.rounds,
                     settings.unlisted_share);
}

std::string kept_note(double changed) {
  const std::string learned = "What all pieces share was learned in an earlier reckoning; ";
  if (changed >= 1) {
    return learned + "makers, windows or orders have changed since.";
  }
  return learned + fmt::format("{:.1f} in 100 pieces are new or say something else since.",
                               100 * changed);
}

}  // namespace

// The years in which a maker worked, as far as documents and dated pieces tell: from the 5 to
// the 95 in 100 point; none if nothing is known.
std::optional<YearSpan> Reckoning::Inside::usual_years(std::size_t maker) const {
  const WorkingYears& work = at_work[maker];
  const double all = std::accumulate(work.rise.begin(), work.rise.end(), 0.0);
  if (!(all > 0)) {
    return std::nullopt;
  }
  const auto at = [&](double share) {
    double sum = 0;
    std::size_t t = 0;
    while (t + 1 < work.rise.size() && (sum += work.rise[t]) < share * all) {
      ++t;
    }
    return axis.first + static_cast<int>(work.first + t);
  };
  return YearSpan{at(0.05), at(0.95)};
}

// An undated piece that bears a name is of its maker's working years, and teaches that, if they
// are few. Measured on grown shows of 1,000 and 300 pieces (docs/manual/method-joint.md):
// longest 25, 40 and 60 years, weights 0.3, 0.7 and 1.
bool Reckoning::Inside::teach_by_name(StylePiece& piece) const {
  constexpr double weight = 0.7;
  if (!piece.maker) {
    return false;
  }
  const auto years = usual_years(static_cast<std::size_t>(*piece.maker));
  if (!years || years->length() > longest_lesson) {
    return false;
  }
  piece.stated = years;
  piece.weight *= weight;
  return true;
}

StyleTable Reckoning::Inside::taught_table() const {
  StyleTable table = gathered.style;
  for (std::size_t i = 0; i < table.pieces.size(); ++i) {
    StylePiece& piece = table.pieces[i];
    if (!piece.stated && !teach_by_name(piece) && gathered.any_dated) {
      teach_by_hearsay(gathered.pieces[i], piece);
    }
  }
  return table;
}

Result<Done> Reckoning::Inside::fit_style_of(const Watch& watch, const Lessons* known) {
  if (!gathered.any_dated && gathered.style.windows.empty()) {
    notes.push_back(
        "No piece is dated and no window of use is stated: nothing can be dated by its style.");
    return Done{};
  }
  StyleSettings how;
  how.axis = axis;
  // Distances add up over characters: with many of them each counts less to begin with.
  how.prior.d =
      std::min(1.0, usual_characters / static_cast<double>(gathered.style.characters.size()));
  const bool taught = known != nullptr && known->style;
  const StyleTable table = taught_table();
  std::vector<std::size_t> on_parts;
  for (const auto& [part, columns] : replaceable()) {
    on_parts.insert(on_parts.end(), columns.begin(), columns.end());
  }
  habits = Habits(table, std::move(on_parts));
  auto fitted = fit_style(table, how, watch, taught ? &*known->style : nullptr);
  if (!fitted) {
    return fitted.problem();
  }
  notes = fitted->notes();
  style = std::move(*fitted);
  lessons.style = style->lessons();
  return Done{};
}

Result<Done> Reckoning::Inside::fit_hands_of(const Watch& watch, const Lessons* known) {
  HandSettings how;
  if (settings.unlisted_share >= 0) {
    how.listed_share = 1 - settings.unlisted_share;
  }
  const bool taught = known != nullptr && known->hands;
  auto fitted = fit_hands(gathered.style, axis, how, watch, taught ? &*known->hands : nullptr);
  if (fitted) {
    hands = std::move(*fitted);
    lessons.hands = hands->lessons();
  } else if (watch.stop.stop_requested()) {
    return fitted.problem();
  }
  return Done{};
}

void Reckoning::Inside::take_over(const Lessons& known) {
  sampled = known.sampled;
  const auto& lineages = show->all<model::Lineage>();
  std::erase_if(sampled.variants, [&](const auto& held) {
    return std::none_of(lineages.begin(), lineages.end(), [&](const model::Lineage& lineage) {
      return lineage.id.value == held.first && lineage.variants.size() == held.second.size();
    });
  });
  style_makers_power = known.makers_power;
}

Result<Done> Reckoning::Inside::fit_rest(const Watch& watch, const Lessons* known) {
  learn_lag();
  borrow_years_of_places();
  learn_named_odds();
  learn_usual_hands();
  if (known != nullptr) {
    take_over(*known);
  } else {
    if (auto done = sample(watch.part(0.2, 1)); !done) {
      return done.problem();
    }
    learn_makers_power(watch);
  }
  if (!sampled.converged) {
    notes.push_back(
        fmt::format("The chains have not quite settled: R-hat is up to {:.3f}, the least "
                    "effective number of draws {:.0f}; run longer with --rounds.",
                    sampled.rhat_max, sampled.ess_min));
  }
  lessons.sampled = sampled;
  lessons.makers_power = style_makers_power;
  return Done{};
}

bool serve(const Lessons& lessons, const ReckonSettings& settings) {
  return settings.hidden.empty() && lessons.settings == in_words(settings);
}

Lessons Reckoning::Inside::unlearned() const {
  Lessons now;
  now.settings = in_words(settings);
  now.axis = axis;
  const auto& pieces = show->all<model::Piece>();
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    now.pieces[pieces[i].id.value] = fingerprint_of_piece(*show, gathered, i);
  }
  now.frame = fingerprint_of_frame(*show, gathered);
  return now;
}

Result<Reckoning> Reckoning::fit(const model::Show& show,
                                 const ReckonSettings& settings,
                                 const Watch& watch,
                                 const Lessons* known,
                                 double most_changed) {
  auto inside = std::make_unique<Inside>();
  inside->show = &show;
  inside->settings = settings;
  inside->legends.emplace(show);
  inside->mark_years.emplace(show);
  inside->sequences.emplace(show);
  inside->gathered = gather(show, settings.today, settings.hidden);
  inside->axis = inside->gathered.years;
  inside->lessons = inside->unlearned();
  const double changed = known != nullptr ? changed_share(*known, inside->lessons) : 1;
  if (known == nullptr || !serve(*known, settings) || changed > most_changed ||
      known->axis != inside->axis) {
    known = nullptr;
  }
  inside->learn_spans(watch);
  if (auto done = inside->fit_style_of(watch.part(0, 0.5), known); !done) {
    return done.problem();
  }
  if (auto done = inside->fit_hands_of(watch, known); !done) {
    return done.problem();
  }
  if (auto done = inside->fit_rest(watch.part(0.5, 1), known); !done) {
    return done.problem();
  }
  if (known != nullptr) {
    inside->lessons = *known;
    inside->changed_since = changed;
    if (changed > 0) {
      inside->notes.push_back(kept_note(changed));
    }
  }
  return Reckoning(std::move(inside));
}

const Lessons& Reckoning::lessons() const {
  return inside_->lessons;
}
std::optional<double> Reckoning::changed_since_learned() const {
  return inside_->changed_since;
}

}  // namespace backmark::evidence
