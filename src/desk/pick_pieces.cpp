#include <algorithm>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"

namespace backmark::desk {

namespace {

using model::Pick;
using model::Piece;
using model::Section;
using model::Show;

struct Wish {
  model::Id<Section> section;
  bool only_show = false;
  bool only_book = false;
  bool lead = false;
  bool drop = false;
  std::int32_t rank = 0;  // 0: behind what is there
};

const Pick* pick_of(const Show& show, model::Id<Piece> piece) {
  const auto& picks = show.all<Pick>();
  const auto at = std::find_if(picks.begin(), picks.end(),
                               [piece](const Pick& pick) { return pick.piece == piece; });
  return at == picks.end() ? nullptr : &*at;
}

Result<Wish> wish_of(const Call& call, const Show& show) {
  Wish wish{.only_show = call.flag("show-only"),
            .only_book = call.flag("book-only"),
            .lead = call.flag("lead"),
            .drop = call.flag("drop")};
  if (wish.only_show && wish.only_book) {
    return Problem{Fault::bad_input, "a piece cannot be in the show only and in the book only",
                   "", "give neither for both, or one of them"};
  }
  const auto rank = call.whole("rank", 0);
  if (!rank) {
    return rank.problem();
  }
  wish.rank = static_cast<std::int32_t>(*rank);
  if (!call.has("section")) {
    return wish;
  }
  std::vector<std::string> keys;
  for (const Section& section : show.all<Section>()) {
    keys.push_back(section.key);
    if (section.key == call.text("section")) {
      wish.section = section.id;
    }
  }
  if (!wish.section) {
    return Problem{Fault::not_found,
                   fmt::format("there is no section \"{}\"", call.text("section")), "--section",
                   keys.empty() ? "begin one with \"backmark section SHOW KEY\""
                                : "sections are: " + join(keys, ", ")};
  }
  return wish;
}

std::int32_t last_rank(const Show& show, model::Id<Section> section) {
  std::int32_t last = 0;
  for (const Pick& pick : show.all<Pick>()) {
    if (pick.section == section) {
      last = std::max(last, pick.rank);
    }
  }
  return last;
}

void pick_one(
    model::Change& change, const Show& show, const Piece& piece, const Wish& wish, int step) {
  const Pick* known = pick_of(show, piece.id);
  if (wish.drop) {
    if (known != nullptr) {
      change.withdraw(known->id, "dropped by hand");
    }
    return;
  }
  Pick pick = known != nullptr ? *known : Pick{.piece = piece.id};
  if (wish.section) {
    pick.section = wish.section;
  }
  pick.in_show = !wish.only_book;
  pick.in_book = !wish.only_show;
  pick.lead = pick.lead || wish.lead;
  if (wish.rank > 0) {
    pick.rank = wish.rank + step;
  } else if (known == nullptr) {
    pick.rank = last_rank(show, pick.section) + 1 + step;
  }
  if (known != nullptr) {
    change.replace(pick);
  } else {
    change.add(pick);
  }
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  const auto wish = wish_of(call, open->show);
  if (!wish) {
    return wish.problem();
  }
  const auto numbers = call.texts("number");
  model::Change change(
      open->show, "pick",
      fmt::format("{} {}", wish->drop ? "dropped" : "picked", join(numbers, ", ")));
  int step = 0;
  for (const std::string& number : numbers) {
    const auto piece = find_piece(open->show, number);
    if (!piece) {
      return piece.problem();
    }
    pick_one(change, open->show, **piece, *wish, step++);
  }
  if (auto done = open->store.apply(change, around.who, around.now); !done) {
    return done.problem();
  }
  Answer answer;
  answer.json = {{"numbers", numbers}, {"dropped", wish->drop}};
  answer.text = fmt::format("{} {}.\n", wish->drop ? "Dropped" : "Picked", join(numbers, ", "));
  return answer;
}

}  // namespace

Operation pick_pieces() {
  return {
      .name = "pick",
      .help = "take pieces into the show and the book by hand, in order, or drop them",
      .writes = true,
      .parameters =
          {show_folder(),
           {.name = "number",
            .takes = Takes::texts,
            .help = "numbers, in their order",
            .positional = true,
            .required = true},
           {.name = "section", .help = "the section they stand in"},
           {.name = "rank", .takes = Takes::whole, .help = "place of the first; others follow"},
           {.name = "lead", .takes = Takes::flag, .help = "deserves a spread in the book"},
           {.name = "show-only", .takes = Takes::flag, .help = "not in the book"},
           {.name = "book-only", .takes = Takes::flag, .help = "not in the cases"},
           {.name = "drop", .takes = Takes::flag, .help = "neither any more"}},
      .run = run};
}

}  // namespace backmark::desk
