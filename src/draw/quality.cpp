#include "draw/quality.h"

#include <algorithm>

#include "base/text.h"

namespace backmark::draw {

namespace {

constexpr std::size_t most_scraps = 8;

std::string words_of(const ParagraphLine& line) {
  std::string words;
  for (const GlyphRun& run : line.line.runs) {
    words += run.text;
  }
  return std::string(trim(words));
}

}  // namespace

bool is_short_last(const Paragraph& paragraph) {
  return paragraph.size() >= 2 && (paragraph.back().natural < 10 ||
                                   to_code_points(words_of(paragraph.back())).size() < 7);
}

void Quality::add(const Paragraph& justified) {
  add_ragged(justified);
  bool before = false;
  for (std::size_t i = 0; i + 1 < justified.size(); ++i) {
    const ParagraphLine& line = justified[i];
    ++lines;
    loose += line.space > 1.5 ? 1 : 0;
    very_loose += line.space > 2 ? 1 : 0;
    hyphens += line.hyphen ? 1 : 0;
    hyphens_in_a_row += line.hyphen && before ? 1 : 0;
    loosest = std::max(loosest, line.space);
    sum_ += line.space;
    mean_space = sum_ / lines;
    before = line.hyphen;
  }
}

void Quality::add_ragged(const Paragraph& paragraph) {
  ++paragraphs;
  if (is_short_last(paragraph)) {
    ++short_last;
    if (scraps.size() < most_scraps) {
      scraps.push_back(words_of(paragraph[paragraph.size() - 2]) + " / " +
                       words_of(paragraph.back()));
    }
  }
  for (const ParagraphLine& line : paragraph) {
    overfull += line.overfull > 0.01 ? 1 : 0;
  }
}

void Quality::add(const Quality& other) {
  lines += other.lines;
  paragraphs += other.paragraphs;
  loose += other.loose;
  very_loose += other.very_loose;
  overfull += other.overfull;
  hyphens += other.hyphens;
  hyphens_in_a_row += other.hyphens_in_a_row;
  short_last += other.short_last;
  const std::size_t room = most_scraps - std::min(most_scraps, scraps.size());
  const std::size_t taken = std::min(room, other.scraps.size());
  scraps.insert(scraps.end(), other.scraps.begin(),
                other.scraps.begin() + static_cast<std::ptrdiff_t>(taken));
  loosest = std::max(loosest, other.loosest);
  sum_ += other.sum_;
  mean_space = lines > 0 ? sum_ / lines : 0;
}

}  // namespace backmark::draw
