// The chronology chart: labels in columns 1 and 2, years in columns 3 to 6. A band is as dark
// in a year as the odds of that year; never a silhouette.
#include <algorithm>

#include "base/text.h"
#include "press/book/kinds.h"
#include "press/book/list_flow.h"
#include "press/book/type.h"
#include "press/chronology.h"
#include "press/type.h"

namespace backmark::press::book {

namespace {

constexpr double faintest = 0.05;  // opacity of a year: 0.05 + 0.80 of its share of the mode
constexpr double darkest = 0.80;
constexpr double least = 0.012;  // chances under it are not drawn
constexpr double in_use_darkest =
    0.40;  // of fittings and makers, which stand behind the pieces

using draw::Canvas;

class Chart {
 public:
  explicit Chart(Layout& book)
      : book_(book),
        grid_(book.grid()),
        all_(chronology(book.plan().job, book.plan().grammar.numbering(), book.plan().years)) {}

  void lay() {
    if (all_.pieces.empty()) {
      return;
    }
    std::size_t from = 0;
    do {
      start_page();
      shared_blocks();
      from = pieces(from);
      finish_page();
    } while (from < all_.pieces.size());
  }

 private:
  double row() const { return 0.9 * grid_.step; }
  double x_of(double year) const {
    const double left = grid_.column_left(page_->side, 3);
    const double width = grid_.right(page_->side) - left;
    const double years = all_.span.last.value + 1 - all_.span.first.value;
    return left + width * (year - all_.span.first.value) / years;
  }
  double last_row() const { return grid_.line(grid_.lines - 3); }

  void start_page();
  void shared_blocks();
  void block_head(const std::string& words);
  void bands(const std::string& head, const std::vector<FadeBand>& bands, draw::Colour colour);
  void band(const std::vector<double>& p, double most, double height, draw::Colour colour);
  std::size_t pieces(std::size_t from);
  void piece(const PieceYears& years);
  void finish_page();

