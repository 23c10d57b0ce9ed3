// Paragraphs that are set once for all passes of the layout, since most come again unchanged.
#pragma once

#include <string>
#include <unordered_map>
#include <vector>

#include "draw/hyphens.h"
#include "draw/paragraph.h"

namespace backmark::press::book {

// What draw::set_ragged and draw::set_justified give, looked up by text, styles and measures.
class SetOnce {
 public:
  const draw::Paragraph& ragged(const draw::Fonts& fonts,
                                const std::vector<draw::Stretch>& text,
                                const draw::Measures& measures);
  const draw::Paragraph& justified(const draw::Fonts& fonts,
                                   const draw::Hyphens& hyphens,
                                   const std::vector<draw::Stretch>& text,
                                   const draw::Measures& measures);

 private:
  std::unordered_map<std::string, draw::Paragraph> known_;
};

}  // namespace backmark::press::book
