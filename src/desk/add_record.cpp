#include "base/json.h"
#include "base/text.h"
#include "desk/add_words.h"
#include "desk/each.h"
#include "desk/pairs.h"

namespace backmark::desk {

namespace {

const std::vector<std::string>& kinds() {
  static const std::vector<std::string> list = {"piece", "maker",     "source",  "claim",
                                                "event", "character", "lineage", "window"};
  return list;
}

Result<Added> added_by(const model::Show& show,
                       const std::string& kind,
                       const Words& words,
                       const std::string& who) {
  if (kind == "claim") {
    return add_claim(show, words, who);
  }
  if (kind == "event") {
    return add_event(show, words);
  }
  if (kind == "character") {
    return add_character(show, words);
  }
  if (kind == "lineage") {
    return add_lineage(show, words);
  }
  return add_listed(show, kind, words);
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  auto open = open_show(call, store::Access::change);
  if (!open) {
    return open.problem();
  }
  const std::string kind = call.text("kind");
  if (std::find(kinds().begin(), kinds().end(), kind) == kinds().end()) {
    const auto near = closest(kind, kinds());
    return Problem{Fault::bad_input, fmt::format("a \"{}\" cannot be added by hand", kind), "",
                   near ? fmt::format("did you mean \"{}\"?", *near)
                        : "what can be: " + join(kinds(), ", ")};
  }
  const auto words = read_pairs(call.texts("words"));
  if (!words) {
    return words.problem();
  }
  const std::int32_t next = open->show.next_id;
  auto added = added_by(open->show, kind, *words, around.who);
  if (!added) {
    return added.problem();
  }
  Answer answer;
  answer.json = {{"kind", kind},
                 {"said", added->said},
                 {"change", open->show.position + 1},
                 {"records", added->change.next_id() - next}};
  answer.text = added->said + "\n";
  return after_change(*open, added->change, around, answer);
}

}  // namespace

Operation add_record() {
  return {.name = "add",
          .help = "add a piece, maker, source, claim, event, character, lineage or window",
          .writes = true,
          .parameters =
              {show_folder(),
               {.name = "kind", .help = "what is added", .positional = true, .required = true},
               {.name = "words",
                .takes = Takes::texts,
                .help = "what is said of it, as number=\"ES 400\" made=\"about 1955\"",
                .positional = true,
                .required = true}},
          .run = run};
}

}  // namespace backmark::desk
