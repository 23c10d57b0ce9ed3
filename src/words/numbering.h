// The numbers of the show: what stands beside a piece in the case and in the book.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "model/show.h"

namespace backmark::words {

// A picked piece in its place.
struct Place {
  const model::Piece* piece = nullptr;
  const model::Pick* pick = nullptr;
  const model::Section* section = nullptr;  // null: in no section; such come last
  int number = 0;                           // 1, 2 ... through the whole show
};

// Picks in the order of sections, then ranks. A piece picked twice counts once, by its first
// pick. Keeps pointers into the show, which must outlive it.
class Numbering {
 public:
  explicit Numbering(const model::Show& show);

  const std::vector<Place>& places() const { return places_; }
  // Null for a piece that is not picked.
  const Place* place_of(model::Id<model::Piece> piece) const;
  // "57"; for a piece that is not picked its catalogue number, "ES 118".
  std::string number_of(const model::Piece& piece) const;

 private:
  std::vector<Place> places_;
  std::map<std::int32_t, std::size_t> by_piece_;
};

}  // namespace backmark::words
