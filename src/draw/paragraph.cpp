#include "draw/paragraph.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.h"
#include "draw/break_lines.h"

namespace backmark::draw {

namespace {

constexpr double mm_per_pt = 25.4 / 72.0;
constexpr std::string_view soft_hyphen = "\u00AD";

// A part of a word in one style, between places where a line may end.
struct Bit {
  std::size_t stretch = 0;
  std::string text;
  double width = 0;
};

// What stands between two places where a line may end.
struct Piece {
  std::vector<Bit> bits;
  double width = 0;
  double space_after = 0;  // 0: no space
  BreakKind kind = BreakKind::space;
  double joined_less = 0;  // width lost when it is joined to the next (kerning, ligatures)
};

struct Share {
  std::string_view sign;
  double share;
};

constexpr std::array<Share, 8> hanging_right{{{".", 0.55},
                                              {",", 0.55},
                                              {"-", 0.60},
                                              {"’", 0.60},
                                              {"”", 0.40},
                                              {";", 0.35},
                                              {":", 0.35},
                                              {"–", 0.25}}};
constexpr std::array<Share, 2> hanging_left{{{"“", 0.40}, {"‘", 0.40}}};

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
         (static_cast<unsigned char>(c) >= 0x80);
}

// Byte offsets in a word after which a line may end: at its own hyphens and dashes.
std::vector<std::size_t> own_ends(std::string_view word) {
  std::vector<std::size_t> ends;
  for (std::size_t i = 2; i + 2 < word.size(); ++i) {
    if (word[i] == '-' && is_letter(word[i - 1]) && is_letter(word[i + 1])) {
      ends.push_back(i + 1);
    } else if (word.compare(i - 2, 3, "—") == 0) {
      ends.push_back(i + 1);
    }
  }
  return ends;
}

// Offsets where a hyphen of ours may go: in the lower-case core of a word between punctuation.
std::vector<std::size_t> hyphen_ends(const Hyphens& hyphens, std::string_view word) {
  const auto lower = [](char c) { return c >= 'a' && c <= 'z'; };
  std::size_t first = 0;
  while (first < word.size() && !lower(word[first])) {
    if (is_letter(word[first]) && static_cast<unsigned char>(word[first]) < 0x80) {
      return {};  // a capital
    }
    ++first;
  }
  std::size_t last = first;
  while (last < word.size() && lower(word[last])) {
    ++last;
  }
  for (std::size_t i = last; i < word.size(); ++i) {
    if (lower(word[i]) || (word[i] >= '0' && word[i] <= '9')) {
      return {};  // several parts: a compound, a figure
    }
  }
  std::vector<std::size_t> ends = hyphens.points(word.substr(first, last - first));
  for (std::size_t& end : ends) {
    end += first;
  }
  return ends;
}

class Setter {
 public:
  Setter(const Fonts& fonts, const Hyphens* hyphens, const std::vector<Stretch>& text)
      : fonts_(fonts), hyphens_(hyphens), text_(text) {
    for (std::size_t at = 0; at < text.size(); ++at) {
      take(at);
    }
    if (!pieces_.empty()) {
      pieces_.back().kind = BreakKind::end;
      pieces_.back().space_after = 0;
    }
  }

  bool empty() const { return pieces_.empty(); }
  std::vector<BreakPlace> places() const;
  Paragraph lines(const std::vector<int>& breaks, const Measures& measures, bool even) const;
  double em() const { return text_.empty() ? 4 : text_.front().style.size_pt * mm_per_pt; }

 private:
  void take(std::size_t stretch);
  void take_word(std::size_t stretch, std::string_view word);
  void add(std::size_t stretch, std::string_view text);
  void end_piece(BreakKind kind);
  double hangs_right(const Piece& piece) const;
  double hangs_left(const Piece& piece) const;
  double hyphen_width(const Piece& piece) const {
    return fonts_.width("-", text_[piece.bits.back().stretch].style);
  }
  std::vector<Bit> bits_of(std::size_t from, std::size_t to, std::vector<double>& gaps) const;
  ParagraphLine line(
      std::size_t from, std::size_t to, double width, double indent, bool even) const;

