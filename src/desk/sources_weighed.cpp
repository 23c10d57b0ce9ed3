#include "desk/sources_weighed.h"

#include "desk/weighed.h"
#include "evidence/claim_test.h"

namespace backmark::desk {

Result<std::shared_ptr<const SourcesWeighed>> weigh_sources(
    OpenShow& open,
    const std::vector<evidence::ClaimOnFile>& claims,
    const Surroundings& around) {
  const auto make = [&]() -> Result<SourcesWeighed> {
    const auto fitted = fitted_show(open, around);
    if (!fitted) {
      return fitted.problem();
    }
    const model::Show& show = *(*fitted)->show;
    const evidence::Reckoning& reckoning = (*fitted)->reckoning;
    auto borne_out =
        evidence::borne_out(show, reckoning, watch_of(around, "holding sources to the pieces"));
    if (!borne_out) {
      return borne_out.problem();
    }
    SourcesWeighed weighed{*std::move(borne_out), {}, {}};
    for (const evidence::SourceChecked& one : weighed.borne_out.sources) {
      weighed.sources.emplace(one.source.value, one);
    }
    for (const evidence::ClaimOnFile& one : claims) {
      weighed.claims.emplace(one.ask, evidence::test_claim(show, reckoning, one.claim, 1));
    }
    around.progress(1, "");
    return weighed;
  };
  return weighed<SourcesWeighed>(open, "sources weighed", make, Wants::last_made);
}

}  // namespace backmark::desk
