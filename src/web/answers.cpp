#include "web/answers.h"

namespace backmark::web {

std::shared_ptr<const std::string> Answers::find(const store::Moment& now,
                                                 const std::string& question) {
  const std::lock_guard lock(using_);
  const auto found = now == at_ ? kept_.find(question) : kept_.end();
  return found == kept_.end() ? nullptr : found->second;
}

void Answers::keep(const store::Moment& now, const std::string& question, std::string answer) {
  constexpr std::size_t most = std::size_t{64} << 20;
  const std::lock_guard lock(using_);
  if (now.position < at_.position || now.run < at_.run) {
    return;
  }
  if (now != at_) {
    kept_.clear();
    bytes_ = 0;
    at_ = now;
  }
  if (bytes_ + answer.size() <= most && !kept_.contains(question)) {
    bytes_ += answer.size() + question.size();
    kept_.emplace(question, std::make_shared<const std::string>(std::move(answer)));
  }
}

void Answers::forget() {
  const std::lock_guard lock(using_);
  kept_.clear();
  bytes_ = 0;
}

}  // namespace backmark::web
