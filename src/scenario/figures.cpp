#include <map>

#include "base/text.h"
#include "scenario/essays.h"
#include "scenario/recorder.h"

namespace backmark::scenario {
namespace {

// The first piece of the house's own of each kind that stands in the book.
std::map<std::string, std::string> shown(const Scenario& scenario) {
  const std::map<Fitting, std::string> kinds{{Fitting::tubes, "{tubes}"},
                                             {Fitting::figure_eight, "{eights}"},
                                             {Fitting::bar, "{bar}"},
                                             {Fitting::clip, "{clip}"},
                                             {Fitting::button, "{button}"}};
  std::map<std::string, std::string> numbers;
  for (const Choice& choice : choices(scenario)) {
    const Work& work = scenario.works[choice.work];
    const auto kind = kinds.find(work.fitting);
    if (!choice.in_book || work.form != Form::slide_tie || lender_of(work) != 0) {
      continue;
    }
    if (kind != kinds.end()) {
      numbers.emplace(kind->second, work.number);
    }
    if (work.stones[0] == Stone::serpentine) {
      numbers.emplace("{serpentine}", work.number);
    }
    if (!work.mark.empty()) {
      numbers.emplace("{mark}", work.number);
    }
  }
  return numbers;
}

}  // namespace

std::string with_figures(std::string_view essay, const Scenario& scenario) {
  const auto numbers = shown(scenario);
  std::vector<std::string> paragraphs;
  for (const std::string_view paragraph : split(essay, "\n\n")) {
    std::string text(paragraph);
    for (const auto& [name, number] : numbers) {
      text = replace_all(std::move(text), name, number);
    }
    if (!contains(text, "{")) {
      paragraphs.push_back(std::move(text));
    }
  }
  return join(paragraphs, "\n\n");
}

}  // namespace backmark::scenario
