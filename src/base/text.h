// Text: UTF-8 throughout; numbers never by locale.
#pragma once

#include <fmt/format.h>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace backmark {

// Without white space (including no-break space) at both ends.
std::string_view trim(std::string_view text);

// Pieces between the separators; empty pieces are kept, so joining gives the text back.
std::vector<std::string_view> split(std::string_view text, std::string_view separator);

std::string join(const std::vector<std::string>& parts, std::string_view separator);

// ASCII letters to lower case; other bytes are left as they are.
std::string lower_ascii(std::string_view text);

bool starts_with(std::string_view text, std::string_view prefix);
bool ends_with(std::string_view text, std::string_view suffix);
bool contains(std::string_view text, std::string_view part);
std::string replace_all(std::string text, std::string_view from, std::string_view to);

// The whole of `text` as a number with a full stop as decimal mark; nothing if any of it is
// left.
std::optional<double> to_number(std::string_view text);
std::optional<long> to_whole(std::string_view text);

// Whether every byte sequence is well-formed UTF-8 (RFC 3629: no overlong forms, no
// surrogates).
bool is_utf8(std::string_view text);

// Code points of well-formed UTF-8, and back. Ill-formed bytes become U+FFFD.
std::u32string to_code_points(std::string_view text);
std::string to_utf8(std::u32string_view code_points);

// With spaces behind it up to `width` code points; longer texts are left as they are.
std::string padded(std::string text, std::size_t width);
// At most `most` code points, the last an ellipsis where something was cut.
std::string shortened(std::string text, std::size_t most);
// Broken at spaces into rows of at most `width` code points; a longer word has its own row.
std::vector<std::string> rows_of(std::string_view text, std::size_t width);
// Without spaces at its end.
std::string without_trailing_spaces(std::string text);

// How many edits (insert, drop, change, swap of neighbours) turn a into b; used for "did you
// mean".
int edit_distance(std::string_view a, std::string_view b);

// The closest of `choices` within a third of its length, or nothing.
std::optional<std::string> closest(std::string_view text,
                                   const std::vector<std::string>& choices);

}  // namespace backmark
