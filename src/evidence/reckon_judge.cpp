// One piece weighed: style, parts, what is said, makers.
#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>
#include <numeric>

#include "evidence/reckon_inside.h"

namespace backmark::evidence {

namespace {

// A line out of a curve that it was multiplied into.
void take_out(const std::vector<double>& nats, std::vector<double>& p) {
  std::vector<double> inverse;
  for (const double x : nats) {
    inverse.push_back(std::exp(-x));
  }
  multiply_to_one(inverse, p);
}

}  // namespace

void multiply_to_one(const std::vector<double>& by, std::vector<double>& p) {
  std::vector<double> product = p;
  double sum = 0;
  for (std::size_t t = 0; t < by.size(); ++t) {
    product[t] *= by[t];
    sum += product[t];
  }
  if (!(sum > 0)) {
    return;
  }
  for (std::size_t t = 0; t < by.size(); ++t) {
    p[t] = product[t] / sum;
  }
}

std::map<model::Word, std::vector<std::size_t>> Reckoning::Inside::replaceable() const {
  std::map<model::Word, std::vector<std::size_t>> by_part;
  for (std::size_t c = 0; c < gathered.columns.parts().size(); ++c) {
    const model::Character* character = show->find(gathered.columns.ids()[c]);
    if (character != nullptr && character->replaceable) {
      by_part[gathered.columns.parts()[c]].push_back(c);
    }
  }
  return by_part;
}

void Reckoning::Inside::weigh_style(const Asked& asked,
                                    bool detailed,
                                    bool apart,
                                    Judged& out) const {
  out.style_p.assign(static_cast<std::size_t>(axis.length()), 1.0 / axis.length());
  if (!style) {
    return;
  }
  StyleQuestion question{.values = &asked.values,
                         .lot = asked.lot,
                         .latest = lag_in_style() ? acquired_by(asked.said) : std::nullopt,
                         .comparanda = detailed ? 8U : 0U,
                         .lines = true};
  if (apart) {
    for (const auto& [part, columns] : replaceable()) {
      question.apart.push_back(columns);
    }
  }
  out.style = style->judge(question);
  out.style_p = out.style.p;
}

std::map<model::Word, std::vector<double>> Reckoning::Inside::part_lines(
    const Judged& judged) const {
  std::map<model::Word, std::vector<double>> by_part;
  const auto& kinds = gathered.columns.parts();
  for (std::size_t c = 0; c < kinds.size() && c < judged.style.lines.size(); ++c) {
    const model::Character* character = show->find(gathered.columns.ids()[c]);
    const StyleLine& line = judged.style.lines[c];
    if (character == nullptr || !character->replaceable || line.nats.empty()) {
      continue;
    }
    auto& sum = by_part[kinds[c]];
    sum.resize(line.nats.size(), 0);
    for (std::size_t t = 0; t < line.nats.size(); ++t) {
      sum[t] += line.nats[t];
    }
  }
  return by_part;
}

double Reckoning::Inside::replaced_share(const Asked& asked, model::Word part) const {
  for (const model::Part& one : show->parts_of(asked.id)) {
    if (one.kind == part && one.originality != model::Originality::unknown) {
      return one.originality == model::Originality::replaced ? 0.98 : 0.01;
    }
  }
  const auto name = show->text(part);
  if (const auto found = sampled.replaced.find(std::string(name));
      found != sampled.replaced.end()) {
    return found->second;
  }
  return name == "cord"                    ? usual_replaced::cord
         : name == "tip" || name == "tips" ? usual_replaced::tips
                                           : usual_replaced::fitting;
}

// Each replaceable part may be later than the piece: its lines are taken out and put back as
// "perhaps replaced".
void Reckoning::Inside::weigh_parts(const Asked& asked, Judged& out) const {
  const auto by_part = part_lines(out);
  if (by_part.empty()) {
    return;
  }
  std::vector<double> bare_p = out.style_p;
  for (const auto& [kind, nats] : by_part) {
    take_out(nats, bare_p);
    out.components.push_back({nats, replaced_share(asked, kind)});
    out.parts.emplace_back(show->text(kind));
  }
  out.style_p = weigh_components(bare_p, out.components, {}).p;
}

// A variant in a known order speaks of the year like a statement. A character that does so is
// taken out of the style, where its curve has already spoken.
void Reckoning::Inside::add_sequences(const Asked& asked, Judged& out) const {
  for (const SeenInSequence& one : asked.said.sequences) {
    const model::Lineage& lineage = show->all<model::Lineage>()[one.lineage];
    const auto found = sampled.variants.find(lineage.id.value);
    if (found == sampled.variants.end()) {
      continue;
    }
    std::vector<double> shape = found->second[static_cast<std::size_t>(one.variant)];
    scale_to_mean_one(shape);
    out.factor_said.push_back(out.said.size());
    out.factors.push_back(
        {one.certainty * (1 - usual_stray), std::move(shape), {out.said.size()}});
    out.said.push_back({.record = one.record, .what = one.what, .source = "the piece"});
    const auto column = one.seen ? gathered.columns.column(one.seen) : std::nullopt;
    if (column && *column < out.style.lines.size()) {
      out.in_order.push_back(*column);
      take_out(out.style.lines[*column].nats, out.style_p);
    }
  }
}

std::vector<Statement> Reckoning::Inside::statements_of(const Asked& asked) const {
  std::vector<Statement> statements;
  for (const SaidOfYear& said : asked.said.years) {
    statements.push_back(said.statement);
    if (lag_in_style() && said.statement.saying == Saying::acquired) {
      // The style's answer has it already: its own factor is flat.
      statements.back().saying = Saying::interval;
      statements.back().first = axis.first.value;
      statements.back().last = axis.last.value;
      statements.back().spread = 0;
    }
    const auto learned = sampled.reliability.find(said.teller);
    if (learned != sampled.reliability.end()) {
      statements.back().reliability = learned->second;
    }
  }
  return statements;
}

void Reckoning::Inside::weigh_said(const Asked& asked, Judged& out) const {
  out.said = asked.said.years;
  out.factors = statement_factors(statements_of(asked), shapes);
  for (const StatementFactor& factor : out.factors) {
    out.factor_said.push_back(factor.members.front());
  }
  add_sequences(asked, out);
  out.p = weigh_statements(out.style_p, out.factors).p;
}

double Reckoning::Inside::habit_lift(const Asked& asked,
                                     const Judged& judged,
                                     const std::vector<std::size_t>& columns) const {
  constexpr double enough = 0.001;  // of a maker whose habits are asked about
  double lift = judged.maker_p.back();
  for (std::size_t m = 0; m + 1 < judged.maker_p.size(); ++m) {
    const double p = judged.maker_p[m];
    lift +=
        p < enough ? p : p * habits.lift(static_cast<int>(m), asked.values, columns, asked.lot);
  }
  return lift;
}

// A part is held against the style of everything but the part (comparanda, too, are sought
// without it), and against the habits of the makers that the piece may be by.
double Reckoning::Inside::replaced_chance(const Asked& asked,
                                          const Judged& judged,
                                          std::size_t component,
                                          const std::vector<double>& by_makers) const {
  const auto kinds = replaceable();
  const auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const auto& one) {
    return show->text(one.first) == judged.parts[component];
  });
  const StyleApart& apart =
      judged.style.apart[static_cast<std::size_t>(std::distance(kinds.begin(), kind))];
  std::vector<double> rest = apart.without_p;
  for (const std::size_t column : judged.in_order) {
    take_out(judged.style.lines[column].nats, rest);
  }
  multiply_to_one(by_makers, rest);
  for (const StatementFactor& factor : judged.factors) {
    multiply_to_one(factor_on_years(factor), rest);
  }
  const double share = judged.components[component].replaced_share;
  const double odds = share / (1 - share) / habit_lift(asked, judged, kind->second);
  const ComponentEvidence evidence{apart.nats, odds / (1 + odds)};
  return weigh_components(rest, {evidence}, {}).replaced_p.front();
}

