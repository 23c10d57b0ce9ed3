#include "desk/cases.h"

#include "base/text.h"
#include "desk/measures.h"
#include "desk/or_null.h"
#include "press/job.h"

namespace backmark::desk {

Result<const model::Case*> find_case(const model::Show& show, const std::string& key) {
  std::vector<std::string> keys;
  for (const model::Case& one : show.all<model::Case>()) {
    if (one.key == key) {
      return &one;
    }
    keys.push_back(one.key);
  }
  return Problem{Fault::not_found, fmt::format("there is no case \"{}\"", key), "",
                 keys.empty() ? "begin one with \"backmark case SHOW KEY\""
                              : "cases are: " + join(keys, ", ")};
}

Json to_json(const model::Case& one) {
  return {{"case", one.key},
          {"width_mm", one.width_mm},
          {"height_mm", one.height_mm},
          {"depth_mm", one.depth_mm},
          {"made_of", one.made_of},
          {"shelf", one.shelf},
          {"shelf_thick_mm", one.shelf_thick_mm},
          {"shelf_span_mm", one.shelf_span_mm},
          {"leak_per_day", or_null(one.leak_per_day)},
          {"hours_per_day", or_null(one.hours_per_day)},
          {"buffer_kg", or_null(one.buffer_kg)},
          {"reservoir_g_kg", or_null(one.reservoir_g_kg)},
          {"rh_percent", or_null(one.rh_percent)},
          {"warmer_c", one.warmer_c}};
}

Result<double> days_of_run(const Call& call, const model::Show& show) {
  double days = 0;
  if (auto done = take(call, "days", {1, 36500, false, "days"}, days); !done) {
    return done.problem();
  }
  if (call.has("days")) {
    return days;
  }
  const auto opens = press::parse_day(show.setting("opens"));
  const auto closes = press::parse_day(show.setting("closes"));
  if (!opens || !closes || *closes < *opens) {
    return Problem{
        Fault::not_found, "the show has no opening and last day", "",
        "give --days, or write \"backmark setting SHOW opens 2027-06-26\" and closes"};
  }
  return static_cast<double>(*closes - *opens + 1);
}

}  // namespace backmark::desk
