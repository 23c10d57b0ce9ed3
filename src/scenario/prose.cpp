#include "scenario/prose.h"

#include <map>

#include "base/random.h"
#include "base/text.h"
#include "scenario/recorder.h"
#include "scenario/sayings.h"
#include "scenario/vocabulary.h"

namespace backmark::scenario {
namespace {

constexpr std::size_t shortest_lead = 320;
constexpr std::size_t longest = 1180;

// Takes sentences from the banks in turn, so that none comes back before its neighbours have.
class Writer {
 public:
  std::string next(const Sentences& bank, const Work& work, Random& random) {
    if (bank.empty()) {
      return "";
    }
    const std::size_t turn = turns_[&bank]++;
    return filled(bank[turn % bank.size()], work, random);
  }

 private:
  static std::string filled(std::string_view sentence, const Work& work, Random& random) {
    static const std::vector<std::string> sides{"left", "right"};
    static const std::vector<std::string> corners{"upper left",  "lower left", "upper right",
                                                  "lower right", "top",        "foot"};
    static const std::vector<std::string> few{"two", "three", "four", "five"};
    static const std::vector<std::string> many{"thirty-two", "thirty-six", "forty",
                                               "forty-four", "fifty-one",  "fifty-six",
                                               "sixty-three"};
    std::string text(sentence);
    text = replace_all(std::move(text), "{side}", sides[random.below(sides.size())]);
    text = replace_all(std::move(text), "{corner}", corners[random.below(corners.size())]);
    text = replace_all(std::move(text), "{few}", few[random.below(few.size())]);
    text = replace_all(std::move(text), "{many}", many[random.below(many.size())]);
    text = replace_all(std::move(text), "{metal}", word_of(work.metal));
    const Stone stone = work.stones[0] == Stone::none ? Stone::slate : work.stones[0];
    return replace_all(std::move(text), "{stone}", word_of(stone));
  }

  std::map<const Sentences*, std::size_t> turns_;
};

// Everything that could be said of the piece, the most particular first.
std::vector<const Sentences*> topics(const Work& work) {
  std::vector<const Sentences*> list;
  if (!work.inscription.empty()) {
    list.push_back(&about_inscription());
  }
  if (work.bail_scar) {
    list.push_back(&about_scar());
  }
  if (work.tips[0] != work.tips[1] && work.tips[1] != TipForm::none) {
    list.push_back(&about_unmatched_tips());
  }
  list.push_back(&about_stone(work.stones[0]));
  list.push_back(&about_fitting(work.fitting));
  list.push_back(&about_mark(work.mark_form));
  list.push_back(&about_finish(work.finish));
  if (work.border != Border::none) {
    list.push_back(&about_border(work.border));
  }
  list.push_back(&about_cord(work.cord));
  return list;
}

void append(std::string& text, const std::string& sentence, bool new_paragraph) {
  if (sentence.empty() || text.size() + sentence.size() > longest) {
    return;
  }
  if (!text.empty()) {
    text += new_paragraph ? "\n\n" : " ";
  }
  text += sentence;
}

std::string entry(Writer& writer, const Work& work, bool lead) {
  Random random(work.grain ^ 0x9705eU);
  auto list = topics(work);
  std::string text = writer.next(about_motif(work.motif), work, random);
  if (!lead) {
    const std::size_t more = random.below(3);
    for (std::size_t i = 0; i < more; ++i) {
      append(text, writer.next(*list[random.below(list.size())], work, random), false);
    }
    return text;
  }
  append(text, writer.next(about_motif(work.motif), work, random), false);
  for (std::size_t i = 0; i < list.size(); ++i) {
    append(text, writer.next(*list[i], work, random), i == 1 || i == 4);
  }
  append(text, writer.next(closings(), work, random), true);
  while (text.size() < shortest_lead) {
    append(text, writer.next(closings(), work, random), false);
  }
  return text;
}

}  // namespace

std::vector<std::string> all_prose(const Scenario& scenario) {
  std::vector<std::string> prose(scenario.works.size());
  Writer writer;
  for (const Choice& choice : choices(scenario)) {
    const Work& work = scenario.works[choice.work];
    Random random(work.grain ^ 0x71U);
    if (choice.lead || random.chance(0.85)) {
      prose[choice.work] = entry(writer, work, choice.lead);
    }
  }
  return prose;
}

}  // namespace backmark::scenario
