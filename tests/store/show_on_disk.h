// A folder of its own for each test, gone afterwards.
#pragma once

#include <filesystem>
#include <string>
#include <unistd.h>

namespace backmark {

class ShowFolder {
 public:
  ShowFolder() {
    static int count = 0;
    path_ = std::filesystem::temp_directory_path() /
            ("backmark-test-" + std::to_string(::getpid()) + "-" + std::to_string(++count));
    std::filesystem::remove_all(path_);
  }
  ~ShowFolder() { std::filesystem::remove_all(path_); }
  ShowFolder(const ShowFolder&) = delete;
  ShowFolder& operator=(const ShowFolder&) = delete;
  const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

}  // namespace backmark
