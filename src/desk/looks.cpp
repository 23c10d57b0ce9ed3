#include "desk/looks.h"

#include "base/text.h"
#include "desk/fitted.h"
#include "desk/weighed.h"
#include "evidence/look_plan.h"
#include "evidence/looks.h"

namespace backmark::desk {

Parameter hours_parameter() {
  return {.name = "hours", .takes = Takes::number, .help = "plan so many hours of looking"};
}

Parameter by_parameter() {
  return {.name = "by", .help = "plan by tray or by lender (tray)"};
}

Result<LookWish> look_wish_of(const Call& call) {
  const auto hours = call.number("hours", 0);
  if (!hours) {
    return hours.problem();
  }
  if (call.has("hours") && !(*hours > 0 && *hours <= 1000)) {
    return Problem{Fault::bad_input, "a plan needs some hours", "--hours", "write 3.5"};
  }
  const std::string by = call.has("by") ? call.text("by") : "tray";
  if (by != "tray" && by != "lender") {
    return Problem{Fault::bad_input, fmt::format("a day is not planned by \"{}\"", by), "--by",
                   "write tray or lender"};
  }
  return LookWish{*hours, by == "lender"};
}

namespace {

// What a look costs bears on the list and not on the reckoning, so lists are told apart by it.
std::string costs_of(const model::Show& show) {
  std::string costs;
  for (const model::Character& character : show.all<model::Character>()) {
    costs += fmt::format(" {}", character.minutes);
  }
  return costs;
}

// A list of an earlier show may name what was withdrawn since.
void drop_what_is_gone(const model::Show& show, model::LookList& list) {
  std::erase_if(list.looks, [&](const model::Look& look) {
    return show.find(look.piece) == nullptr || show.find(look.character) == nullptr;
  });
  std::erase_if(list.conflicts, [&](const model::Misfit& misfit) {
    return show.find(misfit.piece) == nullptr;
  });
}

// The list without a plan.
Result<model::LookList> list_of(OpenShow& open,
                                const evidence::ReckonSettings& settings,
                                Wants wants,
                                const Surroundings& around) {
  const auto make = [&]() -> Result<model::LookList> {
    const auto fitted = fitted_show(open, settings, around);
    if (!fitted) {
      return fitted.problem();
    }
    auto list = evidence::next_looks(open.show, (*fitted)->reckoning, {},
                                     watch_of(around, "weighing what each look would settle"));
    around.progress(1, "");
    return list;
  };
  if (!usual(settings)) {
    return make();
  }
  const std::string name = fmt::format("looks {}{}", settings.chains, costs_of(open.show));
  const auto kept = weighed<model::LookList>(open, name, make, wants);
  if (!kept) {
    return kept.problem();
  }
  model::LookList list = **kept;
  drop_what_is_gone(open.show, list);
  return list;
}

}  // namespace

Result<model::LookList> looks_of(OpenShow& open,
                                 const LookWish& wish,
                                 const evidence::ReckonSettings& settings,
                                 const Surroundings& around) {
  auto list = list_of(open, settings, wish.wants, around);
  if (list && wish.hours > 0) {
    evidence::plan_looks(open.show, wish.hours,
                         wish.by_lender ? evidence::Visit::lender : evidence::Visit::tray,
                         evidence::visit_minutes(open.show), *list);
  }
  return list;
}

std::string look_label(const model::Show& show,
                       model::Id<model::Character> character,
                       bool again) {
  return (again ? "Again: " : "") + show.find(character)->label;
}

}  // namespace backmark::desk
