// What a printing needs and what comes out of it: values in, bytes out, no file system.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "draw/fonts.h"
#include "draw/picture.h"
#include "model/belief.h"
#include "model/look.h"
#include "model/reference.h"
#include "model/show.h"
#include "press/agreement.h"
#include "press/planned_work.h"
#include "words/audience.h"
#include "words/phrase.h"

namespace backmark::press {

// Gives the bytes of a photograph of the show (PNG or JPEG). Problems: as reading a file. May
// be called by several threads at once.
using PhotographLoader = std::function<Result<std::string>(const model::Photograph&)>;

// A text of the show folder that is no record: an essay, the glossary, the references.
struct TextFile {
  std::string path;  // below the show folder: "essays/glossary.md"
  std::string text;
};

// What the reckoning has to say for one piece's year and maker: evidence, most pull first, and
// the dated or named pieces most like it, nearest first.
struct Grounds {
  std::vector<model::EvidenceLine> lines;
  std::vector<model::Comparandum> comparanda;
};

// Everything is lent for the length of the call.
struct PressJob {
  const model::Show& show;
  const model::Beliefs& beliefs;
  const words::PhraseBook& phrases;
  const draw::Fonts& fonts;
  PhotographLoader photograph;
  words::Audience audience = words::Audience::public_;
  model::DayNumber day = model::unknown_day;  // the day of printing
  std::string only = {};                      // a lender's code for papers made for one lender
  std::vector<TextFile> texts = {};           // of the show's essays folder, by path
  std::vector<model::Reference> references = {};  // the works that its texts may cite
  const model::LookList* looks = nullptr;         // what to look at next, for the look list
  const PlannedWork* work = nullptr;              // for the schedule; null: nothing to plan for
  // The grounds of a piece, for the book's entries; empty: nobody asked. May be called by
  // several threads at once.
  std::function<Grounds(model::Id<model::Piece>)> grounds = {};
  unsigned threads = 0;  // that make pictures ready; 0: as many as there are cores

  // A setting of the show as a number; `otherwise` if unset or no number.
  double number_setting(std::string_view key, double otherwise) const;
};

struct PrintedFile {
  std::string name;  // "checklist.pdf"
  std::string bytes;
};

struct Printed {
  std::vector<PrintedFile> files;
  Problems findings;               // what gave way, or is missing; the paper still came out
  std::vector<PrintedFact> facts;  // every fact set, for the agreement check
};

// "3 March 2031"; "no day" if unknown.
std::string day_text(model::DayNumber day);
// "3 Mar 2031", for narrow columns.
std::string short_day_text(model::DayNumber day);
// The day of a setting such as "2027-06-26"; nothing if it is none.
std::optional<model::DayNumber> parse_day(std::string_view text);

// The photograph of a view, decoded, or nothing: a missing or broken file becomes a finding. A
// piece without a photograph of the view is no finding here.
std::optional<draw::Picture> picture_of(const PressJob& job,
                                        const model::Photograph& photograph,
                                        Problems& findings);
// The first photograph of the view, or null.
const model::Photograph* photograph_of(const model::Show& show,
                                       model::Id<model::Piece> piece,
                                       model::View view);

}  // namespace backmark::press
