#include "press/book/entry_text.h"

#include <algorithm>
#include <array>
#include <iterator>

#include "base/text.h"
#include "press/book/type.h"

namespace backmark::press::book {

namespace {

using words::FactKind;

constexpr double after_fact = 1.25;

constexpr std::array<FactKind, 8> small_facts{
    FactKind::materials, FactKind::size,   FactKind::back,    FactKind::marks,
    FactKind::story,     FactKind::lender, FactKind::compare, FactKind::literature};

// One fact as a paragraph, and in the list of what was printed.
double add_fact(Layout& book,
                Page& page,
                const Entry& entry,
                FactKind kind,
                draw::Point at,
                const draw::Style& style,
                double width,
                double leading) {
  const std::string& text = entry.fact(kind);
  if (text.empty()) {
    return at.y;
  }
  book.fact(entry.piece(), kind, text);
  return book.ragged(page, at, {{text, style}}, width, leading, Role::entry);
}

void draw_band(draw::Canvas& canvas,
               const model::YearBelief& belief,
               YearSpan years,
               draw::Point axis,
               double width) {
  const double per_year = width / std::max(1, years.length());
  const auto x_of = [&](double year) {
    return axis.x + std::clamp((year - years.first.value) * per_year, 0.0, width);
  };
  const double most = *std::max_element(belief.p.begin(), belief.p.end());
  const int first = belief.at(0.012).value;
  const int last = belief.at(0.988).value;
  for (int year = first; year <= last; ++year) {
    const double p = belief.inside({year}, {year});
    const double from = x_of(year);
    const double to = x_of(year + 1);
    canvas.rectangle({from, axis.y - 4, to - from, 2.4});
    canvas.fill(draw::ink.with_alpha(0.05 + 0.80 * p / most));
  }
  for (const double share : {0.10, 0.90}) {
    const double x = x_of(belief.at(share).value + (share > 0.5 ? 1 : 0));
    canvas.line({x, axis.y - 4.6}, {x, axis.y - 1.0}, draw::ink, {0.5 * mm_per_point});
  }
  const double x = x_of(belief.at(0.5).value + 0.5);
  const double y = axis.y - 2.8;
  canvas.polygon({{x, y - 1.7}, {x + 1.2, y}, {x, y + 1.7}, {x - 1.2, y}});
  canvas.fill_keep(draw::copper);
  canvas.stroke(draw::white, {0.15});
}

}  // namespace

double add_entry_head(Layout& book, Page& page, const Entry& entry, double left, double width) {
  const Grid& grid = book.grid();
  const std::string number = std::to_string(entry.place->number);
  draw::Style numeral = roman(grid, 30).with(draw::copper);
  numeral.figures = draw::Figures::lining;
  book.place(page, entry.name(), {left, grid.line(0)});
  book.fact(entry.piece(), FactKind::number, entry.fact(FactKind::number));
  book.text(page, {left, grid.line(2)}, {{number, numeral}}, draw::Align::left, Role::heading);
  double y = grid.line(4) - 0.8 * grid.type;
  y = add_fact(book, page, entry, FactKind::title, {left, y}, roman(grid, 15), width,
               5.6 * grid.type);
  y += 0.6 * grid.type;
  y = add_fact(book, page, entry, FactKind::maker, {left, y}, roman(grid, 12), width,
               grid.step);
  y = add_fact(book, page, entry, FactKind::made, {left, y}, roman(grid, 12), width, grid.step);
  y += 1.5 * grid.type;
  for (const FactKind kind : small_facts) {
    const double before = y;
    const draw::Style style = kind == FactKind::lender ? caption_italic(grid) : caption(grid);
    y = add_fact(book, page, entry, kind, {left, y}, style, width, grid.small);
    y += y > before ? after_fact * grid.type : 0;
  }
  return y;
}

draw::Paragraph prose_lines(Layout& book, const Entry& entry) {
  const Grid& grid = book.grid();
  draw::Paragraph lines;
  bool first = true;
  for (const auto paragraph : split(entry.fact(FactKind::prose), "\n")) {
    if (trim(paragraph).empty()) {
      continue;
    }
    auto set =
        draw::set_justified(book.plan().fonts(), book.plan().hyphens,
                            {{draw::with_held_spaces(trim(paragraph)), text_style(grid)}},
                            {grid.text_width(), first ? 0 : grid.step});
    book.quality().add(set);
    lines.insert(lines.end(), std::make_move_iterator(set.begin()),
                 std::make_move_iterator(set.end()));
    first = false;
  }
  return lines;
}

void add_text_lines(
    Layout& book, Page& page, const draw::Paragraph& lines, double left, int first) {
  const int paragraph = book.new_paragraph();
  for (std::size_t at = 0; at < lines.size(); ++at) {
    const double y = book.grid().line(first + static_cast<double>(at));
    page.lines.push_back({{left, y}, lines[at].line, Role::text, paragraph, true});
  }
}

void add_year_band(
    Layout& book, Page& page, const Entry& entry, draw::Point axis, double width) {
  const model::PieceBelief* belief = book.plan().job.beliefs.of(entry.piece().id);
  if (belief == nullptr || !belief->dated || belief->year.empty()) {
    return;
  }
  const YearSpan years = book.plan().years;
  const Grid& grid = book.grid();
  page.drawings.push_back([belief, years, axis, width](draw::Canvas& canvas) {
    canvas.line(axis, {axis.x + width, axis.y}, draw::grey, {0.25 * mm_per_point});
    const double per_year = width / years.length();
    for (int year = (years.first.value + 9) / 10 * 10; year <= years.last.value; year += 10) {
      const double x = axis.x + (year - years.first.value) * per_year;
      canvas.line({x, axis.y}, {x, axis.y + 1}, draw::grey, {0.25 * mm_per_point});
    }
    draw_band(canvas, belief->year, years, axis, width);
  });
  for (int year = (years.first.value + 9) / 10 * 10; year <= years.last.value; year += 10) {
    const double x = axis.x + (year - years.first.value) * width / years.length();
    book.text(page, {x, axis.y + 4.2 * grid.type},
              {{std::to_string(year), caption(grid).with(draw::grey)}},
              year == years.first.value ? draw::Align::left : draw::Align::centre);
  }
}

}  // namespace backmark::press::book
