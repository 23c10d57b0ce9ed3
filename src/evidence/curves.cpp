#include "evidence/curves.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace backmark::evidence {

namespace {

void add(const std::vector<double>& what, double times, std::vector<double>& onto) {
  if (onto.empty()) {
    onto.assign(what.size(), 0.0);
  }
  for (std::size_t bin = 0; bin < what.size(); ++bin) {
    onto[bin] += times * what[bin];
  }
}

double sum(const std::vector<double>& p) {
  double total = 0;
  for (const double value : p) {
    total += value;
  }
  return total;
}

}  // namespace

EvidenceCurves::EvidenceCurves(const StyleTable& table,
                               const std::vector<std::size_t>& members,
                               const std::vector<double>& evidence,
                               const YearGrid& bins,
                               const CurveSettings& settings)
    : bins_(bins),
      pseudo_(settings.pseudo_per_decade * bins.width / settings.decade_years),
      characters_(table.characters.size()) {
  add_cuts(table, members);
  add_windows(table, settings);
  const Smoother smoother(bins.cells(), bins.in_cells(settings.smoothing_years));
  std::map<std::pair<Year, Year>, std::size_t> known;
  std::map<int, std::vector<std::uint32_t>> lots;
  for (std::size_t m = 0; m < members.size(); ++m) {
    const auto& piece = table.pieces[members[m]];
    if (!piece.stated || evidence[m] <= 0) {
      continue;
    }
    const auto [at, fresh] =
        known.try_emplace({piece.stated->first, piece.stated->last}, spans_.size());
    if (fresh) {
      std::vector<double> p(bins.cells(), 0.0);
      add_span(bins, *piece.stated, 1, p);
      smoother.apply(p);
      spans_.push_back(std::move(p));
    }
    Member member{at->second, evidence[m], {}};
    for (std::size_t c = 0; c < characters_.size(); ++c) {
      member.terms.push_back(terms_of(c, piece.values[c]));
      Character& character = characters_[c];
      if (!member.terms[c].empty()) {
        add(spans_[member.span], member.weight, character.recorded);
      }
      for (const int term : member.terms[c]) {
        add(spans_[member.span], member.weight,
            character.shown[static_cast<std::size_t>(term)]);
      }
    }
    lots[piece.lot].push_back(static_cast<std::uint32_t>(members_.size()));
    members_.push_back(std::move(member));
  }
  for (auto& [lot, held] : lots) {
    lots_.push_back(lot);
    by_lot_.push_back(std::move(held));
  }
}

void EvidenceCurves::add_cuts(const StyleTable& table,
                              const std::vector<std::size_t>& members) {
  for (std::size_t c = 0; c < characters_.size(); ++c) {
    Character& character = characters_[c];
    character.number = table.characters[c].shape == CharacterShape::number;
    const std::size_t terms = character.number ? 5 : table.characters[c].vocabulary.size();
    character.shown.resize(terms);
    character.window.resize(terms);
    if (!character.number) {
      continue;
    }
    std::vector<double> numbers;
    for (const std::size_t member : members) {
      if (const auto& number = table.pieces[member].values[c].number) {
        numbers.push_back(*number);
      }
    }
    std::sort(numbers.begin(), numbers.end());
    for (std::size_t cut = 1; cut < 5 && !numbers.empty(); ++cut) {
      character.cuts.push_back(numbers[cut * numbers.size() / 5]);
    }
  }
}

// Several windows of one value: the mean of their shapes.
void EvidenceCurves::add_windows(const StyleTable& table, const CurveSettings& settings) {
  const Smoother ends(bins_.cells(), bins_.in_cells(settings.window_ends_years));
  std::map<std::pair<std::size_t, std::size_t>, double> count;
  for (const auto& stated : table.windows) {
    const auto term = static_cast<std::size_t>(stated.term);
    if (characters_[stated.character].number) {
      continue;
    }
    std::vector<double> inside(bins_.cells(), 0.0);
    add_span(bins_, stated.span, 1, inside);
    ends.apply(inside);
    const double trust = settings.window_strength * stated.reliability;
    auto& window = characters_[stated.character].window[term];
    const double before = count[{stated.character, term}]++;
    window.resize(bins_.cells(), 0.0);
    for (std::size_t bin = 0; bin < window.size(); ++bin) {
      const double shape = trust * inside[bin] * static_cast<double>(inside.size()) + 1 - trust;
      window[bin] = (window[bin] * before + shape) / (before + 1);
    }
  }
}

