// Where English words may be divided.
#pragma once

#include <memory>
#include <string_view>
#include <vector>

#include "base/file.h"
#include "base/result.h"

namespace backmark::draw {

// Patterns of libhyphen with a list of our own words before them (lap-i-dary, crafts-man-ship).
class Hyphens {
 public:
  // Problem: not_found, naming the package hyphen-en-us.
  static Result<Hyphens> load();

  Hyphens(Hyphens&&) noexcept;
  Hyphens& operator=(Hyphens&&) noexcept;
  ~Hyphens();

  // Byte offsets in a word of plain lower-case letters; at least 2 letters before and 3 after.
  // Nothing for words under 6 letters or with a capital, a figure or any other sign.
  std::vector<std::size_t> points(std::string_view word) const;

 private:
  struct Inside;
  explicit Hyphens(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

}  // namespace backmark::draw
