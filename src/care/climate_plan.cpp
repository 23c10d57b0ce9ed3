#include "care/climate_plan.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "care/keep_out.h"
#include "care/made_of.h"
#include "reference/display.h"

namespace backmark::care {

namespace {

using model::Show;
using reference::ClimateBand;

// Who waives what a material wants.
const char* const conservator = "the conservator";

void add_band(CaseClimate& climate, const model::Piece& piece, const std::string& value) {
  const ClimateBand* band = reference::climate_band(value);
  if (band == nullptr) {
    return;
  }
  ClimateWant want{&piece,       fmt::format("{} ({})", band->band, value),
                   conservator,  band->source,
                   band->status, band->rh_low,
                   band->rh_high};
  climate.rh_wants.push_back(want);
  if (band->c_low || band->c_high) {
    want.low = band->c_low;
    want.high = band->c_high;
    climate.c_wants.push_back(std::move(want));
  }
}

void add_requirement(CaseClimate& climate,
                     const Show& show,
                     const model::Piece& piece,
                     const model::Requirement& asked) {
  ClimateWant want{&piece,
                   asker_of(show, asked),
                   asked.waiver.empty() ? "whoever asked for it: not recorded" : asked.waiver,
                   asked.text,
                   "said",
                   asked.rh_low,
                   asked.rh_high};
  if (want.low || want.high) {
    climate.rh_wants.push_back(want);
  }
  if (asked.c_low || asked.c_high) {
    want.low = asked.c_low;
    want.high = asked.c_high;
    climate.c_wants.push_back(std::move(want));
  }
}

void note_kinds(CaseClimate& climate,
                const model::Piece& piece,
                const std::vector<MadeOf>& made) {
  const auto add = [&](std::vector<std::string>& list) {
    if (list.empty() || list.back() != piece.number) {
      list.push_back(piece.number);
    }
  };
  for (const MadeOf& one : made) {
    const ClimateBand* band = reference::climate_band(one.value);
    if (contains(one.value, "silver") && band != nullptr && band->rh_high && !band->rh_low) {
      add(climate.silver);
    }
    if (band != nullptr && band->rh_low && *band->rh_low >= 40) {
      add(climate.organic);
    }
  }
}

// The want that stands for the highest low end, or the lowest high end.
void draw_ends(Common& common, const std::vector<ClimateWant>& wants) {
  for (const ClimateWant& want : wants) {
    if (want.low && *want.low > common.low) {
      common.low = *want.low;
      common.of_low = &want;
    }
    if (want.high && *want.high < common.high) {
      common.high = *want.high;
      common.of_high = &want;
    }
  }
}

// Everybody whose end lies beyond the other end: with them gone the range is open again.
void name_the_way(CaseClimate& climate) {
  if (!climate.rh.conflict()) {
    return;
  }
  for (const ClimateWant& want : climate.rh_wants) {
    if ((want.low && *want.low > climate.rh.high) ||
        (want.high && *want.high < climate.rh.low)) {
      climate.in_the_way.push_back(&want);
    }
  }
}

}  // namespace

Common common_of(const std::vector<ClimateWant>& wants, double least, double most) {
  Common common{least, most, nullptr, nullptr};
  draw_ends(common, wants);
  return common;
}

std::vector<ClimateGroup> fewest_groups(const std::vector<ClimateWant>& wants,
                                        double least,
                                        double most) {
  std::map<const model::Piece*, std::size_t> place;
  std::vector<ClimateGroup> own;  // a piece each, in the order in which they are named
  for (const ClimateWant& want : wants) {
    const auto [at, is_new] = place.try_emplace(want.piece, own.size());
    if (is_new) {
      own.push_back({least, most, {want.piece}});
    }
    ClimateGroup& group = own[at->second];
    group.low = std::max(group.low, want.low.value_or(least));
    group.high = std::min(group.high, want.high.value_or(most));
  }
  std::stable_sort(own.begin(), own.end(), [](const ClimateGroup& a, const ClimateGroup& b) {
    return a.high < b.high;
  });
  std::vector<ClimateGroup> groups;
  std::size_t open = own.size();  // place in `groups` of the one that still takes pieces
  for (ClimateGroup& piece : own) {
    if (piece.low > piece.high) {
      groups.push_back(std::move(piece));
    } else if (open < groups.size() && piece.low <= groups[open].high) {
      groups[open].low = std::max(groups[open].low, piece.low);
      groups[open].pieces.push_back(piece.pieces.front());
    } else {
      open = groups.size();
      groups.push_back(std::move(piece));
    }
  }
  return groups;
}

std::vector<CaseClimate> climate_plan(const Show& show,
                                      const std::vector<CaseContents>& contents) {
  const Requirements requirements(show);
  std::vector<CaseClimate> plan;
  plan.reserve(contents.size());
  for (const CaseContents& one_case : contents) {
    CaseClimate& climate = plan.emplace_back();
    climate.contents = &one_case;
    for (const model::Placement* placement : one_case.placed) {
      const model::Piece& piece = *show.find(placement->piece);
      const auto made = made_of(show, piece);
      for (const MadeOf& one : made) {
        add_band(climate, piece, one.value);
      }
      for (const model::Requirement* asked : requirements.of(piece)) {
        add_requirement(climate, show, piece, *asked);
      }
      note_kinds(climate, piece, made);
    }
    climate.rh = common_of(climate.rh_wants, 0, rh_most);
    climate.c = common_of(climate.c_wants, celsius_least, celsius_most);
    climate.rh_groups = fewest_groups(climate.rh_wants, 0, rh_most);
    name_the_way(climate);
    climate.keep_out = keep_out_of(show, one_case);
  }
  return plan;
}

}  // namespace backmark::care
