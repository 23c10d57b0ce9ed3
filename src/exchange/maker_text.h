// Who made it, as catalogues write it: "attributed to Oda Vessen", "O. Vessen?", "possibly by
// A, or B", "workshop of X", "unknown", "unknown Austrian".
//
//   cell      = [qualifier] name *( or name ) [doubt]
//   qualifier = "attributed to" / "probably by" / "workshop of" / ...   doubt = "?" /
//   "(attributed)" or        = ", or " / " or "           only after a qualifier that allows
//   for several
//
// The qualifiers and the words they are written with stand in reference/qualifiers.csv.
// "Unknown" with a nation or town after it is a place, not a hand.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace backmark::exchange {

struct NamedMaker {
  std::string name;       // natural order; empty: nobody is named
  std::string qualifier;  // "attributed to"; empty: the name alone
  std::string role;       // "designer"; lower case
  std::string place;      // of an unknown hand: "Austrian"
  std::string text;       // as written

  friend bool operator==(const NamedMaker&, const NamedMaker&) = default;
};

// Everyone a cell names. Nothing for an empty cell.
std::vector<NamedMaker> read_makers(std::string_view cell);

// Takes a cell of a column in step with the makers ("designer", "possibly by", "attributed
// manufacturer") into role and qualifier.
void apply_role(std::string_view cell, NamedMaker& maker);

// "Vessen, Oda" turned into "Oda Vessen". A firm's ending ("Kensington, Inc.") is no given name
// and stays; so does a name with no comma or with several.
std::string natural_order(std::string_view name);
// "Oda Vessen" turned into "Vessen, Oda": the last word first. Common practice, no source;
// names with particles need the curator's eye.
std::string inverted_order(std::string_view name);

}  // namespace backmark::exchange
