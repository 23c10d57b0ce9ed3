#include "press/table.h"

#include <algorithm>

#include "press/type.h"

namespace backmark::press {
namespace {

using draw::Align;
using draw::Box;
using draw::Canvas;
using draw::Run;
using draw::Style;
using Kind = TableLine::Kind;

constexpr double group_rows = 1.5;
constexpr double after_figures = 3.5;  // mm of white to the next column

double rows_of(const TableLine& line) {
  return line.kind == Kind::group ? group_rows : line.rows;
}

// One past the last line that belongs to the group or the row starting at `from`.
std::size_t group_end(const std::vector<TableLine>& lines, std::size_t from) {
  std::size_t end = from + 1;
  while (end < lines.size() && lines[end].kind != Kind::group) {
    ++end;
  }
  return end;
}

// For each line the head of the group that it stands in; null for a head and before the first.
std::vector<const TableLine*> groups_of(const std::vector<TableLine>& lines) {
  std::vector<const TableLine*> groups;
  const TableLine* last = nullptr;
  for (const TableLine& line : lines) {
    const bool head = line.kind == Kind::group;
    last = head ? &line : last;
    groups.push_back(head ? nullptr : last);
  }
  return groups;
}

// Rows that must stand together from this line on.
double kept_together(const std::vector<TableLine>& lines, std::size_t at) {
  if (lines[at].kind != Kind::group) {
    // A sum never stands alone, nor the last row of a group: the two rows before the end take
    // what follows along.
    double rows = rows_of(lines[at]);
    std::size_t rows_after = 0;
    for (std::size_t i = at + 1; i < lines.size() && lines[i].kind != Kind::group; ++i) {
      rows_after += lines[i].kind == Kind::row ? 1 : 0;
      rows += rows_of(lines[i]);
      if (rows_after > 1) {
        return rows_of(lines[at]);
      }
    }
    return rows;
  }
  const std::size_t end = group_end(lines, at);
  const std::size_t count = end - at - 1;
  double rows = group_rows;
  for (std::size_t i = at + 1;
       i < at + 1 + (count <= 4 ? count : std::min<std::size_t>(2, count)); ++i) {
    rows += rows_of(lines[i]);
  }
  return rows;
}

constexpr double leading_pt = 1.22;  // of the size, between lines of a wrapped cell

std::vector<std::string> cell_lines(const draw::Fonts& fonts,
                                    const Column& column,
                                    const std::string& text,
                                    const Style& style) {
  auto lines = wrapped(fonts, text, style, column.width - 2);
  if (lines.size() > most_lines) {
    lines.resize(most_lines);
    lines.back() += " …";
  }
  // A single word may be wider than its column.
  for (std::string& line : lines) {
    line = fitted(fonts, line, style, column.width - 2);
  }
  return lines;
}

// Rows that the highest cell of the line needs.
double rows_needed(const draw::Fonts& fonts,
                   const std::vector<Column>& columns,
                   const TableLook& look,
                   const TableLine& line) {
  std::size_t most = 1;
  for (std::size_t at = 0; at < columns.size() && at < line.cells.size(); ++at) {
    if (columns[at].wrap && line.kind == Kind::row) {
      most = std::max(
          most,
          cell_lines(fonts, columns[at], line.cells[at], sheet_text(look.cell_pt)).size());
    }
  }
  const double leading = look.cell_pt * leading_pt * mm_per_pt;
  return 1 + static_cast<double>(most - 1) * leading / look.row_mm;
}

void show_cell(Canvas& canvas,
               const draw::Fonts& fonts,
               const Column& column,
               const std::string& text,
               const Style& style,
               draw::Point at) {
  const std::string cut = fitted(
      fonts, text, style, column.width - (column.align == Align::right ? after_figures : 2));
  const double x = column.align == Align::right ? at.x + column.width - after_figures : at.x;
  draw::show(canvas, fonts, {x, at.y}, Run{cut, style}, column.align);
}

class Painter {
 public:
  Painter(const PressJob& job,
          const std::vector<Column>& columns,
          const TableLook& look,
          Box body)
      : job_(job), columns_(columns), look_(look), body_(body) {}

