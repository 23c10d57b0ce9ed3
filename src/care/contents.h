// What each case holds, gathered once: its pieces, lights and readings; and what is asked for
// by or for a piece.
#pragma once

#include <map>
#include <vector>

#include "model/show.h"

namespace backmark::care {

struct CaseContents {
  const model::Case* in = nullptr;
  std::vector<const model::Placement*> placed;
  std::vector<const model::Fixture*> fixtures;
  std::vector<const model::LightReading*> readings;
};

// Every case in the order of the show; linear in the records.
std::vector<CaseContents> contents_of(const model::Show& show);

// Who asks what for a piece: the piece's own requirement, then its lender's.
class Requirements {
 public:
  explicit Requirements(const model::Show& show);
  std::vector<const model::Requirement*> of(const model::Piece& piece) const;

 private:
  std::map<model::Id<model::Piece>, const model::Requirement*> of_piece_;
  std::map<model::Id<model::Lender>, const model::Requirement*> of_lender_;
};

// "the piece" or the code of the lender.
std::string asker_of(const model::Show& show, const model::Requirement& requirement);

}  // namespace backmark::care
