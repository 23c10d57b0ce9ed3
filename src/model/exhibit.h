// What is shown and printed, on whose leave, and in whose keeping.
#pragma once

#include <optional>
#include <string>

#include "base/amount.h"
#include "model/id.h"
#include "model/piece.h"

namespace backmark::model {

// A chapter of the show, in order of `rank`.
struct Section {
  Id<Section> id;
  std::string key;
  std::string title;
  std::int32_t rank = 0;
  std::string introduction;  // Markdown, 60 to 150 words
};

// That a piece is in the show, in the book, or both; `rank` orders pieces within their section.
struct Pick {
  Id<Pick> id;
  Id<Piece> piece;
  Id<Section> section;
  bool in_show = true;
  bool in_book = true;
  bool lead = false;  // deserves a spread
  std::int32_t rank = 0;
};

struct Lender {
  Id<Lender> id;
  std::string code;     // "Lender 14": may be printed in captions and the concordance
  std::string name;     // private unless the credit says otherwise
  std::string address;  // private
  std::string credit;   // as signed; empty: "Lent by a private collector"
};

struct Loan {
  Id<Loan> id;
  Id<Piece> piece;
  Id<Lender> lender;
  DayNumber from = unknown_day;
  DayNumber to = unknown_day;
  DayNumber return_by = unknown_day;
  std::string conditions;
  bool signed_paper = false;
};

// An opinion of worth, with its day and basis; never an appraisal, never on a public paper.
struct ValueOpinion {
  Id<ValueOpinion> id;
  Id<Piece> piece;
  Money worth;
  std::string basis;
  DayNumber day = unknown_day;
  Word by;
};

// A state seen on a day by someone, in the agreed words.
struct Condition {
  Id<Condition> id;
  Id<Piece> piece;
  Word part;   // kind of part
  Word state;  // one of the agreed words
  std::string text;
  double x_mm = 0;  // where, from the centre of the front or back
  double y_mm = 0;
  View view = View::front;
  DayNumber day = unknown_day;
  Word by;
};

enum class Use { show, print, web, examine, photograph };
enum class Leave { asked, given, refused };

// What may be done with a piece, a photograph or a text. No answer means no.
struct Permission {
  Id<Permission> id;
  std::int32_t subject = 0;  // id of a piece, photograph, maker or source
  Use use = Use::print;
  Leave leave = Leave::asked;
  std::string terms;
  std::string credit;  // as it must stand beside what is used; empty: none asked for
  DayNumber day = unknown_day;
  Word by;
};

// The curator's own phrase over the reckoned one; shown as theirs, with initials.
struct Overruling {
  Id<Overruling> id;
  Id<Piece> piece;
  enum class Of { year, maker } of = Of::year;
  std::string phrase;
  std::string reason;
  std::string initials;
  DayNumber day = unknown_day;
};

// A setting of the show: "title", "opens", "house", "author", "years.first" ...
struct Setting {
  Id<Setting> id;
  std::string key;
  std::string value;
};

}  // namespace backmark::model
