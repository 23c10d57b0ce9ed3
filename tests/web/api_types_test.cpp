#include "web/api_types.h"

#include <cstdlib>
#include <doctest/doctest.h>

#include "base/file.h"
#include "base/text.h"

using namespace backmark;

TEST_CASE("the pages know every operation with the fields that it takes today") {
  const Path file = Path(BACKMARK_SOURCE_DIR) / "web/src/api.ts";
  if (std::getenv("BACKMARK_KEEP") != nullptr) {
    REQUIRE(write_file(file, web::api_types()));
  }
  const auto kept = read_file(file);
  REQUIRE(kept);
  INFO("run this test once with BACKMARK_KEEP=1, look at the difference, and commit the file");
  CHECK(*kept == web::api_types());
  CHECK(contains(*kept, "'pick': {"));
  CHECK_FALSE(contains(*kept, "'demo'"));
}
