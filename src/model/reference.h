// A work that is cited: what a bibliography prints. Read from other people's formats by
// exchange, worded by words.
#pragma once

#include <string>
#include <vector>

namespace backmark::model {

struct CitedName {
  std::string family;  // empty: only `literal`
  std::string given;
  std::string literal;  // a body, or a name that is not to be turned round

  friend bool operator==(const CitedName&, const CitedName&) = default;
};

enum class ReferenceKind { book, part, article, thesis, report, page, unpublished, spoken };

// Every text as it was read, without markup; empty when not said.
struct Reference {
  std::string key;
  ReferenceKind kind = ReferenceKind::book;
  std::vector<CitedName> authors;
  std::vector<CitedName> editors;
  std::string title;
  std::string host;  // the book or journal that holds it
  std::string edition;
  std::string place;
  std::string publisher;
  std::string year;  // "1957", "about 1960"; of the work
  std::string volume;
  std::string issue;
  std::string pages;
  std::string series;
  std::string holder;      // archive or keeper, unless withheld
  std::string identifier;  // ISBN, DOI
  std::string address;     // a URI
  std::string note;        // for an unpublished thing: what it is

  friend bool operator==(const Reference&, const Reference&) = default;
};

}  // namespace backmark::model
