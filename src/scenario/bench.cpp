#include "scenario/bench.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "base/text.h"

namespace backmark::scenario {
namespace {

constexpr std::uint32_t bit(Technique technique) {
  return 1U << static_cast<unsigned>(technique);
}

template <class E>
E chosen(Random& random,
         const Fashion& fashion,
         const Habit Habits::*habit,
         const Habits* own,
         Year year) {
  static const Habit nothing;
  return static_cast<E>(choose(random, fashion, own != nullptr ? own->*habit : nothing, year));
}

double rounded(double value, double step) {
  return std::round(value / step) * step;
}

// How much of the box of height × width the metal fills, by outline.
double filled(Outline outline) {
  switch (outline) {
    case Outline::disc:
    case Outline::oval:
      return 0.785;
    case Outline::scallop:
    case Outline::shield:
      return 0.75;
    case Outline::plaque:
      return 0.95;
    case Outline::fish:
    case Outline::lozenge:
      return 0.5;
    case Outline::ring:
    case Outline::crescent:
      return 0.45;
    default:
      return 0.4;
  }
}

double density_g_per_mm3(Metal metal) {
  switch (metal) {
    case Metal::silver:
    case Metal::blackened_silver:
      return 0.0104;
    case Metal::pewter:
      return 0.0073;
    default:
      return 0.0086;
  }
}

void give_stones(Random& random, Work& work, const Habits* own) {
  const Fashions& f = fashions();
  const int wanted = rule_of(work.motif).stones;
  for (int i = 0; i < wanted; ++i) {
    auto stone = Stone::none;
    for (int attempt = 0; attempt < 6; ++attempt) {
      stone = chosen<Stone>(random, f.stone, &Habits::stone, own, work.made);
      if (std::find(work.stones.begin(), work.stones.end(), stone) == work.stones.end()) {
        break;
      }
    }
    work.stones[static_cast<std::size_t>(i)] = stone;
  }
  if (wanted == 0) {
    return;
  }
  work.setting = work.uses(Technique::inlay)
                     ? Setting::channel
                     : chosen<Setting>(random, f.setting, &Habits::setting, own, work.made);
  work.backing = chosen<Backing>(random, f.backing, &Habits::backing, own, work.made);
}

void give_size(Random& random, Work& work, const Habits* own) {
  const MotifRule& rule = rule_of(work.motif);
  const double size = (own != nullptr ? own->size : 1 + 0.06 * random.normal());
  const double scale = size * (1 + 0.05 * random.normal());
  work.width = rounded(rule.width * scale * (1 + 0.015 * random.normal()), 0.5);
  work.height = rounded(rule.height * scale * (1 + 0.015 * random.normal()), 0.5);
  work.gauge = rounded(std::clamp((own != nullptr ? own->gauge_mm : 1.05) -
                                      0.006 * (work.made.value - 1955) + 0.08 * random.normal(),
                                  0.5, 2.4),
                       0.05);
  work.depth = rounded(work.gauge + 4.5 + std::abs(random.normal()), 0.1);
}

void give_mark(Random& random, Work& work) {
  if (work.maker >= 0) {
    const MakerCard& card = makers()[static_cast<std::size_t>(work.maker)];
    if (random.chance(card.signs)) {
      std::size_t at = 0;
      // A worn-out stamp stays in the drawer for a year or two.
      const double lag = random.exponential() * 0.8;
      while (at < card.changed.size() && work.made.value - lag >= card.changed[at].value) {
        ++at;
      }
      for (const auto line : split(card.legends[at], "/")) {
        work.mark.emplace_back(line);
      }
      work.mark_form = card.mark_form;
      work.mark_outline = card.mark_outline;
      work.mark_turn = 0.05 * random.normal();
      work.mark_worn = random.chance(0.08);
    }
  } else if (random.chance(0.06)) {
    // A town or retailer's mark: true, and no maker's.
    work.mark = {random.chance(0.5) ? "HASK" : "ENNET"};
    work.mark_form = MarkForm::stamped;
    work.mark_outline = MarkOutline::rectangle;
  }
}

double cord_mm(Random& random, CordType type) {
  constexpr double usual[] = {0, 5.3, 4.0, 4.6, 3.6, 4.2, 4.4, 5.0};
  const double mm = usual[static_cast<std::size_t>(type)] + 0.35 * random.normal();
  return type == CordType::none ? 0 : rounded(std::clamp(mm, 2.8, 6.4), 0.1);
}

void give_fitting(Random& random, Work& work, const Habits* own, Year year) {
  const Fashions& f = fashions();
  if (work.form == Form::pendant) {
    work.fitting = Fitting::none;
  } else if (work.worn_on_cord()) {
    work.fitting = chosen<Fitting>(random, f.fitting, &Habits::fitting, own, year);
  } else {
    work.fitting = Fitting::pin;
  }
  work.solder = chosen<Solder>(random, f.solder, &Habits::solder, own, year);
  const double stock = year.value - 1.2 * random.exponential();
  work.bar_kind = stock >= bar_changed.value ? 1 : 0;
  work.clip_legend = 0;
  for (const Year changed : clip_changed) {
    work.clip_legend += stock >= changed.value ? 1 : 0;
  }
}

void give_cord(Random& random, Work& work, const Habits* own, Year year) {
  const Fashions& f = fashions();
  work.cord = chosen<CordType>(random, f.cord, &Habits::cord, own, year);
  work.colour = chosen<CordColour>(random, f.colour, &Habits::colour, own, year);
  if (work.cord == CordType::plaited_leather || work.cord == CordType::round_leather) {
    constexpr CordColour leather[] = {CordColour::black, CordColour::brown, CordColour::tan};
    work.colour = leather[static_cast<std::size_t>(work.colour) % 3];
  }
  work.cord_thickness = cord_mm(random, work.cord);
  work.cord_length = rounded(960 + 50 * random.normal(), 5);
  work.wide_button = work.cord_thickness > 4.8;
}

void give_tips(Random& random, Work& work, const Habits* own, Year year) {
  const auto tip = chosen<TipForm>(random, fashions().tip, &Habits::tip, own, year);
  work.tips = {tip, tip};
  work.tip_metal = work.metal == Metal::blackened_silver ? Metal::silver : work.metal;
  work.tip_length =
      rounded((own != nullptr ? own->tip_mm : 22) * (1 + 0.05 * random.normal()), 0.5);
}

void weigh(Work& work) {
  const double plate = work.width * work.height * filled(work.outline) * work.gauge *
                       density_g_per_mm3(work.metal) * 1.25;
  const double cord = work.cord_length * work.cord_thickness * work.cord_thickness * 0.00055;
  const double tips = work.worn_on_cord() ? work.tip_length * 0.16 : 0;
  work.mass = rounded(plate + cord + tips + (work.stones[0] != Stone::none ? 3 : 0), 0.1);
}

// Most of the time nobody knows; who says anything is right in nine cases of ten.
model::Originality said(Random& random, bool replaced) {
  if (!random.chance(0.35)) {
    return model::Originality::unknown;
  }
  return replaced == random.chance(0.9) ? model::Originality::replaced
                                        : model::Originality::original;
}

Form form_for(Random& random, Motif motif, Year year) {
  const bool small =
      motif == Motif::herring || motif == Motif::tern || motif == Motif::eight_star;
  const double brooch = small ? 0.22 : 0.06;
  const double turned = year.value < 1958 ? 0.08 : 0.03;
  const auto at = random.weighted({1 - brooch - turned - 0.12, 0.06, brooch, 0.06, turned});
  return static_cast<Form>(at);
}

}  // namespace

const MotifRule& rule_of(Motif motif) {
  using enum Technique;
  static const std::array<MotifRule, count_of<Motif>> rules{{
      {Outline::disc, 42, 42, 1, bit(stampwork) | bit(granulation)},
      {Outline::disc, 43, 43, 2, bit(inlay) | bit(stampwork)},
      {Outline::oval, 40, 49, 1, bit(granulation)},
      {Outline::oval, 46, 56, 1, bit(stampwork)},
      {Outline::scallop, 52, 50, 2, bit(inlay) | bit(engraving), false},
      {Outline::fish, 58, 25, 1, bit(stampwork) | bit(engraving), false},
      {Outline::tail, 50, 41, 1, bit(casting) | bit(engraving), false},
      {Outline::disc, 42, 42, 2, bit(overlay) | bit(inlay)},
      {Outline::disc, 44, 42, 2, bit(inlay)},
      {Outline::crescent, 42, 38, 1, bit(stampwork), false},
      {Outline::lozenge, 36, 48, 1, bit(overlay)},
      {Outline::plaque, 34, 45, 2, bit(inlay) | bit(overlay)},
      {Outline::tern, 60, 38, 1, bit(engraving), false},
      {Outline::ring, 40, 40, 1, bit(casting), false},
      {Outline::disc, 44, 44, 0, bit(overlay)},
      {Outline::shield, 38, 55, 3, bit(inlay)},
      {Outline::star, 49, 49, 1, bit(casting), false},
      {Outline::plaque, 40, 30, 1, bit(stampwork)},
  }};
  return rules[static_cast<std::size_t>(motif)];
}

void hang(Random& random, Work& work, const Habits* own, Year year) {
  give_fitting(random, work, own, year);
  work.cord = CordType::none;
  work.cord_thickness = 0;
  work.cord_length = 0;
  work.tips = {TipForm::none, TipForm::none};
  work.tip_length = 0;
  if (work.worn_on_cord()) {
    give_cord(random, work, own, year);
    give_tips(random, work, own, year);
  }
}

Work make_work(Random& random, int maker, const Habits* own, Year year) {
  const Fashions& f = fashions();
  Work work;
  work.made = year;
  work.maker = maker;
  work.grain = random.bits();
  work.motif = chosen<Motif>(random, f.motif, &Habits::motif, own, year);
  const MotifRule& rule = rule_of(work.motif);
  work.form = form_for(random, work.motif, year);
  work.outline = rule.outline;
  if (work.motif == Motif::cabochon && random.chance(0.4)) {
    work.outline = Outline::disc;
  }
  work.metal = chosen<Metal>(random, f.metal, &Habits::metal, own, year);
  work.techniques = rule.techniques;
  if (work.outline != Outline::ring && random.chance(0.12)) {
    work.techniques |= bit(random.chance(0.5) ? Technique::piercing : Technique::engraving);
  }
  if (rule.bordered) {
    work.border = chosen<Border>(random, f.border, &Habits::border, own, year);
  }
  work.finish = work.uses(Technique::casting) && random.chance(0.5)
                    ? Finish::cast_skin
                    : chosen<Finish>(random, f.finish, &Habits::finish, own, year);
  give_stones(random, work, own);
  give_size(random, work, own);
  hang(random, work, own, year);
  if (work.outline == Outline::disc && work.motif == Motif::cabochon) {
    work.height = work.width;
  }
  give_mark(random, work);
  weigh(work);
  return work;
}

void age(Random& random, Work& work) {
  const auto later = [&] {
    return Year{
        std::min(work.made.value + 8 + static_cast<int>(15 * random.exponential()), 1992)};
  };
  if (work.form == Form::turned_pendant) {
    work.bail_scar = true;
    const Year turned = later();
    hang(random, work, nullptr, turned);
    work.fitting_replaced = work.cord_replaced = work.tips_replaced = turned;
  } else if (work.worn_on_cord()) {
    if (random.chance(0.05)) {
      work.fitting_replaced = later();
      give_fitting(random, work, nullptr, *work.fitting_replaced);
    }
    if (random.chance(0.2)) {
      work.cord_replaced = later();
      const bool wide = work.wide_button;
      give_cord(random, work, nullptr, *work.cord_replaced);
      work.wide_button = wide;
    }
    if (random.chance(0.1)) {
      work.tips_replaced = later();
      const TipForm kept = work.tips[0];
      give_tips(random, work, nullptr, *work.tips_replaced);
      // Half of the time only one was lost, and the pair no longer matches.
      work.tips[0] = random.chance(0.5) ? kept : work.tips[0];
    } else if (random.chance(0.04)) {
      work.tips[1] = TipForm::none;
    }
  }
  weigh(work);
  work.cord_said = said(random, work.cord_replaced.has_value());
  work.tips_said = said(random, work.tips_replaced.has_value());
  work.fitting_said = said(random, work.fitting_replaced.has_value());
  work.acquired =
      Year{std::min(work.made.value + static_cast<int>(std::lround(22 * random.exponential())),
                    last_year.value)};
}

}  // namespace backmark::scenario
