// Keeping within the allowance of a run: who takes whose place and when, and what dimming buys.
#pragma once

#include <vector>

#include "care/light_plan.h"

namespace backmark::care {

// A piece at a place for so many whole days; day 0 is opening day.
struct Spell {
  const model::Piece* piece = nullptr;
  int first_day = 0;
  int days = 0;
};

// A place whose piece would pass its allowance.
struct Turn {
  const PieceLight* place = nullptr;
  std::vector<Spell>
      spells;          // in order; without the first piece if it may not stand there at all
  int empty_days = 0;  // at the end, for which nobody is left
};

struct Rotation {
  std::vector<Turn> turns;
  int changes = 0;
  int at_least = 0;  // no plan with these reserves has fewer; equal to `changes`: the fewest
};

// Reserves are the pieces that are picked and lie in no case and that may be shown. Each stands
// at one place only. For every place in turn, the longest gap first: the reserve that fits the
// gap most closely, of the same section if there is one, else the one that lasts longest.
// Pieces of one place may follow each other in any order. Work: places over their allowance
// times reserves, both bounded by what stands in cases and in the picks.
Rotation rotation(const model::Show& show,
                  const std::vector<PieceLight>& plan,
                  const LightWish& wish);

// What a case is like with its lights at a share of their present level, no piece exchanged.
struct Dimmed {
  double share = 1;
  double lux_low = 0;
  double lux_high = 0;
  int over_run = 0;
  int over_level = 0;
  double days = 0;  // that every piece of the case may stay
};

struct CaseDimmer {
  const CaseContents* contents = nullptr;
  std::vector<Dimmed> steps;  // shares 1, 0.75, 0.5, 0.25 and, if below 1, `needed`
  double needed = 1;          // the largest share at which nobody passes a limit; 0: none does
};

// Cases whose pieces have a dose, in the order of the plan.
std::vector<CaseDimmer> dimmers(const std::vector<PieceLight>& plan, const LightWish& wish);

}  // namespace backmark::care
