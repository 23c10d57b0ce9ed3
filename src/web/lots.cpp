#include "web/lots.h"

#include "base/json.h"

namespace backmark::web {

Result<Json> Lots::offer(const std::string& lot,
                         const desk::OpenShow& open,
                         const desk::OfferedPicture& picture,
                         const desk::Surroundings& around) {
  auto at = lots_.find(lot);
  if (at == lots_.end()) {
    if (lots_.size() >= most) {
      return Problem{Fault::refused, "too many lots of photographs come at a time", "",
                     "wait until one of them is through"};
    }
    at = lots_.emplace(lot, Lot{desk::PhotographIntake(open), around.who, around.now}).first;
  }
  at->second.touched = around.now;
  return at->second.intake.take(picture);
}

Result<Json> Lots::end(const std::string& lot,
                       desk::OpenShow& open,
                       const desk::Surroundings& around) {
  const auto at = lots_.find(lot);
  if (at == lots_.end()) {
    return Json{
        {"taken", Json::array()}, {"same", Json::array()}, {"unmatched", Json::array()}};
  }
  desk::Surroundings signed_by = around;
  signed_by.who = at->second.who;
  auto ended = at->second.intake.finish(open, signed_by);
  lots_.erase(at);
  return ended;
}

bool Lots::end_still(desk::OpenShow& open, const desk::Surroundings& around) {
  for (const auto& [name, lot] : lots_) {
    if (around.now - lot.touched > still_after) {
      const std::string still = name;
      static_cast<void>(end(still, open, around));
      return true;
    }
  }
  return false;
}

}  // namespace backmark::web
