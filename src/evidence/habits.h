// Habits: what a maker keeps doing beyond the fashion of the maker's years. A part that was
// replaced has another hand's ways, so it is the likelier original the more it has its maker's.
//
// A choice follows fashion, or with share w the maker's own habit
// (docs/manual/method-joint.md):
//     p(v given m) = (1 - w) pi_m(v) + w theta_m(v),
//     theta_m(v) = (n_mv + a pi_m(v)) / (n_m + a),
// with n_mv the pieces that bear the maker's name and show v, and pi_m the fashion around the
// mean year of those whose years are known. w and a are those of a grid under which the named
// pieces, each without its own lot, are most likely. Numbers and pieces without a name teach
// nothing.
#pragma once

#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "evidence/style_table.h"

namespace backmark::evidence {

class Habits {
 public:
  Habits() = default;
  // Looks at `columns` of the table alone. Cost: makers times dated pieces times columns.
  Habits(const StyleTable& table, std::vector<std::size_t> columns);

  // p(values of `columns` given m) / p(the same by fashion alone): above 0, and 1 where nothing
  // is known. Pieces of `lot` do not speak.
  double lift(int maker,
              const std::vector<StyleValue>& values,
              const std::vector<std::size_t>& columns,
              std::optional<int> lot) const;
  // w; 0 if named pieces are no likelier by habits than by fashion.
  double share() const { return share_; }

 private:
  using Counts = std::vector<double>;  // one a term
  struct Seen {
    double recorded = 0;
    Counts shown;
  };
  struct Maker {
    std::vector<Seen> seen;                          // one a place in columns_
    std::map<int, std::vector<std::size_t>> by_lot;  // named pieces of a lot, in the table
    std::vector<Counts> usual;                       // pi_m; empty: no year is known
  };
  // A term as the other named pieces of its maker have it: n_mv / pi_m(v) and n_m.
  struct Met {
    double shown = 0;
    double recorded = 0;
  };

  void count(const StyleTable& table);
  // The share of each term over all years, one list a place in columns_.
  std::vector<Counts> overall_shares(const StyleTable& table) const;
  void learn_fashion(const StyleTable& table,
                     const std::vector<Counts>& overall,
                     double year,
                     Maker& maker) const;
  void learn_share(const StyleTable& table);
  std::vector<Met> met_of(const Maker& maker,
                          std::size_t place,
                          const StyleValue& value,
                          std::optional<int> lot) const;
  static double lift_of(const std::vector<Met>& met, double share, double concentration);

  std::vector<std::size_t> columns_;
  std::map<std::size_t, std::vector<StyleValue>> named_;  // by piece: values of columns_
  std::vector<Maker> makers_;
  double share_ = 0;
  double concentration_ = 1;
};

}  // namespace backmark::evidence
