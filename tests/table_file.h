// Rows of a CSV with quoted cells, for tests that read outside tables. Empty if there is no file.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "base/file.h"

namespace backmark {

inline std::vector<std::vector<std::string>> read_table(const Path& path) {
  std::vector<std::vector<std::string>> rows;
  const auto bytes = read_file(path);
  if (!bytes) {
    return rows;
  }
  std::vector<std::string> row(1);
  bool quoted = false;
  for (std::size_t i = 0; i < bytes->size(); ++i) {
    const char c = (*bytes)[i];
    if (quoted) {
      if (c == '"' && i + 1 < bytes->size() && (*bytes)[i + 1] == '"') {
        row.back() += '"';
        ++i;
      } else if (c == '"') {
        quoted = false;
      } else {
        row.back() += c;
      }
    } else if (c == '"') {
      quoted = true;
    } else if (c == ',') {
      row.emplace_back();
    } else if (c == '\n') {
      rows.push_back(row);
      row.assign(1, "");
    } else if (c != '\r') {
      row.back() += c;
    }
  }
  return rows;
}

// The rows below the first, each cell by its heading.
inline std::vector<std::map<std::string, std::string>> table_rows(const Path& path) {
  std::vector<std::map<std::string, std::string>> named;
  const auto rows = read_table(path);
  for (std::size_t r = 1; r < rows.size(); ++r) {
    auto& row = named.emplace_back();
    for (std::size_t c = 0; c < rows[0].size(); ++c) {
      row[rows[0][c]] = c < rows[r].size() ? rows[r][c] : "";
    }
  }
  return named;
}

}  // namespace backmark
