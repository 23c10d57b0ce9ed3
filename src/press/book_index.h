// The index of a book as a value: what is named, and on which pages. Pages come from whoever
// laid them out; this file sorts, joins and words.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "press/prose.h"
#include "words/fact.h"

namespace backmark::press {

// One mention. Heads of kinds that share a spelling stay apart.
struct IndexMention {
  std::string head;  // "Vessen, Oda", "shell"
  std::string sub;   // "as a mark", or empty
  int page = 0;
  bool plate = false;      // a picture of it: told apart by weight
  std::string among = {};  // the sub-entry it has under a head with too many locators
};

struct IndexLocator {
  int first = 0;
  int last = 0;
  bool plate = false;

  friend bool operator==(const IndexLocator&, const IndexLocator&) = default;
};

struct IndexSub {
  std::string words;
  std::vector<IndexLocator> locators;
};

struct IndexHead {
  std::string words;
  std::vector<IndexLocator> locators;
  std::vector<IndexSub> subs;
  std::string see;  // "see" another head, in place of locators
};

// "Oda Vessen see Vessen, Oda": a spelling under which somebody may look.
struct IndexSee {
  std::string from;
  std::string to;
};

// Heads letter by letter (spaces, stops and hyphens do not count, accents and case do not
// decide); locators in order, neighbouring pages joined, plates apart; a plate's page is not
// also named bare. A head with more locators than a reader will follow is split by what its
// mentions are among. Sub-entries by their first word that is not "a", "an", "and", "as", "by",
// "in", "of", "on", "the", "with". A see that leads to no head is left out.
inline constexpr std::size_t most_bare_locators = 8;
std::vector<IndexHead> make_index(std::vector<IndexMention> mentions,
                                  const std::vector<IndexSee>& sees = {});

// "12, 158–161": both ends in full.
std::string locator_text(const IndexLocator& locator);

// Heads with more bare locators than a reader will follow: one Problem each.
Problems crowded(const std::vector<IndexHead>& index);

// What the facts of a piece put into an index: its makers, place, materials, techniques, motifs
// and legends, by head and sub-entry, among pieces of its motif (a motif among those of its
// stone or metal); pages are 0.
std::vector<IndexMention> index_terms(const model::Show& show,
                                      const model::Beliefs& beliefs,
                                      const model::Piece& piece);

// Locators whose page does not hold the head's first word, in any case of letters; `pages` are
// the texts of the pages, page 1 first. Plates are not looked for.
Problems not_on_pages(const std::vector<IndexHead>& index,
                      const std::vector<std::string>& pages);

}  // namespace backmark::press
