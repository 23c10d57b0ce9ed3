// How far the odds of a show may be trusted, as rooms hand it to each other.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <vector>

#include "base/year.h"

namespace backmark::model {

enum class Trust { trusted, too_sure, too_cautious, too_few };

// How often something came true, with what chance alone leaves open (95 in 100).
struct SeenShare {
  double share = 0;
  double low = 0;
  double high = 1;
  double trials = 0;  // that count for themselves: lots, not pieces
};

// Of answers said to hold with this share, how many did.
struct SaidShare {
  double said = 0;
  SeenShare seen;
  std::size_t pieces = 0;
  Trust trust = Trust::too_few;
};

// "Made before `year`", over the pieces whose known span does not straddle it.
struct BeforeCheck {
  Year year;
  std::size_t pieces = 0;
  double calibration_error = 0;
  std::size_t sure = 0;        // said with more than 0.95, either way
  std::size_t sure_right = 0;  // of those
};

struct YearCalibration {
  std::size_t pieces = 0;
  double lots = 0;                    // effective number
  std::array<SaidShare, 3> coverage;  // spans of 0.50, 0.80 and 0.95
  double median_width_80 = 0;         // years
  double median_error = 0;            // years from the middle to the known span, 0 inside it
  double log_score = 0;               // mean ln of the chance given to the known span
  double log_score_any = 0;           // the same, were every piece given one common curve
  std::vector<double> ranks;          // ten cells, sum 1: where known years fall, early to late
  std::vector<SaidShare> steps;       // spans of 1 to 19 in 20
  std::vector<BeforeCheck> before;
  Trust trust = Trust::too_few;
};

// Makers, given that the hand is on the list.
struct MakerCalibration {
  std::size_t pieces = 0;
  std::size_t groups = 0;  // lots by maker: each counts once in everything below
  double top_1 = 0;
  double top_3 = 0;
  double log_loss = 0;           // mean -ln of the chance given to the maker
  double calibration_error = 0;  // of the first name, ten bins
  double chance_of_error = 1;    // that honest odds would show as large a one
  double said_first = 0;         // mean chance given to the first name
  std::vector<SaidShare> bins;   // of the first name
  // Whether the hand is on the list at all: chance that one who is gets the higher odds.
  std::size_t unlisted = 0;  // pieces whose maker is not
  double listed_auc = 0;     // 0 when there are none of either kind
  Trust trust = Trust::too_few;
};

struct CalibrationGroup {
  std::string kind;  // "form", "decade"
  std::string name;  // "brooch", "1950s"
  YearCalibration years;
};

struct Calibration {
  bool by_lot = false;
  std::size_t folds = 0;
  YearCalibration years;
  MakerCalibration makers;
  std::vector<CalibrationGroup> groups;
  std::vector<std::string> notes;
};

}  // namespace backmark::model
