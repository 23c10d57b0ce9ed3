// What a show says, as the engine weighs it: style of every piece as an encoded table, what
// people say about years and makers as statements, marks and windows.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <vector>

#include "evidence/encode.h"
#include "evidence/sequence.h"
#include "evidence/statement.h"
#include "evidence/style_table.h"
#include "model/show.h"

namespace backmark::evidence {

// A statement about a piece, with the record it came from.
struct SaidOfYear {
  Statement statement;
  std::int32_t record = 0;  // id of the claim, event or mark
  std::string what;         // in words: "Acquired in 1974"
  std::string source;       // in words: "receipt, 1974"
  bool limit = false;       // a reasoned limit: acquired by, patent, award
  // Id of the source whose reliability may be learned; 0: none, or the claim has a weight of
  // its own.
  std::int32_t teller = 0;
  // The curator's judgement, or a mark that was used twice: weighed on its piece, teaches
  // nothing.
  bool opinion = false;
};

// A statement about a piece's maker.
struct SaidOfMaker {
  std::size_t maker = 0;  // place in Show::all<Maker>()
  double reliability = 0.85;
  std::string qualifier;  // "attributed to"; empty: the name alone
  std::int32_t record = 0;
  std::string what;
  std::string source;
  bool documented = false;  // mark, document or accepted claim: not mere opinion
};

struct GatheredPiece {
  std::vector<SaidOfYear> years;
  std::vector<SaidOfMaker> makers;
  std::vector<SeenInSequence> sequences;
  // Where each style value came from: one a character of the table; 0: derived or missing.
  std::vector<std::int32_t> records;
  model::Word place;  // as recorded; none: not said
};

struct Gathered {
  StyleTable style;  // pieces in the order of the show
  std::vector<GatheredPiece> pieces;
  StyleColumns columns;
  YearSpan years;  // of the grid
  bool any_dated = false;
  std::size_t arrivals = 0;  // dated pieces whose acquisition is known
};

// From so many arrivals on the style engine learns from them how long pieces are about before
// they are acquired, of any shape (LagMap), and StylePiece::latest is set; below, an
// exponential lag must do (statement.h).
inline constexpr std::size_t least_arrivals = 30;

// `today` closes the grid and the lags: the year of the reckoning. Settings "years.first" and
// "years.last" of the show fix the grid; otherwise it runs from the 1 to the 99 in 100 point of
// what is said, widened by a tenth of that and to the next 5 years, and not past `today`.
// `hidden`: ids of pieces whose known years and makers are to be left out (hide_known).
Gathered gather(const model::Show& show, Year today, const std::set<std::int32_t>& hidden = {});

// What a piece teaches: the narrowest firm statement with both ends, and the first firm name.
std::optional<YearSpan> stated_span(const GatheredPiece& piece);
std::optional<int> named_hand(const GatheredPiece& piece);
// The earliest year of acquisition.
std::optional<Year> acquired_by(const GatheredPiece& piece);

// Takes out what makes the year (or the maker) known: firm statements with both ends and their
// retellings (firm names). Limits, stories and opinions stay.
void hide_known(GatheredPiece& piece, bool years, bool makers);

}  // namespace backmark::evidence
