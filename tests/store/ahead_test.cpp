#include "store/ahead.h"

#include <doctest/doctest.h>
#include <filesystem>

#include "store/show_on_disk.h"
#include "store/store.h"

using namespace backmark;

namespace {

void add_piece(const Path& folder, const std::string& number) {
  auto store = store::Store::open(folder, store::Access::change);
  REQUIRE(store);
  const auto show = store->load();
  model::Change change(*show, "add", number);
  change.add(model::Piece{.number = number});
  REQUIRE(store->apply(change, "ines", 1));
}

}  // namespace

TEST_CASE("a show that is read while it is written is one file again when that ends") {
  const ShowFolder folder;
  REQUIRE(store::create(folder.path()));
  const Path beside = folder.path() / "show.db-wal";
  {
    const store::Ahead ahead(folder.path());
    add_piece(folder.path(), "ES 1");
    CHECK(std::filesystem::exists(beside));
    auto reading = store::Store::open(folder.path(), store::Access::look);
    REQUIRE(reading);
    CHECK(reading->load()->piece("ES 1") != nullptr);
  }
  CHECK_FALSE(std::filesystem::exists(beside));
  auto after = store::Store::open(folder.path(), store::Access::look);
  REQUIRE(after);
  CHECK(after->load()->piece("ES 1") != nullptr);
}

TEST_CASE("where no show can be opened, reading ahead changes nothing") {
  const ShowFolder folder;
  { const store::Ahead ahead(folder.path()); }
  CHECK_FALSE(std::filesystem::exists(folder.path() / "show.db"));
}
