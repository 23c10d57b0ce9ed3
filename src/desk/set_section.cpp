#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"

namespace backmark::desk {

namespace {

using model::Section;

Result<Section> asked_for(const Call& call, const model::Show& show) {
  Section section;
  section.key = call.text("key");
  section.title = section.key;
  section.rank = static_cast<std::int32_t>(show.all<Section>().size()) + 1;
  for (const Section& known : show.all<Section>()) {
    if (known.key == section.key) {
      section = known;
    }
  }
  if (call.has("title")) {
    section.title = call.text("title");
  }
  const auto rank = call.whole("rank", section.rank);
  if (!rank) {
    return rank.problem();
  }
  section.rank = static_cast<std::int32_t>(*rank);
  if (call.has("introduction")) {
    auto text = read_file(call.path("introduction"));
    if (!text) {
      return text.problem();
    }
    section.introduction = std::string(trim(*text));
  }
  return section;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  auto section = asked_for(call, open->show);
  if (!section) {
    return section.problem();
  }
  const bool is_new = !section->id;
  model::Change change(open->show, "section", fmt::format("section \"{}\"", section->title));
  if (is_new) {
    change.add(*section);
  } else {
    change.replace(*section);
  }
  Answer answer;
  answer.json = {{"key", section->key},
                 {"title", section->title},
                 {"rank", section->rank},
                 {"new", is_new}};
  answer.text = fmt::format("Section {} \"{}\" {}.\n", section->rank, section->title,
                            is_new ? "is begun" : "is changed");
  return after_change(*open, change, around, answer);
}

}  // namespace

Operation set_section() {
  return {.name = "section",
          .help = "begin a section of the show, or change its title, place or introduction",
          .writes = true,
          .parameters = {show_folder(),
                         {.name = "key",
                          .help = "short name of the section",
                          .positional = true,
                          .required = true},
                         {.name = "title", .help = "as printed"},
                         {.name = "rank",
                          .takes = Takes::whole,
                          .help = "place in the order of sections"},
                         {.name = "introduction",
                          .takes = Takes::file,
                          .help = "a Markdown file with its text"}},
          .run = run};
}

}  // namespace backmark::desk
