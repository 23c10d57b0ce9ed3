// The columns that a list can show, by name.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/result.h"
#include "desk/reckoned.h"
#include "model/show.h"

namespace backmark::desk {

// One piece with what was reckoned of it; `belief` and `phrases` may be null.
struct ListedPiece {
  const model::Piece* piece = nullptr;
  const model::PieceBelief* belief = nullptr;
  const model::Phrases* phrases = nullptr;
  const model::Section* section = nullptr;
  const model::Case* in = nullptr;
  // Bits that the best look at it should bring, roughly; none: not asked for or not reckoned.
  std::optional<double> look_gain_bits = {};
};

// What was seen of a character on a piece, in words; more than one parted by "; ".
std::string observed(const model::Show& show,
                     std::span<const model::Observation> of_piece,
                     const model::Character& character);

// The pieces of the show with what was reckoned of them and where they stand.
std::vector<ListedPiece> listed_pieces(const model::Show& show, const LastRun* last);

// The cells of a row. Problem: not_found, for a column that is neither built in nor a character
// of the show, with the nearest name.
Result<std::vector<std::vector<std::string>>> cells_of(const model::Show& show,
                                                       const std::vector<ListedPiece>& pieces,
                                                       const std::vector<std::string>& columns);

// What is listed when nothing is asked for: at a terminal, there before the show was reckoned,
// and in CSV.
const std::vector<std::string>& short_columns();
const std::vector<std::string>& recorded_columns();
const std::vector<std::string>& all_columns();

}  // namespace backmark::desk
