// Shows of any size with the truth known, for measuring: fashions come and go in waves, makers
// have habits and spans, some stories are wrong and some parts are later.
#pragma once

#include <cmath>
#include <fmt/format.h>
#include <numeric>
#include <string>
#include <vector>

#include "base/random.h"
#include "model/show.h"

namespace backmark::evidence {

struct GrowthPlan {
  int pieces = 3000;
  int makers = 40;
  int characters = 12;
  int first_year = 1850;
  int years = 150;
  double missing = 0.35;
  double dated = 0.20;
  double signed_share = 0.35;  // of recorded makers' pieces
  double unlisted = 0.25;
  double told = 0.35;  // of the undated: a story, "about"
  double told_wrong = 0.15;
  double acquired = 0.5;
  double replaced = 0.10;   // of the replaceable parts
  double documented = 0.5;  // of makers: working years on file
  double own_habit = 0.4;   // share of choices that are the maker's own
  double waves = 1;         // how long fashions last, as a share of what is usual
  std::uint64_t seed = 1;
};

struct Grown {
  model::Show show;
  std::vector<int> year;                    // of each piece
  std::vector<int> maker;                   // place in Show::all<Maker>(); -1: not listed
  std::vector<std::vector<char>> replaced;  // piece, part: later than the piece
  std::vector<std::int32_t> story;          // id of the claim told of a piece; 0: none
  std::vector<char> story_right;
  std::vector<std::pair<int, int>> worked;  // of each maker
  // What made them, for whoever reckons with the truth in hand: character, value: chance in
  // each year; maker, character: the maker's own value; piece, character: the value seen, -1
  // none; piece: year told by a story (its middle) and year acquired, 0 none; dated; signed.
  std::vector<std::vector<std::vector<double>>> fashions;
  std::vector<std::vector<int>> habits;
  std::vector<std::vector<int>> seen;
  std::vector<int> told, acquired;
  std::vector<char> dated, has_name;
};

class Grower {
 public:
  explicit Grower(const GrowthPlan& plan) : plan_(plan), random_(plan.seed) {}

  Grown grow() {
    declare();
    for (int m = 0; m < plan_.makers; ++m) {
      add_maker();
    }
    for (int i = 0; i < plan_.pieces; ++i) {
      add_piece(i);
    }
    out_.show.settle();
    out_.habits = habits_;
    for (int c = 0; c < plan_.characters; ++c) {
      out_.fashions.push_back(fashion_curves(c));
    }
    return std::move(out_);
  }

  static constexpr int parts = 5;

 private:
  int draw(int count) {
    return static_cast<int>(random_.below(static_cast<std::uint64_t>(count)));
  }
  bool chance(double p) { return random_.uniform() < p; }
  std::int32_t next() { return out_.show.next_id++; }

  void declare() {
    static const char* const names[parts] = {"front", "first", "second", "third", "rest"};
    for (int c = 0; c < plan_.characters; ++c) {
      const int part = c % parts;
      characters_.push_back({next()});
      out_.show.all<model::Character>().push_back({.id = characters_.back(),
                                                   .key = fmt::format("character_{}", c),
                                                   .label = fmt::format("Character {}", c),
                                                   .part = out_.show.pool.take(names[part]),
                                                   .replaceable = part >= 1 && part <= 3});
      const int values = 3 + draw(6);
      Waves waves;
      for (int v = 0; v < values; ++v) {
        waves.centre.push_back(random_.uniform() * plan_.years);
        waves.width.push_back(plan_.waves * plan_.years * (0.1 + 0.25 * random_.uniform()));
        waves.height.push_back(0.3 + random_.uniform());
      }
      waves_.push_back(std::move(waves));
    }
    record_ = {next()};
    story_ = {next()};
    out_.show.all<model::Source>() = {
        {.id = record_, .key = "record", .kind = model::SourceKind::record},
        {.id = story_, .key = "told", .kind = model::SourceKind::own, .reliability = 0.7}};
  }

  void add_maker() {
    const int length = 10 + draw(30);
    const int start = draw(plan_.years - length);
    out_.worked.push_back({plan_.first_year + start, plan_.first_year + start + length - 1});
    model::Maker maker{.id = {next()}};
    maker.key = fmt::format("maker_{}", out_.worked.size());
    maker.name = fmt::format("Maker {}", out_.worked.size());
    maker.mark = fmt::format("MK{}", out_.worked.size());
    if (chance(plan_.documented)) {
      maker.from = Year{out_.worked.back().first};
      maker.to = Year{out_.worked.back().second};
    }
    out_.show.all<model::Maker>().push_back(std::move(maker));
    std::vector<int> habit;
    for (int c = 0; c < plan_.characters; ++c) {
      habit.push_back(fashion(c, start + length / 2));
    }
    habits_.push_back(std::move(habit));
  }

  std::vector<double> weights(int c, int year) const {
    const Waves& waves = waves_[static_cast<std::size_t>(c)];
    std::vector<double> weight;
    for (std::size_t v = 0; v < waves.centre.size(); ++v) {
      const double z = (year - waves.centre[v]) / waves.width[v];
      weight.push_back(waves.height[v] * std::exp(-0.5 * z * z) + 0.01);
    }
    return weight;
  }

