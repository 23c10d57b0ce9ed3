#include "press/calibration_plot.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "draw/pdf.h"
#include "press/sheet.h"
#include "press/type.h"

namespace backmark::press {
namespace {

using draw::Align;
using draw::Box;
using draw::Canvas;
using draw::Point;
using draw::Stroke;
using draw::Style;

constexpr double side = 48;     // of a panel, mm
constexpr double panel_y = 17;  // of its top, from the corner
constexpr double gap = 14;
constexpr double indent = 8;  // room for figures left of the first panel
constexpr double margin = 6;

Style title_style() {
  return {.face = draw::Face::text, .size_pt = 12};
}
Style caption_style() {
  return {.face = draw::Face::text, .size_pt = 9.2};
}
Style figure_style() {
  return {.face = draw::Face::sans, .size_pt = 6.4, .tabular = true};
}

// A square of twenty by twenty.
struct Panel {
  Point corner;  // top left

  double x(double share) const { return corner.x + side * share; }
  double y(double share) const { return corner.y + side * (1 - share); }
  Point at(double across, double up) const { return {x(across), y(up)}; }
};

class Plot {
 public:
  Plot(Canvas& canvas, const draw::Fonts& fonts, const model::Calibration& calibration)
      : canvas_(canvas), fonts_(fonts), calibration_(calibration) {}

  void draw(Point corner) {
    draw_years({{corner.x + indent, corner.y + panel_y}});
    draw_names({{corner.x + indent + side + gap, corner.y + panel_y}});
  }

 private:
  void write(Point baseline, std::string_view text, const Style& style, Align align) {
    draw::show(canvas_, fonts_, baseline, draw::Run{std::string(text), style}, align);
  }

  void caption(Point baseline, std::string_view text) {
    show_lines(canvas_, fonts_, baseline, wrapped(fonts_, text, caption_style(), side + 4),
               caption_style(), 3.75);
  }

  void frame(const Panel& panel, std::string_view title, std::string_view what) {
    write({panel.corner.x, panel.corner.y - 9.5}, title, title_style(), Align::left);
    write({panel.corner.x, panel.corner.y - 4.5}, what, caption_style().with(draw::grey),
          Align::left);
    for (const int step : {0, 5, 10, 15, 20}) {
      const double share = step / 20.0;
      canvas_.line(panel.at(share, 0), panel.at(share, 1), draw::rule_grey, {0.15});
      canvas_.line(panel.at(0, share), panel.at(1, share), draw::rule_grey, {0.15});
      write({panel.x(share), panel.y(0) + 3.6}, std::to_string(step), figure_style(),
            Align::centre);
      if (step > 0) {
        write({panel.x(0) - 1.4, panel.y(share) + 0.8}, std::to_string(step), figure_style(),
              Align::right);
      }
    }
  }

  // A stair whose tread for `k` in 20 is centred on it.
  void stair(const Panel& panel, const std::vector<double>& heights) {
    canvas_.new_path();
    for (std::size_t s = 0; s < heights.size(); ++s) {
      const double middle = static_cast<double>(s + 1) / 20;
      const Point left = panel.at(middle - 0.025, heights[s]);
      s == 0 ? canvas_.move_to(left) : canvas_.line_to(left);
      canvas_.line_to(panel.at(middle + 0.025, heights[s]));
    }
  }

  void band(const Panel& panel) {
    for (const model::SaidShare& step : calibration_.years.steps) {
      // Of honest odds: normal range of a share said, on so many lots.
      const double off =
          1.96 * std::sqrt(step.said * (1 - step.said) / std::max(1.0, step.seen.trials));
      const double high = std::min(1.0, step.said + off);
      const double low = std::max(0.0, step.said - off);
      canvas_.rectangle({panel.x(step.said - 0.025), panel.y(high), side * 0.05,
                         panel.y(low) - panel.y(high)});
      canvas_.fill(draw::Colour::hex(0xE9E5DD));
    }
  }

