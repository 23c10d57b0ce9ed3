#include <algorithm>

#include "base/text.h"
#include "exchange/intake.h"

namespace backmark::exchange {

using namespace model;

namespace {

void hold_observations(const Show& show, const Piece& piece, std::vector<Held>& held) {
  for (const Observation& seen : show.observations_of(piece.id)) {
    const Character* character = show.find(seen.character);
    if (character == nullptr) {
      continue;
    }
    Item item{.kind = ItemKind::observation,
              .key = character->key,
              .text = std::string(show.text(seen.value)),
              .number = seen.number,
              .shape = character->shape,
              .seen = seen.seen,
              .unit = character->unit,
              .how = seen.how,
              .by = std::string(show.text(seen.by)),
              .certainty = seen.certainty};
    for (const Part& part : show.parts_of(piece.id)) {
      if (part.id == seen.part) {
        item.part = std::string(show.text(part.kind));
      }
    }
    held.push_back(
        {std::move(item), seen.id.value, seen.source, static_cast<bool>(seen.supersedes)});
  }
}

void hold_claims(const Show& show, const Piece& piece, std::vector<Held>& held) {
  for (const Claim& claim : show.claims_on(piece.id)) {
    if (claim.negative || (claim.says != Says::made && claim.says != Says::made_by &&
                           claim.says != Says::made_at)) {
      continue;
    }
    const Maker* maker = show.find(claim.maker);
    held.push_back({Item{.kind = ItemKind::claim,
                         .text = claim.text,
                         .says = claim.says,
                         .from = claim.from,
                         .to = claim.to,
                         .approximate = claim.approximate,
                         .maker = maker != nullptr ? maker->name : "",
                         .qualifier = std::string(show.text(claim.qualifier)),
                         .role = std::string(show.text(claim.role)),
                         .word = std::string(show.text(claim.word))},
                    claim.id.value, claim.source, static_cast<bool>(claim.supersedes)});
  }
}

void hold_others(const Show& show, const Piece& piece, std::vector<Held>& held) {
  for (const Event& event : show.events_of(piece.id)) {
    if (event.kind == EventKind::acquired) {
      held.push_back(
          {Item{
               .kind = ItemKind::event, .text = event.date, .from = event.from, .to = event.to},
           event.id.value, event.source, static_cast<bool>(event.supersedes)});
    }
  }
  for (const Mark& mark : show.marks_of(piece.id)) {
    held.push_back({Item{.kind = ItemKind::mark, .text = mark.text, .seen = mark.seen},
                    mark.id.value,
                    {},
                    false});
  }
  for (const Note& note : show.notes_of(piece.id)) {
    held.push_back({Item{.kind = ItemKind::note,
                         .key = std::string(show.text(note.heading)),
                         .text = note.text},
                    note.id.value,
                    {},
                    false});
  }
}

// An item that belongs to one side only, or the record that holds it.
struct Side {
  Item item;
  std::string statement;
  std::string slot;
  const Held* held = nullptr;
  bool done = false;
};

std::vector<Side> to_sides(std::vector<Item> items) {
  std::vector<Side> sides;
  for (Item& item : items) {
    Side side{.statement = item.statement(), .slot = item.slot()};
    side.item = std::move(item);
    sides.push_back(std::move(side));
  }
  return sides;
}

class Merge {
 public:
  Merge(Intake& intake, Id<Piece> piece)
      : intake_(intake), change_(intake.out.change), piece_(piece) {}

  void add(const Item& item, std::int32_t supersedes) {
    switch (item.kind) {
      case ItemKind::observation:
        add_observation(item, supersedes);
        return;
      case ItemKind::claim:
        add_claim(item, supersedes);
        return;
      case ItemKind::event:
        change_.add(Event{.piece = piece_,
                          .kind = EventKind::acquired,
                          .date = item.text,
                          .from = item.from,
                          .to = item.to,
                          .source = intake_.source(),
                          .supersedes = {supersedes}});
        return;
      case ItemKind::mark:
        put(Mark{.id = {supersedes}, .piece = piece_, .seen = item.seen, .text = item.text});
        return;
      case ItemKind::note:
        put(Note{.id = {supersedes},
                 .piece = piece_,
                 .heading = change_.word(item.key),
                 .text = item.text});
        return;
    }
  }

