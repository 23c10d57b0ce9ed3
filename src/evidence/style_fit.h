// The steps of a style fit, in order; only the fit's own bodies include this.
#pragma once

#include <map>
#include <set>
#include <vector>

#include "evidence/style.h"

namespace backmark::evidence {

inline constexpr int fewest_lots = 12;  // dated lots; below, no weight is fitted

class StyleFit {
 public:
  StyleFit(const StyleTable& table,
           const StyleSettings& settings,
           const Watch& watch,
           const StyleLessons* known)
      : table_(table), settings_(settings), watch_(watch), known_(known) {}

  Result<Style> run() {
    check(table_);
    if (auto ready = prepare(); !ready) {
      return ready.problem();
    }
    for (const auto step : {&StyleFit::compare, &StyleFit::stack_up, &StyleFit::calibrate}) {
      if (auto done = (this->*step)(); !done) {
        return done.problem();
      }
      if (watch_.stop.stop_requested()) {
        return stopped();
      }
    }
    watch_.tell(1);
    return std::move(style_);
  }

 private:
  Result<Done> prepare();
  void drop_lessons_of_others();
  Result<Done> compare();
  Result<Done> stack_up();
  Result<Done> calibrate();
  std::vector<std::vector<double>> predictions();

  void take_notes();
  std::vector<int> ties() const;
  double evidence(std::size_t piece) const;
  double judged(std::size_t piece) const;
  Result<Likeness> learned(const std::vector<std::size_t>& sample);
  void set_curves(double smoothing_years);
  void draft_all();
  StackTask task(bool with_comparanda) const;
  double stack_priors(std::size_t line) const;

  const StyleTable& table_;
  const StyleSettings& settings_;
  const Watch& watch_;
  const StyleLessons* known_ = nullptr;  // null: everything is to be learned
  Style style_;
  double stretch_ = 1;  // of all lengths of time on a long axis
  double span_smoothing_ = 4;
  std::vector<std::size_t> dated_, pool_, sample_;
  std::vector<std::size_t> told_;   // pieces whose years are hearsay
  std::map<int, double> lot_size_;  // pieces that teach
  std::set<int> dated_lots_;
  std::vector<Style::Draft> drafts_;  // of the sample
  StyleTable words_;                  // the pool's pieces with only the words kept
};

}  // namespace backmark::evidence
