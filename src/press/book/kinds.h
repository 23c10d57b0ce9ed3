// The visible list of the kinds of page, in the order of the book. To add one: a file with one
// function here below, a line in kinds.cpp, a test.
#pragma once

#include <string_view>
#include <vector>

#include "press/book/layout.h"

namespace backmark::press::book {

struct Kind {
  std::string_view name;
  void (*lay)(Layout& book);
};

const std::vector<Kind>& kinds();

// Title and half title, with what must stand on the back of the title.
void lay_title(Layout& book);
// Page numbers right-aligned before the titles; no leaders.
void lay_contents(Layout& book);
// One page: what is true size, how a back faces its front, the words for doubt.
void lay_how_to_read(Layout& book);
// Every essay of the show's essays folder.
void lay_essays(Layout& book);
// Section by section: opener, then entries.
void lay_entries(Layout& book);
// The note on method, with the table from odds to words.
void lay_method(Layout& book);
// What the show's makers, fittings and pieces are, in years.
void lay_chronology(Layout& book);
// Makers with their years, pieces and marks; unrecorded hands by place; marks of nobody known.
void lay_makers(Layout& book);
// A back of each kind of fitting at one scale, with its years.
void lay_fittings(Layout& book);
// The terms of essays/glossary.md.
void lay_glossary(Layout& book);
// Works that the texts cite.
void lay_bibliography(Layout& book);
// Lender, inventory number, number in the show, case and page.
void lay_concordance(Layout& book);
// Names, places, materials, techniques, motifs and marks. After all that it points to.
void lay_index(Layout& book);
// Pieces, photographs and permissions.
void lay_credits(Layout& book);
// The last page that is printed on.
void lay_colophon(Layout& book);

}  // namespace backmark::press::book
