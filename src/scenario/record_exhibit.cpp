#include "base/random.h"
#include "base/text.h"
#include "scenario/recorder.h"
#include "scenario/vocabulary.h"

namespace backmark::scenario {
namespace {

using model::Leave;
using model::Use;

void record_picks(Recorder& recorder, const std::vector<Choice>& chosen) {
  std::vector<model::Id<model::Section>> sections;
  for (const SectionCard& card : section_cards()) {
    sections.push_back(recorder.change.add(
        model::Section{.key = card.key,
                       .title = card.title,
                       .rank = static_cast<std::int32_t>(sections.size()) + 1,
                       .introduction = card.introduction}));
  }
  std::vector<std::int32_t> ranks(sections.size(), 0);
  for (const Choice& choice : chosen) {
    const auto section = static_cast<std::size_t>(choice.section);
    recorder.change.add(model::Pick{.piece = recorder.pieces[choice.work],
                                    .section = sections[section],
                                    .in_show = choice.in_show,
                                    .in_book = choice.in_book,
                                    .lead = choice.lead,
                                    .rank = ++ranks[section]});
  }
}

void record_loan(Recorder& recorder, std::size_t at, int lender, Random& random) {
  if (lender <= 0) {
    return;
  }
  static const std::vector<std::string> terms{
      "not above 50 lux", "front only; the back is not to be printed", "courier by the lender",
      "no photographs by visitors", ""};
  recorder.change.add(
      model::Loan{.piece = recorder.pieces[at],
                  .lender = recorder.lenders[static_cast<std::size_t>(lender)],
                  .from = opening_day - 40,
                  .to = opening_day + 141,
                  .return_by = random.chance(0.15) ? opening_day + 120 : opening_day + 170,
                  .conditions = terms[random.below(terms.size())],
                  .signed_paper = random.chance(0.7)});
}

void record_worth(Recorder& recorder, std::size_t at, Random& random) {
  if (!random.chance(0.75)) {
    return;
  }
  static const std::vector<std::string> bases{"lender's own figure", "two sales of like pieces",
                                              "insurer's letter", "curator's estimate"};
  const Work& work = recorder.scenario.works[at];
  const double base = 140 + (work.mark.empty() ? 0 : 220) + 4 * work.mass;
  const auto tens = static_cast<std::int64_t>(base * (0.6 + random.uniform()) / 10);
  recorder.change.add(
      model::ValueOpinion{.piece = recorder.pieces[at],
                          .worth = {tens * 1000, "EUR"},
                          .basis = bases[random.below(bases.size())],
                          .day = first_day + static_cast<model::DayNumber>(random.below(500)),
                          .by = recorder.word("I.R.")});
}

void record_conditions(Recorder& recorder, std::size_t at, Random& random) {
  struct State {
    const char* part;
    const char* state;
    const char* text;
  };
  static const std::vector<State> states{
      {"ornament", "scratched", "fine scratches all over, old"},
      {"ornament", "tarnished", "even grey tarnish, stable"},
      {"ornament", "dented", "one shallow dent at the rim"},
      {"stone", "chipped", "chip at the girdle, 1 mm"},
      {"stone", "loose", "stone moves in its setting when tilted"},
      {"cord", "frayed", "frayed where it leaves the fitting"},
      {"cord", "stiff", "stiff; do not bend"},
      {"tip", "bent", "one tip bent by a few degrees"},
      {"fitting", "corroded", "green bloom at the joint"}};
  const Work& work = recorder.scenario.works[at];
  const std::size_t count = random.below(3);
  for (std::size_t i = 0; i < count; ++i) {
    const State& state = states[random.below(states.size())];
    const std::string_view part = state.part;
    if ((part == "stone" && work.stones[0] == Stone::none) ||
        ((part == "cord" || part == "tip") && !work.worn_on_cord()) ||
        (part == "fitting" && work.fitting == Fitting::none)) {
      continue;
    }
    const bool back = part == "fitting";
    recorder.change.add(
        model::Condition{.piece = recorder.pieces[at],
                         .part = recorder.word(part),
                         .state = recorder.word(state.state),
                         .text = state.text,
                         .x_mm = (random.uniform() - 0.5) * work.width * 0.6,
                         .y_mm = (random.uniform() - 0.5) * work.height * 0.6,
                         .view = back ? model::View::back : model::View::front,
                         .day = first_day + static_cast<model::DayNumber>(random.below(500)),
                         .by = recorder.word(random.chance(0.6) ? "I.R." : "T.M.")});
  }
}

void record_leave(Recorder& recorder, std::size_t at, int lender, Random& random) {
  // The museum's own pieces are asked once for all; private owners answer piece by piece or
  // not.
  const double asked = lender == 0 ? 1 : 0.86;
  for (const Use use : {Use::show, Use::print, Use::web}) {
    if (!random.chance(asked)) {
      continue;
    }
    const double given = lender == 0 ? 1 : (use == Use::web ? 0.7 : 0.9);
    const double draw = random.uniform();
    const Leave leave = draw < given                     ? Leave::given
                        : draw < given + (1 - given) / 2 ? Leave::asked
                                                         : Leave::refused;
    recorder.change.add(model::Permission{
        .subject = recorder.pieces[at].value,
        .use = use,
        .leave = leave,
        .terms = use == Use::web && leave == Leave::given ? "not above 1,200 pixels" : "",
        .day = first_day + static_cast<model::DayNumber>(random.below(500)),
        .by = lender == 0
                  ? recorder.word("Harbour Museum")
                  : recorder.word(lender_cards()[static_cast<std::size_t>(lender)].code)});
  }
}

void record_settings(Recorder& recorder) {
  const auto set = [&](const char* key, const std::string& value) {
    recorder.change.add(model::Setting{.key = key, .value = value});
  };
  set("title", "Tied at the Water");
  set("subtitle", "Slide Ties and Small Silver of the Ennet Coast");
  set("author", "Ina Rell");
  set("house", "Harbour Museum, Ennet Quay");
  set("insurance", "the Harbour Museum, from wall to wall");
  set("opens", "2027-06-26");
  set("closes", "2027-11-14");
  set("years.first", "1930");
  set("years.last", "1990");
  set("about",
      fmt::format(
          "An invented show. The Ennet coast, its places, makers, owners, papers and pieces "
          "were made up by a program (seed {}); the photographs are drawings. Nothing in it "
          "is true of anybody.",
          recorder.scenario.options.seed));
}

// The living makers' word on their names; the curator's own phrase on two pieces.
void record_words(Recorder& recorder, const std::vector<Choice>& chosen) {
  for (std::size_t i = 0; i < recorder.makers.size(); ++i) {
    recorder.change.add(model::Permission{.subject = recorder.makers[i].value,
                                          .use = Use::print,
                                          .leave = Leave::given,
                                          .terms = "name, place, years and text",
                                          .day = first_day + 60});
  }
  if (chosen.size() > 60) {
    recorder.change.add(
        model::Overruling{.piece = recorder.pieces[chosen[20].work],
                          .of = model::Overruling::Of::year,
                          .phrase = "between the patent and the flood",
                          .reason = "the owner was shown the flood line on the box",
                          .initials = "I.R.",
                          .day = first_day + 300});
    recorder.change.add(
        model::Overruling{.piece = recorder.pieces[chosen[50].work],
                          .of = model::Overruling::Of::maker,
                          .phrase = "by a hand near Oda Vessen",
                          .reason = "seen beside three signed pieces, day by day",
                          .initials = "I.R.",
                          .day = first_day + 310});
  }
}

}  // namespace

void record_exhibit(Recorder& recorder) {
  const auto chosen = choices(recorder.scenario);
  record_picks(recorder, chosen);
  for (const Choice& choice : chosen) {
    const Work& work = recorder.scenario.works[choice.work];
    Random random(work.grain ^ 0xeb17U);
    const int lender = lender_of(work);
    record_loan(recorder, choice.work, lender, random);
    record_worth(recorder, choice.work, random);
    record_conditions(recorder, choice.work, random);
    record_leave(recorder, choice.work, lender, random);
  }
  record_words(recorder, chosen);
  record_display(recorder, chosen);
  record_settings(recorder);
}

}  // namespace backmark::scenario
