#include "draw/hyphens.h"

#include <algorithm>
#include <array>
#include <hyphen.h>
#include <string>

#include "base/text.h"

namespace backmark::draw {

namespace {

constexpr const char* pattern_file = "/usr/share/hyphen/hyph_en_US.dic";

// Trade words that the patterns divide badly, and words that must not be divided.
constexpr std::array<std::string_view, 20> exceptions = {
    "lapi-dary",   "lapi-daries",  "crafts-man-ship", "crafts-woman", "gold-smith",
    "gold-smiths", "silver-smith", "silver-smiths",   "silver-work",  "work-shop",
    "work-shops",  "cabo-chon",    "cabo-chons",      "filigree",     "rep-oussé",
    "hall-mark",   "hall-marks",   "her-ring-bone",   "brooches",     "photo-graph"};

struct DropDictionary {
  void operator()(HyphenDict* dictionary) const { hnj_hyphen_free(dictionary); }
};

bool plain_letters(std::string_view word) {
  return std::all_of(word.begin(), word.end(), [](char c) { return c >= 'a' && c <= 'z'; });
}

// Offsets for a listed word; an empty list is an answer too.
const std::string_view* listed(std::string_view word) {
  for (const std::string_view& entry : exceptions) {
    if (replace_all(std::string(entry), "-", "") == word) {
      return &entry;
    }
  }
  return nullptr;
}

std::vector<std::size_t> offsets_in(std::string_view entry) {
  std::vector<std::size_t> offsets;
  std::size_t letters = 0;
  for (const char c : entry) {
    if (c == '-') {
      offsets.push_back(letters);
    } else {
      ++letters;
    }
  }
  return offsets;
}

}  // namespace

struct Hyphens::Inside {
  std::unique_ptr<HyphenDict, DropDictionary> dictionary;
};

Hyphens::Hyphens(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Hyphens::Hyphens(Hyphens&&) noexcept = default;
Hyphens& Hyphens::operator=(Hyphens&&) noexcept = default;
Hyphens::~Hyphens() = default;

Result<Hyphens> Hyphens::load() {
  auto inside = std::make_unique<Inside>();
  inside->dictionary.reset(hnj_hyphen_load(pattern_file));
  if (!inside->dictionary) {
    return Problem{Fault::not_found, "the hyphenation patterns are not there", pattern_file,
                   "install the Debian package hyphen-en-us"};
  }
  return Hyphens(std::move(inside));
}

std::vector<std::size_t> Hyphens::points(std::string_view word) const {
  std::vector<std::size_t> offsets;
  if (word.size() < 6 || word.size() > 60 || !plain_letters(word)) {
    return offsets;
  }
  if (const std::string_view* entry = listed(word)) {
    return offsets_in(*entry);
  }
  std::string marks(word.size() + 5, '\0');
  char** replaced = nullptr;
  int* position = nullptr;
  int* cut = nullptr;
  const std::string text(word);
  hnj_hyphen_hyphenate2(inside_->dictionary.get(), text.c_str(), static_cast<int>(text.size()),
                        marks.data(), nullptr, &replaced, &position, &cut);
  for (std::size_t i = 1; i + 3 < word.size(); ++i) {
    if ((marks[i] & 1) != 0) {
      offsets.push_back(i + 1);
    }
  }
  return offsets;
}

}  // namespace backmark::draw
