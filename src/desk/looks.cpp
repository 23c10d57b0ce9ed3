#include "desk/looks.h"

#include "base/text.h"
#include "desk/fitted.h"
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

Result<model::LookList> looks_of(OpenShow& open,
                                 const LookWish& wish,
                                 const evidence::ReckonSettings& settings,
                                 const Surroundings& around) {
  const evidence::Watch watch = watch_of(around, "weighing what each look would settle");
  const auto fitted = fitted_show(open, settings, around);
  if (!fitted) {
    return fitted.problem();
  }
  const model::Show& show = open.show;
  auto list = evidence::next_looks(show, (*fitted)->reckoning, {}, watch);
  around.progress(1, "");
  if (list && wish.hours > 0) {
    evidence::plan_looks(show, wish.hours,
                         wish.by_lender ? evidence::Visit::lender : evidence::Visit::tray,
                         evidence::visit_minutes(show), *list);
  }
  return list;
}

}  // namespace backmark::desk
