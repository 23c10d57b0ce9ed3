#include "press/book/linked.h"

#include "base/text.h"
#include "press/book/type.h"

namespace backmark::press::book {

void Linked::add(const std::string& text) {
  add(text, caption(*grid_));
}

void Linked::add(const std::string& text, const draw::Style& style, const std::string& place) {
  draw::Stretch stretch{text, style, false};
  if (!place.empty()) {
    stretch.tag = static_cast<int>(places_.size());
    places_.push_back(place);
  }
  words_.push_back(std::move(stretch));
}

void Linked::numbers(const Places& places, bool strong) {
  const draw::Style style =
      strong ? sans_strong(*grid_, 0.77 * 9.2).with(draw::copper) : caption(*grid_);
  const auto number = [&](std::size_t at) {
    add(std::to_string(places[at]->number), style, "piece " + places[at]->piece->number);
  };
  for (std::size_t from = 0; from < places.size();) {
    std::size_t to = from;
    while (to + 1 < places.size() && places[to + 1]->number == places[to]->number + 1) {
      ++to;
    }
    if (from > 0) {
      add(", ");
    }
    number(from);
    if (to > from) {
      add(to == from + 1 ? ", " : "\u2013", to == from + 1 ? caption(*grid_) : style);
      number(to);
    }
    from = to + 1;
  }
}

draw::Paragraph Linked::set(Layout& book, double width) const {
  draw::Paragraph lines = book.set_ragged(words_, {width, 0});
  book.quality().add_ragged(lines);
  return lines;
}

double Linked::place(Layout& book,
                     Page& page,
                     const draw::Paragraph& lines,
                     draw::Point at) const {
  const int paragraph = book.new_paragraph();
  for (const draw::ParagraphLine& line : lines) {
    page.lines.push_back({at, line.line, Role::entry, paragraph});
    for (const draw::Tagged& tagged : line.tags) {
      book.link(page, {at.x + tagged.x, at.y - 0.75 * grid_->small, tagged.width, grid_->small},
                places_[static_cast<std::size_t>(tagged.tag)]);
    }
    at.y += grid_->small;
  }
  return at.y;
}

}  // namespace backmark::press::book
