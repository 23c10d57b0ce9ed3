#include "evidence/parallel.h"

#include <algorithm>
#include <atomic>
#include <exception>
#include <thread>
#include <vector>

namespace backmark::evidence {

void in_shares(std::size_t shares, int threads, const std::function<void(std::size_t)>& work) {
  const auto machine = static_cast<int>(std::max(1U, std::thread::hardware_concurrency()));
  const auto wanted = static_cast<std::size_t>(threads > 0 ? threads : machine);
  std::atomic<std::size_t> next{0};
  std::vector<std::exception_ptr> faults(shares);
  const auto run = [&] {
    for (std::size_t share = next++; share < shares; share = next++) {
      try {
        work(share);
      } catch (...) {
        faults[share] = std::current_exception();
      }
    }
  };
  {
    std::vector<std::jthread> helpers;
    for (std::size_t i = 1; i < std::min(wanted, shares); ++i) {
      helpers.emplace_back(run);
    }
    run();
  }
  for (const auto& fault : faults) {
    if (fault) {
      std::rethrow_exception(fault);
    }
  }
}

}  // namespace backmark::evidence
