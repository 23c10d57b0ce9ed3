// Photographs on the page at a true scale, their shadow and their scale bar.
#pragma once

#include <string>
#include <vector>

#include "press/book/layout.h"
#include "press/book/plate_work.h"

namespace backmark::press::book {

// The size of the whole picture at a ratio, in mm; nothing if its scale is not known.
draw::Size size_of(const model::Photograph& photograph, double ratio);

// The largest of 1, 3:4, 2:3, 1:2, 1:3 at which all these fit the room; 1/4 if none does.
double ratio_for(const std::vector<const model::Photograph*>& photographs, draw::Size room);

// "true size", "three quarters of true size", "half true size" ...; enlargements "four times".
std::string ratio_words(double ratio);

// Puts the picture on the page, whole, with its middle at `centre`.
Plate& add_plate(Page& page,
                 const model::Photograph* photograph,
                 draw::Point centre,
                 double ratio,
                 std::string alternative);

// A bar of so many millimetres of the piece, from `at` rightwards, in the same place whatever
// the picture does: line 0.5 pt, end ticks 1.1 up, inner ticks each 10 mm 0.7 up; its figure is
// right of it.
void add_scale_bar(Layout& book, Page& page, draw::Point at, double length_mm, double ratio);
// The width that it takes with its figure.
double scale_bar_width(const Layout& book, double length_mm, double ratio);

// The photograph with its shadow, or a frame that says that it is missing; its findings are
// told.
void draw_plate(draw::Canvas& canvas, Layout& book, const Plate& plate, ReadyPlate ready);

}  // namespace backmark::press::book
