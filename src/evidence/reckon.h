// The whole reckoning: style, statements, makers' spans and parts, weighed into one answer for
// year and maker of every piece.
//
// For a piece x, over the years t of the axis and the makers m of the show (0: a hand not on
// the list):
//     p(t, m | x) ~ p_style(t) q(m | t) prod_j E_j(t) prod_k G_k(m)
// p_style: comparanda and curves, the piece's own lot left out (style.h), with each replaceable
// part weighed as perhaps later (component.h). q: the share of the makers at work in t
// (spans.h). E_j: what is said of the year (statement.h). G_k: what is said of the maker, r on
// the one named and (1 - r) shared by the rest.
#pragma once

#include <memory>
#include <optional>
#include <set>
#include <string>

#include "base/result.h"
#include "evidence/gather.h"
#include "evidence/lessons.h"
#include "evidence/style.h"
#include "evidence/watch.h"
#include "evidence/what_if.h"
#include "model/belief.h"
#include "model/show.h"

namespace backmark::evidence {

struct ReckonSettings {
  Year today{2025};        // closes the axis and the lags
  std::uint64_t seed = 1;  // of the sampled part; the fitted part draws nothing
  int chains = 4;          // of the sampled part; 0: it is left out
  int rounds = 300;        // of each chain, kept
  // Share of pieces by hands that are not on the list; below 0: learned from the signed pieces.
  double unlisted_share = -1;
  // Ids of pieces that are to be judged as if nobody knew their year and maker, and that teach
  // nothing (hide_known in gather.h): for measuring how well the others foretell them.
  std::set<std::int32_t> hidden;
};

// Whether a fit with these settings could take the lessons over.
bool serve(const Lessons& lessons, const ReckonSettings& settings);

// What to leave out of an answer, for "without this": records by id, characters by id.
struct LeftOut {
  std::set<std::int32_t> records;
  std::set<std::int32_t> characters;
  // What makes the piece's own year or maker known (hide_known in gather.h). Curves and hands
  // never heard its lot; spans of makers and lags did. To hide it from those too, fit with
  // `hidden`.
  bool known_year = false;
  bool known_maker = false;
};

class Reckoning {
 public:
  // Fits everything that pieces share. Problems: refused (stopped). A show with neither a dated
  // piece nor a stated window is no Problem: its pieces are "not dated" unless something is
  // said of them, and the notes say so.
  // `known`: lessons of an earlier fit. If settings and axis are the same and no more than
  // `most_changed` of the pieces have changed (changed_share in lessons.h), they are taken as
  // they stand and only what depends on single pieces is laid out anew; with nothing changed
  // the answers are the same to the last bit. A note says that something has changed. Lessons
  // that do not serve are passed over.
  static Result<Reckoning> fit(const model::Show& show,
                               const ReckonSettings& settings,
                               const Watch& watch,
                               const Lessons* known = nullptr,
                               double most_changed = 1);
  Reckoning(Reckoning&&) noexcept;
  Reckoning& operator=(Reckoning&&) noexcept;
  ~Reckoning();

  // One piece, by its place in Show::all<Piece>().
  model::PieceBelief judge(std::size_t piece, const LeftOut& without = {}) const;

  // The same piece with something seen or told otherwise; what all pieces share stays as it
  // is. Words that the show has never met are allowed; characters must be the show's.
  model::PieceBelief judge_if(std::size_t piece, const WhatIf& change) const;

  // A piece that is not in the show, of a lot by itself. Its belief carries no id.
  model::PieceBelief judge_new(const WhatIf& piece) const;

  // Every piece; the same on any number of threads.
  Result<model::Beliefs> judge_all(const Watch& watch) const;

  // Each piece of evidence with its weight, most pull first; the comparanda; what does not fit.
  struct Why {
    model::PieceBelief belief;
    std::vector<model::EvidenceLine> lines;
    std::vector<model::Comparandum> comparanda;  // `count` of them
    std::vector<model::Misfit> misfits;
    model::PieceBelief without_stories;  // oral testimony left out
  };
  Why explain(std::size_t piece, std::size_t comparanda) const;

  // How likely each statement on the piece is empty talk and each part later, without a
  // threshold; most doubtful first.
  std::vector<model::Misfit> doubts(std::size_t piece) const;

  const std::vector<std::string>& notes() const;
  // For the next fit. Pieces and everything else are marked as they were when it was learned.
  const Lessons& lessons() const;
  // Whether lessons were taken over, and the share of pieces changed since they were learned.
  std::optional<double> changed_since_learned() const;
  YearSpan axis() const;
  // The show as weighed: what is said of each piece, and its style as a table.
  const Gathered& gathered() const;
  // Null: nothing can be dated by its style.
  const Style* style() const;

 private:
  friend class JointPart;
  struct Inside;
  explicit Reckoning(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

}  // namespace backmark::evidence
