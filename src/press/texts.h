// All texts of a show's essays folder, read for the book.
#pragma once

#include <vector>

#include "model/reference.h"
#include "press/essay.h"
#include "press/job.h"
#include "words/fact.h"

namespace backmark::press {

struct BookTexts {
  std::vector<Prose> essays;            // in the order of their files
  Prose glossary;                       // of glossary.md; without blocks if there is none
  std::vector<model::Reference> cited;  // by essays and glossary, in the order of the list
  Problems findings;                    // of all of them
};

// Every essays/*.md but the glossary is a chapter. `references` are those of the show in any
// order; works that share a short title are told apart by letters.
BookTexts read_texts(const std::vector<TextFile>& texts,
                     const model::Show& show,
                     const words::Numbering& numbering,
                     const std::vector<model::Reference>& references);

// Prose of the pieces of the book held to their record (words/prose_check.h).
Problems check_entry_prose(const PressJob& job, const words::Grammar& grammar);

}  // namespace backmark::press
