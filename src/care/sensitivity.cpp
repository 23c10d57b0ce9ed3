#include "care/sensitivity.h"

#include <algorithm>
#include <tuple>

#include "base/text.h"
#include "care/made_of.h"

namespace backmark::care {

namespace {

using model::Show;
using reference::LightClass;
using reference::LightMaterial;

// One thing that the record says a part is made of.
struct Made {
  std::string part;
  std::string value;
  const LightMaterial* row = nullptr;
};

// What the record says of a piece, as far as light asks.
struct Told {
  std::vector<Made> materials;
  std::vector<Made> colours;
  bool no_cord = false;  // looked for, and not there
};

bool says_colour(const model::Character& character) {
  return ends_with(character.key, "colour") || ends_with(character.key, "color");
}

Told told_of(const Show& show, const model::Piece& piece) {
  Told told;
  for (MadeOf& made : made_of(show, piece)) {
    const LightMaterial* row = reference::light_material(made.value);
    told.materials.push_back({std::move(made.part), std::move(made.value), row});
  }
  for (const model::Observation& seen : show.observations_of(piece.id)) {
    const model::Character& character = *show.find(seen.character);
    const std::string part(show.text(character.part));
    if (seen.seen == model::Seen::none && part == "cord" && says_material(character)) {
      told.no_cord = true;
    } else if (seen.seen == model::Seen::value && says_colour(character)) {
      const std::string value = lower_ascii(show.text(seen.value));
      told.colours.push_back({part, value, reference::light_colour(value)});
    }
  }
  return told;
}

bool has_cord(const Show& show, const model::Piece& piece) {
  const auto parts = show.parts_of(piece.id);
  return std::any_of(parts.begin(), parts.end(),
                     [&](const model::Part& part) { return show.text(part.kind) == "cord"; });
}

Sensitivity as_high(std::string part, std::string why) {
  return {LightClass::high,
          quickest_step(LightClass::high),
          std::move(part),
          std::move(why),
          "rule of caution: what is not known counts as high",
          "common practice",
          true};
}

// The quickest colour that the record gives this material, in its own words or on its part.
const LightMaterial* colour_of(const Made& made, const Told& told) {
  const LightMaterial* quickest = reference::light_colour(made.value);
  for (const Made& colour : told.colours) {
    const bool same = colour.part == made.part || made.part.empty();
    if (same && colour.row != nullptr &&
        (quickest == nullptr || colour.row->sensitivity > quickest->sensitivity)) {
      quickest = colour.row;
    }
  }
  return quickest;
}

Sensitivity of_material(const Made& made, const Told& told) {
  const LightMaterial& row = *made.row;
  const int step = row.step > 0 ? row.step : quickest_step(row.sensitivity);
  Sensitivity own{row.sensitivity, step,       made.part, made.value + ": " + row.material,
                  row.source,      row.status, false};
  if (!row.dyed || row.sensitivity == LightClass::high) {
    return own;
  }
  const LightMaterial* colour = colour_of(made, told);
  if (colour == nullptr) {
    return as_high(made.part, own.why + ", of a colour that nobody recorded");
  }
  own.why += ", " + colour->material;
  if (colour->sensitivity > own.light_class) {
    own.light_class = colour->sensitivity;
    own.step = quickest_step(colour->sensitivity);
    own.source = colour->source;
    own.status = colour->status;
  }
  return own;
}

bool is_quicker(const Sensitivity& a, const Sensitivity& b) {
  // What is known is named before what was only counted.
  return std::tuple(-static_cast<int>(a.light_class), a.step, a.counted) <
         std::tuple(-static_cast<int>(b.light_class), b.step, b.counted);
}

std::vector<Sensitivity> parts_of(const Show& show, const model::Piece& piece) {
  const Told told = told_of(show, piece);
  std::vector<Sensitivity> found;
  bool cord_known = told.no_cord;
  for (const Made& made : told.materials) {
    cord_known = cord_known || made.part == "cord" || (made.row != nullptr && made.row->dyed);
    if (made.row != nullptr) {
      found.push_back(of_material(made, told));
    } else {
      found.push_back(as_high(made.part, made.value + ": not in the table of materials"));
    }
  }
  if (!cord_known && has_cord(show, piece)) {
    found.push_back(as_high("cord", "nobody recorded what the cord is"));
  }
  if (found.empty()) {
    found.push_back(as_high("", "nobody recorded what it is made of"));
  }
  return found;
}

}  // namespace

int quickest_step(LightClass light_class) {
  for (const reference::BlueWool& step : reference::blue_wool()) {
    if (step.sensitivity == light_class) {
      return step.step;
    }
  }
  return 0;
}

std::optional<LightClass> light_class_of(std::string_view code) {
  for (const LightClass one :
       {LightClass::none, LightClass::low, LightClass::medium, LightClass::high}) {
    if (reference::code_of(one) == code) {
      return one;
    }
  }
  return std::nullopt;
}

Sensitivity most_sensitive(const Show& show,
                           const model::Piece& piece,
                           const model::Requirement* said) {
  if (said != nullptr) {
    if (const auto named = light_class_of(said->light_class)) {
      const std::string who = said->lender ? "the lender says so" : "the curator says so";
      return {*named,     quickest_step(*named),
              "",         said->text.empty() ? who : who + ": " + said->text,
              "the show", "said",
              false};
    }
  }
  const auto parts = parts_of(show, piece);
  return *std::min_element(parts.begin(), parts.end(), is_quicker);
}

}  // namespace backmark::care
