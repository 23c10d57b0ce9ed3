// A page of the book as a value: what stands on it and where, before anything is drawn. Lengths
// are mm from the trim's corner.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "draw/fonts.h"
#include "model/piece.h"
#include "press/book/grid.h"

namespace backmark::press::book {

// What a line is to a reader who cannot see the page.
enum class Role { artifact, title, heading, text, caption, note, entry, table };

struct TextLine {
  draw::Point baseline;
  draw::Line line;
  Role role = Role::text;
  int paragraph = 0;  // lines of one paragraph share it; 0: stands alone
  bool on_grid = false;
};

// A photograph, or a part of one, at a true scale.
struct Plate {
  const model::Photograph* photograph = nullptr;
  draw::Box box;            // where the whole picture lies
  double ratio = 1;         // mm of paper for a mm of piece
  bool shadow = true;       // of a cut-out; marks keep their ground and have none
  bool fade_head = false;   // a cord runs out at the top
  std::string alternative;  // what it shows, in words
};

struct Rule {
  draw::Point from;
  draw::Point to;
  double width_pt = 0.35;
  draw::Colour colour;
};

struct Link {
  draw::Box box;
  std::string name;     // a place of the book, or
  std::string address;  // a URI
};

struct Page {
  int number = 0;
  Side side = Side::recto;
  bool folio = true;  // number and running foot
  std::string foot;   // words of the running foot, lower case
  std::vector<TextLine> lines;
  std::vector<Plate> plates;
  std::vector<Rule> rules;
  std::vector<Link> links;
  std::vector<std::pair<std::string, draw::Point>> places;  // what links and page_of name
  // Charts and bars: drawn before the lines, after the plates.
  std::vector<std::function<void(draw::Canvas&)>> drawings;
  std::string outline;  // its line in the PDF's outline; empty: none
  int outline_level = 0;

  bool blank() const { return lines.empty() && plates.empty() && drawings.empty(); }
};

}  // namespace backmark::press::book
