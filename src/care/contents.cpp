#include "care/contents.h"

namespace backmark::care {

namespace {

template <class T, class List>
void hand_out(const model::Show& show,
              std::map<model::Id<model::Case>, CaseContents*>& by_case,
              List CaseContents::*list) {
  for (const T& row : show.all<T>()) {
    (by_case.at(row.in)->*list).push_back(&row);
  }
}

}  // namespace

std::vector<CaseContents> contents_of(const model::Show& show) {
  std::vector<CaseContents> all;
  for (const model::Case& one : show.all<model::Case>()) {
    all.push_back({&one, {}, {}, {}});
  }
  std::map<model::Id<model::Case>, CaseContents*> by_case;
  for (CaseContents& one : all) {
    by_case[one.in->id] = &one;
  }
  hand_out<model::Placement>(show, by_case, &CaseContents::placed);
  hand_out<model::Fixture>(show, by_case, &CaseContents::fixtures);
  hand_out<model::LightReading>(show, by_case, &CaseContents::readings);
  return all;
}

Requirements::Requirements(const model::Show& show) {
  for (const model::Requirement& one : show.all<model::Requirement>()) {
    if (one.piece) {
      of_piece_[one.piece] = &one;
    } else {
      of_lender_[one.lender] = &one;
    }
  }
}

std::vector<const model::Requirement*> Requirements::of(const model::Piece& piece) const {
  std::vector<const model::Requirement*> found;
  if (const auto own = of_piece_.find(piece.id); own != of_piece_.end()) {
    found.push_back(own->second);
  }
  const auto lender = of_lender_.find(piece.lender);
  if (piece.lender && lender != of_lender_.end()) {
    found.push_back(lender->second);
  }
  return found;
}

std::string asker_of(const model::Show& show, const model::Requirement& requirement) {
  return requirement.piece ? "the piece" : show.find(requirement.lender)->code;
}

}  // namespace backmark::care
