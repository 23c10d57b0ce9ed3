#include <cmath>

#include "base/text.h"
#include "scenario/bench.h"
#include "scenario/coast.h"
#include "scenario/prose.h"
#include "scenario/recorder.h"
#include "scenario/vocabulary.h"

namespace backmark::scenario {
namespace {

using model::How;
using model::Originality;
using model::Seen;

// Notes what is seen on one piece; much is never looked at.
class Looker {
 public:
  Looker(Recorder& recorder, model::Id<model::Piece> piece, const Work& work)
      : recorder_(recorder), piece_(piece), random_(work.grain ^ 0x5eedU) {
    day_ = first_day + static_cast<model::DayNumber>(random_.below(420));
    by_ = recorder_.word(random_.chance(0.7) ? "I.R." : "T.M.");
  }

  void on(model::Id<model::Part> part) { part_ = part; }

  // A word of the vocabulary, recorded with chance `share`; an empty word is "looked for,
  // none".
  void see(const char* key, std::string_view value, double share, How how = How::eye) {
    if (random_.chance(share)) {
      add(key, value.empty() ? Seen::none : Seen::value, value, 0, how);
    }
  }

  // As see(), but some looks do not decide.
  void peer(const char* key, std::string_view value, double share, double undecided) {
    if (!random_.chance(share)) {
      return;
    }
    if (random_.chance(undecided)) {
      add(key, Seen::cannot_tell, "", 0, How::loupe);
    } else {
      add(key, value.empty() ? Seen::none : Seen::value, value, 0, How::loupe);
    }
  }

  // A measure with the instrument's error (standard deviation), in steps.
  void measure(const char* key, double value, double share, double error, double step) {
    if (random_.chance(share)) {
      const double read = std::round((value + error * random_.normal()) / step) * step;
      add(key, Seen::value, "", read,
          key == std::string_view("mass") ? How::scale : How::caliper);
    }
  }

  Random& random() { return random_; }

 private:
  void add(const char* key, Seen seen, std::string_view value, double number, How how) {
    recorder_.change.add(model::Observation{.piece = piece_,
                                            .part = part_,
                                            .character = recorder_.characters.at(key),
                                            .value = recorder_.word(value),
                                            .number = number,
                                            .certainty = random_.chance(0.12) ? 0.8F : 1.0F,
                                            .seen = seen,
                                            .how = how,
                                            .by = by_,
                                            .day = day_});
  }

