// The records of the demo show as a model::Show, for tests and benches that need no store.
#pragma once

#include "model/change.h"
#include "model/show.h"
#include "scenario/scenario.h"

namespace backmark::scenario {

inline model::Show records_of(const Scenario& demo) {
  const model::Show empty;
  model::Change change(empty, "demo", demo.summary());
  fill(change, demo);
  model::Show show;
  for (const std::string& word : change.new_words()) {
    show.pool.take(word);
  }
  show.fill(change.added());
  show.settle();
  return show;
}

}  // namespace backmark::scenario
