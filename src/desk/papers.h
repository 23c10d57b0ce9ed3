// What printing and checking papers share.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "desk/open.h"
#include "press/job.h"
#include "words/phrase.h"

namespace backmark::desk {

// The last reckoning in words; without one every piece is undated, and `warning` says so.
struct Phrased {
  model::Beliefs beliefs;
  words::PhraseBook phrases;
  std::string warning;  // a line for the terminal; empty: the reckoning is of this very show
};
Result<Phrased> phrased(OpenShow& open);

// Reads below photos/ only. Problems: those of read_file; refused for a path that leads out.
press::PhotographLoader photographs_in(const Path& show_folder);

// The texts of the show's essays folder, by name; none if there is no such folder. Problems:
// io.
Result<std::vector<press::TextFile>> texts_in(const Path& show_folder);

// Whether the grammar words a kind of fact for one piece alone; other kinds (values,
// conditions, what a piece is compared with) are compared between papers only.
bool is_worded(words::FactKind kind);

// What was printed, kept beside it as prints/facts-checklist.json.
struct PrintRecord {
  std::string output;
  words::Audience audience = words::Audience::public_;
  std::int64_t version = 0;        // Show::position
  std::vector<std::string> files;  // names below prints/
  std::vector<press::PrintedFact> facts;
};
Result<Done> write_record(const Path& prints, const PrintRecord& record);
// Of every paper that was printed. Problems: io; bad_input, naming the file.
Result<std::vector<PrintRecord>> read_records(const Path& prints);

// The text of a PDF, by pdftotext of poppler-utils. Problems: not_found (no such tool, with the
// package), bad_input (not a PDF).
Result<std::string> pdf_text(const Path& file);

}  // namespace backmark::desk
