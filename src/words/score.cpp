#include "words/score.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "words/maker_phrase.h"
#include "words/table.h"
#include "words/year_phrase.h"

namespace backmark::words {
namespace {

struct Tally {
  int n = 0;
  int hits = 0;
};

constexpr int fewest = 10;

PhraseScore finished(const std::string& rows, Tally tally, double floors) {
  const Interval bounds = wilson(tally.hits, tally.n);
  return {rows, tally.n, tally.hits, floors / tally.n, bounds.low, bounds.high};
}

// Rows in the table's order; thin ones join the row below, the last thin one the row above.
std::vector<PhraseScore> pooled(const std::vector<TableRow>& table,
                                const std::vector<Tally>& tallies) {
  std::vector<PhraseScore> scores;
  std::string names;
  Tally sum;
  double floors = 0;
  for (const TableRow& row : table) {
    const Tally& tally = tallies[static_cast<std::size_t>(row.row)];
    if (tally.n == 0) {
      continue;
    }
    names += (names.empty() ? "" : " + ") + std::string(row.phrase);
    sum.n += tally.n;
    sum.hits += tally.hits;
    floors += row.floor * tally.n;
    if (sum.n >= fewest) {
      scores.push_back(finished(names, sum, floors));
      names.clear();
      sum = {};
      floors = 0;
    }
  }
  if (sum.n > 0) {
    if (!scores.empty()) {
      const PhraseScore above = scores.back();
      scores.pop_back();
      names = above.rows + " + " + names;
      floors += above.floor * above.n;
      sum = {sum.n + above.n, sum.hits + above.hits};
    }
    scores.push_back(finished(names, sum, floors));
  }
  return scores;
}

}  // namespace

Interval wilson(int hits, int n, double z) {
  if (n == 0) {
    return {};
  }
  const double share = static_cast<double>(hits) / n;
  const double square = z * z / n;
  const double centre = (share + square / 2) / (1 + square);
  const double half = z * std::sqrt(share * (1 - share) / n + square / (4 * n)) / (1 + square);
  return {std::max(0.0, centre - half), std::min(1.0, centre + half)};
}

ScoreCard score_phrases(const model::Show& show,
                        const PhraseBook& phrases,
                        const std::vector<KnownPiece>& known) {
  std::vector<Tally> years(year_table().size() + 1);
  std::vector<Tally> makers(maker_table().size() + 1);
  for (const KnownPiece& truth : known) {
    const model::Phrases& said = phrases.of(truth.piece);
    if (const auto span = claimed_years(said.made); span && said.made_row > 0) {
      Tally& tally = years[static_cast<std::size_t>(said.made_row)];
      ++tally.n;
      tally.hits += span->contains(truth.year) ? 1 : 0;
    }
    const auto claim = claimed_makers(show, split(said.maker, "; ").front());
    if (claim.row > 0 && said.maker_row > 0) {
      Tally& tally = makers[static_cast<std::size_t>(said.maker_row)];
      ++tally.n;
      tally.hits +=
          std::count(claim.makers.begin(), claim.makers.end(), truth.maker) > 0 ? 1 : 0;
    }
  }
  return {pooled(year_table(), years), pooled(maker_table(), makers)};
}

}  // namespace backmark::words
