#include "desk/belief_json.h"

#include <algorithm>
#include <cmath>

#include "base/json.h"
#include "base/text.h"

namespace backmark::desk {

namespace {

// The shares that are drawn, in rising order, each with its place in `Found`.
constexpr std::size_t beads = std::tuple_size_v<decltype(DrawnYears::q)>;
enum Place : std::size_t { at_p10 = beads, at_p50, at_p90, at_from, at_last, places };
using Found = std::array<int, places>;

const std::array<std::pair<double, std::size_t>, places>& drawn_shares() {
  static const auto shares = [] {
    constexpr double tail = 0.012;
    std::array<std::pair<double, std::size_t>, places> list = {};
    for (std::size_t i = 0; i < beads; ++i) {
      list[i] = {(static_cast<double>(i) + 0.5) / static_cast<double>(beads), i};
    }
    list[at_p10] = {0.1, at_p10};
    list[at_p50] = {0.5, at_p50};
    list[at_p90] = {0.9, at_p90};
    list[at_from] = {tail, at_from};
    list[at_last] = {1 - tail, at_last};
    std::sort(list.begin(), list.end());
    return list;
  }();
  return shares;
}

// One walk along the curve for all of them, as YearBelief::at finds each.
Found found_years(const model::YearBelief& year) {
  Found found;
  found.fill(year.span.last.value);
  const auto& shares = drawn_shares();
  double sum = 0;
  auto next = shares.begin();
  for (std::size_t cell = 0; cell < year.p.size() && next != shares.end(); ++cell) {
    sum += year.p[cell];
    while (next != shares.end() && sum >= next->first - 1e-12) {
      found[next++->second] = year.span.first.value + static_cast<int>(cell);
    }
  }
  return found;
}

}  // namespace

DrawnYears drawn_years(const model::YearBelief& year) {
  const Found found = found_years(year);
  DrawnYears drawn{found[at_p10], found[at_p50], found[at_p90], {}, found[at_from], {}};
  std::copy_n(found.begin(), beads, drawn.q.begin());
  const double most = *std::max_element(year.p.begin(), year.p.end());
  for (int t = drawn.from; t <= found[at_last]; ++t) {
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

DrawnPicture drawn_picture(const model::Photograph& photograph) {
  static constexpr const char* names[] = {"front", "back", "tips", "mark", "side", "detail"};
  const double mm = photograph.pixels_per_mm > 0 ? 1 / photograph.pixels_per_mm : 0;
  const auto measure = [mm](std::int32_t px) { return std::round(100 * mm * px) / 100; };
  DrawnPicture picture{.view = names[static_cast<std::size_t>(photograph.view)],
                       .v = photograph.id.value,
                       .w_mm = measure(photograph.width_px),
                       .h_mm = measure(photograph.height_px)};
  if (mm == 0 && photograph.height_px > 0) {
    picture.shape = std::round(1000.0 * photograph.width_px / photograph.height_px) / 1000;
  }
  return picture;
}

Json pictures_drawn(const model::Show& show, model::Id<model::Piece> piece) {
  Json list = Json::array();
  for (const model::Photograph& one : show.photographs_of(piece)) {
    const DrawnPicture drawn = drawn_picture(one);
    Json picture = {
        {"view", drawn.view}, {"v", drawn.v}, {"w_mm", drawn.w_mm}, {"h_mm", drawn.h_mm}};
    if (drawn.shape > 0) {
      picture["shape"] = drawn.shape;
    }
    list.push_back(std::move(picture));
  }
  return list;
}

}  // namespace backmark::desk
