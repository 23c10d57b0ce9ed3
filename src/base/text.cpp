#include "base/text.h"

#include <algorithm>
#include <charconv>

namespace backmark {

namespace {

constexpr std::string_view no_break_space = "\xC2\xA0";

bool is_space(char c) {
  return c == ' ' || (c >= '\t' && c <= '\r');
}

// Length of the well-formed sequence at the start of `text`, or 0.
std::size_t sequence_length(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(0);
  if (lead < 0x80) {
    return 1;
  }
  const std::size_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
  if (lead < 0xC2 || lead > 0xF4 || text.size() < length) {
    return 0;
  }
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xC0) != 0x80) {
      return 0;
    }
  }
  const bool overlong = (lead == 0xE0 && byte(1) < 0xA0) || (lead == 0xF0 && byte(1) < 0x90);
  const bool outside = (lead == 0xED && byte(1) > 0x9F) || (lead == 0xF4 && byte(1) > 0x8F);
  return overlong || outside ? 0 : length;
}

}  // namespace

std::string_view trim(std::string_view text) {
  while (!text.empty()) {
    if (is_space(text.front())) {
      text.remove_prefix(1);
    } else if (starts_with(text, no_break_space)) {
      text.remove_prefix(2);
    } else {
      break;
    }
  }
  while (!text.empty()) {
    if (is_space(text.back())) {
      text.remove_suffix(1);
    } else if (ends_with(text, no_break_space)) {
      text.remove_suffix(2);
    } else {
      break;
    }
  }
  return text;
}

std::vector<std::string_view> split(std::string_view text, std::string_view separator) {
  std::vector<std::string_view> parts;
  std::size_t start = 0;
  while (true) {
    const std::size_t end = text.find(separator, start);
    if (end == std::string_view::npos) {
      parts.push_back(text.substr(start));
      return parts;
    }
    parts.push_back(text.substr(start, end - start));
    start = end + separator.size();
  }
}

std::string join(const std::vector<std::string>& parts, std::string_view separator) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) {
      text += separator;
    }
    text += parts[i];
  }
  return text;
}

std::string lower_ascii(std::string_view text) {
  std::string lower(text);
  for (char& c : lower) {
    if (c >= 'A' && c <= 'Z') {
      c = static_cast<char>(c - 'A' + 'a');
    }
  }
  return lower;
}

bool starts_with(std::string_view text, std::string_view prefix) {
  return text.substr(0, prefix.size()) == prefix;
}

bool ends_with(std::string_view text, std::string_view suffix) {
  return text.size() >= suffix.size() && text.substr(text.size() - suffix.size()) == suffix;
}

bool contains(std::string_view text, std::string_view part) {
  return text.find(part) != std::string_view::npos;
}

std::string replace_all(std::string text, std::string_view from, std::string_view to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at)) {
    text.replace(at, from.size(), to);
    at += to.size();
  }
  return text;
}

std::optional<double> to_number(std::string_view text) {
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) {
    return std::nullopt;
  }
  return value;
}

std::optional<long> to_whole(std::string_view text) {
  long value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) {
    return std::nullopt;
  }
  return value;
}

bool is_utf8(std::string_view text) {
  while (!text.empty()) {
    const std::size_t length = sequence_length(text);
    if (length == 0) {
      return false;
    }
    text.remove_prefix(length);
  }
  return true;
}

std::u32string to_code_points(std::string_view text) {
  std::u32string points;
  points.reserve(text.size());
  while (!text.empty()) {
    const std::size_t length = sequence_length(text);
    if (length == 0) {
      points.push_back(U'\uFFFD');
      text.remove_prefix(1);
      continue;
    }
    static constexpr unsigned char lead_mask[] = {0, 0x7F, 0x1F, 0x0F, 0x07};
    char32_t point = static_cast<unsigned char>(text[0]) & lead_mask[length];
    for (std::size_t i = 1; i < length; ++i) {
      point = (point << 6) | (static_cast<unsigned char>(text[i]) & 0x3F);
    }
    points.push_back(point);
    text.remove_prefix(length);
  }
  return points;
}

std::string to_utf8(std::u32string_view code_points) {
  std::string text;
  for (const char32_t point : code_points) {
    const auto put = [&text](char32_t byte) { text.push_back(static_cast<char>(byte)); };
    if (point < 0x80) {
      put(point);
    } else if (point < 0x800) {
      put(0xC0 | (point >> 6));
      put(0x80 | (point & 0x3F));
    } else if (point < 0x10000) {
      put(0xE0 | (point >> 12));
      put(0x80 | ((point >> 6) & 0x3F));
      put(0x80 | (point & 0x3F));
    } else {
      put(0xF0 | (point >> 18));
      put(0x80 | ((point >> 12) & 0x3F));
      put(0x80 | ((point >> 6) & 0x3F));
      put(0x80 | (point & 0x3F));
    }
  }
  return text;
}

std::string padded(std::string text, std::size_t width) {
  const std::size_t length = to_code_points(text).size();
  text.append(width > length ? width - length : 0, ' ');
  return text;
}

std::string shortened(std::string text, std::size_t most) {
  auto points = to_code_points(text);
  if (points.size() <= most) {
    return text;
  }
  points.resize(most - 1);
  points.push_back(U'\u2026');
  return to_utf8(points);
}

std::vector<std::string> rows_of(std::string_view text, std::size_t width) {
  std::vector<std::string> rows;
  std::size_t used = 0;
  for (const auto word : split(text, " ")) {
    const std::size_t length = to_code_points(word).size();
    if (rows.empty() || used + 1 + length > width) {
      rows.emplace_back(word);
      used = length;
    } else {
      rows.back().append(" ").append(word);
      used += 1 + length;
    }
  }
  return rows;
}

std::string without_trailing_spaces(std::string text) {
  text.erase(text.find_last_not_of(' ') + 1);
  return text;
}

int edit_distance(std::string_view a, std::string_view b) {
  const std::size_t width = b.size() + 1;
  std::vector<int> before(width);
  std::vector<int> last(width);
  std::vector<int> row(width);
  for (std::size_t j = 0; j < width; ++j) {
    last[j] = static_cast<int>(j);
  }
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = static_cast<int>(i);
    for (std::size_t j = 1; j < width; ++j) {
      const int change = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        row[j] = std::min(row[j], before[j - 2] + 1);
      }
    }
    before.swap(last);
    last.swap(row);
  }
  return last[b.size()];
}

std::optional<std::string> closest(std::string_view text,
                                   const std::vector<std::string>& choices) {
  std::optional<std::string> best;
  int best_distance = static_cast<int>(text.size() / 3) + 1;
  for (const std::string& choice : choices) {
    const int distance = edit_distance(lower_ascii(text), lower_ascii(choice));
    if (distance < best_distance) {
      best_distance = distance;
      best = choice;
    }
  }
  return best;
}

}  // namespace backmark