  const Fonts& fonts_;
  const Hyphens* hyphens_;
  const std::vector<Stretch>& text_;
  std::vector<Piece> pieces_;
  bool open_ = false;  // the last piece goes on
};

void Setter::add(std::size_t stretch, std::string_view text) {
  if (!open_) {
    pieces_.emplace_back();
    open_ = true;
  }
  Bit bit{stretch, std::string(text), fonts_.width(text, text_[stretch].style)};
  pieces_.back().width += bit.width;
  pieces_.back().bits.push_back(std::move(bit));
}

void Setter::end_piece(BreakKind kind) {
  pieces_.back().kind = kind;
  open_ = false;
}

void Setter::take_word(std::size_t stretch, std::string_view word) {
  std::vector<std::size_t> ours;
  if (hyphens_ != nullptr && text_[stretch].divide) {
    ours = hyphen_ends(*hyphens_, word);
  }
  std::vector<std::size_t> ends = own_ends(word);
  const std::size_t existing = ends.size();
  ends.insert(ends.end(), ours.begin(), ours.end());
  if (existing > 0) {
    ends.resize(existing);  // a compound is divided at its hyphen only
  }
  std::size_t from = 0;
  for (const std::size_t end : ends) {
    add(stretch, word.substr(from, end - from));
    const Style& style = text_[stretch].style;
    pieces_.back().joined_less = pieces_.back().bits.back().width +
                                 fonts_.width(word.substr(end), style) -
                                 fonts_.width(word.substr(from), style);
    end_piece(existing > 0 ? BreakKind::hyphen_existing : BreakKind::hyphen_own);
    from = end;
  }
  add(stretch, word.substr(from));
}

void Setter::take(std::size_t stretch) {
  const std::string_view text = text_[stretch].text;
  std::size_t at = 0;
  while (at < text.size()) {
    if (text[at] == ' ' || text[at] == '\n') {
      if (open_) {
        pieces_.back().space_after = fonts_.width(" ", text_[stretch].style);
        end_piece(BreakKind::space);
      }
      ++at;
      continue;
    }
    const std::size_t end = std::min(text.find_first_of(" \n", at), text.size());
    take_word(stretch, text.substr(at, end - at));
    at = end;
  }
}

double Setter::hangs_right(const Piece& piece) const {
  const Bit& bit = piece.bits.back();
  const Style& style = text_[bit.stretch].style;
  if (style.raise > 0) {
    return 0;
  }
  for (const Share& one : hanging_right) {
    if (ends_with(bit.text, one.sign)) {
      return one.share * fonts_.width(one.sign, style);
    }
  }
  return 0;
}

double Setter::hangs_left(const Piece& piece) const {
  const Bit& bit = piece.bits.front();
  for (const Share& one : hanging_left) {
    if (starts_with(bit.text, one.sign)) {
      return one.share * fonts_.width(one.sign, text_[bit.stretch].style);
    }
  }
  return 0;
}

std::vector<BreakPlace> Setter::places() const {
  std::vector<BreakPlace> places;
  places.reserve(pieces_.size());
  double at = 0;
  double spaces = 0;
  int letters = 0;
  for (std::size_t i = 0; i < pieces_.size(); ++i) {
    const Piece& piece = pieces_[i];
    at += piece.width;
    for (const Bit& bit : piece.bits) {
      letters += static_cast<int>(bit.text.size());
    }
    BreakPlace place;
    place.kind = piece.kind;
    place.at = at;
    place.end_extra = piece.kind == BreakKind::hyphen_own
                          ? hyphen_width(piece) * (1 - hanging_right[2].share)
                          : -hangs_right(piece);
    place.spaces_at = spaces;
    place.letters_at = letters;
    at += piece.space_after - piece.joined_less;
    spaces += piece.space_after;
    letters += piece.space_after > 0 ? 1 : 0;
    place.next_at = at;
    place.spaces_next = spaces;
    if (i + 1 < pieces_.size()) {
      place.start_less = hangs_left(pieces_[i + 1]);
    }
    places.push_back(place);
  }
  return places;
}

// The bits of a line, those of one word and style joined again; `gaps` holds the space after
// each.
std::vector<Bit> Setter::bits_of(std::size_t from,
                                 std::size_t to,
                                 std::vector<double>& gaps) const {
  std::vector<Bit> bits;
  bool join = false;
  for (std::size_t at = from; at <= to; ++at) {
    for (const Bit& bit : pieces_[at].bits) {
      if (join && bits.back().stretch == bit.stretch) {
        bits.back().text += bit.text;
      } else {
        bits.push_back(bit);
        gaps.push_back(0);
      }
      join = false;
    }
    join = pieces_[at].space_after == 0;
    gaps.back() = at < to ? pieces_[at].space_after : 0;
  }
  if (pieces_[to].kind == BreakKind::hyphen_own) {
    bits.back().text += soft_hyphen;
  }
  return bits;
}

// A soft hyphen at the end is drawn as a hyphen and read as what it is.
Line shaped(const Fonts& fonts, const std::string& text, const Style& style) {
  if (!ends_with(text, soft_hyphen)) {
    return fonts.shape(text, style);
  }
  Line line = fonts.shape(text.substr(0, text.size() - soft_hyphen.size()) + "-", style);
  GlyphRun& last = line.runs.back();
  last.text.replace(last.text.size() - 1, 1, soft_hyphen);
  last.clusters.back().bytes = static_cast<int>(soft_hyphen.size());
  return line;
}

// Puts a bit and the space after it at x, in one run with what stands before if the style
// allows.
void put(Line& to, const Line& bit, double x) {
  for (const GlyphRun& run : bit.runs) {
    GlyphRun* last = to.runs.empty() ? nullptr : &to.runs.back();
    if (last == nullptr || last->face != run.face || last->size_pt != run.size_pt ||
        !(last->colour == run.colour)) {
      to.runs.push_back({run.face, run.size_pt, run.colour, {}, {}, {}});
      last = &to.runs.back();
    }
    last->text += run.text;
    for (Glyph glyph : run.glyphs) {
      glyph.x += x;
      last->glyphs.push_back(glyph);
    }
    last->clusters.insert(last->clusters.end(), run.clusters.begin(), run.clusters.end());
  }
  to.width = std::max(to.width, x + bit.width);
}

ParagraphLine Setter::line(
    std::size_t from, std::size_t to, double width, double indent, bool even) const {
  std::vector<double> gaps;
  const std::vector<Bit> bits = bits_of(from, to, gaps);
  std::vector<Line> shapes;
  double natural = 0;
  double spaces = 0;
  for (std::size_t i = 0; i < bits.size(); ++i) {
    shapes.push_back(shaped(fonts_, bits[i].text, text_[bits[i].stretch].style));
    natural += shapes.back().width;
    spaces += gaps[i];
  }
  const Piece& last = pieces_[to];
  const double hung_left = from == 0 ? 0 : hangs_left(pieces_[from]);
  const double hung_right = last.kind == BreakKind::hyphen_own
                                ? hyphen_width(last) * hanging_right[2].share
                                : hangs_right(last);
  const double room = width - indent + hung_left + hung_right - natural;
  ParagraphLine out;
  out.natural = indent - hung_left - hung_right + natural + spaces;
  out.hyphen = last.kind == BreakKind::hyphen_own;
  if (spaces > 0 && (even || room < spaces)) {
    out.space = std::max(1 - tightest_space, room / spaces);
  }
  out.overfull = std::max(0.0, spaces * out.space - room);
  double x = indent - hung_left;
  for (std::size_t i = 0; i < bits.size(); ++i) {
    const int tag = text_[bits[i].stretch].tag;
    if (tag >= 0) {
      out.tags.push_back({tag, x, shapes[i].width});
    }
    put(out.line, shapes[i], x);
    x += shapes[i].width;
    if (gaps[i] > 0) {
      put(out.line, fonts_.shape(" ", text_[bits[i].stretch].style), x);
      x += gaps[i] * out.space;
    }
  }
  return out;
}

Paragraph Setter::lines(const std::vector<int>& breaks,
                        const Measures& measures,
                        bool even) const {
  Paragraph paragraph;
  std::size_t from = 0;
  for (const int end : breaks) {
    const auto to = static_cast<std::size_t>(end);
    const bool last = to + 1 == pieces_.size();
    paragraph.push_back(
        line(from, to, measures.width, from == 0 ? measures.first_indent : 0, even && !last));
    from = to + 1;
  }
  return paragraph;
}

Measure measure_of(const Measures& measures, double em) {
  return {measures.width, em, measures.first_indent};
}

}  // namespace

Paragraph set_justified(const Fonts& fonts,
                        const Hyphens& hyphens,
                        const std::vector<Stretch>& text,
                        const Measures& measures) {
  const Setter setter(fonts, &hyphens, text);
  if (setter.empty()) {
    return {};
  }
  const auto breaks = break_justified(setter.places(), measure_of(measures, setter.em()));
  return setter.lines(breaks, measures, true);
}

Paragraph set_first_fit(const Fonts& fonts,
                        const Hyphens& hyphens,
                        const std::vector<Stretch>& text,
                        const Measures& measures) {
  const Setter setter(fonts, &hyphens, text);
  if (setter.empty()) {
    return {};
  }
  const auto breaks = break_first_fit(setter.places(), measure_of(measures, setter.em()));
  return setter.lines(breaks, measures, true);
}

Paragraph set_ragged(const Fonts& fonts,
                     const std::vector<Stretch>& text,
                     const Measures& measures) {
  const Setter setter(fonts, nullptr, text);
  const auto breaks = break_ragged(setter.places(), measure_of(measures, setter.em()));
  return setter.lines(breaks, measures, false);
}

}  // namespace backmark::draw
