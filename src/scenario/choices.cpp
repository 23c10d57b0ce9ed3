#include <algorithm>
#include <array>

#include "base/random.h"
#include "scenario/recorder.h"
#include "scenario/vocabulary.h"

namespace backmark::scenario {
namespace {

constexpr std::size_t most_picks = 182;
constexpr std::size_t leads = 26;

int section_of(const Work& work) {
  switch (work.fitting) {
    case Fitting::tubes:
      return 0;
    case Fitting::figure_eight:
      return work.form == Form::turned_pendant ? 5 : 1;
    case Fitting::bar:
      return work.form == Form::turned_pendant ? 5 : 2;
    case Fitting::clip:
      return 3;
    case Fitting::button:
      return 4;
    default:
      return 5;
  }
}

// How much a curator would want it: what can be read on it, what is rare, and a little fancy.
double wanted(const Work& work, std::array<int, count_of<Motif>>& seen) {
  Random random(work.grain ^ 0xc401ceU);
  const int times = seen[static_cast<std::size_t>(work.motif)]++;
  double score = 2.5 * random.uniform() - 0.02 * times;
  score += work.mark.empty() ? 0 : 0.9;
  score += work.inscription.empty() ? 0 : 1.4;
  score += work.bail_scar ? 0.6 : 0;
  score += work.stones[0] == Stone::ormer || work.stones[0] == Stone::coral ? 0.4 : 0;
  return score;
}

}  // namespace

std::vector<Choice> choices(const Scenario& scenario) {
  std::array<int, count_of<Motif>> seen{};
  std::vector<std::pair<double, std::size_t>> ranked;
  for (std::size_t i = 0; i < scenario.works.size(); ++i) {
    const bool planted =
        scenario.works[i].number == "ES 118" || scenario.works[i].number == "ES 057";
    ranked.emplace_back(wanted(scenario.works[i], seen) + (planted ? 9 : 0), i);
  }
  std::stable_sort(ranked.begin(), ranked.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  const std::size_t picked = std::min(most_picks, (ranked.size() * 6 + 9) / 10);
  std::vector<Choice> chosen;
  for (std::size_t rank = 0; rank < picked; ++rank) {
    const std::size_t at = ranked[rank].second;
    chosen.push_back({.work = at,
                      .section = section_of(scenario.works[at]),
                      .in_show = rank % 3 != 2,
                      .in_book = rank % 12 != 10,
                      .lead = rank < leads && rank * 5 < picked && rank % 12 != 10});
  }
  std::stable_sort(chosen.begin(), chosen.end(), [&](const Choice& a, const Choice& b) {
    const auto key = [&](const Choice& choice) {
      return std::pair(choice.section, scenario.works[choice.work].motif);
    };
    return key(a) < key(b);
  });
  return chosen;
}

const std::vector<SectionCard>& section_cards() {
  static const std::vector<SectionCard> cards{
      {"tubes", "Two Tubes and a Knot",
       "The oldest backs on the coast carry two short tubes, cut from gas pipe or rolled from "
       "sheet, and "
       "a cord that had to be threaded before its ends were knotted. Nothing could be taken "
       "off without "
       "untying it. The pieces gathered here are heavy, their stones come from the nearest "
       "cliff, and "
       "hardly one bears a name. They were made by people who did something else for a living: "
       "a mender "
       "of instruments, a quarryman, a shipwright. Whoever asks which of them was the first "
       "should look "
       "at the solder before listening to the stories, and then listen to the stories all the "
       "same."},
      {"eights", "The Eights",
       "Bend a wire into an eight, solder its waist to the back, and a cord will run through "
       "both eyes and "
       "stay where it is put. It costs nothing, it needs no patent, and it can be made in the "
       "time it takes "
       "to boil a kettle. The loop spread along the quays within a few summers and was claimed "
       "by almost "
       "everyone who ever bent one. This chapter lays single loops beside double ones, thin "
       "wire beside "
       "thick, and asks what can be known of a hand from so small a gesture. Much of the best "
       "inlay of the "
       "coast is fastened to the cord by nothing more."},
      {"bars", "The Bar and Its Imitators",
       "A bar slide holds its cord by two channels and a tongue between them. The first kind "
       "was filed from "
       "solid stock, and each is a little different; the second was stamped, and a drawer full "
       "of them "
       "looks like a drawer full of one. Makers who signed with pride bought the second kind "
       "by the dozen. "
       "It follows that a bar says more about a year than about a bench. The ornaments in "
       "front of these "
       "bars, rayed ovals above all, are among the most sober things made here, and repay a "
       "lens."},
      {"clip", "A Clip from Tarn",
       "Tarn Works stamped cleats and fairleads for small boats until somebody there noticed "
       "that a cleat "
       "holds a cord. Their spring clip was applied for in 1951. Its legend was shortened "
       "three times, each "
       "time because a die had worn and nobody saw why the new one should say so much. The "
       "clip went to "
       "every workshop that would pay for it, so its name is not a signature; but its wording "
       "is a calendar, "
       "if one remembers that old stock was used up to the last box."},
      {"button", "Pressed Home",
       "The push-button slide of 1964 came in two bores, for the leather that people had and "
       "for the thinner "
       "braid that they were about to buy. It is the only fitting here that was sold with "
       "instructions. With "
       "it the coast's ornaments grow lighter and rounder, their backs are polished for the "
       "first time, and "
       "glass takes the place of stone. Some visitors will have worn one. The section ends "
       "where the "
       "collection ends, in the middle of the nineteen-eighties, with makers who are alive and "
       "were asked."},
      {"pinned", "Pinned, Hung and Turned",
       "Not everything here was made to slide. Brooches and cloak clasps came off the same "
       "benches as the "
       "slides and share their punches; pendants were hung for a generation and then, when "
       "ties were wanted, "
       "had their loops filed off and a fitting soldered on. A filed place at the upper edge "
       "is all that "
       "remains of such a first life. These pieces are easily misread, since their two halves "
       "belong to two "
       "different years, and they are placed last so that the reader comes to them "
       "suspicious."},
  };
  return cards;
}

const std::vector<LenderCard>& lender_cards() {
  static const std::vector<LenderCard> cards{
      {"Lender 1", "Harbour Museum", "1 Custom House Steps, Ennet Quay",
       "The Harbour Museum, Ennet Quay"},
      {"Lender 2", "Agnes Rudd", "14 Ropewalk, Hask", ""},
      {"Lender 3", "Josse Lamb", "3 Chapel Stairs, Long Quay", ""},
      {"Lender 4", "The Orrin family", "Upper House, Anvil Bay", "The Orrin family"},
      {"Lender 5", "Bettris Kell", "22 Signal Street, Port Ember", ""},
      {"Lender 6", "Wat Ferriby", "The Old Smokehouse, Hask", "Wat Ferriby"},
      {"Lender 7", "Nan Tressel", "8 Loft Lane, Long Quay",
       "Nan Tressel, in memory of Coll Tressel"},
      {"Lender 8", "D. and M. Ansty", "Tarn Head Cottage, Tarn Head", ""},
      {"Lender 9", "Pilots' Guild of Port Ember", "Pilot House, Port Ember",
       "The Pilots' Guild of Port Ember"},
      {"Lender 10", "Ruben Sark", "5 Mission Row, Ennet Quay", ""},
      {"Lender 11", "Idony Marle", "Marle's Yard, Merrow Sound", ""},
      {"Lender 12", "Corrow Light Lifeboat Committee", "Boathouse, Corrow Light",
       "Corrow Light Lifeboat Committee"},
      {"Lender 13", "Perran Stoke", "17 Fish Street, Hask", ""},
      {"Lender 14", "Lowdy Vane", "2 Green Terrace, Anvil Bay", ""},
      {"Lender 15", "Hanne Quill", "Sallow Point", "The maker"},
      {"Lender 16", "Elis Brome", "40 Quay Street, Ennet Quay", ""},
  };
  return cards;
}

int lender_of(const Work& work) {
  Random random(work.grain ^ 0x1e4d);
  if (random.chance(0.3)) {
    return 0;
  }
  return 1 + static_cast<int>(random.below(lender_cards().size() - 1));
}

}  // namespace backmark::scenario
