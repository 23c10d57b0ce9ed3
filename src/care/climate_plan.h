// The air of each case: what all its pieces and their lenders bear together, who stands in
// whose way, and how long the case keeps its own air against the room's.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "care/contents.h"

namespace backmark::care {

// One voice about a piece's air; an end that is none is open.
struct ClimateWant {
  const model::Piece* piece = nullptr;
  std::string who;     // "leather and hide (plaited leather)", "Lender 1"
  std::string waiver;  // who may waive it
  std::string source;
  std::string status;
  std::optional<double> low;
  std::optional<double> high;
};

// What is left when everybody is heard. `low` above `high`: nothing.
struct Common {
  double low = 0;
  double high = 0;
  const ClimateWant* of_low = nullptr;  // who draws each end; null: nobody did
  const ClimateWant* of_high = nullptr;
  bool conflict() const { return low > high; }

  // The end that a held value passes, by whoever asks for it; null: it lies within.
  const ClimateWant* passed_by(double held) const {
    return held > high ? of_high : held < low ? of_low : nullptr;
  }
};

// The ends that everything bears who says nothing: 0 to 100 % and -40 to 60 degrees.
constexpr double rh_most = 100;
constexpr double celsius_least = -40;
constexpr double celsius_most = 60;

Common common_of(const std::vector<ClimateWant>& wants, double least, double most);

// The fewest groups of pieces that each have a common range, with that range; a piece whose own
// wants exclude each other stands in a group of its own. Ranges sorted by their upper end, a
// group closed when the next range begins above it: no grouping has fewer (points that meet all
// intervals).
struct ClimateGroup {
  double low = 0;
  double high = 0;
  std::vector<const model::Piece*> pieces;
};
std::vector<ClimateGroup> fewest_groups(const std::vector<ClimateWant>& wants,
                                        double least,
                                        double most);

// Something in a case that is not good for it, or of which nobody knows.
struct KeepOut {
  std::string what;     // "MDF"; for a piece its number and material
  std::string verdict;  // "avoid", "isolate", "test", "unknown"
  std::string emits;
  std::string note;
  std::string source;
  std::string status;
  std::vector<std::string> harmed;  // numbers of pieces in the case that it harms
};

struct CaseClimate {
  const CaseContents* contents = nullptr;
  std::vector<ClimateWant> rh_wants;
  std::vector<ClimateWant> c_wants;
  Common rh;
  Common c;
  std::vector<ClimateGroup> rh_groups;  // more than one only where they conflict
  std::vector<const ClimateWant*>
      in_the_way;  // of humidity: who asks for the ends that exclude each other
  std::vector<KeepOut> keep_out;
  std::vector<std::string> silver;   // numbers of pieces with silver or its alloys
  std::vector<std::string> organic;  // and of those that want 40 % or more
};

// Every case. Wants point into the answer itself: keep it where it is.
std::vector<CaseClimate> climate_plan(const model::Show& show,
                                      const std::vector<CaseContents>& contents);

// The room round the cases; what nobody said is none.
struct Room {
  std::optional<double> celsius;
  std::optional<double> rh_percent;
};

// How a case keeps its air.
struct CaseAir {
  double volume_m3 = 0;
  std::optional<double>
      absolute_g_m3;  // of the air that is to be held, at the room's temperature
  std::optional<double> dew_point_c;
  std::optional<double> warm_rh;          // of that air, warmed by the lights, no water added
  std::optional<double> empty_half_days;  // until half of the difference to the room is gone
  std::optional<double> buffered_half_days;
  std::optional<double>
      drift_percent;  // from what is held to the end of the range on the room's side
  std::optional<double>
      days_within;  // until the range is left, with the buffer if there is one
  std::optional<double> buffer_kg_for_run;   // for the days of the run with that drift
  std::optional<double> buffer_change_days;  // of the buffer that is there
  std::vector<std::string> ask;              // what must be measured or said first
};

// Everything from figures of the case and room; none is assumed. `days` of the run.
CaseAir air_of(const CaseClimate& climate, const Room& room, double days);

}  // namespace backmark::care