  void beads(const Panel& panel, const model::SaidShare& step) {
    canvas_.rectangle({panel.x(step.said - 0.025), panel.y(step.seen.share), side * 0.05,
                       panel.y(0) - panel.y(step.seen.share)});
    canvas_.fill(draw::ink);
    const int count = static_cast<int>(std::lround(20 * step.seen.share));
    for (int bead = 0; bead < count; ++bead) {
      canvas_.circle(panel.at(step.said, (bead + 0.5) / 20 * (20 * step.seen.share / count)),
                     0.75);
      canvas_.fill(draw::white);
    }
  }

  void draw_years(const Panel& panel) {
    const model::YearCalibration& years = calibration_.years;
    band(panel);
    frame(panel, "Years", "across: said, of 20; up: came true, of 20");
    if (years.pieces == 0) {
      caption({panel.corner.x, panel.y(0) + 9}, "No known year was hidden.");
      return;
    }
    std::vector<double> said;
    std::vector<double> seen;
    for (const model::SaidShare& step : years.steps) {
      said.push_back(step.said);
      seen.push_back(step.seen.share);
    }
    beads(panel, years.steps[15]);
    stair(panel, said);
    canvas_.stroke(draw::grey, {.width = 0.25, .dash = {0.8, 0.8}});
    stair(panel, seen);
    canvas_.stroke(draw::ink, {.width = 0.45});
    caption({panel.corner.x, panel.y(0) + 9},
            fmt::format("{} known years in {:.0f} lots were hidden and found again. Of every "
                        "20 spans 16 were said to hold, and {:.0f} did.",
                        years.pieces, years.lots, 20 * years.steps[15].seen.share));
  }

  void draw_names(const Panel& panel) {
    const model::MakerCalibration& makers = calibration_.makers;
    frame(panel, "First names", "if by someone on the list");
    canvas_.line(panel.at(0, 0), panel.at(1, 1), draw::grey,
                 {.width = 0.25, .dash = {0.8, 0.8}});
    for (const model::SaidShare& bin : makers.bins) {
      canvas_.line(panel.at(bin.said, bin.seen.low), panel.at(bin.said, bin.seen.high),
                   draw::ink, {.width = 0.3});
      canvas_.circle(panel.at(bin.said, bin.seen.share), 0.95);
      canvas_.fill(draw::ink);
      write({panel.x(bin.said), panel.y(bin.seen.high) - 0.9}, std::to_string(bin.pieces),
            figure_style(), Align::centre);
    }
    caption(
        {panel.corner.x, panel.y(0) + 9},
        makers.pieces == 0
            ? std::string("No known maker was hidden of whom five pieces stayed in view.")
            : fmt::format("{} pieces; {} if a lot by one hand counts once. The first name was "
                          "right {:.0f} times in 20. Figures count pieces.",
                          makers.pieces, makers.groups, 20 * makers.top_1));
  }

  Canvas& canvas_;
  const draw::Fonts& fonts_;
  const model::Calibration& calibration_;
};

draw::Size sheet_size() {
  return {calibration_plot_size.width + 2 * margin, calibration_plot_size.height + 2 * margin};
}

}  // namespace

void draw_calibration(Canvas& canvas,
                      const draw::Fonts& fonts,
                      const model::Calibration& calibration,
                      Point corner) {
  Plot(canvas, fonts, calibration).draw(corner);
}

Result<std::string> calibration_svg(const draw::Fonts& fonts,
                                    const model::Calibration& calibration) {
  Canvas canvas = Canvas::svg(sheet_size());
  canvas.flood(draw::white);
  draw_calibration(canvas, fonts, calibration, {margin, margin});
  return canvas.finish();
}

Result<std::string> calibration_pdf(const draw::Fonts& fonts,
                                    const model::Calibration& calibration) {
  Canvas canvas = Canvas::pages(sheet_size(), 0);
  draw_calibration(canvas, fonts, calibration, {margin, margin});
  return draw::finish_pdf(canvas,
                          {.title = "Calibration: how far the odds may be trusted",
                           .author = "",
                           .subject = "Known years and makers, hidden and found again"});
}

}  // namespace backmark::press
