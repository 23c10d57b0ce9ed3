#include "scenario/coast.h"

namespace backmark::scenario {
namespace {

using model::MakerKind;

MakerCard strand() {
  return {.key = "strand",
          .name = "Ivar Strand",
          .inverted = "Strand, Ivar",
          .place = "Port Ember",
          .worked = {{1932}, {1948}},
          .documented_from = std::nullopt,
          .documented_to = Year{1948},
          .to_sd = 2,
          .share = 0.6,
          .signs = 0.25,
          .mark_form = MarkForm::engraved,
          .legends = {"I.S."},
          .motifs = {Motif::net_lozenge, Motif::knot, Motif::compass, Motif::herring},
          .prose =
              "A net-maker's son who mended instruments for the harbour board. He cut his "
              "letters by hand, leaning to the left, and no two pairs are alike. When he began "
              "is not written anywhere; that he stopped in 1948 is, because the board "
              "advertised his bench for sale."};
}

MakerCard brack() {
  return {.key = "brack",
          .name = "Dorrin Brack",
          .inverted = "Brack, Dorrin",
          .place = "Anvil Bay",
          .worked = {{1935}, {1953}},
          .documented_from = Year{1938},
          .documented_to = Year{1951},
          .from_sd = 5,
          .to_sd = 4,
          .share = 0.7,
          .signs = 0.15,
          .mark_outline = MarkOutline::rectangle,
          .legends = {"D.B"},
          .motifs = {Motif::cabochon, Motif::rayed_field, Motif::urchin, Motif::eight_star},
          .prose =
              "Quarryman, then smith. His backs are the heaviest on the coast and his stones "
              "the plainest: he set what the cliff gave him. Two rate books place him at Anvil "
              "Bay, neither of them for the whole of his working life."};
}

MakerCard marrick() {
  return {.key = "marrick",
          .name = "Pell Marrick",
          .inverted = "Marrick, Pell",
          .place = "Hask",
          .worked = {{1936}, {1959}},
          .documented_from = std::nullopt,
          .documented_to = Year{1959},
          .to_sd = 1,
          .share = 1.0,
          .signs = 0.2,
          .legends = {"PELL/HASK"},
          .motifs = {Motif::lighthouse, Motif::compass, Motif::boat, Motif::herring},
          .prose =
              "Shipwright by training. He laid out his ornaments as he had laid out hulls, "
              "with a batten and a pencil, and the pencil can still be seen on four backs. "
              "He died at the bench in the winter of 1959."};
}

MakerCard ember() {
  return {
      .key = "ember-silver",
      .name = "Ember Silver Company",
      .inverted = "Ember Silver Company",
      .kind = MakerKind::firm,
      .place = "Port Ember",
      .worked = {{1938}, {1966}},
      .documented_from = Year{1938},
      .documented_to = Year{1966},
      .from_sd = 1,
      .to_sd = 1,
      .share = 1.2,
      .signs = 0.45,
      .mark_outline = MarkOutline::oval,
      .legends = {"EMBER/SILVER"},
      .motifs = {Motif::rayed_field, Motif::herringbone, Motif::cabochon, Motif::eight_star},
      .prose =
          "Nine benches and a shop window. The company kept a stock ledger, and the ledger "
          "has survived with its first forty leaves; it also stamped what it merely sold, "
          "so that its name on a back says where a piece was bought more surely than where "
          "it was made."};
}

MakerCard oskeld() {
  return {
      .key = "oskeld",
      .name = "Maren Oskeld",
      .inverted = "Oskeld, Maren",
      .place = "Long Quay",
      .worked = {{1944}, {1969}},
      .documented_from = Year{1945},
      .documented_to = Year{1970},
      .share = 1.4,
      .signs = 0.35,
      .mark_outline = MarkOutline::rectangle,
      .legends = {"M.OSKELD/LONG QUAY", "M.OSKELD", "M·O"},
      .changed = {{1950}, {1958}},
      .motifs = {Motif::rayed_field, Motif::eight_star, Motif::moon_water, Motif::urchin},
      .prose =
          "She kept a paper of numbers on which every commission has a line and no customer "
          "has a name. Her punches were her own, and her stamp grew shorter as her hand grew "
          "surer: the town went first, then all but the two letters."};
}

MakerCard varrow() {
  return {
      .key = "varrow",
      .name = "Tobit Varrow",
      .inverted = "Varrow, Tobit",
      .place = "Hask",
      .worked = {{1945}, {1968}},
      .documented_from = Year{1947},
      .documented_to = std::nullopt,
      .from_sd = 3,
      .share = 1.1,
      .signs = 0.3,
      .mark_outline = MarkOutline::oval,
      .legends = {"T V"},
      .motifs = {Motif::channel_shield, Motif::moon_water, Motif::lighthouse, Motif::nautilus},
      .prose =
          "The coast's only real lapidary. He cut channels no wider than a fingernail and "
          "filled them level, and he disliked borders. The end of his work is not recorded; "
          "neighbours remember the wheel turning into the later sixties."};
}

MakerCard vessen() {
  return {
      .key = "vessen",
      .name = "Oda Vessen",
      .inverted = "Vessen, Oda",
      .place = "Ennet Quay",
      .worked = {{1946}, {1971}},
      .documented_from = Year{1946},
      .documented_to = Year{1971},
      .from_sd = 1,
      .to_sd = 1,
      .share = 1.6,
      .signs = 0.35,
      .legends = {"O.VESSEN", "VESSEN/ENNET", "V·E"},
      .changed = {{1951}, {1961}},
      .motifs = {Motif::scallop, Motif::tern, Motif::whale_tail, Motif::urchin},
      .prose =
          "Daughter of the chandler at the head of the quay. Her day-book runs from 1950 to "
          "1963 with gaps, and the word \"eights\" in it has been read as a claim to the "
          "figure-eight loop ever since. She liked shell, thin, and set it so that the light "
          "went through to the silver."};
}

MakerCard tolland() {
  return {.key = "tolland",
          .name = "Tolland and Daughter",
          .inverted = "Tolland and Daughter",
          .kind = MakerKind::workshop,
          .place = "Merrow Sound",
          .worked = {{1947}, {1976}},
          .documented_from = Year{1949},
          .documented_to = Year{1976},
          .from_sd = 4,
          .to_sd = 1,
          .share = 1.0,
          .signs = 0.4,
          .mark_outline = MarkOutline::rectangle,
          .legends = {"T&D"},
          .motifs = {Motif::knot, Motif::crescent, Motif::net_lozenge, Motif::boat},
          .prose =
              "Two hands and one stamp. The father cast, the daughter finished, and after 1963 "
              "she did both; the stamp did not notice."};
}

MakerCard haddoway() {
  return {.key = "haddoway",
          .name = "Joss Haddoway",
          .inverted = "Haddoway, Joss",
          .place = "Hask",
          .worked = {{1948}, {1967}},
          .documented_from = Year{1950},
          .documented_to = Year{1965},
          .from_sd = 6,
          .to_sd = 6,
          .share = 0.8,
          .signs = 0.2,
          .mark_outline = MarkOutline::rectangle,
          .legends = {"J H"},
          .motifs = {Motif::crescent, Motif::herring, Motif::whale_tail, Motif::cabochon},
          .prose =
              "Known from eleven signed pieces and a quarrel in the Packet about who first put "
              "glass into silver. His years are those of the quarrel, give or take."};
}

MakerCard tarn() {
  return {
      .key = "tarn-works",
      .name = "Tarn Works",
      .inverted = "Tarn Works",
      .kind = MakerKind::firm,
      .place = "Tarn Head",
      .worked = {{1951}, {1979}},
      .documented_from = Year{1951},
      .documented_to = std::nullopt,
      .from_sd = 1,
      .share = 1.7,
      .signs = 0.3,
      .mark_outline = MarkOutline::oval,
      .legends = {"TARN"},
      .motifs = {Motif::boat, Motif::compass, Motif::lighthouse, Motif::knot},
      .prose =
          "Stampers of boat fittings who found that a spring clip would sell to every bench on "
          "the coast. The name on the clip is therefore no signature: look for the second, "
          "smaller TARN on the plate itself."};
}

MakerCard corrow() {
  return {
      .key = "corrow",
      .name = "Annis Corrow",
      .inverted = "Corrow, Annis",
      .place = "Ennet Quay",
      .worked = {{1952}, {1978}},
      .documented_from = Year{1953},
      .documented_to = Year{1980},
      .from_sd = 3,
      .to_sd = 5,
      .share = 0.9,
      .signs = 0.15,
      .mark_form = MarkForm::engraved,
      .legends = {"A.CORROW", "CORROW"},
      .changed = {{1964}},
      .motifs = {Motif::scallop, Motif::nautilus, Motif::tern, Motif::crescent},
      .prose =
          "Learned beside Oda Vessen and told the story of it well. What the book knows of the "
          "beginnings it largely has from her, which is a reason for care and not for "
          "disbelief."};
}

MakerCard lund() {
  return {
      .key = "lund",
      .name = "Sefa Lund",
      .inverted = "Lund, Sefa",
      .place = "Anvil Bay",
      .worked = {{1957}, {1984}},
      .documented_from = Year{1957},
      .documented_to = Year{1984},
      .from_sd = 1,
      .to_sd = 2,
      .share = 0.9,
      .signs = 0.5,
      .legends = {"LUND"},
      .motifs = {Motif::eight_star, Motif::moon_water, Motif::herringbone, Motif::rayed_field},
      .living = true,
      .prose =
          "Trained as an engraver of instrument dials. Lives at Anvil Bay and read this entry "
          "before it was printed."};
}

MakerCard quill() {
  return {
      .key = "quill",
      .name = "Hanne Quill",
      .inverted = "Quill, Hanne",
      .place = "Sallow Point",
      .worked = {{1961}, {1985}},
      .documented_from = Year{1962},
      .documented_to = std::nullopt,
      .from_sd = 2,
      .share = 0.8,
      .signs = 0.45,
      .mark_outline = MarkOutline::oval,
      .legends = {"QUILL"},
      .motifs = {Motif::tern, Motif::whale_tail, Motif::nautilus, Motif::moon_water},
      .living = true,
      .prose =
          "Cast in cuttlefish bone and let the grain stand. She asked that her later work be "
          "left out, and it is."};
}

MakerCard gannet_row() {
  return {
      .key = "gannet-row",
      .name = "Gannet Row workshop",
      .inverted = "Gannet Row workshop",
      .kind = MakerKind::workshop,
      .place = "Long Quay",
      .worked = {{1965}, {1985}},
      .documented_from = Year{1966},
      .documented_to = Year{1985},
      .from_sd = 2,
      .to_sd = 3,
      .share = 0.9,
      .signs = 0.25,
      .mark_outline = MarkOutline::rectangle,
      .legends = {"GANNET ROW", "G.ROW"},
      .changed = {{1974}},
      .motifs = {Motif::channel_shield, Motif::herringbone, Motif::compass, Motif::eight_star},
      .prose =
          "Five benches in a net loft, no foreman. Work was shared by the piece, so that a "
          "clasp "
          "may have three makers and a tray of clasps one style."};
}

}  // namespace

const std::vector<MakerCard>& makers() {
  static const std::vector<MakerCard> cards{
      strand(),  brack(),    marrick(), ember(),  oskeld(), varrow(), vessen(),
      tolland(), haddoway(), tarn(),    corrow(), lund(),   quill(),  gannet_row()};
  return cards;
}

const std::vector<std::string>& places() {
  static const std::vector<std::string> names{"Ennet Quay",   "Long Quay",   "Hask",
                                              "Anvil Bay",    "Port Ember",  "Tarn Head",
                                              "Merrow Sound", "Sallow Point"};
  return names;
}

}  // namespace backmark::scenario
