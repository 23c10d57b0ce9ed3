// Prose as plain values: what the reader of Markdown hands to whoever sets pages. Spans hold
// the words as they are printed, so that setting needs no record and no bibliography; `key`
// says what a span speaks of, for links and the index.
#pragma once

#include <string>
#include <vector>

namespace backmark::press {

enum class Voice { roman, italic, strong, small_caps };

// A stretch of words in one voice, or a mark among them. No line ends; runs of spaces are one.
struct Span {
  enum class Kind {
    words,
    note,      // the mark of a footnote: `note` counts, `text` is empty
    citation,  // `text` the short title, "Corrow 1957, p. 4"; `key` of the bibliography
    piece,     // `text` its number in the show, "57"; `key` its catalogue number
    page,      // the page of a place of the book, known when set: `key` names the place
    address,   // `text` as printed; `key` a URI
    figure,    // `text` "fig. 3"; `key` names its place, "figure 3"
  };
  Kind kind = Kind::words;
  Voice voice = Voice::roman;
  std::string text;
  std::string key;
  int note = -1;  // index into Prose::notes

  friend bool operator==(const Span&, const Span&) = default;
};

using Words = std::vector<Span>;

// A figure's piece and what of it is shown.
struct FigurePiece {
  std::string piece;  // catalogue number; empty: `file`
  std::string view;   // "front", "back", "tips", "mark" ...
  std::string file;   // below photos/, for a picture of no piece

  friend bool operator==(const FigurePiece&, const FigurePiece&) = default;
};

struct Block {
  enum class Kind {
    heading,  // level 2 is the first inside a chapter
    paragraph,
    item,  // of a list: `label` is "•" or "3."; level 1 is the outermost
    quotation,
    figure,  // `words` is the caption; several pieces stand side by side at one scale
  };
  Kind kind = Kind::paragraph;
  int level = 0;
  std::string label;
  Words words;
  std::vector<FigurePiece> pieces;
  int number = 0;      // of a figure, counted through the book from 1
  std::string credit;  // of a figure that shows no piece; empty: none is given
  std::string where;   // "essays/1-who-was-first.md, line 12"

  friend bool operator==(const Block&, const Block&) = default;
};

// A chapter. Notes are counted from 1 in the order of their marks.
struct Prose {
  std::string file;    // "1-who-was-first.md"
  std::string title;   // the level 1 heading, curved quotes
  std::string author;  // the line of italics under it; empty: the show's author
  Words epigraph;      // empty: none
  std::vector<Block> blocks;
  std::vector<Words> notes;
};

// The words as they read, marks of notes left out.
std::string plain_text(const Words& words);

}  // namespace backmark::press
