#include "base/markup.h"

#include "base/text.h"

namespace backmark {

std::string escaped_markup(std::string text) {
  text = replace_all(std::move(text), "&", "&amp;");
  text = replace_all(std::move(text), "<", "&lt;");
  return replace_all(std::move(text), ">", "&gt;");
}

}  // namespace backmark
