#include "press/book/flow.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "base/text.h"
#include "press/book/type.h"

namespace backmark::press::book {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr double rule_above_notes = 6.2;
constexpr double white_above_rule = 4;

draw::Style style_of(const Grid& grid, const Block& block) {
  if (block.kind == Block::Kind::heading) {
    return block.level <= 2 ? italic(grid, 12).with(draw::copper) : italic(grid, 12);
  }
  return text_style(grid);
}

std::vector<draw::Stretch> words_of(Layout& book, const Block& block, bool opens) {
  auto text = stretches(block.words, style_of(book.grid(), block),
                        [&book](const std::string& place) { return book.page_of(place); });
  if (opens && block.kind == Block::Kind::paragraph) {
    open_with_small_caps(text);
  }
  if (block.kind == Block::Kind::item) {
    text.insert(text.begin(), {block.label + "\u00A0", text_style(book.grid()), false});
  }
  return text;
}

// The notes whose marks stand in a line; a mark without a note was found when it was read.
std::vector<int> notes_in(const draw::ParagraphLine& line, const Words& words, int count) {
  std::vector<int> notes;
  for (const draw::Tagged& tagged : line.tags) {
    const Span& span = words[static_cast<std::size_t>(tagged.tag)];
    if (span.kind == Span::Kind::note && span.note >= 0 && span.note < count) {
      notes.push_back(span.note);
    }
  }
  return notes;
}

void add_block(
    Layout& book, const Block& block, bool flush, int notes, std::vector<FlowLine>& all) {
  const Grid& grid = book.grid();
  const bool head = block.kind == Block::Kind::heading;
  const bool set_in = block.kind == Block::Kind::quotation || block.kind == Block::Kind::item;
  const double indent = set_in ? grid.step * std::max(1, block.level) : 0;
  const draw::Measures measures{grid.text_width() - indent,
                                flush || head || set_in ? 0 : grid.step};
  const auto text = words_of(book, block, all.empty());
  draw::Paragraph lines =
      head ? book.set_ragged(text, measures) : book.set_justified(text, measures);
  if (!head) {
    book.quality().add(lines);
  }
  for (std::size_t at = 0; at < lines.size(); ++at) {
    FlowLine line;
    line.line = std::move(lines[at]);
    line.indent = indent;
    line.first = at == 0;
    line.last = at + 1 == lines.size();
    line.head = head;
    line.before = head && at == 0 && !all.empty() ? 1 : 0;
    line.notes = notes_in(line.line, block.words, notes);
    line.words = &block.words;
    line.where = block.where;
    if (line.line.overfull > 0.01) {
      book.find({Fault::conflict, "a line is wider than its measure", block.where,
                 "reword it, or let a long word be divided"});
    }
    all.push_back(std::move(line));
  }
}

// Whether a page may end after line `end - 1`.
bool may_end(const std::vector<FlowLine>& lines, std::size_t end) {
  const FlowLine& last = lines[end - 1];
  if (last.head || last.line.hyphen) {
    return false;
  }
  if (end >= 2 && lines[end - 2].head) {
    return false;
  }
  const bool orphan = last.first && !last.last;
  const bool widow = lines[end].last && !lines[end].first;
  return !orphan && !widow;
}

// A figure as a line by itself.
FlowLine line_of(const Grid& grid, const Figure& figure) {
  FlowLine line;
  line.first = true;
  line.last = true;
  line.before = 1;
  line.height = figure_lines(grid, figure);
  line.figure = &figure;
  line.where = figure.block->where;
  return line;
}

struct PageFit {
  double cost = never;
  int from = -1;
};

struct Breaks {
  double cost = never;
  std::vector<std::size_t> starts;
};

std::vector<std::size_t> traced(const std::vector<PageFit>& best) {
  std::vector<std::size_t> starts;
  const std::size_t count = best.size() - 1;
  for (int at = best[count].from; at >= 0 && count > 0;
       at = best[static_cast<std::size_t>(at)].from) {
    starts.push_back(static_cast<std::size_t>(at));
  }
  std::reverse(starts.begin(), starts.end());
  return starts;
}

Breaks best_pages(const Grid& grid,
                  const std::vector<FlowLine>& lines,
                  const NoteRoom& notes,
                  int first_room) {
  const std::size_t count = lines.size();
  std::vector<PageFit> best(count + 1);
  best[0].cost = 0;
  for (std::size_t from = 0; from < count; ++from) {
    if (best[from].cost == never) {
      continue;
    }
    const int room = from == 0 ? first_room : grid.lines;
    int used = 0;
    double strays = 0;  // figures that ought to stand at a head and do not
    std::vector<int> called;
    for (std::size_t end = from + 1; end <= count; ++end) {
      const FlowLine& line = lines[end - 1];
      used += line.height + (end - 1 > from ? line.before : 0);
      strays += line.page_head && end - 1 > from ? 1e5 : 0;
      called.insert(called.end(), line.notes.begin(), line.notes.end());
      // The white under a figure is not missed at the foot of a page.
      const int over = line.figure != nullptr ? 1 : 0;
      const int white = room - (used - over) - notes.taken(grid, called);
      if (white < 0 && end > from + 1) {
        break;
      }
      const double hole = white < 0 ? 1e4 : white * white;
      const bool last = end == count;
      const double cost = strays + (last ? 0 : hole + (may_end(lines, end) ? 0 : 1e4));
      if (best[from].cost + cost < best[end].cost) {
        best[end] = {best[from].cost + cost, static_cast<int>(from)};
      }
    }
  }
  return {best[count].cost, traced(best)};
}

}  // namespace

