// What a Reckoning holds. For the bodies reckon*.cpp only.
#pragma once

#include <map>
#include <optional>

#include "evidence/component.h"
#include "evidence/gather.h"
#include "evidence/habits.h"
#include "evidence/hands.h"
#include "evidence/lessons.h"
#include "evidence/parallel.h"
#include "evidence/reckon.h"
#include "evidence/said.h"
#include "evidence/spans.h"
#include "evidence/style.h"

namespace backmark::evidence {

// What was found on the way to one piece's answer.
struct Judged {
  std::vector<double> p;        // the year, one a year of the axis
  std::vector<double> style_p;  // before statements and makers
  std::vector<StatementFactor> factors;
  std::vector<std::size_t> factor_said;  // first member of each factor, as a place in `said`
  std::vector<SaidOfYear> said;          // those not left out
  std::vector<double> wrong_p;           // one a factor: chance that it is empty talk
  std::vector<std::string> parts;        // component names
  std::vector<ComponentEvidence> components;  // one a name in `parts`
  std::vector<double> replaced_p;             // one a component
  std::vector<std::size_t> in_order;  // columns that spoke as variants in order, not as style
  std::vector<double> maker_p;        // one a maker of the show, then the hand not listed
  StyleJudgement style;
  YearSpan axis;
};

// The parts and statements of a judged piece that do not fit the rest with a chance of at least
// `least`, most doubtful first.
std::vector<model::Misfit> misfits_of(const model::Show& show,
                                      model::Id<model::Piece> piece,
                                      const Judged& judged,
                                      double least = 0.5);

// Multiplied in and brought to sum 1; as it was if nothing would be left.
void multiply_to_one(const std::vector<double>& by, std::vector<double>& p);

// A piece as it is asked about: as recorded, without something, or as it might be.
struct Asked {
  model::Id<model::Piece> id;  // none: not in the show
  GatheredPiece said;
  std::vector<StyleValue> values;
  std::optional<int> lot;
};

// When a maker worked, as a factor on the year of a piece by them (mean 1): a floor everywhere
// and what rises above it from `first` (a place on the axis) on. No rise: nothing is known.
struct WorkingYears {
  double floor = 1;
  std::size_t first = 0;
  std::vector<double> rise;
};

// Both measured on grown shows of 1,000 and 3,000 pieces (docs/manual/method-joint.md).
constexpr double usual_makers_power = 0.75;
constexpr double usual_stray = 0.05;  // share of marks out of their sequence

struct Reckoning::Inside {
  const model::Show* show = nullptr;
  ReckonSettings settings;
  Gathered gathered;
  std::optional<MakerLegends> legends;
  std::optional<MarkYears> mark_years;
  std::optional<Sequences> sequences;
  std::optional<Style> style;
  std::optional<Hands> hands;  // none: no maker has signed pieces enough
  Habits habits;               // in the characters of replaceable parts
  LagBelief lag;
  double named_odds = 1;  // factor on the odds that a hand is on the list
  // Where no hand can be told by style: chances of each maker, then of a hand not on the list.
  std::vector<double> usual_hands;
  // The style that names a maker has already spoken of the years, so the years of a maker whom
  // nobody named count with a power from 0 to 1, learned from the dated pieces.
  double style_makers_power = usual_makers_power;
  StatementShapes shapes;
  std::vector<WorkingYears> at_work;  // one a maker
  Sampled sampled;
  std::vector<std::string> notes;
  YearSpan axis;
  Lessons lessons;
  std::optional<double> changed_since;  // since `lessons` were learned; none: just now

  void learn_lag();
  void learn_spans(const Watch& watch);
  SpanPrior prior_of(std::size_t maker) const;
  void learn_named_odds();
  void learn_usual_hands();
  void borrow_years_of_places();
  void weigh_places(model::Word place, std::vector<double>& prior) const;
  void learn_makers_power(const Watch& watch);
  // Reliabilities, replaced parts, spans and changes of marks together, by chains.
  Result<Done> sample(const Watch& watch);
  std::optional<YearSpan> usual_years(std::size_t maker) const;
  // The gathered table, and what named pieces and hearsay teach beside it.
  StyleTable taught_table() const;
  bool teach_by_name(StylePiece& piece) const;
  // These learn, or take what was learned before (reckon_fit.cpp).
  Result<Done> fit_style_of(const Watch& watch, const Lessons* known);
  Result<Done> fit_hands_of(const Watch& watch, const Lessons* known);
  Result<Done> fit_rest(const Watch& watch, const Lessons* known);
  void take_over(const Lessons& known);
  // What is said now, marked; nothing learned yet.
  Lessons unlearned() const;
  Asked asked(std::size_t piece, const LeftOut& without) const;
  Asked asked_if(const model::Piece* piece, const WhatIf& change) const;

  // Whether acquisitions are weighed by what the style engine learned of them.
  bool lag_in_style() const { return style && gathered.arrivals >= least_arrivals; }
  Judged judge(const Asked& asked, bool detailed) const;
  // Year and maker alone, for "without this": what does not fit the rest is not asked.
  Judged judge_bare(const Asked& asked) const;
  // `apart`: with each kind of replaceable part held against the rest, for weigh_doubts.
  void weigh_style(const Asked& asked, bool detailed, bool apart, Judged& out) const;
  void weigh_parts(const Asked& asked, Judged& out) const;
  // Columns of the replaceable characters, by kind of part.
  std::map<model::Word, std::vector<std::size_t>> replaceable() const;
  // Lines of replaceable parts, summed by kind of part.
  std::map<model::Word, std::vector<double>> part_lines(const Judged& judged) const;
  double replaced_share(const Asked& asked, model::Word part) const;
  void add_sequences(const Asked& asked, Judged& out) const;
  // What is said of the year, as it is weighed: with learned reliabilities, and acquisitions
  // flat where the style's answer has them already.
  std::vector<Statement> statements_of(const Asked& asked) const;
  void weigh_said(const Asked& asked, Judged& out) const;
  void weigh_makers(const Asked& asked, Judged& out) const;
  void join_years(const std::vector<double>& prior, double power, Judged& out) const;
  // Chances that a part is later and that a saying is empty talk, each against all the rest:
  // style, other parts, other sayings and makers.
  void weigh_doubts(const Asked& asked,
                    const std::vector<double>& before_makers,
                    Judged& out) const;
  // Chances of each maker of the show before what is said, then of a hand not on the list.
  std::vector<double> maker_prior(const Asked& asked, const std::vector<double>& year) const;
  double replaced_chance(const Asked& asked,
                         const Judged& judged,
                         std::size_t component,
                         const std::vector<double>& by_makers) const;
  // How much likelier the piece's makers make the values of `columns` than fashion does.
  double habit_lift(const Asked& asked,
                    const Judged& judged,
                    const std::vector<std::size_t>& columns) const;
  model::PieceBelief to_belief(const Asked& asked, const Judged& judged) const;
  model::PlaceBelief place_of(const Asked& asked, const Judged& judged) const;
};

}  // namespace backmark::evidence
