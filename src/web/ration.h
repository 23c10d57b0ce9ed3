// So many requests in so much time for each asker, so that none can take all.
#pragma once

#include <chrono>
#include <map>
#include <mutex>
#include <string>

namespace backmark::web {

class Ration {
 public:
  // `burst` at once, then `a_second` of them.
  Ration(double burst, double a_second) : burst_(burst), a_second_(a_second) {}

  // Takes one for `asker` at `seconds` of any steady clock; false: it has none left.
  bool take(const std::string& asker, double seconds);

 private:
  struct Left {
    double tokens = 0;
    double at = 0;
  };
  double burst_;
  double a_second_;
  std::mutex mutex_;
  std::map<std::string, Left> left_;
};

// Of the steady clock.
double steady_seconds();

}  // namespace backmark::web
