// Activities with three-point times, and the pass forward and backward over them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace backmark::curate {

// Least, most likely and greatest time, in any one unit; least <= likely <= greatest.
struct ThreePoint {
  double least = 0;
  double likely = 0;
  double greatest = 0;

  // (a + 4m + b) / 6 and ((b - a) / 6)^2, as in the Program Evaluation and Review Technique
  // (Malcolm, Roseboom, Clark and Fazar 1959, Operations Research 7).
  double expected() const { return (least + 4 * likely + greatest) / 6; }
  double variance() const {
    const double sixth = (greatest - least) / 6;
    return sixth * sixth;
  }
};

struct Activity {
  std::string name;
  std::vector<std::string> after;  // names of what must be done before it
  ThreePoint time;
};

// Activities in an order in which each stands behind all that it waits for.
class Network {
 public:
  // Problems: bad_input (a name twice or empty; one waits for a name that is not there; times
  // that do not rise or are negative; a circle, with its names).
  static Result<Network> of(std::vector<Activity> activities);

  const std::vector<Activity>& activities() const { return activities_; }
  std::size_t size() const { return activities_.size(); }
  // Places, in activities(), of what activity `at` waits for, and of what waits for it.
  const std::vector<std::size_t>& before(std::size_t at) const { return before_[at]; }
  const std::vector<std::size_t>& behind(std::size_t at) const { return behind_[at]; }
  // Places in the order of work.
  const std::vector<std::size_t>& order() const { return order_; }
  // Place of a name; size() if there is none.
  std::size_t find(std::string_view name) const;

 private:
  std::vector<Activity> activities_;
  std::vector<std::vector<std::size_t>> before_;
  std::vector<std::vector<std::size_t>> behind_;
  std::vector<std::size_t> order_;
};

// Times from the start of the whole, one of each for every activity.
struct Pass {
  std::vector<double> earliest_start;
  std::vector<double> earliest_finish;
  std::vector<double> latest_start;
  std::vector<double> latest_finish;
  double duration = 0;

  double slack(std::size_t at) const { return latest_start[at] - earliest_start[at]; }
};

// The pass with a time for each activity (place by place); linear in activities and links.
Pass pass_over(const Network& network, const std::vector<double>& times);
// With the expected times.
Pass pass_over(const Network& network);

// The critical path: places from first to last. Of several the one with the greatest variance,
// which is the one most likely to run late; of those the first by the order of activities.
std::vector<std::size_t> critical_path(const Network& network, const Pass& pass);
double path_variance(const Network& network, const std::vector<std::size_t>& path);

// Chance that the critical path alone is done by `due`, taken as normal. Optimistic where other
// paths are nearly as long.
double chance_along_path(const Network& network, double due);

// "A:-:5/6/7|B:A,C:1/3/5": name, what it waits for ("-": nothing), one time or three.
Result<Network> read_activities(std::string_view text);
// "1-2:7|1-3:10": activities as arrows between events; each is named as it is written.
Result<Network> read_arrows(std::string_view text);

}  // namespace backmark::curate
