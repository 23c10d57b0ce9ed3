#include <algorithm>
#include <set>

#include "base/text.h"
#include "desk/care_checks.h"
#include "desk/cases.h"
#include "desk/each.h"
#include "desk/or_null.h"
#include "desk/screened.h"
#include "press/job.h"

namespace backmark::desk {

namespace {

using care::CaseContents;
using care::PieceLight;
using model::Show;

const char* const cautions[] = {
    "Loads, glass and mounts: the fabricator and the local code decide.",
    "Limits of light and air are of published tables and of what was asked; a conservator may "
    "know the piece better. Fading does not come back.",
    "Old horn, feather and skin may carry pesticide: gloves, no hot needle."};

CareGround ground_of(OpenShow& open, const Surroundings& around) {
  const auto opens = press::parse_day(open.show.setting("opens"));
  const auto closes = press::parse_day(open.show.setting("closes"));
  CareGround ground{.show = open.show,
                    .wish = {.rule = reference::light_rules().front(),
                             .opens = opens.value_or(model::unknown_day)},
                    .last = reckoned_or_none(open),
                    .opening = opening_of(open.show, around)};
  if (opens && closes && *closes >= *opens) {
    ground.wish.days = *closes - *opens + 1;
  }
  return ground;
}

Json notes_json() {
  Json notes = cautions;
  notes.push_back(screen_caution);
  return notes;
}

Answer with_cautions(Json json, std::string text) {
  json["notes"] = notes_json();
  text += "\n";
  for (const char* caution : cautions) {
    text += std::string(caution) + "\n";
  }
  text += fmt::format("{}\n", screen_caution);
  return {std::move(json), std::move(text), {}};
}

Answer one_piece(const CareGround& ground, const model::Piece& piece) {
  const auto contents = care::contents_of(ground.show);
  const CaseContents* in = nullptr;
  const model::Placement* at = nullptr;
  for (const CaseContents& one : contents) {
    for (const model::Placement* placement : one.placed) {
      if (placement->piece == piece.id) {
        in = &one;
        at = placement;
      }
    }
  }
  const auto checks = piece_checks(ground, piece, in, at);
  Json json = {{"number", piece.number},
               {"case", in == nullptr ? Json(nullptr) : Json(in->in->key)},
               {"checks", checks_json(checks)}};
  const std::string head =
      fmt::format("{}  {}{}\n", piece.number, piece.title,
                  in == nullptr ? std::string() : ", in the case " + in->in->key);
  return with_cautions(std::move(json), head + checks_text(checks));
}

Json placed_json(const CareGround& ground, const std::vector<PieceLight>& light) {
  Json list = Json::array();
  for (const PieceLight& one : light) {
    const CareCheck check = light_check(one, ground.wish);
    list.push_back({{"number", one.piece->number},
                    {"x_mm", one.placement->x_mm},
                    {"y_mm", one.placement->y_mm},
                    {"shelf", one.placement->shelf},
                    {"light", word_of(check.state)},
                    {"share", or_null(check.share)},
                    {"words", check.words}});
  }
  return list;
}

Json fixtures_json(const CaseContents& contents) {
  Json list = Json::array();
  for (const model::Fixture* one : contents.fixtures) {
    list.push_back({{"x_mm", one->x_mm}, {"y_mm", one->y_mm}});
  }
  return list;
}

// A piece of the case somewhere else than it stands, for this answer alone.
struct Moved {
  const model::Piece* piece = nullptr;
  double x_mm = 0;
  double y_mm = 0;
};

Result<std::optional<Moved>> moved_of(const Show& show, const Call& call) {
  if (!call.has("moved")) {
    return std::optional<Moved>();
  }
  const auto piece = find_piece(show, call.text("moved"));
  const auto x_mm = call.number("x", 0);
  const auto y_mm = call.number("y", 0);
  if (!piece) {
    return piece.problem();
  }
  if (!x_mm || !y_mm) {
    return x_mm ? y_mm.problem() : x_mm.problem();
  }
  if (!call.has("x") || !call.has("y")) {
    return Problem{Fault::bad_input, "where it is moved to is not said", "--moved",
                   "give --x and --y, in mm from the left and from the floor of the case"};
  }
  return std::optional(Moved{*piece, *x_mm, *y_mm});
}

// `moved` stands in for the placement that the record has.
Result<Done> move_in(CaseContents& contents, const Moved& wish, model::Placement& moved) {
  for (const model::Placement*& placement : contents.placed) {
    if (placement->piece == wish.piece->id) {
      moved = *placement;
      moved.x_mm = wish.x_mm;
      moved.y_mm = wish.y_mm;
      placement = &moved;
      return Done{};
    }
  }
  return Problem{Fault::not_found,
                 fmt::format("{} is not in the case {}", wish.piece->number, contents.in->key),
                 "--moved", "name a piece that stands in this case"};
}

Result<Answer> one_case(const CareGround& ground,
                        const std::string& key,
                        const std::optional<Moved>& wish) {
  const auto found = find_case(ground.show, key);
  if (!found) {
    return found.problem();
  }
  const auto contents = care::contents_of(ground.show);
  CaseContents in =
      *std::find_if(contents.begin(), contents.end(),
                    [&](const CaseContents& one) { return one.in->id == (*found)->id; });
  model::Placement moved;
  if (wish) {
    if (auto done = move_in(in, *wish, moved); !done) {
      return done.problem();
    }
  }
  const std::vector<CaseContents> only{in};
  const auto light = care::light_plan(ground.show, only, ground.wish);
  const auto checks = case_checks(ground, in, light);
  Json json = to_json(*in.in);
  json["pieces"] = placed_json(ground, light);
  json["fixtures"] = fixtures_json(in);
  json["checks"] = checks_json(checks);
  const std::string head = fmt::format("{}: {} pieces\n", in.in->key, in.placed.size());
  return with_cautions(std::move(json), head + checks_text(checks));
}

// The cases there are, and what of the show lies in none.
Answer all_cases(const CareGround& ground) {
  std::set<std::int32_t> placed;
  Json cases = Json::array();
  std::string text;
  for (const CaseContents& one : care::contents_of(ground.show)) {
    for (const model::Placement* placement : one.placed) {
      placed.insert(placement->piece.value);
    }
    cases.push_back({{"case", one.in->key}, {"pieces", one.placed.size()}});
    text += fmt::format("{}: {} pieces\n", one.in->key, one.placed.size());
  }
  Json waiting = Json::array();
  for (const model::Pick& pick : ground.show.all<model::Pick>()) {
    if (pick.in_show && !placed.contains(pick.piece.value)) {
      waiting.push_back(ground.show.find(pick.piece)->number);
    }
  }
  text += text.empty() ? "No case yet: begin one with \"backmark case SHOW KEY\".\n"
                       : "See one with --case KEY, a piece by its number.\n";
  return with_cautions({{"cases", cases}, {"waiting", waiting}}, text);
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const CareGround ground = ground_of(*open, around);
  if (call.has("number")) {
    const auto piece = find_piece(open->show, call.text("number"));
    if (!piece) {
      return piece.problem();
    }
    return one_piece(ground, **piece);
  }
  const auto moved = moved_of(open->show, call);
  if (!moved) {
    return moved.problem();
  }
  return call.has("case") ? one_case(ground, call.text("case"), *moved)
                          : Result<Answer>(all_cases(ground));
}

}  // namespace

Operation care_show() {
  return {.name = "care",
          .help = "what a piece or a case must hold to: light, air, weight, law and leave",
          .from_show_alone = true,
          .parameters = {show_folder(),
                         {.name = "number", .help = "one piece", .positional = true},
                         {.name = "case", .help = "one case, by its key"},
                         {.name = "moved",
                          .help = "as if this piece of the case stood at --x and --y; nothing "
                                  "is kept"},
                         {.name = "x", .takes = Takes::number, .help = "mm from the left"},
                         {.name = "y", .takes = Takes::number, .help = "mm from the floor"}},
          .run = run};
}

}  // namespace backmark::desk
