// Working sheets: one header and footer for all. A sheet without version, day, audience and
// page cannot be made.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "draw/canvas.h"
#include "press/job.h"

namespace backmark::press {

inline constexpr draw::Size a4{210, 297};
inline constexpr draw::Size a4_landscape{297, 210};
inline constexpr draw::Size a3{297, 420};
inline constexpr draw::Size a3_landscape{420, 297};
inline constexpr double sheet_margin = 12;

// Styles of sheets, Inter throughout.
draw::Style sheet_text(double size_pt = 8);
draw::Style sheet_strong(double size_pt = 8);   // SemiBold
draw::Style sheet_quiet(double size_pt = 6.4);  // grey: heads of columns, never facts

struct SheetHead {
  std::string title;     // "Checklist"
  std::string left_out;  // footer: what is left out, and how to use the sheet
  draw::Size paper = a4;
};

// Pages are drawn when all are known, so that each can say "n of m".
class Sheets {
 public:
  Sheets(const PressJob& job, SheetHead head) : job_(job), head_(std::move(head)) {}

  // A page: what its second header line says (case, piece, scale), its line in the outline
  // (none if empty), and what draws it within body().
  void add(std::string second_line,
           std::string outline,
           std::function<void(draw::Canvas&)> draw);

  // Where a page may be drawn on: between header and footer.
  draw::Box body() const;
  std::size_t count() const { return pages_.size(); }

  // The PDF. Problems: refused, if there is no page; those of drawing.
  Result<std::string> finish() const;

 private:
  struct Page {
    std::string second_line;
    std::string outline;
    std::function<void(draw::Canvas&)> draw;
  };
  void draw_header(draw::Canvas& canvas, const Page& page) const;
  void draw_footer(draw::Canvas& canvas, std::size_t number) const;

  const PressJob& job_;
  SheetHead head_;
  std::vector<Page> pages_;
};

// The tinted box with a copper rule at its left; first words SemiBold. Returns the height.
double caution_box(draw::Canvas& canvas,
                   const draw::Fonts& fonts,
                   const draw::Box& place,
                   std::string_view first_words,
                   std::string_view rest);

// A hairline under a row, and the stronger one under the heads of a table.
void hairline(draw::Canvas& canvas, double x, double y, double width);
void head_rule(draw::Canvas& canvas, double x, double y, double width);

// A cut-out front or back with its middle at `centre`, at mm of paper for a mm of piece; a box
// "no photograph" of `room` size if there is none. Never larger than `room`.
void show_piece(draw::Canvas& canvas,
                const PressJob& job,
                const model::Photograph* photograph,
                const draw::Box& room,
                double ratio,
                Problems& findings);

// The largest of 1:1, 1:2, 1:3, 1:4, 1:5, 1:8, 1:10, as paper by piece, at which all these
// photographs fit the room; 1/20 if none does.
double common_ratio(const std::vector<const model::Photograph*>& photographs, draw::Size room);

}  // namespace backmark::press
