// What shelves and mounts of a show carry. A feel for sag and weight only: case, shelf, glass,
// mount and fixing are the fabricator's and the local code's to decide.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "care/contents.h"
#include "reference/display.h"

namespace backmark::care {

// A shelf as a strip as deep as its case, supported at both ends of its span.
struct ShelfLoad {
  const CaseContents* contents = nullptr;
  int shelf = 0;
  const reference::ShelfMaterial* material = nullptr;  // null: not in the table
  std::vector<const model::Piece*> pieces;
  std::vector<std::string> unweighed;  // numbers of pieces without a mass on record
  double pieces_kg = 0;                // of those that were weighed
  double own_kg = 0;                   // of the shelf between its supports
  // In the middle; the pieces spread evenly, and all of them in the middle. Without creep, and
  // with the factor of the table on all of it. None: something is not known.
  std::optional<double> sag_mm;
  std::optional<double> sag_late_mm;
  std::optional<double> sag_worst_mm;
  std::optional<double> stress_worst_mpa;
  std::optional<double>
      span_by_sag;  // span by the late worst sag: 360 and more is the usual wish
  std::vector<std::string> ask;
  bool above_stress_limit() const {
    return stress_worst_mpa && material->stress_limit_mpa &&
           *stress_worst_mpa > *material->stress_limit_mpa;
  }
};

// What hangs on a mount.
struct MountLoad {
  const CaseContents* contents = nullptr;
  const model::Piece* piece = nullptr;
  std::optional<double> mass_g;  // with its cord, as weighed
  std::optional<double> newtons;
  std::optional<double> drop_mm;  // half of the cord's length: it hangs doubled
};

struct LoadPlan {
  std::vector<ShelfLoad> shelves;  // by case, then from below; only those that carry something
  std::vector<MountLoad> mounts;   // by case
};

// Masses are the observations of a character "mass" or "weight" in g or kg, cords those of
// "cord_length" in mm; the last stands.
LoadPlan load_plan(const model::Show& show, const std::vector<CaseContents>& contents);

// Usual wishes for the late sag of a shelf: span / 200 to span / 360 (common practice).
constexpr double sag_usual = 360;
constexpr double sag_least = 200;

}  // namespace backmark::care
