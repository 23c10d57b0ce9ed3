// The plate of fittings: a back of each kind at one scale, three across, with its years.
#include "press/fittings.h"

#include <algorithm>

#include "base/text.h"
#include "press/book/kinds.h"
#include "press/book/linked.h"
#include "press/book/list_flow.h"
#include "press/book/plate.h"
#include "press/book/type.h"
#include "words/fact.h"
#include "words/year_phrase.h"

namespace backmark::press::book {

namespace {

constexpr std::size_t across = 3;
constexpr double under_picture = 4.5;  // from a picture to the first baseline of its words
constexpr double between_rows = 7;

class FittingsPlate {
 public:
  FittingsPlate(Layout& book, std::vector<FittingKind> kinds)
      : book_(book), grid_(book.grid()), kinds_(std::move(kinds)) {
    std::vector<const model::Photograph*> pictures;
    for (const FittingKind& kind : kinds_) {
      pictures.push_back(kind.photograph);
    }
    // Two rows with their words under the title of the first page.
    const double half = (grid_.lines - back_matter_first + 1) * grid_.step / 2;
    ratio_ = ratio_for(pictures, {width(), half - between_rows - 16 * grid_.type});
  }

  void lay() {
    page_ = &open_back_matter(
        book_, {.title = "Fittings", .place = "fittings"},
        fmt::format("A back of each kind, all {}, in the order in which the kinds came up. The "
                    "years are those outside of which the chance of use is under one in five.",
                    ratio_ == 1 ? "at true size" : ratio_words(ratio_)));
    y_ = grid_.line(back_matter_first) - grid_.step;
    for (std::size_t row = 0; row < kinds_.size(); row += across) {
      lay_row(row, std::min(kinds_.size(), row + across));
    }
    add_bar();
  }

 private:
  void add_bar() {
    add_scale_bar(book_, *page_, {grid_.left(page_->side), grid_.line(grid_.lines) + 3}, 20,
                  ratio_);
  }

  double width() const { return grid_.columns(2); }

  Linked head(const FittingKind& kind) const {
    Linked words(grid_);
    words.add(words::sentence(kind.fitting), caption(grid_));
    if (!kind.variant.empty()) {
      const bool legend = lower_ascii(kind.variant) != kind.variant;
      words.add(", ", caption(grid_));
      words.add(legend ? for_small_caps(kind.variant) : kind.variant,
                legend ? small_caps(grid_, 9.2) : caption(grid_));
    }
    return words;
  }

  // "1938–52, on 17 pieces; here no. 20", then what the glossary says.
  Linked words_of(const FittingKind& kind) const {
    const draw::Style quiet = caption_italic(grid_).with(draw::grey);
    Linked words(grid_);
    words.add((kind.years ? words::year_range(*kind.years) + ", on " : "On ") +
                  (kind.places.size() == 1 ? std::string("one piece")
                                           : fmt::format("{}\u00A0pieces", kind.places.size())),
              quiet);
    if (kind.shown != nullptr && kind.places.size() > 1) {
      words.add("; here ", quiet);
      words.add(fmt::format("no.\u00A0{}", kind.shown->number), quiet,
                "piece " + kind.shown->piece->number);
    }
    return words;
  }

  double words_height(const FittingKind& kind) const {
    double lines = static_cast<double>(head(kind).set(book_, width()).size());
    lines += static_cast<double>(words_of(kind).set(book_, width()).size());
    if (!kind.meaning.empty()) {
      Linked meaning(grid_);
      meaning.add(words::sentence(kind.meaning));
      lines += static_cast<double>(meaning.set(book_, width()).size());
    }
    return under_picture + lines * grid_.small;
  }

  void lay_row(std::size_t from, std::size_t end) {
    double pictures = 0;
    double words = 0;
    for (std::size_t at = from; at < end; ++at) {
      const auto* photograph = kinds_[at].photograph;
      pictures =
          std::max(pictures, photograph == nullptr ? 0 : size_of(*photograph, ratio_).height);
      words = std::max(words, words_height(kinds_[at]));
    }
    if (y_ + pictures + words > grid_.line(grid_.lines) && from > 0) {
      add_bar();
      page_ = &book_.page();
      y_ = grid_.line(0);
    }
    for (std::size_t at = from; at < end; ++at) {
      lay_cell(kinds_[at],
               {grid_.column_left(page_->side, 1 + 2 * static_cast<int>(at - from)), y_},
               pictures);
    }
    y_ += pictures + words + between_rows;
  }

  void lay_cell(const FittingKind& kind, draw::Point corner, double height) {
    if (kind.photograph != nullptr) {
      const draw::Size size = size_of(*kind.photograph, ratio_);
      add_plate(*page_, kind.photograph,
                {corner.x + size.width / 2, corner.y + height - size.height / 2}, ratio_,
                words::sentence(kind.fitting) + ", back");
    }
    corner.y += height + under_picture;
    const Linked name = head(kind);
    corner.y = name.place(book_, *page_, name.set(book_, width()), corner);
    const Linked said = words_of(kind);
    corner.y = said.place(book_, *page_, said.set(book_, width()), corner);
    if (!kind.meaning.empty()) {
      book_.ragged(*page_, corner, {{words::sentence(kind.meaning), caption(grid_)}}, width(),
                   grid_.small);
    }
  }

  Layout& book_;
  const Grid& grid_;
  std::vector<FittingKind> kinds_;
  double ratio_ = 1;
  Page* page_ = nullptr;
  double y_ = 0;
};

}  // namespace

void lay_fittings(Layout& book) {
  const Plan& plan = book.plan();
  auto kinds = fitting_kinds(plan.job, plan.grammar.numbering(), plan.glossary, plan.years);
  std::vector<std::string> unseen;
  for (const FittingKind& kind : kinds) {
    if (kind.photograph == nullptr) {
      unseen.push_back(kind.fitting + (kind.variant.empty() ? "" : ", " + kind.variant));
    }
  }
  if (!unseen.empty()) {
    book.find({Fault::not_found,
               "the plate of fittings has no picture of " + join(unseen, "; "),
               "plate of fittings", "photograph a back, or ask for leave to print one"});
  }
  if (!kinds.empty()) {
    FittingsPlate(book, std::move(kinds)).lay();
  }
}

}  // namespace backmark::press::book
