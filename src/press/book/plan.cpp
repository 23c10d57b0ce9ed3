#include "press/book/plan.h"

#include <algorithm>
#include <atomic>
#include <map>
#include <thread>

#include "base/text.h"
#include "press/essay_check.h"
#include "press/texts.h"
#include "words/seen.h"
#include "words/why.h"

namespace backmark::press::book {

namespace {

using words::FactKind;

constexpr std::size_t most_compared = 2;

// What there is room for when there is no picture to show it.
draw::Size measured_size(const model::Show& show, model::Id<model::Piece> piece) {
  const auto across = words::measure_seen(show, piece, {"diameter"});
  const auto height = across ? across : words::measure_seen(show, piece, {"height"});
  const auto width = across ? across : words::measure_seen(show, piece, {"width"});
  return height && width ? draw::Size{*width, *height} : draw::Size{};
}

Entry entry_of(const PressJob& job, const words::Grammar& grammar, const words::Place& place) {
  Entry entry{&place, grammar.facts_of(*place.piece, job.audience)};
  const auto photograph = [&](model::View view) {
    return photograph_of(job.show, place.piece->id, view);
  };
  entry.front = photograph(model::View::front);
  entry.back = photograph(model::View::back);
  entry.tips = photograph(model::View::tips);
  entry.mark = photograph(model::View::mark);
  if (entry.front == nullptr && entry.back == nullptr) {
    entry.measured = measured_size(job.show, place.piece->id);
  }
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

// Numbers of the pieces of the book that are most like this one.
words::Fact compared(const words::Numbering& numbering,
                     const std::vector<model::Comparandum>& comparanda) {
  std::vector<std::string> numbers;
  for (const model::Comparandum& one : comparanda) {
    const words::Place* place = numbering.place_of(one.piece);
    if (place != nullptr && place->pick->in_book && numbers.size() < most_compared) {
      numbers.push_back(std::to_string(place->number));
    }
  }
  return words::compare_fact(numbers);
}

// What the reckoning says for each piece, asked on all cores.
void add_grounds(Plan& plan) {
  const PressJob& job = plan.job;
  if (!job.grounds) {
    return;
  }
  std::vector<Entry*> entries;
  for (EntryPart& part : plan.parts) {
    for (Entry& entry : part.entries) {
      entries.push_back(&entry);
    }
  }
  const auto explain = [&](Entry& entry) {
    const model::Id<model::Piece> id = entry.piece().id;
    const model::PieceBelief* belief = job.beliefs.of(id);
    if (belief == nullptr) {
      return;
    }
    const Grounds grounds = job.grounds(id);
    entry.why = words::why_phrase(plan.show(), *belief, job.phrases.of(id), grounds.lines);
    if (auto fact = compared(plan.grammar.numbering(), grounds.comparanda);
        !fact.text.empty()) {
      entry.facts.push_back(std::move(fact));
    }
  };
  std::atomic<std::size_t> begun = 0;
  std::vector<std::jthread> threads(
      job.threads != 0 ? job.threads : std::max(1U, std::thread::hardware_concurrency()));
  for (std::jthread& thread : threads) {
    thread = std::jthread([&] {
      for (std::size_t at = begun++; at < entries.size(); at = begun++) {
        explain(*entries[at]);
      }
    });
  }
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
  add_grounds(*plan);
  add_texts(*plan);
  return std::unique_ptr<const Plan>(std::move(plan));
}

}  // namespace backmark::press::book
