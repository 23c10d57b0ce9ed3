// Why this year and this maker: each piece of evidence weighed by leaving it out.
#include <algorithm>
#include <cmath>
#include <functional>

#include "base/text.h"
#include "evidence/reckon_inside.h"

namespace backmark::evidence {

namespace {

using model::EvidenceLine;
using model::PieceBelief;

constexpr double doubtful = 0.5;  // above this a statement or part is said not to fit

// Kullback-Leibler distance of p from q, in bits.
double bits_between(const std::vector<double>& p, const std::vector<double>& q) {
  double bits = 0;
  for (std::size_t t = 0; t < p.size(); ++t) {
    if (p[t] > 0) {
      bits += p[t] * std::log2(p[t] / std::max(q[t], 1e-15));
    }
  }
  return std::max(0.0, bits);
}

int width_80(const PieceBelief& belief) {
  return belief.year.at(0.9) - belief.year.at(0.1);
}

double log_odds(const PieceBelief& belief, model::Id<model::Maker> maker) {
  const double p = std::clamp(belief.maker.of(maker), 1e-6, 1 - 1e-6);
  return std::log(p / (1 - p));
}

// What the answer loses when something is left out.
void weigh(const PieceBelief& with, const PieceBelief& without, EvidenceLine& line) {
  if (!with.year.empty() && !without.year.empty()) {
    line.bits_year = bits_between(with.year.p, without.year.p);
    line.years_moved = with.year.at(0.5) - without.year.at(0.5);
    line.width_change = width_80(with) - width_80(without);
  }
  if (!with.maker.makers.empty()) {
    const auto leader = with.maker.makers.front().maker;
    line.maker_log_odds = log_odds(with, leader) - log_odds(without, leader);
  }
}

model::YearBelief normalised_curve(YearSpan axis, std::vector<double> weight) {
  double sum = 0;
  for (const double w : weight) {
    sum += w;
  }
  for (double& w : weight) {
    w /= sum;
  }
  return {axis, std::move(weight)};
}

model::YearBelief from_nats(YearSpan axis, std::vector<double> nats) {
  const double top = *std::max_element(nats.begin(), nats.end());
  for (double& value : nats) {
    value = std::exp(value - top);
  }
  return normalised_curve(axis, std::move(nats));
}

std::string value_words(const model::Show& show, const model::Observation& seen) {
  if (seen.seen == model::Seen::none) {
    return "looked for, none";
  }
  const model::Character* character = show.find(seen.character);
  if (character != nullptr && character->shape == model::Shape::number) {
    return fmt::format("{:g} {}", seen.number, character->unit);
  }
  return std::string(show.text(seen.value));
}

// "Fitting: figure-eight wire", from the observations of one character.
std::string observed_words(const model::Show& show,
                           model::Id<model::Piece> piece,
                           const model::Character& character) {
  std::vector<std::string> values;
  for (const model::Observation& seen : show.observations_of(piece)) {
    if (seen.character == character.id && seen.seen != model::Seen::cannot_tell) {
      values.push_back(value_words(show, seen));
    }
  }
  return fmt::format("{}: {}", character.label, join(values, ", "));
}

// What is alike and what differs most, by name of character.
void say_likeness(const std::vector<double>& apart,
                  const std::vector<StyleCharacter>& characters,
                  const std::vector<StyleValue>& mine,
                  const std::vector<StyleValue>& theirs,
                  model::Comparandum& out) {
  std::vector<std::size_t> both;
  for (std::size_t c = 0; c < apart.size(); ++c) {
    if (!mine[c].missing() && !theirs[c].missing()) {
      both.push_back(c);
    }
  }
  std::stable_sort(both.begin(), both.end(),
                   [&](std::size_t a, std::size_t b) { return apart[a] < apart[b]; });
  for (const std::size_t c : both) {
    const std::string name = lower_ascii(characters[c].name);
    if (apart[c] < 0.25 && out.why.size() < 4) {
      out.why.push_back(name);
    }
  }
  for (auto at = both.rbegin(); at != both.rend() && out.unlike.size() < 2; ++at) {
    if (apart[*at] > 0.5) {
      out.unlike.push_back(lower_ascii(characters[*at].name));
    }
  }
}

bool by_pull(const EvidenceLine& a, const EvidenceLine& b) {
  const auto pull = [](const EvidenceLine& line) {
    return line.bits_year + std::abs(line.maker_log_odds);
  };
  return a.disagrees != b.disagrees ? b.disagrees : pull(a) > pull(b);
}

}  // namespace

namespace {

// A part that the record calls replaced is no riddle any more.
bool known_as_replaced(const model::Show& show,
                       model::Id<model::Piece> piece,
                       std::string_view kind) {
  for (const model::Part& part : show.parts_of(piece)) {
    if (show.text(part.kind) == kind) {
      return part.originality == model::Originality::replaced;
    }
  }
  return false;
}

}  // namespace

std::vector<model::Misfit> misfits_of(const model::Show& show,
                                      model::Id<model::Piece> id,
                                      const Judged& judged,
                                      double least) {
  std::vector<model::Misfit> misfits;
  for (std::size_t g = 0; g < judged.parts.size(); ++g) {
    if (judged.replaced_p[g] >= least && !known_as_replaced(show, id, judged.parts[g])) {
      misfits.push_back({id, show.pool.find(judged.parts[g]), 0,
                         fmt::format("the {} is of another age", judged.parts[g]),
                         judged.replaced_p[g]});
    }
  }
  for (std::size_t f = 0; f < judged.factors.size(); ++f) {
    if (judged.wrong_p[f] >= least) {
      const SaidOfYear& said = judged.said[judged.factor_said[f]];
      misfits.push_back(
          {id, {}, said.record, said.what + " (" + said.source + ")", judged.wrong_p[f]});
    }
  }
  std::stable_sort(misfits.begin(), misfits.end(),
                   [](const auto& a, const auto& b) { return a.p > b.p; });
  return misfits;
}

namespace {

// The piece's answer without something.
using Without = std::function<PieceBelief(const LeftOut&)>;

// Lines for what is said of the year, one a reliability switch.
void add_said(const Without& judge_without,
              const Judged& judged,
              const PieceBelief& belief,
              std::vector<EvidenceLine>& lines) {
  for (std::size_t f = 0; f < judged.factors.size(); ++f) {
    const SaidOfYear& said = judged.said[judged.factor_said[f]];
    LeftOut without;
    for (const std::size_t member : judged.factors[f].members) {
      without.records.insert(judged.said[member].record);
    }
    EvidenceLine line{.what = said.what, .source = said.source, .record = said.record};
    const std::size_t others = judged.factors[f].members.size() - 1;
    if (others > 0) {
      line.source += fmt::format("; with {} more of the same origin, counted once", others);
    }
    weigh(belief, judge_without(without), line);
    line.reliability = 1 - judged.wrong_p[f];
    line.disagrees = judged.wrong_p[f] >= doubtful;
    line.alone = normalised_curve(judged.axis, factor_on_years(judged.factors[f]));
    lines.push_back(std::move(line));
  }
}

void add_makers(const Without& judge_without,
                const GatheredPiece& gathered,
                const PieceBelief& belief,
                std::vector<EvidenceLine>& lines) {
  for (const SaidOfMaker& said : gathered.makers) {
    EvidenceLine line{.what = said.what, .source = said.source, .record = said.record};
    weigh(belief, judge_without({.records = {said.record}}), line);
    line.reliability = said.reliability;
    lines.push_back(std::move(line));
  }
}

}  // namespace

Reckoning::Why Reckoning::explain(std::size_t piece, std::size_t count) const {
  const model::Show& show = *inside_->show;
  const Gathered& gathered = inside_->gathered;
  const Asked asked = inside_->asked(piece, {});
  const Judged judged = inside_->judge(asked, true);
  Why why;
  why.belief = inside_->to_belief(asked, judged);
  why.misfits = misfits_of(show, asked.id, judged);
  const Without without = [&](const LeftOut& left_out) {
    const Asked less = inside_->asked(piece, left_out);
    return inside_->to_belief(less, inside_->judge_bare(less));
  };
  add_said(without, judged, why.belief, why.lines);
  add_makers(without, gathered.pieces[piece], why.belief, why.lines);
  const StyleColumns& columns = gathered.columns;
  for (std::size_t c = 0; c < columns.ids().size(); ++c) {
    const model::Character* character = show.find(columns.ids()[c]);
    if (character == nullptr || gathered.style.pieces[piece].values[c].missing()) {
      continue;
    }
    EvidenceLine line{.what = observed_words(show, asked.id, *character),
                      .source = "the piece",
                      .character = character->id,
                      .record = gathered.pieces[piece].records[c]};
    weigh(why.belief, without({.characters = {character->id.value}}), line);
    if (c < judged.style.lines.size() && !judged.style.lines[c].nats.empty()) {
      line.alone = from_nats(judged.axis, judged.style.lines[c].nats);
    }
    for (std::size_t g = 0; g < judged.parts.size(); ++g) {
      line.disagrees = line.disagrees || (judged.replaced_p[g] >= doubtful &&
                                          show.text(columns.parts()[c]) == judged.parts[g]);
    }
    why.lines.push_back(std::move(line));
  }
  std::stable_sort(why.lines.begin(), why.lines.end(), by_pull);
  for (const Comparandum& near : judged.style.comparanda) {
    if (why.comparanda.size() == count) {
      break;
    }
    model::Comparandum out{.piece = show.all<model::Piece>()[near.piece].id,
                           .share = near.share};
    say_likeness(near.apart, gathered.style.characters, gathered.style.pieces[piece].values,
                 gathered.style.pieces[near.piece].values, out);
    why.comparanda.push_back(std::move(out));
  }
  LeftOut stories;
  for (const model::Claim& claim : show.claims_on(asked.id)) {
    const model::Source* source = show.find(claim.source);
    if (source == nullptr || source->kind == model::SourceKind::oral) {
      stories.records.insert(claim.id.value);
    }
  }
  why.without_stories = stories.records.empty() ? why.belief : without(stories);
  return why;
}

}  // namespace backmark::evidence
