#include "desk/fitted.h"

#include "desk/warm.h"

namespace backmark::desk {

Result<std::shared_ptr<const Fitted>> fitted_show(OpenShow& open, const Surroundings& around) {
  const auto make = [&]() -> Result<Fitted> {
    evidence::ReckonSettings settings = usual_settings(around);
    settings.chains = 0;
    auto reckoning =
        evidence::Reckoning::fit(open.show, settings, watch_of(around, "weighing"));
    if (!reckoning) {
      return reckoning.problem();
    }
    around.progress(1, "");
    return Fitted{open.kept, std::move(*reckoning)};
  };
  if (open.warm != nullptr) {
    return open.warm->derived<Fitted>(open.store, "fitted", make);
  }
  auto fitted = make();
  if (!fitted) {
    return fitted.problem();
  }
  return std::make_shared<const Fitted>(std::move(*fitted));
}

}  // namespace backmark::desk