  Recorder& recorder_;
  model::Id<model::Piece> piece_;
  model::Id<model::Part> part_;
  Random random_;
  model::DayNumber day_ = first_day;
  model::Word by_;
};

model::Id<model::Part> add_part(Recorder& recorder,
                                model::Id<model::Piece> piece,
                                std::string_view kind,
                                Originality originality) {
  return recorder.change.add(
      model::Part{.piece = piece, .kind = recorder.word(kind), .originality = originality});
}

int stone_count(const Work& work) {
  int count = 0;
  for (const Stone stone : work.stones) {
    count += stone != Stone::none ? 1 : 0;
  }
  return count;
}

void look_at_whole(Looker& looker, const Work& work) {
  looker.see("material", word_of(work.metal), 0.97);
  for (const Stone stone : work.stones) {
    if (stone != Stone::none) {
      looker.see("material", word_of(stone), 0.95, How::loupe);
    }
  }
  looker.measure("mass", work.mass, 0.6, 0.05, 0.1);
  static const std::vector<std::string> remarks{
      "rubbed at the upper edge",   "polished since",          "dent at lower left",
      "file marks run to the rim",  "pencil line on the back", "verdigris under the fitting",
      "solder flooded and scraped", "back blackened unevenly"};
  looker.see("remark", remarks[looker.random().below(remarks.size())], 0.3);
}

void look_at_ornament(Looker& looker, const Work& work) {
  looker.see("outline", word_of(work.outline), 0.95);
  looker.see("motif", word_of(work.motif), 0.97);
  looker.peer("metal", word_of(work.metal), 0.75, 0.06);
  for (std::size_t i = 0; i < count_of<Technique>; ++i) {
    if (work.uses(static_cast<Technique>(i))) {
      looker.see("technique", word_of(static_cast<Technique>(i)), 0.85, How::loupe);
    }
  }
  if (rule_of(work.motif).bordered) {
    looker.see("border", word_of(work.border), 0.85);
  }
  looker.see("back_finish", word_of(work.finish), 0.7);
  looker.measure("gauge", work.gauge, 0.4, 0.04, 0.05);
  looker.measure("height", work.height, 0.97, 0.1, 0.5);
  looker.measure("width", work.width, 0.97, 0.1, 0.5);
  looker.measure("depth", work.depth, 0.6, 0.15, 0.1);
  looker.peer("bail_scar", work.bail_scar ? "present" : "", work.bail_scar ? 0.9 : 0.25, 0.12);
}

void look_at_marks(Recorder& recorder,
                   Looker& looker,
                   const Work& work,
                   model::Id<model::Piece> piece,
                   model::Id<model::Part> ornament) {
  const bool looked = looker.random().chance(0.93);
  if (!work.mark.empty() && looked) {
    std::string text = join(work.mark, " ");
    looker.see("mark_form", word_of(work.mark_form), 1, How::loupe);
    if (work.mark_worn) {
      looker.peer("stamp", text, 1, 1);
      text = text.substr(0, text.size() - 1) + "[" + text.back() + "]";
    } else {
      looker.see("stamp", text, 1, How::loupe);
    }
    recorder.change.add(model::Mark{.piece = piece,
                                    .part = ornament,
                                    .kind = work.mark_form == MarkForm::stamped
                                                ? model::MarkKind::stamp
                                                : model::MarkKind::engraving,
                                    .text = text,
                                    .place = recorder.word("back, below the middle"),
                                    .outline = recorder.word(word_of(work.mark_outline)),
                                    .certainty = work.mark_worn ? 0.8F : 1.0F});
  } else if (looked) {
    looker.see("mark_form", "", 1, How::loupe);
    recorder.change.add(model::Mark{.piece = piece, .part = ornament, .seen = Seen::none});
  }
  if (!work.inscription.empty()) {
    looker.see("inscription", work.inscription, 1, How::loupe);
    recorder.change.add(model::Mark{.piece = piece,
                                    .part = ornament,
                                    .kind = model::MarkKind::engraving,
                                    .text = work.inscription,
                                    .place = recorder.word("back, near the lower edge")});
  }
}

void look_at_fitting(Looker& looker, const Work& work) {
  looker.see("fitting", word_of(work.fitting), 0.95);
  if (work.fitting == Fitting::none) {
    return;
  }
  looker.peer("solder", word_of(work.solder), 0.6, 0.1);
  if (work.fitting == Fitting::bar) {
    looker.peer("bar_kind", bar_kinds()[static_cast<std::size_t>(work.bar_kind)], 0.85, 0.05);
  } else if (work.fitting == Fitting::clip) {
    looker.peer("clip_legend", clip_legends()[static_cast<std::size_t>(work.clip_legend)], 0.85,
                0.08);
  } else if (work.fitting == Fitting::button) {
    looker.see("button_bore", work.wide_button ? "large bore" : "small bore", 0.85);
  }
}

void look_at_cord(Looker& looker, const Work& work) {
  looker.see("cord_type", word_of(work.cord), 0.9);
  looker.see("cord_colour", word_of(work.colour), 0.8);
  looker.measure("cord_thickness", work.cord_thickness, 0.7, 0.1, 0.1);
  looker.measure("cord_length", work.cord_length, 0.4, 4, 5);
}

void look_at_tips(Looker& looker, const Work& work) {
  const bool lost = work.tips[0] == TipForm::none || work.tips[1] == TipForm::none;
  const TipForm left = work.tips[0] != TipForm::none ? work.tips[0] : work.tips[1];
  looker.see("tip_form", word_of(left), 0.85);
  looker.see("tips_matched",
             lost ? "one lost" : (work.tips[0] == work.tips[1] ? "matched" : "unmatched"),
             0.75);
  looker.measure("tip_length", work.tip_length, 0.6, 0.1, 0.5);
}

void look_over(Recorder& recorder, model::Id<model::Piece> piece, const Work& work) {
  Looker looker(recorder, piece, work);
  look_at_whole(looker, work);
  const auto ornament = add_part(recorder, piece, "ornament", Originality::original);
  looker.on(ornament);
  look_at_ornament(looker, work);
  look_at_marks(recorder, looker, work, piece, ornament);
  if (work.stones[0] != Stone::none) {
    looker.on(add_part(recorder, piece, "stone", Originality::unknown));
    looker.see("setting", word_of(work.setting), 0.75, How::loupe);
    looker.peer("backing", word_of(work.backing), 0.5, 0.4);
    looker.measure("stone_count", stone_count(work), 0.7, 0, 1);
  }
  looker.on(work.fitting == Fitting::none
                ? ornament
                : add_part(recorder, piece, "fitting", work.fitting_said));
  look_at_fitting(looker, work);
  if (work.worn_on_cord()) {
    looker.on(add_part(recorder, piece, "cord", work.cord_said));
    look_at_cord(looker, work);
    looker.on(add_part(recorder, piece, "tip", work.tips_said));
    look_at_tips(looker, work);
  }
}

}  // namespace

void record_pieces(Recorder& recorder) {
  for (const LenderCard& card : lender_cards()) {
    recorder.lenders.push_back(recorder.change.add(model::Lender{
        .code = card.code, .name = card.name, .address = card.address, .credit = card.credit}));
  }
  const auto prose = all_prose(recorder.scenario);
  for (std::size_t i = 0; i < recorder.scenario.works.size(); ++i) {
    const Work& work = recorder.scenario.works[i];
    const int lender = lender_of(work);
    recorder.pieces.push_back(recorder.change.add(model::Piece{
        .number = work.number,
        .title = title_of(work),
        .form = recorder.word(word_of(work.form)),
        .lot = work.lot < 0 ? model::Word{} : recorder.word(fmt::format("lot {}", work.lot)),
        .tray = recorder.word(fmt::format("tray {}", 1 + i / 24)),
        .lender = lender < 0 ? model::Id<model::Lender>{}
                             : recorder.lenders[static_cast<std::size_t>(lender)],
        .prose = prose[i]}));
    look_over(recorder, recorder.pieces.back(), work);
  }
  for (const Shot& shot : shots(recorder.scenario)) {
    recorder.change.add(model::Photograph{.piece = recorder.pieces[shot.work],
                                          .view = shot.view,
                                          .file = shot.file,
                                          .pixels_per_mm = shot.pixels_per_mm,
                                          .width_px = shot.width_px,
                                          .height_px = shot.height_px,
                                          .credit = "Drawn for the demo show"});
  }
}

}  // namespace backmark::scenario