  std::vector<std::vector<double>> fashion_curves(int c) const {
    std::vector<std::vector<double>> curves(waves_[static_cast<std::size_t>(c)].centre.size());
    for (int year = 0; year < plan_.years; ++year) {
      const auto weight = weights(c, year);
      const double sum = std::accumulate(weight.begin(), weight.end(), 0.0);
      for (std::size_t v = 0; v < curves.size(); ++v) {
        curves[v].push_back(weight[v] / sum);
      }
    }
    return curves;
  }

  // A value drawn from the fashion of a year (offset).
  int fashion(int c, int year) {
    const std::vector<double> weight = weights(c, year);
    const double sum = std::accumulate(weight.begin(), weight.end(), 0.0);
    double at = random_.uniform() * sum;
    std::size_t v = 0;
    while (v + 1 < weight.size() && at > weight[v]) {
      at -= weight[v++];
    }
    return static_cast<int>(v);
  }

  void add_piece(int place) {
    const bool listed = plan_.makers > 0 && !chance(plan_.unlisted);
    const int maker = listed ? draw(plan_.makers) : -1;
    const auto m = static_cast<std::size_t>(std::max(0, maker));
    const int year = listed ? out_.worked[m].first - plan_.first_year +
                                  draw(out_.worked[m].second - out_.worked[m].first + 1)
                            : draw(plan_.years);
    const model::Id<model::Piece> id{next()};
    out_.show.all<model::Piece>().push_back(
        {.id = id, .number = fmt::format("G {}", place + 1)});
    out_.year.push_back(plan_.first_year + year);
    out_.maker.push_back(maker);
    show_values(id, maker, year);
    out_.has_name.push_back(0);
    if (listed && chance(plan_.signed_share)) {
      out_.has_name.back() = 1;
      out_.show.all<model::Mark>().push_back(
          {.id = {next()}, .piece = id, .text = out_.show.all<model::Maker>()[m].mark});
    }
    tell(id, plan_.first_year + year);
  }

  void show_values(model::Id<model::Piece> id, int maker, int year) {
    std::vector<char> replaced(parts, 0);
    std::vector<int> later(parts, year);
    for (int part = 1; part <= 3; ++part) {
      if (year + 20 < plan_.years && chance(plan_.replaced)) {
        replaced[static_cast<std::size_t>(part)] = 1;
        later[static_cast<std::size_t>(part)] = year + 20 + draw(plan_.years - year - 20);
      }
    }
    out_.seen.emplace_back(static_cast<std::size_t>(plan_.characters), -1);
    for (int c = 0; c < plan_.characters; ++c) {
      const auto part = static_cast<std::size_t>(c % parts);
      const bool own = maker >= 0 && replaced[part] == 0 && chance(plan_.own_habit);
      const int value =
          own ? habits_[static_cast<std::size_t>(maker)][static_cast<std::size_t>(c)]
              : fashion(c, later[part]);
      if (!chance(plan_.missing)) {
        out_.seen.back()[static_cast<std::size_t>(c)] = value;
        out_.show.all<model::Observation>().push_back(
            {.id = {next()},
             .piece = id,
             .character = characters_[static_cast<std::size_t>(c)],
             .value = out_.show.pool.take(fmt::format("value {} of {}", value, c))});
      }
    }
    out_.replaced.push_back(std::move(replaced));
  }

  std::int32_t claim(model::Id<model::Piece> id,
                     model::Id<model::Source> source,
                     int from,
                     int to) {
    const std::int32_t claim = next();
    out_.show.all<model::Claim>().push_back({.id = {claim},
                                             .source = source,
                                             .subject = id.value,
                                             .says = model::Says::made,
                                             .from = Year{from},
                                             .to = Year{to}});
    return claim;
  }

  void tell(model::Id<model::Piece> id, int year) {
    std::int32_t story = 0;
    bool right = true;
    out_.told.push_back(0);
    out_.acquired.push_back(0);
    out_.dated.push_back(0);
    if (chance(plan_.dated)) {
      out_.dated.back() = 1;
      claim(id, record_, year, year);
    } else if (chance(plan_.told)) {
      right = !chance(plan_.told_wrong);
      const int about = right ? year + draw(11) - 5 : plan_.first_year + draw(plan_.years);
      out_.told.back() = about;
      story = claim(id, story_, about - 5, about + 5);
    }
    if (chance(plan_.acquired)) {
      const int lag = static_cast<int>(-30 * std::log(1 - random_.uniform()));
      out_.acquired.back() = std::min(2025, year + lag);
      out_.show.all<model::Event>().push_back({.id = {next()},
                                               .piece = id,
                                               .kind = model::EventKind::acquired,
                                               .to = Year{std::min(2025, year + lag)}});
    }
    out_.story.push_back(story);
    out_.story_right.push_back(right ? 1 : 0);
  }

  struct Waves {
    std::vector<double> centre, width, height;
  };
  GrowthPlan plan_;
  Random random_;
  Grown out_;
  std::vector<model::Id<model::Character>> characters_;
  std::vector<Waves> waves_;
  std::vector<std::vector<int>> habits_;
  model::Id<model::Source> record_, story_;
};

}  // namespace backmark::evidence
