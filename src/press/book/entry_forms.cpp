#include "press/book/entry_forms.h"

#include <algorithm>

#include "press/book/entry_cells.h"
#include "press/book/entry_plates.h"
#include "press/book/entry_text.h"
#include "press/book/plate.h"

namespace backmark::press::book {

namespace {

using words::FactKind;

constexpr std::size_t least_in_six = 4;
constexpr std::size_t most_in_six = 6;
constexpr std::size_t long_prose = 900;

bool has_picture(const Entry& entry) {
  return entry.front != nullptr || entry.back != nullptr;
}

// Among six there is room for two or three lines, and none for prose.
bool is_small(const Grid& grid, const Entry& entry) {
  return !entry.place->pick->lead && entry.front != nullptr && entry.back != nullptr &&
         entry.fact(FactKind::prose).empty() &&
         size_of(*entry.front, 1).width <= grid.columns(3) - 5 &&
         height_of(entry) <= 54 * grid.type;
}

bool wants_spread(Layout& book, const Entry& entry) {
  return has_picture(entry) && (entry.place->pick->lead || book.raised().contains(&entry) ||
                                entry.fact(FactKind::prose).size() > long_prose);
}

// How few spreads the entries from one on need, and how much prose then stands alone.
struct Best {
  int spreads = 0;
  int prose = 0;
  Slot slot;

  bool better_than(const Best& other) const {
    return spreads != other.spreads ? spreads < other.spreads : prose > other.prose;
  }
};

// The spread of one piece that nothing else stands on; of one without a picture as a last
// resort.
int alone(Layout& book, const Entry& entry) {
  constexpr int unseen = -1000;
  return has_picture(entry) ? entry_size(book, entry).prose : unseen;
}

// Whether the entries of the slot may share a spread of its form.
bool may_share(Layout& book, const std::vector<Entry>& entries, const Slot& slot) {
  const auto first = entries.begin() + static_cast<std::ptrdiff_t>(slot.first);
  const auto end = first + static_cast<std::ptrdiff_t>(slot.count);
  if (slot.form == Form::six) {
    return std::all_of(first, end,
                       [&](const Entry& one) { return is_small(book.grid(), one); });
  }
  return std::none_of(first, end, [&](const Entry& one) { return wants_spread(book, one); }) &&
         cells_fit(book, &*first, slot.count);
}

// The ways to begin at `from`, the one to be taken of equals first.
std::vector<Slot> ways_from(Layout& book, const std::vector<Entry>& entries, std::size_t from) {
  std::vector<Slot> ways;
  const auto offer = [&](Form form, std::size_t most, std::size_t least) {
    for (std::size_t count = std::min(most, entries.size() - from); count >= least; --count) {
      const Slot slot{form, from, count};
      if (may_share(book, entries, slot)) {
        ways.push_back(slot);
      }
    }
  };
  offer(Form::cells, most_in_cells, 2);
  offer(Form::six, most_in_six, least_in_six);
  ways.push_back({Form::spread, from, 1});
  return ways;
}

}  // namespace

int last_line(const Grid& grid) {
  return grid.lines - (grid.side_column ? 3 : 2);
}

std::vector<Slot> slots_of(Layout& book, const std::vector<Entry>& entries) {
  std::vector<Best> best(entries.size() + 1);  // from each entry to the end
  for (std::size_t from = entries.size(); from-- > 0;) {
    best[from].spreads = -1;
    for (const Slot& slot : ways_from(book, entries, from)) {
      const Best& rest = best[from + slot.count];
      const int own = slot.form == Form::spread ? alone(book, entries[from]) : 0;
      const Best here{rest.spreads + 1, rest.prose + own, slot};
      if (best[from].spreads < 0 || here.better_than(best[from])) {
        best[from] = here;
      }
    }
  }
  std::vector<Slot> slots;
  for (std::size_t at = 0; at < entries.size(); at += best[at].slot.count) {
    slots.push_back(best[at].slot);
  }
  return slots;
}

namespace {

struct Candidate {
  const EntryPart* part = nullptr;
  const Entry* entry = nullptr;
  int prose = 0;
};

// Pieces that have pictures and share a spread, most prose first.
std::vector<Candidate> to_raise(Layout& book) {
  std::vector<Candidate> all;
  for (const EntryPart& part : book.plan().parts) {
    for (const Slot& slot : slots_of(book, part.entries)) {
      for (std::size_t at = slot.first; at < slot.first + slot.count; ++at) {
        const Entry& entry = part.entries[at];
        if (slot.form == Form::cells && has_picture(entry)) {
          all.push_back({&part, &entry, entry_size(book, entry).prose});
        }
      }
    }
  }
  std::stable_sort(all.begin(), all.end(),
                   [](const auto& a, const auto& b) { return a.prose > b.prose; });
  return all;
}

// Pages that the part has more with one more spread, if that is some and at most so many; else
// none, and all is as it was.
int raise(Layout& book, const Candidate& one, int most) {
  const auto pages = [&] {
    return 2 * static_cast<int>(slots_of(book, one.part->entries).size());
  };
  const int before = pages();
  book.raised().insert(one.entry);
  const int gain = pages() - before;
  if (gain > 0 && gain <= most) {
    return gain;
  }
  book.raised().erase(one.entry);
  return 0;
}

}  // namespace

void raise_pieces(Layout& book, int blank) {
  constexpr int most_tries = 64;  // so that long books cost no more
  int tries = 0;
  for (const Candidate& one : to_raise(book)) {
    if (blank < 2 || tries++ == most_tries) {
      break;
    }
    blank -= raise(book, one, blank);
  }
}

}  // namespace backmark::press::book
