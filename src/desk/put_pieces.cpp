#include <map>

#include "base/text.h"
#include "desk/cases.h"
#include "desk/each.h"
#include "desk/list_file.h"
#include "desk/measures.h"

namespace backmark::desk {

namespace {

using model::Case;
using model::Piece;
using model::Placement;
using model::Show;

// Where one piece shall stand, as it was asked for.
struct Wish {
  std::string number;
  std::string key;  // of the case
  std::optional<double> x_mm;
  std::optional<double> y_mm;
  std::optional<double> shelf;
};

using Standing = std::map<model::Id<Piece>, Placement>;

Standing standing_in(const Show& show) {
  Standing all;
  for (const Placement& one : show.all<Placement>()) {
    all[one.piece] = one;
  }
  return all;
}

Problem outside(const Wish& wish, const Case& in) {
  return {Fault::bad_input,
          fmt::format("the place {:g}, {:g} mm lies outside the case {}, {:g} x {:g} mm",
                      wish.x_mm.value_or(in.width_mm / 2), wish.y_mm.value_or(in.height_mm / 2),
                      in.key, in.width_mm, in.height_mm),
          "", "measure from the left and from the floor of the case"};
}

// A place that nobody names is kept where the piece stood, in another case its middle.
Result<Placement> place_of(const Wish& wish, const Case& in, Placement known) {
  if (known.in != in.id) {
    known.in = in.id;
    known.x_mm = in.width_mm / 2;
    known.y_mm = in.height_mm / 2;
    known.shelf = 0;
  }
  known.x_mm = wish.x_mm.value_or(known.x_mm);
  known.y_mm = wish.y_mm.value_or(known.y_mm);
  known.shelf = static_cast<std::int32_t>(wish.shelf.value_or(known.shelf));
  if (known.x_mm < 0 || known.x_mm > in.width_mm || known.y_mm < 0 ||
      known.y_mm > in.height_mm) {
    return outside(wish, in);
  }
  return known;
}

Result<Done> put_one(model::Change& change,
                     Standing& standing,
                     const Show& show,
                     const Wish& wish) {
  const auto piece = find_piece(show, wish.number);
  if (!piece) {
    return piece.problem();
  }
  const auto in = find_case(show, wish.key);
  if (!in) {
    return in.problem();
  }
  const auto known = standing.find((*piece)->id);
  const auto place = place_of(
      wish, **in, known == standing.end() ? Placement{.piece = (*piece)->id} : known->second);
  if (!place) {
    return place.problem();
  }
  if (place->id) {
    change.replace(*place);
  } else {
    change.add(*place);
  }
  return Done{};
}

// From the command line no item has a row.
using Wishes = ListRead<Wish>;

Result<Wishes> wishes_on_line(const Call& call) {
  Wish common{.key = call.text("case")};
  for (const auto& [name, value] :
       {std::pair{"x", &common.x_mm}, std::pair{"y", &common.y_mm}}) {
    if (auto done = take(call, name, {0, 20000, false, "mm"}, *value); !done) {
      return done.problem();
    }
  }
  if (auto done = take(call, "shelf", {0, 100, false, ""}, common.shelf); !done) {
    return done.problem();
  }
  if (call.texts("number").empty() || common.key.empty()) {
    return Problem{Fault::bad_input,
                   common.key.empty() ? "no case is named" : "no piece is named", "",
                   "give numbers and --case, or a file with --from"};
  }
  Wishes wishes;
  for (const std::string& number : call.texts("number")) {
    wishes.items.push_back(common);
    wishes.items.back().number = number;
  }
  return wishes;
}

Result<Wish> wish_of_row(const ListRow& row) {
  Wish wish{.number = std::string(row.at("number")), .key = std::string(row.at("case"))};
  for (const auto& [name, value] : {std::pair{"x", &wish.x_mm}, std::pair{"y", &wish.y_mm},
                                    std::pair{"shelf", &wish.shelf}}) {
    const std::string_view text = row.at(name);
    *value = to_number(text);
    if (!text.empty() && (!*value || !(**value >= 0 && **value <= 20000))) {
      return Problem{Fault::bad_input, fmt::format("\"{}\" is no {} of a place", text, name),
                     "", "write mm as 310 or 312.5, a shelf as 1, or leave it empty"};
    }
  }
  return wish;
}

Result<Answer> drop(OpenShow& open, const Call& call, const Surroundings& around) {
  const Standing standing = standing_in(open.show);
  model::Change change(
      open.show, "put",
      fmt::format("{} taken out of their cases", join(call.texts("number"), ", ")));
  for (const std::string& number : call.texts("number")) {
    const auto piece = find_piece(open.show, number);
    if (!piece) {
      return piece.problem();
    }
    if (const auto at = standing.find((*piece)->id); at != standing.end()) {
      change.withdraw(at->second.id, "taken out by hand");
    }
  }
  return after_change(open, change, around,
                      {{{"numbers", call.texts("number")}, {"dropped", true}},
                       fmt::format("Taken out: {}.\n", join(call.texts("number"), ", ")),
                       {}});
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  if (call.flag("drop")) {
    return drop(*open, call, around);
  }
  auto wishes = call.has("from") ? read_list<Wish>(call.path("from"), {"number", "case"},
                                                   "number, case, x, y, shelf", wish_of_row)
                                 : wishes_on_line(call);
  if (!wishes) {
    return wishes.problem();
  }
  Standing standing = standing_in(open->show);
  model::Change change(open->show, "put",
                       fmt::format("{} pieces put into cases", wishes->items.size()));
  std::map<std::string, int> counts;
  for (std::size_t i = 0; i < wishes->items.size(); ++i) {
    const Wish& wish = wishes->items[i];
    ++counts[wish.key];
    if (auto done = put_one(change, standing, open->show, wish); !done) {
      Problem problem = done.problem();
      if (!wishes->rows.empty()) {
        problem.where =
            fmt::format("{}, row {}", call.path("from").filename().string(), wishes->rows[i]);
      }
      wishes->problems.push_back(std::move(problem));
    }
  }
  if (!wishes->problems.empty()) {
    return Answer{Json::object(), "Nothing was put anywhere.\n", wishes->problems};
  }
  Answer answer;
  answer.json = {{"put", wishes->items.size()}, {"cases", Json::object()}};
  for (const auto& [key, count] : counts) {
    answer.json["cases"][key] = count;
    answer.text += fmt::format("{}: {} put.\n", key, count);
  }
  return after_change(*open, change, around, answer);
}

}  // namespace

Operation put_pieces() {
  return {.name = "put",
          .help = "say in which case pieces lie, and where, by hand or from a file",
          .writes = true,
          .parameters = {show_folder(),
                         {.name = "number",
                          .takes = Takes::texts,
                          .help = "the pieces",
                          .positional = true},
                         {.name = "case", .help = "key of the case"},
                         {.name = "x", .help = "mm from the left (the middle)"},
                         {.name = "y", .help = "mm up from its floor (the middle)"},
                         {.name = "shelf", .help = "counted from below; 0: on a mount"},
                         {.name = "from",
                          .takes = Takes::file,
                          .help = "a spreadsheet with the columns number, case, x, y, shelf"},
                         {.name = "drop", .takes = Takes::flag, .help = "in no case any more"}},
          .run = run};
}

}  // namespace backmark::desk
