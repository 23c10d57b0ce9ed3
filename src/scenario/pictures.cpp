#include "scenario/pictures.h"

#include <algorithm>
#include <atomic>
#include <filesystem>
#include <mutex>
#include <optional>
#include <thread>

#include "draw/canvas.h"
#include "draw/small_png.h"
#include "scenario/drawing.h"
#include "scenario/extent.h"

namespace backmark::scenario {
namespace {

void draw_loop(Graver& graver) {
  const double y = -graver.work().height / 2 - 2.4;
  graver.wire([&](draw::Canvas& c) { c.ellipse({0, y}, 2.6, 3.4); }, 1.4, graver.metal());
}

void draw_view(Graver& graver, model::View view) {
  const Work& work = graver.work();
  const bool corded = work.worn_on_cord();
  switch (view) {
    case model::View::tips:
      draw_tips(graver);
      return;
    case model::View::mark:
      draw_mark_detail(graver, extent(work, view));
      return;
    case model::View::back:
      if (work.form == Form::pendant) {
        draw_loop(graver);
      }
      draw_back_plate(graver);
      if (corded) {
        draw_cord(graver);
      }
      draw_fitting(graver);
      return;
    default:
      if (corded) {
        draw_cord(graver);
      }
      if (work.form == Form::pendant) {
        draw_loop(graver);
      }
      draw_front(graver);
  }
}

Result<Done> write_shot(const Scenario& scenario, const Path& folder, const Shot& shot) {
  return write_file(folder / shot.file, draw::encode_small_png(picture(scenario, shot)));
}

}  // namespace

draw::Picture picture(const Scenario& scenario, const Shot& shot) {
  const Work& work = scenario.works[shot.work];
  const draw::Box box = extent(work, shot.view);
  draw::Canvas canvas = draw::Canvas::picture(
      {shot.width_px / shot.pixels_per_mm, shot.height_px / shot.pixels_per_mm},
      shot.pixels_per_mm);
  canvas.translate(-box.x, -box.y);
  Graver graver(canvas, work);
  draw_view(graver, shot.view);
  return canvas.snapshot();
}

Result<Done> write_photographs(const Scenario& scenario, const Path& folder, unsigned threads) {
  std::error_code failed;
  std::filesystem::create_directories(folder, failed);
  if (failed) {
    return Problem{Fault::io, "the folder cannot be made", folder.string(), failed.message()};
  }
  const auto all = shots(scenario);
  std::atomic<std::size_t> next{0};
  std::mutex guard;
  std::optional<Problem> problem;
  {
    std::vector<std::jthread> workers;
    for (unsigned i = 0; i < std::max(1U, threads); ++i) {
      workers.emplace_back([&] {
        for (std::size_t at = next++; at < all.size(); at = next++) {
          if (auto written = write_shot(scenario, folder, all[at]); !written) {
            const std::scoped_lock lock(guard);
            problem = problem ? problem : written.problem();
            next = all.size();
          }
        }
      });
    }
  }
  if (problem) {
    return *problem;
  }
  return Done{};
}

}  // namespace backmark::scenario
