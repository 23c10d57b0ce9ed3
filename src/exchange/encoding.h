// Windows-1252, the code page that older spreadsheets save in.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace backmark::exchange {

// UTF-8 of Windows-1252 bytes, after the table of the WHATWG Encoding Standard, "windows-1252":
// the five bytes that the code page leaves empty (81 8D 8F 90 9D) become the control characters
// of the same number, so no byte is lost.
std::string from_windows_1252(std::string_view bytes);

// The other way; nothing if a character is not in the code page.
std::optional<std::string> to_windows_1252(std::string_view utf8);

}  // namespace backmark::exchange
