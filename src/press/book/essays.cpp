#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "base/text.h"
#include "press/book/flow.h"
#include "press/book/kinds.h"
#include "press/book/type.h"
#include "press/type.h"

namespace backmark::press::book {

namespace {

constexpr int first_text_line = 18;

draw::Paragraph note_lines(Layout& book, const Words& words) {
  const Grid& grid = book.grid();
  const double width = (grid.text_width() - grid.gutter) / 2 - 4 * grid.type;
  return book.set_ragged(stretches(words, caption(grid),
                                   [&](const std::string& name) { return book.page_of(name); }),
                         {width, 0});
}

// Notes two-up under their rule, the last lines of both columns on the last baseline.
void add_notes(Layout& book, Page& page, const Prose& prose, const std::vector<int>& notes) {
  if (notes.empty()) {
    return;
  }
  const Grid& grid = book.grid();
  const double left = grid.text_left(page.side);
  const double second = left + (grid.text_width() + grid.gutter) / 2;
  const std::size_t in_first = (notes.size() + 1) / 2;
  std::array<int, 2> heights{};
  std::vector<draw::Paragraph> set;
  for (std::size_t at = 0; at < notes.size(); ++at) {
    set.push_back(note_lines(book, prose.notes[static_cast<std::size_t>(notes[at])]));
    heights[at < in_first ? 0 : 1] += static_cast<int>(set.back().size());
  }
  const double top =
      grid.line(grid.lines) - (std::max(heights[0], heights[1]) - 1) * grid.small;
  page.rules.push_back({{left, top - 6.2 * grid.type},
                        {left + 25 * grid.type, top - 6.2 * grid.type},
                        0.35,
                        draw::ink});
  double y = top;
  for (std::size_t at = 0; at < notes.size(); ++at) {
    if (at == in_first) {
      y = top;
    }
    const double x = at < in_first ? left : second;
    book.text(page, {x, y}, {{std::to_string(notes[at] + 1), caption(grid)}}, draw::Align::left,
              Role::note);
    const int paragraph = book.new_paragraph();
    for (draw::ParagraphLine& line : set[at]) {
      page.lines.push_back(
          {{x + 4 * grid.type, y}, std::move(line.line), Role::note, paragraph});
      y += grid.small;
    }
  }
}

// In the side column at the first line of the text, or between author and text; returns the
// lines of the side column that it takes.
int add_epigraph(Layout& book, Page& page, const Prose& prose) {
  if (prose.epigraph.empty()) {
    return 0;
  }
  const Grid& grid = book.grid();
  const bool beside = grid.side_column;
  const double width = beside ? grid.side_width() : grid.columns(4);
  const auto lines =
      book.set_ragged(stretches(prose.epigraph, italic(grid, 12.5),
                                [&](const std::string& name) { return book.page_of(name); }),
                      {width, 0});
  const int first =
      beside ? first_text_line : first_text_line - 1 - static_cast<int>(lines.size());
  const double left = beside ? grid.side_left(page.side) : grid.text_left(page.side);
  const int paragraph = book.new_paragraph();
  for (std::size_t at = 0; at < lines.size(); ++at) {
    page.lines.push_back({{left, grid.line(first + static_cast<double>(at))},
                          lines[at].line,
                          Role::text,
                          paragraph,
                          true});
  }
  return beside ? static_cast<int>(lines.size()) + 2 : 0;
}

void add_head(Layout& book, Page& page, const Prose& prose, std::size_t number) {
  const Grid& grid = book.grid();
  constexpr std::array<std::string_view, 9> counted{"one", "two",   "three", "four", "five",
                                                    "six", "seven", "eight", "nine"};
  const double left = grid.text_left(page.side);
  if (grid.side_column && number < counted.size()) {
    book.text(
        page, {grid.side_left(page.side), grid.line(9)},
        {{fmt::format("Essay {}", counted[number]), italic(grid, 15).with(draw::copper)}});
  }
  draw::Style title = roman(grid, 34);
  title.tracking = -4;
  double y = grid.line(9);
  const int paragraph = book.new_paragraph();
  for (const std::string& line :
       balanced(book.plan().fonts(), prose.title, title, grid.text_width())) {
    book.text(page, {left - 0.6, y}, {{line, title}}, draw::Align::left, Role::title);
    page.lines.back().paragraph = paragraph;
    y += 13 * grid.type;
  }
  const std::string author =
      prose.author.empty() ? std::string(book.plan().show().setting("author")) : prose.author;
  book.text(page, {left, y - 13 * grid.type + 2.5 * grid.step}, {{author, italic(grid, 12.5)}});
}

constexpr double cap_height = 2.75;  // mm of the text type: pictures begin where capitals do
constexpr double between_figures = 9;

// Pages of one essay while they are filled.
class EssayPages {
 public:
  EssayPages(Layout& book, const Prose& prose, std::size_t number)
      : book_(book), grid_(book.grid()), prose_(prose), number_(number) {}

