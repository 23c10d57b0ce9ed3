#include "web/later.h"

#include <iostream>
#include <sys/resource.h>
#include <unistd.h>

namespace backmark::web {

namespace {

constexpr int niceness = 10;

}  // namespace

Later::Later() : thread_([this](const std::stop_token& over) { work(over); }) {}

Later::~Later() = default;

void Later::ask(const std::string& name, Job job) {
  {
    const std::lock_guard lock(mutex_);
    jobs_[name] = std::move(job);
  }
  came_.notify_one();
}

void Later::work(const std::stop_token& over) {
  // Of this thread and of those that it starts; where it is refused, nothing is lost but haste.
  (void)::setpriority(PRIO_PROCESS, static_cast<id_t>(::gettid()), niceness);
  while (true) {
    Job job;
    {
      std::unique_lock lock(mutex_);
      if (!came_.wait(lock, over, [this] { return !jobs_.empty(); }) || over.stop_requested()) {
        return;
      }
      job = std::move(jobs_.begin()->second);
      jobs_.erase(jobs_.begin());
    }
    try {
      job(over);
    } catch (const std::exception& fault) {
      std::cerr << "backmark: a fault of the program: " << fault.what() << std::endl;
    }
  }
}

}  // namespace backmark::web
