#include "press/book/entry_forms.h"

#include <algorithm>
#include <cmath>
#include <map>

#include "press/book/entry_plates.h"
#include "press/book/entry_text.h"
#include "press/book/plate.h"

namespace backmark::press::book {

namespace {

using words::FactKind;

constexpr std::size_t least_group = 4;
constexpr std::size_t most_in_group = 6;

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

draw::Size page_size(const Grid& grid, const Entry& entry) {
  return pair_size(entry, plates_width(grid));
}

bool wants_spread(Layout& book, const Entry& entry) {
  const Grid& grid = book.grid();
  const int until = last_line(grid);
  return has_picture(entry) && (entry.place->pick->lead || book.raised().contains(&entry) ||
                                page_size(grid, entry).width > plates_width(grid) ||
                                entry.fact(FactKind::prose).size() > 900 ||
                                !fit_block(book, entry, 0, until, plate_field(grid)).true_size);
}

bool fit_on_a_page(Layout& book, const Entry& one, const Entry& other) {
  const Grid& grid = book.grid();
  for (const Entry* entry : {&one, &other}) {
    if (page_size(grid, *entry).width > plates_width(grid)) {
      return false;  // not at true size
    }
  }
  return block_lines(book, one, 0) + lines_between + block_lines(book, other, 0) <=
         last_line(grid);
}

// What stands above the plate, in mm.
double above_plate(const Grid& grid, const EntrySize& size) {
  return grid.side_column ? 0 : size.head;
}

// The first baseline under the plate, or under the head of a piece that has none to show.
int least_text(Layout& book, const Entry& entry, int from) {
  const Grid& grid = book.grid();
  const double plate = page_size(grid, entry).height;
  const double above = above_plate(grid, entry_size(book, entry)) + (plate > 0 ? plate + 1 : 0);
  return from + 2 + static_cast<int>(std::ceil(above / grid.step));
}

// Lines of prose, reasons and year band.
int words_lines(Layout& book, const Entry& entry, int why_lines) {
  const model::PieceBelief* belief = book.plan().job.beliefs.of(entry.piece().id);
  const bool dated = belief != nullptr && belief->dated && !belief->year.empty();
  return entry_size(book, entry).prose + (dated ? band_after(book, 0, why_lines) + 1 : 0);
}

// Of a run of pages that each hold one piece, every second is a verso; of those, the one with
// the most prose. The run's end if none has a picture.
std::size_t best_to_raise(Layout& book,
                          const std::vector<Entry>& entries,
                          const std::vector<Slot>& run) {
  std::size_t best = run.size();
  for (std::size_t at = 0; at < run.size(); at += 2) {
    const Entry& entry = entries[run[at].first];
    if (has_picture(entry) &&
        (best == run.size() ||
         entry_size(book, entry).prose > entry_size(book, entries[run[best].first]).prose)) {
      best = at;
    }
  }
  return best;
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
      const std::size_t raised = best_to_raise(book, entries, run);
      run[raised < run.size() ? raised : 0].form = Form::spread;
    }
  }
  slots.insert(slots.end(), run.begin(), run.end());
}

}  // namespace

int plate_field(const Grid& grid) {
  return grid.side_column ? 26 : 0;
}

int last_line(const Grid& grid) {
  return grid.lines - (grid.side_column ? 3 : 2);
}

BlockFit fit_block(Layout& book, const Entry& entry, int from, int until, int plate_until) {
  const int least = least_text(book, entry, from);
  const bool plate = height_of(entry) > 0;
  const int wanted = plate ? std::max(least, plate_until + 2) : least;
  for (const int why : {entry_size(book, entry).why, 0}) {
    const int latest = until - words_lines(book, entry, why) + 1;
    if (latest >= least) {
      return {std::min(wanted, latest), why, true};
    }
  }
  const int latest = until - words_lines(book, entry, 0) + 1;
  return {std::max(from + 3, std::min(least, latest)), 0, !plate};
}

int block_lines(Layout& book, const Entry& entry, int why_lines) {
  const Grid& grid = book.grid();
  const int lines = least_text(book, entry, 0) - 1 + words_lines(book, entry, why_lines);
  const double head = std::ceil(entry_size(book, entry).head / grid.step) + 1;
  return std::max(lines, static_cast<int>(head));
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
    } else if (wants_spread(book, entries[at])) {
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

namespace {

// Pages of a part with its opener.
int pages_of(Layout& book, const EntryPart& part) {
  int pages = 1;
  for (const Slot& slot : slots_of(book, part.entries)) {
    pages += slot.form == Form::page ? 1 : 2;
  }
  return pages;
}

int even(int pages) {
  return pages + pages % 2;
}

constexpr int most_tries = 64;  // of pieces of a part, so that long parts cost no more

struct Candidate {
  const EntryPart* part = nullptr;
  const Entry* entry = nullptr;
  int prose = 0;
};

// Pieces that have pictures and no spread, most prose first.
std::vector<Candidate> to_raise(Layout& book) {
  std::vector<Candidate> all;
  for (const EntryPart& part : book.plan().parts) {
    for (const Slot& slot : slots_of(book, part.entries)) {
      const Entry& entry = part.entries[slot.first];
      if (slot.form == Form::page && has_picture(entry)) {
        all.push_back({&part, &entry, entry_size(book, entry).prose});
      }
    }
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const auto& a, const auto& b) { return a.prose > b.prose; });
  return all;
}

// Whether the part, with one more spread, has `gain` pages more; else all is as it was.
bool raise(Layout& book, const Candidate& one, int least, int most) {
  const int before = pages_of(book, *one.part);
  book.raised().insert(one.entry);
  const int after = pages_of(book, *one.part);
  const int gain = even(after) - even(before);
  const bool fills = after > before && gain >= least && gain <= most;
  if (!fills) {
    book.raised().erase(one.entry);
  }
  return fills;
}

}  // namespace

void raise_pieces(Layout& book, int blank) {
  const auto candidates = to_raise(book);
  std::map<const EntryPart*, int>
      odd;  // parts that end on a recto, and how often they were tried
  for (const EntryPart& part : book.plan().parts) {
    if (pages_of(book, part) % 2 == 1) {  // the next part starts on a recto
      odd.emplace(&part, 0);
    }
  }
  for (const Candidate& one : candidates) {
    const auto at = odd.find(one.part);
    if (at != odd.end() && (raise(book, one, 0, 0) || ++at->second == most_tries)) {
      odd.erase(at);
    }
  }
  int tries = 0;
  for (const Candidate& one : candidates) {
    if (blank < 2 || tries == most_tries) {
      break;
    }
    if (!book.raised().contains(one.entry)) {
      const int before = even(pages_of(book, *one.part));
      ++tries;
      blank -= raise(book, one, 2, blank) ? even(pages_of(book, *one.part)) - before : 0;
    }
  }
}

}  // namespace backmark::press::book
