#include "desk/fitted.h"

#include "desk/warm.h"

namespace backmark::desk {

bool usual(const evidence::ReckonSettings& settings) {
  const evidence::ReckonSettings plain;
  return settings.seed == plain.seed && settings.rounds == plain.rounds &&
         settings.unlisted_share == plain.unlisted_share && settings.hidden.empty() &&
         (settings.chains == plain.chains || settings.chains == 0);
}

Result<std::shared_ptr<const Fitted>> fitted_show(OpenShow& open,
                                                  const evidence::ReckonSettings& settings,
                                                  const Surroundings& around) {
  const auto make = [&]() -> Result<Fitted> {
    auto reckoning =
        evidence::Reckoning::fit(open.show, settings, watch_of(around, "weighing"));
    if (!reckoning) {
      return reckoning.problem();
    }
    around.progress(1, "");
    return Fitted{open.kept, std::move(*reckoning)};
  };
  if (open.warm != nullptr && usual(settings)) {
    return open.warm->derived<Fitted>(
        open.store, open.show, settings.chains == 0 ? "fitted" : "fitted, sampled", make);
  }
  auto fitted = make();
  if (!fitted) {
    return fitted.problem();
  }
  return std::make_shared<const Fitted>(std::move(*fitted));
}

Result<std::shared_ptr<const Fitted>> fitted_show(OpenShow& open, const Surroundings& around) {
  evidence::ReckonSettings settings = usual_settings(around);
  settings.chains = 0;
  return fitted_show(open, settings, around);
}

}  // namespace backmark::desk
