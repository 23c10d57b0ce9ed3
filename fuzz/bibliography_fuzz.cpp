#include "exchange/bibliography.h"

// Any bytes are a list of works or a Problem.
extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  (void)backmark::exchange::read_bibliography(text, "any.bib");
  (void)backmark::exchange::read_bibliography(text, "any.json");
  (void)backmark::exchange::without_tex(text);
  return 0;
}
