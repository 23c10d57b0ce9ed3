// The steps by which show.db came to its present shape, oldest first.
#pragma once

#include <string>
#include <vector>

namespace backmark::store {

struct Migration {
  int number = 0;  // the version a show has after it
  std::string sql;
};

// Made at build time from migrations/NNNN_name.sql.
const std::vector<Migration>& migrations();

}  // namespace backmark::store
