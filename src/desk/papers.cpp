#include "desk/papers.h"

#include <algorithm>
#include <array>
#include <fcntl.h>
#include <optional>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

#include "base/json.h"
#include "base/text.h"
#include "desk/reckoned.h"
#include "press/outputs.h"

namespace backmark::desk {

namespace {

// Everything a child writes to `from`, and its exit status; 127 is "no such program".
struct Output {
  std::string text;
  int status = 127;
};

Output read_child(pid_t child, int from) {
  Output output;
  std::array<char, 65536> buffer{};
  ssize_t got = 0;
  while ((got = ::read(from, buffer.data(), buffer.size())) > 0) {
    output.text.append(buffer.data(), static_cast<std::size_t>(got));
  }
  int state = 0;
  if (::waitpid(child, &state, 0) == child && WIFEXITED(state)) {
    output.status = WEXITSTATUS(state);
  }
  return output;
}

Output pdftotext(const std::string& file) {
  std::array<int, 2> ends{};
  if (::pipe(ends.data()) != 0) {
    return {};
  }
  posix_spawn_file_actions_t actions;
  ::posix_spawn_file_actions_init(&actions);
  ::posix_spawn_file_actions_adddup2(&actions, ends[1], STDOUT_FILENO);
  ::posix_spawn_file_actions_addclose(&actions, ends[0]);
  ::posix_spawn_file_actions_addopen(&actions, STDERR_FILENO, "/dev/null", O_WRONLY, 0);
  std::array<std::string, 6> words{"pdftotext", "-raw", "-enc", "UTF-8", file, "-"};
  std::array<char*, 7> arguments{};
  for (std::size_t i = 0; i < words.size(); ++i) {
    arguments[i] = words[i].data();
  }
  pid_t child = 0;
  const int failed =
      ::posix_spawnp(&child, "pdftotext", &actions, nullptr, arguments.data(), environ);
  ::posix_spawn_file_actions_destroy(&actions);
  ::close(ends[1]);
  const Output output = failed == 0 ? read_child(child, ends[0]) : Output{};
  ::close(ends[0]);
  return output;
}

Path record_file(const Path& prints, std::string_view output) {
  return prints / fmt::format("facts-{}.json", output);
}

std::optional<PrintRecord> record_in(const std::string& text) {
  const Json json = Json::parse(text, nullptr, false);
  if (!json.is_object() || !json.contains("facts") || !json.contains("files")) {
    return {};
  }
  auto facts = press::facts_from_json(json["facts"].dump());
  const auto audience = words::audience_named(json.value("audience", ""));
  if (!facts || !audience || !json["files"].is_array()) {
    return {};
  }
  PrintRecord record{json.value("output", ""),
                     *audience,
                     json.value("version", std::int64_t{0}),
                     {},
                     std::move(*facts)};
  for (const Json& file : json["files"]) {
    if (!file.is_string() || contains(file.get<std::string>(), "/")) {
      return {};
    }
    record.files.push_back(file.get<std::string>());
  }
  return record;
}

}  // namespace

bool is_worded(words::FactKind kind) {
  return kind <= words::FactKind::prose && kind != words::FactKind::compare;
}

Result<Phrased> phrased(OpenShow& open) {
  const auto last = last_run(open);
  if (!last && last.problem().fault != Fault::not_found) {
    return last.problem();
  }
  if (!last) {
    return Phrased{
        {},
        words::phrase_all(open.show, {}),
        "The show was never reckoned, so nothing is dated; run \"backmark infer\" first.\n"};
  }
  Phrased phrased{last->run.beliefs, {}, stale_line(*last)};
  phrased.phrases = words::phrase_all(open.show, phrased.beliefs);
  return phrased;
}

press::PhotographLoader photographs_in(const Path& show_folder) {
  return [photos = show_folder /
                   "photos"](const model::Photograph& photograph) -> Result<std::string> {
    const Path below = Path(photograph.file).lexically_normal();
    if (below.empty() || below.is_absolute() || *below.begin() == "..") {
      return Problem{Fault::refused, "a photograph must lie in the show's photos folder",
                     photograph.file, "copy it into photos/ and note it again"};
    }
    return read_file(photos / below);
  };
}

Result<std::vector<press::TextFile>> texts_in(const Path& show_folder) {
  std::vector<Path> files;
  std::error_code none;
  for (const auto& file : std::filesystem::directory_iterator(show_folder / "essays", none)) {
    if (file.is_regular_file()) {
      files.push_back(file.path());
    }
  }
  std::sort(files.begin(), files.end());
  std::vector<press::TextFile> texts;
  for (const Path& file : files) {
    auto text = read_file(file);
    if (!text) {
      return text.problem();
    }
    texts.push_back({"essays/" + file.filename().string(), std::move(*text)});
  }
  return texts;
}

Result<Done> write_record(const Path& prints, const PrintRecord& record) {
  const Json json{{"output", record.output},
                  {"audience", words::name_of(record.audience)},
                  {"version", record.version},
                  {"files", record.files},
                  {"facts", press::to_json(record.facts)}};
  return write_file(record_file(prints, record.output), json.dump(1));
}

Result<std::vector<PrintRecord>> read_records(const Path& prints) {
  std::vector<PrintRecord> records;
  for (const press::Output& output : press::outputs()) {
    const Path file = record_file(prints, output.name);
    if (!std::filesystem::exists(file)) {
      continue;
    }
    auto text = read_file(file);
    if (!text) {
      return text.problem();
    }
    auto record = record_in(*text);
    if (!record) {
      return Problem{Fault::bad_input, "the record of a printed paper cannot be read",
                     file.string(),
                     fmt::format("print it again: backmark print SHOW {}", output.name)};
    }
    records.push_back(std::move(*record));
  }
  return records;
}

Result<std::string> pdf_text(const Path& file) {
  if (auto bytes = read_file(file); !bytes) {
    return bytes.problem();
  }
  Output output = pdftotext(file.string());
  if (output.status == 127) {
    return Problem{Fault::not_found, "the program pdftotext is not installed", file.string(),
                   "install the package poppler-utils"};
  }
  if (output.status != 0) {
    return Problem{Fault::bad_input, "the PDF cannot be read", file.string(), "print it again"};
  }
  return std::move(output.text);
}

}  // namespace backmark::desk
