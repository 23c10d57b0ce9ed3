#include "evidence/claim_on_table.h"

#include <algorithm>

#include "base/text.h"
#include "evidence/component.h"
#include "evidence/parallel.h"

namespace backmark::evidence {

namespace {

using model::AskedClaim;
using model::Piece;
using model::PieceBelief;
using model::Show;
using Kind = AskedClaim::Kind;

constexpr int draws = 4000;

double before(const PieceBelief& belief, Year year) {
  return belief.year.empty() || belief.year.span.first >= year
             ? 0
             : belief.year.inside(belief.year.span.first, year - 1);
}

double original_share(const Show& show, const Piece& piece, const model::Character& character) {
  if (!character.replaceable) {
    return 1;
  }
  for (const model::Part& part : show.parts_of(piece.id)) {
    if (part.kind == character.part && part.originality != model::Originality::unknown) {
      return part.originality == model::Originality::original ? 0.99 : 0.02;
    }
  }
  const std::string_view kind = show.text(character.part);
  return 1 - (kind == "cord"  ? usual_replaced::cord
              : kind == "tip" ? usual_replaced::tips
                              : usual_replaced::fitting);
}

}  // namespace

ClaimOnTable::ClaimOnTable(const Show& show,
                           const Reckoning& reckoning,
                           const AskedClaim& claim,
                           std::uint64_t seed)
    : show_(show), reckoning_(reckoning), claim_(claim), seed_(seed) {
  choose_pieces();
  judge_pieces();
  voices_ = voices_on(show_, claim_);
  hear_others();
}

bool ClaimOnTable::shows_value(const Piece& piece) const {
  for (const model::Observation& seen : show_.observations_of(piece.id)) {
    if (seen.character == claim_.character && seen.seen == model::Seen::value &&
        lower_ascii(show_.text(seen.value)) == lower_ascii(show_.text(claim_.value))) {
      return true;
    }
  }
  return false;
}

void ClaimOnTable::choose_pieces() {
  const auto& pieces = show_.all<Piece>();
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    const bool in = claim_.kind == Kind::first ? !claim_.form || pieces[i].form == claim_.form
                                               : shows_value(pieces[i]);
    if (in) {
      rows_.push_back(i);
    }
  }
}

void ClaimOnTable::judge_pieces() {
  beliefs_.resize(rows_.size());
  LeftOut without;
  if (claim_.character) {
    without.characters.insert(claim_.character.value);
  }
  in_shares(rows_.size(), 0,
            [&](std::size_t r) { beliefs_[r] = reckoning_.judge(rows_[r], without); });
  if (claim_.year && reckoning_.style() != nullptr) {
    map_ = reckoning_.style()->before(*claim_.year);
  }
  for (std::size_t r = 0; r < rows_.size(); ++r) {
    against_.push_back(speaks_against(r, beliefs_[r]));
  }
  if (claim_.kind != Kind::design) {
    any_against_.emplace(against_, usual_leaning);
  }
}

// What the pieces say of each other maker that a source names, once.
void ClaimOnTable::hear_others() {
  for (const Voice& voice : voices_) {
    if (!voice.maker || !voice.year || older_.contains({voice.maker, *voice.year})) {
      continue;
    }
    std::vector<double> older;
    for (const PieceBelief& belief : beliefs_) {
      older.push_back(older_by_others(belief, voice.maker, *voice.year));
    }
    older_.emplace(std::pair(voice.maker, *voice.year), AnyOf(std::move(older), usual_leaning));
  }
}

double ClaimOnTable::speaks_against(std::size_t r, const PieceBelief& belief) const {
  if (claim_.kind == Kind::all_by) {
    return 1 - belief.maker.of(claim_.maker);
  }
  if (claim_.kind == Kind::design) {
    return 0;
  }
  double p = before(belief, *claim_.year);
  if (!reckoning_.gathered().style.pieces[rows_[r]].stated && p > 0 && p < 1) {
    p = map_(p);
  }
  if (claim_.kind == Kind::not_before) {
    p *= original_share(show_, show_.all<Piece>()[rows_[r]], *show_.find(claim_.character));
  }
  return p;
}

double ClaimOnTable::older_by_others(const PieceBelief& belief,
                                     model::Id<model::Maker> maker,
                                     Year year) const {
  return before(belief, year) * (1 - belief.maker.of(maker));
}

std::vector<Racer> ClaimOnTable::racers(std::optional<std::size_t> without) const {
  std::vector<Racer> list;
  for (std::size_t r = 0; r < rows_.size(); ++r) {
    if (r != without && !beliefs_[r].year.empty()) {
      list.push_back({&beliefs_[r].year.p, beliefs_[r].maker.of(claim_.maker)});
    }
  }
  return list;
}

double ClaimOnTable::race(const std::vector<Racer>& racers, double leaning) const {
  return leaning > 0 ? oldest_is_by(racers, leaning, draws, seed_) : oldest_is_by(racers);
}

std::vector<double> ClaimOnTable::loudness() const {
  if (claim_.kind != Kind::design) {
    return against_;
  }
  const std::vector<double> oldest = chance_oldest(racers(std::nullopt));
  std::vector<double> loud(rows_.size(), 0);
  std::size_t at = 0;
  for (std::size_t r = 0; r < rows_.size(); ++r) {
    loud[r] = beliefs_[r].year.empty() ? 0 : oldest[at++];
  }
  return loud;
}

double ClaimOnTable::from_pieces(const std::vector<double>& against,
                                 double leaning,
                                 std::optional<std::size_t> without) const {
  return claim_.kind == Kind::design ? race(racers(without), leaning)
                                     : 1 - any_of(against, leaning);
}

double ClaimOnTable::with_voices(double p_pieces, const std::vector<Voice>& voices) const {
  return weigh_voices(show_, claim_, p_pieces, voices,
                      [this](model::Id<model::Maker> maker, Year year) {
                        return 1 - older_.at({maker, year}).chance();
                      });
}

double ClaimOnTable::if_believed(std::size_t r, const PieceBelief& then) const {
  double p_pieces = 0;
  if (claim_.kind == Kind::design) {
    std::vector<Racer> others = racers(r);
    if (!then.year.empty()) {
      others.push_back({&then.year.p, then.maker.of(claim_.maker)});
    }
    p_pieces = race(others, usual_leaning);
  } else {
    p_pieces = 1 - any_against_->with(r, speaks_against(r, then));
  }
  return weigh_voices(
      show_, claim_, p_pieces, voices_, [&](model::Id<model::Maker> maker, Year year) {
        return 1 - older_.at({maker, year}).with(r, older_by_others(then, maker, year));
      });
}

}  // namespace backmark::evidence
