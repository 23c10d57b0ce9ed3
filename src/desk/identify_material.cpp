#include <algorithm>

#include "assay/alloy.h"
#include "assay/identify.h"
#include "base/text.h"
#include "desk/bench_reading.h"
#include "desk/each.h"
#include "desk/pairs.h"

namespace backmark::desk {

namespace {

constexpr const char* caution =
    "Readings exclude materials and rarely prove one. Old organic pieces may carry arsenic or "
    "mercury: "
    "gloves. If the piece may be a cultural item, ask for consent before any test.";

Json density_json(const std::optional<assay::Density>& density) {
  return density ? Json{{"g_cm3", density->g_cm3}, {"u", density->u}} : Json(nullptr);
}

// What a whole of two materials still says: how much of it is the denser one.
void add_whole(const BenchReading& reading, Answer& answer, std::vector<std::string>& refused) {
  if (!reading.whole) {
    return;
  }
  refused.emplace_back(
      "a stone in its setting cannot be weighed by itself: the density of the whole names "
      "neither "
      "part");
  answer.text += fmt::format("The whole has {:.3f} g/cm3 (u {:.3f}).\n", reading.whole->g_cm3,
                             reading.whole->u);
  answer.json["whole"] = density_json(reading.whole);
  if (!reading.lighter || !reading.denser) {
    return;
  }
  const auto share =
      assay::denser_share_between(reading.whole->g_cm3, *reading.lighter, *reading.denser);
  if (!share) {
    refused.push_back(share.problem().what + "; " + share.problem().fix);
    return;
  }
  answer.json["metal_share"] = {share->first, share->second};
  answer.text +=
      fmt::format("If it is without voids, {:.4f} to {:.4f} of its mass is the denser part.\n",
                  share->first, share->second);
}

// Only where the likeliest is an alloy of silver, weighed alone.
void add_fineness(const assay::Bench& bench, const assay::Identified& found, Answer& answer) {
  if (!bench.density || found.candidates.front().material.rfind("silver", 0) != 0) {
    return;
  }
  const auto fineness = assay::silver_fineness(bench.density->g_cm3, bench.density->u);
  if (!fineness) {
    return;
  }
  answer.json["fineness"] = {{"permille", fineness->permille}, {"u", fineness->u}};
  answer.text += fmt::format(
      "If it is silver and copper alone and solid: {:.0f} parts in a thousand, give or take "
      "{:.0f}; "
      "sterling and coin silver lie 25 apart.\n",
      fineness->permille, 2 * fineness->u);
}

void add_found(const assay::Identified& found, Answer& answer) {
  answer.text += "\nMay be (chances among the materials of the table, alike to begin with)\n";
  Json candidates = Json::array();
  for (const assay::Candidate& one : found.candidates) {
    candidates.push_back({{"material", one.material}, {"p", one.p}});
    if (!one.borderline.empty()) {
      candidates.back()["borderline"] = one.borderline;
    }
    if (one.p >= 0.005) {
      answer.text += fmt::format("  {:5.3f}  {}{}\n", one.p, one.material,
                                 one.borderline.empty() ? "" : ": " + one.borderline);
    }
  }
  answer.json["candidates"] = std::move(candidates);
  Json excluded = Json::array();
  for (const assay::Excluded& one : found.excluded) {
    excluded.push_back({{"material", one.material}, {"by", one.by}});
  }
  answer.json["excluded"] = std::move(excluded);
  answer.text += fmt::format("Ruled out: {} others.\n", found.excluded.size());
}

// "uv_long" -> "glow in long-wave ultraviolet".
std::string words_of(const std::string& test) {
  for (const BenchKey& one : bench_keys()) {
    if (one.key == test) {
      return one.what.substr(0, one.what.find_first_of(":,"));
    }
  }
  return replace_all(test, "_", " ");
}

void add_next(const assay::Identified& found, Answer& answer) {
  Json next = Json::array();
  answer.text += found.next.empty() ? "" : "\nMeasure next\n";
  for (const assay::NextTest& one : found.next) {
    next.push_back({{"test", one.test},
                    {"words", words_of(one.test)},
                    {"gain_bits", one.gain_bits},
                    {"minutes", one.minutes},
                    {"harm", one.harm},
                    {"allowed", one.allowed}});
    answer.text += fmt::format("  {:<18} {:4.2f} bits, {:>2} minutes; {}\n", one.test,
                               one.gain_bits, one.minutes, one.harm);
  }
  answer.json["next"] = std::move(next);
  answer.json["never"] = assay::never();
  answer.text += "Never: " + join(assay::never(), ", ") + ".\n";
}

Result<Answer> answer_for(const Pairs& given) {
  const auto reading = read_bench(given);
  if (!reading) {
    return reading.problem();
  }
  Answer answer;
  answer.json = {{"candidates", Json::array()},
                 {"excluded", Json::array()},
                 {"refused", Json::array()},
                 {"next", Json::array()},
                 {"density", density_json(reading->bench.density)}};
  std::vector<std::string> refused;
  add_whole(*reading, answer, refused);
  if (reading->bench.density) {
    answer.text += fmt::format("Density {:.4f} g/cm3, standard uncertainty {:.4f}.\n",
                               reading->bench.density->g_cm3, reading->bench.density->u);
  }
  const auto found = assay::identify(reading->bench);
  if (!found) {
    return found.problem();
  }
  add_fineness(reading->bench, *found, answer);
  add_found(*found, answer);
  for (const std::string& note : found->notes) {
    answer.text += "Note: " + note + ".\n";
  }
  add_next(*found, answer);
  for (const std::string& one : refused) {
    answer.text += "Refused: " + one + ".\n";
  }
  answer.json["refused"] = refused;
  answer.json["notes"] = found->notes;
  answer.json["caution"] = caution;
  answer.text += caution;
  answer.text += "\n";
  return answer;
}

// A word of the record that the bench knows under the same name in another sense is left out:
// "metal: silver" says what was seen, not the density of the metal of a set thing.
bool is_reading(const BenchKey& key, const std::string& value) {
  return (key.key != "metal" && key.key != "stone") ||
         static_cast<bool>(read_bench({{"set", "yes"}, {key.key, value}}));
}

// What is on record of a piece or one of its parts under the names that the bench uses.
Pairs recorded(const model::Show& show, const model::Piece& piece, const std::string& part) {
  Pairs given;
  for (const model::Observation& seen : show.observations_of(piece.id)) {
    const model::Character* character = show.find(seen.character);
    const std::string of(show.text(character->part));
    const auto known = std::find_if(
        bench_keys().begin(), bench_keys().end(),
        [&](const BenchKey& one) { return lower_ascii(one.key) == character->key; });
    if ((!part.empty() && of != part) || known == bench_keys().end() ||
        seen.seen != model::Seen::value) {
      continue;
    }
    const std::string value = character->shape == model::Shape::number
                                  ? fmt::format("{:.10g}", seen.number)
                                  : std::string(show.text(seen.value));
    if (is_reading(*known, value)) {
      given[known->key] = value;
    }
  }
  return given;
}

Problem nothing_recorded(const std::string& number, const std::string& part) {
  std::vector<std::string> keys;
  for (const BenchKey& one : bench_keys()) {
    keys.push_back(one.key);
  }
  return {Fault::not_found,
          fmt::format("nothing measured at the bench is on record of {}{}", number,
                      part.empty() ? "" : ", " + part),
          "", "record observations named " + join(keys, ", ")};
}

// A piece, perhaps a part of it, and readings that stand over those on record.
Result<Answer> of_piece(const Call& call, const std::vector<std::string>& words) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto first_reading = std::find_if(words.begin(), words.end(), [](const auto& word) {
    return word.find('=') != std::string::npos;
  });
  const std::vector<std::string> names(words.begin(), first_reading);
  const auto typed = read_pairs({first_reading, words.end()});
  if (!typed) {
    return typed.problem();
  }
  if (names.empty()) {
    return answer_for(*typed);
  }
  const auto piece = find_piece(open->show, names[0]);
  if (!piece) {
    return piece.problem();
  }
  const std::string part = names.size() > 1 ? lower_ascii(names[1]) : "";
  Pairs given = recorded(open->show, **piece, part);
  for (const auto& [key, value] : *typed) {
    given[key] = value;
  }
  return given.empty() ? Result<Answer>(nothing_recorded(names[0], part)) : answer_for(given);
}

Result<Answer> run(const Call& call, const Surroundings&) {
  std::vector<std::string> words = call.texts("words");
  const std::string first = call.text("show");
  if (first.find('=') != std::string::npos) {
    words.insert(words.begin(), first);
    const auto given = read_pairs(words);
    return given ? answer_for(*given) : Result<Answer>(given.problem());
  }
  if (words.empty()) {
    return Problem{Fault::bad_input, "nothing was measured", "",
                   "write readings such as air_g=12.480 water_g=7.960, or SHOW NUMBER [PART]"};
  }
  return of_piece(call, words);
}

}  // namespace

Operation identify_material() {
  std::vector<std::string> keys;
  for (const BenchKey& one : bench_keys()) {
    keys.push_back(one.key);
  }
  return {
      .name = "identify",
      .help =
          "candidate materials from what was measured at the bench, and what to measure next",
      .parameters = {{.name = "show",
                      .help = "the folder of the show, or the first reading",
                      .positional = true,
                      .required = true},
                     {.name = "words",
                      .takes = Takes::texts,
                      .help = "readings as key=value (" + join(keys, ", ") +
                              "), or the number of a piece, a part of it, and readings "
                              "that stand over those on record",
                      .positional = true}},
      .run = run};
}

}  // namespace backmark::desk
