#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
#include "desk/kept_calibration.h"
#include "desk/years_json.h"
#include "words/use_phrase.h"

namespace backmark::desk {

namespace {

using evidence::UseGroup;
using evidence::UseRow;

std::string key_of(const model::Show& show, const UseGroup& group) {
  const model::Character* character = show.find(group.character);
  return character == nullptr ? "mark" : character->key;
}

// Those of the characters asked for; all if none is.
Result<std::vector<const UseGroup*>> chosen(const UseChart& chart,
                                            const std::vector<std::string>& keys) {
  std::vector<const UseGroup*> groups;
  std::vector<std::string> known;
  for (const UseGroup& group : chart.groups) {
    known.push_back(key_of(*chart.show, group));
    if (keys.empty() || std::find(keys.begin(), keys.end(), known.back()) != keys.end()) {
      groups.push_back(&group);
    }
  }
  for (const std::string& key : keys) {
    if (std::find(known.begin(), known.end(), key) == known.end()) {
      const auto near = closest(key, known);
      return Problem{Fault::not_found,
                     fmt::format("nothing of a character \"{}\" can be drawn over years", key),
                     "--character",
                     near ? fmt::format("did you mean \"{}\"?", *near)
                          : "note a character on two dated pieces first"};
    }
  }
  return groups;
}

std::string row_text(const UseChart& chart, const UseRow& row) {
  return fmt::format(
      "  {} {:>4} dated of {:>4}   {}\n", padded(shortened(row.value, 34), 34), row.known,
      row.pieces.size(),
      row.use ? words::phrase_use(row.use->start, row.use->end, chart.axis) : "no dated piece");
}

std::string group_text(const UseChart& chart, const UseGroup& group, std::size_t most) {
  const model::Character* character = chart.show->find(group.character);
  const model::Maker* maker =
      group.lineage == nullptr ? nullptr : chart.show->find(group.lineage->maker);
  std::string text = fmt::format("\n{}{}{}\n", character == nullptr ? "Mark" : character->label,
                                 maker == nullptr ? "" : " of " + maker->name,
                                 group.lineage == nullptr ? "" : ", in order of descent");
  for (std::size_t r = 0; r < std::min(most, group.rows.size()); ++r) {
    text += row_text(chart, group.rows[r]);
  }
  if (group.rows.size() > most) {
    text += fmt::format("  and {} more; ask with --character {}\n", group.rows.size() - most,
                        key_of(*chart.show, group));
  }
  return text;
}

std::string makers_text(const UseChart& chart) {
  std::string text = chart.makers.empty() ? "" : "\nMakers at work\n";
  for (const evidence::MakerUse& one : chart.makers) {
    text += fmt::format("  {} {:>4} dated of {:>4}   {}\n",
                        padded(shortened(chart.show->find(one.maker)->name, 34), 34), one.known,
                        one.pieces, words::phrase_use(one.use.start, one.use.end, chart.axis));
  }
  return text;
}

std::string calibration_text(const Json& kept) {
  if (kept.is_null()) {
    return "\nThe odds of this show were not tested yet; run \"backmark calibrate\".\n";
  }
  std::string text = fmt::format("\nTested {}{}:\n", kept["at"].get<std::string>(),
                                 kept["stale"].get<bool>() ? ", before the last changes" : "");
  for (const Json& line : kept["verdict"]) {
    text += "  " + line.get<std::string>() + "\n";
  }
  return text;
}

std::string to_text(const UseChart& chart,
                    const std::vector<const UseGroup*>& groups,
                    bool all_rows,
                    const Json& calibration) {
  constexpr std::size_t few = 6;
  const auto known = std::count_if(chart.known.begin(), chart.known.end(),
                                   [](const auto& year) { return year.has_value(); });
  std::string text =
      fmt::format("{} pieces, {} of them dated by themselves.\n", chart.known.size(), known);
  if (groups.empty()) {
    text += "Give two dated pieces a character and it appears here.\n";
  }
  for (const UseGroup* group : groups) {
    text += group_text(chart, *group, all_rows ? group->rows.size() : few);
  }
  return text + makers_text(chart) + calibration_text(calibration);
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  const auto chart = use_chart(*open, around);
  if (!chart) {
    return chart.problem();
  }
  const auto keys = call.texts("character");
  const auto groups = chosen(**chart, keys);
  if (!groups) {
    return groups.problem();
  }
  const auto last = last_run(*open);
  const Json calibration = kept_calibration(*open);
  Answer answer;
  answer.json = years_json(**chart, *groups, last ? &*last : nullptr, !keys.empty());
  answer.json["calibration"] = calibration;
  answer.text = to_text(**chart, *groups, !keys.empty(), calibration);
  return answer;
}

}  // namespace

Operation years_of_use() {
  return {.name = "years",
          .help = "how each character and maker came and went, as far as dated pieces tell",
          .parameters = {show_folder(),
                         {.name = "character",
                          .takes = Takes::texts,
                          .help = "only these, each piece listed (by their keys)"}},
          .run = run};
}

}  // namespace backmark::desk
