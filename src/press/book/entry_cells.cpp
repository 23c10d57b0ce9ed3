#include "press/book/entry_cells.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "base/text.h"
#include "press/book/entry_forms.h"
#include "press/book/entry_plates.h"
#include "press/book/entry_text.h"
#include "press/book/plate.h"
#include "press/book/type.h"

namespace backmark::press::book {

namespace {

using words::FactKind;

constexpr std::size_t across = 2;
constexpr int under_plates = 2;  // grid lines from a plate to the first baseline
constexpr std::array<double, 4> fields{54, 75, 100, 125};  // mm, of plates
constexpr double after_fact = 1;   // mm of white between paragraphs of facts
constexpr double least_head = 10;  // mm from a plate that rises to the head of the trim

// One row of a spread, in grid lines.
struct Row {
  const Entry* first = nullptr;
  std::size_t count = 0;
  bool alone = true;  // on its spread: there is room for marks at the foot
  int from = 0;
  int rise = 0;    // of the plates into the head margin
  int plates = 0;  // their field
  int names = 0;
  int gap = 0;  // between names and prose
  int facts = 0;
  int why = 0;  // lines of reasons, in caption type; 0: none are printed

  // Whether facts must share paragraphs.
  bool scarce(const Layout& book) const { return !alone || !book.grid().side_column; }
  // The first baseline under the plates.
  int text() const { return from - rise + plates + under_plates; }
};

double words_in(const Grid& grid) {
  return 9 * grid.type;  // from the number to the words beside it
}

double words_width(const Grid& grid) {
  return grid.columns(3) - words_in(grid);
}

std::vector<HeadFact> names_of(const Grid& grid) {
  return {{FactKind::title, roman(grid, 15), grid.step, 0},
          {FactKind::maker, roman(grid, 12), grid.step, 0},
          {FactKind::made, roman(grid, 12), grid.step, 0}};
}

constexpr std::array<FactKind, 8> under_back{
    FactKind::materials, FactKind::size,   FactKind::back,    FactKind::marks,
    FactKind::story,     FactKind::lender, FactKind::compare, FactKind::literature};

// The facts under a back, a paragraph each; where room is scarce some share one.
std::vector<draw::RichText> facts_of(const Layout& book, const Entry& entry, bool scarce) {
  using Kinds = std::vector<std::vector<FactKind>>;
  Kinds each;
  for (const FactKind kind : under_back) {
    each.push_back({kind});
  }
  static const Kinds shared{{FactKind::materials, FactKind::size},
                            {FactKind::back, FactKind::marks},
                            {FactKind::story, FactKind::lender},
                            {FactKind::compare, FactKind::literature}};
  std::vector<draw::RichText> facts;
  for (const auto& kinds : scarce ? shared : each) {
    draw::RichText words = run_in(book, entry, kinds, ". ");
    if (!words.empty()) {
      facts.push_back(std::move(words));
    }
  }
  return facts;
}

double under_back_height(Layout& book, const Entry& entry, bool scarce) {
  double height = 0;
  for (const draw::RichText& words : facts_of(book, entry, scarce)) {
    std::vector<draw::Stretch> text;
    for (const draw::Run& run : words) {
      text.push_back({run.text, run.style});
    }
    const auto lines = book.set_ragged(text, {words_width(book.grid()), 0}).size();
    height += static_cast<double>(lines) * book.grid().small + after_fact;
  }
  return height;
}

const CellSize& cell_size(Layout& book, const Entry& entry) {
  const auto [at, fresh] = book.cell_sizes().try_emplace(&entry);
  CellSize& size = at->second;
  if (fresh) {
    const Grid& grid = book.grid();
    const double width = words_width(grid);
    const auto lines = [&](double mm) {
      return static_cast<int>(std::ceil(mm / grid.step - 1e-6));
    };
    size.names = lines(facts_height(book, entry, names_of(grid), width));
    for (const draw::Paragraph& set : ragged_prose(book, entry, words_width(grid))) {
      size.prose += static_cast<int>(set.size());
    }
    size.facts = lines(under_back_height(book, entry, false));
    size.facts_shared = lines(under_back_height(book, entry, true));
    size.why = why_lines(book, entry, width);
  }
  return size;
}

bool fits_half(const Grid& grid, const Entry& entry) {
  for (const auto* one : {entry.front, entry.back}) {
    if (one != nullptr && size_of(*one, 1).width > grid.columns(3) - 2) {
      return false;
    }
  }
  return entry.measured.width <= grid.columns(3) - 2;
}

// The row in `room` lines, its plates in a field of at least `field` mm that rises so many
// lines into the head margin; nothing if its words do not fit.
std::optional<Row> fit_row(Layout& book, Row row, int room, double field, int rise) {
  int prose = 0;
  int why = 0;
  double plate = field;
  for (const Entry* entry = row.first; entry != row.first + row.count; ++entry) {
    const CellSize& size = cell_size(book, *entry);
    plate = std::max(plate, height_of(*entry));
    row.names = std::max(row.names, size.names);
    prose = std::max(prose, size.prose);
    row.facts = std::max(row.facts, row.scarce(book) ? size.facts_shared : size.facts);
    why = std::max(why, size.why);
  }
  row.plates = static_cast<int>(std::ceil(plate / book.grid().step - 1e-6));
  row.rise = rise;
  const int until = row.from + room;
  const int under_prose = row.text() + row.names + prose;
  row.gap = under_prose + 1 <= until ? 1 : 0;
  const auto under_band = [&](int reasons) {
    return band_after(book, row.text() + row.facts - 1, reasons) + 2;
  };
  row.why = !row.alone || under_band(why) <= until ? why : 0;
  return std::max(under_prose, under_band(row.why)) <= until ? std::optional(row)
                                                             : std::nullopt;
}

// Fields are of a few heights wherever words leave room, so that words begin level throughout
// the book.
std::optional<Row> fit_row(Layout& book, const Row& row, int room) {
  double highest = 0;
  for (const Entry* entry = row.first; entry != row.first + row.count; ++entry) {
    highest = std::max(highest, height_of(*entry));
    if (!fits_half(book.grid(), *entry)) {
      return std::nullopt;
    }
  }
  for (const double field : fields) {
    if (field >= highest) {
      if (auto fitted = fit_row(book, row, room, field, 0)) {
        return fitted;
      }
    }
  }
  const Grid& grid = book.grid();
  const int most = row.alone ? static_cast<int>((grid.head - least_head) / grid.step) : 0;
  for (int rise = 0; rise <= most; ++rise) {
    if (auto fitted = fit_row(book, row, room, highest, rise)) {
      return fitted;
    }
  }
  return std::nullopt;
}

// One row, or two of the same height; none if the pieces do not fit.
std::vector<Row> rows_of(Layout& book, const Entry* first, std::size_t count) {
  const int lines = book.grid().lines;
  const bool alone = count <= across;
  const int room = alone ? lines : (lines - 1) / 2;
  std::vector<Row> rows;
  for (std::size_t at = 0; at < count; at += across) {
    const Row row{.first = first + at,
                  .count = std::min(across, count - at),
                  .alone = alone,
                  .from = at == 0 ? 0 : room + 1};
    const auto fitted = fit_row(book, row, room);
    if (!fitted) {
      return {};
    }
    rows.push_back(*fitted);
  }
  return rows;
}

void add_cell_plate(
    Layout& book, Page& page, const Entry& entry, draw::Point middle, bool front) {
  const auto* own = front ? entry.front : entry.back;
  const auto* other = front ? entry.back : entry.front;
  if (own != nullptr && own->pixels_per_mm > 0) {
    add_view(page, own, middle, 1, entry, front ? "front" : "back");
    return;
  }
  const draw::Size size = other == nullptr ? entry.measured : size_of(*other, 1);
  if (size.height > 0) {
    add_corners(book, page, middle, size);
  }
}

void add_names(Layout& book, Page& page, const Entry& entry, const Row& row, double left) {
  const Grid& grid = book.grid();
  draw::Style numeral = roman(grid, 15).with(draw::copper);
  numeral.figures = draw::Figures::lining;
  const double x = left + words_in(grid);
  book.place(page, entry.name(), {left, grid.line(row.from)});
  book.fact(entry.piece(), FactKind::number, entry.fact(FactKind::number));
  book.text(page, {left, grid.line(row.text())},
            {{std::to_string(entry.place->number), numeral}}, draw::Align::left, Role::heading);
  add_facts(book, page, entry, names_of(grid), {x, grid.line(row.text())}, words_width(grid));
  int line = row.text() + row.names + row.gap;
  for (const draw::Paragraph& set : ragged_prose(book, entry, words_width(grid))) {
    book.quality().add_ragged(set);
    add_text_lines(book, page, set, x, line);
    line += static_cast<int>(set.size());
  }
  if (row.alone) {
    const double top = grid.line(line - 1) + clear_of_words;
    add_mark_at_foot(book, page, entry, {x, top, words_width(grid), foot_floor(grid) - top});
  }
}

void add_back_words(Layout& book, Page& page, const Entry& entry, const Row& row, double left) {
  const Grid& grid = book.grid();
  const double x = left + words_in(grid);
  book.text(page, {left, grid.line(row.text())},
            {{std::to_string(entry.place->number),
              caption(grid).with(draw::copper).sized(grid.pt(11))}});
  double y = grid.line(row.text());
  for (const draw::RichText& words : facts_of(book, entry, row.scarce(book))) {
    y = book.ragged(page, {x, y}, words, words_width(grid), grid.small, Role::entry) +
        after_fact;
  }
  for (const FactKind kind : under_back) {
    if (!entry.fact(kind).empty()) {
      book.fact(entry.piece(), kind, entry.fact(kind));
    }
  }
  const int last = row.text() + row.facts - 1;
  if (row.why > 0 && !entry.why.empty()) {
    add_why(book, page, entry, x, last, words_width(grid));
  }
  add_year_band(book, page, entry, {x, grid.line(band_after(book, last, row.why))},
                words_width(grid));
}

void lay_row(Layout& book, Page& page, const Row& row) {
  const Grid& grid = book.grid();
  const bool front = page.side == Side::verso;
  for (std::size_t at = 0; at < row.count; ++at) {
    const double left = half_left(grid, page.side, at);
    const draw::Point middle{left + grid.columns(3) / 2,
                             grid.line(row.from - row.rise + row.plates / 2.0)};
    add_cell_plate(book, page, row.first[at], middle, front);
    (front ? add_names : add_back_words)(book, page, row.first[at], row, left);
  }
}

}  // namespace

double half_left(const Grid& grid, Side side, std::size_t at) {
  const bool left = (at % across == 0) == (side == Side::verso);
  return grid.column_left(side, left ? 1 : 4);
}

bool cells_fit(Layout& book, const Entry* first, std::size_t count) {
  return !rows_of(book, first, count).empty();
}

void lay_cells(Layout& book, const Entry* first, std::size_t count) {
  const Grid& grid = book.grid();
  const std::string numbers =
      fmt::format("{}–{}", first->place->number, first[count - 1].place->number);
  const std::vector<Row> rows = rows_of(book, first, count);
  for (const bool front : {true, false}) {
    Page& page = book.page();
    (front ? page.outline : page.foot) = numbers;
    page.outline_level = 2;
    for (const Row& row : rows) {
      lay_row(book, page, row);
    }
    if (!front) {  // marks may stand at the foot of the other page
      add_bar_and_words(book, page, grid.left(page.side), grid.right(page.side), 1, 20,
                        std::string(each_faces));
    }
  }
}

}  // namespace backmark::press::book
