#include "evidence/claim_voices.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "evidence/said.h"

namespace backmark::evidence {

namespace {

using model::AskedClaim;
using model::Claim;
using model::Says;
using model::Show;

constexpr int about = 2;         // years by which "about 1946" may miss 1946
constexpr double surest = 0.99;  // no voice settles a claim

Voice voice_of(const Show& show,
               model::Id<model::Source> source,
               std::optional<double> weight) {
  Voice voice;
  voice.source = source;
  voice.reliability = std::clamp(reliability_of(show, source, weight), 0.01, surest);
  voice.origin = origin_of(show, source);
  if (const model::Source* row = show.find(source); row != nullptr && voice.origin.empty()) {
    voice.origin = row->key;
  }
  return voice;
}

// Whether a start of use or making in `from` agrees with "not before `year`".
bool not_before(const std::optional<Year>& from, Year year) {
  return !from || *from - year >= -about;
}

std::optional<Voice> on_first(const Show& show, const Claim& row, const AskedClaim& claim) {
  if (row.says != Says::first) {
    return std::nullopt;
  }
  Voice voice = voice_of(show, row.source, row.weight);
  voice.maker = row.maker;
  voice.year = row.from ? row.from : row.to;
  voice.says = row.text;
  voice.for_it = claim.maker ? row.maker == claim.maker : not_before(voice.year, *claim.year);
  return voice;
}

std::optional<Voice> on_value(const Show& show, const Claim& row, const AskedClaim& claim) {
  const bool design = claim.kind == AskedClaim::Kind::design && row.says == Says::design_of;
  const bool use = claim.kind == AskedClaim::Kind::not_before && row.says == Says::used;
  if ((!design && !use) || row.character != claim.character || row.word != claim.value) {
    return std::nullopt;
  }
  Voice voice = voice_of(show, row.source, row.weight);
  voice.maker = row.maker;
  voice.year = row.from;
  voice.says = row.text;
  voice.for_it = design ? row.maker == claim.maker : not_before(row.from, *claim.year);
  return voice;
}

std::string window_words(const model::Window& window) {
  return window.from ? fmt::format("in use from {}", window.from->value)
                     : std::string("in use, no beginning told");
}

double odds_of(const std::vector<Voice>& voices) {
  double odds = 1;
  for (const std::size_t v : counted(voices)) {
    const double ratio = voices[v].reliability / (1 - voices[v].reliability);
    odds *= voices[v].for_it ? ratio : 1 / ratio;
  }
  return odds;
}

}  // namespace

std::vector<Voice> voices_on(const Show& show, const AskedClaim& claim) {
  std::vector<Voice> voices;
  for (const Claim& row : show.all<Claim>()) {
    auto voice = claim.kind == AskedClaim::Kind::first ? on_first(show, row, claim)
                                                       : on_value(show, row, claim);
    if (voice) {
      voice->for_it = voice->for_it != row.negative;
      voices.push_back(std::move(*voice));
    }
  }
  if (claim.kind == AskedClaim::Kind::not_before) {
    for (const model::Window& window : show.all<model::Window>()) {
      if (window.character == claim.character && window.value == claim.value && window.from) {
        Voice voice = voice_of(show, window.source, std::nullopt);
        voice.year = window.from;
        voice.for_it = not_before(window.from, *claim.year);
        voice.says = window_words(window);
        voices.push_back(std::move(voice));
      }
    }
  }
  return voices;
}

std::vector<std::size_t> counted(const std::vector<Voice>& voices) {
  std::map<std::tuple<std::string, bool, std::int32_t>, std::size_t> best;
  for (std::size_t v = 0; v < voices.size(); ++v) {
    const auto [at, is_new] =
        best.try_emplace({voices[v].origin, voices[v].for_it, voices[v].maker.value}, v);
    if (!is_new && voices[v].reliability > voices[at->second].reliability) {
      at->second = v;
    }
  }
  std::vector<std::size_t> list;
  for (const auto& [key, v] : best) {
    list.push_back(v);
  }
  std::sort(list.begin(), list.end());
  return list;
}

double weigh_voices(const Show& show,
                    const AskedClaim& claim,
                    double p_pieces,
                    const std::vector<Voice>& voices,
                    const OlderThan& unopposed) {
  if (claim.kind != AskedClaim::Kind::first || !claim.maker) {
    const double odds = odds_of(voices);
    return p_pieces * odds / (p_pieces * odds + 1 - p_pieces);
  }
  const auto makers =
      static_cast<double>(std::max<std::size_t>(1, show.all<model::Maker>().size()));
  std::map<std::int32_t, double> said{{claim.maker.value, p_pieces}};
  for (const Voice& voice : voices) {
    if (voice.maker && voice.maker != claim.maker && voice.year) {
      const double stands = unopposed(voice.maker, *voice.year);
      auto& best = said.try_emplace(voice.maker.value, 0).first->second;
      best = std::max(best, stands);
    }
  }
  double all = 0;
  double asked = 0;
  double others = (makers + 1 - static_cast<double>(said.size())) / (makers + 1);
  for (const std::size_t v : counted(voices)) {
    others *= (1 - voices[v].reliability) / makers;
  }
  for (const auto& [maker, stands] : said) {
    double weight = stands / (makers + 1);
    for (const std::size_t v : counted(voices)) {
      const double r = voices[v].reliability;
      weight *= voices[v].maker.value == maker ? r : (1 - r) / makers;
    }
    all += weight;
    asked += maker == claim.maker.value ? weight : 0;
  }
  return asked / (all + others);
}

}  // namespace backmark::evidence
