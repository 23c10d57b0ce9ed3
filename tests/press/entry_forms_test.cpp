#include "press/book/entry_forms.h"

#include <cmath>
#include <map>
#include <set>

#include "base/text.h"
#include "laid_out.h"

using namespace backmark;
using namespace backmark::press;
using namespace backmark::press::book;

namespace {

struct Pair {
  const Page* front_page = nullptr;
  const Page* back_page = nullptr;
  draw::Box front;
  draw::Box back;
};

// Fronts and backs by spread (the number of its verso) and piece.
std::map<std::pair<int, int>, Pair> pairs_of(const Layout& layout) {
  std::map<std::pair<int, int>, Pair> pairs;
  for (const auto& page : layout.pages()) {
    for (const Plate& plate : page->plates) {
      Pair& pair = pairs[{page->number / 2,  // verso and recto are 2n and 2n + 1
                          plate.photograph->piece.value}];
      if (plate.photograph->view == model::View::front) {
        pair.front_page = page.get();
        pair.front = plate.box;
      } else if (plate.photograph->view == model::View::back) {
        pair.back_page = page.get();
        pair.back = plate.box;
      }
    }
  }
  return pairs;
}

}  // namespace

TEST_CASE("shut the book and each back meets its front") {
  for (const char* trim : {"A", "B"}) {
    const LaidOut book(trim, lay_entries);
    int met = 0;
    int beside = 0;
    for (const auto& [key, pair] : pairs_of(*book.layout)) {
      if (pair.front_page == nullptr || pair.back_page == nullptr) {
        continue;
      }
      if (pair.front_page == pair.back_page) {
        ++beside;  // the words left no room for the back on the other page
        continue;
      }
      ++met;
      CAPTURE(pair.front_page->number);
      const double width = book.plan->grid.trim.width;
      CHECK(pair.front.centre().x + pair.back.centre().x == doctest::Approx(width));
      CHECK(pair.front.centre().y == doctest::Approx(pair.back.centre().y).epsilon(0.01));
    }
    CHECK(met >= 120);
    CHECK(beside <= (std::string_view(trim) == "A" ? 0 : 40));
  }
}

TEST_CASE("plates keep within the paper, and off each other") {
  for (const char* trim : {"A", "B"}) {
    const LaidOut book(trim, lay_entries);
    for (const auto& page : book.layout->pages()) {
      for (const Plate& one : page->plates) {
        CAPTURE(page->number);
        CHECK(one.box.x >= 9);
        CHECK(one.box.y >= 9);
        CHECK(one.box.right() <= book.plan->grid.trim.width - 9);
        for (const Plate& other : page->plates) {
          const bool apart = one.box.right() <= other.box.x || other.box.right() <= one.box.x ||
                             one.box.bottom() <= other.box.y || other.box.bottom() <= one.box.y;
          CHECK((&one == &other || apart));
        }
      }
    }
  }
}

TEST_CASE(
    "every spread of pieces begins on a verso, and each piece of the book has its place") {
  const LaidOut book("A", lay_entries);
  std::set<std::string> placed;
  for (const auto& page : book.layout->pages()) {
    for (const auto& [name, at] : page->places) {
      if (starts_with(name, "piece ")) {
        CHECK(page->side == Side::verso);
        CHECK(placed.insert(name).second);
      }
    }
  }
  std::size_t entries = 0;
  for (const EntryPart& part : book.plan->parts) {
    entries += part.entries.size();
  }
  CHECK(placed.size() == entries);
}

TEST_CASE("where words stand under plates of one row they begin level, on the grid") {
  const LaidOut book("A", lay_entries);
  int rows = 0;
  for (const EntryPart& part : book.plan->parts) {
    for (const Slot& slot : slots_of(*book.layout, part.entries)) {
      rows += slot.form == Form::cells ? 1 : 0;
    }
  }
  CHECK(rows > 20);
  for (const auto& page : book.layout->pages()) {
    std::set<double> heads;  // baselines of numbers under the fronts of one row
    for (const TextLine& line : page->lines) {
      if (line.role == Role::heading && page->plates.size() == 2) {
        heads.insert(std::round(line.baseline.y * 1000));
        const double lines = (line.baseline.y - book.plan->grid.head) / book.plan->grid.step;
        CHECK(lines == doctest::Approx(std::round(lines)));
      }
    }
    CAPTURE(page->number);
    CHECK(heads.size() <= 1);
  }
}

TEST_CASE("no prose is lost for want of room") {
  const auto bare = [](std::string text) {  // without what line breaks add and take away
    for (const char* one : {" ", "\u00A0", "-", "\u2010", "\u00AD", "\n"}) {
      text = replace_all(text, one, "");
    }
    return text;
  };
  const LaidOut book("A", lay_entries);
  std::string text;
  for (const auto& page : book.layout->pages()) {
    for (const TextLine& line : page->lines) {
      for (const draw::GlyphRun& run : line.line.runs) {
        text += run.text;
      }
    }
  }
  text = bare(std::move(text));
  int with_prose = 0;
  for (const EntryPart& part : book.plan->parts) {
    for (const Entry& entry : part.entries) {
      const std::string prose = entry.fact(words::FactKind::prose);
      with_prose += prose.empty() ? 0 : 1;
      CAPTURE(prose);
      CHECK(contains(text, bare(prose)));
    }
  }
  CHECK(with_prose > 100);
}

TEST_CASE("what is not pictured is nowhere called a front") {
  const LaidOut book("A", lay_entries,
                     [](model::Show& show) { show.all<model::Photograph>().clear(); });
  int corners = 0;
  for (const auto& page : book.layout->pages()) {
    CHECK(page->plates.empty());
    for (const TextLine& line : page->lines) {
      for (const draw::GlyphRun& run : line.line.runs) {
        CHECK_FALSE(contains(run.text, ", front"));
        corners += run.text == "not pictured" ? 1 : 0;
      }
    }
  }
  CHECK(corners > 50);
}
