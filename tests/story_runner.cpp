// Runs the commands of a story, or of the console examples in a manual page, against the real
// program and compares what they print.
//
//   story_runner PROGRAM_FOLDER SOURCE_FOLDER FILE...
// $SOURCE is the source folder inside the commands.
//
// A story is text; in a .md file only the blocks fenced as ```console count. Lines:
//   $ command            run by sh, in a folder of its own that lasts for the file
//   > more               goes on with the command (a here-document, say)
//   [2]                  the exit status, if it is not 0
//   ...                  any number of lines, also none
//   anything else        a line of what the command prints, on standard output and error
//   together;
//                        "***" in it stands for any text (a time, a path)
//   # words              for the reader
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <string>
#include <string_view>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

namespace {

struct Step {
  int line = 0;
  std::string command;
  std::vector<std::string> expected;
  int status = 0;
};

struct Printed {
  std::vector<std::string> lines;
  int status = 0;
};

bool starts_with(std::string_view text, std::string_view prefix) {
  return text.substr(0, prefix.size()) == prefix;
}

void take_line(const std::string& text, int number, std::vector<Step>& steps) {
  if (starts_with(text, "$ ")) {
    steps.push_back({number, text.substr(2), {}, 0});
  } else if (steps.empty() || starts_with(text, "# ")) {
    return;
  } else if (starts_with(text, "> ") && steps.back().expected.empty()) {
    steps.back().command += "\n" + text.substr(2);
  } else if (text.size() == 3 && text[0] == '[' && text[2] == ']') {
    steps.back().status = text[1] - '0';
  } else {
    steps.back().expected.push_back(text);
  }
}

std::vector<Step> read_steps(const std::filesystem::path& path) {
  std::ifstream stream(path);
  std::vector<Step> steps;
  const bool manual = path.extension() == ".md";
  bool inside = !manual;
  std::string text;
  for (int number = 1; std::getline(stream, text); ++number) {
    if (manual && starts_with(text, "```")) {
      inside = !inside && text == "```console";
    } else if (inside) {
      take_line(text, number, steps);
    }
  }
  for (Step& step : steps) {
    while (!step.expected.empty() && step.expected.back().empty()) {
      step.expected.pop_back();
    }
  }
  return steps;
}

Printed run(const std::string& command) {
  Printed printed;
  FILE* pipe = ::popen(("{ " + command + "\n} 2>&1").c_str(), "r");
  std::string line;
  for (int c = std::fgetc(pipe); c != EOF; c = std::fgetc(pipe)) {
    if (c == '\n') {
      printed.lines.push_back(line);
      line.clear();
    } else {
      line += static_cast<char>(c);
    }
  }
  if (!line.empty()) {
    printed.lines.push_back(line);
  }
  const int status = ::pclose(pipe);
  printed.status = WIFEXITED(status) ? WEXITSTATUS(status) : 128;
  while (!printed.lines.empty() && printed.lines.back().empty()) {
    printed.lines.pop_back();
  }
  return printed;
}

bool line_fits(std::string_view pattern, std::string_view text) {
  const std::size_t any = pattern.find("***");
  if (any == std::string_view::npos) {
    return pattern == text;
  }
  if (!starts_with(text, pattern.substr(0, any))) {
    return false;
  }
  const std::string_view rest = pattern.substr(any + 3);
  for (std::size_t from = any; from <= text.size(); ++from) {
    if (line_fits(rest, text.substr(from))) {
      return true;
    }
  }
  return false;
}

bool lines_fit(const std::vector<std::string>& pattern,
               std::size_t p,
               const std::vector<std::string>& lines,
               std::size_t l) {
  while (p < pattern.size()) {
    if (pattern[p] == "...") {
      for (std::size_t from = l; from <= lines.size(); ++from) {
        if (lines_fit(pattern, p + 1, lines, from)) {
          return true;
        }
      }
      return false;
    }
    if (l == lines.size() || !line_fits(pattern[p], lines[l])) {
      return false;
    }
    ++p;
    ++l;
  }
  return l == lines.size();
}

bool check(const std::filesystem::path& file, const Step& step) {
  const Printed printed = run(step.command);
  if (printed.status == step.status && lines_fit(step.expected, 0, printed.lines, 0)) {
    return true;
  }
  std::cout << file.string() << ":" << step.line << ": $ " << step.command << "\n--- expected ["
            << step.status << "]\n";
  for (const std::string& line : step.expected) {
    std::cout << line << "\n";
  }
  std::cout << "--- printed [" << printed.status << "]\n";
  for (const std::string& line : printed.lines) {
    std::cout << line << "\n";
  }
  return false;
}

int run_file(const std::filesystem::path& file, const std::filesystem::path& source) {
  const auto steps = read_steps(file);
  const auto folder =
      std::filesystem::temp_directory_path() / ("backmark-story-" + std::to_string(::getpid()));
  std::filesystem::create_directories(folder);
  std::filesystem::current_path(folder);
  ::setenv("SOURCE", source.c_str(), 1);
  int failed = 0;
  for (const Step& step : steps) {
    failed += check(file, step) ? 0 : 1;
  }
  std::filesystem::current_path("/");
  std::filesystem::remove_all(folder);
  std::cout << file.filename().string() << ": " << steps.size() << " steps, " << failed
            << " failed\n";
  return steps.empty() ? 1 : failed;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc < 4) {
    std::cerr << "story_runner PROGRAM_FOLDER SOURCE_FOLDER FILE...\n";
    return 2;
  }
  const char* path = std::getenv("PATH");
  ::setenv("PATH", (std::string(argv[1]) + ":" + (path != nullptr ? path : "")).c_str(), 1);
  ::setenv("BACKMARK_WHO", "curator", 1);
  ::setenv("BACKMARK_NOW", "1924905600", 1);  // 31 December 2030
  int failed = 0;
  for (int i = 3; i < argc; ++i) {
    failed += run_file(std::filesystem::absolute(argv[i]), argv[2]);
  }
  return failed == 0 ? 0 : 1;
}
