#include <algorithm>
#include <map>
#include <set>

#include "base/json.h"
#include "base/text.h"
#include "desk/calendar.h"
#include "desk/cleared.h"
#include "desk/each.h"
#include "desk/frozen.h"
#include "desk/grounds.h"
#include "desk/looks.h"
#include "desk/papers.h"
#include "desk/planned_work.h"
#include "desk/references.h"
#include "press/outputs.h"

namespace backmark::desk {

namespace {

// A picture that a figure names by its file needs the same leave as one that is named by its
// piece.
press::PhotographLoader without_withheld(press::PhotographLoader all,
                                         const model::Show& show,
                                         const model::Show& cleared) {
  std::set<std::string> held;
  for (const model::Photograph& one : show.all<model::Photograph>()) {
    held.insert(Path(one.file).lexically_normal().string());
  }
  for (const model::Photograph& one : cleared.all<model::Photograph>()) {
    held.erase(Path(one.file).lexically_normal().string());
  }
  return [all = std::move(all),
          held = std::move(held)](const model::Photograph& photograph) -> Result<std::string> {
    if (held.contains(Path(photograph.file).lexically_normal().string())) {
      return Problem{Fault::refused, "there is no leave to print this picture", photograph.file,
                     "ask for it, and record the answer"};
    }
    return all(photograph);
  };
}

Result<std::vector<const press::Output*>> outputs_of(const std::string& what) {
  std::vector<const press::Output*> wanted;
  std::vector<std::string> names{"all"};
  for (const press::Output& output : press::outputs()) {
    names.emplace_back(output.name);
    if (what == "all" || what == output.name) {
      wanted.push_back(&output);
    }
  }
  if (wanted.empty()) {
    const auto near = closest(what, names);
    return Problem{
        Fault::not_found, fmt::format("nothing called \"{}\" is printed", what), "",
        near ? fmt::format("did you mean \"{}\"?", *near) : "choose: " + join(names, ", ")};
  }
  return wanted;
}

Result<std::optional<words::Audience>> audience_of(const Call& call) {
  if (!call.has("for")) {
    return std::optional<words::Audience>();
  }
  const auto audience = words::audience_named(call.text("for"));
  if (!audience) {
    std::vector<std::string> names;
    for (const words::Audience one : words::all_audiences()) {
      names.emplace_back(words::name_of(one));
    }
    return Problem{Fault::bad_input, fmt::format("\"{}\" is no audience", call.text("for")),
                   "--for", "choose: " + join(names, ", ")};
  }
  return audience;
}

// Papers for one lender need a lender of that code.
Result<Done> check_lender(const model::Show& show, const std::string& code) {
  std::vector<std::string> codes;
  for (const model::Lender& lender : show.all<model::Lender>()) {
    codes.push_back(lender.code);
  }
  if (code.empty() || std::find(codes.begin(), codes.end(), code) != codes.end()) {
    return Done{};
  }
  const auto near = closest(code, codes);
  return Problem{Fault::not_found, fmt::format("there is no lender \"{}\" in this show", code),
                 "--lender",
                 near ? fmt::format("did you mean \"{}\"?", *near)
                      : "give the code of a lender, such as \"Lender 4\""};
}

// A paper that is made and not yet written.
struct Made {
  const press::Output* output;
  words::Audience audience;
  press::Printed printed;
};

Result<PrintRecord> write_all(const Path& prints, const Made& made, std::int64_t position) {
  PrintRecord record{
      std::string(made.output->name), made.audience, position, {}, made.printed.facts};
  for (const press::PrintedFile& file : made.printed.files) {
    if (auto written = write_file(prints / file.name, file.bytes); !written) {
      return written.problem();
    }
    record.files.push_back(file.name);
  }
  if (auto written = write_record(prints, record); !written) {
    return written.problem();
  }
  return record;
}

constexpr std::size_t findings_shown = 3;  // of a paper, at a terminal

void tell(Answer& answer, const press::Output& output, const press::Printed& printed) {
  Json files = Json::array();
  for (const press::PrintedFile& file : printed.files) {
    files.push_back(file.name);
    answer.text += fmt::format("prints/{}\n", file.name);
  }
  Json findings = Json::array();
  for (const Problem& finding : printed.findings) {
    findings.push_back(
        {{"what", finding.what}, {"where", finding.where}, {"fix", finding.fix}});
    if (findings.size() <= findings_shown) {
      answer.text += "  " + to_line(finding) + "\n";
    }
  }
  if (findings.size() > findings_shown) {
    answer.text += fmt::format("  and {} findings more (all of them with --json)\n",
                               findings.size() - findings_shown);
  }
  answer.json["printed"].push_back(
      {{"output", output.name}, {"files", files}, {"findings", findings}});
}

// Faults in the lists of works are told once, whatever is printed.
std::vector<model::Reference> works_cited(const Call& call,
                                          const std::vector<press::TextFile>& texts,
                                          Answer& answer) {
  Problems faults;
  auto references = references_in(texts, faults);
  for (const Problem& fault : faults) {
    answer.text += to_line(fault) + "\n";
    if (call.flag("strict")) {
      answer.problems.push_back(fault);
    }
  }
  return references;
}

// Looks are weighed only when their list is among the papers, since that takes a reckoning.
Result<std::optional<model::LookList>> looks_wanted(
    const Call& call,
    const Surroundings& around,
    OpenShow& open,
    const std::vector<const press::Output*>& outputs) {
  const auto wish = look_wish_of(call);
  if (!wish) {
    return wish.problem();
  }
  const bool listed = std::any_of(outputs.begin(), outputs.end(),
                                  [](const auto* output) { return output->name == "look"; });
  if (!listed) {
    return std::optional<model::LookList>();
  }
  auto list = looks_of(open, *wish, usual_settings(around), around);
  if (!list) {
    return list.problem();
  }
  return std::optional(*std::move(list));
}

// What all papers of a call are made from.
struct Matter {
  draw::Fonts fonts;
  Phrased reckoned;
  std::vector<press::TextFile> texts;
  std::vector<model::Reference> references = {};
  std::optional<model::LookList> looks = {};
  GroundsOf grounds = {};
  std::optional<press::PlannedWork> work = {};
  std::map<bool, Cleared> clear = {};  // the show, by whether the paper is published
};

Result<Matter> matter_of(const Call& call,
                         const Surroundings& around,
                         OpenShow& open,
                         const std::vector<const press::Output*>& outputs,
                         Answer& answer) {
  auto fonts = draw::Fonts::load();
  if (!fonts) {
    return fonts.problem();
  }
  auto reckoned = phrased(open);
  if (!reckoned) {
    return reckoned.problem();
  }
  auto texts = texts_in(open.store.folder());
  if (!texts) {
    return texts.problem();
  }
  Matter matter{*std::move(fonts), *std::move(reckoned), *std::move(texts)};
  answer.text = matter.reckoned.warning;
  matter.references = works_cited(call, matter.texts, answer);
  auto looks = looks_wanted(call, around, open, outputs);
  if (!looks) {
    return looks.problem();
  }
  matter.looks = *std::move(looks);
  auto grounds = grounds_wanted(around, open, matter.reckoned.beliefs, outputs);
  if (!grounds) {
    return grounds.problem();
  }
  matter.grounds = *std::move(grounds);
  auto work = work_wanted(around, open, outputs);
  if (!work) {
    return work.problem();
  }
  matter.work = *std::move(work);
  return matter;
}

Result<Made> make_paper(const Call& call,
                        const Surroundings& around,
                        const OpenShow& open,
                        Matter& matter,
                        const press::Output& output,
                        words::Audience audience) {
  const bool published = is_published(audience);
  if (!matter.clear.contains(published)) {
    matter.clear.emplace(published, cleared(open.show, published));
  }
  const model::Show& show = matter.clear.at(published).show;
  const press::PressJob job{
      .show = show,
      .beliefs = matter.reckoned.beliefs,
      .phrases = matter.reckoned.phrases,
      .fonts = matter.fonts,
      .photograph = without_withheld(photographs_in(open.store.folder()), open.show, show),
      .audience = audience,
      .day = day_of(around.now),
      .only = call.text("lender"),
      .texts = matter.texts,
      .references = matter.references,
      .looks = matter.looks ? &*matter.looks : nullptr,
      .work = matter.work ? &*matter.work : nullptr,
      .grounds = matter.grounds};
  auto printed = output.print(job);
  if (!printed) {
    return printed.problem();
  }
  return Made{&output, audience, *std::move(printed)};
}

// Writes all papers; none where "strict" finds that something gave way in any of them.
Result<std::vector<PrintRecord>> keep_papers(const Call& call,
                                             const OpenShow& open,
                                             const std::vector<Made>& papers,
                                             Answer& answer) {
  for (const Made& made : papers) {
    if (call.flag("strict")) {
      answer.problems.insert(answer.problems.end(), made.printed.findings.begin(),
                             made.printed.findings.end());
    }
  }
  std::vector<PrintRecord> records;
  for (const Made& made : papers) {
    if (!answer.problems.empty()) {
      break;
    }
    auto written = write_all(open.store.folder() / "prints", made, open.show.position);
    if (!written) {
      return written.problem();
    }
    records.push_back(*std::move(written));
    tell(answer, *made.output, made.printed);
  }
  return records;
}

struct Wish {
  std::vector<const press::Output*> outputs;
  std::optional<words::Audience> audience;  // none: each paper's own
};

Result<Wish> wish_of(const Call& call) {
  auto outputs = outputs_of(call.text("what"));
  if (!outputs) {
    return outputs.problem();
  }
  auto audience = audience_of(call);
  if (!audience) {
    return audience.problem();
  }
  return Wish{*std::move(outputs), *audience};
}

// Of "all" papers some may have no matter yet (no loans); asked for by name it is a fault.
Result<std::vector<Made>> make_papers(const Call& call,
                                      const Surroundings& around,
                                      const OpenShow& open,
                                      const Wish& wish,
                                      Matter& matter,
                                      Answer& answer) {
  const std::size_t count = wish.outputs.size();
  std::vector<Made> papers;
  for (std::size_t at = 0; at < count; ++at) {
    const press::Output& output = *wish.outputs[at];
    around.progress(static_cast<double>(at) / static_cast<double>(count), output.title);
    auto made =
        make_paper(call, around, open, matter, output, wish.audience.value_or(output.audience));
    if (made) {
      papers.push_back(*std::move(made));
    } else if (count > 1 && made.problem().fault == Fault::not_found) {
      answer.text += fmt::format("no {}: {}\n", output.name, made.problem().what);
    } else {
      return made.problem();
    }
  }
  return papers;
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  const auto wish = wish_of(call);
  if (!wish) {
    return wish.problem();
  }
  auto open = open_show(call, store::Access::look);
  if (!open) {
    return open.problem();
  }
  if (auto known = check_lender(open->show, call.text("lender")); !known) {
    return known.problem();
  }
  const Path prints = open->store.folder() / "prints";
  if (auto may = call.has("freeze") ? may_freeze(prints, call.text("freeze")) : Done{}; !may) {
    return may.problem();
  }
  Answer answer{.json = {{"printed", Json::array()}}, .text = {}, .problems = {}};
  auto matter = matter_of(call, around, *open, wish->outputs, answer);
  if (!matter) {
    return matter.problem();
  }
  const auto papers = make_papers(call, around, *open, *wish, *matter, answer);
  if (!papers) {
    return papers.problem();
  }
  auto records = keep_papers(call, *open, *papers, answer);
  if (!records) {
    return records.problem();
  }
  for (const auto& [published, held] : matter->clear) {
    answer.text += withheld_line(held);
    answer.json["withheld"][published ? "published" : "working"] = withheld_json(held);
  }
  if (call.has("freeze") && answer.problems.empty()) {
    const std::string set = call.text("freeze");
    if (auto kept = freeze(prints, set, *records); !kept) {
      return kept.problem();
    }
    answer.json["frozen"] = set;
    answer.text += fmt::format("Frozen as \"{}\".\n", set);
  }
  return answer;
}

}  // namespace

Operation print_papers() {
  return {
      .name = "print",
      .help = "print a paper of the show, or all of them, into its prints folder",
      .writes = false,
      .parameters =
          {show_folder(),
           {.name = "what",
            .takes = Takes::text,
            .help = "labels, checklist ... or all",
            .positional = true,
            .required = true},
           {.name = "for",
            .takes = Takes::text,
            .help = "for whom it is made: public, registrar, lender ..."},
           {.name = "lender", .takes = Takes::text, .help = "only for the lender of this code"},
           {.name = "freeze",
            .takes = Takes::text,
            .help = "keep what these papers say under this name, for \"check --frozen\""},
           hours_parameter(),
           by_parameter(),
           {.name = "strict",
            .takes = Takes::flag,
            .help = "whatever gave way is a fault, and then nothing is written"}},
      .run = run};
}

}  // namespace backmark::desk
