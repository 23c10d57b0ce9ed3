// Display cases: what lies where, what light and air it has, and what it may have.
#pragma once

#include <optional>
#include <string>

#include "model/exhibit.h"

namespace backmark::model {

// A display case; inside measures in millimetres. What nobody measured is none, never a guess.
struct Case {
  Id<Case> id;
  std::string key;
  double width_mm = 0;
  double height_mm = 0;
  double depth_mm = 0;
  std::string made_of;  // what shares its air, parted by semicolons: "acrylic; MDF; wool felt"
  std::string shelf;    // material of its shelves; empty: it has none
  double shelf_thick_mm = 0;
  double shelf_span_mm = 0;              // between supports
  std::optional<double> leak_per_day;    // air changes
  std::optional<double> hours_per_day;   // lights on
  std::optional<double> buffer_kg;       // of silica gel or another buffer
  std::optional<double> reservoir_g_kg;  // grams of water a kilogram of it gives for 1 % RH
  std::optional<double> rh_percent;      // that is held, or aimed at, inside
  double warmer_c = 0;                   // than the room while the lights are on
};

// Where a piece stands in a case, by hand or by a layout: from the left and from below.
struct Placement {
  Id<Placement> id;
  Id<Piece> piece;
  Id<Case> in;
  double x_mm = 0;
  double y_mm = 0;
  std::int32_t shelf = 0;  // counted from below; 0: on a mount, on no shelf
};

// A light of a case. Its place is counted like that of the pieces, `z_mm` in front of the plane
// they stand in; it shines straight at that plane.
struct Fixture {
  Id<Fixture> id;
  Id<Case> in;
  std::string name;  // unique in its case
  double intensity_cd = 0;
  double x_mm = 0;
  double y_mm = 0;
  double z_mm = 0;
  double dimmed = 1;               // share of its full light, above 0 to 1
  std::optional<double> uv_uw_lm;  // microwatts of ultraviolet in a lumen
  double size_mm = 0;              // largest measure of what shines; 0: not known
};

// What a meter showed, with every light on as visitors see it.
struct LightReading {
  Id<LightReading> id;
  Id<Piece> piece;  // none: for the case as a whole
  Id<Case> in;
  double lux = 0;
  std::optional<double> uv_uw_lm;
  DayNumber day = unknown_day;
  Word by;
};

// Light that a piece had before this show.
struct Exposure {
  Id<Exposure> id;
  Id<Piece> piece;
  double lux_hours = 0;
  std::string text;  // where and when
  DayNumber day = unknown_day;
  Word by;
};

// What a piece, or everything of a lender, may have of light and air. Exactly one of `piece`
// and `lender` is named; ends that nobody named are none.
struct Requirement {
  Id<Requirement> id;
  Id<Piece> piece;
  Id<Lender> lender;
  std::string light_class;  // "R0" ... "R3" over what the record says; empty: as the record
  std::optional<double> lux;
  std::optional<double> lux_hours_year;
  std::optional<double> rh_low;  // percent
  std::optional<double> rh_high;
  std::optional<double> c_low;  // degrees Celsius
  std::optional<double> c_high;
  std::string waiver;  // who may waive it
  std::string text;    // where it stands written
  DayNumber day = unknown_day;
  Word by;
};

}  // namespace backmark::model
