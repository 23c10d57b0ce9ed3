#include "base/text.h"
#include "care/load_plan.h"
#include "desk/cases.h"
#include "desk/each.h"
#include "desk/or_null.h"

namespace backmark::desk {

namespace {

using care::LoadPlan;
using care::MountLoad;
using care::ShelfLoad;

const char* const cautions[] = {
    "A feel for sag and weight, no safe working load: the fabricator or an engineer decides "
    "under "
    "the local code.",
    "Glass fails without warning; plastics and boards creep; a visitor will lean; earthquakes "
    "are "
    "not counted."};

Json shelf_json(const ShelfLoad& one) {
  Json numbers = Json::array();
  for (const model::Piece* piece : one.pieces) {
    numbers.push_back(piece->number);
  }
  const auto* material = one.material;
  return {
      {"case", one.contents->in->key},
      {"shelf", one.shelf},
      {"material", one.contents->in->shelf},
      {"stiffness_gpa", material == nullptr ? Json(nullptr) : Json(material->stiffness_gpa)},
      {"creep_factor", material == nullptr ? Json(nullptr) : Json(material->creep_factor)},
      {"source", material == nullptr ? "" : material->source},
      {"status", material == nullptr ? "" : material->status},
      {"numbers", numbers},
      {"pieces_kg", one.pieces_kg},
      {"own_kg", one.own_kg},
      {"sag_mm", or_null(one.sag_mm)},
      {"sag_late_mm", or_null(one.sag_late_mm)},
      {"sag_worst_mm", or_null(one.sag_worst_mm)},
      {"span_by_sag", or_null(one.span_by_sag)},
      {"stress_worst_mpa", or_null(one.stress_worst_mpa)},
      {"stress_limit_mpa",
       material == nullptr ? Json(nullptr) : or_null(material->stress_limit_mpa)},
      {"above_stress_limit", one.above_stress_limit()},
      {"ask", one.ask}};
}

Json to_json(const LoadPlan& plan) {
  Json shelves = Json::array();
  for (const ShelfLoad& one : plan.shelves) {
    shelves.push_back(shelf_json(one));
  }
  Json mounts = Json::array();
  for (const MountLoad& one : plan.mounts) {
    mounts.push_back({{"number", one.piece->number},
                      {"case", one.contents->in->key},
                      {"mass_g", or_null(one.mass_g)},
                      {"newtons", or_null(one.newtons)},
                      {"drop_mm", or_null(one.drop_mm)}});
  }
  return {{"shelves", shelves}, {"mounts", mounts}, {"notes", cautions}};
}

std::string verdict_of(const ShelfLoad& one) {
  std::string text = *one.span_by_sag >= care::sag_usual   ? "within span / 360"
                     : *one.span_by_sag >= care::sag_least ? "between span / 360 and span / 200"
                                                           : "MORE THAN SPAN / 200";
  if (one.above_stress_limit()) {
    text += fmt::format("; ABOVE the maker's {:g} MPa for lasting load",
                        *one.material->stress_limit_mpa);
  }
  return text;
}

std::string shelf_text(const ShelfLoad& one) {
  const model::Case& in = *one.contents->in;
  std::string text = fmt::format("\n{}, shelf {}: {} pieces, {:.2f} kg weighed", in.key,
                                 one.shelf, one.pieces.size(), one.pieces_kg);
  if (one.sag_mm) {
    text += fmt::format(
        "; the shelf itself {:.1f} kg\n  {}, {:g} mm thick, {:g} mm span: sag {:.2f} mm, later "
        "{:.2f} mm; everything in the middle {:.2f} mm, {:.1f} MPa: {}\n",
        one.own_kg, one.material->material, in.shelf_thick_mm, in.shelf_span_mm, *one.sag_mm,
        *one.sag_late_mm, *one.sag_worst_mm, *one.stress_worst_mpa, verdict_of(one));
    text += fmt::format("  E {:g} GPa, {}; {}\n", one.material->stiffness_gpa,
                        one.material->status, one.material->note);
  } else {
    text += "\n";
  }
  for (const std::string& ask : one.ask) {
    text += "  ask: " + ask + "\n";
  }
  return text;
}

std::string mounts_text(const LoadPlan& plan) {
  std::string text;
  int unweighed = 0;
  const care::CaseContents* in = nullptr;
  for (const MountLoad& one : plan.mounts) {
    if (one.contents != in) {
      in = one.contents;
      text += fmt::format("\n{}: on mounts\n", in->in->key);
    }
    unweighed += !one.mass_g;
    text += without_trailing_spaces(fmt::format(
                "  {} {:>8} {:>7}  {}", padded(one.piece->number, 10),
                one.mass_g ? fmt::format("{:.0f} g", *one.mass_g) : "-",
                one.newtons ? fmt::format("{:.2f} N", *one.newtons) : "weigh it",
                one.drop_mm ? fmt::format("cord drops {:.0f} mm", *one.drop_mm) : "")) +
            "\n";
  }
  if (unweighed > 0) {
    text += fmt::format("{} pieces on mounts were never weighed.\n", unweighed);
  }
  return text;
}

Result<Answer> run(const Call& call, const Surroundings&) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto contents = care::contents_of(open->show);
  const LoadPlan plan = care::load_plan(open->show, contents);
  Answer answer{to_json(plan), "", {}};
  if (plan.shelves.empty() && plan.mounts.empty()) {
    answer.text = "No piece lies in a case yet.\n";
  }
  for (const ShelfLoad& one : plan.shelves) {
    answer.text += shelf_text(one);
  }
  answer.text += mounts_text(plan) + "\n";
  for (const char* caution : cautions) {
    answer.text += std::string(caution) + "\n";
  }
  return answer;
}

}  // namespace

Operation loads_show() {
  return {.name = "loads",
          .help = "what shelves and mounts carry: sag, stress, weights, drops of cords",
          .parameters = {show_folder()},
          .run = run};
}

}  // namespace backmark::desk
