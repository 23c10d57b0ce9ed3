// Steps of finishing a PDF; for the bodies of this room only.
#pragma once

#include <qpdf/QPDF.hh>
#include <qpdf/QPDFPageObjectHelper.hh>
#include <vector>

#include "draw/canvas_inside.h"
#include "draw/pdf.h"

namespace backmark::draw {

// Writes the structure tree, and into the pages which stretch belongs to which element; what
// belongs to none becomes an artifact (ISO 32000-1, 14.8.2.2). Cairo's own tree goes. Nothing
// is done for a document without elements.
void write_structure(QPDF& pdf,
                     const std::vector<QPDFPageObjectHelper>& pages,
                     const Structure& structure);

// One page's content with Cairo's numbers replaced: the stretch numbered n gets properties[n].
std::string with_stretches(const std::string& content,
                           const std::vector<std::string>& properties);

// Puts the inlays, which are used up, in the places of the pixels that stand for them.
void write_inlays(QPDF& pdf, std::vector<Inlay>& inlays);

// The output intent: sRGB (IEC 61966-2-1) with the profile itself.
void write_output_intent(QPDF& pdf);

// Page labels (ISO 32000-1, 12.4.2).
void write_page_labels(QPDF& pdf, const std::vector<PageLabels>& labels);

}  // namespace backmark::draw
