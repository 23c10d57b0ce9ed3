// Finishing a PDF: what Cairo wrote, with outline, links, boxes, structure and metadata.
#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "draw/canvas.h"

namespace backmark::draw {

// What pages are called from one on: "i, ii, iii" or "1, 2, 3".
struct PageLabels {
  enum class Style { arabic, roman };
  int from_page = 0;  // counted from 0; the first of a list is 0
  Style style = Style::arabic;
  int first = 1;  // the number of that page
};

struct PdfInfo {
  std::string title;
  std::string author;
  std::string subject;
  std::string language = "en";
  std::vector<PageLabels> labels = {};  // in order of pages; empty: counted from 1
};

// Ends a pages() canvas and returns the bytes of the PDF: the canvas's outline, links and
// addresses, structure, trim and bleed box on each page, page labels, language, title shown in
// the window, sRGB as output intent, document information and the same as XMP. No conformance
// to PDF/A, PDF/X or PDF/UA is claimed. No clock is read and the file's ID comes from its
// content, so the same drawing gives the same bytes. A link to a destination that was never set
// is a Problem (refused) naming it.
Result<std::string> finish_pdf(Canvas& canvas, const PdfInfo& info);

}  // namespace backmark::draw
