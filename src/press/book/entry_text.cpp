#include "press/book/entry_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>

#include "base/text.h"
#include "press/book/type.h"
#include "words/why.h"

namespace backmark::press::book {

namespace {

using words::FactKind;

constexpr double after_fact = 1.25;
constexpr double least_between_years = 10;  // mm between the figures of a band, in trim A
constexpr double after_fact_beside = 0.6;   // where the facts stand beside the name

constexpr std::array<FactKind, 8> small_facts{
    FactKind::materials, FactKind::size,   FactKind::back,    FactKind::marks,
    FactKind::story,     FactKind::lender, FactKind::compare, FactKind::literature};

struct Legend {
  std::size_t at = std::string::npos;
  std::size_t length = 0;
};

// The next legend of a mark on the piece that stands in the text as words of its own.
Legend next_legend(const model::Show& show,
                   model::Id<model::Piece> piece,
                   const std::string& text,
                   std::size_t from) {
  Legend next;
  for (const model::Mark& mark : show.marks_of(piece)) {
    const std::size_t at = mark.text.empty() ? std::string::npos : text.find(mark.text, from);
    const std::size_t end = at + mark.text.size();
    const bool whole = at != std::string::npos && (at == 0 || text[at - 1] == ' ') &&
                       (end >= text.size() || contains(" ,;", text.substr(end, 1)));
    if (whole && (at < next.at || (at == next.at && mark.text.size() > next.length))) {
      next = {at, mark.text.size()};
    }
  }
  return next;
}

// One fact as a paragraph, and in the list of what was printed.
double add_fact(Layout& book,
                Page& page,
                const Entry& entry,
                const HeadFact& fact,
                draw::Point at,
                double width) {
  const std::string& text = entry.fact(fact.kind);
  if (text.empty()) {
    return at.y;
  }
  book.fact(entry.piece(), fact.kind, text);
  return book.ragged(page, at, fact_words(book, entry, fact.kind, fact.style), width,
                     fact.leading, Role::entry);
}

double above_title(const Grid& grid) {
  return 4 * grid.step - 0.8 * grid.type;
}

std::vector<HeadFact> name_facts(const Grid& grid) {
  return {{FactKind::title, roman(grid, 15), 5.6 * grid.type, 0.6 * grid.type, true},
          {FactKind::maker, roman(grid, 12), grid.step, 0},
          {FactKind::made, roman(grid, 12), grid.step, 1.5 * grid.type, true}};
}

std::vector<HeadFact> side_facts(const Grid& grid) {
  std::vector<HeadFact> facts;
  for (const FactKind kind : small_facts) {
    facts.push_back({kind, small_style(grid, kind), grid.small,
                     grid.side_column ? after_fact : after_fact_beside});
  }
  return facts;
}

double head_width(const Grid& grid) {
  return grid.side_column ? grid.side_width() : grid.columns(3);
}

double head_height(Layout& book, const Entry& entry) {
  const double name = names_height(book, entry);
  const double side = facts_height(book, entry);
  return book.grid().side_column ? name + side : std::max(name, book.grid().step + side);
}

std::vector<draw::Paragraph> prose_paragraphs(Layout& book, const Entry& entry) {
  const Grid& grid = book.grid();
  std::vector<draw::Paragraph> all;
  for (const auto paragraph : split(entry.fact(FactKind::prose), "\n")) {
    if (!trim(paragraph).empty()) {
      all.push_back(
          book.set_justified({{draw::with_held_spaces(trim(paragraph)), text_style(grid)}},
                             {grid.text_width(), all.empty() ? 0 : grid.step}));
    }
  }
  return all;
}

// A year that is written on the piece: no curve.
void draw_written(draw::Canvas& canvas, draw::Point at) {
  constexpr double half = 1.15;
  canvas.polygon(
      {{at.x, at.y - half}, {at.x + half, at.y}, {at.x, at.y + half}, {at.x - half, at.y}});
  canvas.fill(draw::copper);
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

draw::Style small_style(const Grid& grid, FactKind kind) {
  return kind == FactKind::lender ? caption_italic(grid) : caption(grid);
}

draw::RichText run_in(const Layout& book,
                      const Entry& entry,
                      const std::vector<FactKind>& kinds,
                      std::string_view between) {
  draw::RichText words;
  for (const FactKind kind : kinds) {
    if (entry.fact(kind).empty()) {
      continue;
    }
    const draw::Style style = small_style(book.grid(), kind);
    if (!words.empty()) {
      const bool stopped = ends_with(words.back().text, ".");
      words.push_back({stopped ? " " : std::string(between), caption(book.grid())});
    }
    for (draw::Run& run : fact_words(book, entry, kind, style)) {
      words.push_back(std::move(run));
    }
  }
  return words;
}

double add_facts(Layout& book,
                 Page& page,
                 const Entry& entry,
                 const std::vector<HeadFact>& facts,
                 draw::Point at,
                 double width) {
  for (const HeadFact& fact : facts) {
    const double before = at.y;
    at.y = add_fact(book, page, entry, fact, at, width);
    at.y += at.y > before || fact.always ? fact.after : 0;
  }
  return at.y;
}

double facts_height(Layout& book,
                    const Entry& entry,
                    const std::vector<HeadFact>& facts,
                    double width) {
  double height = 0;
  for (const HeadFact& fact : facts) {
    const std::string& text = entry.fact(fact.kind);
    if (!text.empty()) {
      std::vector<draw::Stretch> words;
      for (const draw::Run& run : fact_words(book, entry, fact.kind, fact.style)) {
        words.push_back({run.text, run.style});
      }
      const auto lines = book.set_ragged(words, {width, 0}).size();
      height += static_cast<double>(lines) * fact.leading;
    }
    height += !text.empty() || fact.always ? fact.after : 0;
  }
  return height;
}

draw::RichText fact_words(const Layout& book,
                          const Entry& entry,
                          FactKind kind,
                          const draw::Style& style) {
  const Grid& grid = book.grid();
  const std::string& text = entry.fact(kind);
  constexpr std::string_view compare = "Compare";
  if (kind == FactKind::compare && starts_with(text, compare)) {
    return {{std::string(compare), caption_italic(grid)}, {text.substr(compare.size()), style}};
  }
  draw::RichText words;
  std::size_t from = 0;
  while (kind == FactKind::marks && from < text.size()) {
    const Legend legend = next_legend(book.plan().show(), entry.piece().id, text, from);
    if (legend.length == 0) {
      break;
    }
    words.push_back({text.substr(from, legend.at - from), style});
    words.push_back({text.substr(legend.at, legend.length), small_caps(grid, 9.2)});
    from = legend.at + legend.length;
  }
  words.push_back({text.substr(from), style});
  return words;
}

double names_height(Layout& book, const Entry& entry) {
  const Grid& grid = book.grid();
  return above_title(grid) + facts_height(book, entry, name_facts(grid), head_width(grid));
}

double facts_height(Layout& book, const Entry& entry) {
  return facts_height(book, entry, side_facts(book.grid()), head_width(book.grid()));
}

double add_entry_names(Layout& book, Page& page, const Entry& entry, draw::Point corner) {
  const Grid& grid = book.grid();
  draw::Style numeral = roman(grid, 30).with(draw::copper);
  numeral.figures = draw::Figures::lining;
  book.place(page, entry.name(), corner);
  book.fact(entry.piece(), FactKind::number, entry.fact(FactKind::number));
  book.text(page, {corner.x, corner.y + 2 * grid.step},
            {{std::to_string(entry.place->number), numeral}}, draw::Align::left, Role::heading);
  return add_facts(book, page, entry, name_facts(grid),
                   {corner.x, corner.y + above_title(grid)}, head_width(grid));
}

double add_entry_facts(Layout& book, Page& page, const Entry& entry, draw::Point at) {
  const Grid& grid = book.grid();
  return add_facts(book, page, entry, side_facts(grid), at, head_width(grid));
}

double add_entry_head(Layout& book, Page& page, const Entry& entry, int from) {
  const Grid& grid = book.grid();
  const double top = grid.line(from);
  const double left = grid.side_column ? grid.side_left(page.side) : grid.left(page.side);
  const double name = add_entry_names(book, page, entry, {left, top});
  const draw::Point side = grid.side_column
                               ? draw::Point{left, name}
                               : draw::Point{grid.column_left(page.side, 4), top + grid.step};
  const double end = std::max(name, add_entry_facts(book, page, entry, side));
  if (end > grid.line(grid.lines + 1)) {
    book.find({Fault::conflict, "the title and the facts run over the foot of the page",
               fmt::format("page {}, number {}", page.number, entry.place->number),
               "shorten the title"});
  }
  return end;
}

std::vector<draw::Paragraph> ragged_prose(Layout& book, const Entry& entry, double width) {
  const Grid& grid = book.grid();
  std::vector<draw::Paragraph> all;
  for (const auto paragraph : split(entry.fact(FactKind::prose), "\n")) {
    if (!trim(paragraph).empty()) {
      all.push_back(
          book.set_ragged({{draw::with_held_spaces(trim(paragraph)), text_style(grid)}},
                          {width, all.empty() ? 0 : grid.step}));
    }
  }
  return all;
}

draw::Paragraph prose_lines(Layout& book, const Entry& entry) {
  draw::Paragraph lines;
  for (draw::Paragraph& set : prose_paragraphs(book, entry)) {
    book.quality().add(set);
    lines.insert(lines.end(), std::make_move_iterator(set.begin()),
                 std::make_move_iterator(set.end()));
  }
  return lines;
}

const EntrySize& entry_size(Layout& book, const Entry& entry) {
  const auto [at, fresh] = book.entry_sizes().try_emplace(&entry);
  EntrySize& size = at->second;
  if (fresh) {
    size.head = head_height(book, entry);
    for (const draw::Paragraph& set : prose_paragraphs(book, entry)) {
      size.prose += static_cast<int>(set.size());
    }
  }
  return size;
}

void add_text_lines(
    Layout& book, Page& page, const draw::Paragraph& lines, double left, int first) {
  const int paragraph = book.new_paragraph();
  for (std::size_t at = 0; at < lines.size(); ++at) {
    const double y = book.grid().line(first + static_cast<double>(at));
    page.lines.push_back({{left, y}, lines[at].line, Role::text, paragraph, true});
  }
}

int band_after(const Layout& book, int last, int why_lines) {
  const Grid& grid = book.grid();
  const double under_head = why_lines * grid.small / grid.step;
  return why_lines == 0 ? last + 3 : last + 4 + static_cast<int>(std::ceil(under_head));
}

int why_lines(Layout& book, const Entry& entry, double width) {
  return entry.why.empty()
             ? 0
             : static_cast<int>(
                   book.set_ragged({{entry.why, caption(book.grid())}}, {width, 0}).size());
}

void add_why(
    Layout& book, Page& page, const Entry& entry, double left, int last, double width) {
  const Grid& grid = book.grid();
  const draw::Point head{left, grid.line(last + 2)};
  book.text(page, head,
            {{"why this maker, why this year", small_caps(grid).with(draw::copper)}},
            draw::Align::left, Role::entry);
  book.ragged(page, {head.x, head.y + grid.small}, {{entry.why, caption(grid)}}, width,
              grid.small, Role::entry);
}

void add_year_band(
    Layout& book, Page& page, const Entry& entry, draw::Point axis, double width) {
  const model::PieceBelief* belief = book.plan().job.beliefs.of(entry.piece().id);
  if (belief == nullptr || !belief->dated || belief->year.empty()) {
    return;
  }
  const YearSpan years = book.plan().years;
  const Grid& grid = book.grid();
  const auto written = words::written_year(book.plan().show(), entry.piece().id, belief->year);
  page.drawings.push_back([belief, years, axis, width, written](draw::Canvas& canvas) {
    canvas.line(axis, {axis.x + width, axis.y}, draw::grey, {0.25 * mm_per_point});
    const double per_year = width / years.length();
    for (int year = (years.first.value + 9) / 10 * 10; year <= years.last.value; year += 10) {
      const double x = axis.x + (year - years.first.value) * per_year;
      canvas.line({x, axis.y}, {x, axis.y + 1}, draw::grey, {0.25 * mm_per_point});
    }
    if (written && *written >= years.first && *written <= years.last) {
      draw_written(canvas, {axis.x + (written->value + 0.5 - years.first.value) * per_year,
                            axis.y - 2.8});
    } else {
      draw_band(canvas, belief->year, years, axis, width);
    }
  });
  const double per_year = width / years.length();
  const int every = 10 * per_year < least_between_years * grid.type ? 20 : 10;
  for (int year = (years.first.value + 9) / 10 * 10; year <= years.last.value; year += every) {
    const double x = axis.x + (year - years.first.value) * per_year;
    const bool at_end = x > axis.x + width - 3 * grid.type;
    book.text(page, {at_end ? axis.x + width : x, axis.y + 4.2 * grid.type},
              {{std::to_string(year), caption(grid).with(draw::grey)}},
              year == years.first.value ? draw::Align::left
              : at_end                  ? draw::Align::right
                                        : draw::Align::centre);
  }
}

}  // namespace backmark::press::book
