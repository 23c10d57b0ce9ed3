#include <map>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
#include "desk/sources_json.h"

namespace backmark::desk {

namespace {

using evidence::ClaimOnFile;
using model::Show;

std::string count_words(std::size_t count, const char* one, const char* many) {
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

std::string source_text(const SourceStanding& one, const SourcesWeighed* weighed) {
  std::string text =
      fmt::format("  {} {:>5}  {}", padded(shortened(one.source->title, 44), 44),
                  one.source->year ? std::to_string(one.source->year->value) : "",
                  padded(fmt::format("{} of {}", count_words(one.claims, "saying", "sayings"),
                                     count_words(one.pieces, "piece", "pieces")),
                         26));
  if (weighed != nullptr && weighed->sources.contains(one.source->id.value)) {
    const evidence::SourceChecked& checked = weighed->sources.at(one.source->id.value);
    text += fmt::format("borne out {:.0f} in 20, by {}", 20 * checked.share,
                        count_words(checked.told, "lot", "lots"));
  }
  return without_trailing_spaces(text) + "\n";
}

// Each origin with what repeats it below it.
std::string sources_text(const std::vector<SourceStanding>& standings,
                         const SourcesWeighed* weighed) {
  std::map<std::string, std::string> told_again;  // by origin
  for (const SourceStanding& one : standings) {
    if (one.origin != one.source->key) {
      told_again[one.origin] += "  " + source_text(one, weighed);
    }
  }
  std::string text;
  for (const SourceStanding& one : standings) {
    if (one.origin != one.source->key) {
      continue;
    }
    text += source_text(one, weighed);
    const std::string& echoes = told_again[one.origin];
    text += echoes.empty() ? "" : "    told again by, and counted once with it:\n" + echoes;
  }
  return text;
}

std::string voices_text(const Show& show, const ClaimOnFile& claim) {
  std::string text;
  for (std::size_t v = 0; v < claim.voices.size(); ++v) {
    const evidence::Voice& voice = claim.voices[v];
    const model::Source* source = show.find(voice.source);
    const bool heard =
        std::find(claim.counted.begin(), claim.counted.end(), v) != claim.counted.end();
    const model::Source* origin = show.source(voice.origin);
    text += fmt::format(
        "    {}  {}  {}\n", voice.for_it ? "for    " : "against",
        padded(shortened(source == nullptr ? "no source named" : source->title, 40), 40),
        heard
            ? fmt::format("believed {:.0f} in 20", 20 * voice.reliability)
            : "counts with " + shortened(origin == nullptr ? voice.origin : origin->title, 34));
  }
  return text;
}

std::string claims_text(const Show& show,
                        const std::vector<ClaimOnFile>& claims,
                        const SourcesWeighed* weighed) {
  std::string text = claims.empty() ? "" : "\nClaims\n";
  for (const ClaimOnFile& claim : claims) {
    text += fmt::format("  {}\n", claim.claim.words);
    if (weighed != nullptr) {
      const model::ClaimTest& test = weighed->claims.at(claim.ask);
      text += fmt::format("    all told {:.1f} in 20; the {} alone {:.1f} in 20\n", 20 * test.p,
                          count_words(test.pieces, "piece", "pieces"), 20 * test.p_pieces);
    }
    text += voices_text(show, claim);
  }
  return text;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto standings = source_standings(open->show);
  const auto claims = evidence::claims_on_file(open->show);
  std::shared_ptr<const SourcesWeighed> weighed;
  if (call.flag("weigh")) {
    auto made = weigh_sources(*open, claims, around);
    if (!made) {
      return made.problem();
    }
    weighed = *made;
  }
  const auto last = last_run(*open);
  Answer answer;
  answer.json =
      sources_json(open->show, standings, claims, weighed.get(), last ? &*last : nullptr);
  answer.text = standings.empty()
                    ? "Nobody has said anything yet. Note a source on any piece.\n"
                    : count_words(standings.size(), "source", "sources") + "\n" +
                          sources_text(standings, weighed.get()) +
                          claims_text(open->show, claims, weighed.get());
  if (weighed == nullptr && !standings.empty()) {
    answer.text += "\nAsk with --weigh for what the pieces say.\n";
  }
  return answer;
}

}  // namespace

Operation sources_told() {
  return {.name = "sources",
          .help = "who says so, who they had it from, and what the pieces say",
          .from_show_alone = true,
          .parameters = {show_folder(),
                         {.name = "weigh",
                          .takes = Takes::flag,
                          .help = "hold each source and claim to the pieces"}},
          .run = run};
}

}  // namespace backmark::desk
