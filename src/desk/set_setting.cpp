#include <algorithm>
#include <array>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"

namespace backmark::desk {

namespace {

using model::Setting;

enum class Kind { text, day, years, measure, choice };

struct Known {
  std::string_view key;
  Kind kind;
  std::string_view help;
  std::string_view choices = {};  // joined by spaces
};

// Every setting that a paper or a reckoning reads. Whoever reads a new one adds its row.
constexpr std::array<Known, 17> known_settings{
    {{"title", Kind::text, "of show and book"},
     {"subtitle", Kind::text, "of the book"},
     {"author", Kind::text, "of the book, and of texts that name nobody"},
     {"house", Kind::text, "where the show is, as sheets and the title page have it"},
     {"opens", Kind::day, "opening day"},
     {"closes", Kind::day, "last day"},
     {"delivery", Kind::text, "where loans are brought, if not to the house"},
     {"insurance", Kind::text, "who insures the loans"},
     {"years.first", Kind::years, "first year that may be reckoned with"},
     {"years.last", Kind::years, "last year that may be reckoned with"},
     {"labels.distance", Kind::measure, "mm from which object labels are read"},
     {"book.trim", Kind::choice, "A: 240 x 300 mm, B: 170 x 240 mm", "A B"},
     {"book.bleed", Kind::measure, "mm round the trim"},
     {"book.sheet", Kind::choice, "pages of a signature", "4 8 16 32"},
     {"look.tray_minutes", Kind::measure, "to fetch a tray"},
     {"look.lender_minutes", Kind::measure, "to go to a lender"},
     {"look.piece_minutes", Kind::measure, "to handle a piece"}}};

Result<const Known*> known_of(const std::string& key) {
  std::vector<std::string> keys;
  for (const Known& one : known_settings) {
    if (one.key == key) {
      return &one;
    }
    keys.emplace_back(one.key);
  }
  const auto near = closest(key, keys);
  return Problem{
      Fault::not_found, fmt::format("there is no setting \"{}\"", key), "",
      near ? fmt::format("did you mean \"{}\"?", *near) : "settings are: " + join(keys, ", ")};
}

bool is_day(std::string_view text) {
  const auto parts = split(text, "-");
  return text.size() == 10 && parts.size() == 3 && to_whole(parts[0]) && to_whole(parts[1]) &&
         to_whole(parts[2]) && *to_whole(parts[1]) >= 1 && *to_whole(parts[1]) <= 12 &&
         *to_whole(parts[2]) >= 1 && *to_whole(parts[2]) <= 31;
}

// Empty if the value may stand; else how it should be written.
std::string how_to_write(const Known& known, const std::string& value) {
  const auto number = to_number(value);
  switch (known.kind) {
    case Kind::text:
      return "";
    case Kind::day:
      return is_day(value) ? "" : "write a day as 2027-05-17";
    case Kind::years:
      return to_whole(value) ? "" : "write a year as 1930";
    case Kind::measure:
      return number && *number >= 0 && *number <= 100'000 ? "" : "write a number as 3 or 2.5";
    case Kind::choice:
      break;
  }
  const auto choices = split(known.choices, " ");
  return std::find(choices.begin(), choices.end(), value) != choices.end()
             ? ""
             : "choose: " + replace_all(std::string(known.choices), " ", ", ");
}

const Setting* setting_of(const model::Show& show, std::string_view key) {
  const auto& all = show.all<Setting>();
  const auto at = std::find_if(all.begin(), all.end(),
                               [key](const Setting& one) { return one.key == key; });
  return at == all.end() ? nullptr : &*at;
}

Answer told(const model::Show& show) {
  Answer answer;
  answer.json = Json::array();
  for (const Known& one : known_settings) {
    const Setting* set = setting_of(show, one.key);
    const std::string value = set == nullptr ? "" : set->value;
    answer.json.push_back({{"key", one.key}, {"value", value}, {"help", one.help}});
    answer.text += without_trailing_spaces(padded(std::string(one.key), 21) +
                                           padded(value.empty() ? "-" : value, 30) + "  " +
                                           std::string(one.help)) +
                   "\n";
  }
  return answer;
}

// A change that gives the setting this value, or takes it away.
model::Change change_to(const model::Show& show,
                        std::string_view key,
                        const std::string& value) {
  model::Change change(
      show, "setting",
      value.empty() ? fmt::format("{} unset", key) : fmt::format("{} = {}", key, value));
  const Setting* set = setting_of(show, key);
  if (set == nullptr && !value.empty()) {
    change.add(Setting{.key = std::string(key), .value = value});
  } else if (set != nullptr && value.empty()) {
    change.withdraw(set->id, "unset");
  } else if (set != nullptr) {
    Setting mended = *set;
    mended.value = value;
    change.replace(mended);
  }
  return change;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  const bool changes = call.has("value") || call.flag("unset");
  auto open = open_show(call, changes ? store::Access::change : store::Access::look);
  if (!open) {
    return open.problem();
  }
  if (!call.has("key")) {
    return told(open->show);
  }
  const auto known = known_of(call.text("key"));
  if (!known) {
    return known.problem();
  }
  const std::string key((*known)->key);
  if (!changes) {
    const Setting* set = setting_of(open->show, key);
    const std::string value = set == nullptr ? "" : set->value;
    return Answer{
        .json = {{"key", key}, {"value", value}}, .text = value + "\n", .problems = {}};
  }
  const std::string value = call.flag("unset") ? "" : std::string(trim(call.text("value")));
  if (value.empty() != call.flag("unset")) {
    return Problem{Fault::bad_input, fmt::format("no value is given for \"{}\"", key), "",
                   "give one, or --unset to take it away"};
  }
  if (const std::string fix = value.empty() ? "" : how_to_write(**known, value); !fix.empty()) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is no {}", value, key), "", fix};
  }
  return after_change(*open, change_to(open->show, key, value), around,
                      {.json = {{"key", key}, {"value", value}},
                       .text = value.empty() ? fmt::format("{} is unset.\n", key)
                                             : fmt::format("{} is {}.\n", key, value),
                       .problems = {}});
}

}  // namespace

Operation set_setting() {
  return {
      .name = "setting",
      .help = "what holds for the whole show: title, opening day, trim of the book ...",
      .writes = true,
      .parameters = {show_folder(),
                     {.name = "key", .help = "which; all of them without", .positional = true},
                     {.name = "value", .help = "what it shall be", .positional = true},
                     {.name = "unset", .takes = Takes::flag, .help = "take it away"}},
      .run = run};
}

}  // namespace backmark::desk
