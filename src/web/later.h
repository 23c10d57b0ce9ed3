// Questions that were answered from what was last weighed, asked again behind everybody's back,
// one at a time, so that the next who asks finds the answer of the show as it stands.
#pragma once

#include <condition_variable>
#include <functional>
#include <map>
#include <mutex>
#include <stop_token>
#include <string>
#include <thread>

namespace backmark::web {

class Later {
 public:
  using Job = std::function<void(const std::stop_token&)>;

  Later();
  ~Later();  // a job in hand is told to stop and waited for

  // Of two jobs of one name that wait, the newer is done. Whoever answers requests goes first:
  // the thread is a nice one.
  void ask(const std::string& name, Job job);

 private:
  void work(const std::stop_token& over);

  std::mutex mutex_;
  std::condition_variable_any came_;
  std::map<std::string, Job> jobs_;
  std::jthread thread_;  // last: it uses the others
};

}  // namespace backmark::web
