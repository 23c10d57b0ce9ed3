#include <algorithm>
#include <map>

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

// The picks as they stand, looked up once.
struct Standing {
  std::map<model::Id<Piece>, const Pick*> picks;
  std::map<model::Id<Section>, std::int32_t> last_rank;

  explicit Standing(const Show& show) {
    for (const Pick& pick : show.all<Pick>()) {
      picks[pick.piece] = &pick;
      std::int32_t& last = last_rank[pick.section];
      last = std::max(last, pick.rank);
    }
  }
  const Pick* of(model::Id<Piece> piece) const {
    const auto at = picks.find(piece);
    return at == picks.end() ? nullptr : at->second;
  }
};

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

void pick_one(
    model::Change& change, Standing& standing, const Piece& piece, const Wish& wish, int step) {
  const Pick* known = standing.of(piece.id);
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
  // Moving a pick to another place says nothing of where it is shown.
  if (known == nullptr || wish.only_show || wish.only_book || wish.rank == 0) {
    pick.in_show = !wish.only_book;
    pick.in_book = !wish.only_show;
  }
  pick.lead = pick.lead || wish.lead;
  if (wish.rank > 0) {
    pick.rank = wish.rank + step;
  } else if (known == nullptr) {
    pick.rank = ++standing.last_rank[pick.section];
  }
  if (known != nullptr) {
    change.replace(pick);
  } else {
    change.add(pick);
  }
}

// The pieces named, in the order given; or, with --all, those not yet picked (to drop: those
// picked), in the order of the show.
Result<std::vector<const Piece*>> wanted(const Call& call,
                                         const Show& show,
                                         const Standing& standing,
                                         bool drop) {
  std::vector<const Piece*> pieces;
  for (const std::string& number : call.texts("number")) {
    const auto piece = find_piece(show, number);
    if (!piece) {
      return piece.problem();
    }
    pieces.push_back(*piece);
  }
  if (call.flag("all") == !pieces.empty()) {
    return Problem{
        Fault::bad_input,
        pieces.empty() ? "no piece is named" : "numbers and --all exclude each other", "",
        "give numbers, or --all for every piece of the show"};
  }
  if (call.flag("all")) {
    for (const Piece& piece : show.all<Piece>()) {
      if ((standing.of(piece.id) != nullptr) == drop) {
        pieces.push_back(&piece);
      }
    }
  }
  return pieces;
}

std::vector<std::string> numbers_of(const std::vector<const Piece*>& pieces) {
  std::vector<std::string> numbers;
  for (const Piece* piece : pieces) {
    numbers.push_back(piece->number);
  }
  return numbers;
}

// "ES 001, ES 002" or, if many, "312 pieces".
std::string named(const std::vector<std::string>& numbers) {
  constexpr std::size_t most = 12;
  return numbers.empty()          ? "nothing: there is none left"
         : numbers.size() <= most ? join(numbers, ", ")
                                  : fmt::format("{} pieces", numbers.size());
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
  Standing standing(open->show);
  const auto pieces = wanted(call, open->show, standing, wish->drop);
  if (!pieces) {
    return pieces.problem();
  }
  const auto numbers = numbers_of(*pieces);
  model::Change change(
      open->show, "pick",
      fmt::format("{} {}", wish->drop ? "dropped" : "picked", join(numbers, ", ")));
  int step = 0;
  for (const Piece* piece : *pieces) {
    pick_one(change, standing, *piece, *wish, step++);
  }
  Answer answer;
  answer.json = {{"numbers", numbers}, {"dropped", wish->drop}};
  answer.text = fmt::format("{} {}.\n", wish->drop ? "Dropped" : "Picked", named(numbers));
  return after_change(*open, change, around, answer);
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
            .positional = true},
           {.name = "all",
            .takes = Takes::flag,
            .help = "every piece not yet picked; with --drop, every pick"},
           {.name = "section", .help = "the section they stand in"},
           {.name = "rank", .takes = Takes::whole, .help = "place of the first; others follow"},
           {.name = "lead", .takes = Takes::flag, .help = "deserves a spread in the book"},
           {.name = "show-only", .takes = Takes::flag, .help = "not in the book"},
           {.name = "book-only", .takes = Takes::flag, .help = "not in the cases"},
           {.name = "drop", .takes = Takes::flag, .help = "neither any more"}},
      .run = run};
}

}  // namespace backmark::desk
