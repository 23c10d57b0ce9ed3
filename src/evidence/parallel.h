// Work in fixed shares over any number of threads.
#pragma once

#include <cstddef>
#include <functional>

namespace backmark::evidence {

// Calls work(share) once for each share in [0, shares), on `threads` threads (0: all of the
// machine's), and returns when all are done. A share must write only what is its own; then the
// outcome does not depend on the number of threads. An exception in a share is thrown here.
void in_shares(std::size_t shares, int threads, const std::function<void(std::size_t)>& work);

}  // namespace backmark::evidence
