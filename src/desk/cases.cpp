#include "desk/cases.h"

#include "base/text.h"

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
  const auto known = [](const std::optional<double>& value) {
    return value ? Json(*value) : Json(nullptr);
  };
  return {{"case", one.key},
          {"width_mm", one.width_mm},
          {"height_mm", one.height_mm},
          {"depth_mm", one.depth_mm},
          {"made_of", one.made_of},
          {"shelf", one.shelf},
          {"shelf_thick_mm", one.shelf_thick_mm},
          {"shelf_span_mm", one.shelf_span_mm},
          {"leak_per_day", known(one.leak_per_day)},
          {"hours_per_day", known(one.hours_per_day)},
          {"buffer_kg", known(one.buffer_kg)},
          {"reservoir_g_kg", known(one.reservoir_g_kg)},
          {"rh_percent", known(one.rh_percent)},
          {"warmer_c", one.warmer_c}};
}

Result<Answer> after_change(OpenShow& open,
                            const model::Change& change,
                            const Surroundings& around,
                            Answer answer) {
  if (auto done = open.store.apply(change, around.who, around.now); !done) {
    return done.problem();
  }
  return answer;
}

}  // namespace backmark::desk
