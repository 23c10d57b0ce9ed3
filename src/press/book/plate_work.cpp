#include "press/book/plate_work.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "press/book/render.h"

namespace backmark::press::book {

namespace {

// Shadows are drawn, not photographed, in mm of the page whatever the scale: contact and fall.
const std::vector<draw::Shadow>& shadows() {
  static const std::vector<draw::Shadow> both{{0.35, 0.5, 0.4, {0.04, 0.04, 0, 0.24}},
                                              {1.0, 1.5, 1.7, {0.04, 0.04, 0, 0.30}}};
  return both;
}

// Two pixels a standard deviation of the sharper one: what is as soft as that shows no more.
constexpr double shadow_pixels_per_mm = 5;

int pixels(double mm) {
  return std::max(1, static_cast<int>(std::lround(mm * print_ppi / 25.4)));
}

void find_few_pixels(const Plate& plate, draw::PictureSize stored, int page, Problems& found) {
  const double ppi = stored.width / plate.box.width * 25.4;
  if (ppi < print_ppi - 0.5) {
    found.push_back(
        {Fault::conflict,
         fmt::format("a picture has {:.0f} pixels an inch at its printed size", ppi),
         fmt::format("page {}, photograph {}", page, plate.photograph->file),
         "photograph it again, nearer, or print it smaller"});
  }
}

}  // namespace

ReadyPlate ready_plate(const PressJob& job, const Plate& plate, int page) {
  ReadyPlate ready;
  const draw::PictureSize most{pixels(plate.box.width), pixels(plate.box.height)};
  auto photograph = job.photograph(*plate.photograph).then([&](const std::string& bytes) {
    return draw::ready_photograph(bytes, most);
  });
  if (!photograph) {
    Problem finding = photograph.problem();
    if (finding.where.empty()) {
      finding.where = "photograph " + plate.photograph->file;
    }
    ready.findings.push_back(std::move(finding));
    return ready;
  }
  find_few_pixels(plate, photograph->stored, page, ready.findings);
  if (plate.shadow) {
    ready.shadow =
        draw::shadow_of(photograph->picture, plate.box, shadows(), shadow_pixels_per_mm);
  }
  ready.inlay = std::move(photograph->inlay);
  return ready;
}

PlateWork::PlateWork(const PressJob& job,
                     const std::vector<std::unique_ptr<Page>>& pages,
                     unsigned threads) {
  for (const auto& page : pages) {
    for (const Plate& plate : page->plates) {
      tasks_.push_back({&plate, page->number, {}});
    }
  }
  const unsigned cores = threads != 0 ? threads : std::thread::hardware_concurrency();
  for (unsigned n = 0; n < std::clamp(cores, 1U, 64U); ++n) {
    threads_.emplace_back([this, &job] { work(job); });
  }
}

// Whoever stops early does not wait for pictures that nobody will see.
PlateWork::~PlateWork() {
  begun_ = tasks_.size();
}

void PlateWork::work(const PressJob& job) {
  for (std::size_t at = begun_++; at < tasks_.size(); at = begun_++) {
    Task& task = tasks_[at];
    try {
      task.done.set_value(ready_plate(job, *task.plate, task.page));
    } catch (...) {
      task.done.set_exception(std::current_exception());
    }
  }
}

ReadyPlate PlateWork::next() {
  if (taken_ == tasks_.size()) {
    throw BrokenPromise("more plates are drawn than the pages have");
  }
  return tasks_[taken_++].done.get_future().get();
}

}  // namespace backmark::press::book
