// What a run of a show costs each piece in light, against what it may have.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "care/light_at.h"
#include "care/sensitivity.h"

namespace backmark::care {

// Microwatts in a lumen above which ultraviolet counts as not removed: the limit that the rules
// of light-classes.csv share.
constexpr double uv_free_uw_lm = 10;

struct LightWish {
  std::string rule;                             // of the class limits, "CIE 157"
  model::DayNumber opens = model::unknown_day;  // for what was had in the year before
  double days = 0;                              // on which the lights are on
  double dim = 1;                               // share of the present light, in every case
};

// What a piece may have; 0: no limit.
struct LightAllowance {
  Lux level;
  LuxHours run;            // for the run, what it had in the year before taken off
  std::string level_from;  // "CIE 157 R3"; "Lender 14"
  std::string run_from;
  LuxHours past_year;  // had in the 365 days before opening
  LuxHours past;       // had before opening, in all
};

struct PieceLight {
  const model::Piece* piece = nullptr;
  const CaseContents* contents = nullptr;
  const model::Placement* placement = nullptr;
  Sensitivity sensitivity;
  LightAt light;
  LightAllowance may;
  double fade_mlxh = 0;       // megalux hours to one just noticeable fade; 0: it does not fade
  bool fade_with_uv = false;  // the figure for light with ultraviolet in it
  std::optional<LuxHours> dose;        // of the run; none: level or hours are not known
  std::optional<double> share_of_run;  // of the allowance; none: no dose or no limit
  double share_of_fade = 0;            // of one noticeable fade, this run
  double share_with_past = 0;          // and with what it had before
  std::vector<std::string> ask;        // what must be measured or said first

  bool over_run() const { return share_of_run && *share_of_run > 1 + 1e-9; }
  bool over_level() const {
    return may.level.value > 0 && light.lux && light.lux->value > may.level.value + 1e-9;
  }
  bool over_uv() const { return light.uv_uw_lm && *light.uv_uw_lm > uv_free_uw_lm; }
};

// Every placed piece, case by case. The allowance of a run: what the class has for a year under
// the rule, in proportion for a run of more than 365 days and whole for a shorter one, or what
// the piece or its lender asks if that is less; light of the 365 days before opening is taken
// off. A fade: blue-wool figures, those with ultraviolet unless a reading or every fixture says
// that there is at most `uv_free_uw_lm`. `contents` outlives the answer.
std::vector<PieceLight> light_plan(const model::Show& show,
                                   const std::vector<CaseContents>& contents,
                                   const LightWish& wish);

// What a piece had before opening.
struct PastLight {
  LuxHours year;  // in the 365 days before; light of an unknown day counts as of these
  LuxHours all;
};
using PastLights = std::map<model::Id<model::Piece>, PastLight>;
PastLights past_lights(const model::Show& show, model::DayNumber opens);

// What a piece may have, placed or not.
struct Asked {
  const Requirements& requirements;
  const PastLights& past;
  const LightWish& wish;
};
LightAllowance allowance_of(const model::Show& show,
                            const model::Piece& piece,
                            const Sensitivity& sensitivity,
                            const Asked& asked);
// The class that the piece or its lender names, else the record's.
Sensitivity sensitivity_of(const model::Show& show,
                           const model::Piece& piece,
                           const Requirements& requirements);

// Days on which the lights may be on until an allowance is spent, at most `most`; a limit of
// level that is passed gives 0.
double days_within(const LightAllowance& may, Lux level, double hours_per_day, double most);

}  // namespace backmark::care