void Reckoning::Inside::weigh_doubts(const Asked& asked,
                                     const std::vector<double>& before_makers,
                                     Judged& out) const {
  std::vector<double> by_makers(out.p.size(), 1);
  for (std::size_t t = 0; t < out.p.size(); ++t) {
    by_makers[t] = before_makers[t] > 0 ? out.p[t] / before_makers[t] : 1;
  }
  std::vector<double> rest = out.style_p;
  multiply_to_one(by_makers, rest);
  out.wrong_p = weigh_statements(rest, out.factors).wrong_p;
  for (std::size_t component = 0; component < out.components.size(); ++component) {
    out.replaced_p.push_back(replaced_chance(asked, out, component, by_makers));
  }
}

Judged Reckoning::Inside::judge(const Asked& asked, bool detailed) const {
  Judged out;
  out.axis = axis;
  weigh_style(asked, detailed, true, out);
  weigh_parts(asked, out);
  weigh_said(asked, out);
  const std::vector<double> before_makers = out.p;
  weigh_makers(asked, out);
  weigh_doubts(asked, before_makers, out);
  return out;
}

Judged Reckoning::Inside::judge_bare(const Asked& asked) const {
  Judged out;
  out.axis = axis;
  weigh_style(asked, false, false, out);
  weigh_parts(asked, out);
  weigh_said(asked, out);
  weigh_makers(asked, out);
  return out;
}

