#include "base/text.h"
#include "scenario/coast.h"
#include "scenario/recorder.h"
#include "scenario/vocabulary.h"

namespace backmark::scenario {
namespace {

void record_makers(Recorder& recorder) {
  for (const MakerCard& card : makers()) {
    recorder.makers.push_back(
        recorder.change.add(model::Maker{.key = card.key,
                                         .name = card.name,
                                         .inverted = card.inverted,
                                         .kind = card.kind,
                                         .place = recorder.word(card.place),
                                         .from = card.documented_from,
                                         .to = card.documented_to,
                                         .from_sd = card.from_sd,
                                         .to_sd = card.to_sd,
                                         .mark = replace_all(card.legends.back(), "/", " "),
                                         .prose = card.prose,
                                         .living = card.living}));
  }
}

void record_sources(Recorder& recorder) {
  for (const SourceCard& card : source_cards()) {
    model::Source source{.key = card.key,
                         .title = card.title,
                         .kind = card.kind,
                         .year = card.year,
                         .reliability = card.reliability,
                         .citation = card.citation};
    for (const std::string& key : card.derives_from) {
      source.derives_from.push_back(recorder.sources.at(key));
    }
    recorder.sources[card.key] = recorder.change.add(std::move(source));
  }
}

void record_lineages(Recorder& recorder) {
  const auto lineage = [&](const char* character, model::Id<model::Maker> maker,
                           const std::vector<std::string>& variants) {
    model::Lineage record{.character = recorder.characters.at(character),
                          .maker = maker,
                          .source = recorder.sources.at("survey-of-marks")};
    for (const std::string& variant : variants) {
      record.variants.push_back(recorder.word(replace_all(variant, "/", " ")));
    }
    recorder.change.add(std::move(record));
  };
  lineage("clip_legend", {}, clip_legends());
  lineage("bar_kind", {}, bar_kinds());
  for (std::size_t i = 0; i < makers().size(); ++i) {
    if (!makers()[i].changed.empty()) {
      lineage("stamp", recorder.makers[i], makers()[i].legends);
    }
  }
}

void record_windows(Recorder& recorder) {
  for (const UseSaying& saying : use_sayings()) {
    recorder.change.add(model::Window{.character = recorder.characters.at(saying.character),
                                      .value = recorder.word(saying.value),
                                      .from = saying.from,
                                      .to = saying.to,
                                      .source = recorder.sources.at(saying.source)});
  }
}

}  // namespace

const std::vector<CharacterCard>& character_cards() {
  using enum model::Shape;
  static const std::vector<CharacterCard> cards{
      {"outline", "Outline", "ornament", category, "", false, 1},
      {"motif", "Motif", "ornament", category, "", false, 1},
      {"metal", "Metal", "ornament", category, "", false, 5},
      {"material", "Materials", "", set, "", false, 6},
      {"technique", "Techniques", "ornament", set, "", false, 5},
      {"border", "Border", "ornament", category, "", false, 1},
      {"setting", "Stone setting", "stone", category, "", false, 4},
      {"backing", "Stone backing", "stone", category, "", false, 12},
      {"stone_count", "Stones", "stone", number, "", false, 1},
      {"back_finish", "Finish of the back", "ornament", category, "", false, 2},
      {"gauge", "Gauge of the plate", "ornament", number, "mm", false, 3},
      {"fitting", "Fitting", "fitting", category, "", true, 1},
      {"solder", "Joint of the fitting", "fitting", category, "", true, 6},
      {"bar_kind", "Kind of bar", "fitting", ordered, "", true, 2},
      {"clip_legend", "Legend of the clip", "fitting", ordered, "", true, 4},
      {"button_bore", "Bore of the button", "fitting", category, "", true, 2},
      {"cord_type", "Cord", "cord", category, "", true, 2},
      {"cord_colour", "Colour of the cord", "cord", category, "", true, 1},
      {"cord_thickness", "Thickness of the cord", "cord", number, "mm", true, 2},
      {"cord_length", "Length of the cord", "cord", number, "mm", true, 2},
      {"tip_form", "Tips", "tip", category, "", true, 1},
      {"tips_matched", "Pair of tips", "tip", category, "", true, 2},
      {"tip_length", "Length of the tips", "tip", number, "mm", true, 2},
      {"mark_form", "Kind of mark", "ornament", category, "", false, 3},
      {"stamp", "Legend of the mark", "ornament", ordered, "", false, 3},
      {"inscription", "Inscription", "ornament", text, "", false, 3},
      {"bail_scar", "Filed place of a loop", "ornament", category, "", false, 4},
      {"height", "Height", "ornament", number, "mm", false, 1},
      {"width", "Width", "ornament", number, "mm", false, 1},
      {"depth", "Depth", "ornament", number, "mm", false, 1},
      {"mass", "Mass with cord", "", number, "g", false, 2},
      {"remark", "Remark", "", words, "", false, 1},
  };
  return cards;
}

void record_knowledge(Recorder& recorder) {
  for (const CharacterCard& card : character_cards()) {
    recorder.characters[card.key] =
        recorder.change.add(model::Character{.key = card.key,
                                             .label = card.label,
                                             .part = recorder.word(card.part),
                                             .shape = card.shape,
                                             .unit = card.unit,
                                             .replaceable = card.replaceable,
                                             .minutes = card.minutes});
  }
  record_makers(recorder);
  record_sources(recorder);
  record_lineages(recorder);
  record_windows(recorder);
}

}  // namespace backmark::scenario
