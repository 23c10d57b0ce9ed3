#include <cmath>
#include <numbers>

#include "base/text.h"
#include "desk/cases.h"
#include "desk/each.h"
#include "desk/measures.h"
#include "desk/or_null.h"

namespace backmark::desk {

namespace {

using model::Fixture;

constexpr double mm_in_m = 1000;
constexpr double in_turn = 180 / std::numbers::pi;

const Fixture* known_fixture(const model::Show& show,
                             model::Id<model::Case> in,
                             const std::string& name) {
  for (const Fixture& one : show.all<Fixture>()) {
    if (one.in == in && one.name == name) {
      return &one;
    }
  }
  return nullptr;
}

// --distance and --angle: above the middle of the case, so far from it along the beam, at so
// many degrees from the straight line out of the plane the pieces stand in.
Result<Done> take_aim(const Call& call, const model::Case& in, Fixture& one) {
  double distance_m = 0;
  double angle_deg = 0;
  if (auto done = take(call, "distance", {0, 100, true, "m"}, distance_m); !done) {
    return done;
  }
  if (auto done = take(call, "angle", {0, 89, false, "degrees"}, angle_deg); !done) {
    return done;
  }
  if (!call.has("distance")) {
    return call.has("angle")
               ? Result<Done>(Problem{Fault::bad_input, "an angle needs a distance", "--angle",
                                      "give --distance in m too"})
               : Result<Done>(Done{});
  }
  one.x_mm = in.width_mm / 2;
  one.y_mm = in.height_mm / 2 + mm_in_m * distance_m * std::sin(angle_deg / in_turn);
  one.z_mm = mm_in_m * distance_m * std::cos(angle_deg / in_turn);
  return Done{};
}

Result<Done> take_place(const Call& call, Fixture& one) {
  const Bounds side{.low = -50000, .high = 50000, .unit = "mm"};
  for (const auto& [name, value] : {std::pair{"x", &one.x_mm}, std::pair{"y", &one.y_mm}}) {
    if (auto done = take(call, name, side, *value); !done) {
      return done;
    }
  }
  return take(call, "z", {0, 50000, true, "mm"}, one.z_mm);
}

Result<Fixture> asked_for(const Call& call, const model::Case& in, Fixture one) {
  if (auto done = take_aim(call, in, one); !done) {
    return done.problem();
  }
  // A place that is given as such goes before one that follows from the aim.
  if (auto done = all_taken(
          take_place(call, one), take(call, "candela", {0, 1e6, true, "cd"}, one.intensity_cd),
          take(call, "dimmed", {0, 1, true, ""}, one.dimmed),
          take(call, "uv", {0, 5000, false, "microwatts a lumen"}, one.uv_uw_lm),
          take(call, "size", {0, 5000, false, "mm"}, one.size_mm));
      !done) {
    return done.problem();
  }
  if (one.intensity_cd <= 0 || one.z_mm <= 0) {
    return Problem{
        Fault::bad_input,
        fmt::format("the light \"{}\" has no {}", one.name,
                    one.z_mm <= 0 ? "place" : "intensity"),
        "",
        one.z_mm <= 0 ? "give --distance in m and --angle in degrees, or --x, --y and --z in mm"
                      : "give --candela, from the maker's sheet"};
  }
  return one;
}

Answer told(const model::Case& in, const Fixture& one) {
  Answer answer;
  answer.json = {{"case", in.key},
                 {"fixture", one.name},
                 {"intensity_cd", one.intensity_cd},
                 {"x_mm", one.x_mm},
                 {"y_mm", one.y_mm},
                 {"z_mm", one.z_mm},
                 {"dimmed", one.dimmed},
                 {"uv_uw_lm", or_null(one.uv_uw_lm)},
                 {"size_mm", one.size_mm}};
  answer.text = fmt::format(
      "{} of {}: {:g} cd at {:.0f} %, {:.0f} mm from the left, {:.0f} mm up, {:.0f} mm in "
      "front.\n",
      one.name, in.key, one.intensity_cd, 100 * one.dimmed, one.x_mm, one.y_mm, one.z_mm);
  return answer;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  const auto in = find_case(open->show, call.text("case"));
  if (!in) {
    return in.problem();
  }
  const std::string name(trim(call.text("name")));
  const Fixture* known = known_fixture(open->show, (*in)->id, name);
  model::Change change(open->show, "fixture",
                       fmt::format("light {} of case {}{}", name, (*in)->key,
                                   call.flag("drop") ? " dropped" : ""));
  if (call.flag("drop")) {
    if (known == nullptr) {
      return Problem{Fault::not_found,
                     fmt::format("the case {} has no light \"{}\"", (*in)->key, name), "",
                     "check its name"};
    }
    change.withdraw(known->id, "dropped by hand");
    return after_change(*open, change, around,
                        {{{"case", (*in)->key}, {"fixture", name}, {"dropped", true}},
                         fmt::format("{} is dropped.\n", name),
                         {}});
  }
  Fixture start = known != nullptr ? *known : Fixture{};
  start.in = (*in)->id;
  start.name = name;
  const auto one = asked_for(call, **in, start);
  if (!one) {
    return one.problem();
  }
  if (known != nullptr) {
    change.replace(*one);
  } else {
    change.add(*one);
  }
  return after_change(*open, change, around, told(**in, *one));
}

}  // namespace

Operation set_fixture() {
  return {
      .name = "fixture",
      .help = "a light of a case: candela and place, so that its lux can be reckoned",
      .writes = true,
      .parameters =
          {show_folder(),
           {.name = "case", .help = "key of the case", .positional = true, .required = true},
           {.name = "name", .help = "of the light", .positional = true, .required = true},
           {.name = "candela", .help = "in the middle of its beam"},
           {.name = "distance", .help = "m to the middle of the case"},
           {.name = "angle", .help = "degrees from straight in front (0)"},
           {.name = "x", .help = "mm from the left; instead of --distance"},
           {.name = "y", .help = "mm up from the floor of the case"},
           {.name = "z", .help = "mm in front of the pieces"},
           {.name = "dimmed", .help = "share of its full light, 1 undimmed"},
           {.name = "uv", .help = "microwatts of ultraviolet in a lumen, or unknown"},
           {.name = "size", .help = "mm, largest measure of what shines"},
           {.name = "drop", .takes = Takes::flag, .help = "take it away"}},
      .run = run};
}

}  // namespace backmark::desk
