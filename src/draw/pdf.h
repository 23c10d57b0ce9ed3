// Finishing a PDF: what Cairo wrote, with outline, links, boxes and metadata.
#pragma once

#include <string>

#include "base/result.h"
#include "draw/canvas.h"

namespace backmark::draw {

struct PdfInfo {
  std::string title;
  std::string author;
  std::string subject;
  std::string language = "en";
};

// Ends a pages() canvas and returns the bytes of the PDF: the canvas's outline, links and
// addresses, trim and bleed box on each page, language, title shown in the window, document
// information and the same as XMP. No clock is read and the file's ID comes from its content,
// so the same drawing gives the same bytes. A link to a destination that was never set is a
// Problem (refused) naming it.
Result<std::string> finish_pdf(Canvas& canvas, const PdfInfo& info);

}  // namespace backmark::draw
