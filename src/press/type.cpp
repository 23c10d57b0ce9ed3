#include "press/type.h"

#include <algorithm>

#include "base/text.h"
#include "draw/break_lines.h"

namespace backmark::press {
namespace {

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  for (const auto part : split(text, " ")) {
    if (!part.empty()) {
      words.emplace_back(part);
    }
  }
  return words;
}

std::vector<std::string> broken(const draw::Fonts& fonts,
                                const std::vector<std::string>& words,
                                const draw::Style& style,
                                double width) {
  const double space = fonts.width(" ", style);
  std::vector<draw::BreakPlace> places;
  double at = 0;
  int letters = 0;
  for (std::size_t i = 0; i < words.size(); ++i) {
    at += fonts.width(words[i], style);
    letters += static_cast<int>(to_code_points(words[i]).size());
    draw::BreakPlace place;
    place.kind = i + 1 == words.size() ? draw::BreakKind::end : draw::BreakKind::space;
    place.at = at;
    at += space;
    place.next_at = at;
    place.letters_at = letters++;
    places.push_back(place);
  }
  std::vector<std::string> lines;
  const auto breaks = draw::break_ragged(places, {width, style.size_pt * mm_per_pt, 0});
  std::size_t next = 0;
  for (const int end : breaks) {
    std::string line;
    for (; next <= static_cast<std::size_t>(end); ++next) {
      line += (line.empty() ? "" : " ") + words[next];
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

// A single word left over for the last line is given company from the line above, if no line
// more is needed for it.
std::vector<std::string> wrap_paragraph(const draw::Fonts& fonts,
                                        const std::vector<std::string>& words,
                                        const draw::Style& style,
                                        double width) {
  const auto lines = broken(fonts, words, style, width);
  for (double share = 0.96; share > 0.8 && lines.size() > 1 && !contains(lines.back(), " ");
       share -= 0.04) {
    auto tried = broken(fonts, words, style, width * share);
    if (tried.size() == lines.size() && contains(tried.back(), " ")) {
      return tried;
    }
  }
  return lines;
}

// "[text](target)" becomes "text"; what is no link is left alone.
std::string without_links(std::string text) {
  std::size_t open = 0;
  while ((open = text.find('[', open)) != std::string::npos) {
    const std::size_t middle = text.find("](", open);
    const std::size_t close = middle == std::string::npos ? middle : text.find(')', middle);
    if (close == std::string::npos) {
      return text;
    }
    text = text.substr(0, open) + text.substr(open + 1, middle - open - 1) +
           text.substr(close + 1);
  }
  return text;
}

}  // namespace

std::vector<std::string> wrapped(const draw::Fonts& fonts,
                                 std::string_view text,
                                 const draw::Style& style,
                                 double width) {
  std::vector<std::string> lines;
  for (const auto paragraph : split(text, "\n")) {
    const auto words = words_of(paragraph);
    if (!words.empty()) {
      for (std::string& line : wrap_paragraph(fonts, words, style, width)) {
        lines.push_back(std::move(line));
      }
    }
  }
  return lines;
}

std::vector<std::string> balanced(const draw::Fonts& fonts,
                                  std::string_view text,
                                  const draw::Style& style,
                                  double width) {
  auto lines = wrapped(fonts, text, style, width);
  const auto fits = [&](const std::vector<std::string>& tried, double measure) {
    return std::all_of(tried.begin(), tried.end(), [&](const std::string& line) {
      return fonts.width(line, style) <= measure;
    });
  };
  for (double narrower = width - 2; lines.size() > 1 && narrower > width / 2; narrower -= 2) {
    auto tried = wrapped(fonts, text, style, narrower);
    if (tried.size() > lines.size() || !fits(tried, narrower)) {
      break;
    }
    lines = std::move(tried);
  }
  return lines;
}

double show_lines(draw::Canvas& canvas,
                  const draw::Fonts& fonts,
                  draw::Point first_baseline,
                  const std::vector<std::string>& lines,
                  const draw::Style& style,
                  double leading_mm) {
  draw::Point at = first_baseline;
  for (const std::string& line : lines) {
    draw::show(canvas, fonts, at, draw::Run{line, style});
    at.y += leading_mm;
  }
  return at.y;
}

std::string fitted(const draw::Fonts& fonts,
                   std::string_view text,
                   const draw::Style& style,
                   double width) {
  if (fonts.width(text, style) <= width) {
    return std::string(text);
  }
  std::u32string letters = to_code_points(text);
  while (!letters.empty() && fonts.width(to_utf8(letters) + "…", style) > width) {
    letters.pop_back();
  }
  return std::string(trim(to_utf8(letters))) + "…";
}

int word_count(std::string_view text) {
  int count = 0;
  for (const auto line : split(text, "\n")) {
    count += static_cast<int>(words_of(line).size());
  }
  return count;
}

std::string counted(std::size_t count, std::string_view noun) {
  return fmt::format("{} {}{}", count, noun, count == 1 ? "" : "s");
}

std::string without_marks(std::string_view markdown) {
  std::string text;
  for (const auto block : split(markdown, "\n\n")) {
    std::string flat(trim(replace_all(std::string(block), "\n", " ")));
    while (starts_with(flat, "#")) {
      flat.erase(0, 1);
    }
    flat = replace_all(replace_all(without_links(flat), "*", ""), "_", "");
    if (!trim(flat).empty()) {
      text += (text.empty() ? "" : "\n") + std::string(trim(flat));
    }
  }
  return text;
}

}  // namespace backmark::press
