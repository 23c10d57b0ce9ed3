// What each column of a spreadsheet is. Written as TOML:
//
//   rows = "pieces"                      # or "makers", "sources", "observations",
//                                        # "windows"
//   source = "dealer-list"               # what the file is called among the sources
//   [columns]
//   "heading" = "number"                                  # a target word
//   "heading" = { character = "material", split = ";" }   # a table with more to say
//   "heading" = [ "title", { character = "kind" } ]       # several things at once
//   [options]
//   unknown = ["", "n/a"]                # cells that say nothing
//   none = ["none"]                      # looked for, and not there
//   cannot_tell = ["?"]                  # looked at, and undecidable
//   decimal = ","                        # or "."; left out: found out from the cells
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "model/knowledge.h"

namespace backmark::exchange {

enum class RowsOf { pieces, makers, sources, observations, windows };

// What a cell may be. The words of the map are these, with hyphens.
enum class Target {
  // pieces
  number,
  title,
  form,
  maker,
  made,
  made_from,
  made_to,
  mark,
  place,
  acquired,
  note,
  lot,
  lender,
  tray,
  character,
  measure,
  // makers
  key,
  name,
  inverted,
  kind,
  from,
  to,
  dates,
  prose,
  // sources (and key, title, kind)
  year,
  derives_from,
  reliability,
  citation,
  // observations (and number, character)
  part,
  value,
  certainty,
  how,
  by,
  // windows (and character, value, from, to)
  source,
  // read and left alone on purpose: kept in the file's row only
  ignore,
};

// One thing that a column says.
struct ColumnRule {
  std::string heading;
  Target target = Target::note;
  std::string key;                 // of the character or measure
  std::string label;               // for people; empty: made from the key
  std::vector<std::string> split;  // separators; empty: the cell is one value
  std::string part;                // kind of part the character is on
  std::optional<model::Shape> shape;
  bool lower = true;  // vocabulary words are kept in lower case
  std::string unit;   // of a measure that names none: mm, cm, in, ft, g, kg, oz, dwt
  std::vector<std::string> order;  // measures of an unlabelled "a x b x c"
  // maker: columns in step with this one
  std::string roles;
  std::string qualifiers;
  bool inverted = false;  // "Vessen, Oda" is written family name first
};

struct ImportMap {
  RowsOf rows = RowsOf::pieces;
  std::string source;  // key of the Source that stands for the file
  std::string title;   // of that Source
  std::vector<ColumnRule> columns;
  std::vector<std::string> unknown{""};
  std::vector<std::string> none;
  std::vector<std::string> cannot_tell;
  char decimal = 0;  // 0: found out
  std::string form;  // what every piece of the file is, unless a column says so
  std::string text;  // the map as it was read, to notice that it changed

  // Whether a column is named by a rule or by a rule's roles or qualifiers.
  bool names(std::string_view heading) const;
};

// `name` is the map's file name: for messages, and the source's key if the map gives none.
// Problems: bad_input (not TOML, with the line; an unknown word, with the nearest known one; a
// unit that is none; a map of pieces without a number).
Result<ImportMap> read_map(std::string_view text, const std::string& name);

// A text as the TOML of a map writes it.
std::string quoted(std::string_view text);

}  // namespace backmark::exchange
