// Pictures of the plates, read and packed on all cores ahead of whoever draws the pages.
#pragma once

#include <atomic>
#include <future>
#include <memory>
#include <optional>
#include <thread>
#include <vector>

#include "draw/inlay.h"
#include "press/book/page.h"
#include "press/job.h"

namespace backmark::press::book {

struct ReadyPlate {
  std::optional<draw::ReadyShadow> shadow;
  std::optional<draw::Inlay> inlay;  // nothing: the photograph is missing or broken
  Problems findings;
};

// From the photograph's bytes to what the file will hold. Same plate, same result.
ReadyPlate ready_plate(const PressJob& job, const Plate& plate, int page);

// Works through all plates of the pages, in their order, on `threads` threads (0: as many as
// there are cores). The job and the pages must outlive it, and its loader of photographs must
// bear several callers at once.
class PlateWork {
 public:
  PlateWork(const PressJob& job,
            const std::vector<std::unique_ptr<Page>>& pages,
            unsigned threads);
  ~PlateWork();
  PlateWork(const PlateWork&) = delete;
  PlateWork& operator=(const PlateWork&) = delete;

  // The next plate, waited for. Broken promise: there is none left.
  ReadyPlate next();

 private:
  struct Task {
    const Plate* plate = nullptr;
    int page = 0;
    std::promise<ReadyPlate> done;
  };
  void work(const PressJob& job);

  std::vector<Task> tasks_;
  std::size_t taken_ = 0;
  std::atomic<std::size_t> begun_ = 0;
  std::vector<std::jthread> threads_;  // last: ends before what it works on
};

}  // namespace backmark::press::book
