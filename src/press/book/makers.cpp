// Makers and their marks: name, place, years and pieces of each, with every mark beside at one
// enlargement; then hands that nobody recorded, and marks of no known maker.
#include "press/makers.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "press/book/kinds.h"
#include "press/book/linked.h"
#include "press/book/mark_cell.h"
#include "press/book/plate.h"
#include "press/book/type.h"
#include "words/fact.h"
#include "words/year_phrase.h"

namespace backmark::press::book {

namespace {

constexpr double under_corner = 5;  // from a mark in the corner to the first text
constexpr double first_text = 8;    // grid lines under a maker's head
constexpr double least_block = 23;  // grid lines of a maker, in the trim with a side column

// "at work from about 1938 to 1951"; empty if nothing is on paper.
std::string years_text(const model::Maker& maker) {
  const auto about = [](const std::optional<Year>& year, double sd) {
    return (sd > 1.5 ? "about " : "") + std::to_string(year->value);
  };
  if (maker.from && maker.to) {
    return "at work from " + about(maker.from, maker.from_sd) + " to " +
           about(maker.to, maker.to_sd);
  }
  if (maker.from) {
    return "at work from " + about(maker.from, maker.from_sd);
  }
  return maker.to ? "at work until " + about(maker.to, maker.to_sd) : "";
}

std::string kind_text(model::MakerKind kind) {
  return kind == model::MakerKind::workshop ? "workshop"
         : kind == model::MakerKind::firm   ? "firm"
                                            : "";
}

// What stands under the name, in italics.
std::string under_name(const model::Show& show, const MakerPage& page) {
  std::vector<std::string> said;
  for (const std::string& one :
       {kind_text(page.maker->kind), std::string(show.text(page.maker->place)),
        page.tell_years ? years_text(*page.maker) : std::string()}) {
    if (!one.empty()) {
      said.push_back(one);
    }
  }
  return join(said, "; ");
}

class MakerPages {
 public:
  MakerPages(Layout& book, const BookMakers& all)
      : book_(book), grid_(book.grid()), all_(all) {}

  void lay() {
    book_.open({.title = "Makers and their marks", .place = "makers"});
    for (const MakerPage& maker : all_.makers) {
      lay(maker);
    }
    unrecorded();
  }

 private:
  double left() const { return grid_.text_left(page_->side); }
  double small_lines(std::size_t count) const {
    return static_cast<double>(count) * grid_.small / grid_.step;
  }

  draw::Paragraph prose(const MakerPage& maker) {
    draw::Paragraph lines;
    if (!maker.tell_prose) {
      return lines;
    }
    for (const auto part : split(maker.maker->prose, "\n")) {
      if (trim(part).empty()) {
        continue;
      }
      draw::Paragraph set = book_.set_justified(
          {{draw::with_held_spaces(words::with_curved_quotes(trim(part))), text_style(grid_)}},
          {grid_.text_width(), lines.empty() ? 0 : grid_.step});
      book_.quality().add(set);
      std::move(set.begin(), set.end(), std::back_inserter(lines));
    }
    return lines;
  }

  // "In this book: 52, 57; attributed 60", numbers as links.
  Linked pieces(const MakerPage& maker) const {
    Linked words(grid_);
    words.add("In this book: ");
    std::string before;
    for (const auto& [head, places] : {std::pair{std::string(), &maker.named},
                                       std::pair{std::string("attributed "), &maker.attributed},
                                       std::pair{std::string("possibly "), &maker.possible}}) {
      if (!places->empty()) {
        words.add(before + head);
        words.numbers(*places, head.empty());
        before = "; ";
      }
    }
    if (before.empty()) {
      words.add("the mark alone");
    }
    return words;
  }

  void lay(const MakerPage& maker) {
    const draw::Paragraph text = prose(maker);
    const bool beside = grid_.side_column;
    const bool corner = !beside && maker.marks.size() == 1;
    MarkRoom room = mark_room(grid_);
    room.across = corner ? 1 : room.across;
    const double marks = marks_height(book_, maker.marks, room) / grid_.step;
    const double first =
        corner ? std::max(first_text, std::ceil(marks + under_corner)) : first_text;
    const double under_text = first + static_cast<double>(text.size()) + (text.empty() ? 0 : 1);
    const Linked list = pieces(maker);
    const draw::Paragraph list_lines = list.set(book_, grid_.text_width());
    double height = under_text + small_lines(list_lines.size() + 1);
    height = beside ? std::max(height, 1.4 + marks) : corner ? height : height + 1 + marks;
    if (next_ + height > grid_.lines + 0.5) {
      next_ = least_;
    }
    if (page_ == nullptr || next_ + height > grid_.lines + 0.5) {
      page_ = &book_.page();
      next_ = 0;
    } else {
      const double y = grid_.line(next_ - 0.4);
      page_->rules.push_back(
          {{grid_.left(page_->side), y}, {grid_.right(page_->side), y}, 0.25, draw::rule_grey});
    }
    head(maker, first - first_text, corner ? grid_.columns(3) : grid_.text_width());
    add_lines(text, first);
    double y = list.place(book_, *page_, list_lines, {left(), grid_.line(next_ + under_text)});
    y = documents(maker, y);
    const double top = beside || corner ? grid_.line(next_ + 1.4) : y + grid_.step;
    const double right = left() + grid_.text_width() - room.width;
    const draw::Point marks_at{
        beside ? grid_.side_left(page_->side) : (corner ? right : left()), top};
    add_marks(book_, *page_, maker.marks, marks_at, room);
    if (next_ + height > grid_.lines + 0.5) {
      book_.find({Fault::conflict, "a maker takes more than a page", maker.maker->name,
                  "shorten the prose, or keep marks for a chapter"});
    }
    least_ = next_ + height + 1;
    next_ = beside ? std::max(next_ + least_block, least_ + 1) : least_ + 1;
  }

