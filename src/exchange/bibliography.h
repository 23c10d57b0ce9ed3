// Lists of works cited, as reference managers write them.
//
// CSL-JSON: an array of items with "id", "type", "title", names as {family, given} or
// {literal}, "issued" as {"date-parts": [[1957]]} or {"raw": "about 1957"}.
//
// BibTeX:
//   file   = *(text / entry)             entry = "@" type "{" key *("," field) [","] "}"
//   field  = name "=" value *("#" value) value = number / word / "{" ... "}" / '"' ... '"'
// @string gives words, @comment and @preamble are passed over. Accents written as TeX commands
// become letters; other braces and backslashes go.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "model/reference.h"

namespace backmark::exchange {

struct Bibliography {
  std::vector<model::Reference> references;
  Problems faults;  // an item left out, and why; the rest is there
};

// By the name of the file: ".json" or ".bib". Problems: bad_input, if nothing of it can be
// read. A key that comes twice, an item without key or title: a fault each, the first of two
// stays.
Result<Bibliography> read_bibliography(std::string_view text, const std::string& file);

Result<Bibliography> read_csl_json(std::string_view text, const std::string& file);
Result<Bibliography> read_bibtex(std::string_view text, const std::string& file);

// TeX's accents as letters, without braces: "M{\"u}ller" becomes "Müller".
std::string without_tex(std::string_view text);

}  // namespace backmark::exchange
