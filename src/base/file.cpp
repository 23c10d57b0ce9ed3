#include "base/file.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <fstream>
#include <sstream>
#include <unistd.h>

namespace backmark {

namespace {

Problem io_problem(const Path& path, std::string_view what) {
  return {Fault::io, std::string(what) + ": " + std::strerror(errno), path.string(),
          "check that the folder exists, has room and may be written"};
}

bool write_all(int file, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t count = ::write(file, bytes.data(), bytes.size());
    if (count < 0) {
      return false;
    }
    bytes.remove_prefix(static_cast<std::size_t>(count));
  }
  return true;
}

}  // namespace

Result<std::string> read_file(const Path& path) {
  std::error_code error;
  if (!std::filesystem::exists(path, error)) {
    return Problem{Fault::not_found, "there is no such file", path.string(),
                   "check the name and the folder"};
  }
  if (std::filesystem::is_directory(path, error)) {
    return Problem{Fault::io, "this is a folder, not a file", path.string(), "name a file"};
  }
  std::ifstream stream(path, std::ios::binary);
  std::ostringstream bytes;
  bytes << stream.rdbuf();
  if (!stream) {
    return Problem{Fault::io, "the file cannot be read", path.string(),
                   "check its permissions"};
  }
  return std::move(bytes).str();
}

Result<Done> write_file(const Path& path, std::string_view bytes) {
  Path beside = path;
  beside += ".part-" + std::to_string(::getpid());
  const int file = ::open(beside.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0644);
  if (file < 0) {
    return io_problem(path, "the file cannot be written");
  }
  const bool written = write_all(file, bytes) && ::fsync(file) == 0;
  const bool closed = ::close(file) == 0;
  if (!written || !closed || std::rename(beside.c_str(), path.c_str()) != 0) {
    const Problem problem = io_problem(path, "the file cannot be written");
    ::unlink(beside.c_str());
    return problem;
  }
  return Done{};
}

}  // namespace backmark
