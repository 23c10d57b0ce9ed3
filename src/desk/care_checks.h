// What a piece or a case must hold to, each in a sentence with what stands behind it, as Sheet
// and Show say it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "assay/screen.h"
#include "base/json.h"
#include "care/climate_plan.h"
#include "care/light_plan.h"
#include "desk/reckoned.h"

namespace backmark::desk {

enum class CareState {
  holds,
  near,    // within, and more than four fifths of what is allowed are spent
  broken,  // passed, or two wishes exclude each other
  held,    // a question or a leave is open: to be held back until it is answered
  ask,     // cannot be known: something was not measured or said
  told,    // a fact with no limit
};
std::string_view word_of(CareState state);

struct CareCheck {
  std::string what;  // "Light"
  CareState state = CareState::told;
  std::string words;
  std::vector<std::string> more;  // what stands behind it, a line each
  std::optional<double> share;    // spent of what is allowed: light
};

// What every check of a call rests on.
struct CareGround {
  const model::Show& show;
  care::LightWish wish;         // days 0: opening and last day are not set
  std::optional<LastRun> last;  // years, for the law
  assay::Day opening{};
};

constexpr double near_share = 0.8;

// The light of one piece in words; `light` is its line of the plan.
CareCheck light_check(const care::PieceLight& light, const care::LightWish& wish);

// Light, air, weight, law and leave of a piece; `in` is where it lies, null if nowhere.
std::vector<CareCheck> piece_checks(const CareGround& ground,
                                    const model::Piece& piece,
                                    const care::CaseContents* in,
                                    const model::Placement* placement);

// Light, air, shelves, materials and leave of a case. `light` is the plan of its pieces.
std::vector<CareCheck> case_checks(const CareGround& ground,
                                   const care::CaseContents& contents,
                                   const std::vector<care::PieceLight>& light);

// "40 to 55 %", "at least 40 %", "any %".
std::string range_words(const std::optional<double>& low,
                        const std::optional<double>& high,
                        const char* unit);
std::string range_words(const care::Common& common, const char* unit);
// "36 hours", "3 days".
std::string days_words(double days);

Json checks_json(const std::vector<CareCheck>& checks);
std::string checks_text(const std::vector<CareCheck>& checks);

}  // namespace backmark::desk
