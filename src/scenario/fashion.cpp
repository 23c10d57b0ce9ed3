#include "scenario/fashion.h"

#include <cmath>

namespace backmark::scenario {
namespace {

Habit form_habit(Random& random, const Fashion& fashion, Year middle) {
  const auto usual = weights(fashion, middle);
  double total = 0;
  for (const double weight : usual) {
    total += weight;
  }
  Habit habit(usual.size());
  for (std::size_t i = 0; i < usual.size(); ++i) {
    // A gamma draw a value gives a Dirichlet: few, clear likings.
    habit[i] = usual[i] > 0 ? random.gamma(2.5 * usual[i] / total + 0.02) : 0;
  }
  return habit;
}

Fashions made_up() {
  Fashions f;
  f.motif = {{1946, 10},      {1950, 12},      {1950, 20, 0.9}, {1951, 9, 1.2},  {1957, 9},
             {1952, 16, 0.9}, {1961, 10},      {1955, 12},      {1960, 9, 0.9},  {1951, 9, 0.8},
             {1944, 11, 0.9}, {1948, 12},      {1964, 10},      {1958, 14, 0.8}, {1964, 10},
             {1967, 10, 0.9}, {1958, 14, 0.8}, {1966, 14, 0.7}};
  f.metal = {{1958, 30, 1.4}, {1945, 8, 0.6}, {1952, 12, 0.35},
             {1942, 9, 0.4},  {1963, 8, 0.5}, {1975, 7, 0.3}};
  f.stone = {{1950, 1, 0},    {1952, 10},      {1951, 11},      {1944, 9},
             {1956, 16, 0.8}, {1967, 8},       {1938, 9, 0.9},  {1943, 7, 0.9},
             {1970, 7},       {1954, 8, 1.1},  {1950, 10, 0.7}, {1956, 9, 0.35},
             {1940, 8, 0.35}, {1948, 9, 0.22}, {1944, 9, 0.35}, {1961, 12, 0.35},
             {1949, 6, 0.08}, {1976, 7, 0.35}};
  f.border = {{1960, 25, 0.35}, {1970, 10}, {1947, 8}, {1954, 8}, {1945, 9, 0.8}, {1966, 9}};
  f.setting = {{1950, 1, 0}, {1958, 22}, {1946, 8, 1.1}, {1963, 12, 0.5}, {1971, 8, 0.8}};
  f.backing = {{1950, 1, 0}, {1944, 9}, {1957, 7}, {1970, 10}};
  f.finish = {{1942, 10}, {1952, 8}, {1968, 9}, {1975, 7, 0.8}, {1962, 20, 0.2}};
  f.solder = {{1960, 20}, {1939, 7, 0.8}, {1937, 6, 0.4}};
  f.fitting = {{1950, 1, 0},
               {1938, 7},
               {1952, 6.5, 1.3},
               {1956, 7, 0.8, 1942},
               {1961, 7, 1.4, clip_from.value},
               {1975, 7, 1.6, button_from.value},
               {1950, 1, 0}};
  f.cord = {{1950, 1, 0},
            {1947, 11, 1.2},
            {1951, 15, 0.8},
            {1940, 7, 0.7},
            {1936, 6, 0.6},
            {1951, 5, 0.7, rayon_from.value},
            {1965, 7, 1, nylon_from.value},
            {1976, 7, 1.1, vinyl_from.value}};
  f.colour = {{1955, 30, 1.3}, {1950, 16, 0.9}, {1948, 10, 0.6}, {1964, 8, 0.5},
              {1959, 7, 0.4},  {1971, 6, 0.3},  {1967, 6, 0.25}};
  f.tip = {{1950, 1, 0}, {1944, 10}, {1956, 9}, {1966, 8}, {1952, 7, 0.8}, {1976, 8}};
  return f;
}

}  // namespace

std::vector<double> weights(const Fashion& fashion, Year year) {
  std::vector<double> result(fashion.size());
  for (std::size_t i = 0; i < fashion.size(); ++i) {
    const Wave& wave = fashion[i];
    const double z = (year.value - wave.peak) / wave.width;
    result[i] = year.value < wave.from ? 0 : wave.height * (std::exp(-z * z / 2) + 0.01);
  }
  return result;
}

const Fashions& fashions() {
  static const Fashions made = made_up();
  return made;
}

Habits form_habits(Random& random, const MakerCard& card) {
  const Year middle = card.worked.first + (card.worked.length() / 2);
  const Fashions& f = fashions();
  const auto habit = [&](const Fashion& fashion) {
    return form_habit(random, fashion, middle);
  };
  Habits own;
  own.motif.assign(count_of<Motif>, 0);
  double liking = 1;
  for (const Motif motif : card.motifs) {
    own.motif[static_cast<std::size_t>(motif)] = liking;
    liking *= 0.8;
  }
  own.metal = habit(f.metal);
  own.stone = habit(f.stone);
  own.border = habit(f.border);
  own.setting = habit(f.setting);
  own.backing = habit(f.backing);
  own.finish = habit(f.finish);
  own.solder = habit(f.solder);
  own.fitting = habit(f.fitting);
  own.cord = habit(f.cord);
  own.colour = habit(f.colour);
  own.tip = habit(f.tip);
  own.size = 1 + 0.06 * random.normal();
  own.gauge_mm = 1.05 + 0.15 * random.normal();
  own.tip_mm = 22 + 2.5 * random.normal();
  return own;
}

std::size_t choose(Random& random, const Fashion& fashion, const Habit& habit, Year year) {
  auto usual = weights(fashion, year);
  if (!habit.empty() && random.chance(own_share)) {
    double total = 0;
    std::vector<double> own = habit;
    for (std::size_t i = 0; i < own.size(); ++i) {
      own[i] = usual[i] > 0 ? own[i] : 0;
      total += own[i];
    }
    if (total > 0) {
      return random.weighted(own);
    }
  }
  return random.weighted(usual);
}

}  // namespace backmark::scenario
