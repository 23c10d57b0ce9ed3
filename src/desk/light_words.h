// How the light report is told: lines for a terminal, values for a machine.
#pragma once

#include "base/json.h"
#include "care/rotation.h"

namespace backmark::desk {

Json light_json(const care::PieceLight& one);
Json turn_json(const care::Turn& turn);
Json dimmer_json(const care::CaseDimmer& one);

// The line above the pieces of a case.
std::string case_line(const care::CaseContents& contents);
// A piece in one line, and everything of it with the rule and its sources.
std::string light_line(const care::PieceLight& one);
std::string light_in_full(const care::PieceLight& one, const care::LightWish& wish);
std::string rotation_text(const care::Rotation& rotation, const care::LightWish& wish);
std::string dimmer_text(const care::CaseDimmer& one, const care::LightWish& wish);

// What stands under every answer.
const std::vector<std::string>& light_cautions();

}  // namespace backmark::desk
