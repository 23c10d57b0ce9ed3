#include "scenario/vocabulary.h"

#include <array>

#include "base/text.h"

namespace backmark::scenario {
namespace {

template <class E, std::size_t N>
std::string_view pick(const std::array<std::string_view, N>& words, E value) {
  return words[static_cast<std::size_t>(value)];
}

// What the motif is called in a title, before the word for the form.
std::string_view title_word(Motif motif) {
  constexpr std::array<std::string_view, 18> words{
      "Urchin",        "Compass",           "Cabochon",         "Rayed oval",
      "Scallop",       "Herring",           "Whale's tail",     "Lugger",
      "Nautilus",      "Crescent",          "Net-work lozenge", "Lighthouse",
      "Tern",          "True-lover's knot", "Moon-over-water",  "Channelled shield",
      "Eight-pointed", "Herringbone tablet"};
  return pick(words, motif);
}

std::string_view title_form(Form form) {
  constexpr std::array<std::string_view, 5> words{"slide", "clasp", "brooch", "pendant",
                                                  "pendant, made a slide"};
  return pick(words, form);
}

}  // namespace

std::string_view word_of(Form value) {
  constexpr std::array<std::string_view, 5> words{"slide tie", "clasp", "brooch", "pendant",
                                                  "pendant turned slide tie"};
  return pick(words, value);
}

std::string_view word_of(Outline value) {
  constexpr std::array<std::string_view, 12> words{"disc", "oval",     "scallop", "fish",
                                                   "tail", "crescent", "lozenge", "plaque",
                                                   "bird", "star",     "shield",  "open ring"};
  return pick(words, value);
}

std::string_view word_of(Motif value) {
  constexpr std::array<std::string_view, 18> words{
      "urchin",     "compass", "cabochon",        "rayed field",  "scallop", "herring",
      "whale tail", "boat",    "nautilus",        "crescent",     "net",     "lighthouse",
      "tern",       "knot",    "moon over water", "channel work", "star",    "herringbone"};
  return pick(words, value);
}

std::string_view word_of(Metal value) {
  constexpr std::array<std::string_view, 6> words{"silver", "nickel silver",    "brass",
                                                  "copper", "blackened silver", "pewter"};
  return pick(words, value);
}

std::string_view word_of(Stone value) {
  constexpr std::array<std::string_view, 18> words{"",
                                                   "serpentine",
                                                   "jasper",
                                                   "slate",
                                                   "agate",
                                                   "sodalite",
                                                   "jet",
                                                   "sea glass",
                                                   "moon glass",
                                                   "ormer shell",
                                                   "mussel shell",
                                                   "coral",
                                                   "horn",
                                                   "tortoiseshell",
                                                   "bone or ivory",
                                                   "amber",
                                                   "feather under glass",
                                                   "driftwood"};
  return pick(words, value);
}

std::string_view word_of(Technique value) {
  constexpr std::array<std::string_view, 7> words{
      "stampwork", "overlay", "inlay", "casting", "engraving", "piercing", "granulation"};
  return pick(words, value);
}

std::string_view word_of(Border value) {
  constexpr std::array<std::string_view, 6> words{"",        "bevel",    "twisted wire",
                                                  "punched", "granules", "double line"};
  return pick(words, value);
}

std::string_view word_of(Setting value) {
  constexpr std::array<std::string_view, 5> words{"", "plain bezel", "saw-tooth bezel",
                                                  "channel", "pegged"};
  return pick(words, value);
}

std::string_view word_of(Backing value) {
  constexpr std::array<std::string_view, 4> words{"", "sawdust and pitch", "card", "metal"};
  return pick(words, value);
}

std::string_view word_of(Fitting value) {
  constexpr std::array<std::string_view, 7> words{"",
                                                  "soldered tubes",
                                                  "figure-eight wire",
                                                  "bar slide",
                                                  "spring clip",
                                                  "push button",
                                                  "pin and catch"};
  return pick(words, value);
}

std::string_view word_of(Solder value) {
  constexpr std::array<std::string_view, 3> words{"hard solder", "soft solder", "rivets"};
  return pick(words, value);
}

std::string_view word_of(Finish value) {
  constexpr std::array<std::string_view, 5> words{"filed one way", "filed crosswise",
                                                  "polished", "pickled white", "casting skin"};
  return pick(words, value);
}

std::string_view word_of(CordType value) {
  constexpr std::array<std::string_view, 8> words{"",
                                                  "plaited leather",
                                                  "round leather",
                                                  "braided cotton",
                                                  "linen twist",
                                                  "braided rayon",
                                                  "braided nylon",
                                                  "braided vinyl"};
  return pick(words, value);
}

std::string_view word_of(CordColour value) {
  constexpr std::array<std::string_view, 7> words{"black", "brown", "tan",  "blue",
                                                  "red",   "white", "green"};
  return pick(words, value);
}

std::string_view word_of(TipForm value) {
  constexpr std::array<std::string_view, 6> words{"",       "cone",   "ball end",
                                                  "bullet", "fluted", "spindle"};
  return pick(words, value);
}

std::string_view word_of(MarkForm value) {
  constexpr std::array<std::string_view, 3> words{"", "stamped", "engraved"};
  return pick(words, value);
}

std::string_view word_of(MarkOutline value) {
  constexpr std::array<std::string_view, 3> words{"", "rectangle", "oval"};
  return pick(words, value);
}

std::string title_of(const Work& work) {
  std::string title = fmt::format("{} {}", title_word(work.motif), title_form(work.form));
  if (work.stones[0] != Stone::none) {
    title += fmt::format(" with {}", word_of(work.stones[0]));
  }
  return title;
}

const std::vector<std::string>& clip_legends() {
  static const std::vector<std::string> legends{"TARN WORKS ENNET PAT.APP.FOR",
                                                "TARN WORKS PAT. 20417", "TARN PAT.", "TARN"};
  return legends;
}

const std::vector<std::string>& bar_kinds() {
  static const std::vector<std::string> kinds{"first kind", "second kind"};
  return kinds;
}

}  // namespace backmark::scenario
