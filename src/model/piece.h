// Pieces and what is seen on them.
#pragma once

#include <string>

#include "base/amount.h"
#include "model/id.h"

namespace backmark::model {

struct Character;
struct Lender;
struct Maker;
struct Source;

// One catalogued thing; `number` is unique in its show and is what people say.
struct Piece {
  Id<Piece> id;
  std::string number;
  std::string title;
  Word form;  // "slide tie", "clasp", "brooch", "pendant" ...
  Word lot;   // pieces that came as one set, pair or purchase; weighed as one
  Word tray;  // where it lies; private
  Id<Lender> lender;
  std::string prose;  // what the book says of it, Markdown; facts are never typed here
};

enum class Originality { unknown, original, replaced };

// Something a piece is put together from; a replaced part dates the part, not the piece.
struct Part {
  Id<Part> id;
  Id<Piece> piece;
  Word kind;  // "ornament", "fitting", "cord", "tip", "stone"
  Originality originality = Originality::unknown;
};

// Not recorded (no observation), looked for and not there, and looked at but undecidable are
// three different things; only the first has no row.
enum class Seen { value, none, cannot_tell };

enum class How { unsaid, eye, loupe, caliper, scale, lamp, magnet, record, told };

// What was seen. Never overwritten: a later one supersedes it, or it is withdrawn.
struct Observation {
  Id<Observation> id;
  Id<Piece> piece;
  Id<Part> part;  // none: the piece as a whole
  Id<Character> character;
  Word value;           // a word of the vocabulary, or the text; unused for numbers
  double number = 0;    // in the character's unit
  float certainty = 1;  // 0 to 1: the observer's own "am I sure of what I saw"
  Seen seen = Seen::value;
  How how = How::unsaid;
  Word by;
  DayNumber day = unknown_day;
  Id<Source> source;
  Id<Observation> supersedes;
};

enum class MarkKind { stamp, engraving, signature, printed };

// A stamp, engraving or signature. `text` as it stands: lost letters in [brackets].
struct Mark {
  Id<Mark> id;
  Id<Piece> piece;
  Id<Part> part;
  MarkKind kind = MarkKind::stamp;
  Seen seen = Seen::value;
  std::string text;
  Word place;    // "back, below the fitting"
  Word outline;  // shape of the punch: "rectangle", "oval" ...
  float certainty = 1;
};

enum class View { front, back, tips, mark, side, detail };

// A picture in the show's photos folder, with its true scale.
struct Photograph {
  Id<Photograph> id;
  Id<Piece> piece;
  View view = View::front;
  std::string file;          // below photos/
  double pixels_per_mm = 0;  // 0: no scale known
  std::int32_t width_px = 0;
  std::int32_t height_px = 0;
  std::string credit;
};

// A cell that the import map did not name: kept, never dropped.
struct Note {
  Id<Note> id;
  Id<Piece> piece;
  Word heading;
  std::string text;
};

// What an imported file says of one subject, cell by cell as written. It tells a later import
// which cells of the file changed, so that nothing the curator has done since is undone, and it
// lets an export give every cell back as it was. One for each file and subject.
struct Row {
  Id<Row> id;
  Id<Source> source;         // the file
  std::int32_t subject = 0;  // id of the piece, maker or source
  std::string cells;         // a JSON object, heading to cell; cells that say nothing are left out
};

}  // namespace backmark::model
