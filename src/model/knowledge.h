// What is known beyond the piece itself: characters, makers, sources, claims, events.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/year.h"
#include "model/id.h"
#include "model/piece.h"

namespace backmark::model {

// How the values of a character behave, and so which kind of evidence they give.
enum class Shape {
  category,  // one word of a vocabulary
  ordered,   // one word; a lineage gives the order
  set,       // several words at once (materials, techniques)
  words,     // free text, weighed word by word
  number,    // a measure in `unit`
  text,      // kept, never weighed
};

// A property one can observe on a part.
struct Character {
  Id<Character> id;
  std::string key;    // "cord_type"; unique in the show; lower case, underscores
  std::string label;  // "Cord"
  Word part;          // kind of part it belongs to; none: the piece as a whole
  Shape shape = Shape::category;
  std::string unit;          // "mm", "g"; empty unless a number
  bool replaceable = false;  // belongs to a part that is often changed later
  double minutes = 2;        // what one look costs
};

// The ordered variants of one character (a legend shortened step by step), oldest first.
struct Lineage {
  Id<Lineage> id;
  Id<Character> character;
  Id<Maker> maker;  // none: everybody's
  std::vector<Word> variants;
  Id<Source> source;
};

// "This fitting from about 1946 to about 1958, says SOURCE."
struct Window {
  Id<Window> id;
  Id<Character> character;
  Word value;
  std::optional<Year> from;  // none: open
  std::optional<Year> to;
  Id<Source> source;
};

enum class MakerKind { person, workshop, firm, unrecorded };

// A person or workshop; the working span has its own uncertainty.
struct Maker {
  Id<Maker> id;
  std::string key;       // unique; what import files and commands say
  std::string name;      // natural order: "Oda Vessen"
  std::string inverted;  // "Vessen, Oda"
  MakerKind kind = MakerKind::person;
  Word place;
  std::optional<Year> from;  // working years as documented
  std::optional<Year> to;
  double from_sd = 4;  // years either way
  double to_sd = 4;
  std::string mark;  // the legend of the usual mark
  std::string prose;
  bool living = false;
};

enum class SourceKind { document, publication, oral, piece, own, record };

// A document, publication, oral testimony, or the piece itself.
struct Source {
  Id<Source> id;
  std::string key;
  std::string title;
  SourceKind kind = SourceKind::document;
  std::optional<Year> year;              // when it speaks
  std::vector<Id<Source>> derives_from;  // whom it had it from
  std::optional<double> reliability;     // 0 to 1; none: the default of its kind
  std::string citation;                  // as the bibliography prints it
};

enum class About { piece, maker, character, form };

enum class Says {
  made,       // the subject was made in these years
  made_by,    // the subject is by `maker`, with `qualifier` and `role`
  made_at,    // the subject was made at `word`
  inscribed,  // the piece carries this year
  first,      // `maker` was the first, in these years
  used,       // value `word` of `character` was in use in these years
  design_of,  // value `word` of `character` is `maker`'s
  assembled,  // parts were put together in these years
  judged,     // the curator's own judgement of the year, with a stated weight
  judged_by,  // the curator's own judgement of the maker, with a stated weight
  other,
};

// What a source says. Claims may contradict each other; none is ever overwritten.
struct Claim {
  Id<Claim> id;
  Id<Source> source;
  About about = About::piece;
  std::int32_t subject = 0;  // id of the piece, maker or character; 0 for the form itself
  Says says = Says::other;
  std::string text;          // as written
  std::optional<Year> from;  // bounds as understood; none: open or unsaid
  std::optional<Year> to;
  bool approximate = false;
  Id<Maker> maker;
  Word qualifier;  // "attributed to", "workshop of" ...; none: the name alone
  Word role;       // "designer", "stone cutter" ...
  Word word;
  Id<Character> character;
  std::optional<double> weight;  // a stated reliability for this claim alone
  bool negative = false;         // the source speaks against it
  Word by;
  DayNumber day = unknown_day;
  Id<Claim> supersedes;
};

enum class EventKind {
  acquired,
  commissioned,
  awarded,
  altered,
  lent,
  exhibited,
  photographed,
  patented,
  other
};

// Something that happened to a piece (or, with no piece, to the form), dated as written.
struct Event {
  Id<Event> id;
  Id<Piece> piece;
  EventKind kind = EventKind::other;
  std::string date;  // as written, EDTF or free text
  std::optional<Year> from;
  std::optional<Year> to;
  Word party;
  Word place;
  std::string text;
  Id<Source> source;
  Id<Event> supersedes;
};

}  // namespace backmark::model
