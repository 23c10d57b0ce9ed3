#include "press/book/render.h"

#include <algorithm>
#include <cmath>
#include <set>

#include "base/text.h"
#include "draw/pdf.h"
#include "press/book/plate.h"
#include "press/book/tell.h"
#include "press/book/type.h"

namespace backmark::press::book {

namespace {

using draw::Align;
using draw::Canvas;
using draw::Point;
using draw::Run;

void draw_foot(Canvas& canvas, const Plan& plan, const Page& page) {
  const Grid& grid = plan.grid;
  const double y = grid.line(grid.lines + 4);
  const bool recto = page.side == Side::recto;
  const double edge = recto ? grid.right(page.side) : grid.left(page.side);
  draw::show(canvas, plan.fonts(), {edge, y}, Run{std::to_string(page.number), roman(grid, 11)},
             recto ? Align::right : Align::left);
  const double in = 12 * grid.type;
  draw::show(canvas, plan.fonts(), {recto ? edge - in : edge + in, y},
             Run{for_small_caps(page.foot), small_caps(grid).with(draw::grey)},
             recto ? Align::right : Align::left);
}

void draw_page(
    Canvas& canvas, Teller& teller, Layout& book, const Page& page, PlateWork& plates) {
  const Plan& plan = book.plan();
  if (!page.outline.empty()) {
    canvas.outline(page.outline, page.outline_level, {0, 0});
  }
  for (const auto& [name, at] : page.places) {
    canvas.destination(name, at);
  }
  teller.begin(page);
  for (const Plate& plate : page.plates) {
    teller.picture(plate.alternative, [&] { draw_plate(canvas, book, plate, plates.next()); });
  }
  for (const auto& drawing : page.drawings) {
    canvas.scoped([&] { drawing(canvas); });
  }
  for (const Rule& rule : page.rules) {
    canvas.line(rule.from, rule.to, rule.colour, {rule.width_pt * mm_per_point});
  }
  for (const TextLine& line : page.lines) {
    teller.line(line, [&] { draw::show(canvas, plan.fonts(), line.baseline, line.line); });
  }
  if (page.folio) {
    draw_foot(canvas, plan, page);
  }
  for (const Link& link : page.links) {
    if (link.name.empty()) {
      canvas.link_to_address(link.box, link.address);
    } else if (book.page_of(link.name) > 0) {
      canvas.link(link.box, link.name);
    }
  }
}

// Letters that no font of the house has, each told once, with the first page it stands on.
void find_missing_letters(Layout& book) {
  const draw::Fonts& fonts = book.plan().fonts();
  std::set<std::pair<draw::Face, char32_t>> seen;
  for (const auto& page : book.pages()) {
    for (const TextLine& line : page->lines) {
      for (const draw::GlyphRun& run : line.line.runs) {
        for (const char32_t letter : to_code_points(run.text)) {
          const std::string text = to_utf8({&letter, 1});
          if (!seen.emplace(run.face, letter).second ||
              fonts.missing(text, draw::Style{.face = run.face}).empty()) {
            continue;
          }
          book.find({Fault::conflict,
                     fmt::format("no font here has the letter \"{}\" (U+{:04X})", text,
                                 static_cast<unsigned>(letter)),
                     fmt::format("page {}", page->number),
                     "write the word in another script; an empty box is printed"});
        }
      }
    }
  }
}

}  // namespace

Result<std::string> render(Layout& book) {
  const Plan& plan = book.plan();
  PlateWork plates(plan.job, book.pages(), plan.job.threads);
  find_missing_letters(book);
  Canvas canvas = Canvas::pages(plan.grid.trim, plan.grid.bleed);
  Teller teller(canvas);
  for (const auto& page : book.pages()) {
    draw_page(canvas, teller, book, *page, plates);
    if (auto turned = canvas.next_page(); !turned) {  // the last too: it may be blank
      return turned.problem();
    }
  }
  return draw::finish_pdf(canvas, {.title = std::string(plan.show().setting("title")),
                                   .author = std::string(plan.show().setting("author")),
                                   .subject = std::string(plan.show().setting("subtitle"))});
}

}  // namespace backmark::press::book
