#include "desk/belief_json.h"

#include <algorithm>
#include <cmath>

#include "base/json.h"
#include "base/text.h"

namespace backmark::desk {

DrawnYears drawn_years(const model::YearBelief& year) {
  constexpr double tail = 0.012;
  DrawnYears drawn;
  // The shares in rising order, each with the place of its year: one walk along the curve.
  std::vector<std::pair<double, int*>> wanted = {
      {0.1, &drawn.p10}, {0.5, &drawn.p50}, {0.9, &drawn.p90}, {tail, &drawn.from}};
  int last = 0;
  wanted.emplace_back(1 - tail, &last);
  for (std::size_t i = 0; i < drawn.q.size(); ++i) {
    wanted.emplace_back((static_cast<double>(i) + 0.5) / static_cast<double>(drawn.q.size()),
                        &drawn.q[i]);
  }
  std::sort(wanted.begin(), wanted.end());
  double sum = 0;
  auto next = wanted.begin();
  for (std::size_t cell = 0; cell < year.p.size() && next != wanted.end(); ++cell) {
    sum += year.p[cell];
    while (next != wanted.end() && sum >= next->first - 1e-12) {
      *next++->second = year.span.first.value + static_cast<int>(cell);
    }
  }
  for (; next != wanted.end(); ++next) {
    *next->second = year.span.last.value;
  }
  const double most = *std::max_element(year.p.begin(), year.p.end());
  for (int t = drawn.from; t <= last; ++t) {
    const double p = year.p[static_cast<std::size_t>(t - year.span.first.value)];
    drawn.p += static_cast<char>('0' + std::lround(9 * p / most));
  }
  return drawn;
}

Json years_drawn(const model::YearBelief& year) {
  if (year.empty()) {
    return Json();
  }
  const DrawnYears drawn = drawn_years(year);
  return {{"p10", drawn.p10}, {"p50", drawn.p50},   {"p90", drawn.p90},
          {"q", drawn.q},     {"from", drawn.from}, {"p", drawn.p}};
}

Json makers_drawn(const model::Show& show, const model::MakerBelief& maker) {
  Json list = Json::array();
  const auto add = [&list](Json name, double p) {
    list.push_back(Json::array({std::move(name), std::round(1000 * p) / 1000}));
  };
  for (const model::MakerChance& chance : maker.makers) {
    if (const model::Maker* known = show.find(chance.maker); known && chance.p >= 0.005) {
      add(known->name, chance.p);
    }
  }
  add(nullptr, maker.unrecorded);
  return list;
}

Json pictures_drawn(const model::Show& show, model::Id<model::Piece> piece) {
  static constexpr const char* names[] = {"front", "back", "tips", "mark", "side", "detail"};
  Json list = Json::array();
  for (const model::Photograph& one : show.photographs_of(piece)) {
    const double mm = one.pixels_per_mm > 0 ? 1 / one.pixels_per_mm : 0;
    const auto measure = [mm](std::int32_t px) { return std::round(100 * mm * px) / 100; };
    Json picture = {{"view", names[static_cast<std::size_t>(one.view)]},
                    {"v", one.id.value},
                    {"w_mm", measure(one.width_px)},
                    {"h_mm", measure(one.height_px)}};
    if (mm == 0 && one.height_px > 0) {
      picture["shape"] = std::round(1000.0 * one.width_px / one.height_px) / 1000;
    }
    list.push_back(std::move(picture));
  }
  return list;
}

}  // namespace backmark::desk
