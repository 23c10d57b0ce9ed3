#include "press/book/plan.h"

#include <algorithm>
#include <map>

#include "base/text.h"
#include "press/essay_check.h"
#include "press/texts.h"

namespace backmark::press::book {

namespace {

using words::FactKind;

Entry entry_of(const PressJob& job, const words::Grammar& grammar, const words::Place& place) {
  Entry entry{&place, grammar.facts_of(*place.piece, job.audience)};
  const auto photograph = [&](model::View view) {
    return photograph_of(job.show, place.piece->id, view);
  };
  entry.front = photograph(model::View::front);
  entry.back = photograph(model::View::back);
  entry.tips = photograph(model::View::tips);
  entry.mark = photograph(model::View::mark);
  return entry;
}

std::vector<EntryPart> parts_of(const PressJob& job, const words::Grammar& grammar) {
  std::vector<EntryPart> parts;
  for (const words::Place& place : grammar.numbering().places()) {
    if (!place.pick->in_book) {
      continue;
    }
    if (parts.empty() || parts.back().section != place.section) {
      parts.push_back({place.section, {}});
    }
    parts.back().entries.push_back(entry_of(job, grammar, place));
  }
  return parts;
}

YearSpan years_of(const PressJob& job) {
  const int first = static_cast<int>(job.number_setting("years.first", 0));
  const int last = static_cast<int>(job.number_setting("years.last", 0));
  if (first != 0 && last > first) {
    return {{first}, {last}};
  }
  return {{1930}, {1970}};
}

// The size of a picture that a figure names by its file; what is no picture is a finding.
void add_loose(Plan& plan, const std::string& file, const Block& block) {
  model::Photograph photograph;
  photograph.file = file;
  photograph.view = model::View::detail;
  photograph.pixels_per_mm = 1;
  photograph.credit = block.credit;
  const auto size = plan.job.photograph(photograph).then([](const std::string& bytes) {
    return draw::picture_size(bytes);
  });
  if (!size) {
    Problem finding = size.problem();
    finding.where = fmt::format("{}, photograph {}", block.where, file);
    plan.findings.push_back(std::move(finding));
    return;
  }
  photograph.width_px = size->width;
  photograph.height_px = size->height;
  plan.loose.emplace(file, std::move(photograph));
}

void add_loose_pictures(Plan& plan) {
  for (const Prose& essay : plan.essays) {
    for (const Block& block : essay.blocks) {
      for (const FigurePiece& piece : block.pieces) {
        if (!piece.file.empty() && plan.loose.count(piece.file) == 0) {
          add_loose(plan, piece.file, block);
        }
      }
    }
  }
}

void add_texts(Plan& plan) {
  const PressJob& job = plan.job;
  BookTexts texts = read_texts(job.texts, job.show, plan.grammar.numbering(), job.references);
  plan.essays = std::move(texts.essays);
  plan.glossary = std::move(texts.glossary);
  plan.cited = std::move(texts.cited);
  plan.findings = std::move(texts.findings);
  const Problems prose = check_entry_prose(job, plan.grammar);
  plan.findings.insert(plan.findings.end(), prose.begin(), prose.end());
  for (const Prose& essay : plan.essays) {
    const Problems more = check_essay(job, essay);
    plan.findings.insert(plan.findings.end(), more.begin(), more.end());
  }
  add_loose_pictures(plan);
}

}  // namespace

const std::string& Entry::fact(FactKind kind) const {
  static const std::string none;
  const auto at = std::find_if(facts.begin(), facts.end(),
                               [kind](const words::Fact& one) { return one.kind == kind; });
  return at == facts.end() ? none : at->text;
}

Result<std::unique_ptr<const Plan>> plan_book(const PressJob& job) {
  auto hyphens = draw::Hyphens::load();
  if (!hyphens) {
    return hyphens.problem();
  }
  const double bleed = std::clamp(job.number_setting("book.bleed", 3), 0.0, 20.0);
  auto plan = std::unique_ptr<Plan>(
      new Plan{.job = job,
               .grammar = words::Grammar(job.show, job.beliefs, job.phrases),
               .grid = grid_named(job.show.setting("book.trim"), bleed),
               .hyphens = std::move(*hyphens),
               .essays = {},
               .parts = {},
               .findings = {},
               .years = years_of(job),
               .glossary = {},
               .cited = {},
               .loose = {}});
  plan->parts = parts_of(job, plan->grammar);
  add_texts(*plan);
  return std::unique_ptr<const Plan>(std::move(plan));
}

}  // namespace backmark::press::book
