// What a document says to those who do not see its pages: its parts in reading order, headings
// by level, pictures in words. Written into a PDF as its tagged structure (ISO 32000-1, 14.7
// and 14.8); other surfaces keep none of it.
#pragma once

#include <string>

namespace backmark::draw {

enum class Role {
  part,     // front matter, essays, catalogue, back matter
  section,  // one essay, one entry, one list
  heading,  // with a level, 1 to 6
  paragraph,
  quotation,  // a block of it
  note,       // foot or side
  figure,     // has `alt`
  caption,
  list,
  item,  // of a list
  contents,
  contents_line,
  index,
  table,
  row,
  cell,
  head_cell,
};

// A number that Canvas::element gave; 0 is the document itself.
using ElementNumber = int;

struct Element {
  Role role = Role::paragraph;
  ElementNumber within = 0;   // an element made before this one
  int level = 1;              // of a heading
  std::string alt = {};       // of a figure: what is to be seen, in a sentence
  std::string language = {};  // BCP 47; empty: as around it
};

// How one stretch of an element is to be read.
struct Reading {
  std::string language = {};  // of these words, if other than around them
};

}  // namespace backmark::draw
