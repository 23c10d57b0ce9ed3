// How long work reports and is stopped.
#pragma once

#include <functional>
#include <stop_token>

#include "base/result.h"

namespace backmark::evidence {

struct Watch {
  std::function<void(double share)> progress;  // 0 to 1, never falling; may be empty
  std::stop_token stop;
  int threads = 0;  // 0: as many as the machine has; the answer is the same for any number

  void tell(double share) const {
    if (progress) {
      progress(share);
    }
  }

  // The same watch over one stretch of longer work.
  Watch part(double from, double to) const {
    Watch stretch = *this;
    if (progress) {
      stretch.progress = [whole = progress, from, to](double share) {
        whole(from + (to - from) * share);
      };
    }
    return stretch;
  }
};

inline Problem stopped() {
  return {Fault::refused, "the reckoning was stopped before it was done", "", "start it again"};
}

}  // namespace backmark::evidence
