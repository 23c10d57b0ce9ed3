#include "evidence/sequence.h"

#include <algorithm>

#include "base/text.h"

namespace backmark::evidence {

namespace {

std::string words_for(std::string_view verb,
                      std::string_view value,
                      int variant,
                      int variants) {
  return fmt::format("{} {}: form {} of {} in order", verb, value, variant + 1, variants);
}

}  // namespace

std::string plain_legend(std::string_view text) {
  std::string plain;
  for (const char c : lower_ascii(text)) {
    if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '&') {
      plain += c;
    }
  }
  return plain;
}

Sequences::Sequences(const model::Show& show) {
  const auto& lineages = show.all<model::Lineage>();
  for (std::size_t l = 0; l < lineages.size(); ++l) {
    const model::Lineage& lineage = lineages[l];
    const auto variants = static_cast<int>(lineage.variants.size());
    const model::Character* character = show.find(lineage.character);
    const bool on_part = character != nullptr && character->replaceable;
    for (int v = 0; v < variants && variants > 1; ++v) {
      const auto text = show.text(lineage.variants[static_cast<std::size_t>(v)]);
      if (lineage.maker) {
        by_legend_[plain_legend(text)].push_back({l, v, variants});
      } else if (character != nullptr && !on_part) {
        by_value_[{character->id.value, std::string(text)}].push_back({l, v, variants});
      }
    }
  }
}

std::vector<SeenInSequence> Sequences::on(const std::vector<Sight>& sights,
                                          std::span<const model::Mark> marks) const {
  std::vector<SeenInSequence> seen;
  const auto add = [&](SeenInSequence one) {
    if (std::none_of(seen.begin(), seen.end(),
                     [&](const auto& other) { return other.lineage == one.lineage; })) {
      seen.push_back(std::move(one));
    }
  };
  for (const model::Mark& mark : marks) {
    const auto at = by_legend_.find(plain_legend(mark.text));
    if (mark.seen != model::Seen::value || at == by_legend_.end()) {
      continue;
    }
    for (const Place& place : at->second) {
      add({.lineage = place.lineage,
           .variant = place.variant,
           .certainty = static_cast<double>(mark.certainty),
           .record = mark.id.value,
           .of_maker = true,
           .what = words_for("Marked", mark.text, place.variant, place.variants)});
    }
  }
  for (const Sight& sight : sights) {
    const auto at = by_value_.find({sight.character.value, std::string(sight.text)});
    if (sight.seen != model::Seen::value || at == by_value_.end()) {
      continue;
    }
    for (const Place& place : at->second) {
      add({.lineage = place.lineage,
           .variant = place.variant,
           .record = sight.record,
           .seen = sight.character,
           .what = words_for("Seen:", sight.text, place.variant, place.variants)});
    }
  }
  return seen;
}

}  // namespace backmark::evidence
