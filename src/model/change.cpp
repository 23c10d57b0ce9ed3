#include "model/change.h"

namespace backmark::model {

Change::Change(const Show& show, std::string operation, std::string summary)
    : pool_(&show.pool),
      based_on_(show.position),
      next_id_(show.next_id),
      first_new_word_(static_cast<std::uint32_t>(show.pool.size())),
      operation_(std::move(operation)),
      summary_(std::move(summary)) {}

Word Change::word(std::string_view text) {
  if (text.empty()) {
    return {};
  }
  if (const Word known = pool_->find(text)) {
    return known;
  }
  const auto next = first_new_word_ + static_cast<std::uint32_t>(new_words_.size());
  const auto [at, is_new] = new_word_index_.try_emplace(std::string(text), next);
  if (is_new) {
    new_words_.emplace_back(text);
  }
  return {at->second};
}

std::string_view Change::text(Word word) const {
  if (word.value < first_new_word_) {
    return pool_->text(word);
  }
  return new_words_[word.value - first_new_word_];
}

bool Change::empty() const {
  const auto none = [](const Records& records) {
    return std::apply([](const auto&... rows) { return (rows.empty() && ...); }, records);
  };
  return none(added_) && none(replaced_) && withdrawn_.empty();
}

}  // namespace backmark::model
