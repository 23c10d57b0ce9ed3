#include "draw/break_lines.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace backmark::draw {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();
constexpr double stretch = 0.50;
constexpr double shrink = 0.24;
constexpr double tightest_at_last = -tightest_space / shrink;
constexpr double least_last_mm = 10;
constexpr int least_last_letters = 7;

// Fit classes: tight, fair, loose, gappy.
int fit_class(double ratio) {
  if (ratio < -0.5) {
    return 0;
  }
  if (ratio < 0.5) {
    return 1;
  }
  return ratio < 1 ? 2 : 3;
}

bool is_hyphen(BreakKind kind) {
  return kind == BreakKind::hyphen_own || kind == BreakKind::hyphen_existing;
}

// What has gone before a break: the class of the line ended there, and hyphens in a row.
struct State {
  int fit = 1;
  int hyphens = 0;
};

constexpr int state_count = 12;

int index_of(State state) {
  return state.fit * 3 + state.hyphens;
}
State state_of(int index) {
  return {index / 3, index % 3};
}

double badness(const BreakPlace& start,
               const BreakPlace& end,
               const LineFit& fit,
               const Measure& measure) {
  if (end.kind != BreakKind::end) {
    return 100 * std::pow(std::abs(fit.ratio), 3) + (fit.ratio > 3.2 ? 3000 : 0);
  }
  double b = fit.ratio < 0 ? 100 * std::pow(-fit.ratio, 3) : 0;
  b += end.letters_at - start.letters_at < 20 ? 900 : 0;
  const double slack = measure.width - fit.natural;
  b += slack > 0 && slack < 1.4 * measure.em ? 40 : 0;
  return b;
}

// A last line below others that holds next to nothing.
bool is_scrap(const BreakPlace& start, const BreakPlace& end, double natural) {
  const int space = start.kind == BreakKind::space ? 1 : 0;  // counts to neither line
  return end.kind == BreakKind::end &&
         (natural < least_last_mm ||
          end.letters_at - start.letters_at - space < least_last_letters);
}

bool forbidden(int from,
               const BreakPlace& start,
               const BreakPlace& end,
               const LineFit& fit,
               int hyphens,
               double tightest) {
  if (fit.ratio < tightest || hyphens > 2) {
    return true;
  }
  return from >= 0 && is_scrap(start, end, fit.natural);
}

struct Step {
  double demerits = never;
  State state;
};

// The line from `from` (in state `before`) to `to`; `strict` off lets forbidden lines pass at a
// price beyond all others.
Step step(const std::vector<BreakPlace>& places,
          int from,
          int to,
          State before,
          const Measure& measure,
          bool strict) {
  const BreakPlace none;
  const BreakPlace& start = from < 0 ? none : places[static_cast<std::size_t>(from)];
  const BreakPlace& end = places[static_cast<std::size_t>(to)];
  const LineFit fit = fit_line(places, from, to, measure);
  const int hyphens = is_hyphen(end.kind) ? before.hyphens + 1 : 0;
  const bool bad = forbidden(from, start, end, fit, hyphens, measure.tightest);
  if (bad && strict) {
    return {};
  }
  const bool last = end.kind == BreakKind::end;
  Step out;
  out.state = {last && fit.ratio > 0 ? before.fit : fit_class(fit.ratio), std::min(hyphens, 2)};
  const double b = badness(start, end, fit, measure);
  double extra = 0;
  extra += end.kind == BreakKind::hyphen_own ? 6300 : 0;
  extra += end.kind == BreakKind::hyphen_existing ? 2100 : 0;
  extra += hyphens == 2 ? 9000 : 0;
  extra += last && from >= 0 && is_hyphen(start.kind) ? 6000 : 0;
  extra += std::abs(out.state.fit - before.fit) > 1 ? 4000 : 0;
  out.demerits = (10 + b) * (10 + b) + extra;
  if (bad) {
    const double over = std::max(0.0, fit.natural - shrink * fit.spaces - measure.width);
    out.demerits = 1e12 * (1 + over);
  }
  return out;
}

struct Node {
  double demerits = never;
  int from = -1;
  int from_state = 0;
};

using Nodes = std::vector<std::array<Node, state_count>>;

void relax(Nodes& nodes,
           const std::vector<BreakPlace>& places,
           int from,
           int to,
           const Measure& measure,
           bool strict) {
  const State start;
  const auto into = static_cast<std::size_t>(to);
  for (int s = 0; s < state_count; ++s) {
    if (from < 0 && s != index_of(start)) {
      continue;
    }
    const double so_far =
        from < 0 ? 0
                 : nodes[static_cast<std::size_t>(from)][static_cast<std::size_t>(s)].demerits;
    if (so_far == never) {
      continue;
    }
    const Step next = step(places, from, to, state_of(s), measure, strict);
    Node& node = nodes[into][static_cast<std::size_t>(index_of(next.state))];
    if (so_far + next.demerits < node.demerits) {
      node = {so_far + next.demerits, from, s};
    }
  }
}

// Whether longer lines than this one are hopeless.
bool too_long(const LineFit& fit, const Measure& measure, bool strict) {
  const double least = fit.natural - tightest_space * fit.spaces;
  return least > measure.width * (strict ? 1.0 : 2.0) + 5;
}

