#include "evidence/reckon.h"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <map>

#include "base/text.h"
#include "evidence/parallel.h"
#include "evidence/reckon_inside.h"

namespace backmark::evidence {

namespace {

constexpr double stray = 0.05;        // share of a maker's pieces that tell nothing of the span
constexpr double least_share = 1e-4;  // of a maker whom only a statement names
constexpr double least_p = 1e-12;     // what a year keeps, whatever is said
// The number of characters for which a distance weight of 1 is a fair beginning.
constexpr double usual_characters = 8;

double spread_for(model::MakerKind kind, double person, double firm) {
  return kind == model::MakerKind::person ? person : firm;
}

SpanPrior span_prior(const model::Maker& maker) {
  SpanPrior prior;
  if (maker.from) {
    prior.start = maker.from->value;
    prior.start_sd = std::max(0.5, maker.from_sd);
  }
  if (maker.to) {
    prior.end = maker.to->value;
    prior.end_sd = std::max(0.5, maker.to_sd);
  }
  prior.length_mean = spread_for(maker.kind, 25, 40);
  prior.length_sd = spread_for(maker.kind, 12, 30);
  return prior;
}

std::vector<double> even_over(YearSpan stated, YearSpan axis) {
  std::vector<double> p(static_cast<std::size_t>(axis.length()), 0);
  const int from = std::clamp(stated.first - axis.first, 0, axis.length() - 1);
  const int to = std::clamp(stated.last - axis.first, 0, axis.length() - 1);
  for (int cell = from; cell <= to; ++cell) {
    p[static_cast<std::size_t>(cell)] = 1.0 / (to - from + 1);
  }
  return p;
}

}  // namespace

void Reckoning::Inside::learn_lag() {
  std::vector<LagExample> examples;
  for (std::size_t i = 0; i < gathered.pieces.size(); ++i) {
    const auto& stated = gathered.style.pieces[i].stated;
    if (!stated) {
      continue;
    }
    for (const SaidOfYear& said : gathered.pieces[i].years) {
      if (said.statement.saying == Saying::acquired) {
        const int made = stated->first.value + stated->length() / 2;
        examples.push_back({made, said.statement.last, settings.today.value});
      }
    }
  }
  lag = learned_lag(examples);
}

// Spans from what is documented and from dated pieces with a firm name.
void Reckoning::Inside::learn_spans() {
  constexpr std::size_t most_pieces = 40;
  const auto& makers = show->all<model::Maker>();
  std::vector<std::vector<std::vector<double>>> years(makers.size());
  for (const StylePiece& piece : gathered.style.pieces) {
    if (piece.maker && piece.stated) {
      auto& own = years[static_cast<std::size_t>(*piece.maker)];
      if (own.size() < most_pieces) {
        own.push_back(even_over(*piece.stated, axis));
      }
    }
  }
  at_work.resize(makers.size());
  for (std::size_t m = 0; m < makers.size(); ++m) {
    const bool known = makers[m].from || makers[m].to || !years[m].empty();
    if (known && makers[m].kind != model::MakerKind::unrecorded) {
      at_work[m] =
          span_factor(span_belief(span_prior(makers[m]), axis, years[m], stray), stray);
    }
  }
}

// The learned share of listed hands is that of the signed pieces. An unsigned piece is by a
// listed hand less often: in a show where one piece in five names anybody, most hands are
// nobody's we know. So the odds are scaled by those of being named at all, unless the user sets
// the share.
void Reckoning::Inside::learn_named_odds() {
  if (settings.unlisted_share >= 0 || gathered.pieces.empty()) {
    return;
  }
  double named = 1;  // one of each kind to begin with
  for (const GatheredPiece& piece : gathered.pieces) {
    named += piece.makers.empty() ? 0 : 1;
  }
  named_odds = named / (static_cast<double>(gathered.pieces.size()) + 2 - named);
}

std::vector<double> Reckoning::Inside::maker_prior(std::size_t piece,
                                                   const LeftOut& without,
                                                   const std::vector<double>& year) const {
  std::vector<double> prior(show->all<model::Maker>().size() + 1, 0);
  prior.back() = 1;
  if (hands) {
    const auto values = values_of(piece, without);
    const HandJudgement by_style = hands->judge(
        {.values = &values, .lot = gathered.style.pieces[piece].lot, .years = &year});
    const double listed =
        by_style.listed * named_odds / (by_style.listed * named_odds + 1 - by_style.listed);
    prior.back() = 1 - listed;
    for (const HandChance& chance : by_style.if_listed) {
      prior[static_cast<std::size_t>(chance.maker)] = listed * chance.p;
    }
  }
  return prior;
}

std::vector<StyleValue> Reckoning::Inside::values_of(std::size_t piece,
                                                     const LeftOut& without) const {
  std::vector<StyleValue> values = gathered.style.pieces[piece].values;
  for (std::size_t c = 0; c < values.size(); ++c) {
    if (gathered.characters[c] && without.characters.contains(gathered.characters[c].value)) {
      values[c] = {};
    }
  }
  return values;
}

void Reckoning::Inside::weigh_style(std::size_t piece,
                                    const LeftOut& without,
                                    bool detailed,
                                    Judged& out) const {
  out.style_p.assign(static_cast<std::size_t>(axis.length()), 1.0 / axis.length());
  if (!style) {
    return;
  }
  const StylePiece& row = gathered.style.pieces[piece];
  const std::vector<StyleValue> values = values_of(piece, without);
  out.style = style->judge(
      {.values = &values, .lot = row.lot, .comparanda = detailed ? 8U : 0U, .lines = true});
  out.style_p = out.style.p;
}

// Each replaceable part may be later than the piece: its lines are taken out and put back as
// "perhaps replaced".
void Reckoning::Inside::weigh_parts(std::size_t piece, Judged& out) const {
  std::map<model::Word, std::vector<double>> by_part;
  for (std::size_t c = 0; c < gathered.parts.size() && c < out.style.lines.size(); ++c) {
    const model::Character* character = show->find(gathered.characters[c]);
    const StyleLine& line = out.style.lines[c];
    if (character == nullptr || !character->replaceable || line.nats.empty()) {
      continue;
    }
    auto& sum = by_part[gathered.parts[c]];
    sum.resize(line.nats.size(), 0);
    for (std::size_t t = 0; t < line.nats.size(); ++t) {
      sum[t] += line.nats[t];
    }
  }
  if (by_part.empty()) {
    return;
  }
  std::vector<double> base = out.style_p;
  std::vector<ComponentEvidence> components;
  for (const auto& [kind, nats] : by_part) {
    const std::string name(show->text(kind));
    double rho = name == "cord"                    ? usual_replaced::cord
                 : name == "tip" || name == "tips" ? usual_replaced::tips
                                                   : usual_replaced::fitting;
    for (const model::Part& part : show->parts_of(show->all<model::Piece>()[piece].id)) {
      if (part.kind == kind && part.originality != model::Originality::unknown) {
        rho = part.originality == model::Originality::replaced ? 0.98 : 0.01;
      }
    }
    for (std::size_t t = 0; t < base.size(); ++t) {
      base[t] *= std::exp(-nats[t]);
    }
    components.push_back({nats, rho});
    out.parts.push_back(name);
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

void Reckoning::Inside::weigh_said(std::size_t piece,
                                   const LeftOut& without,
                                   Judged& out) const {
  std::vector<Statement> statements;
  for (const SaidOfYear& said : gathered.pieces[piece].years) {
    if (!without.records.contains(said.record)) {
      out.said.push_back(said);
      statements.push_back(said.statement);
    }
  }
  out.factors = statement_factors(statements, axis, lag, settings.today.value);
  for (const StatementFactor& factor : out.factors) {
    out.factor_said.push_back(factor.members.front());
  }
  WeighedYear weighed = weigh_statements(out.style_p, out.factors);
  out.p = std::move(weighed.p);
  out.wrong_p = std::move(weighed.wrong_p);
}

void Reckoning::Inside::weigh_makers(std::size_t piece,
                                     const LeftOut& without,
                                     Judged& out) const {
  std::vector<double> prior = maker_prior(piece, without, out.p);
  for (const SaidOfMaker& said : gathered.pieces[piece].makers) {
    if (without.records.contains(said.record)) {
      continue;
    }
    // r on the one named; the rest keep their shares of 1 - r.
    const double before = std::max(least_share, prior[said.maker]);
    for (std::size_t m = 0; m < prior.size(); ++m) {
      prior[m] = m == said.maker
                     ? said.reliability
                     : prior[m] / std::max(least_p, 1 - before) * (1 - said.reliability);
    }
  }
  const std::size_t years = out.p.size();
  out.maker_p.assign(prior.size(), 0);
  std::vector<double> year(years, 0);
  for (std::size_t m = 0; m < prior.size(); ++m) {
    if (prior[m] <= 0) {
      continue;
    }
    const bool any_year = m + 1 == prior.size() || at_work[m].empty();
    for (std::size_t t = 0; t < years; ++t) {
      const double joint = prior[m] * (any_year ? 1 : at_work[m][t]) * out.p[t];
      out.maker_p[m] += joint;
      year[t] += joint;
    }
  }
  double sum = 0;
  for (const double p : out.maker_p) {
    sum += p;
  }
  for (double& p : out.maker_p) {
    p /= sum;
  }
  for (std::size_t t = 0; t < years; ++t) {
    out.p[t] = year[t] / sum;
  }
}

Judged Reckoning::Inside::judge(std::size_t piece,
                                const LeftOut& without,
                                bool detailed) const {
  Judged out;
  out.axis = axis;
  weigh_style(piece, without, detailed, out);
  weigh_parts(piece, out);
  weigh_said(piece, without, out);
  weigh_makers(piece, without, out);
  return out;
}

model::PieceBelief Reckoning::Inside::to_belief(std::size_t piece, const Judged& judged) const {
  const auto& makers = show->all<model::Maker>();
  const GatheredPiece& gathered_piece = gathered.pieces[piece];
  model::PieceBelief belief;
  belief.piece = show->all<model::Piece>()[piece].id;
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
  for (const SaidOfMaker& said : gathered_piece.makers) {
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
  if (gathered_piece.place) {
    belief.place = {gathered_piece.place, 0.9};
  } else {
    std::map<model::Word, double> places;
    for (std::size_t m = 0; m < makers.size(); ++m) {
      if (makers[m].place) {
        places[makers[m].place] += judged.maker_p[m];
      }
    }
    for (const auto& [place, p] : places) {
      if (p > belief.place.p) {
        belief.place = {place, p};
      }
    }
  }
  return belief;
}

Reckoning::Reckoning(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Reckoning::Reckoning(Reckoning&&) noexcept = default;
Reckoning& Reckoning::operator=(Reckoning&&) noexcept = default;
Reckoning::~Reckoning() = default;

const std::vector<std::string>& Reckoning::notes() const {
  return inside_->notes;
}
YearSpan Reckoning::axis() const {
  return inside_->axis;
}

Result<Reckoning> Reckoning::fit(const model::Show& show,
                                 const ReckonSettings& settings,
                                 const Watch& watch) {
  auto inside = std::make_unique<Inside>();
  inside->show = &show;
  inside->settings = settings;
  inside->gathered = gather(show, settings.today);
  inside->axis = inside->gathered.years;
  if (inside->gathered.any_dated || !inside->gathered.style.windows.empty()) {
    StyleSettings style;
    style.axis = inside->axis;
    // Distances add up over characters: with many of them each counts less to begin with.
    const auto characters = static_cast<double>(inside->gathered.style.characters.size());
    style.prior.d = std::min(1.0, usual_characters / characters);
    auto fitted = fit_style(inside->gathered.style, style, watch);
    if (!fitted) {
      return fitted.problem();
    }
    inside->notes = fitted->notes();
    inside->style = std::move(*fitted);
  } else {
    inside->notes.push_back(
        "No piece is dated and no window of use is stated: nothing can be dated by its style.");
  }
  HandSettings hands;
  if (settings.unlisted_share >= 0) {
    hands.listed_share = 1 - settings.unlisted_share;
  }
  if (auto fitted = fit_hands(inside->gathered.style, inside->axis, hands, watch)) {
    inside->hands = std::move(*fitted);
  } else if (watch.stop.stop_requested()) {
    return fitted.problem();
  }
  inside->learn_lag();
  inside->learn_spans();
  inside->learn_named_odds();
  return Reckoning(std::move(inside));
}

model::PieceBelief Reckoning::judge(std::size_t piece, const LeftOut& without) const {
  return inside_->to_belief(piece, inside_->judge(piece, without, false));
}

Result<model::Beliefs> Reckoning::judge_all(const Watch& watch) const {
  const auto& pieces = inside_->show->all<model::Piece>();
  model::Beliefs beliefs;
  beliefs.pieces.resize(pieces.size());
  beliefs.seed = inside_->settings.seed;
  beliefs.notes = inside_->notes;
  std::vector<std::vector<model::Misfit>> misfits(pieces.size());
  in_shares(pieces.size(), watch.threads, [&](std::size_t i) {
    if (watch.stop.stop_requested()) {
      return;
    }
    const Judged judged = inside_->judge(i, {}, false);
    beliefs.pieces[i] = inside_->to_belief(i, judged);
    misfits[i] = misfits_of(*inside_->show, i, judged);
  });
  if (watch.stop.stop_requested()) {
    return stopped();
  }
  for (auto& found : misfits) {
    beliefs.misfits.insert(beliefs.misfits.end(), found.begin(), found.end());
  }
  std::stable_sort(beliefs.misfits.begin(), beliefs.misfits.end(),
                   [](const auto& a, const auto& b) { return a.p > b.p; });
  return beliefs;
}

}  // namespace backmark::evidence
