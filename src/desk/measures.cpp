#include "desk/measures.h"

#include "base/text.h"
#include "desk/calendar.h"
#include "press/job.h"

namespace backmark::desk {

namespace {

constexpr std::string_view taken_back = "unknown";

Problem out_of(const std::string& name, const std::string& text, const Bounds& bounds) {
  const std::string unit = bounds.unit.empty() ? "" : " " + bounds.unit;
  return {Fault::bad_input, fmt::format("\"{}\" cannot be", text), "--" + name,
          fmt::format("write a number {} {:g} and at most {:g}{}",
                      bounds.above ? "above" : "of at least", bounds.low, bounds.high, unit)};
}

Result<double> within(const std::string& name, std::string_view text, const Bounds& bounds) {
  const auto number = to_number(trim(text));
  // Written so that what is no number at all is refused too.
  const bool fits = number && *number <= bounds.high &&
                    (bounds.above ? *number > bounds.low : *number >= bounds.low);
  if (!fits) {
    return out_of(name, std::string(text), bounds);
  }
  return *number;
}

}  // namespace

Result<Done> take(const Call& call,
                  const std::string& name,
                  const Bounds& bounds,
                  std::optional<double>& value) {
  if (call.has(name) && call.text(name) == taken_back) {
    value.reset();
    return Done{};
  }
  double given = 0;
  auto done = take(call, name, bounds, given);
  if (done && call.has(name)) {
    value = given;
  }
  return done;
}

Result<Done> take(const Call& call,
                  const std::string& name,
                  const Bounds& bounds,
                  double& value) {
  if (!call.has(name)) {
    return Done{};
  }
  const auto given = within(name, call.text(name), bounds);
  if (!given) {
    return given.problem();
  }
  value = *given;
  return Done{};
}

Result<Done> take_range(const Call& call,
                        const std::string& name,
                        const Bounds& bounds,
                        std::optional<double>& low,
                        std::optional<double>& high) {
  if (!call.has(name)) {
    return Done{};
  }
  if (call.text(name) == taken_back) {
    low.reset();
    high.reset();
    return Done{};
  }
  const std::string text = call.text(name);
  const std::size_t dash = text.find('-', 1);
  if (dash == std::string::npos) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is no range", text), "--" + name,
                   "write both ends, for example 40-55"};
  }
  const auto first = within(name, text.substr(0, dash), bounds);
  const auto last = within(name, text.substr(dash + 1), bounds);
  if (!first || !last) {
    return first ? last.problem() : first.problem();
  }
  if (*last < *first) {
    return Problem{Fault::bad_input,
                   fmt::format("the range \"{}\" ends before it begins", text), "--" + name,
                   "write the lower end first"};
  }
  low = *first;
  high = *last;
  return Done{};
}

Result<model::DayNumber> day_given(const Call& call,
                                   const std::string& name,
                                   model::DayNumber otherwise) {
  if (!call.has(name)) {
    return otherwise;
  }
  if (const auto day = press::parse_day(call.text(name))) {
    return *day;
  }
  return Problem{Fault::bad_input, fmt::format("\"{}\" is not a day", call.text(name)),
                 "--" + name, "write it as 2026-11-25"};
}

std::string iso_day(model::DayNumber day) {
  return day == model::unknown_day ? "" : to_minute(std::int64_t{86400} * day).substr(0, 10);
}

}  // namespace backmark::desk
