// EDTF: dates that say how sure they are (Library of Congress, edition of 4 February 2019;
// ISO 8601-2:2019 Annex A), levels 0, 1 and 2.
//
// Forms on which the published examples are silent, and what this reader does:
//   taken:   195X?  2001-21?  -01XX  198X/1985 (ordered under some reading)
//   refused: ../..  /..  ../  / (no dated end)  Y1985 (write 1985)  1950S5 (more digits than
//   the
//            year has)  ..2004-06-01/2004 (a bounded end)  23:59:60
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/edtf_date.h"
#include "base/year.h"

namespace backmark {

enum class EdtfForm {
  date,       // 1985-04
  date_time,  // 1985-04-12T23:20:30Z
  interval,   // 1964/2008
  one_of,     // [1667,1668]: exactly one member
  all_of,     // {1667,1668}: every member
};

// How a side of an expression is bounded. Open: there is no limit, or none is claimed. Unknown:
// there was one and it is not recorded.
enum class EndKind { date, open, unknown };

struct EdtfEnd {
  EndKind kind = EndKind::date;
  DoubtMarks uncertain;    // ? and %
  DoubtMarks approximate;  // ~ and %

  friend bool operator==(const EdtfEnd&, const EdtfEnd&) = default;
};

// A parsed expression. `text` is kept as written: it is what is stored and printed.
struct Edtf {
  std::string text;
  int level = 0;
  EdtfForm form = EdtfForm::date;
  BoundsBasis basis = BoundsBasis::exact;
  // First and last day allowed: the outermost days where there are several candidates. Empty
  // where the end is open or unknown.
  std::optional<CalendarDay> earliest;
  std::optional<CalendarDay> latest;
  // Both ends carry the same marks unless this is an interval.
  EdtfEnd start;
  EdtfEnd end;

  bool uncertain() const { return start.uncertain.any() || end.uncertain.any(); }
  bool approximate() const { return start.approximate.any() || end.approximate.any(); }
};

// edtf     = date / date "T" time / interval / set
// interval = end "/" end            end  = date / ".." (open) / "" (unknown)
// set      = "[" list "]" / "{" list "}"
// list     = member *( "," member ) member = date / date ".." date / ".." date / date ".."
// time     = hh ":" mm ":" ss [ "Z" / ("+" / "-") hh [":" mm] ]
//
// Problems: bad_input; `what` says what is wrong with the text, `fix` how to write it (a habit
// such as "c. 1950" is offered its rewrite). Years reach to eighteen digits.
Result<Edtf> parse_edtf(std::string_view text);

// The same without a rewrite of habits in its Problem: for readers that have their own.
Result<Edtf> parse_strict_edtf(std::string_view text);

// A bound for people and machines: "1985-04-12", "-inf"/"+inf" for an open end, "unknown"; a
// date-time is repeated as written.
std::string earliest_text(const Edtf& edtf);
std::string latest_text(const Edtf& edtf);

}  // namespace backmark
