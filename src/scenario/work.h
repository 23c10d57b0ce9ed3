// One piece as it lies on the table: everything a drawing or an observation can be taken from.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/year.h"
#include "model/piece.h"

namespace backmark::scenario {

enum class Form { slide_tie, clasp, brooch, pendant, turned_pendant };
enum class Outline {
  disc,
  oval,
  scallop,
  fish,
  tail,
  crescent,
  lozenge,
  plaque,
  tern,
  star,
  shield,
  ring
};
enum class Motif {
  urchin,
  compass,
  cabochon,
  rayed_field,
  scallop,
  herring,
  whale_tail,
  boat,
  nautilus,
  crescent,
  net_lozenge,
  lighthouse,
  tern,
  knot,
  moon_water,
  channel_shield,
  eight_star,
  herringbone
};
enum class Metal { silver, nickel_silver, brass, copper, blackened_silver, pewter };
enum class Stone {
  none,
  serpentine,
  jasper,
  slate,
  agate,
  sodalite,
  jet,
  sea_glass,
  moon_glass,
  ormer,
  mussel,
  coral,
  horn,
  turtle,
  bone,
  amber,
  feather,
  driftwood
};
enum class Technique { stampwork, overlay, inlay, casting, engraving, piercing, granulation };
enum class Border { none, bevel, rope, punched, granules, double_line };
enum class Setting { none, plain_bezel, saw_bezel, channel, pegged };
enum class Backing { none, pitch, card, metal };
enum class Fitting { none, tubes, figure_eight, bar, clip, button, pin };
enum class Solder { hard, soft, rivets };
enum class Finish { filed, crossed, polished, pickled, cast_skin };
enum class CordType {
  none,
  plaited_leather,
  round_leather,
  cotton_braid,
  linen_twist,
  rayon_braid,
  nylon_braid,
  vinyl_braid
};
enum class CordColour { black, brown, tan, blue, red, white, green };
enum class TipForm { none, cone, ball, bullet, fluted, spindle };
enum class MarkForm { none, stamped, engraved };
enum class MarkOutline { none, rectangle, oval };

// Lengths in millimetres, masses in grams.
struct Work {
  std::string number;
  Form form = Form::slide_tie;
  Motif motif = Motif::cabochon;
  Outline outline = Outline::disc;
  Metal metal = Metal::silver;
  std::array<Stone, 3> stones{};  // main, second, third; Stone::none when there is none
  std::uint32_t techniques = 0;   // bit i: Technique i
  Border border = Border::none;
  Setting setting = Setting::none;
  Backing backing = Backing::none;
  Finish finish = Finish::filed;
  Fitting fitting = Fitting::none;
  Solder solder = Solder::hard;
  int bar_kind = 0;          // bar slides: 0 first, 1 second
  int clip_legend = 0;       // clips: place in the lineage
  bool wide_button = false;  // buttons: for cords above 5 mm
  CordType cord = CordType::none;
  CordColour colour = CordColour::black;
  std::array<TipForm, 2> tips{};  // left, right as worn; none: lost
  Metal tip_metal = Metal::silver;
  MarkForm mark_form = MarkForm::none;
  MarkOutline mark_outline = MarkOutline::none;
  std::vector<std::string> mark;  // lines of the legend; empty: no mark
  bool mark_worn = false;         // its last letter cannot be read
  double mark_turn = 0;           // radians
  std::string inscription;        // engraved on the back: "1953", "TO R.A. FROM THE CREW"
  bool bail_scar = false;         // a filed place where a pendant's loop sat
  double height = 0;
  double width = 0;
  double depth = 0;
  double gauge = 0;  // thickness of the plate
  double cord_thickness = 0;
  double cord_length = 0;
  double tip_length = 0;
  double mass = 0;          // with cord and tips
  std::uint64_t grain = 0;  // seed of scratches, veins and hand's unevenness

  int lot = -1;  // pieces of one lot came together; -1: alone
  // What the cataloguer thinks of the parts that are often changed; not always rightly.
  model::Originality cord_said = model::Originality::unknown;
  model::Originality tips_said = model::Originality::unknown;
  model::Originality fitting_said = model::Originality::unknown;

  // The rest cannot be seen on the piece: only testimony and the truth may draw on it.
  Year made;
  int maker = -1;  // place in makers(); -1: an unrecorded hand
  std::optional<Year> cord_replaced;
  std::optional<Year> tips_replaced;
  std::optional<Year> fitting_replaced;
  Year acquired;

  bool worn_on_cord() const { return form == Form::slide_tie || form == Form::turned_pendant; }
  bool uses(Technique technique) const {
    return ((techniques >> static_cast<unsigned>(technique)) & 1U) != 0;
  }
};

}  // namespace backmark::scenario
