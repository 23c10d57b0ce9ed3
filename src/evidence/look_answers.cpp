#include "evidence/look_answers.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"

namespace backmark::evidence {

namespace {

constexpr std::size_t most_answers = 10;
constexpr int least_company = 5;
constexpr std::string_view none_term = "looked for, none";  // as the table has it

bool has_value(const StyleValue& value, const StyleCharacter& character) {
  if (value.number) {
    return true;
  }
  return std::any_of(value.terms.begin(), value.terms.end(),
                     [&](int term) { return character.vocabulary.name(term) != none_term; });
}

}  // namespace

LookAnswers::LookAnswers(const model::Show& show, const Reckoning& reckoning)
    : show_(show), reckoning_(reckoning), gathered_(reckoning.gathered()) {
  answers_.resize(gathered_.style.characters.size());
  if (reckoning.style() == nullptr) {
    return;
  }
  for (std::size_t c = 0; c < answers_.size(); ++c) {
    if (gathered_.columns.ids()[c]) {
      add_answers(c);
    }
    if (answers_[c].size() > 1) {
      columns_.push_back(c);
    } else {
      answers_[c].clear();
    }
  }
  count_company();
}

std::vector<double> LookAnswers::to_axis(const std::vector<double>& line) const {
  const auto years = static_cast<std::size_t>(reckoning_.axis().length());
  std::vector<double> at(years, 0);
  if (line.empty()) {
    return at;
  }
  const std::size_t width = (years + line.size() - 1) / line.size();
  for (std::size_t t = 0; t < years; ++t) {
    at[t] = line[std::min(line.size() - 1, t / width)];
  }
  return at;
}

void LookAnswers::add_answers(std::size_t column) {
  const StyleCharacter& character = gathered_.style.characters[column];
  std::vector<PossibleAnswer>& into = answers_[column];
  if (character.shape == CharacterShape::number) {
    add_numbers(column, into);
    return;
  }
  std::vector<int> count(character.vocabulary.size(), 0);
  for (const StylePiece& piece : gathered_.style.pieces) {
    for (const int term : piece.values[column].terms) {
      count[static_cast<std::size_t>(term)] += 1;
    }
  }
  std::vector<int> order(count.size());
  for (std::size_t v = 0; v < order.size(); ++v) {
    order[v] = static_cast<int>(v);
  }
  const auto times = [&](int term) { return count[static_cast<std::size_t>(term)]; };
  std::stable_sort(order.begin(), order.end(),
                   [&](int a, int b) { return times(a) > times(b); });
  double sum = 0;
  for (const int term : order) {
    if (into.size() == most_answers || times(term) < 2) {
      break;
    }
    const std::string& name = character.vocabulary.name(term);
    into.push_back({.value = name == none_term ? "" : name,
                    .words = name,
                    .none = name == none_term,
                    .share = static_cast<double>(times(term)),
                    .ratio_log = to_axis(reckoning_.style()->curves().line(column, term))});
    sum += into.back().share;
  }
  for (PossibleAnswer& answer : into) {
    answer.share /= sum;
  }
}

// The middle of each fifth of what was measured.
void LookAnswers::add_numbers(std::size_t column, std::vector<PossibleAnswer>& into) {
  const EvidenceCurves& curves = reckoning_.style()->curves();
  std::vector<std::vector<double>> fifths(5);
  for (const StylePiece& piece : gathered_.style.pieces) {
    if (const auto& number = piece.values[column].number) {
      fifths[static_cast<std::size_t>(curves.fifth(column, *number))].push_back(*number);
    }
  }
  const model::Character* character = show_.find(gathered_.columns.ids()[column]);
  double sum = 0;
  for (int fifth = 0; fifth < 5; ++fifth) {
    auto& members = fifths[static_cast<std::size_t>(fifth)];
    if (members.size() < 2) {
      continue;
    }
    std::sort(members.begin(), members.end());
    into.push_back({.words = fmt::format("{:g} to {:g} {}", members.front(), members.back(),
                                         character->unit),
                    .number = members[members.size() / 2],
                    .share = static_cast<double>(members.size()),
                    .ratio_log = to_axis(curves.line(column, fifth))});
    into.back().words = std::string(trim(into.back().words));
    sum += into.back().share;
  }
  for (PossibleAnswer& answer : into) {
    answer.share /= sum;
  }
}

// Form, and every category of the same part, may rule a character out.
void LookAnswers::count_company() {
  const auto& characters = gathered_.style.characters;
  for (const std::size_t c : columns_) {
    for (std::size_t d = 0; d < characters.size(); ++d) {
      const bool form = characters[d].name == "Form" && !gathered_.columns.ids()[d];
      const bool same_part = gathered_.columns.parts()[d] == gathered_.columns.parts()[c] &&
                             gathered_.columns.parts()[c] && gathered_.columns.ids()[d];
      if (d == c || characters[d].shape != CharacterShape::category || (!form && !same_part)) {
        continue;
      }
      for (const StylePiece& piece : gathered_.style.pieces) {
        for (const int term : piece.values[d].terms) {
          auto& [with, seen] = company_[{c, d, term}];
          with += 1;
          seen += has_value(piece.values[c], characters[c]) ? 1 : 0;
        }
      }
    }
  }
}

bool LookAnswers::applies(std::size_t piece, std::size_t column) const {
  const auto& values = gathered_.style.pieces[piece].values;
  auto at = company_.lower_bound({column, 0, 0});
  for (; at != company_.end() && std::get<0>(at->first) == column; ++at) {
    const auto& [c, d, term] = at->first;
    const auto& [with, seen] = at->second;
    const auto& terms = values[d].terms;
    if (with >= least_company && seen == 0 &&
        std::find(terms.begin(), terms.end(), term) != terms.end()) {
      return false;
    }
  }
  return true;
}

std::vector<double> LookAnswers::chances(std::size_t column,
                                         const std::vector<double>& year_p) const {
  const auto& answers = answers_[column];
  std::vector<double> chance(answers.size(), 0);
  std::vector<double> here(answers.size());
  for (std::size_t t = 0; t < year_p.size(); ++t) {
    double sum = 0;
    for (std::size_t v = 0; v < answers.size(); ++v) {
      here[v] = answers[v].share * std::exp(answers[v].ratio_log[t]);
      sum += here[v];
    }
    for (std::size_t v = 0; v < answers.size(); ++v) {
      chance[v] += year_p[t] * here[v] / sum;
    }
  }
  return chance;
}

double LookAnswers::information(std::size_t column,
                                const std::vector<double>& year_p,
                                double b) const {
  const auto& answers = answers_[column];
  std::vector<double> all(answers.size(), 0);
  std::vector<double> here(answers.size());
  double bits = 0;
  for (std::size_t t = 0; t < year_p.size(); ++t) {
    if (year_p[t] < 1e-9) {
      continue;
    }
    double sum = 0;
    for (std::size_t v = 0; v < answers.size(); ++v) {
      here[v] = answers[v].share * std::exp(b * answers[v].ratio_log[t]);
      sum += here[v];
    }
    for (std::size_t v = 0; v < answers.size(); ++v) {
      const double p = here[v] / sum;
      all[v] += year_p[t] * p;
      bits += year_p[t] * p * std::log2(std::max(p, 1e-300));
    }
  }
  for (const double p : all) {
    bits -= p > 0 ? p * std::log2(p) : 0;
  }
  return std::max(0.0, bits);
}

double LookAnswers::rough_bits(std::size_t column, const std::vector<double>& year_p) const {
  const double b = reckoning_.style()->weights()[column];
  return answers_[column].empty() || year_p.empty() ? 0 : information(column, year_p, b);
}

std::vector<double> rough_gains(const model::Show& show,
                                const Reckoning& reckoning,
                                const model::Beliefs& beliefs) {
  const LookAnswers answers(show, reckoning);
  std::vector<double> gains(beliefs.pieces.size(), 0);
  for (std::size_t i = 0; i < gains.size(); ++i) {
    for (const std::size_t c : answers.columns()) {
      if (reckoning.gathered().style.pieces[i].values[c].missing() && answers.applies(i, c)) {
        gains[i] = std::max(gains[i], answers.rough_bits(c, beliefs.pieces[i].year.p));
      }
    }
  }
  return gains;
}

}  // namespace backmark::evidence