  double documents(const MakerPage& maker, double y) {
    if (maker.documents.empty()) {
      return y;
    }
    return book_.ragged(*page_, {left(), y},
                        {{"Documents: " + join(maker.documents, "; "), caption(grid_)}},
                        grid_.text_width(), grid_.small);
  }

  // The band stands `down` lines lower where a mark stands in the corner, right of the name.
  void head(const MakerPage& maker, double down, double width) {
    const std::string name =
        maker.maker->inverted.empty() ? maker.maker->name : maker.maker->inverted;
    book_.place(*page_, "maker " + maker.maker->key, {left(), grid_.line(next_)});
    book_.text(*page_, {left(), grid_.line(next_ + 2)}, {{name, roman(grid_, 19)}},
               draw::Align::left, Role::heading);
    book_.ragged(*page_, {left(), grid_.line(next_ + 3.5)},
                 {{under_name(book_.plan().show(), maker), italic(grid_, 12)}}, width,
                 grid_.step);
    band(maker, {left(), grid_.line(next_ + down + 5.6)});
  }

  void add_lines(const draw::Paragraph& lines, double from) {
    const int paragraph = book_.new_paragraph();
    for (std::size_t at = 0; at < lines.size(); ++at) {
      page_->lines.push_back({{left(), grid_.line(next_ + from + static_cast<double>(at))},
                              lines[at].line,
                              Role::text,
                              paragraph,
                              true});
    }
  }

  // As dark in a year as the odds that the maker was at work; a stroke for the middle of each
  // piece.
  void band(const MakerPage& maker, draw::Point axis) {
    const YearSpan span = book_.plan().years;
    const double width = grid_.text_width();
    const double per_year = width / span.length();
    const auto x_of = [=](double year) {
      return axis.x + (year - span.first.value) * per_year;
    };
    std::vector<double> strokes;
    for (const Year middle : maker.middles) {
      if (middle >= span.first && middle <= span.last) {
        strokes.push_back(x_of(middle.value + 0.5));
      }
    }
    std::vector<double> ticks;
    for (int year = (span.first.value + 9) / 10 * 10; year <= span.last.value; year += 10) {
      ticks.push_back(x_of(year));
      book_.text(*page_, {x_of(year), axis.y + 3.9 * grid_.type},
                 {{std::to_string(year), caption(grid_).with(draw::grey)}}, draw::Align::centre,
                 Role::artifact);
    }
    const std::vector<double> p = maker.at_work;
    page_->drawings.push_back([=](draw::Canvas& canvas) {
      for (std::size_t at = 0; at < p.size(); ++at) {
        if (p[at] >= 0.012) {
          canvas.rectangle(
              {axis.x + static_cast<double>(at) * per_year, axis.y - 2.4, per_year, 2.4});
          canvas.fill(draw::copper.with_alpha(0.05 + 0.40 * p[at]));
        }
      }
      canvas.line(axis, {axis.x + width, axis.y}, draw::grey, {0.25 * mm_per_point});
      for (const double x : ticks) {
        canvas.line({x, axis.y}, {x, axis.y + 0.8}, draw::grey, {0.25 * mm_per_point});
      }
      for (const double x : strokes) {
        canvas.line({x, axis.y - 4.4}, {x, axis.y - 3.0}, draw::ink, {0.5 * mm_per_point});
      }
    });
  }

  // One paragraph a place, then marks of no known maker.
  void unrecorded() {
    if (all_.unrecorded.empty() && all_.others.empty()) {
      return;
    }
    page_ = &book_.page();
    const double x = grid_.left(page_->side);
    double y = grid_.line(2);
    if (!all_.unrecorded.empty()) {
      book_.text(*page_, {x, y}, {{"Unrecorded hands", roman(grid_, 19)}}, draw::Align::left,
                 Role::heading);
      y += 2 * grid_.step;
    }
    for (const UnrecordedHands& hands : all_.unrecorded) {
      Linked words(grid_);
      words.add((hands.place.empty() ? "Place not said" : words::sentence(hands.place)) + ": ");
      words.numbers(hands.places, false);
      y = words.place(book_, *page_, words.set(book_, grid_.width()), {x, y}) + 1.25;
    }
    if (!all_.others.empty()) {
      lay_mark_plate(book_, *page_, all_.others, y + 3 * grid_.step);
    }
  }

  Layout& book_;
  const Grid& grid_;
  const BookMakers& all_;
  Page* page_ = nullptr;
  // Grid lines under the page's head where the next maker starts, and where at the earliest if
  // the page has no room for it there.
  double next_ = 0;
  double least_ = 0;
};

}  // namespace

void lay_makers(Layout& book) {
  const Plan& plan = book.plan();
  const BookMakers all = makers_of(plan.job, plan.grammar, plan.years);
  for (const Problem& finding : all.findings) {
    book.find(finding);
  }
  if (!all.makers.empty() || !all.others.empty() || !all.unrecorded.empty()) {
    MakerPages(book, all).lay();
  }
}

}  // namespace backmark::press::book
