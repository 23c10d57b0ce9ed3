// One chain of the joint sampler: Gibbs steps whose stationary distribution is the posterior of
// everything in JointState given the pieces that teach. Pieces that do not teach are judged by
// it.
#pragma once

#include <vector>

#include "base/random.h"
#include "evidence/joint_piece.h"
#include "evidence/joint_state.h"

namespace backmark::evidence {

// Sums over recorded sweeps, one row a piece; divide by `sweeps` of the row.
struct PieceSums {
  std::vector<double> year;      // one a year
  std::vector<double> maker;     // 0..K
  std::vector<double> replaced;  // one a component
  double sweeps = 0;
};

class JointChain {
 public:
  // A start from scratch (`start` null) or from a former state; pieces beyond those of `start`
  // are placed at random. The show must outlive the chain.
  JointChain(const JointShow& show,
             const JointSettings& settings,
             const JointState* start,
             Random random);

  // One round of all steps for the pieces that teach.
  void sweep();
  // Draws year and maker of the pieces that do not teach, and the makers' shares among them.
  void judge_others();
  // From now on each sweep adds each piece's conditional year and maker to the sums.
  void record(bool on) { recording_ = on; }

  const JointState& state() const { return state_; }
  const std::vector<PieceSums>& sums() const { return sums_; }

 private:
  using Index = std::size_t;
  void place_at_start(const JointState* start);
  void place_spans();
  void rebuild_counts();
  void rebuild_fashion();
  void rebuild_habit(int maker, int character);
  void rebuild_all_habits();
  void rebuild_variant(Index lineage);

  // Pieces.
  void redraw_piece(Index piece, const std::vector<double>& maker_prior);
  void judge_piece(Index piece, const std::vector<double>& maker_prior);
  bool draw_maker_and_year(Index piece, double total);
  void draw_flags(Index piece, bool counted);
  void draw_replacement(Index piece, Index place, bool counted);
  void count_piece(Index piece, int sign);
  void add_to_sums(Index piece, double total);
  std::vector<double> teaching_prior(const JointPiece& piece) const;

  // Habits.
  void redraw_habits();
  std::vector<double> draw_theta(Index character);
  void redraw_share(Index character, const std::vector<double>& theta);
  void redraw_tables();
  void redraw_concentration();
  double base_at(int row, int maker) const;

  // Spans.
  struct Members;
  void redraw_spans();
  void redraw_span(int maker, const std::vector<Index>& members);
  int lone_maker(Index piece) const;
  double stray_odds(Index piece, int maker, const std::vector<double>& like) const;
  Members members_of(int maker, const std::vector<Index>& members);
  // `but`: a lineage whose marks are left out; -1 none.
  std::vector<double> year_likelihood(Index piece, int but) const;
  void move_span(int maker, int direction, const Members& members);
  void redraw_years(const Members& members, int maker);

  // Shared parts.
  void redraw_fashion();
  std::vector<int> fashion_counts() const;
  void redraw_shares();

  // Marks in order.
  void redraw_lineages();
  void redraw_changes(Index lineage);
  void redraw_changes_undated(Index lineage);
  std::vector<double> year_beside(Index piece, Index lineage) const;
  bool mark_is_stray(const JointMark& mark, int year);

  // Doubts.
  void sum_out_doubts(Index piece);
  void redraw_doubts();
  std::vector<double> draw_dirichlet(const std::vector<double>& weight);

  const JointShow& show_;
  const JointSettings settings_;
  JointLayout layout_;
  Random random_;
  PieceWeigher weigher_;
  JointState state_;
  SharedTables shared_;
  std::vector<PieceFrame> frames_;
  std::vector<int> lone_maker_;         // by piece, see lone_maker
  std::vector<SpanTable> span_tables_;  // by maker - 1
  std::vector<int> tables_;             // (0..K) x rows, auxiliary
  std::vector<PieceSums> sums_;
  bool recording_ = false;
};

double draw_beta(double a, double b, Random& random);

// A quarter of the makers unless set; at least 1/4.
double unlisted_weight(const JointSettings& settings, int makers);

}  // namespace backmark::evidence
