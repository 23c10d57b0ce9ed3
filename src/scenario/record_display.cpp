#include "base/text.h"
#include "scenario/recorder.h"

namespace backmark::scenario {
namespace {

using model::Case;

constexpr double pitch_mm = 130;  // from piece to piece, along a row
constexpr double row_mm = 150;

// How many of the show's pieces a case takes, in the order of the choice.
struct CaseCard {
  Case made;
  std::size_t pieces = 0;
  bool on_shelves = false;
};

const std::vector<CaseCard>& case_cards() {
  static const std::vector<CaseCard> cards{
      {{.key = "wall",
        .width_mm = 1800,
        .height_mm = 1100,
        .depth_mm = 220,
        .made_of = "glass; aluminium; acrylic sheet; undyed cotton",
        .leak_per_day = 0.6,
        .hours_per_day = 8,
        .rh_percent = 48,
        .warmer_c = 1},
       46,
       false},
      {{.key = "table-1",
        .width_mm = 1400,
        .height_mm = 700,
        .depth_mm = 260,
        .made_of = "acrylic sheet; MDF; undyed linen",
        .leak_per_day = 0.9,
        .hours_per_day = 8,
        .buffer_kg = 4,
        .rh_percent = 45},
       32,
       false},
      {{.key = "table-2",
        .width_mm = 1400,
        .height_mm = 700,
        .depth_mm = 260,
        .made_of = "acrylic sheet; MDF; undyed linen",
        .hours_per_day = 8,
        .rh_percent = 45},
       31,
       false},
      {{.key = "tower",
        .width_mm = 600,
        .height_mm = 1500,
        .depth_mm = 600,
        .made_of = "glass; steel; wool felt",
        .shelf = "glass",
        .shelf_thick_mm = 6,
        .shelf_span_mm = 560,
        .leak_per_day = 1.2,
        .hours_per_day = 8,
        .buffer_kg = 6,
        .reservoir_g_kg = 2,
        .rh_percent = 48,
        .warmer_c = 2},
       13,
       true}};
  return cards;
}

// Places in rows from the top left, or four to a shelf from below.
model::Placement place_in(const CaseCard& card, std::size_t at) {
  model::Placement place;
  if (card.on_shelves) {
    constexpr std::size_t on_shelf = 4;
    place.shelf = static_cast<std::int32_t>(at / on_shelf) + 1;
    place.x_mm = 75 + 150 * static_cast<double>(at % on_shelf);
    place.y_mm = 300.0 * place.shelf + 60;
    return place;
  }
  const auto columns = static_cast<std::size_t>(card.made.width_mm / pitch_mm);
  place.x_mm = pitch_mm * (static_cast<double>(at % columns) + 0.5);
  place.y_mm = card.made.height_mm - row_mm * (static_cast<double>(at / columns) + 0.5);
  return place;
}

class Displayer {
 public:
  Displayer(Recorder& recorder, const std::vector<Choice>& chosen) : recorder_(recorder) {
    for (const Choice& choice : chosen) {
      if (choice.in_show) {
        shown_.push_back(recorder.pieces[choice.work]);
      }
    }
  }

  void record() {
    for (const CaseCard& card : case_cards()) {
      const auto id = recorder_.change.add(card.made);
      cases_.push_back(id);
      for (std::size_t i = 0; i < card.pieces && next_ < shown_.size(); ++i) {
        model::Placement place = place_in(card, i);
        place.piece = shown_[next_++];
        place.in = id;
        recorder_.change.add(place);
      }
    }
    record_lights();
    record_readings();
    record_past();
    record_requirements();
  }

 private:
  // Two spots over each flat case, a strip of four small ones in the tower.
  void record_lights() {
    const auto light = [&](std::size_t in, const char* name, double cd, double x_mm,
                           double y_mm, double z_mm) {
      recorder_.change.add(model::Fixture{.in = cases_[in],
                                          .name = name,
                                          .intensity_cd = cd,
                                          .x_mm = x_mm,
                                          .y_mm = y_mm,
                                          .z_mm = z_mm,
                                          .dimmed = 0.6,
                                          .uv_uw_lm = 5,
                                          .size_mm = 60});
    };
    light(0, "left", 160, 450, 1500, 1400);
    light(0, "right", 160, 1350, 1500, 1400);
    light(1, "left", 130, 350, 350, 1100);
    light(1, "right", 130, 1050, 350, 1100);
    light(2, "left", 70, 350, 350, 1100);
    light(2, "right", 70, 1050, 350, 1100);
    light(3, "top", 90, 300, 1700, 1000);
  }

  // The meter was held into three cases and at some pieces; nobody has been at table-2.
  void record_readings() {
    const auto read = [&](std::size_t in, double lux, double uv, std::size_t place) {
      recorder_.change.add(model::LightReading{
          .piece = place < shown_.size() ? shown_[place] : model::Id<model::Piece>{},
          .in = cases_[in],
          .lux = lux,
          .uv_uw_lm = uv,
          .day = opening_day - 16,
          .by = recorder_.word("T.M.")});
    };
    const std::size_t whole = shown_.size();
    read(0, 48, 4, whole);
    read(1, 64, 6, whole);
    read(3, 45, 12, whole);
    read(0, 71, 4, 6);
    read(0, 38, 4, 40);
  }

  // Some were shown the summer before.
  void record_past() {
    for (std::size_t i = 4; i < shown_.size(); i += 11) {
      recorder_.change.add(
          model::Exposure{.piece = shown_[i],
                          .lux_hours = 60 * 8.0 * 90,
                          .text = "summer show of the year before, about 60 lx for 90 days",
                          .day = opening_day - 290,
                          .by = recorder_.word("I.R.")});
    }
  }

  // What loan papers say of light is said once more as a limit; two lenders ask for their air.
  void record_requirements() {
    for (const model::Loan& loan :
         std::get<std::vector<model::Loan>>(recorder_.change.added())) {
      if (loan.conditions == "not above 50 lux") {
        limits_.push_back({.piece = loan.piece, .lux = 50, .text = "loan paper"});
      }
    }
    for (model::Requirement& one : limits_) {
      one.waiver = "the lender, in writing";
      add(one);
    }
    add({.lender = recorder_.lenders[1],
         .rh_low = 35,
         .rh_high = 45,
         .c_low = 16,
         .c_high = 24,
         .waiver = "the lender, in writing",
         .text = "letter of the lender"});
    add({.lender = recorder_.lenders[2],
         .rh_low = 50,
         .rh_high = 60,
         .c_low = 18,
         .c_high = 22,
         .waiver = "the lender's conservator",
         .text = "loan agreement, section 4"});
  }

  void add(model::Requirement one) {
    one.day = opening_day - 200;
    one.by = recorder_.word("I.R.");
    recorder_.change.add(one);
  }

  Recorder& recorder_;
  std::vector<model::Id<model::Piece>> shown_;
  std::vector<model::Id<Case>> cases_;
  std::vector<model::Requirement> limits_;
  std::size_t next_ = 0;
};

}  // namespace

void record_display(Recorder& recorder, const std::vector<Choice>& chosen) {
  Displayer(recorder, chosen).record();
}

}  // namespace backmark::scenario