  void heads(Canvas& canvas) const {
    double x = body_.x;
    for (const Column& column : columns_) {
      show_cell(canvas, job_.fonts, column, column.head, sheet_quiet(), {x, body_.y + 3});
      x += column.width;
    }
    head_rule(canvas, body_.x, body_.y + 4.6, body_.width);
  }

  // Gives the y below the line.
  double line(Canvas& canvas, const TableLine& line, double y) const {
    const double height = look_.row_mm * rows_of(line);
    const double baseline =
        y + look_.row_mm * (line.kind == Kind::group ? group_rows - 0.5 : 0.5) + 1.1;
    if (line.kind == Kind::group) {
      draw::show(canvas, job_.fonts, {body_.x, baseline},
                 Run{line.cells.empty() ? "" : line.cells[0], sheet_strong(8.4)});
      hairline(canvas, body_.x, y + height, body_.width);
      return y + height;
    }
    double x = body_.x;
    for (std::size_t at = 0; at < columns_.size() && at < line.cells.size(); ++at) {
      if (columns_[at].wrap && line.kind == Kind::row) {
        const Style style = this->style(columns_[at], line);
        show_lines(canvas, job_.fonts, {x, baseline},
                   cell_lines(job_.fonts, columns_[at], line.cells[at], style), style,
                   look_.cell_pt * leading_pt * mm_per_pt);
      } else {
        show_cell(canvas, job_.fonts, columns_[at], line.cells[at], style(columns_[at], line),
                  {x, baseline});
      }
      x += columns_[at].width;
    }
    hairline(canvas, body_.x, y + height, body_.width);
    return y + height;
  }

 private:
  Style style(const Column& column, const TableLine& line) const {
    Style style = line.kind == Kind::sum ? sheet_strong(look_.cell_pt)
                  : column.quiet         ? sheet_quiet(look_.cell_pt)
                                         : sheet_text(look_.cell_pt);
    style.tabular = column.align == Align::right;
    return style;
  }

  const PressJob& job_;
  std::vector<Column> columns_;
  TableLook look_;
  Box body_;
};

}  // namespace

std::vector<std::size_t> page_starts(const std::vector<TableLine>& lines, double room) {
  std::vector<std::size_t> starts;
  const auto groups = groups_of(lines);
  double left = 0;
  for (std::size_t at = 0; at < lines.size(); ++at) {
    if (starts.empty() || left < std::min(room, kept_together(lines, at)) - 1e-9) {
      starts.push_back(at);
      left = room - (groups[at] != nullptr ? group_rows : 0);
    }
    left -= rows_of(lines[at]);
  }
  return starts;
}

void add_table(Sheets& sheets,
               const PressJob& job,
               const std::vector<Column>& columns,
               std::vector<TableLine> lines,
               const TableLook& look,
               const std::string& second_line) {
  for (TableLine& line : lines) {
    line.rows = rows_needed(job.fonts, columns, look, line);
  }
  constexpr double heads_mm = 5.2;
  constexpr double caution_mm = 14;
  const Box body = sheets.body();
  const double room =
      (body.height - heads_mm - (look.caution_first.empty() ? 0 : caution_mm)) / look.row_mm;
  const auto starts = page_starts(lines, room);
  const auto groups = groups_of(lines);
  for (std::size_t page = 0; page < starts.size(); ++page) {
    const std::size_t end = page + 1 < starts.size() ? starts[page + 1] : lines.size();
    std::vector<TableLine> here(lines.begin() + static_cast<std::ptrdiff_t>(starts[page]),
                                lines.begin() + static_cast<std::ptrdiff_t>(end));
    const std::string title = here.front().kind == Kind::group ? here.front().cells[0] : "";
    if (const TableLine* group = groups[starts[page]]) {
      here.insert(here.begin(), {Kind::group, {group->cells.front() + ", continued"}});
    }
    sheets.add(second_line, title, [&job, columns, look, body, here](Canvas& canvas) {
      const Painter painter(job, columns, look, body);
      painter.heads(canvas);
      double y = body.y + heads_mm;
      for (const TableLine& line : here) {
        y = painter.line(canvas, line, y);
      }
      if (!look.caution_first.empty()) {
        caution_box(canvas, job.fonts, {body.x, body.bottom() - caution_mm + 1, body.width, 0},
                    look.caution_first, look.caution_rest);
      }
    });
  }
}

}  // namespace backmark::press
