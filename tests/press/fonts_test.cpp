// Every paper carries its fonts: read back with pdffonts of poppler-utils.
#include <algorithm>
#include <array>
#include <cstdio>

#include "base/text.h"
#include "demo_job.h"
#include "press/outputs.h"

using namespace backmark;
using namespace backmark::press;

namespace {

struct FontRow {
  std::string name;
  bool embedded = false;
};

// The rows of pdffonts' table: name, type, encoding, emb, sub, uni, object (two numbers).
std::vector<FontRow> fonts_in(const std::string& pdf) {
  const Path file = std::filesystem::temp_directory_path() / "backmark-fonts-test.pdf";
  REQUIRE(write_file(file, pdf));
  std::string out;
  if (std::FILE* pipe = popen(("pdffonts '" + file.string() + "' 2>/dev/null").c_str(), "r")) {
    std::array<char, 4096> buffer{};
    while (const std::size_t got = std::fread(buffer.data(), 1, buffer.size(), pipe)) {
      out.append(buffer.data(), got);
    }
    pclose(pipe);
  }
  std::filesystem::remove(file);
  std::vector<FontRow> rows;
  for (const std::string_view line : split(out, "\n")) {
    std::vector<std::string_view> words;
    for (const std::string_view word : split(line, " ")) {
      if (!trim(word).empty()) {
        words.push_back(word);
      }
    }
    if (words.size() >= 7 && to_whole(words.back())) {
      rows.push_back({std::string(words.front()), words[words.size() - 5] == "yes"});
    }
  }
  return rows;
}

}  // namespace

TEST_CASE("every font of every paper is embedded, and is one of the house") {
  const DemoPrinting& demo = demo_printing();
  const model::LookList looks = two_looks(demo.show);
  const PlannedWork work = small_plan();
  int fonts = 0;
  for (const Output& output : outputs()) {
    CAPTURE(output.name);
    PressJob job = demo.job(output.audience);
    job.looks = &looks;
    job.work = &work;
    const auto printed = output.print(job);
    REQUIRE(printed);
    for (const PrintedFile& file : printed->files) {
      if (!ends_with(file.name, ".pdf")) {
        continue;
      }
      CAPTURE(file.name);
      for (const FontRow& font : fonts_in(file.bytes)) {
        CAPTURE(font.name);
        ++fonts;
        CHECK(font.embedded);
        const bool ours = contains(font.name, "EBGaramond12") || contains(font.name, "Inter") ||
                          contains(font.name, "GentiumPlus");
        CHECK(ours);
      }
    }
  }
  if (fonts == 0) {
    MESSAGE("skipped: pdffonts is not here, so no paper was read back");
  }
}
