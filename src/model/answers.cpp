#include "model/answers.h"

namespace backmark::model {

Answers::Answers(const Show& show) {
  for (const Permission& one : show.all<Permission>()) {
    const Permission*& held = latest_[{one.subject, one.use}];
    if (held == nullptr || std::pair(one.day, one.id) > std::pair(held->day, held->id)) {
      held = &one;
    }
  }
}

const Permission* Answers::on(std::int32_t subject, Use use) const {
  const auto at = latest_.find({subject, use});
  return at == latest_.end() ? nullptr : at->second;
}

}  // namespace backmark::model
