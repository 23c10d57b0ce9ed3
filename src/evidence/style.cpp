#include "evidence/style.h"

#include <algorithm>
#include <cmath>

namespace backmark::evidence {

namespace {

constexpr double least = 1e-9;  // of a probability under a logarithm

std::vector<double> logs(const std::vector<double>& p) {
  std::vector<double> x(p.size());
  std::transform(p.begin(), p.end(), x.begin(),
                 [](double value) { return std::log(std::max(value, least)); });
  return x;
}

void normalise(std::vector<double>& p) {
  double sum = 0;
  for (const double value : p) {
    sum += value;
  }
  for (double& value : p) {
    value /= sum;
  }
}

// Log weights with the mean under p taken off, one a year.
std::vector<double> centred(const YearGrid& grid,
                            const std::vector<double>& nats,
                            double b,
                            const std::vector<double>& p) {
  double mean = 0;
  for (std::size_t cell = 0; cell < p.size(); ++cell) {
    mean += p[cell] * nats[cell];
  }
  std::vector<double> years(static_cast<std::size_t>(grid.span.length()));
  for (std::size_t year = 0; year < years.size(); ++year) {
    years[year] = b * (nats[year / static_cast<std::size_t>(grid.width)] - mean);
  }
  return years;
}

}  // namespace

std::vector<StyleValue> Style::kept(const std::vector<StyleValue>& values) const {
  std::vector<StyleValue> kept = values;
  for (std::size_t kind = 0; kind < kept.size(); ++kind) {
    kept[kind].terms = comparanda_.pool().kept(kind, values[kind]);
  }
  return kept;
}

Style::Draft Style::draft(const StyleQuestion& question) const {
  Draft draft;
  draft.overall = overall_.without(question.lot);
  if (compared_) {
    draft.told = comparanda_.told(*question.values, question.lot);
    draft.comparanda = comparanda_.years(draft.told, draft.overall);
  }
  draft.lines = curves_.lines(kept(*question.values), question.lot);
  return draft;
}

// A line over bins at the cells, straight between the middles of the bins.
std::vector<double> Style::to_cells(const std::vector<double>& line) const {
  if (line.empty() || bins_.width == grid_.width) {
    return line;
  }
  std::vector<double> cells(grid_.cells());
  const double ratio = static_cast<double>(grid_.width) / bins_.width;
  const auto top = static_cast<double>(line.size() - 1);
  for (std::size_t cell = 0; cell < cells.size(); ++cell) {
    const double at = std::clamp((static_cast<double>(cell) + 0.5) * ratio - 0.5, 0.0, top);
    const auto bin = static_cast<std::size_t>(at);
    const auto next = std::min(bin + 1, line.size() - 1);
    cells[cell] = line[bin] + (at - static_cast<double>(bin)) * (line[next] - line[bin]);
  }
  return cells;
}

std::vector<std::vector<double>> Style::stack_lines(const Draft& draft) const {
  std::vector<std::vector<double>> lines;
  for (const auto& line : draft.lines) {
    lines.push_back(to_cells(line));
  }
  lines.push_back(logs(draft.overall));
  if (compared_) {
    lines.push_back(logs(draft.comparanda));
  }
  return lines;
}

// The mean of stack, curves alone and comparanda alone, with a little of the overall density.
std::vector<double> Style::mixed(const Draft& draft) const {
  const auto lines = stack_lines(draft);
  std::vector<double> p = stacked(stack_, lines, grid_.cells());
  if (compared_) {
    const std::vector<double> alone = stacked(curves_alone_, lines, grid_.cells());
    for (std::size_t cell = 0; cell < p.size(); ++cell) {
      p[cell] = (p[cell] + alone[cell] + draft.comparanda[cell]) / 3;
    }
  }
  for (std::size_t cell = 0; cell < p.size(); ++cell) {
    p[cell] = (1 - settings_.overall_share - settings_.even_share) * p[cell] +
              settings_.overall_share * draft.overall[cell] +
              settings_.even_share / static_cast<double>(p.size());
  }
  last_->apply(p);
  normalise(p);
  return p;
}

// What has been learned of lags and of its own certainty.
std::vector<double> Style::mended(std::vector<double> p, std::optional<Year> latest) const {
  if (latest) {
    lags_.apply(p, *latest);
  }
  p = ranks_.mend(p);
  normalise(p);
  return p;
}

StyleApart Style::held_apart(const StyleQuestion& question,
                             Draft draft,
                             const Told& told,
                             const std::vector<std::size_t>& group) const {
  StyleApart apart;
  std::vector<double> nats(grid_.cells(), 0.0);
  for (const std::size_t character : group) {
    const std::vector<double> line = to_cells(draft.lines[character]);
    for (std::size_t cell = 0; cell < line.size(); ++cell) {
      nats[cell] += curves_alone_[character] * line[cell];
    }
    draft.lines[character].clear();
  }
  if (compared_) {
    draft.comparanda = comparanda_.years(told, draft.overall);
  }
  apart.without_p = to_years(grid_, mended(mixed(draft), question.latest));
  apart.nats = centred(grid_, nats, 1, std::vector<double>(nats.size(), 0.0));
  return apart;
}

StyleJudgement Style::judge(const StyleQuestion& question) const {
  const Draft draft = this->draft(question);
  const std::vector<double> p = mended(mixed(draft), question.latest);
  StyleJudgement judgement;
  judgement.axis = grid_.span;
  judgement.p = to_years(grid_, p);
  judgement.overall = to_years(grid_, draft.overall);
  if (compared_ && question.comparanda > 0) {
    const Told& told = draft.told;
    const double all = told.all + comparanda_.likeness().open;
    judgement.compared = told.all / all;
    for (const std::size_t i : Comparanda::heaviest(told, question.comparanda)) {
      if (told.weight[i] > 0) {
        judgement.comparanda.push_back({comparanda_.pool().member(i),
                                        static_cast<double>(told.weight[i]) / all,
                                        comparanda_.parts(*question.values, i)});
      }
    }
  }
  if (!question.apart.empty()) {
    const std::vector<Told> told =
        compared_ ? comparanda_.told_without(*question.values, question.lot, question.apart)
                  : std::vector<Told>(question.apart.size() + 1);
    for (std::size_t group = 0; group < question.apart.size(); ++group) {
      judgement.apart.push_back(
          held_apart(question, draft, told[group + 1], question.apart[group]));
    }
  }
  if (question.lines) {
    const auto lines = stack_lines(draft);
    for (std::size_t line = 0; line < lines.size(); ++line) {
      const bool speaks = !lines[line].empty() && stack_[line] > 0;
      judgement.lines.push_back(
          {names_[line],
           speaks ? centred(grid_, lines[line], stack_[line], p) : std::vector<double>{}});
    }
  }
  return judgement;
}

StyleLessons Style::lessons() const {
  StyleLessons lessons;
  lessons.names = {names_.begin(), names_.end() - 2};  // without "overall", "comparanda"
  lessons.axis = grid_.span;
  lessons.small = small_;
  lessons.d = comparanda_.likeness().d;
  lessons.open = comparanda_.likeness().open;
  lessons.b = stack_;
  lessons.b_alone = curves_alone_;
  lessons.curve_years = curve_smoothing_;
  lessons.lags = lags_.ratio();
  lessons.ranks = ranks_.histogram();
  lessons.left_out = left_out_;
  lessons.left_out_score = left_out_score_;
  return lessons;
}

OddsMap Style::before(Year year) const {
  std::vector<YesNo> answers;
  for (const Known& known : left_out_) {
    if (known.stated.last < year || known.stated.first >= year) {
      const double p = year <= grid_.span.first ? 0
                                                : mass_between(bins_, known.cumulative,
                                                               {grid_.span.first, year - 1});
      answers.push_back({p, known.stated.last < year, known.judged});
    }
  }
  return fit_odds(answers);
}

}  // namespace backmark::evidence
