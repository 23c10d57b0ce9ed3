// Setting of single labels; for the bodies of this room only.
#pragma once

#include <string>
#include <vector>

#include "press/labels.h"

namespace backmark::press {

// The words of one label, each line as the entry grammar has it.
struct Label {
  std::string number;            // empty on section labels
  std::string catalogue_number;  // not printed
  std::string title;
  std::vector<std::string> facts;
  std::string text;
  std::string credit;
  int cut = 0;  // words that must go before it fits
};

int words_on(const Label& label);

// 0 if the label fits its rule; else how many words of its text have to go, at least 1. Also
// counts what is over 150 words.
int words_to_cut(const draw::Fonts& fonts, const LabelRule& rule, const Label& label);

// Labels in a grid with crop marks (4 long, 2 off), within `body`.
void show_labels(draw::Canvas& canvas,
                 const draw::Fonts& fonts,
                 const LabelRule& rule,
                 const std::vector<const Label*>& labels,
                 const draw::Box& body);

inline constexpr int tags_across = 8;
inline constexpr int tags_down = 12;
void show_tags(draw::Canvas& canvas,
               const draw::Fonts& fonts,
               const std::vector<std::string>& numbers,
               const draw::Box& body);

// One entry of the large-print book: Inter 18 on 26 points, flush left.
void show_large_print(draw::Canvas& canvas,
                      const draw::Fonts& fonts,
                      const Label& label,
                      const draw::Box& body);

}  // namespace backmark::press
