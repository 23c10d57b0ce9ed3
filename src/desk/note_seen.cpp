#include "base/json.h"
#include "base/text.h"
#include "desk/calendar.h"
#include "desk/each.h"
#include "desk/seen_line.h"

namespace backmark::desk {

namespace {

using model::Observation;
using model::Show;

// The part of the piece that a character belongs to, if it has one of that kind alone.
model::Id<model::Part> part_of(const Show& show,
                               const model::Piece& piece,
                               const model::Character& character) {
  model::Id<model::Part> found;
  for (const model::Part& part : show.parts_of(piece.id)) {
    if (character.part && part.kind == character.part) {
      if (found) {
        return {};
      }
      found = part.id;
    }
  }
  return found;
}

// What stands of the character now: the one observation that a new one takes the place of.
const Observation* standing(const Show& show,
                            const model::Piece& piece,
                            const model::Character& character) {
  const Observation* one = nullptr;
  for (const Observation& seen : show.observations_of(piece.id)) {
    if (seen.character == character.id) {
      one = &seen;
    }
  }
  return one;
}

bool recorded(const Show& show,
              const model::Piece& piece,
              const Saying& saying,
              const std::string& value) {
  for (const Observation& seen : show.observations_of(piece.id)) {
    if (seen.character == saying.character->id && seen.seen == saying.seen &&
        (saying.character->shape == model::Shape::number ? seen.number == saying.number
                                                         : show.text(seen.value) == value)) {
      return true;
    }
  }
  return false;
}

struct Kept {
  int observations = 0;
  int same = 0;
  int notes = 0;
};

void keep(model::Change& change,
          const Show& show,
          const model::Piece& piece,
          const Saying& saying,
          const Observation& common,
          Kept& kept) {
  auto values = saying.values;
  if (values.empty()) {
    values.emplace_back();
  }
  for (const std::string& value : values) {
    if (recorded(show, piece, saying, value)) {
      ++kept.same;
      continue;
    }
    Observation seen = common;
    seen.part = part_of(show, piece, *saying.character);
    seen.character = saying.character->id;
    seen.seen = saying.seen;
    seen.value = value.empty() ? model::Word{} : change.word(value);
    seen.number = saying.number;
    if (saying.character->shape != model::Shape::set) {
      if (const Observation* old = standing(show, piece, *saying.character)) {
        seen.supersedes = old->id;
      }
    }
    change.add(seen);
    ++kept.observations;
  }
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  const auto piece = find_piece(open->show, call.text("number"));
  if (!piece) {
    return piece.problem();
  }
  const auto sayings = read_line(open->show, call.text("line"));
  if (sayings.empty()) {
    return Problem{Fault::bad_input, "nothing is noted", "line", "write what you see"};
  }
  const std::string reason = call.text("reason");
  model::Change change(open->show, "note",
                       fmt::format("{}: {}{}", (*piece)->number, call.text("line"),
                                   reason.empty() ? "" : " (" + reason + ")"));
  Observation common;
  common.piece = (*piece)->id;
  common.how = model::How::eye;
  common.by = change.word(around.who);
  common.day = day_of(around.now);
  Kept kept;
  for (const Saying& one : sayings) {
    if (one.character != nullptr) {
      keep(change, open->show, **piece, one, common, kept);
    } else {
      model::Note note;
      note.piece = (*piece)->id;
      note.heading = change.word("noted");
      note.text = one.text;
      change.add(std::move(note));
      ++kept.notes;
    }
  }
  Answer answer;
  answer.json = {{"number", (*piece)->number},
                 {"observations", kept.observations},
                 {"same", kept.same},
                 {"notes", kept.notes},
                 {"read", sayings_json(open->show, sayings)}};
  answer.text = fmt::format("{}: {} kept as observations, {} as before, {} as plain text.\n",
                            (*piece)->number, kept.observations, kept.same, kept.notes);
  for (const Saying& one : sayings) {
    for (const std::string& value : one.fresh) {
      answer.text += fmt::format("\"{}\" is now a term of {}.\n", value, one.character->label);
    }
  }
  return change.empty() ? Result<Answer>(answer) : after_change(*open, change, around, answer);
}

}  // namespace

Operation note_seen() {
  return {.name = "note",
          .help = "keep what is seen on a piece, as a line of shorthand",
          .writes = true,
          .recording = true,
          .parameters =
              {show_folder(),
               {.name = "number", .help = "the piece", .positional = true, .required = true},
               {.name = "line",
                .help = "\"cord: braided leather; height: 49.5; tips: none\"",
                .positional = true,
                .required = true},
               {.name = "reason", .help = "why it replaces what was seen before"}},
          .run = run};
}

}  // namespace backmark::desk
