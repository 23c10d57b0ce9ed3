#include "web/assets.h"

#include <algorithm>

#include "base/text.h"

namespace backmark::web {

const Asset* asset(std::string_view name) {
  const auto& all = assets();
  const auto at = std::find_if(all.begin(), all.end(),
                               [name](const Asset& one) { return one.name == name; });
  return at == all.end() ? nullptr : &*at;
}

std::string_view type_of(std::string_view name) {
  struct Known {
    std::string_view ending;
    std::string_view type;
  };
  static constexpr Known known[] = {{".html", "text/html; charset=utf-8"},
                                    {".js", "text/javascript; charset=utf-8"},
                                    {".css", "text/css; charset=utf-8"},
                                    {".svg", "image/svg+xml"},
                                    {".woff2", "font/woff2"},
                                    {".png", "image/png"},
                                    {".jpg", "image/jpeg"},
                                    {".json", "application/json; charset=utf-8"},
                                    {".pdf", "application/pdf"},
                                    {".csv", "text/csv; charset=utf-8"},
                                    {".webmanifest", "application/manifest+json"}};
  for (const Known& one : known) {
    if (ends_with(name, one.ending)) {
      return one.type;
    }
  }
  return "application/octet-stream";
}

}  // namespace backmark::web