std::vector<int> trace(const Nodes& nodes) {
  std::vector<int> breaks;
  int at = static_cast<int>(nodes.size()) - 1;
  int state = 0;
  double best = never;
  for (int s = 0; s < state_count; ++s) {
    const double d = nodes.back()[static_cast<std::size_t>(s)].demerits;
    if (d < best) {
      best = d;
      state = s;
    }
  }
  if (best == never) {
    return breaks;
  }
  while (at >= 0) {
    breaks.push_back(at);
    const Node& node = nodes[static_cast<std::size_t>(at)][static_cast<std::size_t>(state)];
    at = node.from;
    state = node.from_state;
  }
  std::reverse(breaks.begin(), breaks.end());
  return breaks;
}

std::vector<int> best_breaks(const std::vector<BreakPlace>& places,
                             const Measure& measure,
                             bool strict) {
  Nodes nodes(places.size());
  for (int to = 0; to < static_cast<int>(places.size()); ++to) {
    for (int from = to - 1; from >= -1; --from) {
      relax(nodes, places, from, to, measure, strict);
      if (from < to - 1 && too_long(fit_line(places, from, to, measure), measure, strict)) {
        break;
      }
    }
  }
  return trace(nodes);
}

// A line whose spaces are over one and a half times the natural.
bool has_hole(const std::vector<BreakPlace>& places,
              const std::vector<int>& breaks,
              const Measure& measure) {
  int from = -1;
  for (const int to : breaks) {
    const bool last = places[static_cast<std::size_t>(to)].kind == BreakKind::end;
    if (!last && fit_line(places, from, to, measure).ratio > 1) {
      return true;
    }
    from = to;
  }
  return false;
}

}  // namespace

LineFit fit_line(const std::vector<BreakPlace>& places,
                 int from,
                 int to,
                 const Measure& measure) {
  const BreakPlace& end = places[static_cast<std::size_t>(to)];
  LineFit fit;
  fit.natural = end.at + end.end_extra;
  fit.spaces = end.spaces_at;
  if (from < 0) {
    fit.natural += measure.first_indent;
  } else {
    const BreakPlace& start = places[static_cast<std::size_t>(from)];
    fit.natural -= start.next_at + start.start_less;
    fit.spaces -= start.spaces_next;
  }
  const double slack = measure.width - fit.natural;
  const double give = fit.spaces * (slack > 0 ? stretch : shrink);
  fit.ratio = give > 1e-9 ? slack / give : (slack >= -1e-9 ? 1e3 * std::max(0.0, slack) : -1e3);
  return fit;
}

double demerits(const std::vector<BreakPlace>& places,
                const std::vector<int>& breaks,
                const Measure& measure) {
  double total = 0;
  State state;
  int from = -1;
  for (const int to : breaks) {
    const Step next = step(places, from, to, state, measure, true);
    total += next.demerits;
    state = next.state;
    from = to;
  }
  return total;
}

std::vector<int> break_justified(const std::vector<BreakPlace>& places,
                                 const Measure& measure) {
  auto breaks = best_breaks(places, measure, true);
  if (breaks.empty() || has_hole(places, breaks, measure)) {
    Measure tighter = measure;
    tighter.tightest = tightest_at_last;
    auto again = best_breaks(places, tighter, true);
    breaks = again.empty() ? breaks : again;
  }
  return breaks.empty() ? best_breaks(places, measure, false) : breaks;
}

std::vector<int> break_first_fit(const std::vector<BreakPlace>& places,
                                 const Measure& measure) {
  std::vector<int> breaks;
  int from = -1;
  const int last = static_cast<int>(places.size()) - 1;
  while (from < last) {
    int to = from + 1;
    while (to < last && fit_line(places, from, to + 1, measure).ratio >= -1) {
      ++to;
    }
    breaks.push_back(to);
    from = to;
  }
  return breaks;
}

std::vector<int> break_ragged(const std::vector<BreakPlace>& places, const Measure& measure) {
  struct Best {
    double cost = never;
    int from = -1;
  };
  std::vector<Best> best(places.size());
  for (int to = 0; to < static_cast<int>(places.size()); ++to) {
    const auto kind = places[static_cast<std::size_t>(to)].kind;
    if (kind == BreakKind::hyphen_own) {
      continue;
    }
    for (int from = to - 1; from >= -1; --from) {
      const double so_far = from < 0 ? 0 : best[static_cast<std::size_t>(from)].cost;
      const double natural = fit_line(places, from, to, measure).natural;
      const double slack = measure.width - natural;
      double cost = slack < -1e-6 ? 1e6 * (1 + slack * slack) : slack * slack;
      if (kind == BreakKind::end && slack >= 0) {
        const bool scrap = from >= 0 && is_scrap(places[static_cast<std::size_t>(from)],
                                                 places[static_cast<std::size_t>(to)], natural);
        cost = scrap ? measure.width * measure.width : 0;
      }
      cost += so_far;
      if (cost < best[static_cast<std::size_t>(to)].cost) {
        best[static_cast<std::size_t>(to)] = {cost, from};
      }
      if (slack < -measure.width) {
        break;
      }
    }
  }
  std::vector<int> breaks;
  for (int at = static_cast<int>(places.size()) - 1; at >= 0;
       at = best[static_cast<std::size_t>(at)].from) {
    breaks.push_back(at);
  }
  std::reverse(breaks.begin(), breaks.end());
  return breaks;
}

}  // namespace backmark::draw
