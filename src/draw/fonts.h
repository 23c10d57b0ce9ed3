// The fonts of the house, and nothing else that a machine may have installed.
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/file.h"
#include "base/result.h"
#include "draw/canvas.h"
#include "draw/style.h"

namespace backmark::draw {

// Glyphs that stand for some bytes of a text, so that it can be copied and searched.
struct Cluster {
  int bytes = 0;
  int glyphs = 0;
};

struct Glyph {
  unsigned long id = 0;
  double x = 0;  // mm right of the line's start
  double y = 0;  // mm below its baseline
};

// Glyphs of one font, size and colour.
struct GlyphRun {
  Face face = Face::text;
  double size_pt = 0;
  Colour colour;
  std::string text;
  std::vector<Glyph> glyphs;
  std::vector<Cluster> clusters;
};

// A shaped line, ready to be drawn at a baseline.
struct Line {
  std::vector<GlyphRun> runs;
  double width = 0;  // mm, the sum of advances
};

// Where font files are looked for, first hit wins: "fonts" beside the program, then the folders
// of the Debian packages fonts-ebgaramond, fonts-inter and fonts-sil-gentiumplus.
std::vector<Path> font_folders();

// The loaded faces. Shaped words are remembered, so one object is for one thread.
class Fonts {
 public:
  // Problem: not_found, naming the file and the package that holds it.
  static Result<Fonts> load(const std::vector<Path>& folders = font_folders());

  Fonts(Fonts&&) noexcept;
  Fonts& operator=(Fonts&&) noexcept;
  ~Fonts();

  // Left to right, ligatures and kerning on. A letter that its face lacks is taken from Gentium
  // Plus at 0.89 of the size (x-heights .455 against .405 em, measured); what that lacks too is
  // shown as an empty box and told by missing().
  const Line& shape(std::string_view text, const Style& style) const;
  Line shape(const RichText& text) const;
  double width(std::string_view text, const Style& style) const;
  double width(const RichText& text) const;

  // Letters of the text that no face has, each once, in order.
  std::u32string missing(std::string_view text, const Style& style) const;

  // Height of the lower-case x and of capitals, in em.
  double x_height(Face face) const;
  double cap_height(Face face) const;

  // Names of the fonts as a PDF lists them; any other name in a PDF is a fault.
  static std::vector<std::string> names();

  // For the bodies of this room only.
  struct Inside;
  Inside& inside() const { return *inside_; }

 private:
  explicit Fonts(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

enum class Align { left, centre, right };

void show(Canvas& canvas, const Fonts& fonts, Point baseline, const Line& line);
// Returns the width in mm.
double show(Canvas& canvas,
            const Fonts& fonts,
            Point baseline,
            const RichText& text,
            Align align = Align::left);
double show(Canvas& canvas,
            const Fonts& fonts,
            Point baseline,
            const Run& run,
            Align align = Align::left);
// Adds the outlines of the letters to the canvas's path, to be filled, engraved or clipped.
void add_outline(Canvas& canvas, const Fonts& fonts, Point baseline, const Run& run);

// The line shows as it is and reads as `words` when it is searched, copied or read aloud: the
// first half of a divided word reads as the whole word, the second as nothing. A line without
// glyphs is left alone.
Line read_as(Line line, std::string_view words);

// Puts `line` after `to`, starting at x.
void append(Line& to, const Line& line, double x);

}  // namespace backmark::draw
