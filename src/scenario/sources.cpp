// The papers and people of the coast. All are invented.
#include "scenario/coast.h"
#include "scenario/testimony.h"
#include "scenario/vocabulary.h"

namespace backmark::scenario {
namespace {

using model::SourceKind;

std::vector<SourceCard> papers() {
  return {
      {"piece", "The piece itself", SourceKind::piece, std::nullopt, {}, 0.98, ""},
      {"curator", "Curator's notes", SourceKind::own, Year{2025}, {}, std::nullopt, ""},
      {"vessen-day-book",
       "Oda Vessen, day-book",
       SourceKind::document,
       Year{1950},
       {},
       0.95,
       "Vessen, Oda. Day-book, 1950-63, with gaps. Manuscript. Private hands, Ennet Quay."},
      {"oskeld-numbers",
       "Maren Oskeld, paper of numbers",
       SourceKind::document,
       Year{1945},
       {},
       0.93,
       "Oskeld, Maren. Paper of numbers, 1945-69. Manuscript. Harbour Museum, Ennet Quay."},
      {"ember-ledger",
       "Ember Silver Company, stock ledger",
       SourceKind::document,
       Year{1938},
       {},
       0.95,
       "Ember Silver Company. Stock ledger, 1938-66. Manuscript. Harbour Museum, Ennet Quay."},
      {"receipts",
       "Receipts kept with pieces",
       SourceKind::record,
       std::nullopt,
       {},
       0.95,
       "Receipts kept with the pieces, 1934-85. Private hands."},
      {"dealer-cards",
       "Quay Street dealer, stock cards",
       SourceKind::document,
       Year{1974},
       {},
       0.7,
       "Quay Street Antiques. Stock cards, 1968-81. Private hands."},
      {"collectors-lists",
       "Collectors' own lists",
       SourceKind::record,
       std::nullopt,
       {},
       0.95,
       "Lists of purchases kept by nine collectors, 1951-2004. Private hands."},
      {"museum-register",
       "Harbour Museum, accession register",
       SourceKind::record,
       Year{1948},
       {},
       0.99,
       "Harbour Museum. Accession register, from 1948. Ennet Quay."},
      {"lifeboat-minutes",
       "Lifeboat committee, minutes",
       SourceKind::document,
       Year{1956},
       {},
       0.95,
       "Corrow Light Lifeboat Committee. Minutes, 1931-80. Harbour Museum, Ennet Quay."},
      {"regatta-programmes",
       "Regatta programmes",
       SourceKind::publication,
       Year{1933},
       {},
       0.95,
       "Ennet Regatta Committee. Programmes, 1933-85. Ennet Quay: The Committee."},
      {"tarn-price-sheet-1958",
       "Tarn Works, price sheet, spring 1958",
       SourceKind::document,
       Year{1958},
       {},
       0.9,
       "Tarn Works. Price sheet, spring 1958. Tarn Head: Tarn Works, 1958."},
      {"patent-clip",
       "Patent application for a spring clip",
       SourceKind::record,
       Year{1951},
       {},
       0.99,
       "Coast Patent Registry. Application 20417, spring clip for cords, 1951; granted 1955."},
      {"patent-button",
       "Patent for a push-button slide",
       SourceKind::record,
       Year{1964},
       {},
       0.99,
       "Coast Patent Registry. Patent 31166, push-button slide in two bores, 1964."},
      {"cord-trade-list",
       "Cord trade list, spring 1968",
       SourceKind::publication,
       Year{1968},
       {},
       0.9,
       "Merrow Cordage. Trade list, spring 1968. Merrow Sound: Merrow Cordage, 1968."},
      {"harbour-board-letter",
       "Letter to the harbour board, 1949",
       SourceKind::document,
       Year{1949},
       {},
       std::nullopt,
       "Letter of the harbour master to the board, 12 March 1949. Harbour Museum, Ennet Quay."},
  };
}

std::vector<SourceCard> prints_and_tellings() {
  return {
      {"packet-1953",
       "Ennet Packet, regatta number, July 1953",
       SourceKind::publication,
       Year{1953},
       {},
       0.85,
       "Ennet Packet. Regatta number, July 1953, p. 3. Ennet Quay."},
      {"harbour-show-1972",
       "Silver of the Quays, 1972",
       SourceKind::publication,
       Year{1972},
       {},
       0.8,
       "Silver of the Quays. Exhibition list. Ennet Quay: Harbour Museum, 1972."},
      {"survey-of-fittings",
       "A Survey of Fittings",
       SourceKind::publication,
       Year{1984},
       {},
       0.85,
       "Tressel, Coll. A Survey of Fittings on the Ennet Coast. Long Quay: Net Loft Press, "
       "1984."},
      {"survey-of-marks",
       "A Survey of Marks",
       SourceKind::publication,
       Year{1986},
       {"vessen-day-book", "tarn-price-sheet-1958"},
       0.85,
       "Tressel, Coll. A Survey of Marks on the Ennet Coast. Long Quay: Net Loft Press, 1986."},
      {"corrow-telling",
       "Annis Corrow, told on the quay",
       SourceKind::oral,
       Year{1957},
       {},
       0.6,
       "Corrow, Annis. Told to C. Tressel on the quay, 1957. Notes, private hands."},
      {"dealer-letter",
       "Letter of a dealer, 1970",
       SourceKind::document,
       Year{1970},
       {"corrow-telling"},
       0.5,
       "Quay Street Antiques. Letter to a customer, 2 May 1970. Private hands."},
      {"regatta-silver",
       "Regatta Silver, leaflet, 1981",
       SourceKind::publication,
       Year{1981},
       {"corrow-telling"},
       0.55,
       "Regatta Silver. Leaflet. Ennet Quay: Visitors' Office, 1981."},
      {"vessen-grandson",
       "Oda Vessen's grandson, recorded",
       SourceKind::oral,
       Year{1991},
       {"vessen-day-book"},
       0.6,
       "Vessen, P. Recorded by I. Rell, 1991. Tape, Harbour Museum, Ennet Quay."},
      {"families", "Told by owners' families", SourceKind::oral, Year{1998}, {}, 0.6, ""},
      {"family-rudd", "Told by the Rudd family", SourceKind::oral, Year{1996}, {}, 0.6, ""},
      {"family-lamb", "Told by the Lamb family", SourceKind::oral, Year{2001}, {}, 0.6, ""},
      {"family-orrin", "Told by the Orrin family", SourceKind::oral, Year{1999}, {}, 0.6, ""},
      {"rell-notes",
       "Notes on slides",
       SourceKind::publication,
       Year{1994},
       {"survey-of-fittings"},
       0.75,
       "Rell, Ina. \"Notes on Slides.\" Coast and Craft 12 (1994), 40-61."},
      {"lore-cliff",
       "The Stones of Anvil Bay",
       SourceKind::publication,
       Year{1967},
       {},
       0.85,
       "Moyle, Hesper. The Stones of Anvil Bay. Hask: Moyle, 1967."},
  };
}

}  // namespace

const std::vector<SourceCard>& source_cards() {
  static const std::vector<SourceCard> cards = [] {
    auto all = papers();
    for (auto& card : prints_and_tellings()) {
      all.push_back(std::move(card));
    }
    return all;
  }();
  return cards;
}

const std::vector<FirstSaying>& first_sayings() {
  static const std::vector<FirstSaying> sayings{
      {"corrow-telling", "vessen", Year{1946}, Year{1946},
       "\"the first one ever tied on this coast was Oda's, the summer she opened\""},
      {"dealer-letter", "vessen", Year{1946}, Year{1946},
       "\"she thought of it, everybody knows that\""},
      {"regatta-silver", "vessen", Year{1946}, Year{1946},
       "\"invented by Oda Vessen of Ennet Quay in 1946\""},
      {"harbour-board-letter", "strand", Year{1930}, Year{1936},
       "\"Strand, who first put a slide to a cord for our pilots, these fifteen years gone or "
       "so\""},
  };
  return sayings;
}

const std::vector<UseSaying>& use_sayings() {
  static const std::vector<UseSaying> sayings{
      {"fitting", "soldered tubes", Year{1932}, Year{1955}, "survey-of-fittings"},
      {"fitting", "figure-eight wire", Year{1940}, Year{1968}, "survey-of-fittings"},
      {"fitting", "bar slide", Year{1942}, Year{1972}, "survey-of-fittings"},
      {"fitting", "spring clip", Year{1951}, Year{1976}, "survey-of-fittings"},
      {"fitting", "push button", Year{1964}, std::nullopt, "patent-button"},
      {"clip_legend", "TARN WORKS ENNET PAT.APP.FOR", Year{1951}, Year{1956},
       "survey-of-marks"},
      {"clip_legend", "TARN WORKS PAT. 20417", Year{1955}, Year{1961}, "survey-of-marks"},
      {"clip_legend", "TARN", Year{1966}, std::nullopt, "survey-of-marks"},
      {"cord_type", "braided rayon", Year{1946}, Year{1962}, "rell-notes"},
      {"cord_type", "braided nylon", Year{1955}, std::nullopt, "cord-trade-list"},
      {"cord_type", "braided vinyl", Year{1968}, std::nullopt, "cord-trade-list"},
      {"setting", "saw-tooth bezel", std::nullopt, Year{1962}, "rell-notes"},
  };
  return sayings;
}

}  // namespace backmark::scenario
