#include <algorithm>
#include <array>

#include "base/text.h"
#include "care/rights.h"
#include "desk/calendar.h"
#include "desk/each.h"
#include "desk/measures.h"
#include "desk/or_null.h"

namespace backmark::desk {

namespace {

using model::Leave;
using model::Permission;
using model::Show;
using model::Use;

struct NamedUse {
  std::string_view word;
  std::vector<Use> uses;
};

const std::vector<NamedUse>& use_words() {
  static const std::vector<NamedUse> words{
      {"show", {Use::show}},
      {"print", {Use::print}},
      {"web", {Use::web}},
      {"examine", {Use::examine}},
      {"photograph", {Use::photograph}},
      {"all", {Use::show, Use::print, Use::web}},
      {"consent", {Use::examine, Use::photograph, Use::show, Use::print}}};
  return words;
}

constexpr std::array<std::string_view, 5> words_of_use{"show", "print", "web", "examine",
                                                       "photograph"};
constexpr std::array<std::string_view, 3> words_of_leave{"asked", "given", "refused"};

std::string_view word_of(Use use) {
  return words_of_use[static_cast<std::size_t>(use)];
}

Result<std::vector<Use>> uses_named(const std::string& word) {
  std::vector<std::string> known;
  for (const NamedUse& one : use_words()) {
    if (one.word == word) {
      return one.uses;
    }
    known.emplace_back(one.word);
  }
  return Problem{Fault::bad_input,
                 fmt::format("\"{}\" is nothing that leave is given for", word), "use",
                 "write one of: " + join(known, ", ")};
}

Result<Leave> leave_named(const std::string& word) {
  for (std::size_t i = 0; i < words_of_leave.size(); ++i) {
    if (words_of_leave[i] == word) {
      return static_cast<Leave>(i);
    }
  }
  return Problem{Fault::bad_input, fmt::format("\"{}\" is no answer", word), "answer",
                 "write asked, given or refused"};
}

// Whom or what an answer is about: a piece, a picture by its file, a maker or a source by key.
Result<std::int32_t> subject_named(const Show& show, const std::string& name) {
  if (const model::Piece* piece = show.piece(name)) {
    return piece->id.value;
  }
  for (const model::Photograph& one : show.all<model::Photograph>()) {
    if (one.file == name) {
      return one.id.value;
    }
  }
  if (const model::Maker* maker = show.maker(name)) {
    return maker->id.value;
  }
  if (const model::Source* source = show.source(name)) {
    return source->id.value;
  }
  Problem problem = find_piece(show, name).problem();
  problem.what =
      fmt::format("there is no piece, photograph, maker or source \"{}\" in this show", name);
  return problem;
}

Json answer_json(const Permission* held) {
  if (held == nullptr) {
    return nullptr;
  }
  return {{"answer", words_of_leave[static_cast<std::size_t>(held->leave)]},
          {"terms", held->terms},
          {"credit", held->credit},
          {"day", iso_day(held->day)}};
}

std::string short_answer(const Permission* held) {
  return held == nullptr ? "not asked"
                         : std::string(words_of_leave[static_cast<std::size_t>(held->leave)]);
}

// How the picked pieces stand, and every gated one.
Answer told(const Show& show) {
  const care::Rights rights(show);
  std::vector<std::int32_t> picked;
  for (const model::Pick& pick : show.all<model::Pick>()) {
    picked.push_back(pick.piece.value);
  }
  std::sort(picked.begin(), picked.end());
  Answer answer;
  answer.json = {{"pieces", Json::array()}};
  int clear = 0;
  for (const model::Piece& piece : show.all<model::Piece>()) {
    const auto gate = rights.gate(piece);
    if (!gate && !std::binary_search(picked.begin(), picked.end(), piece.id.value)) {
      continue;
    }
    Json one = {{"number", piece.number}, {"gated", or_null(gate)}};
    std::vector<std::string> missing;
    for (const Use use : {Use::show, Use::print, Use::web, Use::examine, Use::photograph}) {
      const Permission* held = rights.answer(piece.id.value, use);
      one[std::string(word_of(use))] = answer_json(held);
      if (!rights.may(piece, use)) {
        missing.push_back(fmt::format("{} {}", word_of(use), short_answer(held)));
      }
    }
    one["withheld"] = rights.withheld(piece);
    answer.json["pieces"].push_back(std::move(one));
    clear += missing.empty();
    if (!missing.empty()) {
      answer.text += fmt::format("{} {}{}\n", padded(piece.number, 10), join(missing, ", "),
                                 gate ? "  (GATED: " + *gate + ")" : "");
    }
  }
  answer.text += fmt::format("{} of {} pieces have every leave. No answer means no.\n", clear,
                             answer.json["pieces"].size());
  return answer;
}

Permission standing_of(const model::Answers& answers, std::int32_t subject, Use use) {
  const Permission* held = answers.on(subject, use);
  return held != nullptr ? *held : Permission{.subject = subject, .use = use};
}

Result<Answer> log(OpenShow& open, const Call& call, const Surroundings& around) {
  const auto subject = subject_named(open.show, call.text("subject"));
  if (!subject) {
    return subject.problem();
  }
  const auto uses = uses_named(call.text("use"));
  if (!uses) {
    return uses.problem();
  }
  const auto leave = leave_named(call.text("answer"));
  if (!leave) {
    return leave.problem();
  }
  const auto day = day_given(call, "day", day_of(around.now));
  if (!day) {
    return day.problem();
  }
  const std::string summary =
      fmt::format("{}: {} {}", call.text("subject"), call.text("use"), call.text("answer"));
  model::Change change(open.show, "leave", summary);
  const model::Answers answers(open.show);
  for (const Use use : *uses) {
    Permission one = standing_of(answers, *subject, use);
    one.leave = *leave;
    one.terms = call.has("terms") ? call.text("terms") : one.terms;
    one.credit = call.has("credit") ? call.text("credit") : one.credit;
    one.day = *day;
    one.by = change.word(call.has("by") ? call.text("by") : around.who);
    if (one.id) {
      change.replace(one);
    } else {
      change.add(one);
    }
  }
  return after_change(open, change, around,
                      {{{"subject", call.text("subject")},
                        {"use", call.text("use")},
                        {"answer", call.text("answer")},
                        {"day", iso_day(*day)}},
                       summary + ".\n",
                       {}});
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  const bool logs = call.has("subject");
  auto open = open_show(call, logs ? store::Access::change : store::Access::look);
  if (!open) {
    return open.problem();
  }
  if (!logs) {
    return told(open->show);
  }
  if (!call.has("use") || !call.has("answer")) {
    return Problem{Fault::bad_input, "the answer is not said", "",
                   "write \"backmark leave SHOW SUBJECT print given\""};
  }
  return log(*open, call, around);
}

}  // namespace

Operation log_leave() {
  return {
      .name = "leave",
      .help = "log an answer: what may be shown, printed, put on the web; or how things stand",
      .writes = true,
      .parameters =
          {show_folder(),
           {.name = "subject",
            .help = "a piece, the file of a photograph, a maker or a source",
            .positional = true},
           {.name = "use",
            .help = "show, print, web, all; examine, photograph, consent (of what may be a "
                    "cultural item)",
            .positional = true},
           {.name = "answer", .help = "asked, given or refused", .positional = true},
           {.name = "terms", .help = "on which terms"},
           {.name = "credit", .help = "what must stand beside it"},
           {.name = "by", .help = "who answered (you)"},
           {.name = "day", .help = "of the answer (today)"}},
      .run = run};
}

}  // namespace backmark::desk
