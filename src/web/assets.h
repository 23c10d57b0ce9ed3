// The built pages, as bytes within the program.
#pragma once

#include <string_view>
#include <vector>

namespace backmark::web {

struct Asset {
  std::string_view name;  // "index.html", "app.js", "fonts/word.woff2"
  std::string_view bytes;
  std::string_view tag;  // changes with the bytes
};

const std::vector<Asset>& assets();
// Null if there is none of that name.
const Asset* asset(std::string_view name);
// "text/css; charset=utf-8" of "app.css".
std::string_view type_of(std::string_view name);

}  // namespace backmark::web
