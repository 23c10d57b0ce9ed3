#include "desk/written.h"

#include <algorithm>

#include "base/json.h"
#include "base/text.h"

namespace backmark::desk {

Json as_written(std::string json) {
  return Json::binary({json.begin(), json.end()});
}

std::string to_written(const Json& json, int indent) {
  if (json.is_binary()) {
    const auto& bytes = json.get_binary();
    return {bytes.begin(), bytes.end()};
  }
  return json.dump(indent, ' ', false, Json::error_handler_t::replace);
}

void write_quoted(std::string_view text, std::string& to) {
  const bool plain = std::all_of(text.begin(), text.end(), [](char c) {
    return c >= ' ' && c != 0x7f && c != '"' && c != '\\';  // above ASCII is below 0 or 127
  });
  if (plain) {
    to += '"';
    to += text;
    to += '"';
  } else {
    to += Json(std::string(text)).dump(-1, ' ', false, Json::error_handler_t::replace);
  }
}

void WrittenList::part() {
  if (!entries_.empty()) {
    entries_ += ',';
  }
}

void WrittenList::add(long number) {
  part();
  fmt::format_to(std::back_inserter(entries_), "{}", number);
}

void WrittenList::add_quoted(std::string_view text) {
  part();
  write_quoted(text, entries_);
}

void WrittenList::add_written(std::string_view json) {
  part();
  entries_ += json;
}

void WrittenObject::add(std::string_view name, const WrittenList& list) {
  members_.reserve(members_.size() + name.size() + list.entries().size() + 8);
  add_written(name, "[");
  members_ += list.entries();
  members_ += ']';
}

void WrittenObject::add_written(std::string_view name, std::string_view json) {
  members_ += members_.empty() ? "\"" : ",\"";
  members_ += name;
  members_ += "\":";
  members_ += json;
}

std::string WrittenObject::json() && {
  members_.insert(members_.begin(), '{');
  members_ += '}';
  return std::move(members_);
}

}  // namespace backmark::desk
