// Photographs as the pages ask for them; small copies are made once and kept in photos/.small,
// which may be thrown away at any time.
#pragma once

#include <cstdint>
#include <mutex>
#include <set>

#include "base/file.h"
#include "model/show.h"
#include "web/http.h"

namespace backmark::web {

class Shelf {
 public:
  explicit Shelf(const Path& show) : photos_(show / "photos") {}

  // /photo/NUMBER/VIEW?size=32|64|128|256|512|full; with &v=ANYTHING a browser may keep it for
  // a year. A picture of a piece that its community has not cleared is refused
  // (desk/cleared.h).
  Response photograph(const Request& request, const model::Show& show);

 private:
  bool is_hidden(const model::Show& show, const model::Photograph& photograph);
  Response original(const Request& request, const Path& file, const std::string& tag);
  Response small(const Request& request, const Path& file, const std::string& tag, int size);
  Result<Done> make_small(const Path& file, const std::string& tag);

  Path photos_;
  std::mutex making_;
  std::mutex asking_;
  std::int64_t asked_at_ = -1;  // the place in the book that `hidden_` is of
  std::set<model::Id<model::Photograph>> hidden_;
};

}  // namespace backmark::web
