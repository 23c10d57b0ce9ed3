#include <map>

#include "base/text.h"
#include "scenario/drawing.h"

namespace backmark::scenario {
namespace {

using draw::Point;

constexpr double letter_height = 6;
constexpr double gap = 1.5;

// A punch's letter: strokes on a grid 6 high, each a list of points "x,y x,y ..."; width first.
struct Glyph {
  double width = 4;
  std::vector<std::vector<Point>> strokes;
};

Glyph glyph(double width, std::string_view text) {
  Glyph made{width, {}};
  for (const auto stroke : split(text, ";")) {
    std::vector<Point> points;
    for (const auto pair : split(trim(stroke), " ")) {
      const auto xy = split(pair, ",");
      points.push_back({to_number(xy[0]).value_or(0), to_number(xy[1]).value_or(0)});
    }
    made.strokes.push_back(std::move(points));
  }
  return made;
}

const std::map<std::string, Glyph>& glyphs() {
  static const std::map<std::string, Glyph> all{
      {"A", glyph(4, "0,6 2,0 4,6;0.7,4 3.3,4")},
      {"B",
       glyph(3.6, "0,0 0,6 2.4,6 3.6,5.2 3.6,3.8 2.4,3 0,3;0,0 2.2,0 3.2,0.7 3.2,2.2 2.2,3")},
      {"C", glyph(3.8, "3.8,1 2.8,0 1.2,0 0,1.4 0,4.6 1.2,6 2.8,6 3.8,5")},
      {"D", glyph(3.8, "0,0 0,6 2.2,6 3.8,4.5 3.8,1.5 2.2,0 0,0")},
      {"E", glyph(3.2, "3.2,0 0,0 0,6 3.2,6;0,2.9 2.6,2.9")},
      {"F", glyph(3.2, "3.2,0 0,0 0,6;0,2.9 2.6,2.9")},
      {"G", glyph(4, "3.9,1 2.8,0 1.2,0 0,1.4 0,4.6 1.2,6 2.9,6 4,5 4,3.3 2.4,3.3")},
      {"H", glyph(3.8, "0,0 0,6;3.8,0 3.8,6;0,3 3.8,3")},
      {"I", glyph(0.4, "0.2,0 0.2,6")},
      {"J", glyph(2.6, "2.6,0 2.6,4.8 1.8,6 0.8,6 0,5")},
      {"K", glyph(3.7, "0,0 0,6;3.6,0 0,3.5;1.2,2.6 3.7,6")},
      {"L", glyph(3, "0,0 0,6 3,6")},
      {"M", glyph(4.8, "0,6 0.3,0 2.4,4.4 4.5,0 4.8,6")},
      {"N", glyph(3.9, "0,6 0,0 3.9,6 3.9,0")},
      {"O", glyph(4.2, "1.3,0 2.9,0 4.2,1.5 4.2,4.5 2.9,6 1.3,6 0,4.5 0,1.5 1.3,0")},
      {"P", glyph(3.5, "0,6 0,0 2.4,0 3.5,0.9 3.5,2.4 2.4,3.3 0,3.3")},
      {"Q",
       glyph(4.2, "1.3,0 2.9,0 4.2,1.5 4.2,4.5 2.9,6 1.3,6 0,4.5 0,1.5 1.3,0;2.6,4.4 4.4,6.4")},
      {"R", glyph(3.7, "0,6 0,0 2.4,0 3.4,0.9 3.4,2.2 2.4,3.1 0,3.1;1.9,3.1 3.7,6")},
      {"S",
       glyph(3.5, "3.4,0.9 2.5,0 1,0 0,0.9 0,2.1 1,2.8 2.6,3.2 3.5,4 3.5,5.1 2.5,6 0.9,6 0,5")},
      {"T", glyph(3.8, "0,0 3.8,0;1.9,0 1.9,6")},
      {"U", glyph(3.8, "0,0 0,4.6 1.2,6 2.6,6 3.8,4.6 3.8,0")},
      {"V", glyph(4, "0,0 2,6 4,0")},
      {"W", glyph(5.4, "0,0 1.3,6 2.7,1.4 4.1,6 5.4,0")},
      {"X", glyph(3.8, "0,0 3.8,6;3.8,0 0,6")},
      {"Y", glyph(3.8, "0,0 1.9,2.9 3.8,0;1.9,2.9 1.9,6")},
      {"Z", glyph(3.6, "0,0 3.6,0 0,6 3.6,6")},
      {"0", glyph(3.6, "1.1,0 2.5,0 3.6,1.5 3.6,4.5 2.5,6 1.1,6 0,4.5 0,1.5 1.1,0")},
      {"1", glyph(1.4, "0,1.2 1.2,0 1.2,6")},
      {"2", glyph(3.4, "0,1.2 0.9,0 2.5,0 3.4,1 3.4,2.2 0,6 3.4,6")},
      {"3", glyph(3.4,
                  "0,0.8 1,0 2.4,0 3.2,0.9 3.2,2.1 2.2,2.8 1.2,2.8;2.2,2.8 3.4,3.6 3.4,5 2.4,6 "
                  "0.9,6 0,5.2")},
      {"4", glyph(3.7, "2.7,6 2.7,0 0,4.2 3.7,4.2")},
      {"5", glyph(3.4, "3.2,0 0.4,0 0.2,2.6 2.2,2.4 3.4,3.4 3.4,4.9 2.3,6 0.9,6 0,5.2")},
      {"6", glyph(3.5, "3,0.2 1.4,1.2 0,3.4 0,4.8 1,6 2.5,6 3.5,5 3.5,3.9 2.5,3 1,3 0,4")},
      {"7", glyph(3.4, "0,0 3.4,0 1.2,6")},
      {"8", glyph(3.5,
                  "1,0 2.5,0 3.3,0.8 3.3,2 2.4,2.8 1.1,2.8 0.2,2 0.2,0.8 1,0;1.1,2.8 0,3.7 "
                  "0,5.1 1,6 2.5,6 3.5,5.1 3.5,3.7 2.4,2.8")},
      {"9", glyph(3.5, "0.5,5.8 2.1,4.8 3.5,2.6 3.5,1.2 2.5,0 1,0 0,1 0,2.1 1,3 2.5,3 3.5,2")},
      {".", glyph(0.4, "0.2,5.9 0.2,6")},
      {"·", glyph(0.6, "0.3,3 0.3,3.1")},
      {"&",
       glyph(4.2,
             "4.2,6 0.8,1.6 0.8,0.8 1.4,0 2.2,0 2.8,0.8 2.8,1.6 0,4 0,5.2 0.9,6 2.2,6 4,3.6")},
      {" ", glyph(1.6, "0,-9")},
  };
  return all;
}

std::vector<const Glyph*> spelled(const std::string& text) {
  std::vector<const Glyph*> row;
  for (const char32_t point : to_code_points(text)) {
    const auto found = glyphs().find(to_utf8(std::u32string(1, point)));
    row.push_back(found == glyphs().end() ? &glyphs().at(" ") : &found->second);
  }
  return row;
}

}  // namespace

double letters_width(const std::string& text, double height) {
  double width = -gap;
  for (const Glyph* letter : spelled(text)) {
    width += letter->width + gap;
  }
  return width * height / letter_height;
}

void draw_letters(
    Graver& graver, const std::string& text, Point centre, double height, bool engraved) {
  const double scale = height / letter_height;
  const double lean = engraved ? -0.16 : 0;
  std::vector<std::vector<Point>> strokes;
  double x = centre.x - letters_width(text, height) / 2;
  for (const Glyph* letter : spelled(text)) {
    for (const auto& stroke : letter->strokes) {
      if (stroke.size() < 2) {
        continue;
      }
      std::vector<Point> placed;
      for (const Point p : stroke) {
        placed.push_back(
            {x + p.x * scale + lean * (p.y - 3) * scale, centre.y + (p.y - 3) * scale});
      }
      strokes.push_back(std::move(placed));
    }
    x += (letter->width + gap) * scale;
  }
  graver.groove(
      [&](draw::Canvas& c) {
        for (const auto& stroke : strokes) {
          c.move_to(stroke.front());
          for (std::size_t i = 1; i < stroke.size(); ++i) {
            c.line_to(stroke[i]);
          }
        }
      },
      (engraved ? 0.09 : 0.16) * height);
}

void draw_mark(Graver& graver, Point centre, double height) {
  const Work& work = graver.work();
  draw::Canvas& canvas = graver.canvas();
  const auto lines = static_cast<double>(work.mark.size());
  const double pitch = 1.5 * height;
  double width = 0;
  for (const std::string& line : work.mark) {
    width = std::max(width, letters_width(line, height));
  }
  canvas.scoped([&] {
    canvas.translate(centre.x, centre.y);
    canvas.rotate(work.mark_turn);
    const double across = width / 2 + 0.75 * height;
    const double down = lines * pitch / 2 + 0.3 * height;
    const draw::Box box{-across, -down, 2 * across, 2 * down};
    if (work.mark_outline == MarkOutline::rectangle) {
      graver.sunk([&](draw::Canvas& c) { c.rounded_rectangle(box, 0.35 * height); }, box,
                  graver.metal().middle.with_alpha(0.55));
    } else if (work.mark_outline == MarkOutline::oval) {
      const draw::Box wide = box.grown(0.45 * height);
      graver.sunk(
          [&](draw::Canvas& c) {
            c.ellipse({0, 0}, wide.width / 2, wide.height / 2);
          },
          wide, graver.metal().middle.with_alpha(0.55));
    }
    for (std::size_t i = 0; i < work.mark.size(); ++i) {
      const double y = (static_cast<double>(i) - (lines - 1) / 2) * pitch;
      draw_letters(graver, work.mark[i], {0, y}, height, work.mark_form == MarkForm::engraved);
    }
    if (work.mark_worn) {
      // The last letter is rubbed away.
      const double x = width / 2;
      canvas.circle({x, 0}, 0.9 * height);
      canvas.fill(draw::RadialGradient{{x, 0},
                                       0,
                                       {x, 0},
                                       0.9 * height,
                                       {{0, graver.metal().middle.with_alpha(0.95)},
                                        {0.6, graver.metal().middle.with_alpha(0.8)},
                                        {1, graver.metal().middle.with_alpha(0)}}});
    }
  });
}

}  // namespace backmark::scenario
