#include "words/why.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "base/text.h"
#include "words/fact.h"

namespace backmark::words {

namespace {

constexpr double least_bits = 0.05;
constexpr double least_years = 2;       // narrower by, or moved by
constexpr double least_log_odds = 0.7;  // about double or half
constexpr double least_maker = 0.5;     // more likely than not
constexpr std::size_t most_said = 2;

struct Odds {
  double p;
  std::string_view words;
};

// The largest that hold; empty under one in two.
std::string odds_words(double p) {
  constexpr std::array<Odds, 6> all{{{0.95, "nineteen chances in twenty"},
                                     {0.90, "nine chances in ten"},
                                     {0.80, "four chances in five"},
                                     {0.75, "three chances in four"},
                                     {2.0 / 3, "two chances in three"},
                                     {0.50, "one chance in two"}}};
  for (const Odds& one : all) {
    if (p >= one.p - 1e-9) {
      return std::string(one.words);
    }
  }
  return {};
}

const model::Mark* mark_of(const model::Show& show, const model::EvidenceLine& line) {
  return show.find(model::Id<model::Mark>{line.record});
}

std::string claim_noun(const model::Show& show, std::int32_t record) {
  const model::Claim* claim = show.find(model::Id<model::Claim>{record});
  const model::Source* source = claim == nullptr ? nullptr : show.find(claim->source);
  switch (source == nullptr ? model::SourceKind::oral : source->kind) {
    case model::SourceKind::document:
    case model::SourceKind::record:
      return "a paper that speaks of it";
    case model::SourceKind::publication:
      return "what was published of it";
    case model::SourceKind::piece:
      return "what is written on it";
    case model::SourceKind::own:
      return "our own judgement";
    default:
      return "what was told of it";
  }
}

std::string_view event_noun(model::EventKind kind) {
  switch (kind) {
    case model::EventKind::acquired:
      return "the year of its acquisition";
    case model::EventKind::commissioned:
      return "its commission";
    case model::EventKind::awarded:
      return "an award";
    case model::EventKind::exhibited:
      return "the year it was first shown";
    case model::EventKind::photographed:
      return "an early photograph";
    case model::EventKind::patented:
      return "a patent";
    default:
      return "the year by which it was known";
  }
}

std::string seen_noun(std::string_view label, std::string_view value) {
  return fmt::format("the {} ({})", lower_ascii(label), trim(value));
}

// What a line rests on, as a noun: "the mark M·O", "the fitting (bar slide)".
std::string noun_of(const model::Show& show, const model::EvidenceLine& line) {
  if (const model::Mark* mark = mark_of(show, line)) {
    return "the mark " + mark->text;
  }
  const auto colon = line.what.find(": ");
  if (line.character && colon != std::string::npos) {
    return seen_noun(line.what.substr(0, colon), line.what.substr(colon + 2));
  }
  if (const auto* seen = show.find(model::Id<model::Observation>{line.record})) {
    const model::Character* character = show.find(seen->character);
    return seen_noun(character == nullptr ? "form" : character->label, show.text(seen->value));
  }
  if (const auto* event = show.find(model::Id<model::Event>{line.record})) {
    return std::string(event_noun(event->kind));
  }
  return claim_noun(show, line.record);
}

double pull(const model::EvidenceLine& line) {
  return line.bits_year + 0.02 * std::abs(line.width_change) +
         0.02 * std::abs(line.years_moved);
}

bool bears_on_year(const model::EvidenceLine& line) {
  return line.bits_year >= least_bits || line.width_change <= -least_years ||
         std::abs(line.years_moved) >= least_years;
}

double maker_pull(const model::EvidenceLine& line) {
  return line.maker_log_odds;
}

using Nouns = std::vector<std::string>;

// Of the lines that `wanted` picks, most pull first, each noun once; two at most.
template <class Wanted>
Nouns nouns(const model::Show& show,
            const std::vector<model::EvidenceLine>& lines,
            const Wanted& wanted,
            double (*weight)(const model::EvidenceLine&)) {
  std::vector<const model::EvidenceLine*> picked;
  for (const model::EvidenceLine& line : lines) {
    if (wanted(line)) {
      picked.push_back(&line);
    }
  }
  std::stable_sort(picked.begin(), picked.end(),
                   [weight](const auto* a, const auto* b) { return weight(*a) > weight(*b); });
  Nouns said;
  for (const auto* line : picked) {
    std::string noun = noun_of(show, *line);
    if (said.size() < most_said && std::find(said.begin(), said.end(), noun) == said.end()) {
      said.push_back(std::move(noun));
    }
  }
  return said;
}

std::string year_words(const model::YearBelief& year) {
  const Year first = year.at(0.1);
  const Year last = year.at(0.9);
  const std::string odds = odds_words(std::max(0.8, year.inside(first, last)));
  return first == last ? fmt::format("{} say {}", odds, first.value)
                       : fmt::format("{} lie between {} and {}", odds, first.value, last.value);
}

// The leading maker, if more likely than not.
const model::Maker* named_maker(const model::Show& show, const model::PieceBelief& belief) {
  const auto& makers = belief.maker.makers;
  return !makers.empty() && makers.front().p >= least_maker ? show.find(makers.front().maker)
                                                            : nullptr;
}

std::string odds_sentence(const model::PieceBelief& belief, const model::Maker* maker) {
  std::string text = sentence(year_words(belief.year));
  if (maker != nullptr) {
    const std::string odds = odds_words(belief.maker.makers.front().p);
    const std::string short_odds =
        replace_all(replace_all(odds, " chances", ""), " chance", "");
    text += fmt::format(", and {} with {}{}", short_odds, maker->name,
                        belief.maker.documented ? "" : ", by manner alone");
  }
  return text + ".";
}

constexpr std::string_view likeness = "its likeness to dated pieces";

std::string reasons_words(const Nouns& years, const Nouns& hands) {
  if (years.empty()) {
    return hands.empty()
               ? fmt::format("The year rests on {}", likeness)
               : fmt::format("The maker rests on {}, the year on {}", hands.front(), likeness);
  }
  const std::string reasons = join(years, " and ");
  if (hands.empty()) {
    return fmt::format("Most of it comes from {}", reasons);
  }
  return hands.front() == years.front()
             ? fmt::format("Most of both comes from {}", years.front())
             : fmt::format("Most of the year comes from {}, most of the maker from {}", reasons,
                           hands.front());
}

}  // namespace

std::string why_phrase(const model::Show& show,
                       const model::PieceBelief& belief,
                       const model::Phrases& phrases,
                       const std::vector<model::EvidenceLine>& lines) {
  if (!belief.dated || belief.year.empty() || phrases.made_row == 0 || phrases.maker_row == 0 ||
      written_year(show, belief.piece, belief.year)) {
    return "";
  }
  const model::Maker* maker = named_maker(show, belief);
  const Nouns years = nouns(
      show, lines, [](const auto& line) { return !line.disagrees && bears_on_year(line); },
      pull);
  const Nouns hands = nouns(
      show, lines,
      [maker](const auto& line) {
        return maker != nullptr && !line.disagrees && line.maker_log_odds >= least_log_odds &&
               !line.character;
      },
      maker_pull);
  const Nouns against = nouns(
      show, lines, [](const auto& line) { return line.disagrees; }, pull);
  std::string text = odds_sentence(belief, maker) + " " + reasons_words(years, hands);
  text += against.empty() ? "" : "; against it, " + join(against, " and ");
  return ends_with(text, ".") ? text : text + ".";  // the legend of a mark may end so
}

std::optional<Year> written_year(const model::Show& show,
                                 model::Id<model::Piece> piece,
                                 const model::YearBelief& belief) {
  for (const model::Claim& claim : show.claims_on(piece)) {
    if (claim.says == model::Says::inscribed && claim.from && claim.to &&
        *claim.from == *claim.to && !claim.negative) {
      const bool believed = *claim.from >= belief.at(0.1) && *claim.from <= belief.at(0.9);
      return believed ? claim.from : std::nullopt;
    }
  }
  return std::nullopt;
}

}  // namespace backmark::words
