#include "press/essay.h"

// Any bytes are a text of the book, with findings, or a Problem.
extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  using namespace backmark;
  static const model::Show show;
  static const words::Numbering numbering(show);
  static const std::vector<model::Reference> works{{.key = "a", .title = "A"}};
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  (void)press::read_essay(text, "any.md", {show, numbering, works});
  return 0;
}
