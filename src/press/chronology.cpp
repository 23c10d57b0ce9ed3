#include "press/chronology.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/text.h"
#include "words/fact.h"
#include "words/seen.h"
#include "words/why.h"

namespace backmark::press {

namespace {

constexpr double tail = 0.012;  // the band of a piece ends at the 1.2 and 98.8 points
constexpr double least_seen = 0.2;
constexpr std::size_t fewest_pieces = 2;  // of a fitting, to say when it was in use

std::size_t cells(YearSpan span) {
  return static_cast<std::size_t>(span.last.value - span.first.value + 1);
}

double normal_at_or_under(double z) {
  return 0.5 * std::erfc(-z / std::sqrt(2.0));
}

// The middle of the years in use, for the order of bands.
double middle_of(const FadeBand& band) {
  double sum = 0;
  double moment = 0;
  for (std::size_t at = 0; at < band.p.size(); ++at) {
    sum += band.p[at];
    moment += band.p[at] * static_cast<double>(at);
  }
  return sum > 0 ? moment / sum : 0;
}

void by_middle(std::vector<FadeBand>& bands) {
  std::stable_sort(bands.begin(), bands.end(), [](const FadeBand& a, const FadeBand& b) {
    return middle_of(a) < middle_of(b);
  });
}

PieceYears years_of(const model::Show& show,
                    const words::Place& place,
                    const model::YearBelief& belief,
                    YearSpan span) {
  PieceYears years{&place,         {},
                   belief.at(0.1), belief.at(0.5),
                   belief.at(0.9), words::written_year(show, place.piece->id, belief)};
  for (std::size_t at = 0; at < cells(span); ++at) {
    const int year = span.first.value + static_cast<int>(at);
    const int cell = year - belief.span.first.value;
    const bool inside = cell >= 0 && static_cast<std::size_t>(cell) < belief.p.size() &&
                        year >= belief.at(tail).value && year <= belief.at(1 - tail).value;
    years.p.push_back(inside ? belief.p[static_cast<std::size_t>(cell)] : 0.0);
  }
  return years;
}

}  // namespace

std::vector<double> in_use(const std::vector<const model::YearBelief*>& years, YearSpan span) {
  std::vector<double> p;
  for (std::size_t at = 0; !years.empty() && at < cells(span); ++at) {
    const Year year{span.first.value + static_cast<int>(at)};
    double none_yet = 1;
    double all_before = 1;
    for (const model::YearBelief* one : years) {
      const double by_then = one->inside(one->span.first, year);
      const double before = one->inside(one->span.first, {year.value - 1});
      none_yet *= 1 - by_then;
      all_before *= before;
    }
    p.push_back((1 - none_yet) * (1 - all_before));
  }
  return p;
}

std::optional<YearSpan> seen_in(const std::vector<const model::YearBelief*>& years,
                                YearSpan span) {
  const std::vector<double> p = in_use(years, span);
  std::optional<YearSpan> seen;
  for (std::size_t at = 0; at < p.size(); ++at) {
    const Year year{span.first.value + static_cast<int>(at)};
    if (p[at] >= least_seen) {
      seen = {seen ? seen->first : year, year};
    }
  }
  return seen;
}

std::vector<double> at_work(const model::Maker& maker, YearSpan span) {
  if (!maker.from && !maker.to) {
    return {};
  }
  std::vector<double> p;
  for (std::size_t at = 0; at < cells(span); ++at) {
    const double year = span.first.value + static_cast<double>(at);
    const double begun = maker.from ? normal_at_or_under((year + 0.5 - maker.from->value) /
                                                         std::max(0.25, maker.from_sd))
                                    : 1;
    const double not_ended =
        maker.to
            ? normal_at_or_under((maker.to->value + 0.5 - year) / std::max(0.25, maker.to_sd))
            : 1;
    p.push_back(begun * not_ended);
  }
  return p;
}

Chronology chronology(const PressJob& job, const words::Numbering& numbering, YearSpan span) {
  Chronology all{span, {}, {}, {}, 0};
  std::map<std::string, std::vector<const model::YearBelief*>> fittings;
  std::map<std::int32_t, bool> makers;
  for (const words::Place& place : numbering.places()) {
    const model::PieceBelief* belief = job.beliefs.of(place.piece->id);
    if (!place.pick->in_book || belief == nullptr || !belief->dated || belief->year.empty()) {
      all.left_out += place.pick->in_book ? 1 : 0;
      continue;
    }
    if (!belief->maker.makers.empty() && belief->maker.makers[0].p >= 0.5) {
      makers[belief->maker.makers[0].maker.value] = true;
    }
    PieceYears years = years_of(job.show, place, belief->year, span);
    if (years.high.value - years.low.value > widest_charted) {
      ++all.left_out;
      continue;
    }
    for (const words::SeenWord& fitting :
         words::words_seen(job.show, place.piece->id, {"fitting"})) {
      fittings[fitting.text].push_back(&belief->year);
    }
    all.pieces.push_back(std::move(years));
  }
  for (const auto& [name, years] : fittings) {
    if (years.size() >= fewest_pieces) {
      all.fittings.push_back({words::sentence(name), in_use(years, span)});
    }
  }
  for (const model::Maker& maker : job.show.all<model::Maker>()) {
    auto p = makers.count(maker.id.value) != 0 ? at_work(maker, span) : std::vector<double>();
    if (!p.empty()) {
      all.makers.push_back({maker.name, std::move(p)});
    }
  }
  by_middle(all.fittings);
  by_middle(all.makers);
  std::stable_sort(all.pieces.begin(), all.pieces.end(),
                   [](const PieceYears& a, const PieceYears& b) {
                     return std::pair(a.middle, a.low) < std::pair(b.middle, b.low);
                   });
  return all;
}

}  // namespace backmark::press
