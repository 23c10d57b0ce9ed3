#include "draw/quality.h"

#include <algorithm>

#include "base/text.h"

namespace backmark::draw {

bool is_short_last(const Paragraph& paragraph) {
  if (paragraph.size() < 2) {
    return false;
  }
  std::string words;
  for (const GlyphRun& run : paragraph.back().line.runs) {
    words += run.text;
  }
  return paragraph.back().natural < 10 || to_code_points(trim(words)).size() < 7;
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
  short_last += is_short_last(paragraph) ? 1 : 0;
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
  loosest = std::max(loosest, other.loosest);
  sum_ += other.sum_;
  mean_space = lines > 0 ? sum_ / lines : 0;
}

}  // namespace backmark::draw
