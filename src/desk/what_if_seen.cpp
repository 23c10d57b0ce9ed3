#include "base/json.h"
#include "base/text.h"
#include "desk/belief_json.h"
#include "desk/each.h"
#include "desk/fitted.h"
#include "desk/seen_line.h"
#include "words/phrase.h"

namespace backmark::desk {

namespace {

using model::Show;

// What is recorded of a set stays; what is said joins it.
void add_recorded(const Show& show, const model::Piece& piece, evidence::SeenInstead& instead) {
  for (const model::Observation& seen : show.observations_of(piece.id)) {
    if (seen.character == instead.character && seen.seen == model::Seen::value) {
      instead.values.emplace_back(show.text(seen.value));
    }
  }
}

// A character that came after `weighed` was weighed says nothing yet.
evidence::WhatIf thought_of(const Show& show,
                            const Show& weighed,
                            const model::Piece& piece,
                            const std::vector<Saying>& sayings) {
  evidence::WhatIf change;
  for (const Saying& one : sayings) {
    if (one.character == nullptr || weighed.find(one.character->id) == nullptr) {
      continue;
    }
    evidence::SeenInstead instead{one.character->id, one.seen, one.values, one.number};
    if (one.character->shape == model::Shape::set && one.seen == model::Seen::value) {
      add_recorded(show, piece, instead);
    }
    change.seen.push_back(std::move(instead));
  }
  return change;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto piece = find_piece(open->show, call.text("number"));
  if (!piece) {
    return piece.problem();
  }
  const auto sayings = read_line(open->show, call.text("line"));
  const auto in_fit = fitted_piece(*open, **piece, around);
  if (!in_fit) {
    return in_fit.problem();
  }
  const model::PieceBelief belief = in_fit->fitted->reckoning.judge_if(
      in_fit->row, thought_of(open->show, *in_fit->fitted->show, **piece, sayings));
  const model::Phrases phrases = words::phrase_piece(open->show, belief);
  Answer answer;
  answer.json = {{"read", sayings_json(open->show, sayings)},
                 {"made", phrases.made},
                 {"by", phrases.maker},
                 {"year", years_drawn(belief.year)},
                 {"makers", makers_drawn(open->show, belief.maker)}};
  for (const Saying& one : sayings) {
    if (one.character == nullptr) {
      answer.text += fmt::format("\"{}\": {}\n", one.text, one.trouble);
    }
  }
  answer.text += fmt::format("It would be {}, {}.\n", phrases.made, phrases.maker);
  return answer;
}

}  // namespace

Operation what_if_seen() {
  return {.name = "what-if",
          .help = "what would be said of a piece if this were seen on it; nothing is kept",
          .parameters =
              {show_folder(),
               {.name = "number", .help = "the piece", .positional = true, .required = true},
               {.name = "line",
                .help = "\"cord: braided leather; height: 49.5; tips: none\"",
                .positional = true,
                .required = true}},
          .run = run};
}

}  // namespace backmark::desk
