// Works cited, in words: short titles for notes and entries, and the list at the end of a book
// in the order of elements of ISO 690 (from memory: creator, title, edition, place: publisher,
// year, numbering, pages, series, access, identifier).
#pragma once

#include <string>
#include <vector>

#include "model/reference.h"

namespace backmark::words {

enum class CitationVoice { roman, italic, small_caps };

struct CitationRun {
  std::string text;
  CitationVoice voice = CitationVoice::roman;

  friend bool operator==(const CitationRun&, const CitationRun&) = default;
};

// "Rell 1951", "Rell and Corrow 1951", "Rell and others 1951"; without a name the title stands
// for it. `locator` as the writer gave it: "12" becomes "p. 12", "12-14" "pp. 12–14", other
// words stay ("plate 3").
std::string short_title(const model::Reference& reference, const std::string& locator = {});

// One line of the list, ending in a full stop. Creators in small caps, the name of what can be
// found on a shelf in italics, a part's title in roman quotes.
std::vector<CitationRun> list_entry(const model::Reference& reference);
std::string plain_entry(const model::Reference& reference);

// Short titles that two works share get a letter after the year, in the order of the list: the
// year of each such work becomes "1951a", "1951b". The list comes back sorted by creator, year,
// title.
std::vector<model::Reference> in_list_order(std::vector<model::Reference> references);

}  // namespace backmark::words
