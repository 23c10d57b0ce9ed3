#include "desk/fitted.h"

#include "desk/weighed.h"

namespace backmark::desk {

namespace {

Result<std::shared_ptr<const Fitted>> fitted_as(OpenShow& open,
                                                const evidence::ReckonSettings& settings,
                                                Wants wants,
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
  if (usual(settings)) {
    const char* name = settings.chains == 0 ? "fitted" : "fitted, sampled";
    return weighed<Fitted>(open, name, make, wants);
  }
  auto fitted = make();
  if (!fitted) {
    return fitted.problem();
  }
  return std::make_shared<const Fitted>(std::move(*fitted));
}

evidence::ReckonSettings without_sampling(const Surroundings& around) {
  evidence::ReckonSettings settings = usual_settings(around);
  settings.chains = 0;
  return settings;
}

}  // namespace

bool usual(const evidence::ReckonSettings& settings) {
  const evidence::ReckonSettings plain;
  return settings.seed == plain.seed && settings.rounds == plain.rounds &&
         settings.unlisted_share == plain.unlisted_share && settings.hidden.empty() &&
         (settings.chains == plain.chains || settings.chains == 0);
}

Result<std::shared_ptr<const Fitted>> fitted_show(OpenShow& open,
                                                  const evidence::ReckonSettings& settings,
                                                  const Surroundings& around) {
  return fitted_as(open, settings, Wants::current, around);
}

Result<std::shared_ptr<const Fitted>> fitted_show(OpenShow& open, const Surroundings& around) {
  return fitted_show(open, without_sampling(around), around);
}

Result<FittedPiece> fitted_piece(OpenShow& open,
                                 const model::Piece& piece,
                                 const Surroundings& around) {
  for (const Wants wants : {Wants::last_made, Wants::current}) {
    auto fitted = fitted_as(open, without_sampling(around), wants, around);
    if (!fitted) {
      return fitted.problem();
    }
    const model::Show& weighed = *(*fitted)->show;
    if (const model::Piece* there = weighed.find(piece.id)) {
      const auto row = static_cast<std::size_t>(there - weighed.all<model::Piece>().data());
      return FittedPiece{*std::move(fitted), row};
    }
  }
  throw BrokenPromise("a piece is not in the fit of its own show");
}

}  // namespace backmark::desk
