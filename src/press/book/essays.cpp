#include <algorithm>
#include <array>

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
  return draw::set_ragged(
      book.plan().fonts(),
      stretches(words, caption(grid),
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

// A piece's number leads to its entry, a page to what stands there, a short title to the works
// cited.
void add_links(Layout& book, Page& page, const FlowLine& line, draw::Point baseline) {
  for (const draw::Tagged& tagged : line.line.tags) {
    const Span& span = (*line.words)[static_cast<std::size_t>(tagged.tag)];
    const double height = book.grid().step;
    const draw::Box box{baseline.x + tagged.x, baseline.y - 0.75 * height, tagged.width,
                        height};
    if (span.kind == Span::Kind::address) {
      page.links.push_back({box, {}, span.key});
    } else if (span.kind == Span::Kind::citation) {
      book.link(page, box, "bibliography");
    } else if (span.kind == Span::Kind::piece) {
      book.link(page, box, "piece " + span.key);
    } else if (span.kind == Span::Kind::page) {
      book.link(page, box, span.key);
    }
  }
}

void lay_essay(Layout& book, const Prose& prose, std::size_t number) {
  const Grid& grid = book.grid();
  book.open({.title = prose.title,
             .place = "essay " + prose.file,
             .part = "Essays",
             .note = prose.author,
             .starts = Starts::recto});
  const auto lines = flow_lines(book, prose);
  NoteRoom room;
  for (const Words& note : prose.notes) {
    room.lines.push_back(static_cast<int>(note_lines(book, note).size()));
  }
  const auto starts = break_pages(grid, lines, room, grid.lines - first_text_line + 1);
  if (starts.empty() && !lines.empty()) {
    book.find({Fault::conflict, "an essay's notes are longer than a page", prose.file,
               "shorten them"});
  }
  int paragraph = 0;
  for (std::size_t at = 0; at < starts.size(); ++at) {
    Page& page = book.page();
    if (at == 0) {
      add_head(book, page, prose, number);
    }
    const std::size_t end = at + 1 < starts.size() ? starts[at + 1] : lines.size();
    int k = at == 0 ? first_text_line : 1;
    std::vector<int> notes;
    for (std::size_t i = starts[at]; i < end; ++i) {
      k += i > starts[at] ? lines[i].before : 0;
      paragraph = lines[i].first || paragraph == 0 ? book.new_paragraph() : paragraph;
      page.lines.push_back({{grid.text_left(page.side) + lines[i].indent, grid.line(k)},
                            lines[i].line.line,
                            lines[i].head ? Role::heading : Role::text,
                            paragraph,
                            true});
      add_links(book, page, lines[i], page.lines.back().baseline);
      notes.insert(notes.end(), lines[i].notes.begin(), lines[i].notes.end());
      ++k;
    }
    add_notes(book, page, prose, notes);
  }
}

}  // namespace

void lay_essays(Layout& book) {
  const auto& essays = book.plan().essays;
  for (std::size_t at = 0; at < essays.size(); ++at) {
    lay_essay(book, essays[at], at);
  }
}

}  // namespace backmark::press::book
