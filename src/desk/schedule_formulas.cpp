#include "base/text.h"
#include "curate/network.h"
#include "desk/formula_lists.h"

namespace backmark::desk {

namespace {

using curate::Network;
using curate::Pass;

const char* const pert =
    "Malcolm, Roseboom, Clark and Fazar 1959, Operations Research 7; critical path method";

Result<Network> network_of(const Given& given) {
  if (given.has("net")) {
    return curate::read_activities(given.text("net"));
  }
  if (given.has("arcs")) {
    return curate::read_arrows(given.text("arcs"));
  }
  return missing_input("the network is missing",
                       "write net=\"A:-:1/2/3|B:A:2\" or arcs=\"1-2:7|2-3:4\"");
}

Result<Reckoned> duration(const Given& given) {
  const auto network = network_of(given);
  if (!network) {
    return network.problem();
  }
  return Reckoned{pass_over(*network).duration};
}

// Activities are named one by one; arrows by the events they join.
Result<Reckoned> path(const Given& given) {
  const auto network = network_of(given);
  if (!network) {
    return network.problem();
  }
  std::vector<std::string> names;
  for (const std::size_t at : critical_path(*network, pass_over(*network))) {
    const std::string& name = network->activities()[at].name;
    if (given.has("net")) {
      names.push_back(name);
      continue;
    }
    const auto ends = split(name, "-");
    if (names.empty()) {
      names.emplace_back(ends.front());
    }
    names.emplace_back(ends.back());
  }
  return Reckoned{join(names, "-")};
}

Result<Reckoned> variance(const Given& given) {
  const auto network = network_of(given);
  if (!network) {
    return network.problem();
  }
  return Reckoned{path_variance(*network, critical_path(*network, pass_over(*network)))};
}

Result<Reckoned> chance(const Given& given) {
  const auto network = network_of(given);
  if (!network) {
    return network.problem();
  }
  return Reckoned{chance_along_path(*network, given.number("due"))};
}

template <double (*Of)(const Pass&, std::size_t)>
Result<Reckoned> time_of(const Given& given) {
  const auto network = network_of(given);
  if (!network) {
    return network.problem();
  }
  const std::size_t at = network->find(given.text("activity"));
  if (at == network->size()) {
    return Problem{Fault::not_found,
                   fmt::format("the network has no activity \"{}\"", given.text("activity")),
                   "", "write activity=... as the network names it"};
  }
  return Reckoned{Of(pass_over(*network), at)};
}

double slack_at(const Pass& pass, std::size_t at) {
  return pass.slack(at);
}
double start_at(const Pass& pass, std::size_t at) {
  return pass.earliest_start[at];
}
double finish_at(const Pass& pass, std::size_t at) {
  return pass.earliest_finish[at];
}
double last_start_at(const Pass& pass, std::size_t at) {
  return pass.latest_start[at];
}
double last_finish_at(const Pass& pass, std::size_t at) {
  return pass.latest_finish[at];
}

Formula on_network(std::string name,
                   std::string what,
                   Result<Reckoned> (*reckon)(const Given&)) {
  return {.name = std::move(name),
          .what = std::move(what),
          .inputs = {{"net", "", 0, 0, false, true, "*"}, {"arcs", "", 0, 0, false, true, "*"}},
          .unit = "",
          .source = pert,
          .notes = "in the unit of the times; times of three points count as (a + 4m + b) / 6",
          .reckon = reckon};
}

Formula on_activity(std::string name,
                    std::string what,
                    Result<Reckoned> (*reckon)(const Given&)) {
  Formula formula = on_network(std::move(name), std::move(what), reckon);
  formula.inputs.push_back({"activity", "", 0, 0, false, false, "*"});
  return formula;
}

}  // namespace

std::vector<Formula> schedule_formulas() {
  const Input least{"a", "", 0, 1e6};
  const Input likely{"m", "", 0, 1e6};
  const Input greatest{"b", "", 0, 1e6};
  Formula chance_by =
      on_network("chance_by", "probability of finishing by date (normal)", chance);
  chance_by.inputs.push_back({"due", "", 0, 1e7});
  chance_by.notes = "optimistic: other paths may be nearly as long; \"schedule\" simulates";
  return {
      {.name = "activity_time",
       .what = "expected activity time",
       .inputs = {least, likely, greatest},
       .unit = "",
       .source = pert,
       .notes = "(a + 4m + b) / 6",
       .value =
           [](const std::vector<double>& in) {
             return curate::ThreePoint{in[0], in[1], in[2]}.expected();
           }},
      {.name = "activity_variance",
       .what = "activity variance",
       .inputs = {least, greatest},
       .unit = "",
       .source = pert,
       .notes = "((b - a) / 6)^2",
       .value =
           [](const std::vector<double>& in) {
             return curate::ThreePoint{in[0], in[0], in[1]}.variance();
           }},
      on_network("project_duration", "project duration", duration),
      on_network("critical_path", "critical path", path),
      on_network("path_variance", "critical path variance", variance),
      chance_by,
      on_activity("total_float", "total float of activity", time_of<slack_at>),
      on_activity("earliest_start", "earliest start of activity", time_of<start_at>),
      on_activity("earliest_finish", "earliest finish of activity", time_of<finish_at>),
      on_activity("latest_start", "latest start of activity", time_of<last_start_at>),
      on_activity("latest_finish", "latest finish of activity", time_of<last_finish_at>),
  };
}

}  // namespace backmark::desk