int EvidenceCurves::fifth(std::size_t character, double number) const {
  const auto& cuts = characters_[character].cuts;
  return static_cast<int>(std::upper_bound(cuts.begin(), cuts.end(), number) - cuts.begin());
}

std::vector<int> EvidenceCurves::terms_of(std::size_t character,
                                          const StyleValue& value) const {
  if (characters_[character].number) {
    if (!value.number) {
      return {};
    }
    return {fifth(character, *value.number)};
  }
  return value.terms;
}

std::vector<double> EvidenceCurves::ratio(const Character& character,
                                          std::size_t term,
                                          const Counts& own_shown,
                                          const Counts& own_recorded) const {
  if (term >= character.shown.size()) {
    return {};
  }
  const Counts& shown = character.shown[term];
  const auto& window = character.window[term];
  const double all = sum(character.recorded) - sum(own_recorded);
  const double seen = std::max(0.0, sum(shown) - sum(own_shown));
  if (seen < 1e-9 && window.empty()) {
    return {};
  }
  // A windowed value that no dated piece shows counts as half a piece.
  const double share = seen < 1e-9 ? 0.5 / (all + 1) : seen / all;
  std::vector<double> line(bins_.cells());
  for (std::size_t bin = 0; bin < line.size(); ++bin) {
    const double own = own_shown.empty() ? 0 : own_shown[bin];
    const double own_all = own_recorded.empty() ? 0 : own_recorded[bin];
    const double here = shown.empty() ? 0 : std::max(0.0, shown[bin] - own);
    const double any =
        character.recorded.empty() ? 0 : std::max(0.0, character.recorded[bin] - own_all);
    const double shape = window.empty() ? 1 : window[bin];
    line[bin] = std::log((here + pseudo_ * share * shape) / (any + pseudo_) / share);
  }
  return line;
}

std::vector<std::vector<double>> EvidenceCurves::lines(const std::vector<StyleValue>& values,
                                                       std::optional<int> lot) const {
  const std::vector<std::uint32_t> none;
  const std::vector<std::uint32_t>* own = &none;
  const auto at = lot ? std::lower_bound(lots_.begin(), lots_.end(), *lot) : lots_.end();
  if (at != lots_.end() && *at == *lot) {
    own = &by_lot_[static_cast<std::size_t>(at - lots_.begin())];
  }
  std::vector<std::vector<double>> lines(characters_.size());
  for (std::size_t c = 0; c < characters_.size(); ++c) {
    const auto terms = terms_of(c, values[c]);
    Counts own_recorded;
    for (const std::uint32_t m : *own) {
      if (!terms.empty() && !members_[m].terms[c].empty()) {
        add(spans_[members_[m].span], members_[m].weight, own_recorded);
      }
    }
    int counted = 0;
    for (const int term : terms) {
      Counts own_shown;
      for (const std::uint32_t m : *own) {
        if (std::binary_search(members_[m].terms[c].begin(), members_[m].terms[c].end(),
                               term)) {
          add(spans_[members_[m].span], members_[m].weight, own_shown);
        }
      }
      const auto line =
          ratio(characters_[c], static_cast<std::size_t>(term), own_shown, own_recorded);
      if (!line.empty()) {
        add(line, 1, lines[c]);
        ++counted;
      }
    }
    for (double& nats : lines[c]) {
      nats /= std::sqrt(counted);
    }
  }
  return lines;
}

std::vector<double> EvidenceCurves::line(std::size_t character, int term) const {
  return ratio(characters_[character], static_cast<std::size_t>(term), {}, {});
}

}  // namespace backmark::evidence
