// Labels: sizes by the distance they are read from, by one rule that each sheet names.
#pragma once

#include <string>
#include <vector>

#include "press/job.h"

namespace backmark::press {

// Sizes for one reading distance. House rule (common practice level, our own constants): height
// of the x at least distance/192 for text, /135 for the title, /260 for the credit; figures of
// the number at least distance/70 high.
struct LabelRule {
  double distance_mm = 0;
  double text_pt = 0;
  double title_pt = 0;
  double number_pt = 0;
  double credit_pt = 0;
  draw::Size label;
  draw::Size paper;
  int across = 1;  // labels a sheet
  int down = 1;
};

// The rows of reference/label-distances.csv: object labels by distance, then section labels.
const std::vector<LabelRule>& label_rules();
// The rule for the least distance that is not below `distance_mm`; the last object rule beyond.
const LabelRule& object_rule(double distance_mm);
const LabelRule& section_rule();

// Words on a label: aimed at, and refused beyond.
inline constexpr int most_words = 75;
inline constexpr int refused_words = 150;

// Whole sentences from the start of a text, as many as stay within `words`.
std::string first_sentences(std::string_view text, int words);

// Object labels with number tags, section labels, the large-print book, and a table of word
// counts: labels.pdf, number-tags.pdf, section-labels.pdf, large-print.pdf, labels.csv. The
// setting "labels.distance" (mm, default 600) chooses the rule. A label with words of its own
// (a note under "label") that does not fit is left out and found, with the words to cut; type
// never shrinks.
Result<Printed> print_labels(const PressJob& job);

}  // namespace backmark::press
