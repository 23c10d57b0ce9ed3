// A day in the vault: which trays or lenders to go to, and what to look at there.
//
// Greedy by bits a minute: the next look of a stop that is open, or the best first stretch of
// one that is not, its fetching counted. A piece is handled once. What is learned on one piece
// overlaps, so its second look counts half, its third a quarter (assumed). n looks, s stops:
// O(n log n + n s).
#pragma once

#include "model/look.h"
#include "model/show.h"

namespace backmark::evidence {

enum class Visit { tray, lender };

// Common practice, no source; the settings look.tray_minutes, look.lender_minutes and
// look.piece_minutes of the show stand instead.
struct VisitMinutes {
  double tray = 8;     // put back one, fetch the next
  double lender = 60;  // get there, unpack, thank
  double piece = 3;    // take out, lay down, put back
};

VisitMinutes visit_minutes(const model::Show& show);

// Fills hours, plan, missed, planned_minutes and planned_bits of `list`. Hours > 0.
void plan_looks(const model::Show& show,
                double hours,
                Visit by,
                const VisitMinutes& minutes,
                model::LookList& list);

}  // namespace backmark::evidence
