#include <doctest/doctest.h>
#include <map>

#include "base/random.h"
#include "base/text.h"
#include "store/row_text.h"
#include "store/show_on_disk.h"
#include "store/store.h"

using namespace backmark;
using namespace backmark::model;
using store::Access;
using store::Store;

namespace {

// The show as plain maps, changed by the naive rules beside every change of the store.
struct Mind {
  std::map<std::int32_t, std::string> pieces;
  std::map<std::int32_t, std::string> observations;
  std::map<std::int32_t, std::string> events;
};

template <class T>
const T& any(const std::vector<T>& rows, Random& random) {
  return rows[random.below(rows.size())];
}

void add_some(const Show&, Change& change, Random& random, Mind& mind) {
  static const char* const words[] = {"silver", "jet", "brass", "", "caf\xC3\xA9", "x\ny"};
  for (std::size_t i = 1 + random.below(4); i > 0; --i) {
    Piece piece{.title = words[random.below(6)], .form = change.word(words[random.below(6)])};
    piece.number = fmt::format("ES {}", change.next_id());
    piece.id = change.add(piece);
    mind.pieces[piece.id.value] = to_text(piece);
    Observation seen{
        .piece = piece.id,
        .character = change.add(Character{.key = fmt::format("c{}", piece.id.value)}),
        .value = change.word(words[random.below(6)]),
        .number = random.normal(),
        .certainty = static_cast<float>(random.uniform()),
        .seen = static_cast<Seen>(random.below(3))};
    seen.id = change.add(seen);
    mind.observations[seen.id.value] = to_text(seen);
    Event event{.piece = piece.id, .from = Year{static_cast<int>(random.below(3000)) - 700}};
    event.id = change.add(event);
    mind.events[event.id.value] = to_text(event);
  }
}

void rename_one(const Show& show, Change& change, Random& random, Mind& mind) {
  Piece renamed = any(show.all<Piece>(), random);
  renamed.number += "a";
  renamed.lot = change.word(fmt::format("lot {}", random.below(9)));
  if (mind.pieces.contains(renamed.id.value)) {
    change.replace(renamed);
    mind.pieces[renamed.id.value] = to_text(renamed);
  }
}

void supersede_one(const Show& show, Change& change, Random& random, Mind& mind) {
  Observation again = any(show.all<Observation>(), random);
  if (mind.observations.erase(again.id.value) > 0) {
    again.supersedes = again.id;
    again.number = random.uniform();
    again.id = change.add(again);
    mind.observations[again.id.value] = to_text(again);
  }
}

void withdraw_some(const Show& show, Change& change, Random& random, Mind& mind) {
  if (const auto& row = any(show.all<Observation>(), random);
      mind.observations.erase(row.id.value)) {
    change.withdraw(row.id, "misread");
  }
  if (const auto& row = any(show.all<Event>(), random); mind.events.erase(row.id.value)) {
    change.withdraw(row.id, "another piece");
  }
}

template <class T>
std::map<std::int32_t, std::string> on_disk(const Show& show) {
  std::map<std::int32_t, std::string> rows;
  for (const T& row : show.all<T>()) {
    rows[row.id.value] = to_text(row);
  }
  return rows;
}

}  // namespace

TEST_CASE("after any row of changes the show on disk is the show in mind") {
  for (const std::uint64_t seed : {1U, 2U, 3U}) {
    const ShowFolder folder;
    REQUIRE(store::create(folder.path()));
    auto store = Store::open(folder.path(), Access::change);
    REQUIRE(store);
    Random random(seed);
    Mind mind;
    for (int round = 0; round < 25; ++round) {
      const auto show = store->load();
      REQUIRE(show);
      Change change(*show, "note", "random");
      if (round > 0) {
        rename_one(*show, change, random, mind);
        supersede_one(*show, change, random, mind);
        withdraw_some(*show, change, random, mind);
      }
      add_some(*show, change, random, mind);
      REQUIRE(store->apply(change, "tester", round));
    }
    auto again = Store::open(folder.path(), Access::look);
    REQUIRE(again);
    const auto show = again->load();
    REQUIRE(show);
    CHECK(on_disk<Piece>(*show) == mind.pieces);
    CHECK(on_disk<Observation>(*show) == mind.observations);
    CHECK(on_disk<Event>(*show) == mind.events);
    CHECK(show->position == 25);
  }
}
