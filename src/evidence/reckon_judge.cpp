// One piece weighed: style, parts, what is said, makers.
#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>

#include "evidence/reckon_inside.h"

namespace backmark::evidence {

namespace {

constexpr double least_share = 1e-4;  // of a maker whom only a statement names
constexpr double least_p = 1e-12;     // what a year keeps, whatever is said

// A line out of a curve that it was multiplied into.
void take_out(const std::vector<double>& nats, std::vector<double>& p) {
  double sum = 0;
  for (std::size_t t = 0; t < nats.size(); ++t) {
    p[t] *= std::exp(-nats[t]);
    sum += p[t];
  }
  for (std::size_t t = 0; t < nats.size(); ++t) {
    p[t] /= sum;
  }
}

}  // namespace

std::vector<double> Reckoning::Inside::maker_prior(const Asked& asked,
                                                   const std::vector<double>& year) const {
  std::vector<double> prior(show->all<model::Maker>().size() + 1, 0);
  prior.back() = 1;
  if (hands) {
    const HandJudgement by_style =
        hands->judge({.values = &asked.values, .lot = asked.lot, .years = &year});
    const double listed =
        by_style.listed * named_odds / (by_style.listed * named_odds + 1 - by_style.listed);
    prior.back() = 1 - listed;
    for (const HandChance& chance : by_style.if_listed) {
      prior[static_cast<std::size_t>(chance.maker)] = listed * chance.p;
    }
  }
  return prior;
}

void Reckoning::Inside::weigh_style(const Asked& asked, bool detailed, Judged& out) const {
  out.style_p.assign(static_cast<std::size_t>(axis.length()), 1.0 / axis.length());
  if (!style) {
    return;
  }
  out.style = style->judge({.values = &asked.values,
                            .lot = asked.lot,
                            .latest = lag_in_style() ? acquired_by(asked.said) : std::nullopt,
                            .comparanda = detailed ? 8U : 0U,
                            .lines = true});
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
  if (const auto found = sampled.replaced.find(part.value); found != sampled.replaced.end()) {
    return found->second;
  }
  const auto name = show->text(part);
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
  std::vector<double> base = out.style_p;
  std::vector<ComponentEvidence> components;
  for (const auto& [kind, nats] : by_part) {
    for (std::size_t t = 0; t < base.size(); ++t) {
      base[t] *= std::exp(-nats[t]);
    }
    components.push_back({nats, replaced_share(asked, kind)});
    out.parts.emplace_back(show->text(kind));
  }
  double sum = 0;
  for (const double p : base) {
    sum += p;
  }
  for (double& p : base) {
    p /= sum;
  }
  WeighedComponents weighed = weigh_components(base, components, {});
  out.style_p = std::move(weighed.p);
  out.replaced_p = std::move(weighed.replaced_p);
}

// A variant in a known order speaks of the year like a statement. A character that does so is
// taken out of the style, where its curve has already spoken.
void Reckoning::Inside::add_sequences(const Asked& asked, Judged& out) const {
  for (const SeenInSequence& one : asked.said.sequences) {
    if (one.lineage >= sampled.variants.size() || sampled.variants[one.lineage].empty()) {
      continue;
    }
    std::vector<double> shape =
        sampled.variants[one.lineage][static_cast<std::size_t>(one.variant)];
    scale_to_mean_one(shape);
    out.factor_said.push_back(out.said.size());
    out.factors.push_back(
        {one.certainty * (1 - usual_stray), std::move(shape), {out.said.size()}});
    out.said.push_back({.record = one.record, .what = one.what, .source = "the piece"});
    const auto column = one.seen ? gathered.columns.column(one.seen) : std::nullopt;
    if (column && *column < out.style.lines.size()) {
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
  WeighedYear weighed = weigh_statements(out.style_p, out.factors);
  out.p = std::move(weighed.p);
  out.wrong_p = std::move(weighed.wrong_p);
}

void Reckoning::Inside::weigh_makers(const Asked& asked, Judged& out) const {
  std::vector<double> prior = maker_prior(asked, out.p);
  for (const SaidOfMaker& said : asked.said.makers) {
    // r on the one named; the rest keep their shares of 1 - r.
    const double before = std::max(least_share, prior[said.maker]);
    for (std::size_t m = 0; m < prior.size(); ++m) {
      prior[m] = m == said.maker
                     ? said.reliability
                     : prior[m] / std::max(least_p, 1 - before) * (1 - said.reliability);
    }
  }
  join_years(prior, out);
}

// p(t, m) = prior(m) at_work_m(t) p(t), summed to makers and to years. A span is a floor and
// what rises above it in some years, so the work grows with the years in which a maker may have
// worked.
void Reckoning::Inside::join_years(const std::vector<double>& prior, Judged& out) const {
  out.maker_p.assign(prior.size(), 0);
  std::vector<double> share(out.p.size(), 0);  // of the years, above the floor
  double floor = 0;
  for (std::size_t m = 0; m < prior.size(); ++m) {
    if (prior[m] <= 0) {
      continue;
    }
    if (m + 1 == prior.size() || at_work[m].rise.empty()) {
      floor += prior[m];
      out.maker_p[m] = prior[m];
      continue;
    }
    const WorkingYears& work = at_work[m];
    double inside = 0;
    for (std::size_t t = 0; t < work.rise.size(); ++t) {
      share[work.first + t] += prior[m] * work.rise[t];
      inside += work.rise[t] * out.p[work.first + t];
    }
    floor += prior[m] * work.floor;
    out.maker_p[m] = prior[m] * (work.floor + inside);
  }
  double sum = 0;
  for (const double p : out.maker_p) {
    sum += p;
  }
  for (double& p : out.maker_p) {
    p /= sum;
  }
  for (std::size_t t = 0; t < out.p.size(); ++t) {
    out.p[t] *= (floor + share[t]) / sum;
  }
}

Judged Reckoning::Inside::judge(const Asked& asked, bool detailed) const {
  Judged out;
  out.axis = axis;
  weigh_style(asked, detailed, out);
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
