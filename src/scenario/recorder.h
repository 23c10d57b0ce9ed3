// Carries a scenario into a change: the parts of `fill`, in the order in which they are called.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "model/change.h"
#include "scenario/scenario.h"

namespace backmark::scenario {

// What later parts need of earlier ones.
struct Recorder {
  model::Change& change;
  const Scenario& scenario;

  std::map<std::string, model::Id<model::Source>> sources;
  std::map<std::string, model::Id<model::Character>> characters;
  std::vector<model::Id<model::Maker>> makers;
  std::vector<model::Id<model::Piece>> pieces;
  std::vector<model::Id<model::Lender>> lenders;

  model::Word word(std::string_view text) const { return change.word(text); }
};

struct CharacterCard {
  std::string key;
  std::string label;
  std::string part;  // empty: the piece as a whole
  model::Shape shape = model::Shape::category;
  std::string unit;
  bool replaceable = false;
  double minutes = 2;
};
const std::vector<CharacterCard>& character_cards();

// The first day of cataloguing, and the days things happen on in the show's own year.
inline constexpr model::DayNumber first_day = 20'150;    // 2025-03-03
inline constexpr model::DayNumber opening_day = 20'995;  // 2027-06-26

void record_knowledge(Recorder& recorder);   // characters, makers, sources, lineages, windows
void record_pieces(Recorder& recorder);      // pieces, parts, observations, marks, photographs
void record_statements(Recorder& recorder);  // claims and events
void record_exhibit(Recorder& recorder);     // sections, picks, lenders, loans, leave, settings

// What is chosen by hand for the show and the book; places in Scenario::works.
struct Choice {
  std::size_t work = 0;
  int section = 0;  // place in section_cards()
  bool in_show = true;
  bool in_book = true;
  bool lead = false;
};
std::vector<Choice> choices(const Scenario& scenario);
// Cases with their lights and air, what lies where, and what pieces and lenders ask for.
void record_display(Recorder& recorder, const std::vector<Choice>& chosen);

struct SectionCard {
  std::string key;
  std::string title;
  std::string introduction;
};
const std::vector<SectionCard>& section_cards();

// The owner of a piece: place in the lenders, -1 when the museum's own.
struct LenderCard {
  std::string code;
  std::string name;
  std::string address;
  std::string credit;
};
const std::vector<LenderCard>& lender_cards();
int lender_of(const Work& work);

}  // namespace backmark::scenario
