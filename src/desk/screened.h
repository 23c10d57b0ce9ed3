// The rules that may bear on pieces of a show, with what is recorded of them.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "assay/screen.h"
#include "desk/reckoned.h"

namespace backmark::desk {

struct ScreenedPiece {
  const model::Piece* piece = nullptr;
  std::vector<assay::Screened> rules;
};

// What must stand beside every answer about restrictions.
extern const std::string_view screen_caution;

// The rules of one piece, by what is recorded of it and the years of the newest reckoning.
std::vector<assay::Screened> screen_piece(const model::Show& show,
                                          const model::Piece& piece,
                                          const std::optional<LastRun>& last,
                                          assay::Day opening);

// The opening day that is set, or the day of the call.
assay::Day opening_of(const model::Show& show, const Surroundings& around);
// The newest reckoning, if there is one.
std::optional<LastRun> reckoned_or_none(OpenShow& open);

}  // namespace backmark::desk
