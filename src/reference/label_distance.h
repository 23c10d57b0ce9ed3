// Sizes of type, label and paper for the distance a label is read from.
#pragma once

#include <string>
#include <vector>

namespace backmark::reference {

// Type in points; label and paper in millimetres.
struct LabelDistance {
  double distance_mm = 0;
  bool section = false;  // a label of a section, not of a piece
  double text_pt = 0;
  double title_pt = 0;
  double number_pt = 0;  // 0: no number is set at this distance
  double credit_pt = 0;
  double label_width_mm = 0;
  double label_height_mm = 0;
  double paper_width_mm = 0;
  double paper_height_mm = 0;
  int across = 1;  // labels a sheet
  int down = 1;
  std::string source;
  std::string status;
};

// Rows of label-distances.csv: those for pieces by rising distance, then one for sections.
const std::vector<LabelDistance>& label_distances();

}  // namespace backmark::reference
