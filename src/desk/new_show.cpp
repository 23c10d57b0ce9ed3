#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
#include "store/store.h"

namespace backmark::desk {

namespace {

Result<Answer> run(const Call& call, const Surroundings& around) {
  const Path folder = call.path("show");
  if (auto made = store::create(folder); !made) {
    return made.problem();
  }
  auto store = store::Store::open(folder, store::Access::change);
  if (!store) {
    return store.problem();
  }
  auto show = store->load();
  if (!show) {
    return show.problem();
  }
  model::Change change(*show, "new", "the show was begun");
  const std::string title = call.has("title") ? call.text("title") : folder.stem().string();
  change.add(model::Setting{.key = "title", .value = title});
  if (auto done = store->apply(change, around.who, around.now); !done) {
    return done.problem();
  }
  Answer answer;
  answer.json = {{"show", folder.string()}, {"title", title}};
  answer.text = fmt::format(
      "The show \"{}\" is begun in {}.\nNext: backmark import {} FILE.csv --map MAP.toml\n",
      title, folder.string(), folder.string());
  return answer;
}

}  // namespace

Operation new_show() {
  return {.name = "new",
          .help = "start an empty show",
          .writes = true,
          .parameters = {show_folder(), {.name = "title", .help = "the show's title"}},
          .run = run};
}

}  // namespace backmark::desk
