#include "evidence/likeness.h"

#include <cmath>
#include <doctest/doctest.h>

#include "base/random.h"
#include "evidence/comparanda.h"

using namespace backmark;
using namespace backmark::evidence;

namespace {

StyleTable some_pieces(std::uint64_t seed, int count) {
  StyleTable table;
  table.characters = {{"kind", CharacterShape::category, "", {}},
                      {"places", CharacterShape::terms, "", {}},
                      {"words", CharacterShape::words, "", {}},
                      {"height", CharacterShape::number, "", {}}};
  for (int c = 0; c < 3; ++c) {
    for (int v = 0; v < 6; ++v) {
      table.characters[static_cast<std::size_t>(c)].vocabulary.add(
          std::string(1, char('a' + v)));
    }
  }
  Random random(seed);
  for (int i = 0; i < count; ++i) {
    StylePiece piece;
    piece.lot = static_cast<int>(random.below(static_cast<std::size_t>(count) / 2 + 1));
    const int year = 1850 + static_cast<int>(random.below(100));
    piece.stated = YearSpan{{year}, {year + static_cast<int>(random.below(20))}};
    for (int c = 0; c < 3; ++c) {
      StyleValue value;
      for (int v = 0; v < 6 && !(c == 0 && !value.terms.empty()); ++v) {
        if (random.chance(0.3)) {
          value.terms.push_back(v);
        }
      }
      piece.values.push_back(value);
    }
    piece.values.push_back({});
    if (random.chance(0.8)) {
      piece.values.back().number = 10 * std::exp(random.normal());
    }
    table.pieces.push_back(std::move(piece));
  }
  return table;
}

std::vector<std::size_t> everyone(const StyleTable& table) {
  std::vector<std::size_t> members(table.pieces.size());
  for (std::size_t i = 0; i < members.size(); ++i) {
    members[i] = i;
  }
  return members;
}

// The definition, in doubles and without bytes; below 0 where a value is missing.
double plain_distance(const StyleTable& table, std::size_t kind, std::size_t i, std::size_t j) {
  const auto& a = table.pieces[i].values[kind];
  const auto& b = table.pieces[j].values[kind];
  if (kind == 3) {
    if (!a.number || !b.number) {
      return -1;
    }
    double sum = 0;
    double squares = 0;
    double n = 0;
    for (const auto& piece : table.pieces) {
      if (piece.values[3].number) {
        const double x = std::log(*piece.values[3].number);
        sum += x;
        squares += x * x;
        n += 1;
      }
    }
    const double sd = std::sqrt(squares / n - sum / n * sum / n);
    return std::min(2.0, std::abs(std::log(*a.number / *b.number)) / sd);
  }
  double shared = 0;
  double all = 0;
  double of_a = 0;
  double of_b = 0;
  for (int term = 0; term < 6; ++term) {
    std::map<int, bool> lots;
    std::map<int, bool> any;
    for (const auto& piece : table.pieces) {
      for (const int held : piece.values[kind].terms) {
        lots[piece.lot] |= held == term;
        any[piece.lot] = true;
      }
    }
    double holding = 0;
    for (const auto& [lot, held] : lots) {
      holding += held;
    }
    double weight = 1;
    if (kind == 2) {
      weight = holding < 2 ? 0 : std::log((1 + static_cast<double>(any.size())) / holding);
    }
    const bool in_a = std::count(a.terms.begin(), a.terms.end(), term) > 0;
    const bool in_b = std::count(b.terms.begin(), b.terms.end(), term) > 0;
    shared += in_a && in_b ? weight : 0;
    all += in_a || in_b ? weight : 0;
    of_a += in_a ? weight : 0;
    of_b += in_b ? weight : 0;
  }
  return of_a <= 0 || of_b <= 0 ? -1 : 1 - shared / all;
}

// Every piece's label is its span, smoothed by nothing: overlap as a share.
class Overlap : public Agreement {
 public:
  explicit Overlap(const StyleTable& table) : table_(table) {}
  static double share(YearSpan label, YearSpan truth) {
    const int years = std::min(label.last, truth.last) - std::max(label.first, truth.first) + 1;
    return std::max(0, years) / static_cast<double>(label.length());
  }
  void row(std::size_t j, float* forth, float* back) const override {
    for (std::size_t i = 0; i < j; ++i) {
      const auto a = *table_.pieces[i].stated;
      const auto b = *table_.pieces[j].stated;
      forth[i] = static_cast<float>(share(a, b));
      back[i] = static_cast<float>(share(b, a));
    }
  }
  double open(std::size_t j) const override {
    return table_.pieces[j].stated->length() / 120.0;
  }

 private:
  const StyleTable& table_;
};

}  // namespace

