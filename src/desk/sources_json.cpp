#include "desk/sources_json.h"

#include <cmath>
#include <map>
#include <set>

#include "base/json.h"
#include "base/text.h"
#include "desk/claim_json.h"
#include "evidence/said.h"

namespace backmark::desk {

namespace {

using evidence::ClaimOnFile;
using model::Show;

std::string key_of(const Show& show, model::Id<model::Source> id) {
  const model::Source* source = show.find(id);
  return source == nullptr ? "" : source->key;
}

double rounded(double p) {
  return std::round(10000 * p) / 10000;
}

Json source_json(const Show& show, const SourceStanding& one) {
  const model::Source& source = *one.source;
  Json from = Json::array();
  for (const auto id : source.derives_from) {
    from.push_back(key_of(show, id));
  }
  return {{"key", source.key},
          {"title", source.title},
          {"kind", source_kind_word(source.kind)},
          {"year", source.year ? Json(source.year->value) : Json()},
          {"citation", source.citation},
          {"derives_from", from},
          {"origin", one.origin},
          {"reliability", rounded(evidence::reliability_of(show, source.id, {}))},
          {"stated", source.reliability.has_value()},
          {"claims", one.claims},
          {"pieces", one.pieces},
          {"borne_out", Json()},
          {"tested", 0}};
}

Json voice_json(const Show& show, const ClaimOnFile& claim, std::size_t v) {
  const evidence::Voice& voice = claim.voices[v];
  const model::Source* source = show.find(voice.source);
  const bool heard =
      std::find(claim.counted.begin(), claim.counted.end(), v) != claim.counted.end();
  return {{"source", key_of(show, voice.source)},
          {"title", source == nullptr ? "no source named" : source->title},
          {"for", voice.for_it},
          {"says", voice.says},
          {"reliability", rounded(voice.reliability)},
          {"origin", voice.origin},
          {"counted", heard}};
}

Json claim_json(const Show& show, const ClaimOnFile& claim, const model::ClaimTest* test) {
  Json voices = Json::array();
  for (std::size_t v = 0; v < claim.voices.size(); ++v) {
    voices.push_back(voice_json(show, claim, v));
  }
  Json json = {
      {"ask", claim.ask},       {"words", claim.claim.words}, {"p", Json()},
      {"p_pieces", Json()},     {"voices", voices},           {"carried_by", Json::array()},
      {"looks", Json::array()}, {"turns", Json::array()}};
  if (test == nullptr) {
    return json;
  }
  json["p"] = rounded(test->p);
  json["p_pieces"] = rounded(test->p_pieces);
  for (const model::ClaimCarrier& one : test->carried_by) {
    // A claim weighed before a piece was withdrawn still names it.
    if (const model::Piece* piece = show.find(one.piece)) {
      json["carried_by"].push_back({{"number", piece->number}, {"p", rounded(one.p)}});
    }
  }
  json["looks"] = looks_json(show, *test);
  for (const model::ClaimTurn& turn : test->turns) {
    json["turns"].push_back({{"what", turn.what}, {"p", rounded(turn.p)}});
  }
  return json;
}

// Tellers of one origin, where there is more than one: many mouths, one voice.
Json echoes_json(const std::vector<SourceStanding>& standings) {
  std::map<std::string, std::vector<std::string>> tellers;
  for (const SourceStanding& one : standings) {
    tellers[one.origin].push_back(one.source->key);
  }
  Json list = Json::array();
  for (const auto& [origin, keys] : tellers) {
    if (keys.size() > 1) {
      list.push_back({{"origin", origin}, {"tellers", keys}});
    }
  }
  return list;
}

// What is said of pieces, claim by claim.
Json said_json(const Show& show, const SourcesWeighed* weighed, const LastRun* last) {
  constexpr std::size_t most = 500;
  std::map<std::int32_t, double> chance;
  for (std::size_t i = 0; weighed != nullptr && i < weighed->borne_out.sayings.size(); ++i) {
    chance[weighed->borne_out.sayings[i].record] = weighed->borne_out.sayings[i].p;
  }
  std::set<std::int32_t> torn;
  for (std::size_t i = 0; last != nullptr && i < last->run.beliefs.misfits.size(); ++i) {
    torn.insert(last->run.beliefs.misfits[i].record);
  }
  Json list = Json::array();
  for (const model::Claim& claim : show.all<model::Claim>()) {
    if (claim.about != model::About::piece || list.size() >= most) {
      continue;
    }
    const auto p = chance.find(claim.id.value);
    const model::Piece* piece = show.find(model::Id<model::Piece>{claim.subject});
    list.push_back({{"record", claim.id.value},
                    {"source", key_of(show, claim.source)},
                    {"number", piece == nullptr ? "" : piece->number},
                    {"text", claim.text},
                    {"against", claim.negative},
                    {"p", p == chance.end() ? Json() : Json(rounded(p->second))},
                    {"torn", torn.contains(claim.id.value)}});
  }
  return list;
}

}  // namespace

const char* source_kind_word(model::SourceKind kind) {
  static constexpr const char* words[] = {"document", "publication", "oral",
                                          "piece",    "own",         "record"};
  return words[static_cast<std::size_t>(kind)];
}

std::vector<SourceStanding> source_standings(const Show& show) {
  std::map<std::int32_t, std::size_t> claims;
  std::map<std::int32_t, std::set<std::int32_t>> pieces;
  for (const model::Claim& claim : show.all<model::Claim>()) {
    ++claims[claim.source.value];
    if (claim.about == model::About::piece) {
      pieces[claim.source.value].insert(claim.subject);
    }
  }
  for (const model::Window& window : show.all<model::Window>()) {
    ++claims[window.source.value];
  }
  for (const model::Event& event : show.all<model::Event>()) {
    ++claims[event.source.value];
    if (event.piece) {
      pieces[event.source.value].insert(event.piece.value);
    }
  }
  std::vector<SourceStanding> list;
  for (const model::Source& source : show.all<model::Source>()) {
    const std::string origin = evidence::origin_of(show, source.id);
    list.push_back({&source, origin.empty() ? source.key : origin, claims[source.id.value],
                    pieces[source.id.value].size()});
  }
  return list;
}

Json sources_json(const Show& show,
                  const std::vector<SourceStanding>& standings,
                  const std::vector<ClaimOnFile>& claims,
                  const SourcesWeighed* weighed,
                  const LastRun* last) {
  const std::map<std::int32_t, evidence::SourceChecked> none;
  const auto& checked = weighed == nullptr ? none : weighed->sources;
  Json sources = Json::array();
  for (const SourceStanding& one : standings) {
    Json json = source_json(show, one);
    if (const auto at = checked.find(one.source->id.value); at != checked.end()) {
      json["borne_out"] = std::round(200 * at->second.share) / 10;
      json["tested"] = at->second.told;
    }
    sources.push_back(std::move(json));
  }
  Json asked = Json::array();
  for (const ClaimOnFile& claim : claims) {
    const bool known = weighed != nullptr && weighed->claims.contains(claim.ask);
    asked.push_back(claim_json(show, claim, known ? &weighed->claims.at(claim.ask) : nullptr));
  }
  return {{"weighed", weighed != nullptr},
          {"sources", sources},
          {"echoes", echoes_json(standings)},
          {"claims", asked},
          {"said", said_json(show, weighed, last)}};
}

}  // namespace backmark::desk
