// Reads the texts of the book: CommonMark, of which the book uses a part, and four marks of its
// own.
//
//   # Title                     once, first; under it *the author* on a line of its own, and
//                               perhaps a quotation (> ...) as the epigraph
//   ## Head, ### lower head     paragraphs, > quotations, lists with - or 1.
//   *italics*  **strong**       `small capitals`, for the legend of a mark
//   word.[^1]  and  [^1]: Note  a footnote
//   [@key, 12; @other]          works cited, with what to look at in them
//   [#ES 118]                   the number in the show of a piece, whatever it is today
//   [page #ES 118]              the page of its entry
//   [fig ES 118]                the figure of this chapter that shows the piece first; [Fig ES
//                               118] at the head of a sentence, [fig bench.jpg] for a file
//   [words](https://...)        an address
//   ![Caption](<ES 118 front, ES 20 back>)   alone in a paragraph: a figure; or a file below
//                               photos/ with its credit: ![Caption](bench.jpg "Ina Rell")
//
// Quotes are curved, -- and --- become dashes. HTML, code and rules are not printed.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "model/reference.h"
#include "press/prose.h"
#include "words/numbering.h"

namespace backmark::press {

// What a text may speak of; lent for the length of the call.
struct EssayWorld {
  const model::Show& show;
  const words::Numbering& numbering;
  const std::vector<model::Reference>& references;
  int figures = 0;  // of the chapters before
};

struct Essay {
  Prose prose;
  std::vector<std::string> cited;  // keys, each once, in order
  Problems findings;               // each with file and line; the text still stands
};

// A chapter. Problem: bad_input, if it is not UTF-8 text. Findings: a work that is not in the
// list, a piece that is not in the show or not in the book, emphasis or a mark left open, a
// note without its text or a text without its note, HTML and code, no title.
Result<Essay> read_essay(std::string_view text,
                         const std::string& file,
                         const EssayWorld& world);

// As read_essay, for a text that needs no title: the introduction of a section.
Result<Essay> read_passage(std::string_view text,
                           const std::string& where,
                           const EssayWorld& world);

}  // namespace backmark::press
