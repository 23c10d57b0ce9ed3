// A value that copies share until one of them is about to change it.
#pragma once

#include <atomic>
#include <memory>
#include <utility>

namespace backmark {

// Reading is safe from several threads; whoever writes to a copy must be alone with that copy.
// What read() gave stays valid only as long as some copy holds the same value.
template <class T>
class Shared {
 public:
  Shared() : value_(std::make_shared<T>()) {}
  explicit Shared(T value) : value_(std::make_shared<T>(std::move(value))) {}

  const T& read() const { return *value_; }

  // The value for this copy alone: made anew if another one holds it too.
  T& write() {
    if (value_.use_count() != 1) {
      value_ = std::make_shared<T>(*value_);
    }
    // The last other holder may have let go just now; what it read is read before we write.
    std::atomic_thread_fence(std::memory_order_acquire);
    return *value_;
  }

 private:
  std::shared_ptr<T> value_;
};

}  // namespace backmark