TEST_CASE("distances in bytes agree with their definition to half a step") {
  const auto table = some_pieces(1, 40);
  const DistancePool pool(table, everyone(table));
  std::vector<std::uint8_t> bytes(pool.kinds() * pool.size());
  std::map<std::size_t, std::uint8_t> missing;
  for (std::size_t i = 0; i < pool.size(); ++i) {
    pool.row(table.pieces[i].values, pool.size(), bytes.data());
    for (std::size_t kind = 0; kind < pool.kinds(); ++kind) {
      for (std::size_t j = 0; j < pool.size(); ++j) {
        const double plain = plain_distance(table, kind, i, j);
        const auto byte = bytes[kind * pool.size() + j];
        if (plain < 0) {
          CHECK(missing.try_emplace(kind, byte).first->second == byte);
        } else {
          CHECK(std::abs(byte * static_cast<double>(pool.step(kind)) - plain) <=
                0.51 * static_cast<double>(pool.step(kind)));
        }
      }
    }
  }
  CHECK(missing.size() == 4);
}

TEST_CASE("the left-out score is what a plain double loop over all pairs gives") {
  const auto table = some_pieces(2, 50);
  const DistancePool pool(table, everyone(table));
  const PairTable pairs(table, pool, {});
  const Overlap overlap(table);
  LikenessTask task{pairs, overlap, {}, {}, {}, {0, 1, 1, 2}, {{1, 1, 1, 1}, 0.5}, 1};
  for (const auto& piece : table.pieces) {
    task.lot.push_back(piece.lot);
    task.evidence.push_back(0.5F + 0.01F * static_cast<float>(piece.lot));
    task.judged.push_back(1 + 0.02 * piece.lot);
  }
  const Watch watch;
  LikenessScore score(task, watch);
  const std::vector<double> at{0.3, -0.2, 0.6, -0.4};
  std::vector<double> slope(4);
  const double value = score(at, slope);

  const Likeness likeness = score.likeness(at);
  CHECK(likeness.d[1] == likeness.d[2]);
  double plain = 0;
  std::vector<std::uint8_t> bytes(pool.kinds() * pool.size());
  for (std::size_t j = 0; j < pool.size(); ++j) {
    pool.row(table.pieces[j].values, pool.size(), bytes.data());
    double hit = likeness.open * overlap.open(j);
    double all = likeness.open;
    for (std::size_t i = 0; i < pool.size(); ++i) {
      if (table.pieces[i].lot == table.pieces[j].lot) {
        continue;
      }
      double apart = 0;
      for (std::size_t kind = 0; kind < pool.kinds(); ++kind) {
        apart += likeness.d[kind] * bytes[kind * pool.size() + i] *
                 static_cast<double>(pool.step(kind));
      }
      const double k = static_cast<double>(task.evidence[i]) * std::exp(-apart);
      hit += k * Overlap::share(*table.pieces[i].stated, *table.pieces[j].stated);
      all += k;
    }
    plain -= task.judged[j] * std::log(hit / all);
  }
  for (std::size_t p = 0; p < 4; ++p) {
    const double centre = p == 3 ? std::log(0.5) : 0;
    plain += 0.5 * (at[p] - centre) * (at[p] - centre);
  }
  CHECK(value == doctest::Approx(plain).epsilon(1e-5));

  SUBCASE("and its slope is what small steps give") {
    for (std::size_t p = 0; p < 4; ++p) {
      const double step = 0.01;
      auto above = at;
      auto below = at;
      above[p] += step;
      below[p] -= step;
      std::vector<double> unused(4);
      const double measured = (score(above, unused) - score(below, unused)) / (2 * step);
      CHECK(slope[p] == doctest::Approx(measured).epsilon(0.002));
    }
  }
}

TEST_CASE("weights of a known exponential likeness are found again") {
  // Years are drawn from pieces chosen by the kernel itself: kind counts 3, the rest nothing.
  auto table = some_pieces(3, 500);
  Random random(11);
  for (std::size_t j = 0; j < table.pieces.size(); ++j) {
    auto& piece = table.pieces[j];
    piece.lot = static_cast<int>(j);
    piece.values[0].terms = {static_cast<int>(random.below(6))};
    if (j < 30) {
      const int year = 1850 + static_cast<int>(random.below(100));
      piece.stated = YearSpan{{year}, {year}};
      continue;
    }
    std::vector<double> weight;
    for (std::size_t i = 0; i < j; ++i) {
      weight.push_back(
          table.pieces[i].values[0].terms == piece.values[0].terms ? 1 : std::exp(-3.0));
    }
    const Year year = table.pieces[random.weighted(weight)].stated->first;
    piece.stated = YearSpan{year, year};
  }
  const DistancePool pool(table, everyone(table));
  const PairTable pairs(table, pool, {});
  const Overlap overlap(table);
  LikenessTask task{pairs, overlap, {}, {}, {}, {0, 1, 2, 3}, {{1, 1, 1, 1}, 1}, 0.1};
  for (const auto& piece : table.pieces) {
    task.lot.push_back(piece.lot);
    task.evidence.push_back(1);
    task.judged.push_back(1);
  }
  const auto found = fit_likeness(task, {});
  REQUIRE(found.ok());
  CHECK(found->d[0] > 2.2);
  CHECK(found->d[0] < 4);
  CHECK(found->d[1] < 1);
  CHECK(found->d[2] < 1);
  CHECK(found->d[3] < 1);
}
