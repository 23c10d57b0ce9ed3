#include "press/book/list_flow.h"

#include "press/book/type.h"

namespace backmark::press::book {

namespace {

constexpr int grid_columns = 6;
constexpr std::size_t never_parted = 3;
constexpr double title_pt = 30;

}  // namespace

Page& open_back_matter(Layout& book, Chapter chapter, const std::string& note) {
  const Grid& grid = book.grid();
  const std::string title = chapter.title;
  book.open(std::move(chapter));
  Page& page = book.page();
  const double width =
      book.text(page, {grid.left(page.side), grid.line(3)}, {{title, roman(grid, title_pt)}},
                draw::Align::left, Role::title);
  if (!note.empty()) {
    // Column 3, or the one after a long title.
    const int column =
        grid.left(page.side) + width + grid.gutter <= grid.column_left(page.side, 3) ? 3 : 4;
    book.ragged(page, {grid.column_left(page.side, column), grid.line(3) - 2 * grid.small},
                {{note, caption(grid)}}, grid.columns(7 - column), grid.small);
  }
  return page;
}

ListFlow::ListFlow(Layout& book, Page& page, int columns)
    : book_(book),
      page_(&page),
      columns_(book.grid().side_column ? columns : 2),
      width_(book.grid().columns(grid_columns / columns_)),
      y_(book.grid().line(back_matter_first)),
      first_(y_) {}

double ListFlow::x() const {
  return book_.grid().column_left(page_->side, 1 + column_ * (grid_columns / columns_));
}

double ListFlow::last() const {
  return book_.grid().line(book_.grid().lines) + 0.01;
}

void ListFlow::next_column() {
  if (++column_ == columns_) {
    column_ = 0;
    page_ = &book_.page();
    first_ = book_.grid().line(1);
  }
  y_ = first_;
}

void ListFlow::space(double mm) {
  if (y_ > first_) {
    y_ += mm;
  }
}

void ListFlow::keep(int lines) {
  if (y_ > first_ && y_ + (lines - 1) * book_.grid().small > last()) {
    next_column();
  }
}

void ListFlow::paragraph(const std::vector<draw::Stretch>& words,
                         double hang,
                         const std::vector<std::string>& places,
                         const std::string& goes_on) {
  const Grid& grid = book_.grid();
  const draw::Paragraph& lines = book_.set_ragged(words, {width_ - hang, -hang});
  const std::size_t count = lines.size();
  keep(static_cast<int>(count <= never_parted ? count : 2));
  const int paragraph = book_.new_paragraph();
  for (std::size_t at = 0; at < count; ++at) {
    const bool two_left = at + 2 == count && count > never_parted;
    if (y_ + (two_left ? grid.small : 0) > last()) {
      next_column();
      if (!goes_on.empty()) {
        book_.text(*page_, {x(), y_}, {{goes_on, caption_italic(grid).with(draw::grey)}});
        y_ += grid.small;
      }
    }
    page_->lines.push_back({{x() + hang, y_}, lines[at].line, Role::entry, paragraph});
    for (const draw::Tagged& tagged : lines[at].tags) {
      const auto place = static_cast<std::size_t>(tagged.tag);
      if (place < places.size() && !places[place].empty()) {
        book_.link(*page_,
                   {x() + hang + tagged.x, y_ - 0.75 * grid.small, tagged.width, grid.small},
                   places[place]);
      }
    }
    y_ += grid.small;
  }
}

}  // namespace backmark::press::book
