// The invented Ennet coast: its makers as they really worked and as they are documented.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/year.h"
#include "model/knowledge.h"
#include "scenario/work.h"

namespace backmark::scenario {

struct MakerCard {
  std::string key;
  std::string name;
  std::string inverted;
  model::MakerKind kind = model::MakerKind::person;
  std::string place;
  YearSpan worked;                      // the truth
  std::optional<Year> documented_from;  // what the papers say
  std::optional<Year> documented_to;
  double from_sd = 3;
  double to_sd = 3;
  double share = 1;    // of all pieces, relative
  double signs = 0.3;  // share of own pieces that carry the mark
  MarkForm mark_form = MarkForm::stamped;
  MarkOutline mark_outline = MarkOutline::none;
  std::vector<std::string> legends;  // oldest first; lines within one divided by '/'
  std::vector<Year> changed;         // changed[i]: the first year of legends[i + 1]
  std::vector<Motif> motifs;         // liked, most liked first
  bool living = false;
  std::string prose;
};

const std::vector<MakerCard>& makers();

// The share of all pieces by unrecorded hands.
inline constexpr double unrecorded_share = 0.22;

// First years in which the trade could supply a thing.
inline constexpr Year clip_from{1951};
inline constexpr Year button_from{1964};
inline constexpr Year rayon_from{1946};
inline constexpr Year nylon_from{1955};
inline constexpr Year vinyl_from{1968};

// The first year of the second, third and fourth legend of the spring clip, and of the second
// bar.
inline constexpr Year clip_changed[] = {{1955}, {1960}, {1967}};
inline constexpr Year bar_changed{1950};

const std::vector<std::string>& places();

}  // namespace backmark::scenario
