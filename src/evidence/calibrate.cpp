#include "evidence/calibrate.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace backmark::evidence {

namespace {

using model::SaidShare;
using model::Trust;
using model::YearCalibration;

constexpr double z_95 = 1.959964;
constexpr double z_99 = 2.575829;
constexpr double least_mass = 1e-6;  // what a known span is never given less than
constexpr int rank_cells = 10;

double median(std::vector<double> values) {
  if (values.empty()) {
    return 0;
  }
  std::sort(values.begin(), values.end());
  const std::size_t half = values.size() / 2;
  return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

// Ranks below, and up to, each year of the answer; the mean of `part` over them.
template <class Part>
double over_answer(const YearTrial& trial, Part part) {
  double sum = 0;
  double below = 0;
  Year year = trial.axis.first;
  for (const double p : trial.p) {
    if (trial.stated.contains(year)) {
      sum += part(below, below + p);
    }
    below += p;
    year = year + 1;
  }
  return sum / trial.stated.length();
}

// The part of [low, high] inside [from, to].
double part_inside(double low, double high, double from, double to) {
  if (high - low < 1e-12) {
    return low >= from && low <= to ? 1 : 0;
  }
  return std::max(0.0, std::min(high, to) - std::max(low, from)) / (high - low);
}

double mass_on(const YearTrial& trial) {
  double mass = 0;
  Year year = trial.axis.first;
  for (const double p : trial.p) {
    mass += trial.stated.contains(year) ? p : 0;
    year = year + 1;
  }
  return mass;
}

Trust trust_of(double said, double seen, double trials) {
  if (trials < least_lots) {
    return Trust::too_few;
  }
  const model::SeenShare open = wilson(seen, trials, z_99);
  if (said - seen > slack && said > open.high) {
    return Trust::too_sure;
  }
  return seen - said > slack && said < open.low ? Trust::too_cautious : Trust::trusted;
}

SaidShare said_share(const std::vector<YearTrial>& trials, double said, double lots) {
  double seen = 0;
  for (const YearTrial& trial : trials) {
    seen += covered(trial, said) / static_cast<double>(trials.size());
  }
  return {said, wilson(seen, lots, z_95), trials.size(), trust_of(said, seen, lots)};
}

std::vector<double> rank_histogram(const std::vector<YearTrial>& trials) {
  std::vector<double> cells(rank_cells, 0);
  for (const YearTrial& trial : trials) {
    for (int cell = 0; cell < rank_cells; ++cell) {
      const double from = static_cast<double>(cell) / rank_cells;
      const double to = static_cast<double>(cell + 1) / rank_cells;
      cells[static_cast<std::size_t>(cell)] += over_answer(
          trial, [&](double low, double high) { return part_inside(low, high, from, to); });
    }
  }
  const double sum = std::accumulate(cells.begin(), cells.end(), 0.0);
  for (double& cell : cells) {
    cell = sum > 0 ? cell / sum : 0;
  }
  return cells;
}

double error_of(const YearTrial& trial) {
  const Year middle = quantile(trial.axis, trial.p, 0.5);
  return std::max({0, trial.stated.first - middle, middle - trial.stated.last});
}

double width_of(const YearTrial& trial) {
  return quantile(trial.axis, trial.p, 0.9) - quantile(trial.axis, trial.p, 0.1);
}

model::BeforeCheck check_before(const std::vector<YearTrial>& trials, Year year) {
  model::BeforeCheck check{.year = year};
  double off[10] = {};
  for (const YearTrial& trial : trials) {
    const bool earlier = trial.stated.last < year;
    if (!earlier && trial.stated.first < year) {
      continue;
    }
    double said = 0;
    Year at = trial.axis.first;
    for (const double p : trial.p) {
      said += at < year ? p : 0;
      at = at + 1;
    }
    off[std::clamp(static_cast<int>(said * 10), 0, 9)] += said - (earlier ? 1 : 0);
    check.pieces += 1;
    check.sure += said > 0.95 || said < 0.05 ? 1U : 0U;
    check.sure_right += (said > 0.95 && earlier) || (said < 0.05 && !earlier) ? 1U : 0U;
  }
  for (const double bin : off) {
    check.calibration_error +=
        check.pieces > 0 ? std::abs(bin) / static_cast<double>(check.pieces) : 0;
  }
  return check;
}

// At the quarters of the known years.
std::vector<model::BeforeCheck> checks_before(const std::vector<YearTrial>& trials) {
  std::vector<Year> years;
  for (const YearTrial& trial : trials) {
    years.push_back(trial.stated.first + trial.stated.length() / 2);
  }
  std::sort(years.begin(), years.end());
  std::vector<model::BeforeCheck> checks;
  for (const std::size_t quarter : {1U, 2U, 3U}) {
    const Year year = years[quarter * (years.size() - 1) / 4];
    if (checks.empty() || checks.back().year < year) {
      checks.push_back(check_before(trials, year));
    }
  }
  return checks;
}

Trust together(const YearCalibration& years) {
  Trust trust = Trust::trusted;
  for (const SaidShare& share : years.coverage) {
    if (share.trust == Trust::too_few || share.trust == Trust::too_sure) {
      return share.trust;
    }
    trust = share.trust == Trust::too_cautious ? share.trust : trust;
  }
  return trust;
}

}  // namespace

double covered(const YearTrial& trial, double share) {
  return over_answer(trial, [&](double low, double high) {
    return part_inside(low, high, (1 - share) / 2, (1 + share) / 2);
  });
}

double effective_lots(const std::vector<int>& lots) {
  std::map<int, double> sizes;
  for (const int lot : lots) {
    sizes[lot] += 1;
  }
  double squares = 0;
  for (const auto& [lot, size] : sizes) {
    squares += size * size;
  }
  const auto n = static_cast<double>(lots.size());
  return squares > 0 ? n * n / squares : 0;
}

model::SeenShare wilson(double share, double trials, double z) {
  if (trials <= 0) {
    return {share, 0, 1, 0};
  }
  const double z2 = z * z / trials;
  const double middle = (share + z2 / 2) / (1 + z2);
  const double half =
      z / (1 + z2) * std::sqrt(share * (1 - share) / trials + z2 / (4 * trials));
  return {share, std::max(0.0, middle - half), std::min(1.0, middle + half), trials};
}

YearCalibration score_years(const std::vector<YearTrial>& trials) {
  YearCalibration years{.pieces = trials.size()};
  years.ranks.assign(rank_cells, 0);
  if (trials.empty()) {
    return years;
  }
  std::vector<int> lots;
  std::vector<double> widths;
  std::vector<double> errors;
  const auto n = static_cast<double>(trials.size());
  for (const YearTrial& trial : trials) {
    lots.push_back(trial.lot);
    widths.push_back(width_of(trial));
    errors.push_back(error_of(trial));
    years.log_score += std::log(std::max(least_mass, mass_on(trial))) / n;
    years.log_score_any += std::log(std::max(least_mass, trial.any_mass)) / n;
  }
  years.lots = effective_lots(lots);
  years.median_width_80 = median(std::move(widths));
  years.median_error = median(std::move(errors));
  const double shares[3] = {0.5, 0.8, 0.95};
  for (std::size_t s = 0; s < 3; ++s) {
    years.coverage[s] = said_share(trials, shares[s], years.lots);
  }
  for (int step = 1; step < 20; ++step) {
    years.steps.push_back(said_share(trials, step / 20.0, years.lots));
  }
  years.ranks = rank_histogram(trials);
  years.before = checks_before(trials);
  years.trust = together(years);
  return years;
}

std::vector<model::CalibrationGroup> score_groups(const std::vector<YearTrial>& trials) {
  std::map<std::pair<std::string, std::string>, std::vector<YearTrial>> sorted;
  for (const YearTrial& trial : trials) {
    for (const auto& [kind, name] : trial.groups) {
      sorted[{kind, name}].push_back(trial);
    }
  }
  std::vector<model::CalibrationGroup> groups;
  for (const auto& [key, members] : sorted) {
    groups.push_back({key.first, key.second, score_years(members)});
  }
  return groups;
}

}  // namespace backmark::evidence
