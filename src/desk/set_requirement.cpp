#include "base/text.h"
#include "care/sensitivity.h"
#include "desk/calendar.h"
#include "desk/cases.h"
#include "desk/each.h"
#include "desk/measures.h"
#include "desk/or_null.h"

namespace backmark::desk {

namespace {

using model::Requirement;
using model::Show;

// Whose requirement it is: a piece's number or a lender's code.
struct Subject {
  model::Id<model::Piece> piece;
  model::Id<model::Lender> lender;
  std::string name;
};

Result<Subject> subject_of(const Show& show, const std::string& text) {
  for (const model::Lender& lender : show.all<model::Lender>()) {
    if (lender.code == text) {
      return Subject{{}, lender.id, lender.code};
    }
  }
  const auto piece = find_piece(show, text);
  if (!piece) {
    Problem problem = piece.problem();
    problem.what = fmt::format("there is no piece and no lender \"{}\" in this show", text);
    return problem;
  }
  return Subject{(*piece)->id, {}, (*piece)->number};
}

Requirement standing_of(const Show& show, const Subject& subject) {
  for (const Requirement& one : show.all<Requirement>()) {
    if (one.piece == subject.piece && one.lender == subject.lender) {
      return one;
    }
  }
  return {.piece = subject.piece, .lender = subject.lender};
}

Result<Requirement> asked_for(const Call& call, Requirement one) {
  if (call.has("light-class")) {
    one.light_class = call.text("light-class") == "unknown" ? "" : call.text("light-class");
    if (!one.light_class.empty() && !care::light_class_of(one.light_class)) {
      return Problem{
          Fault::bad_input, fmt::format("\"{}\" is no class of light", one.light_class),
          "--light-class", "write R0, R1, R2 or R3; or unknown, to go by the record"};
    }
  }
  if (auto done = all_taken(
          take(call, "lux", {0, 200000, true, "lx"}, one.lux),
          take(call, "lux-hours", {0, 1e9, true, "lx h a year"}, one.lux_hours_year),
          take_range(call, "rh", {0, 100, false, "%"}, one.rh_low, one.rh_high),
          take_range(call, "celsius", {-40, 60, false, "degrees"}, one.c_low, one.c_high));
      !done) {
    return done.problem();
  }
  one.waiver = call.has("waiver") ? call.text("waiver") : one.waiver;
  one.text = call.has("text") ? call.text("text") : one.text;
  return one;
}

bool says_nothing(const Requirement& one) {
  return one.light_class.empty() && !one.lux && !one.lux_hours_year && !one.rh_low &&
         !one.rh_high && !one.c_low && !one.c_high;
}

Answer told(const Subject& subject, const Requirement& one) {
  const auto range = [](const std::optional<double>& low, const std::optional<double>& high) {
    return low && high ? Json({*low, *high}) : Json(nullptr);
  };
  Answer answer;
  answer.json = {{"subject", subject.name},
                 {"light_class", one.light_class},
                 {"lux", or_null(one.lux)},
                 {"lux_hours_year", or_null(one.lux_hours_year)},
                 {"rh", range(one.rh_low, one.rh_high)},
                 {"celsius", range(one.c_low, one.c_high)},
                 {"waiver", one.waiver},
                 {"text", one.text}};
  std::vector<std::string> said;
  if (!one.light_class.empty()) {
    said.push_back("light as " + one.light_class);
  }
  if (one.lux) {
    said.push_back(fmt::format("not above {:g} lx", *one.lux));
  }
  if (one.lux_hours_year) {
    said.push_back(fmt::format("not above {:g} lx h a year", *one.lux_hours_year));
  }
  if (one.rh_low && one.rh_high) {
    said.push_back(fmt::format("{:g}-{:g} % RH", *one.rh_low, *one.rh_high));
  }
  if (one.c_low && one.c_high) {
    said.push_back(fmt::format("{:g}-{:g} degrees", *one.c_low, *one.c_high));
  }
  answer.text = fmt::format("{}: {}{}.\n", subject.name,
                            said.empty() ? "asks for nothing" : join(said, "; "),
                            one.waiver.empty() ? "" : "; may be waived by " + one.waiver);
  return answer;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  const auto subject = subject_of(open->show, call.text("subject"));
  if (!subject) {
    return subject.problem();
  }
  const Requirement standing = standing_of(open->show, *subject);
  auto one = asked_for(call, standing);
  if (!one) {
    return one.problem();
  }
  model::Change change(open->show, "require", "requirement of " + subject->name);
  if (call.flag("drop") || says_nothing(*one)) {
    if (!standing.id) {
      return Problem{Fault::bad_input, fmt::format("nothing is required for {}", subject->name),
                     "", "give --light-class, --lux, --lux-hours, --rh or --celsius"};
    }
    change.withdraw(standing.id, "dropped by hand");
    return after_change(*open, change, around,
                        told(*subject, {.piece = subject->piece, .lender = subject->lender}));
  }
  one->day = day_of(around.now);
  one->by = change.word(around.who);
  if (standing.id) {
    change.replace(*one);
  } else {
    change.add(*one);
  }
  return after_change(*open, change, around, told(*subject, *one));
}

}  // namespace

Operation set_requirement() {
  return {
      .name = "require",
      .help = "what a piece, or everything of a lender, may have of light and air",
      .writes = true,
      .parameters =
          {show_folder(),
           {.name = "subject",
            .help = "number of a piece, or code of a lender",
            .positional = true,
            .required = true},
           {.name = "light-class", .help = "R0 to R3 over what the record says, or unknown"},
           {.name = "lux", .help = "highest level"},
           {.name = "lux-hours", .help = "most in a year"},
           {.name = "rh", .help = "relative humidity in %, as 40-55"},
           {.name = "celsius", .help = "temperature, as 16-24"},
           {.name = "waiver", .help = "who may waive it"},
           {.name = "text", .help = "where it stands written"},
           {.name = "drop", .takes = Takes::flag, .help = "nothing is required any more"}},
      .run = run};
}

}  // namespace backmark::desk
