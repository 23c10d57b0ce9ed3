// Grammar: activities are parted by "|"; an activity is NAME:BEFORE:TIME with BEFORE a list
// parted by commas or "-"; an arrow is FROM-TO:TIME; TIME is one number, or three parted by
// "/".
#include <map>

#include "base/text.h"
#include "curate/network.h"

namespace backmark::curate {

namespace {

Problem unread(std::string_view part, std::string fix) {
  return {Fault::bad_input, fmt::format("\"{}\" is no activity", part), "", std::move(fix)};
}

std::optional<ThreePoint> read_time(std::string_view text) {
  std::vector<double> numbers;
  for (const auto part : split(text, "/")) {
    const auto number = to_number(trim(part));
    if (!number) {
      return std::nullopt;
    }
    numbers.push_back(*number);
  }
  if (numbers.size() == 1) {
    return ThreePoint{numbers[0], numbers[0], numbers[0]};
  }
  if (numbers.size() == 3) {
    return ThreePoint{numbers[0], numbers[1], numbers[2]};
  }
  return std::nullopt;
}

}  // namespace

Result<Network> read_activities(std::string_view text) {
  std::vector<Activity> activities;
  for (const auto part : split(text, "|")) {
    const auto cells = split(part, ":");
    const auto time = cells.size() == 3 ? read_time(cells[2]) : std::nullopt;
    if (!time) {
      return unread(part, "write NAME:BEFORE,BEFORE:least/likely/greatest, with - for none");
    }
    Activity one{std::string(trim(cells[0])), {}, *time};
    if (trim(cells[1]) != "-" && !trim(cells[1]).empty()) {
      for (const auto name : split(cells[1], ",")) {
        one.after.emplace_back(trim(name));
      }
    }
    activities.push_back(std::move(one));
  }
  return Network::of(std::move(activities));
}

Result<Network> read_arrows(std::string_view text) {
  std::vector<Activity> activities;
  std::vector<std::string> from;
  std::map<std::string, std::vector<std::string>> into;  // event to the arrows that end there
  for (const auto part : split(text, "|")) {
    const auto cells = split(part, ":");
    const auto ends = split(cells[0], "-");
    const auto time = cells.size() == 2 ? read_time(cells[1]) : std::nullopt;
    if (!time || ends.size() != 2) {
      return unread(part, "write FROM-TO:time");
    }
    activities.push_back({std::string(trim(cells[0])), {}, *time});
    from.emplace_back(trim(ends[0]));
    into[std::string(trim(ends[1]))].push_back(activities.back().name);
  }
  for (std::size_t i = 0; i < activities.size(); ++i) {
    activities[i].after = into[from[i]];
  }
  return Network::of(std::move(activities));
}

}  // namespace backmark::curate
