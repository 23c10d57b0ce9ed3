#include <algorithm>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
#include "desk/take_photographs.h"

namespace backmark::desk {

namespace {

// The pictures below a folder in order of their paths; hidden files and links are passed over.
Result<std::vector<Path>> pictures_in(const Path& folder) {
  std::error_code error;
  std::vector<Path> files;
  std::filesystem::recursive_directory_iterator at(folder, error);
  if (error) {
    return Problem{Fault::not_found, "there is no such folder", folder.string(),
                   "name the folder that holds the pictures"};
  }
  for (const auto& entry : at) {
    const std::string ending = lower_ascii(entry.path().extension().string());
    const bool picture = ending == ".jpg" || ending == ".jpeg" || ending == ".png";
    if (entry.symlink_status().type() == std::filesystem::file_type::regular && picture &&
        entry.path().filename().string().front() != '.') {
      files.push_back(entry.path());
    }
  }
  std::sort(files.begin(), files.end());
  return files;
}

NextPicture reader_of(const std::vector<Path>& files, const Surroundings& around) {
  return [&files, &around, at = std::size_t{0}]() mutable -> std::optional<OfferedPicture> {
    while (at < files.size()) {
      const Path& file = files[at++];
      around.progress(static_cast<double>(at) / static_cast<double>(files.size()), "copying");
      if (auto bytes = read_file(file)) {
        return OfferedPicture{file.filename().string(), *std::move(bytes)};
      }
    }
    return std::nullopt;
  };
}

std::string to_text(const Json& json) {
  std::string text =
      fmt::format("Took {} photographs; {} were there already, {} did not match.\n",
                  json["taken"].size(), json["same"].size(), json["unmatched"].size());
  for (const Json& one : json["unmatched"]) {
    text += fmt::format("  {}: {}; {}\n", one.value("name", ""), one.value("what", ""),
                        one.value("fix", ""));
  }
  return text;
}

std::string missing_text(const Json& missing) {
  constexpr std::size_t most = 20;
  if (missing.empty()) {
    return "Every piece has a front and a back.\n";
  }
  std::string text = fmt::format("{} pieces miss a view:\n", missing.size());
  for (std::size_t i = 0; i < std::min(most, missing.size()); ++i) {
    std::vector<std::string> views = missing[i]["missing"];
    text += fmt::format("  {} {}\n", missing[i].value("number", ""), join(views, ", "));
  }
  return missing.size() > most ? text + fmt::format("  and {} more\n", missing.size() - most)
                               : text;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  Answer answer;
  answer.json = Json::object();
  if (call.has("folder")) {
    const auto files = pictures_in(call.path("folder"));
    if (!files) {
      return files.problem();
    }
    auto taken = take_photographs(*open, reader_of(*files, around), around);
    if (!taken) {
      return taken.problem();
    }
    answer.json = *std::move(taken);
    answer.text = to_text(answer.json);
    auto anew = open_show(call, store::Access::look);
    if (!anew) {
      return anew.problem();
    }
    answer.json["missing"] = missing_views(anew->show);
  } else {
    answer.json["missing"] = missing_views(open->show);
  }
  answer.text += missing_text(answer.json["missing"]);
  return answer;
}

}  // namespace

Operation show_photographs() {
  return {.name = "photographs",
          .help = "take pictures in, matched to pieces by their names; or say what is missing",
          .writes = true,
          .recording = true,
          .parameters = {show_folder(),
                         {.name = "folder",
                          .takes = Takes::folder,
                          .help = "pictures named after their pieces, as ES-118-back.jpg",
                          .positional = true}},
          .run = run};
}

}  // namespace backmark::desk
