#include "press/findings.h"

#include <algorithm>
#include <cmath>

#include "base/text.h"
#include "press/job.h"

namespace backmark::press {
namespace {

constexpr double same_place_mm = 3;

bool same_finding(const model::Condition& a, const model::Condition& b) {
  return a.part == b.part && a.state == b.state && a.view == b.view &&
         std::hypot(a.x_mm - b.x_mm, a.y_mm - b.y_mm) <= same_place_mm;
}

// `states` in the order of their days.
Findings findings_in(const std::vector<const model::Condition*>& states) {
  Findings all;
  for (const model::Condition* state : states) {
    if (state->day != all.last_day) {
      all.day_before = std::exchange(all.last_day, state->day);
    }
    const auto known = std::find_if(all.list.begin(), all.list.end(), [&](const Finding& one) {
      return same_finding(*one.last, *state);
    });
    if (known == all.list.end()) {
      all.list.push_back({state, nullptr, false});
    } else {
      known->before = std::exchange(known->last, state);
    }
  }
  for (Finding& one : all.list) {
    one.is_new = one.before == nullptr && one.last->day == all.last_day &&
                 all.day_before != model::unknown_day;
  }
  return all;
}

}  // namespace

std::map<std::int32_t, Findings> findings_by_piece(const model::Show& show) {
  std::map<std::int32_t, std::vector<const model::Condition*>> states;
  for (const model::Condition& state : show.all<model::Condition>()) {
    states[state.piece.value].push_back(&state);
  }
  std::map<std::int32_t, Findings> all;
  for (auto& [piece, of_piece] : states) {
    std::stable_sort(of_piece.begin(), of_piece.end(),
                     [](const auto* a, const auto* b) { return a->day < b->day; });
    all.emplace(piece, findings_in(of_piece));
  }
  return all;
}

std::string since_last(const Finding& finding, const Findings& all) {
  const std::string seen = day_text(finding.last->day);
  if (finding.before != nullptr) {
    const bool same = finding.before->text == finding.last->text;
    return seen + " · on " + day_text(finding.before->day) +
           (same ? " the same" : ": " + finding.before->text);
  }
  return finding.is_new ? seen + " · new since " + day_text(all.day_before) : seen;
}

}  // namespace backmark::press
