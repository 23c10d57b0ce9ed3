#include "press/sheet.h"

#include <algorithm>
#include <array>

#include "base/text.h"
#include "draw/pdf.h"
#include "press/type.h"

namespace backmark::press {

using draw::Align;
using draw::Box;
using draw::Canvas;
using draw::Run;
using draw::Style;

namespace {

constexpr double header_rule = 28.5;
constexpr double footer_rule = 12;  // from the foot

Style sans(draw::Face face, double size_pt, draw::Colour colour) {
  Style style;
  style.face = face;
  style.size_pt = size_pt;
  style.colour = colour;
  return style;
}

std::string show_line(const model::Show& show) {
  const std::string_view title = show.setting("title");
  const std::string_view house = show.setting("house");
  if (title.empty() || house.empty()) {
    return std::string(title.empty() ? house : title);
  }
  return fmt::format("{} · {}", title, house);
}

std::string audience_line(const PressJob& job) {
  const std::string heading(words::heading(job.audience));
  return job.only.empty() ? heading : heading + " · " + job.only;
}

}  // namespace

Style sheet_text(double size_pt) {
  return sans(draw::Face::sans, size_pt, draw::ink);
}

Style sheet_strong(double size_pt) {
  return sans(draw::Face::sans_semibold, size_pt, draw::ink);
}

Style sheet_quiet(double size_pt) {
  return sans(draw::Face::sans, size_pt, draw::grey);
}

void Sheets::add(std::string second_line,
                 std::string outline,
                 std::function<void(Canvas&)> draw) {
  pages_.push_back({std::move(second_line), std::move(outline), std::move(draw)});
}

Box Sheets::body() const {
  const double top = header_rule + 5.5;
  return {sheet_margin, top, head_.paper.width - 2 * sheet_margin,
          head_.paper.height - footer_rule - 4 - top};
}

void Sheets::draw_header(Canvas& canvas, const Page& page) const {
  const double right = head_.paper.width - sheet_margin;
  const double room = right - sheet_margin;
  draw::show(canvas, job_.fonts, {sheet_margin, 19.4}, Run{head_.title, sheet_strong(15)});
  const std::string version =
      fmt::format("version {} · {}", job_.show.position, day_text(job_.day));
  const double second = room - job_.fonts.width(version, sheet_quiet(7.2)) - 6;
  draw::show(canvas, job_.fonts, {sheet_margin, 24.9},
             Run{fitted(job_.fonts, page.second_line, sheet_quiet(8), second), sheet_quiet(8)});
  draw::show(canvas, job_.fonts, {right, 15.4}, Run{audience_line(job_), sheet_strong(8)},
             Align::right);
  draw::show(canvas, job_.fonts, {right, 20.1},
             Run{fitted(job_.fonts, show_line(job_.show), sheet_quiet(7.2), room * 0.6),
                 sheet_quiet(7.2)},
             Align::right);
  draw::show(canvas, job_.fonts, {right, 24.9}, Run{version, sheet_quiet(7.2)}, Align::right);
  canvas.line({sheet_margin, header_rule}, {right, header_rule}, draw::ink, {0.6 * mm_per_pt});
}

void Sheets::draw_footer(Canvas& canvas, std::size_t number) const {
  const double right = head_.paper.width - sheet_margin;
  const double y = head_.paper.height - footer_rule;
  canvas.line({sheet_margin, y}, {right, y}, draw::grey, {0.5 * mm_per_pt});
  draw::show(canvas, job_.fonts, {sheet_margin, y + 3.9},
             Run{fitted(job_.fonts, head_.left_out, sheet_quiet(), right - sheet_margin - 24),
                 sheet_quiet()});
  draw::show(canvas, job_.fonts, {right, y + 3.9},
             Run{fmt::format("{} of {}", number, pages_.size()), sheet_strong(7.2)},
             Align::right);
}

Result<std::string> Sheets::finish() const {
  if (pages_.empty()) {
    return Problem{Fault::refused,
                   fmt::format("there is nothing to print on \"{}\"", head_.title), "",
                   "pick pieces for the show first: backmark pick SHOW NUMBER..., or --all"};
  }
  Canvas canvas = Canvas::pages(head_.paper, 0);
  for (std::size_t at = 0; at < pages_.size(); ++at) {
    if (at > 0) {
      if (auto turned = canvas.next_page(); !turned) {
        return turned.problem();
      }
    }
    if (!pages_[at].outline.empty()) {
      canvas.outline(pages_[at].outline, 0, {0, 0});
    }
    draw_header(canvas, pages_[at]);
    canvas.scoped([&] { pages_[at].draw(canvas); });
    draw_footer(canvas, at + 1);
  }
  return draw::finish_pdf(canvas, {.title = head_.title + " · " + show_line(job_.show),
                                   .author = std::string(job_.show.setting("author")),
                                   .subject = audience_line(job_)});
}

double caution_box(Canvas& canvas,
                   const draw::Fonts& fonts,
                   const Box& place,
                   std::string_view first_words,
                   std::string_view rest) {
  constexpr double inset = 5;
  constexpr double leading = 4.2;
  const Style strong = sheet_strong();
  const double head_width = fonts.width(first_words, strong) + fonts.width("    ", strong);
  // The first line is shorter by the strong words: wrap with as many spaces in front.
  const auto lines = wrapped(fonts, rest, sheet_text(), place.width - 2 * inset - head_width);
  const double height =
      2 * 3.4 + leading * (std::max<double>(1, static_cast<double>(lines.size())) - 1) + 2.1;
  canvas.rectangle({place.x, place.y, place.width, height});
  canvas.fill(draw::tint);
  canvas.line({place.x, place.y}, {place.x, place.y + height}, draw::copper, {2 * mm_per_pt});
  const double baseline = place.y + 3.4 + 2.1;
  draw::show(canvas, fonts, {place.x + inset, baseline}, Run{std::string(first_words), strong});
  show_lines(canvas, fonts, {place.x + inset + head_width, baseline}, lines, sheet_text(),
             leading);
  return height;
}

void hairline(Canvas& canvas, double x, double y, double width) {
  canvas.line({x, y}, {x + width, y}, draw::rule_grey, {0.25 * mm_per_pt});
}

void head_rule(Canvas& canvas, double x, double y, double width) {
  canvas.line({x, y}, {x + width, y}, draw::ink, {0.5 * mm_per_pt});
}

void show_piece(Canvas& canvas,
                const PressJob& job,
                const model::Photograph* photograph,
                const Box& room,
                double ratio,
                Problems& findings) {
  auto picture = photograph == nullptr ? std::nullopt : picture_of(job, *photograph, findings);
  if (!picture) {
    canvas.rectangle(room);
    canvas.stroke(draw::rule_grey, {0.25 * mm_per_pt});
    draw::show(canvas, job.fonts, {room.centre().x, room.centre().y + 0.8},
               Run{"no photograph", sheet_quiet(std::min(6.4, room.width / 3.2))},
               Align::centre);
    return;
  }
  const double per_mm = photograph->pixels_per_mm > 0 ? photograph->pixels_per_mm
                                                      : std::max(picture->width / room.width,
                                                                 picture->height / room.height);
  const double scale = photograph->pixels_per_mm > 0 ? ratio / per_mm : 1 / per_mm;
  double width = picture->width * scale;
  double height = picture->height * scale;
  const double shrink = std::min({1.0, room.width / width, room.height / height});
  width *= shrink;
  height *= shrink;
  // Enough for a sheet that is drawn on; more only makes the file heavy.
  const double most = (width > 40 ? 150 : 300) / 25.4;
  if (picture->width > 1.5 * most * width) {
    *picture = draw::resized(*picture, std::max(1, static_cast<int>(width * most)),
                             std::max(1, static_cast<int>(height * most)));
  }
  canvas.cutout(*picture,
                {room.centre().x - width / 2, room.centre().y - height / 2, width, height});
}

double common_ratio(const std::vector<const model::Photograph*>& photographs, draw::Size room) {
  constexpr std::array<int, 7> parts{1, 2, 3, 4, 5, 8, 10};
  for (const int part : parts) {
    const bool fit =
        std::all_of(photographs.begin(), photographs.end(), [&](const auto* photograph) {
          return photograph == nullptr || photograph->pixels_per_mm <= 0 ||
                 (photograph->width_px / photograph->pixels_per_mm <= room.width * part &&
                  photograph->height_px / photograph->pixels_per_mm <= room.height * part);
        });
    if (fit) {
      return 1.0 / part;
    }
  }
  return 1.0 / 20;
}

}  // namespace backmark::press
