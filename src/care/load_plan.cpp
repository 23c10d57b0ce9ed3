#include "care/load_plan.h"

#include <map>

#include "base/text.h"
#include "care/beam.h"

namespace backmark::care {

namespace {

using model::Show;

constexpr double mm_in_m = 1000;
constexpr double g_in_kg = 1000;

// The measure of a piece in the unit wanted; none: nobody took it.
std::optional<double> measure_of(const Show& show,
                                 const model::Piece& piece,
                                 std::initializer_list<std::string_view> keys,
                                 std::string_view unit,
                                 std::string_view thousand_unit) {
  std::optional<double> found;
  for (const model::Observation& seen : show.observations_of(piece.id)) {
    const model::Character& character = *show.find(seen.character);
    for (const std::string_view key : keys) {
      if (character.key == key && seen.seen == model::Seen::value && seen.number > 0) {
        if (character.unit == unit) {
          found = seen.number;
        } else if (character.unit == thousand_unit) {
          found = seen.number * 1000;
        }
      }
    }
  }
  return found;
}

std::optional<double> mass_g(const Show& show, const model::Piece& piece) {
  return measure_of(show, piece, {"mass", "weight"}, "g", "kg");
}

void ask_for(ShelfLoad& load, const model::Case& in) {
  if (load.material == nullptr) {
    load.ask.push_back(
        in.shelf.empty()
            ? "the material of the shelf"
            : fmt::format("\"{}\" is not in the table of shelf materials", in.shelf));
  }
  if (in.shelf_thick_mm <= 0 || in.shelf_span_mm <= 0) {
    load.ask.push_back("thickness and span of the shelf");
  }
  if (!load.unweighed.empty()) {
    load.ask.push_back(fmt::format("the mass of {}", join(load.unweighed, ", ")));
  }
}

void reckon(ShelfLoad& load, const model::Case& in) {
  const double length_m = in.shelf_span_mm / mm_in_m;
  const double width_m = in.depth_mm / mm_in_m;
  const double thick_m = in.shelf_thick_mm / mm_in_m;
  load.own_kg = load.material->density_kg_m3 * length_m * width_m * thick_m;
  const Beam beam{length_m, load.material->stiffness_gpa * 1e9,
                  second_moment(width_m, thick_m)};
  const double own_n_m = load.own_kg * gravity / length_m;
  const double pieces_n = load.pieces_kg * gravity;
  const double even = sag_even(beam, own_n_m + pieces_n / length_m);
  const double worst = sag_even(beam, own_n_m) + sag_middle(beam, pieces_n);
  const double moment = moment_even(own_n_m, length_m) + moment_middle(pieces_n, length_m);
  load.sag_mm = even * mm_in_m;
  load.sag_late_mm = *load.sag_mm * load.material->creep_factor;
  load.sag_worst_mm = worst * mm_in_m * load.material->creep_factor;
  load.stress_worst_mpa = bending_stress(moment, width_m, thick_m) / 1e6;
  load.span_by_sag = in.shelf_span_mm / *load.sag_worst_mm;
}

MountLoad mount_of(const Show& show, const CaseContents& contents, const model::Piece& piece) {
  MountLoad load{&contents, &piece, mass_g(show, piece), {}, {}};
  if (load.mass_g) {
    load.newtons = *load.mass_g / g_in_kg * gravity;
  }
  if (const auto cord = measure_of(show, piece, {"cord_length"}, "mm", "m")) {
    load.drop_mm = *cord / 2;
  }
  return load;
}

void add_shelves(LoadPlan& plan, const Show& show, const CaseContents& contents) {
  std::map<int, ShelfLoad> shelves;
  for (const model::Placement* placement : contents.placed) {
    if (placement->shelf <= 0) {
      continue;
    }
    ShelfLoad& load = shelves[placement->shelf];
    const model::Piece* piece = show.find(placement->piece);
    load.pieces.push_back(piece);
    if (const auto mass = mass_g(show, *piece)) {
      load.pieces_kg += *mass / g_in_kg;
    } else {
      load.unweighed.push_back(piece->number);
    }
  }
  for (auto& [shelf, load] : shelves) {
    const model::Case& in = *contents.in;
    load.contents = &contents;
    load.shelf = shelf;
    load.material = in.shelf.empty() ? nullptr : reference::shelf_material(in.shelf);
    ask_for(load, in);
    if (load.material != nullptr && in.shelf_thick_mm > 0 && in.shelf_span_mm > 0) {
      reckon(load, in);
    }
    plan.shelves.push_back(std::move(load));
  }
}

}  // namespace

LoadPlan load_plan(const Show& show, const std::vector<CaseContents>& contents) {
  LoadPlan plan;
  for (const CaseContents& one : contents) {
    add_shelves(plan, show, one);
    for (const model::Placement* placement : one.placed) {
      if (placement->shelf <= 0) {
        plan.mounts.push_back(mount_of(show, one, *show.find(placement->piece)));
      }
    }
  }
  return plan;
}

}  // namespace backmark::care
