// Makers and places in words, by the published table (words/table.h).
#pragma once

#include <string>
#include <string_view>

#include "model/belief.h"
#include "model/show.h"

namespace backmark::words {

// How near the leading maker a hand is said to be. `own` is the share of the maker's chance
// that is the maker's own hand; the rest is the shop's, or somebody's near.
enum class Nearness { hand, shop, around };
struct Closeness {
  Nearness nearness = Nearness::hand;
  double own = 1;
};

// The curator's latest judgement on file ("workshop of", "circle of", with its weight) of this
// maker and piece; the hand itself if there is none.
Closeness closeness_of(const model::Show& show,
                       model::Id<model::Piece> piece,
                       model::Id<model::Maker> maker);

struct MakerPhrase {
  std::string text;  // "attributed to Oda Vessen"
  int row = 7;       // of maker_table()
  double p = 0;      // the chance that what it claims is true; 1 for row 7
};

// The first row of the table that holds. Makers of kind `unrecorded` count as unrecorded. A
// `frozen` phrase is kept by the rule of phrase_year.
MakerPhrase phrase_maker(const model::Show& show,
                         const model::PieceBelief& belief,
                         std::string_view frozen = {});

// Makers that a phrase of rows 1 to 6 names, at most two; empty for other texts.
struct ClaimedMakers {
  int row = 0;
  std::vector<model::Id<model::Maker>> makers;
};
ClaimedMakers claimed_makers(const model::Show& show, std::string_view phrase);

// "Long Quay", "probably Long Quay" or nothing.
std::string phrase_place(const model::Show& show, const model::PlaceBelief& belief);

// What sources say of others' shares in the piece: "stone by Jory Lund; sold by Gannet Row";
// empty if nothing. A claim counts by its weight, else its source's reliability, else 0.8.
std::string contributions(const model::Show& show, model::Id<model::Piece> piece);

}  // namespace backmark::words
