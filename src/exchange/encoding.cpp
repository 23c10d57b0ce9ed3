#include "exchange/encoding.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace backmark::exchange {

namespace {

// Bytes 0x80 to 0x9F; every other byte is the code point of the same number.
constexpr std::array<char32_t, 32> upper_controls = {
    0x20AC, 0x0081, 0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021, 0x02C6, 0x2030, 0x0160,
    0x2039, 0x0152, 0x008D, 0x017D, 0x008F, 0x0090, 0x2018, 0x2019, 0x201C, 0x201D, 0x2022,
    0x2013, 0x2014, 0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0x009D, 0x017E, 0x0178};

}  // namespace

std::string from_windows_1252(std::string_view bytes) {
  std::u32string points;
  points.reserve(bytes.size());
  for (const char character : bytes) {
    const auto byte = static_cast<unsigned char>(character);
    points += byte >= 0x80 && byte < 0xA0 ? upper_controls[byte - 0x80U]
                                          : static_cast<char32_t>(byte);
  }
  return to_utf8(points);
}

std::optional<std::string> to_windows_1252(std::string_view utf8) {
  std::string bytes;
  for (const char32_t point : to_code_points(utf8)) {
    if (point < 0x80 || (point >= 0xA0 && point <= 0xFF)) {
      bytes += static_cast<char>(point);
      continue;
    }
    const auto* const at = std::find(upper_controls.begin(), upper_controls.end(), point);
    if (at == upper_controls.end()) {
      return std::nullopt;
    }
    bytes += static_cast<char>(0x80 + (at - upper_controls.begin()));
  }
  return bytes;
}

}  // namespace backmark::exchange
