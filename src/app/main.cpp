#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <iostream>
#include <unistd.h>

#include "cli/command_line.h"
#include "web/serve.h"

namespace {

// Who signs the book of changes: BACKMARK_WHO, else the login name.
std::string who() {
  for (const char* name : {"BACKMARK_WHO", "LOGNAME", "USER"}) {
    const char* value = std::getenv(name);
    if (value != nullptr && *value != '\0') {
      return value;
    }
  }
  return "someone";
}

// BACKMARK_NOW (seconds since 1970) fixes the clock, so that a story prints the same every day.
std::int64_t now() {
  if (const char* fixed = std::getenv("BACKMARK_NOW")) {
    return std::strtoll(fixed, nullptr, 10);
  }
  return std::chrono::duration_cast<std::chrono::seconds>(
             std::chrono::system_clock::now().time_since_epoch())
      .count();
}

void show_progress(double share, std::string_view what) {
  std::cerr << '\r' << static_cast<int>(share * 100) << " % " << what << "\x1b[K";
  if (share >= 1) {
    std::cerr << "\r\x1b[K";
  }
  std::cerr.flush();
}

}  // namespace

int main(int argc, char** argv) {
  backmark::desk::Surroundings surroundings;
  surroundings.who = who();
  surroundings.now = now();
  surroundings.clock = now;
  std::error_code error;
  surroundings.program_folder =
      std::filesystem::read_symlink("/proc/self/exe", error).parent_path();
  if (::isatty(STDERR_FILENO) != 0) {
    surroundings.progress = show_progress;
  }
  return backmark::cli::run(std::vector<std::string>(argv + 1, argv + argc), surroundings,
                            {backmark::web::serve_show(), backmark::web::set_passphrase()},
                            std::cout, std::cerr);
}