  void withdraw(const Held& held) {
    const std::string reason = "no longer in " + intake_.map.title;
    switch (held.item.kind) {
      case ItemKind::observation:
        change_.withdraw(Id<Observation>{held.id}, reason);
        return;
      case ItemKind::claim:
        change_.withdraw(Id<Claim>{held.id}, reason);
        return;
      case ItemKind::event:
        change_.withdraw(Id<Event>{held.id}, reason);
        return;
      case ItemKind::mark:
        change_.withdraw(Id<Mark>{held.id}, reason);
        return;
      case ItemKind::note:
        change_.withdraw(Id<Note>{held.id}, reason);
        return;
    }
  }

 private:
  // Marks and notes are no testimony: they are written anew in their place.
  template <class T>
  void put(T record) {
    if (record.id) {
      change_.replace(std::move(record));
    } else {
      change_.add(std::move(record));
    }
  }

  void add_observation(const Item& item, std::int32_t supersedes) {
    change_.add(Observation{.piece = piece_,
                            .part = intake_.part(piece_, item.part),
                            .character = intake_.character(item),
                            .value = change_.word(item.text),
                            .number = item.number,
                            .certainty = item.certainty,
                            .seen = item.seen,
                            .how = item.how,
                            .by = change_.word(item.by),
                            .source = intake_.source(),
                            .supersedes = {supersedes}});
  }

  void add_claim(const Item& item, std::int32_t supersedes) {
    change_.add(
        Claim{.source = intake_.source(),
              .about = About::piece,
              .subject = piece_.value,
              .says = item.says,
              .text = item.text,
              .from = item.from,
              .to = item.to,
              .approximate = item.approximate,
              .maker = item.maker.empty() ? Id<Maker>{} : intake_.maker(item.maker, item.role),
              .qualifier = change_.word(item.qualifier),
              .role = change_.word(item.role),
              .word = change_.word(item.word),
              .supersedes = {supersedes}});
  }

  Intake& intake_;
  Change& change_;
  Id<Piece> piece_;
};

// Marks as done what stands on both sides: the file did not change it.
void cancel_equal(std::vector<Side>& before, std::vector<Side>& now) {
  for (Side& fresh : now) {
    for (Side& old : before) {
      if (!old.done && old.statement == fresh.statement) {
        old.done = fresh.done = true;
        break;
      }
    }
  }
}

}  // namespace

std::vector<Held> held_items(const Show& show, const Piece& piece) {
  std::vector<Held> held;
  hold_observations(show, piece, held);
  hold_claims(show, piece, held);
  hold_others(show, piece, held);
  return held;
}

bool merge_items(Intake& intake,
                 Id<Piece> piece,
                 const std::vector<Held>& held,
                 std::vector<Item> before,
                 std::vector<Item> now,
                 long row) {
  std::vector<Side> old_sides = to_sides(std::move(before));
  std::vector<Side> new_sides = to_sides(std::move(now));
  cancel_equal(old_sides, new_sides);
  std::unordered_map<std::string, const Held*> by_statement;
  for (const Held& one : held) {
    by_statement.try_emplace(one.item.statement(), &one);
  }
  for (Side& old : old_sides) {
    const auto at = by_statement.find(old.statement);
    old.held = at == by_statement.end() ? nullptr : at->second;
  }

  Merge merge(intake, piece);
  bool changed = false;
  for (Side& fresh : new_sides) {
    if (fresh.done || by_statement.contains(fresh.statement)) {
      continue;
    }
    const auto same_slot =
        std::find_if(old_sides.begin(), old_sides.end(),
                     [&](const Side& old) { return !old.done && old.slot == fresh.slot; });
    std::int32_t supersedes = 0;
    if (same_slot != old_sides.end()) {
      same_slot->done = true;
      supersedes = same_slot->held != nullptr ? same_slot->held->id : 0;
      if (supersedes == 0) {
        intake.out.notes.push_back(
            {.row = row,
             .column = fresh.item.heading,
             .what = "the cell changed, and the show has its own word since; both stand",
             .fix = "withdraw the one that is wrong"});
      }
    }
    merge.add(fresh.item, supersedes);
    changed = true;
  }
  for (const Side& old : old_sides) {
    if (!old.done && old.held != nullptr) {
      merge.withdraw(*old.held);
      changed = true;
    }
  }
  return changed;
}

}  // namespace backmark::exchange
