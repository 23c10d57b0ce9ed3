// Published tables of types by grave, feature or assemblage, whose order in time is known: how
// well does the middle year follow it when the unit's own place is hidden (a fifth of the units
// at a time, the others dated by their place), beside the first axis of plain correspondence
// analysis of the same table (Benzecri 1973), which is told no place at all?
#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "base/text.h"
#include "evidence/reckon.h"
#include "table_file.h"

namespace {

using namespace backmark;

struct Typology {
  std::string name;
  std::vector<std::vector<double>> counts;  // unit, type
  std::vector<double> place;                // of the unit in time: the middle of its span
  std::vector<YearSpan> span;
};

std::vector<double> ranks(const std::vector<double>& x) {
  std::vector<std::size_t> order(x.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::sort(order.begin(), order.end(), [&](auto a, auto b) { return x[a] < x[b]; });
  std::vector<double> rank(x.size());
  for (std::size_t i = 0; i < order.size();) {
    std::size_t j = i;
    while (j < order.size() && x[order[j]] == x[order[i]]) {
      ++j;
    }
    for (std::size_t k = i; k < j; ++k) {
      rank[order[k]] = 0.5 * static_cast<double>(i + j - 1);
    }
    i = j;
  }
  return rank;
}

double correlation(const std::vector<double>& a, const std::vector<double>& b) {
  const double n = static_cast<double>(a.size());
  const double mean_a = std::accumulate(a.begin(), a.end(), 0.0) / n;
  const double mean_b = std::accumulate(b.begin(), b.end(), 0.0) / n;
  double ab = 0;
  double aa = 0;
  double bb = 0;
  for (std::size_t i = 0; i < a.size(); ++i) {
    ab += (a[i] - mean_a) * (b[i] - mean_b);
    aa += (a[i] - mean_a) * (a[i] - mean_a);
    bb += (b[i] - mean_b) * (b[i] - mean_b);
  }
  return ab / std::sqrt(aa * bb);
}

// Row scores on the first axis, by turns of rows and columns (reciprocal averaging, Hill 1973).
std::vector<double> first_axis(const std::vector<std::vector<double>>& counts) {
  const std::size_t units = counts.size();
  const std::size_t types = counts[0].size();
  std::vector<double> row_sum(units, 0);
  std::vector<double> column_sum(types, 0);
  double all = 0;
  for (std::size_t i = 0; i < units; ++i) {
    for (std::size_t j = 0; j < types; ++j) {
      row_sum[i] += counts[i][j];
      column_sum[j] += counts[i][j];
      all += counts[i][j];
    }
  }
  std::vector<double> score(units);
  for (std::size_t i = 0; i < units; ++i) {
    score[i] = std::sin(static_cast<double>(i) * 1.7 + 0.3);
  }
  for (int turn = 0; turn < 2000; ++turn) {
    double mean = 0;
    for (std::size_t i = 0; i < units; ++i) {
      mean += row_sum[i] * score[i] / all;
    }
    double size = 0;
    for (std::size_t i = 0; i < units; ++i) {
      score[i] -= mean;
      size += row_sum[i] * score[i] * score[i] / all;
    }
    for (double& s : score) {
      s /= std::sqrt(size);
    }
    std::vector<double> column(types, 0);
    for (std::size_t i = 0; i < units; ++i) {
      for (std::size_t j = 0; j < types; ++j) {
        column[j] += column_sum[j] > 0 ? counts[i][j] * score[i] / column_sum[j] : 0;
      }
    }
    for (std::size_t i = 0; i < units; ++i) {
      double sum = 0;
      for (std::size_t j = 0; j < types; ++j) {
        sum += counts[i][j] * column[j];
      }
      score[i] = row_sum[i] > 0 ? sum / row_sum[i] : 0;
    }
  }
  return score;
}

constexpr double much = 0.05;  // share of a unit from which a type is common in it

// The middle year of each unit of a fold, the others' places known.
void judge_fold(const Typology& table, std::size_t fold, std::vector<double>& middle) {
  constexpr std::size_t folds = 5;
  model::Show show;
  std::int32_t next = 1;
  const model::Id<model::Character> type{next++};
  const model::Id<model::Character> common{next++};
  show.all<model::Character>() = {
      {.id = type, .key = "type", .label = "Type", .shape = model::Shape::set},
      {.id = common, .key = "common", .label = "Common types", .shape = model::Shape::set}};
  const model::Id<model::Source> record{next++};
  show.all<model::Source>() = {
      {.id = record, .key = "record", .kind = model::SourceKind::record}};
  for (std::size_t i = 0; i < table.counts.size(); ++i) {
    const model::Id<model::Piece> piece{next++};
    show.all<model::Piece>().push_back({.id = piece, .number = fmt::format("U {}", i)});
    const double all = std::accumulate(table.counts[i].begin(), table.counts[i].end(), 0.0);
    for (std::size_t j = 0; j < table.counts[i].size(); ++j) {
      for (const auto& [character, least] : {std::pair{type, 0.0}, {common, much}}) {
        if (table.counts[i][j] > least * all) {
          show.all<model::Observation>().push_back(
              {.id = {next++},
               .piece = piece,
               .character = character,
               .value = show.pool.take(fmt::format("t{}", j))});
        }
      }
    }
    if (i % folds != fold) {
      show.all<model::Claim>().push_back({.id = {next++},
                                          .source = record,
                                          .subject = piece.value,
                                          .says = model::Says::made,
                                          .from = table.span[i].first,
                                          .to = table.span[i].last});
    }
  }
  show.settle();
  const auto reckoning = evidence::Reckoning::fit(show, {}, {});
  for (std::size_t i = fold; i < table.counts.size(); i += folds) {
    const auto belief = reckoning->judge(i).year;
    middle[i] = 0;
    for (std::size_t t = 0; t < belief.p.size(); ++t) {
      middle[i] += belief.p[t] * (belief.span.first.value + static_cast<double>(t));
    }
  }
}

void run(const Typology& table) {
  if (table.counts.empty()) {
    fmt::print("{}: skipped, no table here\n", table.name);
    return;
  }
  std::vector<double> middle(table.counts.size());
  for (std::size_t fold = 0; fold < 5; ++fold) {
    judge_fold(table, fold, middle);
  }
  const auto known = ranks(table.place);
  fmt::print(
      "{}: {} units, {} types; rank correlation with the known order {:.3f}, first axis "
      "{:.3f}\n",
      table.name, table.counts.size(), table.counts[0].size(),
      correlation(ranks(middle), known),
      std::abs(correlation(ranks(first_axis(table.counts)), known)));
}

// "III/IV" and "III-V" are spans of phases, each phase 40 years long here.
std::optional<YearSpan> phases_of(const std::string& text) {
  static const std::map<std::string, int> phases{
      {"I", 0}, {"II", 1}, {"III", 2}, {"IV", 3}, {"V", 4}};
  constexpr int length = 40;
  std::optional<YearSpan> span;
  std::string word;
  for (const char c : text + "/") {
    if (c != '/' && c != '-') {
      word += c;
      continue;
    }
    const auto found = phases.find(word);
    if (found == phases.end()) {
      return std::nullopt;
    }
    const Year first{1000 + found->second * length};
    span = {span ? span->first : first, first + (length - 1)};
    word.clear();
  }
  return span;
}

std::optional<YearSpan> years_of(const std::string& from, const std::string& to) {
  const auto first = to_whole(from);
  const auto last = to_whole(to);
  if (!first || !last || *last < *first) {
    return std::nullopt;
  }
  return YearSpan{{static_cast<std::int32_t>(*first)}, {static_cast<std::int32_t>(*last)}};
}

Typology read(const std::string& name, std::size_t first_type, const auto& span_of) {
  Typology table{.name = name};
  const Path path = Path(BACKMARK_SHARED_DIR) / "data/typology-counts" / (name + ".csv");
  const auto rows = read_table(path);
  for (std::size_t r = 1; r < rows.size(); ++r) {
    const std::optional<YearSpan> span = span_of(rows[r]);
    std::vector<double> counts;
    double all = 0;
    for (std::size_t c = first_type; c < rows[r].size(); ++c) {
      counts.push_back(to_number(rows[r][c]).value_or(0));
      all += counts.back();
    }
    if (span && all > 0) {
      table.span.push_back(*span);
      table.place.push_back(0.5 * (span->first.value + span->last.value));
      table.counts.push_back(std::move(counts));
    }
  }
  return table;
}

}  // namespace

int main() {
  using Row = std::vector<std::string>;
  run(read("munsingen-graves", 1, [](const Row& row) {
    const auto grave = to_whole(row[0].substr(1));  // the graves' numbers are their order
    const Year year{grave ? 1000 + 3 * static_cast<std::int32_t>(*grave) : 0};
    return grave ? std::optional(YearSpan{year, year}) : std::nullopt;
  }));
  run(read("michelsberg-features", 5, [](const Row& row) { return phases_of(row[4]); }));
  run(read("loire-assemblages", 6, [](const Row& row) { return years_of(row[4], row[5]); }));
  return 0;
}
