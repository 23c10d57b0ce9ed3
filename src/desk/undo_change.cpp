#include "base/json.h"
#include "base/text.h"
#include "desk/calendar.h"
#include "desk/each.h"

namespace backmark::desk {

namespace {

// Which change is meant; none: the newest that holds.
Result<std::optional<std::int64_t>> meant(const Call& call,
                                          OpenShow& open,
                                          const std::string& who) {
  using Place = std::optional<std::int64_t>;
  if (call.has("change") && call.flag("again")) {
    return Problem{Fault::bad_input, "--change and --again are two ways to say which", "",
                   "give one of them"};
  }
  if (call.flag("again")) {
    const auto last = open.store.last_step_back(who);
    return last ? Result<Place>(*last) : last.problem();
  }
  if (!call.has("change")) {
    return Place();
  }
  const auto position = call.whole("change", 0);
  return position ? Result<Place>(*position) : position.problem();
}

// "undone: pick ES 118" -> "Undone: pick ES 118."
std::string in_words(const std::string& summary, bool again) {
  return (again ? "Done again" : "Undone") + summary.substr(summary.find(':')) + ".";
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  const auto position = meant(call, *open, around.who);
  if (!position) {
    return position.problem();
  }
  const auto undoing = open->store.undoing(open->show, *position, around.who);
  if (!undoing) {
    return undoing.problem();
  }
  const store::Entry& undone = undoing->undone;
  const std::string& summary = undoing->change.summary();
  const bool again = summary.rfind("again", 0) == 0;
  const std::string words = in_words(summary, again);
  Answer answer;
  answer.json = {{"undone",
                  {{"change", undone.position},
                   {"who", undone.who},
                   {"at", to_minute(undone.at)},
                   {"what", undone.operation + " " + undone.summary}}},
                 {"again", again},
                 {"by", open->show.position + 1},
                 {"words", words}};
  answer.text = words + "\n";
  return after_change(*open, undoing->change, around, answer);
}

}  // namespace

Operation undo_change() {
  return {.name = "undo",
          .help = "take a change back: your newest, or any by its number",
          .writes = true,
          .recording = true,
          .parameters = {show_folder(),
                         {.name = "change",
                          .takes = Takes::whole,
                          .help = "its number in \"history\", whoever made it"},
                         {.name = "again",
                          .takes = Takes::flag,
                          .help = "do again what was undone last"}},
          .run = run};
}

}  // namespace backmark::desk
