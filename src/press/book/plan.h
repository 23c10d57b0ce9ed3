// What the book is made from, gathered once: the grid, the texts and the entries in their
// order.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "draw/hyphens.h"
#include "press/book/grid.h"
#include "press/job.h"
#include "press/prose.h"
#include "words/fact.h"

namespace backmark::press::book {

// A piece of the book with its facts as the audience may see them.
struct Entry {
  const words::Place* place = nullptr;
  std::vector<words::Fact> facts;
  const model::Photograph* front = nullptr;
  const model::Photograph* back = nullptr;
  const model::Photograph* tips = nullptr;
  const model::Photograph* mark = nullptr;
  // The size of a piece without front and back, from its measures, in mm; zero: not measured.
  draw::Size measured = {};
  std::string why = {};  // why this maker, why this year; may be empty

  const model::Piece& piece() const { return *place->piece; }
  // Empty if there is none.
  const std::string& fact(words::FactKind kind) const;
  // The name of its place in the book: "piece ES 118".
  std::string name() const { return "piece " + piece().number; }
};

// A section of the show as a part of the book.
struct EntryPart {
  const model::Section* section = nullptr;  // null: pieces without a section
  std::vector<Entry> entries;
};

struct Plan {
  const PressJob& job;
  words::Grammar grammar;
  Grid grid;
  draw::Hyphens hyphens;
  std::vector<Prose> essays;  // in the order of their files
  std::vector<EntryPart> parts;
  Problems findings;                    // met while gathering
  YearSpan years;                       // the span of every band in the book
  Prose glossary;                       // without blocks if there is none
  std::vector<model::Reference> cited;  // by the texts, in the order of the list
  // Pictures of no piece that figures show, by file; their pixels have one millimetre.
  std::map<std::string, model::Photograph> loose;

  const draw::Fonts& fonts() const { return job.fonts; }
  const model::Show& show() const { return job.show; }
};

// Settings of the show: "book.trim" (A or B), "book.bleed" (mm). Problems: those of hyphens.
// Not a problem: a show without essays or picks gives a plan without.
Result<std::unique_ptr<const Plan>> plan_book(const PressJob& job);

}  // namespace backmark::press::book
