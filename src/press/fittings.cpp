#include "press/fittings.h"

#include <algorithm>
#include <array>
#include <map>

#include "base/text.h"
#include "press/chronology.h"
#include "words/seen.h"

namespace backmark::press {

namespace {

// What tells one kind of a fitting from another.
constexpr std::array<std::string_view, 3> variant_keys{"bar_kind", "button_bore",
                                                       "clip_legend"};

std::string first_seen(const model::Show& show,
                       model::Id<model::Piece> piece,
                       std::string_view key) {
  const auto seen = words::words_seen(show, piece, {key});
  return seen.empty() ? std::string() : seen.front().text;
}

std::string variant_of(const model::Show& show, model::Id<model::Piece> piece) {
  for (const std::string_view key : variant_keys) {
    std::string seen = first_seen(show, piece, key);
    if (!seen.empty()) {
      return seen;
    }
  }
  return "";
}

// "a wire loop soldered at its waist", of "**eight, figure-eight wire** — a wire loop ...;
// ...".
std::string meaning_of(const Prose& glossary, const std::string& fitting) {
  for (const Block& block : glossary.blocks) {
    const std::string text = plain_text(block.words);
    const auto dash = text.find(" — ");
    if (dash == std::string::npos) {
      continue;
    }
    const auto terms = split(std::string_view(text).substr(0, dash), ",");
    const bool speaks = std::any_of(terms.begin(), terms.end(), [&](std::string_view term) {
      return !trim(term).empty() && contains(fitting, lower_ascii(trim(term)));
    });
    if (speaks) {
      const std::string said = text.substr(dash + std::string_view(" — ").size());
      return said.substr(0, said.find_first_of(";."));
    }
  }
  return "";
}

int first_year(const FittingKind& kind) {
  return kind.years ? kind.years->first.value : 9999;
}

double height_of(const model::Photograph& photograph) {
  return photograph.height_px / photograph.pixels_per_mm;
}

void settle(const PressJob& job, const Prose& glossary, YearSpan span, FittingKind& kind) {
  std::vector<const model::YearBelief*> years;
  for (const words::Place* place : kind.places) {
    const model::PieceBelief* belief = job.beliefs.of(place->piece->id);
    if (belief != nullptr && belief->dated && !belief->year.empty() &&
        belief->year.at(0.9).value - belief->year.at(0.1).value <= widest_charted) {
      years.push_back(&belief->year);
    }
    const model::Photograph* back =
        photograph_of(job.show, place->piece->id, model::View::back);
    if (back != nullptr && back->pixels_per_mm > 0 &&
        (kind.photograph == nullptr || height_of(*back) < height_of(*kind.photograph))) {
      kind.photograph = back;
      kind.shown = place;
    }
  }
  kind.years = seen_in(years, span);
  kind.meaning = meaning_of(glossary, lower_ascii(kind.fitting));
}

}  // namespace

std::vector<FittingKind> fitting_kinds(const PressJob& job,
                                       const words::Numbering& numbering,
                                       const Prose& glossary,
                                       YearSpan span) {
  std::map<std::string, std::map<std::string, Places>> seen;
  for (const words::Place& place : numbering.places()) {
    const std::string fitting =
        place.pick->in_book ? first_seen(job.show, place.piece->id, "fitting") : std::string();
    if (!fitting.empty()) {
      seen[fitting][variant_of(job.show, place.piece->id)].push_back(&place);
    }
  }
  std::vector<FittingKind> all;
  std::map<std::string, int> begun;
  for (auto& [fitting, variants] : seen) {
    if (variants.size() > 1) {
      variants.erase("");
    }
    begun[fitting] = 9999;
    for (auto& [variant, places] : variants) {
      FittingKind kind{fitting, variant, std::move(places), {}, nullptr, nullptr, {}};
      settle(job, glossary, span, kind);
      begun[fitting] = std::min(begun[fitting], first_year(kind));
      all.push_back(std::move(kind));
    }
  }
  const auto key = [&begun](const FittingKind& kind) {
    return std::tuple(begun.at(kind.fitting), kind.fitting, first_year(kind), kind.variant);
  };
  std::stable_sort(all.begin(), all.end(),
                   [&key](const auto& a, const auto& b) { return key(a) < key(b); });
  return all;
}

}  // namespace backmark::press
