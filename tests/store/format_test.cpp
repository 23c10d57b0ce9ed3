#include <doctest/doctest.h>

#include "base/file.h"
#include "base/text.h"
#include "store/fields.h"
#include "store/store.h"

using namespace backmark;

TEST_CASE("the description of the file names every table, each with all its columns") {
  const auto text = read_file(Path(BACKMARK_SOURCE_DIR) / "docs/formats/show-db.md");
  REQUIRE(text);
  CHECK(contains(*text, fmt::format("shape, now {}.", store::newest_version())));
  const auto look = [&](const auto& rows) {
    using T = typename std::decay_t<decltype(rows)>::value_type;
    const std::string head = fmt::format("\n| `{}` |", store::table<T>);
    const auto start = text->find(head);
    INFO(head);
    REQUIRE(start != std::string::npos);
    const std::string line = text->substr(start, text->find('\n', start + 1) - start);
    const T row{};
    store::fields_of(row, [&](std::string_view name, const auto&) {
      INFO(name);
      CHECK((name == "id" || contains(line, fmt::format("`{}`", name))));
    });
  };
  std::apply([&](const auto&... rows) { (look(rows), ...); }, model::Records{});
}