std::map<int, Figure> figures_of(Layout& book, const Prose& prose) {
  std::map<int, Figure> figures;
  for (const Block& block : prose.blocks) {
    if (block.kind == Block::Kind::figure) {
      figures.emplace(block.number, make_figure(book, block));
    }
  }
  return figures;
}

std::vector<FlowLine> flow_lines(Layout& book,
                                 const Prose& prose,
                                 const std::map<int, Figure>& figures) {
  std::vector<FlowLine> lines;
  std::vector<const Figure*> beside;
  bool flush = true;
  for (const Block& block : prose.blocks) {
    if (block.kind == Block::Kind::figure) {
      const Figure& figure = figures.at(block.number);
      if (figure.where == Figure::Where::side) {
        beside.push_back(&figure);
      } else {
        lines.push_back(line_of(book.grid(), figure));
      }
      continue;
    }
    const std::size_t from = lines.size();
    add_block(book, block, flush, static_cast<int>(prose.notes.size()), lines);
    if (from < lines.size()) {
      lines[from].beside = std::exchange(beside, {});
    }
    flush = block.kind == Block::Kind::heading;
  }
  if (!lines.empty()) {  // called after the last paragraph
    lines.back().beside.insert(lines.back().beside.end(), beside.begin(), beside.end());
  }
  return lines;
}

int NoteRoom::taken(const Grid& grid, const std::vector<int>& notes) const {
  if (notes.empty()) {
    return 0;
  }
  // Two columns, filled in order: the first takes half of the notes, rounded up.
  int left = 0;
  int right = 0;
  for (std::size_t at = 0; at < notes.size(); ++at) {
    const int height = lines[static_cast<std::size_t>(notes[at])];
    (at < (notes.size() + 1) / 2 ? left : right) += height;
  }
  const double height = (std::max(left, right) - 1) * grid.small +
                        (rule_above_notes + white_above_rule) * grid.type;
  return static_cast<int>(std::ceil(height / grid.step));
}

std::vector<std::size_t> break_pages(const Grid& grid,
                                     std::vector<FlowLine>& lines,
                                     const NoteRoom& notes,
                                     int first_room) {
  Breaks best = best_pages(grid, lines, notes, first_room);
  for (std::size_t at = 0; at < lines.size(); ++at) {
    if (lines[at].figure == nullptr || lines[at].page_head) {
      continue;
    }
    std::vector<FlowLine> moved = lines;
    std::vector<FlowLine> best_lines;
    moved[at].page_head = true;
    for (std::size_t to = at + 1; to < lines.size() && to <= at + 40; ++to) {
      if (moved[to].figure != nullptr) {
        break;
      }
      std::swap(moved[to - 1], moved[to]);
      Breaks tried = best_pages(grid, moved, notes, first_room);
      if (tried.cost + 1 < best.cost) {
        best = std::move(tried);
        best_lines = moved;
      }
    }
    if (!best_lines.empty()) {
      lines = std::move(best_lines);
    }
  }
  return best.starts;
}

}  // namespace backmark::press::book
