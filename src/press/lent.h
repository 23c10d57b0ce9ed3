// Pieces on loan, and who may read a paper about them.
#pragma once

#include <string>
#include <vector>

#include "press/job.h"
#include "words/fact.h"

namespace backmark::press {

// A piece with the loan that brings it. `place` is null for a piece that is not picked.
struct Lent {
  const model::Piece* piece = nullptr;
  const model::Loan* loan = nullptr;
  const model::Lender* lender = nullptr;  // null: the loan names nobody
  const words::Place* place = nullptr;

  // Its number in the show, "-" if it has none.
  std::string number() const;
};

// Every piece with a loan (of several the last by its first day), of `job.only` if that is set;
// by lender, then in the order of the show, pieces that are not in it last.
std::vector<Lent> lent_pieces(const PressJob& job, const words::Grammar& grammar);

// "Lender 4 · The Orrin family" as far as the audience may see it; "Own collection" for null.
std::string lender_text(const PressJob& job, const model::Lender* lender);

// Whether the audience may have a paper whose matter is `kind`; `paper` names it. Problems:
// refused (not this audience; a lender, without saying which).
Result<Done> may_print(const PressJob& job, words::FactKind kind, std::string_view paper);

// That there is nothing to print, in the words of the paper. Problem: not_found.
Problem no_loans(const PressJob& job, std::string_view paper);

}  // namespace backmark::press