  void lay() {
    const auto figures = figures_of(book_, prose_);
    auto lines = flow_lines(book_, prose_, figures);
    NoteRoom room;
    for (const Words& note : prose_.notes) {
      room.lines.push_back(static_cast<int>(note_lines(book_, note).size()));
    }
    find_long_notes(lines, room);
    const auto starts = break_pages(grid_, lines, room, grid_.lines - first_text_line + 1);
    for (std::size_t at = 0; at < starts.size(); ++at) {
      open_page(at == 0);
      const std::size_t end = at + 1 < starts.size() ? starts[at + 1] : lines.size();
      lay_lines(lines, starts[at], end, at == 0 ? first_text_line : 1);
      lay_beside();
    }
    while (!waiting_.empty()) {
      open_page(false);
      lay_beside();
    }
  }

 private:
  // A figure of the side column and the y at which it is called.
  struct Call {
    const Figure* figure;
    double y;
  };

  void find_long_notes(const std::vector<FlowLine>& lines, const NoteRoom& room) {
    for (const FlowLine& line : lines) {
      if (room.taken(grid_, line.notes) + line.height > grid_.lines) {
        book_.find({Fault::conflict, "an essay's notes are longer than a page", line.where,
                    "shorten them"});
      }
    }
  }

  void open_page(bool opening) {
    page_ = &book_.page();
    taken_.clear();
    beside_top_ = grid_.line(1) - cap_height * grid_.type;
    if (opening) {
      add_head(book_, *page_, prose_, number_);
      const int down = add_epigraph(book_, *page_, prose_);
      beside_top_ = grid_.line(first_text_line + down) - cap_height * grid_.type;
    }
  }

  void lay_lines(const std::vector<FlowLine>& lines, std::size_t from, std::size_t end, int k) {
    std::vector<int> notes;
    for (std::size_t i = from; i < end; ++i) {
      const FlowLine& line = lines[i];
      k += i > from ? line.before : 0;
      if (line.figure != nullptr) {
        lay_figure(*line.figure, k);
      } else {
        lay_line(line, k);
      }
      for (const Figure* figure : line.beside) {
        waiting_.push_back({figure, grid_.line(k) - cap_height * grid_.type});
      }
      notes.insert(notes.end(), line.notes.begin(), line.notes.end());
      k += line.height;
    }
    add_notes(book_, *page_, prose_, notes);
  }

  void lay_line(const FlowLine& line, int k) {
    paragraph_ = line.first || paragraph_ == 0 ? book_.new_paragraph() : paragraph_;
    const draw::Point at{grid_.text_left(page_->side) + line.indent, grid_.line(k)};
    page_->lines.push_back(
        {at, line.line.line, line.head ? Role::heading : Role::text, paragraph_, true});
    add_links(book_, *page_, line.line.tags, *line.words, at);
  }

  void lay_figure(const Figure& figure, int k) {
    const bool wide = figure.where == Figure::Where::wide;
    const double y = grid_.line(k) - cap_height * grid_.type;
    place_figure(book_, *page_, figure,
                 {wide ? grid_.left(page_->side) : grid_.text_left(page_->side), y});
    if (wide) {
      taken_.emplace_back(y, y + figure.height);
    }
  }

  // Each beside its call, or as near below the one before as it goes; what finds no room waits
  // for the next page.
  void lay_beside() {
    double least = beside_top_;
    while (!waiting_.empty()) {
      const Call& call = waiting_.front();
      const auto y = free_y(call, least);
      if (!y) {
        break;
      }
      place_figure(book_, *page_, *call.figure, {grid_.side_left(page_->side), *y});
      least = *y + call.figure->height + between_figures;
      waiting_.erase(waiting_.begin());
    }
    for (Call& call : waiting_) {
      call.y = 0;
    }
  }

  std::optional<double> free_y(const Call& call, double least) const {
    const double height = call.figure->height;
    const double most = grid_.line(grid_.lines) + 1 - height;
    std::vector<double> tried{std::clamp(call.y, least, std::max(least, most)), least, most};
    for (const auto& [top, bottom] : taken_) {
      tried.push_back(bottom + between_figures);
      tried.push_back(top - between_figures - height);
    }
    std::optional<double> best;
    for (const double y : tried) {
      const bool free = std::all_of(taken_.begin(), taken_.end(), [&](const auto& one) {
        return y >= one.second + between_figures - 0.1 ||
               y + height <= one.first - between_figures + 0.1;
      });
      if (free && y >= least - 0.01 && y <= most + 0.01 &&
          (!best || std::abs(y - call.y) < std::abs(*best - call.y))) {
        best = y;
      }
    }
    return best;
  }

  Layout& book_;
  const Grid& grid_;
  const Prose& prose_;
  std::size_t number_;
  Page* page_ = nullptr;
  int paragraph_ = 0;
  double beside_top_ = 0;
  std::vector<Call> waiting_;
  std::vector<std::pair<double, double>> taken_;  // of the side column, by wide figures
};

}  // namespace

void lay_essays(Layout& book) {
  const auto& essays = book.plan().essays;
  for (std::size_t at = 0; at < essays.size(); ++at) {
    book.open({.title = essays[at].title,
               .place = "essay " + essays[at].file,
               .part = "Essays",
               .note = essays[at].author,
               .starts = Starts::recto});
    EssayPages(book, essays[at], at).lay();
  }
}

}  // namespace backmark::press::book
