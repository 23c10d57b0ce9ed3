#include "evidence/look_candidates.h"

#include <algorithm>
#include <utility>

namespace backmark::evidence {

namespace {

constexpr double least_error = 0.02;   // of any reading
constexpr double least_answer = 0.01;  // rarer answers are not weighed out
constexpr double least_wrong = 0.03;   // a record surer than that is not re-checked

}  // namespace

LookCandidates::LookCandidates(const model::Show& show, const Reckoning& reckoning)
    : show_(show),
      reckoning_(reckoning),
      gathered_(reckoning.gathered()),
      answers_(show, reckoning) {}

void LookCandidates::add_of(std::size_t piece,
                            const std::vector<double>& year_p,
                            double least,
                            std::vector<LookCandidate>& into) const {
  if (year_p.empty()) {
    return;
  }
  for (const std::size_t c : answers_.columns()) {
    const bool missing = gathered_.style.pieces[piece].values[c].missing();
    if (!answers_.applies(piece, c) || (missing && decided(piece, c))) {
      continue;
    }
    const double rough =
        answers_.rough_bits(c, year_p) * (missing ? 1 : doubt(piece, c, year_p));
    if (rough >= least) {
      into.push_back({piece, c, !missing, rough, minutes_of(c)});
    }
  }
}

// Looked at before, and it cannot be told.
bool LookCandidates::decided(std::size_t piece, std::size_t column) const {
  const auto id = gathered_.columns.ids()[column];
  for (const model::Observation& seen :
       show_.observations_of(show_.all<model::Piece>()[piece].id)) {
    if (seen.character == id) {
      return true;
    }
  }
  return false;
}

double LookCandidates::minutes_of(std::size_t column) const {
  const model::Character* character = show_.find(gathered_.columns.ids()[column]);
  return std::max(0.25, character->minutes);
}

std::optional<std::size_t> LookCandidates::recorded_answer(std::size_t piece,
                                                           std::size_t column) const {
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
double LookCandidates::certainty_of(std::size_t piece, std::size_t column) const {
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
double LookCandidates::wrong_chance(std::size_t piece,
                                    std::size_t column,
                                    const std::vector<double>& chance,
                                    std::size_t recorded) const {
  const double error = std::max(least_error, 1 - certainty_of(piece, column));
  const double others = error * (1 - chance[recorded]) / static_cast<double>(chance.size() - 1);
  return others / (others + (1 - error) * chance[recorded]);
}

// The rough chance that a record is wrong, the piece's own years for the rest's.
double LookCandidates::doubt(std::size_t piece,
                             std::size_t column,
                             const std::vector<double>& year_p) const {
  const auto recorded = recorded_answer(piece, column);
  return recorded ? wrong_chance(piece, column, answers_.chances(column, year_p), *recorded)
                  : 0;
}

std::optional<std::vector<double>> LookCandidates::chances_again(
    const LookCandidate& of) const {
  const auto recorded = recorded_answer(of.piece, of.column);
  const model::PieceBelief rest = reckoning_.judge(
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

std::optional<std::vector<double>> LookCandidates::chances(
    const LookCandidate& of, const std::vector<double>& year_p) const {
  auto chance =
      of.again ? chances_again(of) : std::optional(answers_.chances(of.column, year_p));
  if (!chance) {
    return std::nullopt;
  }
  double heard = 0;
  for (double& p : *chance) {
    p = p >= least_answer ? p : 0;
    heard += p;
  }
  for (double& p : *chance) {
    p /= heard;
  }
  return chance;
}

model::PieceBelief LookCandidates::judged_with(const LookCandidate& of,
                                               const PossibleAnswer& answer,
                                               WhatIf besides) const {
  SeenInstead seen{.character = gathered_.columns.ids()[of.column]};
  seen.seen = answer.none ? model::Seen::none : model::Seen::value;
  seen.number = answer.number;
  if (!answer.value.empty()) {
    seen.values.push_back(answer.value);
  }
  besides.seen.push_back(std::move(seen));
  return reckoning_.judge_if(of.piece, besides);
}

}  // namespace backmark::evidence
