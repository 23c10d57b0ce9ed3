#include <set>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"

namespace backmark::desk {

namespace {

using model::Show;

template <class T>
std::int32_t subject_of(const T& row) {
  if constexpr (requires { row.subject; }) {
    return row.subject;
  } else {
    return 0;
  }
}

// What is of a piece goes with it, and what is about what goes.
template <class T>
bool goes_with(const T& row,
               model::Id<model::Piece> piece,
               const std::set<std::int32_t>& gone) {
  if constexpr (requires { row.piece; }) {
    if (row.piece == piece) {
      return true;
    }
  }
  return row.id.value == piece.value || gone.contains(subject_of(row));
}

std::set<std::int32_t> all_of_piece(const Show& show, model::Id<model::Piece> piece) {
  std::set<std::int32_t> gone = {piece.value};
  const auto take = [&](const auto& rows) {
    for (const auto& row : rows) {
      if (goes_with(row, piece, gone)) {
        gone.insert(row.id.value);
      }
    }
  };
  // Twice: a permission may be about a photograph of the piece.
  for (int round = 0; round < 2; ++round) {
    show.each_kind(take);
  }
  return gone;
}

struct Wish {
  std::set<std::int32_t> records;
  std::string what;
};

Result<Wish> one_record(const Call& call, const Show& show) {
  const auto number = call.whole("record", 0);
  if (!number) {
    return number.problem();
  }
  bool there = false;
  const auto look = [&](const auto& rows) {
    for (const auto& row : rows) {
      there = there || row.id.value == *number;
    }
  };
  show.each_kind(look);
  if (!there) {
    return Problem{Fault::not_found, fmt::format("there is no record {} in the show", *number),
                   "--record", "\"sheet\" and \"sources\" with --json have their numbers"};
  }
  const auto id = static_cast<std::int32_t>(*number);
  return Wish{{id}, fmt::format("record {}", id)};
}

Result<Wish> wish_of(const Call& call, const Show& show) {
  if (call.has("record") == call.has("piece")) {
    return Problem{Fault::bad_input, "it is not said what is withdrawn", "",
                   "give --record NUMBER or --piece NUMBER"};
  }
  if (call.has("record")) {
    return one_record(call, show);
  }
  const auto piece = find_piece(show, call.text("piece"));
  if (!piece) {
    return piece.problem();
  }
  return Wish{all_of_piece(show, (*piece)->id), "piece " + (*piece)->number};
}

void withdraw(model::Change& change,
              const Show& show,
              const Wish& wish,
              const std::string& reason) {
  const auto take = [&](const auto& rows) {
    for (const auto& row : rows) {
      if (wish.records.contains(row.id.value)) {
        change.withdraw(row.id, reason);
      }
    }
  };
  show.each_kind(take);
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  const std::string reason(trim(call.text("reason")));
  if (reason.empty()) {
    return Problem{Fault::bad_input, "it is not said why", "--reason",
                   "the book of changes keeps the reason"};
  }
  const auto wish = wish_of(call, open->show);
  if (!wish) {
    return wish.problem();
  }
  model::Change change(open->show, "withdraw", fmt::format("{} ({})", wish->what, reason));
  withdraw(change, open->show, *wish, reason);
  Answer answer;
  answer.json = {{"withdrawn", wish->what},
                 {"records", wish->records.size()},
                 {"change", open->show.position + 1}};
  answer.text = fmt::format("Withdrawn: {}; \"undo\" brings it back.\n", wish->what);
  return after_change(*open, change, around, answer);
}

}  // namespace

Operation withdraw_record() {
  return {.name = "withdraw",
          .help = "take a record out of the show, with the reason; the book keeps it",
          .writes = true,
          .parameters = {show_folder(),
                         {.name = "record",
                          .takes = Takes::whole,
                          .help = "the number of an observation, claim, event, maker ..."},
                         {.name = "piece", .help = "a piece, with all that is of it"},
                         {.name = "reason", .help = "why, for the book", .required = true}},
          .run = run};
}

}  // namespace backmark::desk
