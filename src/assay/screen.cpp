#include "assay/screen.h"

#include <cmath>
#include <numbers>

#include "base/text.h"

namespace backmark::assay {

namespace {

using std::chrono::sys_days;

constexpr double holds_from = 0.5;   // chance of a breach from which a piece is held
constexpr double surely_not = 0.02;  // made after the day for all that is known

Day first_of(int year) {
  return Day{std::chrono::year{year}, std::chrono::January, std::chrono::day{1}};
}

double days_of(int year) {
  return static_cast<double>((sys_days(first_of(year + 1)) - sys_days(first_of(year))).count());
}

// Share of its year that lies before a day.
double share_before(Day day) {
  const int year = static_cast<int>(day.year());
  return static_cast<double>((sys_days(day) - sys_days(first_of(year))).count()) /
         days_of(year);
}

Day day_of(const reference::Restriction& rule, Day opening) {
  if (rule.before == "100 years") {
    const Day then{opening.year() - std::chrono::years{100}, opening.month(), opening.day()};
    return then.ok() ? then : Day{then.year(), then.month(), std::chrono::day{28}};
  }
  const auto number = [&rule](std::size_t at, std::size_t length) {
    const auto value = to_whole(rule.before.substr(at, length));
    if (!value) {
      throw BrokenPromise(fmt::format("restrictions.csv has \"{}\" for a day", rule.before));
    }
    return static_cast<int>(*value);
  };
  return Day{std::chrono::year{number(0, 4)},
             std::chrono::month{static_cast<unsigned>(number(5, 2))},
             std::chrono::day{static_cast<unsigned>(number(8, 2))}};
}

std::string day_words(Day day) {
  return fmt::format("{}-{:02}-{:02}", static_cast<int>(day.year()),
                     static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()));
}

// An acquisition on record settles the event if its years lie on one side of the day.
void weigh_acquired(const OnRecord& record, Screened& out) {
  const int year = static_cast<int>(out.before.year());
  if (record.acquired_by && record.acquired_by->value < year) {
    out.p_before = 1;
    out.known =
        fmt::format("acquired by {}, on record: see the paper", record.acquired_by->value);
  } else if (record.acquired_from && record.acquired_from->value > year) {
    out.p_before = 0;
    out.known =
        fmt::format("the acquisition on record is of {}; an earlier one is not on record",
                    record.acquired_from->value);
  } else if (out.p_made_before && *out.p_made_before < surely_not) {
    out.p_before = 0;
    out.known = "made after the day for all that is known, so not acquired before it";
  } else {
    out.known =
        "no acquisition before the day is on record; that it was made before does not "
        "clear it";
  }
}

void weigh_event(const OnRecord& record, Screened& out) {
  const std::string& event = out.rule->event;
  if (event == "made") {
    out.p_before = out.p_made_before;
    out.known = out.p_made_before ? "by the reckoned years" : "the piece is not dated";
  } else if (event == "acquired") {
    weigh_acquired(record, out);
  } else if (event == "taken" || event == "listed") {
    out.known =
        out.p_made_before
            ? "taken before it was made, so the chance of \"made before\" is the least; a "
              "paper must show it"
            : "the piece is not dated and nothing is on record of the taking";
  } else {
    out.known = "age does not settle it";
  }
}

State state_of(const Screened& one) {
  if (one.rule->event == "acquired" && one.p_before && *one.p_before == 1) {
    return State::cleared;
  }
  const double before = one.p_before ? *one.p_before
                        : one.rule->event == "taken" || one.rule->event == "listed"
                            ? one.p_made_before.value_or(0)
                            : 0;
  return one.p_restricted * (1 - before) >= holds_from ? State::hold : State::ask;
}

}  // namespace

std::string_view word_of(State state) {
  switch (state) {
    case State::cleared:
      return "cleared by record";
    case State::hold:
      return "hold";
    case State::ask:
      break;
  }
  return "ask";
}

double decimal_year(Day day) {
  return static_cast<int>(day.year()) + share_before(day);
}

double made_before(const model::YearBelief& belief, Day day) {
  const int year = static_cast<int>(day.year());
  double p = 0;
  for (std::size_t t = 0; t < belief.p.size(); ++t) {
    const int at = belief.span.first.value + static_cast<int>(t);
    p += at < year ? belief.p[t] : at == year ? belief.p[t] * share_before(day) : 0;
  }
  return p;
}

double made_before(double mean, double sd, Day day) {
  return 0.5 * std::erfc((mean - decimal_year(day)) / sd / std::numbers::sqrt2);
}

std::vector<Screened> screen(const OnRecord& record) {
  std::vector<Screened> out;
  for (const SeenMaterial& seen : record.materials) {
    const reference::RestrictedWord* word = reference::restricted_word(seen.word);
    if (word == nullptr) {
      continue;
    }
    for (const reference::Restriction* rule : word->rules) {
      Screened one{.rule = rule,
                   .word = seen.word,
                   .part = seen.part,
                   .p_restricted = word->share * seen.certainty,
                   .before = day_of(*rule, record.opening)};
      if (!record.year.empty()) {
        one.p_made_before = made_before(record.year, one.before);
      }
      weigh_event(record, one);
      one.known = fmt::format("before {}: {}", day_words(one.before), one.known);
      one.state = state_of(one);
      out.push_back(std::move(one));
    }
  }
  return out;
}

}  // namespace backmark::assay
