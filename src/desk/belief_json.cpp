#include "desk/belief_json.h"

#include <algorithm>
#include <cmath>

#include "base/json.h"
#include "base/text.h"

namespace backmark::desk {

Json years_drawn(const model::YearBelief& year) {
  if (year.empty()) {
    return Json();
  }
  constexpr int beads = 20;
  Json quantiles = Json::array();
  for (int i = 0; i < beads; ++i) {
    quantiles.push_back(year.at((i + 0.5) / beads).value);
  }
  constexpr double tail = 0.012;
  const int first = year.at(tail).value;
  const int last = year.at(1 - tail).value;
  const double most = *std::max_element(year.p.begin(), year.p.end());
  std::string digits;
  for (int t = first; t <= last; ++t) {
    const double p = year.p[static_cast<std::size_t>(t - year.span.first.value)];
    digits += static_cast<char>('0' + std::lround(9 * p / most));
  }
  return {{"p10", year.at(0.1).value},
          {"p50", year.at(0.5).value},
          {"p90", year.at(0.9).value},
          {"q", quantiles},
          {"from", first},
          {"p", digits}};
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
