#include "base/text.h"
#include "web/http.h"

namespace backmark::web {

namespace {

constexpr std::size_t longest = 2048;

int hex(char c) {
  return c >= '0' && c <= '9'   ? c - '0'
         : c >= 'a' && c <= 'f' ? c - 'a' + 10
         : c >= 'A' && c <= 'F' ? c - 'A' + 10
                                : -1;
}

// Percent signs undone; in a query "+" is a space.
std::optional<std::string> decoded(std::string_view text, bool query) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    char c = text[i];
    if (c == '%') {
      if (i + 2 >= text.size() || hex(text[i + 1]) < 0 || hex(text[i + 2]) < 0) {
        return std::nullopt;
      }
      c = static_cast<char>(hex(text[i + 1]) * 16 + hex(text[i + 2]));
      i += 2;
    } else if (c == '+' && query) {
      c = ' ';
    }
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) {
      return std::nullopt;
    }
    out += c;
  }
  return is_utf8(out) ? std::optional(std::move(out)) : std::nullopt;
}

bool read_path(std::string_view text, Request& into) {
  if (text.empty() || text.front() != '/') {
    return false;
  }
  for (const auto part : split(text.substr(1), "/")) {
    auto segment = decoded(part, false);
    if (!segment || *segment == "." || *segment == "..") {
      return false;
    }
    into.path.push_back(std::move(*segment));
  }
  if (into.path.back().empty()) {
    into.path.pop_back();
  }
  for (const std::string& segment : into.path) {
    if (segment.empty()) {
      return false;
    }
  }
  return true;
}

bool read_query(std::string_view text, Request& into) {
  for (const auto part : split(text, "&")) {
    if (part.empty()) {
      continue;
    }
    const auto equals = std::min(part.find('='), part.size());
    auto name = decoded(part.substr(0, equals), true);
    auto value = decoded(part.substr(std::min(equals + 1, part.size())), true);
    if (!name || !value || !into.query.emplace(*std::move(name), *std::move(value)).second) {
      return false;  // the same name twice: two readers could take different ones
    }
  }
  return true;
}

}  // namespace

bool read_target(std::string_view target, Request& into) {
  into.path.clear();
  into.query.clear();
  if (target.size() > longest) {
    return false;
  }
  const auto mark = std::min(target.find('?'), target.size());
  return read_path(target.substr(0, mark), into) &&
         read_query(target.substr(std::min(mark + 1, target.size())), into);
}

std::string Request::header(const std::string& name) const {
  const auto at = headers.find(name);
  return at == headers.end() ? std::string() : at->second;
}

}  // namespace backmark::web
