#include "desk/table_words.h"

namespace backmark::desk {

int TableWords::size() const {
  return (before_ == nullptr ? 0 : before_->size()) + static_cast<int>(texts_.size());
}

int TableWords::find(std::string_view text) const {
  const int before = before_ == nullptr ? -1 : before_->find(text);
  if (before >= 0) {
    return before;
  }
  const auto known = places_.find(text);
  return known == places_.end() ? -1 : known->second;
}

int TableWords::place(std::string_view text) {
  if (const int known = find(text); known >= 0) {
    return known;
  }
  const int place = size();
  texts_.emplace_back(text);
  written_.add_quoted(text);
  places_.emplace(texts_.back(), place);
  return place;
}

WrittenList TableWords::list() const {
  WrittenList all = before_ == nullptr ? WrittenList() : before_->list();
  if (!texts_.empty()) {
    all.add_written(written_.entries());
  }
  return all;
}

}  // namespace backmark::desk
