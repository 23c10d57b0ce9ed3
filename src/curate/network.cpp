#include "curate/network.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>

#include "base/text.h"

namespace backmark::curate {

namespace {

using Places = std::map<std::string, std::size_t, std::less<>>;

Problem faulty(std::string what, std::string fix) {
  return {Fault::bad_input, std::move(what), "", std::move(fix)};
}

std::optional<Problem> trouble_with(const Activity& one) {
  const ThreePoint& time = one.time;
  if (one.name.empty()) {
    return faulty("an activity has no name", "give each activity a short name");
  }
  const bool rising =
      time.least >= 0 && time.least <= time.likely && time.likely <= time.greatest;
  if (!rising || !std::isfinite(time.greatest)) {
    return faulty(fmt::format("the times of \"{}\" do not rise: {:g}, {:g}, {:g}", one.name,
                              time.least, time.likely, time.greatest),
                  "write the least, the likely and the greatest time, none below 0");
  }
  return std::nullopt;
}

std::vector<std::string> names_of(const Places& places) {
  std::vector<std::string> names;
  for (const auto& [name, place] : places) {
    names.push_back(name);
  }
  return names;
}

// Kahn's order, of those that are free the first by place; shorter than all if there is a
// circle.
std::vector<std::size_t> order_of(const std::vector<std::vector<std::size_t>>& before,
                                  const std::vector<std::vector<std::size_t>>& behind) {
  std::vector<std::size_t> waits(before.size());
  std::vector<std::size_t> order;
  for (std::size_t i = 0; i < before.size(); ++i) {
    waits[i] = before[i].size();
    if (waits[i] == 0) {
      order.push_back(i);
    }
  }
  for (std::size_t done = 0; done < order.size(); ++done) {
    for (const std::size_t next : behind[order[done]]) {
      if (--waits[next] == 0) {
        order.push_back(next);
      }
    }
  }
  return order;
}

std::string left_out(const std::vector<Activity>& activities,
                     const std::vector<std::size_t>& order) {
  std::vector<bool> in(activities.size(), false);
  for (const std::size_t at : order) {
    in[at] = true;
  }
  std::vector<std::string> names;
  for (std::size_t i = 0; i < activities.size(); ++i) {
    if (!in[i] && names.size() < 8) {
      names.push_back(activities[i].name);
    }
  }
  return join(names, ", ");
}

}  // namespace

Result<Network> Network::of(std::vector<Activity> activities) {
  Network made;
  Places places;
  for (std::size_t i = 0; i < activities.size(); ++i) {
    if (auto trouble = trouble_with(activities[i])) {
      return *trouble;
    }
    if (!places.emplace(activities[i].name, i).second) {
      return faulty(fmt::format("\"{}\" is the name of two activities", activities[i].name),
                    "give each activity a name of its own");
    }
  }
  made.before_.resize(activities.size());
  made.behind_.resize(activities.size());
  for (std::size_t i = 0; i < activities.size(); ++i) {
    for (const std::string& name : activities[i].after) {
      const auto at = places.find(name);
      if (at == places.end()) {
        const auto near = closest(name, names_of(places));
        return faulty(fmt::format("\"{}\" waits for \"{}\", which is no activity",
                                  activities[i].name, name),
                      near ? fmt::format("did you mean \"{}\"?", *near)
                           : "write the name of an activity of the list");
      }
      made.before_[i].push_back(at->second);
      made.behind_[at->second].push_back(i);
    }
  }
  made.order_ = order_of(made.before_, made.behind_);
  if (made.order_.size() < activities.size()) {
    return faulty(fmt::format("activities wait for each other in a circle: {}",
                              left_out(activities, made.order_)),
                  "take out one of the links");
  }
  made.activities_ = std::move(activities);
  return made;
}

std::size_t Network::find(std::string_view name) const {
  const auto at = std::find_if(activities_.begin(), activities_.end(),
                               [name](const Activity& one) { return one.name == name; });
  return static_cast<std::size_t>(at - activities_.begin());
}

Pass pass_over(const Network& network, const std::vector<double>& times) {
  const std::size_t n = network.size();
  Pass pass;
  pass.earliest_start.assign(n, 0);
  pass.earliest_finish.assign(n, 0);
  for (const std::size_t at : network.order()) {
    for (const std::size_t before : network.before(at)) {
      pass.earliest_start[at] = std::max(pass.earliest_start[at], pass.earliest_finish[before]);
    }
    pass.earliest_finish[at] = pass.earliest_start[at] + times[at];
    pass.duration = std::max(pass.duration, pass.earliest_finish[at]);
  }
  pass.latest_finish.assign(n, pass.duration);
  pass.latest_start.assign(n, 0);
  for (auto at = network.order().rbegin(); at != network.order().rend(); ++at) {
    for (const std::size_t behind : network.behind(*at)) {
      pass.latest_finish[*at] = std::min(pass.latest_finish[*at], pass.latest_start[behind]);
    }
    pass.latest_start[*at] = pass.latest_finish[*at] - times[*at];
  }
  return pass;
}

Pass pass_over(const Network& network) {
  std::vector<double> times;
  for (const Activity& one : network.activities()) {
    times.push_back(one.time.expected());
  }
  return pass_over(network, times);
}

std::vector<std::size_t> critical_path(const Network& network, const Pass& pass) {
  const double near = 1e-9 * std::max(1.0, pass.duration);
  const std::size_t none = network.size();
  // Along critical links only: the greatest variance of a path that ends here, and where from.
  std::vector<double> variance(network.size(), 0);
  std::vector<std::size_t> from(network.size(), none);
  std::size_t last = none;
  for (const std::size_t at : network.order()) {
    if (pass.slack(at) > near) {
      continue;
    }
    for (const std::size_t before : network.before(at)) {
      const bool links = pass.slack(before) <= near &&
                         pass.earliest_start[at] - pass.earliest_finish[before] <= near;
      if (links && (from[at] == none || variance[before] > variance[from[at]] + near)) {
        from[at] = before;
      }
    }
    variance[at] =
        network.activities()[at].time.variance() + (from[at] == none ? 0 : variance[from[at]]);
    const bool ends = pass.duration - pass.earliest_finish[at] <= near;
    if (ends && (last == none || variance[at] > variance[last] + near)) {
      last = at;
    }
  }
  std::vector<std::size_t> path;
  for (std::size_t at = last; at != none; at = from[at]) {
    path.push_back(at);
  }
  std::reverse(path.begin(), path.end());
  return path;
}

double path_variance(const Network& network, const std::vector<std::size_t>& path) {
  double sum = 0;
  for (const std::size_t at : path) {
    sum += network.activities()[at].time.variance();
  }
  return sum;
}

double chance_along_path(const Network& network, double due) {
  const Pass pass = pass_over(network);
  const double variance = path_variance(network, critical_path(network, pass));
  if (variance <= 0) {
    return due >= pass.duration ? 1 : 0;
  }
  return std::erfc((pass.duration - due) / std::sqrt(2 * variance)) / 2;
}

}  // namespace backmark::curate
