// What other people's readers make of a PDF. Poppler and qpdf are of scripts/install-packages.
#pragma once

#include <array>
#include <cstdio>
#include <doctest/doctest.h>
#include <filesystem>
#include <string>

#include "base/file.h"

namespace backmark::draw {

// What `command` prints of the PDF, whose place in it is %; the exit status in `status`.
inline std::string read_back(const std::string& pdf,
                             std::string command,
                             int* status = nullptr) {
  const Path file = std::filesystem::temp_directory_path() / "backmark-draw-test.pdf";
  REQUIRE(write_file(file, pdf));
  command.replace(command.find('%'), 1, "'" + file.string() + "'");
  std::string text;
  FILE* pipe = popen((command + " 2>&1").c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::array<char, 4096> part{};
  for (std::size_t n = 0; (n = fread(part.data(), 1, part.size(), pipe)) > 0;) {
    text.append(part.data(), n);
  }
  const int code = pclose(pipe);
  if (status != nullptr) {
    *status = code;
  }
  std::filesystem::remove(file);
  return text;
}

}  // namespace backmark::draw
