// Looks that could be taken at a piece: what each may show, how likely, and the piece judged
// with it. looks.h says how they are weighed, and how a re-check is.
#pragma once

#include <optional>
#include <vector>

#include "evidence/look_answers.h"

namespace backmark::evidence {

struct LookCandidate {
  std::size_t piece = 0;   // place in Show::all<Piece>()
  std::size_t column = 0;  // of the style table
  bool again = false;      // re-check of something recorded
  double rough = 0;        // bits, by the curves alone
  double minutes = 0;      // at the table, without fetching
};

class LookCandidates {
 public:
  // Both must outlive it.
  LookCandidates(const model::Show& show, const Reckoning& reckoning);

  // Looks at one piece with a rough worth of at least `least` bits, in the order of columns;
  // `year_p` is what is believed of it. What was looked at before and cannot be told is none.
  void add_of(std::size_t piece,
              const std::vector<double>& year_p,
              double least,
              std::vector<LookCandidate>& into) const;

  const std::vector<PossibleAnswer>& answers(const LookCandidate& of) const {
    return answers_.of(of.column);
  }

  // One an answer; those rarer than 1 in 100 are 0, the rest sum to 1. Nothing: the record is
  // surer than is worth a second look.
  std::optional<std::vector<double>> chances(const LookCandidate& of,
                                             const std::vector<double>& year_p) const;

  // The piece, were this the answer; `besides` is what else would be otherwise.
  model::PieceBelief judged_with(const LookCandidate& of,
                                 const PossibleAnswer& answer,
                                 WhatIf besides = {}) const;

 private:
  bool decided(std::size_t piece, std::size_t column) const;
  double minutes_of(std::size_t column) const;
  std::optional<std::size_t> recorded_answer(std::size_t piece, std::size_t column) const;
  double certainty_of(std::size_t piece, std::size_t column) const;
  double wrong_chance(std::size_t piece,
                      std::size_t column,
                      const std::vector<double>& chance,
                      std::size_t recorded) const;
  double doubt(std::size_t piece, std::size_t column, const std::vector<double>& year_p) const;
  std::optional<std::vector<double>> chances_again(const LookCandidate& of) const;

  const model::Show& show_;
  const Reckoning& reckoning_;
  const Gathered& gathered_;
  LookAnswers answers_;
};

}  // namespace backmark::evidence