model::PlaceBelief Reckoning::Inside::place_of(const Asked& asked, const Judged& judged) const {
  if (asked.said.place) {
    return {asked.said.place, 0.9};
  }
  const auto& makers = show->all<model::Maker>();
  std::map<model::Word, double> places;
  for (std::size_t m = 0; m < makers.size(); ++m) {
    if (makers[m].place) {
      places[makers[m].place] += judged.maker_p[m];
    }
  }
  model::PlaceBelief best;
  for (const auto& [place, p] : places) {
    if (p > best.p) {
      best = {place, p};
    }
  }
  return best;
}

model::PieceBelief Reckoning::Inside::to_belief(const Asked& asked,
                                                const Judged& judged) const {
  const auto& makers = show->all<model::Maker>();
  model::PieceBelief belief;
  belief.piece = asked.id;
  belief.dated = style.has_value() || !judged.said.empty();
  if (belief.dated) {
    belief.year = {axis, judged.p};
  }
  belief.maker.unrecorded = judged.maker_p.back();
  for (std::size_t m = 0; m < makers.size(); ++m) {
    if (makers[m].kind == model::MakerKind::unrecorded) {
      belief.maker.unrecorded += judged.maker_p[m];
    } else if (judged.maker_p[m] > 0.0005) {
      belief.maker.makers.push_back({makers[m].id, judged.maker_p[m]});
    } else {
      belief.maker.unrecorded += judged.maker_p[m];
    }
  }
  std::stable_sort(belief.maker.makers.begin(), belief.maker.makers.end(),
                   [](const auto& a, const auto& b) { return a.p > b.p; });
  for (const SaidOfMaker& said : asked.said.makers) {
    belief.maker.documented =
        belief.maker.documented || (said.documented && !belief.maker.makers.empty() &&
                                    belief.maker.makers.front().maker == makers[said.maker].id);
  }
  const SaidOfYear* strictest = nullptr;
  for (const SaidOfYear& said : judged.said) {
    if (said.limit &&
        (strictest == nullptr || said.statement.last < strictest->statement.last)) {
      strictest = &said;
    }
  }
  if (strictest != nullptr) {
    belief.limit = strictest->what;
    belief.limit[0] = static_cast<char>(std::tolower(belief.limit[0]));
  }
  for (const double p : judged.wrong_p) {
    belief.conflict = std::max(belief.conflict, p);
  }
  for (const double p : judged.replaced_p) {
    belief.conflict = std::max(belief.conflict, p);
  }
  belief.place = place_of(asked, judged);
  return belief;
}

}  // namespace backmark::evidence
