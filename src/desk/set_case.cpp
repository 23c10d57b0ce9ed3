#include "base/text.h"
#include "desk/cases.h"
#include "desk/each.h"
#include "desk/measures.h"

namespace backmark::desk {

namespace {

using model::Case;

const Bounds inside_mm{.low = 0, .high = 20000, .above = true, .unit = "mm"};

Result<Done> take_sizes(const Call& call, Case& one) {
  return all_taken(
      take(call, "width", inside_mm, one.width_mm),
      take(call, "height", inside_mm, one.height_mm),
      take(call, "depth", inside_mm, one.depth_mm),
      take(call, "shelf-thick", {.low = 0, .high = 200, .unit = "mm"}, one.shelf_thick_mm),
      take(call, "shelf-span", {.low = 0, .high = 20000, .unit = "mm"}, one.shelf_span_mm));
}

Result<Done> take_air(const Call& call, Case& one) {
  return all_taken(
      take(call, "leak", {.low = 0, .high = 1000, .unit = "air changes a day"},
           one.leak_per_day),
      take(call, "hours", {.low = 0, .high = 24, .unit = "hours a day"}, one.hours_per_day),
      take(call, "buffer", {.low = 0, .high = 10000, .unit = "kg"}, one.buffer_kg),
      take(call, "reservoir", {.low = 0, .high = 100, .above = true, .unit = "g/kg for 1 %"},
           one.reservoir_g_kg),
      take(call, "rh", {.low = 0, .high = 100, .above = true, .unit = "%"}, one.rh_percent),
      take(call, "warmer", {.low = 0, .high = 30, .unit = "degrees"}, one.warmer_c));
}

// What the call says of a case, over what it is.
Result<Case> asked_for(const Call& call, Case one) {
  if (auto done = all_taken(take_sizes(call, one), take_air(call, one)); !done) {
    return done.problem();
  }
  one.made_of = call.has("made-of") ? std::string(trim(call.text("made-of"))) : one.made_of;
  one.shelf = call.has("shelf") ? std::string(trim(call.text("shelf"))) : one.shelf;
  if (one.width_mm <= 0 || one.height_mm <= 0 || one.depth_mm <= 0) {
    return Problem{Fault::bad_input, fmt::format("the case \"{}\" has no inner size", one.key),
                   "", "give --width, --height and --depth in mm"};
  }
  return one;
}

std::string measure(const std::optional<double>& value, const char* unit) {
  return value ? fmt::format("{:g} {}", *value, unit) : "not known";
}

std::string told(const Case& one) {
  std::string text = fmt::format("{}  {:g} x {:g} x {:g} mm inside\n", padded(one.key, 12),
                                 one.width_mm, one.height_mm, one.depth_mm);
  text += fmt::format(
      "  lights on {}; leakage {}; held at {}\n", measure(one.hours_per_day, "hours a day"),
      measure(one.leak_per_day, "air changes a day"), measure(one.rh_percent, "% RH"));
  if (!one.made_of.empty()) {
    text += fmt::format("  made of {}\n", one.made_of);
  }
  if (!one.shelf.empty()) {
    text += fmt::format("  shelves of {}, {:g} mm thick, {:g} mm between supports\n", one.shelf,
                        one.shelf_thick_mm, one.shelf_span_mm);
  }
  if (one.buffer_kg) {
    text += fmt::format("  buffer {:g} kg, reservoir {}\n", *one.buffer_kg,
                        measure(one.reservoir_g_kg, "g/kg for 1 %"));
  }
  return text;
}

Answer told_all(const model::Show& show) {
  Answer answer;
  answer.json = Json::array();
  for (const Case& one : show.all<Case>()) {
    answer.json.push_back(to_json(one));
    answer.text += told(one);
  }
  if (answer.text.empty()) {
    answer.text = "There is no case yet.\n";
  }
  return answer;
}

// A case goes with its lights, readings and places; the pieces stay in the show.
void drop(model::Change& change, const model::Show& show, const Case& gone) {
  const auto withdraw_all = [&](const auto& rows) {
    for (const auto& row : rows) {
      if (row.in == gone.id) {
        change.withdraw(row.id, "its case was dropped");
      }
    }
  };
  withdraw_all(show.all<model::Placement>());
  withdraw_all(show.all<model::Fixture>());
  withdraw_all(show.all<model::LightReading>());
  change.withdraw(gone.id, "dropped by hand");
}

bool changes(const Call& call) {
  for (const char* name :
       {"width", "height", "depth", "made-of", "shelf", "shelf-thick", "shelf-span", "leak",
        "hours", "buffer", "reservoir", "rh", "warmer", "drop"}) {
    if (call.has(name)) {
      return true;
    }
  }
  return false;
}

Result<Answer> change_case(OpenShow& open, const Call& call, const Surroundings& around) {
  const std::string key(trim(call.text("key")));
  const auto known = find_case(open.show, key);
  model::Change change(open.show, "case",
                       fmt::format("case {}{}", key, call.flag("drop") ? " dropped" : ""));
  if (call.flag("drop")) {
    if (!known) {
      return known.problem();
    }
    drop(change, open.show, **known);
    return after_change(
        open, change, around,
        {{{"case", key}, {"dropped", true}}, fmt::format("{} is dropped.\n", key), {}});
  }
  const auto one = asked_for(call, known ? **known : Case{.key = key});
  if (!one) {
    return one.problem();
  }
  if (known) {
    change.replace(*one);
  } else {
    change.add(*one);
  }
  return after_change(open, change, around, {to_json(*one), told(*one), {}});
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  const bool writes = changes(call);
  auto open = open_show(call, writes ? store::Access::change : store::Access::look);
  if (!open) {
    return open.problem();
  }
  if (!call.has("key")) {
    if (writes) {
      return Problem{Fault::bad_input, "no case is named", "", "name it behind the show"};
    }
    return told_all(open->show);
  }
  if (!writes) {
    const auto known = find_case(open->show, call.text("key"));
    if (!known) {
      return known.problem();
    }
    return Answer{to_json(**known), told(**known), {}};
  }
  return change_case(*open, call, around);
}

}  // namespace

Operation set_case() {
  return {.name = "case",
          .help = "begin a display case, say what it is like, or list the cases",
          .writes = true,
          .parameters =
              {show_folder(),
               {.name = "key", .help = "short name; all cases without", .positional = true},
               {.name = "width", .help = "inside, mm"},
               {.name = "height", .help = "inside, mm"},
               {.name = "depth", .help = "inside, mm"},
               {.name = "made-of", .help = "what shares its air: \"acrylic; MDF; wool felt\""},
               {.name = "shelf", .help = "material of its shelves"},
               {.name = "shelf-thick", .help = "mm"},
               {.name = "shelf-span", .help = "mm between supports"},
               {.name = "leak", .help = "measured air changes a day, or unknown"},
               {.name = "hours", .help = "a day that the lights are on, or unknown"},
               {.name = "buffer", .help = "kg of silica gel or the like"},
               {.name = "reservoir",
                .help = "g of water a kg of it gives for 1 % RH, by its supplier"},
               {.name = "rh", .help = "% that is to be held inside"},
               {.name = "warmer", .help = "degrees above the room while the lights are on"},
               {.name = "drop", .takes = Takes::flag, .help = "with its lights and places"}},
          .run = run};
}

}  // namespace backmark::desk
