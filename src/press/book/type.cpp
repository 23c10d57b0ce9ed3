#include "press/book/type.h"

#include <algorithm>
#include <array>

#include "base/text.h"

namespace backmark::press::book {

namespace {

draw::Style style_of(draw::Face face, double size_pt) {
  draw::Style style;
  style.face = face;
  style.size_pt = size_pt;
  return style;
}

draw::Style in_voice(const draw::Style& base, Voice voice) {
  draw::Style style = base;
  if (voice == Voice::italic) {
    style.face = base.face == draw::Face::text ? draw::Face::text_italic : draw::Face::text;
  } else if (voice == Voice::small_caps) {
    style.small_caps = true;
    style.tracking = 30;
  } else if (voice == Voice::strong) {
    // The book face has no bold: weight comes from the sans at the same height of the x.
    style = style.with(draw::Face::sans_semibold).sized(0.77 * base.size_pt);
  }
  return style;
}

draw::Style note_mark(const draw::Style& base) {
  draw::Style style = base.sized(0.66 * base.size_pt);
  style.figures = draw::Figures::lining;
  style.raise = 0.34 / 0.66;
  return style;
}

// Bytes of the opening: to a comma or stop after three to six words, else to before the last
// small word that may begin the sixth or an earlier one.
std::size_t opening_length(std::string_view text) {
  constexpr std::array<std::string_view, 18> small{"and",  "as", "at",  "by",   "for", "from",
                                                   "has",  "in", "is",  "of",   "on",  "that",
                                                   "than", "to", "was", "were", "who", "with"};
  constexpr int least = 3;
  constexpr int most = 6;
  std::size_t cut = 0;
  std::size_t at = 0;
  for (int words = 1; words <= most && at < text.size(); ++words) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string_view word = text.substr(at, end - at);
    const bool is_small = std::find(small.begin(), small.end(), word) != small.end();
    if (words > least && (is_small || cut == 0)) {
      cut = at - 1;
    }
    if (words >= least && contains(".,;:!?", word.substr(word.size() - 1))) {
      return end;
    }
    at = end + 1;
  }
  return cut == 0 ? text.size() : cut;
}

}  // namespace

draw::Style text_style(const Grid& grid) {
  return roman(grid, 12);
}

draw::Style roman(const Grid& grid, double size_pt) {
  draw::Style style = style_of(draw::Face::text, grid.pt(size_pt));
  style.figures = draw::Figures::old_style;
  return style;
}

draw::Style italic(const Grid& grid, double size_pt) {
  return roman(grid, size_pt).with(draw::Face::text_italic);
}

draw::Style caption(const Grid& grid) {
  return style_of(draw::Face::text, grid.pt(9.2));
}

draw::Style caption_italic(const Grid& grid) {
  return caption(grid).with(draw::Face::text_italic);
}

draw::Style figures(const Grid& grid) {
  draw::Style style = caption(grid);
  style.tabular = true;
  return style;
}

draw::Style small_caps(const Grid& grid, double size_pt) {
  draw::Style style = style_of(draw::Face::text, grid.pt(size_pt));
  style.small_caps = true;
  style.tracking = 55;
  return style;
}

draw::Style sans(const Grid& grid, double size_pt) {
  return style_of(draw::Face::sans, grid.pt(size_pt));
}

draw::Style sans_strong(const Grid& grid, double size_pt) {
  return style_of(draw::Face::sans_semibold, grid.pt(size_pt));
}

void open_with_small_caps(std::vector<draw::Stretch>& text) {
  if (text.empty() || text.front().tag >= 0 || text.front().text.empty()) {
    return;
  }
  draw::Stretch opening = text.front();
  const std::size_t cut = opening_length(opening.text);
  text.front().text.erase(0, cut);
  opening.text.resize(cut);
  opening.style.small_caps = true;
  opening.style.tracking = 30;
  opening.divide = false;
  text.insert(text.begin(), std::move(opening));
}

std::string for_small_caps(std::string_view text) {
  return lower_ascii(text);
}

std::vector<draw::Stretch> stretches(const Words& words,
                                     const draw::Style& base,
                                     const std::function<int(const std::string&)>& page_of) {
  std::vector<draw::Stretch> all;
  for (std::size_t at = 0; at < words.size(); ++at) {
    const Span& span = words[at];
    draw::Stretch stretch{draw::with_held_spaces(span.text), in_voice(base, span.voice)};
    if (span.kind != Span::Kind::words) {
      stretch.tag = static_cast<int>(at);
    }
    if (span.kind == Span::Kind::note) {
      stretch.text = std::to_string(span.note + 1);
      stretch.style = note_mark(base);
    } else if (span.kind == Span::Kind::page) {
      const int page = page_of(span.key);
      stretch.text = page == 0 ? "000" : std::to_string(page);
    }
    stretch.divide = span.kind == Span::Kind::words && span.voice != Voice::small_caps;
    all.push_back(std::move(stretch));
  }
  return all;
}

}  // namespace backmark::press::book
