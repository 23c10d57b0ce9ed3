#include "scenario/pictures.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <doctest/doctest.h>
#include <filesystem>

#include "draw/geometry.h"

using namespace backmark;
using namespace backmark::scenario;

namespace {

Scenario made(int pieces) {
  auto scenario = make({.pieces = pieces});
  REQUIRE(scenario);
  return std::move(*scenario);
}

// The box of all pixels that are more than half opaque, in millimetres.
draw::Size inked(const draw::Picture& picture, double pixels_per_mm) {
  int left = picture.width;
  int right = -1;
  int top = picture.height;
  int bottom = -1;
  for (int y = 0; y < picture.height; ++y) {
    for (int x = 0; x < picture.width; ++x) {
      if (picture.at(x, y)[3] > 127) {
        left = std::min(left, x);
        right = std::max(right, x);
        top = std::min(top, y);
        bottom = std::max(bottom, y);
      }
    }
  }
  return {(right - left + 1) / pixels_per_mm, (bottom - top + 1) / pixels_per_mm};
}

}  // namespace

TEST_CASE("a piece is drawn as large as it was measured") {
  const Scenario scenario = made(312);
  int tried = 0;
  for (const Shot& shot : shots(scenario)) {
    const Work& work = scenario.works[shot.work];
    if (work.worn_on_cord() || work.form == Form::pendant || shot.view == model::View::mark ||
        tried == 30) {
      continue;
    }
    ++tried;
    const draw::Size size = inked(picture(scenario, shot), shot.pixels_per_mm);
    CAPTURE(shot.file);
    CHECK(std::abs(size.width - work.width) < 0.5);
    CHECK(std::abs(size.height - work.height) < 0.5);
  }
  CHECK(tried == 30);
}

TEST_CASE("a photograph has the pixels that its record states, and nothing at its edge") {
  const Scenario scenario = made(40);
  for (const Shot& shot : shots(scenario)) {
    const draw::Picture drawn = picture(scenario, shot);
    CAPTURE(shot.file);
    CHECK(drawn.width == shot.width_px);
    CHECK(drawn.height == shot.height_px);
    if (shot.view == model::View::mark) {
      CHECK(drawn.at(0, 0)[3] == 255);
      continue;
    }
    bool cut = false;
    for (int x = 0; x < drawn.width; ++x) {
      cut = cut || drawn.at(x, 0)[3] > 0 || drawn.at(x, drawn.height - 1)[3] > 0;
    }
    for (int y = 0; y < drawn.height; ++y) {
      cut = cut || drawn.at(0, y)[3] > 0 || drawn.at(drawn.width - 1, y)[3] > 0;
    }
    CHECK(!cut);
  }
}

TEST_CASE("the same piece is drawn the same twice, and hidden facts do not show") {
  Scenario scenario = made(60);
  const auto all = shots(scenario);
  const Shot& shot = all[7];
  const auto before = draw::encode_png(picture(scenario, shot));
  CHECK(before == draw::encode_png(picture(scenario, shot)));
  scenario.works[shot.work].made = Year{1066};
  scenario.works[shot.work].maker = 2;
  scenario.works[shot.work].cord_replaced = Year{1067};
  CHECK(before == draw::encode_png(picture(scenario, shot)));
}

TEST_SUITE("slow") {
  TEST_CASE("the whole show is drawn in seconds and fits in 60 MB") {
    const Scenario scenario = made(312);
    const Path folder = std::filesystem::temp_directory_path() / "backmark-demo-photos";
    std::filesystem::remove_all(folder);
    const auto start = std::chrono::steady_clock::now();
    REQUIRE(write_photographs(scenario, folder, 2));
    const double seconds =
        std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    std::uintmax_t bytes = 0;
    std::size_t files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
      bytes += entry.file_size();
      ++files;
    }
    MESSAGE(files << " photographs, " << bytes / 1'000'000 << " MB, " << seconds << " s");
    CHECK(files == shots(scenario).size());
    CHECK(bytes < 60'000'000);
    std::filesystem::remove_all(folder);
  }
}
