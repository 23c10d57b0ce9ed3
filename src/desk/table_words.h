// The texts of the Table's answer, each written once; columns name them by their place.
#pragma once

#include <deque>
#include <string>
#include <string_view>
#include <unordered_map>

#include "desk/written.h"

namespace backmark::desk {

class TableWords {
 public:
  // Its first place holds the empty text.
  TableWords() { place(""); }
  // Begins after the texts of `before`, which must outlive it.
  explicit TableWords(const TableWords* before) : before_(before) {}
  TableWords(TableWords&&) = default;
  TableWords& operator=(TableWords&&) = default;
  TableWords(const TableWords&) = delete;
  TableWords& operator=(const TableWords&) = delete;

  int place(std::string_view text);
  // All texts, those of `before` first.
  WrittenList list() const;

 private:
  int size() const;
  int find(std::string_view text) const;  // -1: not here

  const TableWords* before_ = nullptr;
  std::deque<std::string> texts_;  // never move
  std::unordered_map<std::string_view, int> places_;
  WrittenList written_;
};

}  // namespace backmark::desk
