#include "scenario/recorder.h"
#include "scenario/scenario.h"

namespace backmark::scenario {

void fill(model::Change& change, const Scenario& scenario) {
  Recorder recorder{change, scenario, {}, {}, {}, {}, {}};
  record_knowledge(recorder);
  record_pieces(recorder);
  record_statements(recorder);
  record_exhibit(recorder);
}

}  // namespace backmark::scenario
