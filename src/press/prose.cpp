#include "press/prose.h"

namespace backmark::press {

std::string plain_text(const Words& words) {
  std::string text;
  for (const Span& span : words) {
    text += span.text;
  }
  return text;
}

}  // namespace backmark::press
