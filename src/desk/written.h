// JSON written as it goes, for answers that would be dear to build as a tree first.
#pragma once

#include <string>
#include <string_view>

#include "base/json_fwd.h"

namespace backmark::desk {

// An answer that is written already travels as bytes, a kind of value that JSON itself has not,
// so that no door takes it for anything else.
Json as_written(std::string json);
// What a door sends for the value: the text of as_written, else the value written in the usual
// way, `indent` spaces deep (-1: in one line). Bytes that are no UTF-8 become U+FFFD.
std::string to_written(const Json& json, int indent);

// Appends `text` as a JSON string. Bytes that are no UTF-8 become U+FFFD.
void write_quoted(std::string_view text, std::string& to);

// A JSON list, entry by entry.
class WrittenList {
 public:
  void add(long number);
  void add_quoted(std::string_view text);
  // An entry that is JSON already.
  void add_written(std::string_view json);

  // The entries parted by commas, without brackets.
  const std::string& entries() const { return entries_; }

 private:
  void part();

  std::string entries_;
};

// A JSON object, member by member; names need no escape.
class WrittenObject {
 public:
  void add(std::string_view name, const WrittenList& list);
  void add_written(std::string_view name, std::string_view json);
  std::string json() &&;

 private:
  std::string members_;
};

}  // namespace backmark::desk
