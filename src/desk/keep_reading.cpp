#include "base/text.h"
#include "desk/calendar.h"
#include "desk/cases.h"
#include "desk/each.h"
#include "desk/measures.h"
#include "desk/or_null.h"

namespace backmark::desk {

namespace {

const Bounds lux_bounds{.low = 0, .high = 200000, .above = false, .unit = "lx"};

Result<Answer> keep_reading_run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  const auto in = find_case(open->show, call.text("case"));
  if (!in) {
    return in.problem();
  }
  model::Change change(open->show, "reading",
                       fmt::format("{} lx in case {}", call.text("lux"), (*in)->key));
  model::LightReading reading{.in = (*in)->id,
                              .by = change.word(call.has("by") ? call.text("by") : around.who)};
  if (call.has("at")) {
    const auto piece = find_piece(open->show, call.text("at"));
    if (!piece) {
      return piece.problem();
    }
    reading.piece = (*piece)->id;
  }
  if (auto done =
          all_taken(take(call, "lux", lux_bounds, reading.lux),
                    take(call, "uv", {0, 5000, false, "microwatts a lumen"}, reading.uv_uw_lm));
      !done) {
    return done.problem();
  }
  const auto day = day_given(call, "day", day_of(around.now));
  if (!day) {
    return day.problem();
  }
  reading.day = *day;
  change.add(reading);
  Answer answer;
  answer.json = {{"case", (*in)->key},
                 {"number", call.has("at") ? Json(call.text("at")) : Json(nullptr)},
                 {"lux", reading.lux},
                 {"uv_uw_lm", or_null(reading.uv_uw_lm)},
                 {"day", iso_day(*day)}};
  answer.text = fmt::format("{:g} lx in {}{}, {}.\n", reading.lux, (*in)->key,
                            call.has("at") ? " at " + call.text("at") : "", iso_day(*day));
  return after_change(*open, change, around, answer);
}

// --lux-hours, or --lux with --hours.
Result<double> lux_hours_of(const Call& call) {
  double total = 0;
  double lux = 0;
  double hours = 0;
  if (auto done = all_taken(take(call, "lux-hours", {0, 1e12, true, "lx h"}, total),
                            take(call, "lux", lux_bounds, lux),
                            take(call, "hours", {0, 1e7, false, "hours"}, hours));
      !done) {
    return done.problem();
  }
  if (call.has("lux-hours") == (call.has("lux") && call.has("hours"))) {
    return Problem{Fault::bad_input, "the light that the piece had is not said, or said twice",
                   "", "give --lux-hours, or --lux and --hours"};
  }
  return call.has("lux-hours") ? total : lux * hours;
}

Result<Answer> keep_exposure_run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  const auto piece = find_piece(open->show, call.text("number"));
  if (!piece) {
    return piece.problem();
  }
  const auto lux_hours = lux_hours_of(call);
  if (!lux_hours) {
    return lux_hours.problem();
  }
  const auto day = day_given(call, "day", model::unknown_day);
  if (!day) {
    return day.problem();
  }
  model::Change change(open->show, "exposure",
                       fmt::format("{}: had {:.0f} lx h", (*piece)->number, *lux_hours));
  change.add(model::Exposure{.piece = (*piece)->id,
                             .lux_hours = *lux_hours,
                             .text = call.text("text"),
                             .day = *day,
                             .by = change.word(around.who)});
  Answer answer;
  answer.json = {{"number", (*piece)->number},
                 {"lux_hours", *lux_hours},
                 {"day", iso_day(*day)},
                 {"text", call.text("text")}};
  answer.text = fmt::format(
      "{} had {:.0f} lx h{}.\n", (*piece)->number, *lux_hours,
      *day == model::unknown_day ? ", nobody knows when" : " until " + iso_day(*day));
  return after_change(*open, change, around, answer);
}

}  // namespace

Operation keep_reading() {
  return {.name = "reading",
          .help = "what a light meter showed in a case, or at a piece in it",
          .writes = true,
          .recording = true,
          .parameters = {show_folder(),
                         {.name = "case",
                          .help = "key of the case",
                          .positional = true,
                          .required = true},
                         {.name = "lux", .help = "with every light on", .required = true},
                         {.name = "uv", .help = "microwatts of ultraviolet in a lumen"},
                         {.name = "at", .help = "number of the piece it was measured at"},
                         {.name = "day", .help = "of the measurement (today)"},
                         {.name = "by", .help = "who measured (you)"}},
          .run = keep_reading_run};
}

Operation keep_exposure() {
  return {.name = "exposure",
          .help = "light that a piece had before this show",
          .writes = true,
          .recording = true,
          .parameters =
              {show_folder(),
               {.name = "number", .help = "the piece", .positional = true, .required = true},
               {.name = "lux-hours", .help = "in all"},
               {.name = "lux", .help = "level; with --hours instead of --lux-hours"},
               {.name = "hours", .help = "it lasted"},
               {.name = "text", .help = "where and when"},
               {.name = "day", .help = "of its end"}},
          .run = keep_exposure_run};
}

}  // namespace backmark::desk
