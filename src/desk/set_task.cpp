#include <algorithm>
#include <map>

#include "base/text.h"
#include "desk/each.h"
#include "desk/measures.h"
#include "desk/task_list.h"

namespace backmark::desk {

namespace {

using model::Task;

Result<bool> read_done(const std::string& text) {
  if (text != "yes" && text != "no") {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is neither yes nor no", text),
                   "--done", "write --done yes, or --done no to take it back"};
  }
  return text == "yes";
}

Result<Task> asked_for(const Call& call, Task one) {
  const Bounds days{.low = 0, .high = 10000, .unit = "days"};
  if (auto done = all_taken(take(call, "least", days, one.least_days),
                            take(call, "likely", days, one.likely_days),
                            take(call, "greatest", days, one.greatest_days));
      !done) {
    return done.problem();
  }
  one.title = call.has("title") ? call.text("title") : one.title;
  one.title = one.title.empty() ? one.key : one.title;
  one.group = call.has("group") ? call.text("group") : one.group;
  one.after = call.has("after") ? std::string(trim(call.text("after"))) : one.after;
  if (call.has("holds")) {
    const auto holds = read_holds(call.text("holds"));
    if (!holds) {
      return holds.problem();
    }
    one.holds = *holds;
  }
  if (call.has("done")) {
    const auto done = read_done(call.text("done"));
    if (!done) {
      return done.problem();
    }
    one.done = *done;
  }
  return one;
}

// The list with one task changed, added before "open", or taken away.
Result<std::vector<Task>> with_one(const Call& call, std::vector<Task> tasks) {
  const std::string key(trim(call.text("key")));
  const auto known = std::find_if(tasks.begin(), tasks.end(),
                                  [&](const Task& task) { return task.key == key; });
  if (call.flag("drop")) {
    if (known == tasks.end()) {
      return Problem{Fault::not_found, fmt::format("no task is called \"{}\"", key), "",
                     "\"backmark schedule SHOW\" lists the tasks by their keys"};
    }
    tasks.erase(known);
    return tasks;
  }
  if (contains(key, " ")) {
    return Problem{Fault::bad_input, fmt::format("the key \"{}\" has a space", key), "",
                   "write one short word, with hyphens"};
  }
  auto one = asked_for(call, known == tasks.end() ? Task{.key = key} : *known);
  if (!one) {
    return one.problem();
  }
  if (known == tasks.end()) {
    tasks.push_back(*std::move(one));
  } else {
    *known = *std::move(one);
  }
  return tasks;
}

Result<ListRead<Task>> wanted_list(const Call& call, const model::Show& show) {
  if (call.has("key") == call.has("from")) {
    return Problem{Fault::bad_input, "name a task or give a list", "",
                   "write \"backmark task SHOW KEY --done yes\" or \"--from FILE.csv\""};
  }
  if (call.has("from")) {
    return read_tasks(call.path("from"));
  }
  auto tasks = with_one(call, tasks_of(show));
  if (!tasks) {
    return tasks.problem();
  }
  return ListRead<Task>{*std::move(tasks), {}, {}};
}

// Turns what the show keeps into what is wanted; true if anything differs.
bool keep(model::Change& change, const model::Show& show, std::vector<Task> wanted) {
  std::map<std::string, const Task*> kept;
  for (const Task& task : show.all<Task>()) {
    kept[task.key] = &task;
  }
  bool differs = false;
  for (Task& task : wanted) {
    const auto known = kept.find(task.key);
    task.id = known == kept.end() ? model::Id<Task>() : known->second->id;
    if (known == kept.end()) {
      change.add(task);
      differs = true;
      continue;
    }
    if (!(task == *known->second)) {
      change.replace(task);
      differs = true;
    }
    kept.erase(known);
  }
  for (const auto& [key, task] : kept) {
    change.withdraw(task->id, "dropped by hand");
  }
  return differs || !kept.empty();
}

Answer told(const Call& call, const std::vector<Task>& tasks) {
  const auto of_key = std::find_if(tasks.begin(), tasks.end(), [&](const Task& task) {
    return task.key == trim(call.text("key"));
  });
  Answer answer{.json = {{"tasks", tasks.size()}}, .text = {}, .problems = {}};
  if (of_key == tasks.end()) {
    answer.text = fmt::format("The list has {} tasks.\n", tasks.size());
    return answer;
  }
  answer.json["task"] = of_key->key;
  answer.json["done"] = of_key->done;
  answer.text = fmt::format(
      "{}: {}, {:g} to {:g} days, most likely {:g}, after {}{}.\n", of_key->key, of_key->title,
      of_key->least_days, of_key->greatest_days, of_key->likely_days,
      of_key->after.empty() ? "nothing" : of_key->after, of_key->done ? "; done" : "");
  return answer;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  auto wanted = wanted_list(call, open->show);
  if (!wanted) {
    return wanted.problem();
  }
  if (!wanted->problems.empty()) {
    return Answer{.json = Json::object(), .text = "", .problems = wanted->problems};
  }
  if (const auto network = curate::to_network(wanted->items); !network) {
    return network.problem();
  }
  model::Change change(open->show, "task",
                       call.has("from") ? "list of tasks" : "task " + call.text("key"));
  const Answer answer = told(call, wanted->items);
  return keep(change, open->show, wanted->items) ? after_change(*open, change, around, answer)
                                                 : answer;
}

}  // namespace

Operation set_task() {
  return {
      .name = "task",
      .help = "keeps the list of tasks: one changed, added, done or dropped, or a whole list",
      .writes = true,
      .parameters = {show_folder(),
                     {.name = "key", .help = "of one task", .positional = true},
                     {.name = "title", .help = "what is done"},
                     {.name = "group", .help = "a word that gathers tasks"},
                     {.name = "after", .help = "keys it waits for, parted by spaces"},
                     {.name = "least", .help = "calendar days if all goes well"},
                     {.name = "likely", .help = "calendar days, most likely"},
                     {.name = "greatest", .help = "calendar days if all goes badly"},
                     {.name = "holds", .help = "which pieces it holds up: show, book, loan"},
                     {.name = "done", .help = "yes or no"},
                     {.name = "drop", .takes = Takes::flag, .help = "take it off the list"},
                     {.name = "from",
                      .takes = Takes::file,
                      .help = "the whole list, as \"schedule --csv\" prints it"}},
      .run = run};
}

}  // namespace backmark::desk
