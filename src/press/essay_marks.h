// The book's own marks within a stretch of words; for the bodies of this room only.
#pragma once

#include <string>
#include <vector>

#include "press/essay.h"

namespace backmark::press {

// What is met while a text is read.
struct EssayDesk {
  const EssayWorld& world;
  std::string file;
  std::vector<std::string> cited;
  bool in_note = false;  // works stand in brackets in the text, bare in a note
  Problems findings;
  std::vector<std::pair<long, std::string>> figures_called;  // by line; what each shows

  std::string where(long line) const;
  void find(long line, std::string what, std::string fix);
};

// The stretch with its marks read. `text` may hold line ends, which are counted from `line` and
// become spaces.
void add_marked(Words& words, const std::string& text, Voice voice, long line, EssayDesk& desk);

// The pieces of a figure's address: "ES 118 front, ES 20 back" or "bench.jpg".
std::vector<FigurePiece> figure_pieces(const std::string& address, long line, EssayDesk& desk);

// Finds notes that no mark calls. The parser drops them, so they are looked for in the source.
void find_notes_without_mark(std::string_view source, EssayDesk& desk);

}  // namespace backmark::press