  Layout& book_;
  const Grid& grid_;
  Chronology all_;
  Page* page_ = nullptr;
  double top_ = 0;
  double y_ = 0;
};

void Chart::start_page() {
  const std::string note =
      "Each year is as dark as its odds. The two strokes hold the making in at four chances in "
      "five, the lozenge marks the year that is as likely too early as too late, a copper "
      "diamond a year written on the piece.";
  const std::string rest =
      all_.left_out == 0
          ? ""
          : fmt::format(" {} pieces cannot be said within {} years and are left out.",
                        all_.left_out, widest_charted);
  if (page_ == nullptr) {
    page_ =
        &open_back_matter(book_, {.title = "Chronology", .place = "chronology"}, note + rest);
    top_ = grid_.line(back_matter_first);
  } else {
    page_ = &book_.page();
    top_ = grid_.line(2);
  }
  y_ = top_ + row();
}

// One rectangle a year, neighbours of one darkness joined by drawing them side by side.
void Chart::band(const std::vector<double>& p,
                 double most,
                 double height,
                 draw::Colour colour) {
  struct Cell {
    draw::Box box;
    double alpha;
  };
  std::vector<Cell> cells;
  for (std::size_t at = 0; at < p.size(); ++at) {
    if (p[at] <= 0 || most <= 0) {
      continue;
    }
    const double year = all_.span.first.value + static_cast<double>(at);
    const double x = x_of(year);
    cells.push_back({{x, y_ - 1.2 - height / 2, x_of(year + 1) - x, height},
                     faintest + darkest * p[at] / most});
  }
  page_->drawings.push_back([cells, colour](Canvas& canvas) {
    for (const Cell& cell : cells) {
      canvas.rectangle(cell.box);
      canvas.fill(colour.with_alpha(cell.alpha));
    }
  });
}

void Chart::block_head(const std::string& words) {
  book_.text(*page_, {grid_.left(page_->side), y_},
             {{for_small_caps(words), small_caps(grid_).with(draw::copper)}});
  y_ += row();
}

void Chart::bands(const std::string& head,
                  const std::vector<FadeBand>& bands,
                  draw::Colour colour) {
  if (bands.empty()) {
    return;
  }
  block_head(head);
  for (const FadeBand& one : bands) {
    std::vector<double> p = one.p;
    for (double& chance : p) {
      chance = chance < least ? 0 : chance;
    }
    book_.text(*page_, {grid_.left(page_->side), y_},
               {{fitted(book_.plan().fonts(), one.label, caption(grid_), grid_.columns(2)),
                 caption(grid_)}});
    band(p, darkest / in_use_darkest, 1.5, colour);
    y_ += row();
  }
  y_ += row() / 2;
}

void Chart::shared_blocks() {
  bands("Fittings on dated pieces", all_.fittings, draw::grey);
  bands("Makers at work", all_.makers, draw::copper);
}

void Chart::piece(const PieceYears& years) {
  const double left = grid_.left(page_->side);
  const double number_right = left + 8 * grid_.type;
  book_.text(*page_, {number_right, y_},
             {{std::to_string(years.place->number), figures(grid_).with(draw::copper)}},
             draw::Align::right);
  book_.text(*page_, {number_right + 2, y_},
             {{fitted(book_.plan().fonts(), years.place->piece->title, caption(grid_),
                      grid_.columns(2) - 10 * grid_.type),
               caption(grid_)}});
  book_.link(*page_, {left, y_ - row() * 0.7, grid_.columns(2), row()},
             "piece " + years.place->piece->number);
  const double middle = y_ - 1.2;
  if (years.inscribed) {
    const double x = x_of(years.inscribed->value + 0.5);
    page_->drawings.push_back([x, middle](Canvas& canvas) {
      canvas.polygon(
          {{x, middle - 1.15}, {x + 1.15, middle}, {x, middle + 1.15}, {x - 1.15, middle}});
      canvas.fill(draw::copper);
    });
    return;
  }
  const double most = *std::max_element(years.p.begin(), years.p.end());
  band(years.p, most, 1.6, draw::ink);
  std::vector<double> strokes;  // those that lie within the years of the book
  for (const int year : {years.low.value, years.high.value + 1}) {
    if (year >= all_.span.first.value && year <= all_.span.last.value + 1) {
      strokes.push_back(x_of(year));
    }
  }
  if (years.middle < all_.span.first || years.middle > all_.span.last) {
    return;
  }
  const double centre = x_of(years.middle.value + 0.5);
  page_->drawings.push_back([strokes, centre, middle](Canvas& canvas) {
    for (const double x : strokes) {
      canvas.line({x, middle - 1.4}, {x, middle + 1.4}, draw::ink, {0.18});
    }
    canvas.polygon({{centre, middle - 1.0},
                    {centre + 0.6, middle},
                    {centre, middle + 1.0},
                    {centre - 0.6, middle}});
    canvas.fill(draw::white);
    canvas.polygon({{centre, middle - 0.75},
                    {centre + 0.42, middle},
                    {centre, middle + 0.75},
                    {centre - 0.42, middle}});
    canvas.fill(draw::ink);
  });
}

std::size_t Chart::pieces(std::size_t from) {
  block_head("Pieces");
  const std::size_t first = from;  // one a page at least, however many makers there are
  for (; from < all_.pieces.size() && (from == first || y_ <= last_row()); ++from) {
    piece(all_.pieces[from]);
    y_ += row();
  }
  return from;
}

// Decades behind everything, named at head and foot.
void Chart::finish_page() {
  const double foot = y_ + row() / 2;
  std::vector<double> lines;
  for (int year = (all_.span.first.value + 9) / 10 * 10; year <= all_.span.last.value;
       year += 10) {
    lines.push_back(x_of(year));
    for (const double y : {top_ - 1.5, foot + 2 * grid_.small}) {
      book_.text(*page_, {x_of(year), y},
                 {{std::to_string(year), figures(grid_).with(draw::grey)}},
                 draw::Align::centre);
    }
  }
  const double top = top_;
  page_->drawings.insert(page_->drawings.begin(), [lines, top, foot](Canvas& canvas) {
    for (const double x : lines) {
      canvas.line({x, top}, {x, foot}, draw::rule_grey, {0.12});
    }
  });
}

}  // namespace

void lay_chronology(Layout& book) {
  Chart(book).lay();
}

}  // namespace backmark::press::book
