// Dating by style: comparanda, evidence curves, their stack, and its calibration.
#pragma once

#include <string>
#include <vector>

#include "evidence/comparanda.h"
#include "evidence/curves.h"
#include "evidence/lessons.h"
#include "evidence/recalibration.h"
#include "evidence/stack.h"
#include "evidence/style_table.h"
#include "evidence/watch.h"

namespace backmark::evidence {

// Weights that stand where the pieces are too few to learn them.
struct StylePrior {
  double d = 1;             // of every distance
  double open = 1;          // of the overall density among the comparanda
  double overall = 0.3;     // b of the overall density
  double curve = 0.15;      // b of a character's curve
  double comparanda = 0.7;  // b of the comparanda
};

// Lengths of time are for an axis of up to 500 years and grow with longer ones.
struct StyleSettings {
  std::optional<YearSpan> axis;  // default: the stated spans and a margin
  StylePrior prior;
  double final_smoothing_years = 2;
  double overall_smoothing_years = 15;
  double after_latest = 0.02;   // factor on the years after a piece's `latest`
  double overall_share = 0.02;  // of the overall density in every answer
  // Spread evenly over the axis in every answer: a record of a year that no other piece comes
  // near must not be taken for empty talk by style alone.
  double even_share = 0.02;
  double pseudo_per_decade = 5;
  double lot_power = 0.5;  // a piece counts (dated pieces of its lot)^-lot_power
  double ridge_d = 1;
  double ridge_b = 10;
  std::size_t rank_cells = 20;
  double rank_pseudo_count = 100;  // 0: no recalibration
  double lag_pseudo_count = 10;    // pieces in each stretch of lag
  int small_below = 350;           // dated pieces; below, the small-show recipe is used
  std::size_t fit_most = 3000;     // pieces that weights are fitted on; whole lots are drawn
  std::size_t pool_most = 20000;   // pieces that others are compared with
};

// One line of the stack: log weights over the cells, up to a constant; they add up.
struct StyleLine {
  std::string what;  // the character's name, "overall" or "comparanda"
  // b * line, one a year of the axis, mean over the answer 0; empty: says nothing.
  std::vector<double> nats;
};

struct Comparandum {
  std::size_t piece = 0;      // index in the table
  double share = 0;           // of everything that speaks: K_i / (sum K + open)
  std::vector<double> apart;  // d_f D_f, one a character: why it is near, and where it is not
};

// A group of characters (those of one part) held against everything else.
struct StyleApart {
  std::vector<double> without_p;  // p as it would be had they not been recorded
  std::vector<double> nats;  // what their curves say, one log weight a year; empty: nothing
};

struct StyleJudgement {
  YearSpan axis;
  std::vector<double> p;         // one a year, sums to 1; calibrated
  std::vector<double> overall;   // what would be said of any piece; shown beside a weak answer
  std::vector<StyleLine> lines;  // one a character, overall, comparanda
  std::vector<Comparandum> comparanda;  // heaviest first
  double compared = 0;                  // sum K / (sum K + open): how much the pieces say
  std::vector<StyleApart> apart;        // one a group asked about
};

// What is asked of one piece.
struct StyleQuestion {
  const std::vector<StyleValue>* values = nullptr;
  std::optional<int> lot;  // pieces of this lot do not speak
  // Already in the answer, and in what its calibration was learned from: do not apply it again.
  std::optional<Year> latest;
  std::size_t comparanda = 0;                   // how many to list
  bool lines = false;                           // whether to give the lines
  std::vector<std::vector<std::size_t>> apart;  // groups of characters to hold against the rest
};

class Style {
 public:
  // Under 5 ms for a pool of 3,000. Unknown terms are allowed.
  StyleJudgement judge(const StyleQuestion& question) const;

  // The map for "made before `year`", learned from the pieces not straddling it; apply it to
  // the sum of p before that year.
  OddsMap before(Year year) const;

  YearSpan axis() const { return grid_.span; }
  const EvidenceCurves& curves() const { return curves_; }
  const Likeness& likeness() const { return comparanda_.likeness(); }
  const RankMap& ranks() const { return ranks_; }
  const LagMap& lags() const { return lags_; }
  // Weights of the stack: one a character, then overall, then comparanda.
  const std::vector<double>& weights() const { return stack_; }
  bool small_show() const { return small_; }
  // What need not be learned again while the show stays much the same.
  StyleLessons lessons() const;
  // Mean log mass on the stated spans of the pieces fitted on, their own lot left out.
  double left_out_score() const { return left_out_score_; }
  // Doubts to show beside every answer: few dated lots, borrowed weights.
  const std::vector<std::string>& notes() const { return notes_; }

 private:
  friend class StyleFit;

  struct Draft {
    Told told;
    std::vector<double> overall, comparanda;  // p, one a cell
    std::vector<std::vector<double>> lines;   // one a character, one a bin; may be empty
  };
  Draft draft(const StyleQuestion& question) const;
  std::vector<std::vector<double>> stack_lines(const Draft& draft) const;
  std::vector<double> mixed(const Draft& draft) const;
  std::vector<double> mended(std::vector<double> p, std::optional<Year> latest) const;
  StyleApart held_apart(const StyleQuestion& question,
                        Draft draft,
                        const Told& told,
                        const std::vector<std::size_t>& group) const;
  std::vector<double> to_cells(const std::vector<double>& line) const;
  std::vector<StyleValue> kept(const std::vector<StyleValue>& values) const;

  StyleSettings settings_;
  std::vector<std::string> names_;
  YearGrid grid_, bins_;
  Comparanda comparanda_;
  OverallDensity overall_;
  EvidenceCurves curves_;
  std::vector<double> stack_;         // characters, overall, comparanda
  std::vector<double> curves_alone_;  // characters, overall
  std::optional<Smoother> last_;
  LagMap lags_;
  RankMap ranks_;
  std::vector<Known> left_out_;  // mended, cumulated over bins
  double curve_smoothing_ = 0, left_out_score_ = 0;
  bool small_ = false, compared_ = true;
  std::vector<std::string> notes_;
};

// Fits all weights by leaving out the lot of each piece. Deterministic. Cost: pieces fitted on,
// squared, times characters, times about forty steps.
// Problems: bad_input when there is neither a dated piece nor a stated window; refused when
// stopped.
// With lessons of the same characters, axis and recipe nothing is learned: pieces are only
// counted and laid out for comparing, which takes a hundredth of the time.
Result<Style> fit_style(const StyleTable& table,
                        const StyleSettings& settings,
                        const Watch& watch,
                        const StyleLessons* known = nullptr);

}  // namespace backmark::evidence
