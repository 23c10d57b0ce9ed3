// What a fit learned, without the pieces it learned from: weights, maps and shares. With it the
// next fit of the same show need not learn them again, which is where nearly all of its time
// goes.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "base/year.h"
#include "evidence/recalibration.h"

namespace backmark::evidence {

struct StyleLessons {
  std::vector<std::string> names;  // of the characters, in the order of the weights
  YearSpan axis;
  bool small = false;           // by which recipe
  std::vector<double> d;        // of the distances, one a character
  double open = 1;              // of the overall density among the comparanda
  std::vector<double> b;        // of the stack: characters, overall, comparanda
  std::vector<double> b_alone;  // of the curves alone: characters, overall
  double curve_years = 12;      // smoothing of the curves, as chosen for an axis up to 500
  std::vector<double> lags;     // factors of the stretches of lag (LagMap)
  std::vector<double> ranks;    // histogram (RankMap)
  std::vector<Known> left_out;  // mended, cumulated over bins
  double left_out_score = 0;
};

struct HandLessons {
  std::vector<std::string> names;
  std::vector<double> d;
  double open = 1;
  double listed_share = 0;
};

// What the chains found of all pieces together (reckon_joint.cpp).
struct Sampled {
  std::int32_t chains = 0;  // 0: nothing was sampled
  double rhat_max = 0;
  double ess_min = 0;
  bool converged = true;
  std::map<std::int32_t, double> reliability;  // by id of the source
  std::map<std::string, double> replaced;      // by the name of the part
  // By id of the lineage: of each variant p(variant | t), one a year.
  std::map<std::int32_t, std::vector<std::vector<double>>> variants;
};

struct Lessons {
  // Of the reckoning they were learned in; those of another are of no use.
  std::string settings;
  YearSpan axis;
  std::optional<StyleLessons> style;
  std::optional<HandLessons> hands;
  double makers_power = 0;
  Sampled sampled;
  // Marks of what was said then: of each piece in the order of ids, and of everything else
  // (makers, windows, lineages).
  std::map<std::int32_t, std::uint64_t> pieces;
  std::uint64_t frame = 0;
};

// The share of pieces that are new, gone or say something else; 1 if anything else has changed.
double changed_share(const Lessons& then, const Lessons& now);

// As bytes to be kept, and back, to the last bit. Problem: bad_input (not lessons of this
// version of the program).
std::string to_bytes(const Lessons& lessons);
Result<Lessons> lessons_of(std::string_view bytes);

}  // namespace backmark::evidence
