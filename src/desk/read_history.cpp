#include "base/json.h"
#include "base/text.h"
#include "desk/calendar.h"
#include "desk/each.h"

namespace backmark::desk {

namespace {

Result<Answer> run(const Call& call, const Surroundings&) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  model::Id<model::Piece> piece;
  if (call.has("number")) {
    const auto found = find_piece(open->show, call.text("number"));
    if (!found) {
      return found.problem();
    }
    piece = (*found)->id;
  }
  const auto count = call.whole("limit", 20);
  if (!count) {
    return count.problem();
  }
  const auto book = open->store.book(static_cast<std::size_t>(*count), piece);
  if (!book) {
    return book.problem();
  }
  Answer answer;
  answer.json = Json::array();
  for (const store::Entry& entry : *book) {
    answer.json.push_back({{"position", entry.position},
                           {"at", to_minute(entry.at)},
                           {"who", entry.who},
                           {"operation", entry.operation},
                           {"summary", entry.summary},
                           {"undoes", entry.undoes != 0 ? Json(entry.undoes) : Json()},
                           {"undone_by", entry.undone_by != 0 ? Json(entry.undone_by) : Json()},
                           {"detail", Json::parse(entry.detail)}});
    answer.text += fmt::format(
        "{:>5}  {}  {:<12} {:<10} {}{}\n", entry.position, to_minute(entry.at), entry.who,
        entry.operation, entry.summary,
        entry.undone_by != 0 ? fmt::format(" (taken back by {})", entry.undone_by) : "");
  }
  return answer;
}

}  // namespace

Operation read_history() {
  return {.name = "history",
          .help = "the book of changes: who changed what, when and why",
          .from_show_alone = true,
          .parameters =
              {show_folder(),
               {.name = "number", .help = "only what touches this piece", .positional = true},
               {.name = "limit", .takes = Takes::whole, .help = "how many entries (20)"}},
          .run = run};
}

}  // namespace backmark::desk
