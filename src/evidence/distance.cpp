#include "evidence/distance.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <utility>

namespace backmark::evidence {

namespace {

constexpr float number_limit = 2;

std::uint8_t to_byte(float share) {
  return static_cast<std::uint8_t>(255 * std::clamp(share, 0.0F, 1.0F) + 0.5F);
}

// In how many lots each term of a character is seen; and in how many lots anything is.
std::pair<std::vector<int>, int> lots_by_term(const StyleTable& table,
                                              std::size_t kind,
                                              const std::vector<std::size_t>& members) {
  std::set<std::pair<int, int>> seen;
  std::set<int> lots;
  for (const std::size_t member : members) {
    const auto& piece = table.pieces[member];
    for (const int term : piece.values[kind].terms) {
      seen.emplace(term, piece.lot);
      lots.insert(piece.lot);
    }
  }
  std::vector<int> counts(table.characters[kind].vocabulary.size(), 0);
  for (const auto& [term, lot] : seen) {
    ++counts[static_cast<std::size_t>(term)];
  }
  return {counts, static_cast<int>(lots.size())};
}

}  // namespace

DistancePool::DistancePool(const StyleTable& table, std::vector<std::size_t> members)
    : members_(std::move(members)), kinds_(table.characters.size()) {
  for (std::size_t kind = 0; kind < kinds_.size(); ++kind) {
    kinds_[kind].shape = table.characters[kind].shape;
    if (kinds_[kind].shape == CharacterShape::number) {
      learn_numbers(table, kind);
    } else {
      learn_terms(table, kind);
    }
  }
  learn_missing(table);
}

void DistancePool::learn_terms(const StyleTable& table, std::size_t which) {
  Kind& kind = kinds_[which];
  const auto [counts, lots] = lots_by_term(table, which, members_);
  kind.term_weight.assign(counts.size(), 1);
  if (kind.shape == CharacterShape::words) {
    for (std::size_t term = 0; term < counts.size(); ++term) {
      kind.term_weight[term] =
          counts[term] < 2 ? 0 : static_cast<float>(std::log((1.0 + lots) / counts[term]));
    }
  }
  kind.holders.resize(counts.size());
  kind.total.assign(members_.size(), -1);
  for (std::size_t i = 0; i < members_.size(); ++i) {
    for (const int term : kept(which, table.pieces[members_[i]].values[which])) {
      const auto t = static_cast<std::size_t>(term);
      kind.holders[t].push_back(static_cast<std::uint32_t>(i));
      kind.total[i] = std::max(kind.total[i], 0.0F) + kind.term_weight[t];
    }
  }
}

void DistancePool::learn_numbers(const StyleTable& table, std::size_t which) {
  Kind& kind = kinds_[which];
  kind.step = number_limit / 255;
  std::vector<double> logs;
  double sum = 0;
  for (const std::size_t member : members_) {
    if (const auto& number = table.pieces[member].values[which].number) {
      logs.push_back(std::log(*number));
      sum += logs.back();
    }
  }
  double squares = 0;
  const double mean = logs.empty() ? 0 : sum / static_cast<double>(logs.size());
  for (const double value : logs) {
    squares += (value - mean) * (value - mean);
  }
  const double sd = logs.size() < 2 ? 1 : std::sqrt(squares / static_cast<double>(logs.size()));
  kind.scale = sd > 1e-9 ? 1 / sd : 1;
  for (const std::size_t member : members_) {
    const auto& number = table.pieces[member].values[which].number;
    kind.number.push_back(number ? static_cast<float>(kind.scale * std::log(*number))
                                 : std::numeric_limits<float>::quiet_NaN());
  }
}

// Mean over pairs of different lots in which both are recorded; a spread of at most 500 rows is
// enough for one byte.
void DistancePool::learn_missing(const StyleTable& table) {
  std::vector<double> sum(kinds_.size(), 0);
  std::vector<double> pairs(kinds_.size(), 0);
  std::vector<std::uint8_t> bytes(kinds_.size() * size());
  const std::size_t stride = std::max<std::size_t>(1, size() / 500);
  for (std::size_t i = 0; i < size(); i += stride) {
    const auto& piece = table.pieces[members_[i]];
    row(piece.values, size(), bytes.data());
    for (std::size_t k = 0; k < kinds_.size(); ++k) {
      const Kind& kind = kinds_[k];
      const bool numbers = kind.shape == CharacterShape::number;
      if (numbers ? std::isnan(kind.number[i]) : kind.total[i] < 0) {
        continue;
      }
      for (std::size_t j = 0; j < size(); ++j) {
        const bool known = numbers ? !std::isnan(kind.number[j]) : kind.total[j] >= 0;
        if (known && table.pieces[members_[j]].lot != piece.lot) {
          sum[k] += bytes[k * size() + j];
          pairs[k] += 1;
        }
      }
    }
  }
  for (std::size_t k = 0; k < kinds_.size(); ++k) {
    kinds_[k].missing =
        static_cast<std::uint8_t>(pairs[k] > 0 ? std::lround(sum[k] / pairs[k]) : 0);
  }
}

std::vector<int> DistancePool::kept(std::size_t which, const StyleValue& value) const {
  const Kind& kind = kinds_[which];
  if (kind.shape != CharacterShape::words) {
    return value.terms;
  }
  std::vector<int> terms;
  for (const int term : value.terms) {
    const auto t = static_cast<std::size_t>(term);
    if (t < kind.term_weight.size() && kind.term_weight[t] > 0) {
      terms.push_back(term);
    }
  }
  return terms;
}

void DistancePool::row(const std::vector<StyleValue>& values,
                       std::size_t count,
                       std::uint8_t* bytes) const {
  for (std::size_t k = 0; k < kinds_.size(); ++k) {
    std::uint8_t* plane = bytes + k * count;
    const Kind& kind = kinds_[k];
    const bool numbers = kind.shape == CharacterShape::number;
    if (numbers ? !values[k].number : kept(k, values[k]).empty()) {
      std::fill(plane, plane + count, kind.missing);
    } else if (numbers) {
      number_row(kind, values[k], count, plane);
    } else {
      term_row(kind, {kept(k, values[k]), {}}, count, plane);
    }
  }
}

void DistancePool::term_row(const Kind& kind,
                            const StyleValue& value,
                            std::size_t count,
                            std::uint8_t* bytes) const {
  std::vector<float> shared(count, 0);
  float own = 0;
  for (const int term : value.terms) {
    const auto t = static_cast<std::size_t>(term);
    // A term that no piece of the pool has: of no weight there, but different from all.
    const float weight = t < kind.term_weight.size() ? kind.term_weight[t] : 1;
    own += weight;
    if (t >= kind.holders.size()) {
      continue;
    }
    for (const std::uint32_t holder : kind.holders[t]) {
      if (holder >= count) {
        break;
      }
      shared[holder] += weight;
    }
  }
  for (std::size_t i = 0; i < count; ++i) {
    bytes[i] = kind.total[i] < 0 ? kind.missing
                                 : to_byte(1 - shared[i] / (own + kind.total[i] - shared[i]));
  }
}

void DistancePool::number_row(const Kind& kind,
                              const StyleValue& value,
                              std::size_t count,
                              std::uint8_t* bytes) {
  const auto own = static_cast<float>(kind.scale * std::log(*value.number));
  for (std::size_t i = 0; i < count; ++i) {
    bytes[i] = std::isnan(kind.number[i])
                   ? kind.missing
                   : to_byte(std::abs(own - kind.number[i]) / number_limit);
  }
}

}  // namespace backmark::evidence
