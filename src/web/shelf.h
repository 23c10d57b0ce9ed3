// Photographs as the pages ask for them; small copies are made once and kept in photos/.small,
// which may be thrown away at any time.
#pragma once

#include <mutex>

#include "base/file.h"
#include "model/show.h"
#include "web/http.h"

namespace backmark::web {

class Shelf {
 public:
  explicit Shelf(const Path& show) : photos_(show / "photos") {}

  // /photo/NUMBER/VIEW?size=32|64|128|256|512|full; with &v=ANYTHING a browser may keep it for
  // a year.
  Response photograph(const Request& request, const model::Show& show);

 private:
  Response original(const Request& request, const Path& file, const std::string& tag);
  Response small(const Request& request, const Path& file, const std::string& tag, int size);
  Result<Done> make_small(const Path& file, const std::string& tag);

  Path photos_;
  std::mutex making_;
};

}  // namespace backmark::web
