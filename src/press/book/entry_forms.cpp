#include "press/book/entry_forms.h"

#include <algorithm>
#include <cmath>

#include "press/book/entry_text.h"
#include "press/book/plate.h"

namespace backmark::press::book {

namespace {

using words::FactKind;

constexpr double between = 8;  // mm from one cut-out to another
constexpr std::size_t least_group = 4;
constexpr std::size_t most_in_group = 6;
constexpr int under_pictures = 3;  // lines to the prose
constexpr int band_lines = 4;
constexpr int foot_lines = 3;  // of bar and scale

double pair_width(const Entry& entry) {
  double width = entry.back == nullptr || entry.front == nullptr ? 0 : between;
  for (const auto* one : {entry.front, entry.back}) {
    width += one == nullptr ? 0 : size_of(*one, 1).width;
  }
  return width;
}

bool is_small(const Grid& grid, const Entry& entry) {
  if (entry.place->pick->lead || entry.front == nullptr || entry.back == nullptr ||
      entry.fact(FactKind::prose).size() > 350) {
    return false;
  }
  return size_of(*entry.front, 1).width <= grid.columns(3) - 5 &&
         height_of(entry) <= 54 * grid.type;
}

bool has_picture(const Entry& entry) {
  return entry.front != nullptr || entry.back != nullptr;
}

bool wants_spread(const Grid& grid, const Entry& entry) {
  return has_picture(entry) &&
         (entry.place->pick->lead || pair_width(entry) > grid.text_width() ||
          entry.fact(FactKind::prose).size() > 900);
}

bool fit_on_a_page(Layout& book, const Entry& one, const Entry& other) {
  const Grid& grid = book.grid();
  const double half = (grid.text_width() - between) / 2;
  for (const Entry* entry : {&one, &other}) {
    for (const auto* picture : {entry->front, entry->back}) {
      if (picture != nullptr && size_of(*picture, 1).width > half) {
        return false;  // not at true size
      }
    }
  }
  return block_lines(book, one) + lines_between + block_lines(book, other) <=
         grid.lines - foot_lines;
}

// Entries [from, end) that stand alone or in twos, as few pages as neighbours allow.
void add_pages(Layout& book,
               const std::vector<Entry>& entries,
               std::size_t from,
               std::size_t end,
               bool even,
               std::vector<Slot>& slots) {
  std::vector<Slot> run;
  for (std::size_t at = from; at < end;) {
    const bool two = at + 1 < end && fit_on_a_page(book, entries[at], entries[at + 1]);
    run.push_back({Form::page, at, two ? std::size_t{2} : std::size_t{1}});
    at += two ? 2 : 1;
  }
  if (even && run.size() % 2 == 1) {
    const auto two = std::find_if(run.rbegin(), run.rend(),
                                  [](const Slot& slot) { return slot.count == 2; });
    if (two != run.rend()) {
      two->count = 1;
      run.insert(two.base(), {Form::page, two->first + 1, 1});
    } else {
      std::size_t raised = 0;  // every second page of the run is a verso
      while (raised + 2 < run.size() && !has_picture(entries[run[raised].first])) {
        raised += 2;
      }
      run[raised].form = Form::spread;
    }
  }
  slots.insert(slots.end(), run.begin(), run.end());
}

}  // namespace

double height_of(const Entry& entry) {
  double height = 0;
  for (const auto* one : {entry.front, entry.back}) {
    height = std::max(height, one == nullptr ? 0 : size_of(*one, 1).height);
  }
  return height;
}

int block_lines(Layout& book, const Entry& entry) {
  const Grid& grid = book.grid();
  const double head = head_height(book, entry);
  const double pictures = height_of(entry) > 0 ? 2 + height_of(entry) : 0;
  const double above = grid.side_column ? pictures : head + 4 + pictures;
  const int lines = static_cast<int>(above / grid.step) + (pictures > 0 ? under_pictures : 2) +
                    prose_height(book, entry) + band_lines;
  return std::max(lines, static_cast<int>(std::ceil(head / grid.step)) + 1);
}

std::vector<Slot> slots_of(Layout& book, const std::vector<Entry>& entries) {
  const Grid& grid = book.grid();
  std::vector<Slot> slots;
  std::size_t singles = 0;  // where the run of pages before `at` begins
  const auto close = [&](std::size_t end, bool even) {
    if (singles < end) {
      add_pages(book, entries, singles, end, even, slots);
    }
  };
  for (std::size_t at = 0; at < entries.size();) {
    std::size_t end = at;
    while (end < entries.size() && is_small(grid, entries[end])) {
      ++end;
    }
    if (end - at >= least_group) {
      close(at, true);
      for (; at < end; at += std::min(most_in_group, end - at)) {
        slots.push_back({Form::six, at, std::min(most_in_group, end - at)});
      }
      singles = at;
    } else if (wants_spread(grid, entries[at])) {
      close(at, true);
      slots.push_back({Form::spread, at, 1});
      singles = ++at;
    } else {
      ++at;
    }
  }
  close(entries.size(), false);
  return slots;
}

}  // namespace backmark::press::book
