#include "words/numbering.h"

#include <algorithm>
#include <limits>
#include <tuple>

namespace backmark::words {

Numbering::Numbering(const model::Show& show) {
  for (const model::Pick& pick : show.all<model::Pick>()) {
    const model::Piece* piece = show.find(pick.piece);
    if (piece != nullptr && (pick.in_show || pick.in_book)) {
      places_.push_back({piece, &pick, show.find(pick.section), 0});
    }
  }
  const auto key = [](const Place& place) {
    const std::int32_t section = place.section == nullptr
                                     ? std::numeric_limits<std::int32_t>::max()
                                     : place.section->rank;
    return std::tuple(section, place.pick->section.value, place.pick->rank,
                      place.pick->id.value);
  };
  std::sort(places_.begin(), places_.end(),
            [&key](const Place& a, const Place& b) { return key(a) < key(b); });
  std::vector<Place> once;
  for (Place& place : places_) {
    if (by_piece_.emplace(place.piece->id.value, once.size()).second) {
      place.number = static_cast<int>(once.size()) + 1;
      once.push_back(place);
    }
  }
  places_ = std::move(once);
}

const Place* Numbering::place_of(model::Id<model::Piece> piece) const {
  const auto at = by_piece_.find(piece.value);
  return at == by_piece_.end() ? nullptr : &places_[at->second];
}

std::string Numbering::number_of(const model::Piece& piece) const {
  const Place* place = place_of(piece.id);
  return place == nullptr ? piece.number : std::to_string(place->number);
}

}  // namespace backmark::words
