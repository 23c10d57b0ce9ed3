#include "desk/fitted.h"

#include "desk/weighed.h"

namespace backmark::desk {

namespace {

Path lessons_file(const OpenShow& open) {
  return open.store.folder() / "learned.bin";
}

Result<Fitted> fit_now(const OpenShow& open,
                       const evidence::ReckonSettings& settings,
                       const std::optional<evidence::Lessons>& lessons,
                       const Surroundings& around) {
  auto reckoning = evidence::Reckoning::fit(open.show, settings, watch_of(around, "weighing"),
                                            lessons ? &*lessons : nullptr);
  if (!reckoning) {
    return reckoning.problem();
  }
  around.progress(1, "");
  return Fitted{.show = open.kept, .reckoning = std::move(*reckoning)};
}

// The usual settings, without what would have to be sampled first.
Result<std::shared_ptr<const Fitted>> fitted_quickly(OpenShow& open,
                                                     Wants wants,
                                                     const Surroundings& around) {
  const auto make = [&]() -> Result<Fitted> {
    const auto lessons = last_lessons(open);
    evidence::ReckonSettings settings = usual_settings(around);
    if (!lessons || !evidence::serve(*lessons, settings)) {
      settings.chains = 0;
    }
    return fit_now(open, settings, lessons, around);
  };
  return weighed<Fitted>(open, "fitted, quickly", make, wants);
}

}  // namespace

std::shared_ptr<const Explained::Why> Explained::of(const evidence::Reckoning& reckoning,
                                                    std::size_t row,
                                                    std::size_t comparanda) {
  constexpr std::size_t most = 256;  // about as many as a person leafs through
  {
    const std::lock_guard lock(using_);
    if (const auto known = kept_.find(row); known != kept_.end()) {
      return known->second;
    }
  }
  auto why = std::make_shared<const Why>(reckoning.explain(row, comparanda));
  const std::lock_guard lock(using_);
  if (kept_.size() >= most) {
    kept_.clear();
  }
  kept_.emplace(row, why);
  return why;
}

std::optional<evidence::Lessons> last_lessons(const OpenShow& open) {
  const auto bytes = read_file(lessons_file(open));
  if (!bytes) {
    return std::nullopt;
  }
  auto lessons = evidence::lessons_of(*bytes);
  return lessons ? std::optional<evidence::Lessons>(std::move(*lessons)) : std::nullopt;
}

Result<Done> keep_lessons(const OpenShow& open, const evidence::Lessons& lessons) {
  return write_file(lessons_file(open), evidence::to_bytes(lessons));
}

bool usual(const evidence::ReckonSettings& settings) {
  const evidence::ReckonSettings plain;
  return settings.seed == plain.seed && settings.rounds == plain.rounds &&
         settings.unlisted_share == plain.unlisted_share && settings.hidden.empty() &&
         (settings.chains == plain.chains || settings.chains == 0);
}

Result<std::shared_ptr<const Fitted>> fitted_show(OpenShow& open,
                                                  const evidence::ReckonSettings& settings,
                                                  const Surroundings& around) {
  const auto make = [&] { return fit_now(open, settings, last_lessons(open), around); };
  if (usual(settings)) {
    const char* name = settings.chains == 0 ? "fitted" : "fitted, sampled";
    return weighed<Fitted>(open, name, make, Wants::current);
  }
  auto fitted = make();
  if (!fitted) {
    return fitted.problem();
  }
  return std::make_shared<const Fitted>(std::move(*fitted));
}

Result<std::shared_ptr<const Fitted>> fitted_show(OpenShow& open, const Surroundings& around) {
  return fitted_quickly(open, Wants::current, around);
}

Result<FittedPiece> fitted_piece(OpenShow& open,
                                 const model::Piece& piece,
                                 const Surroundings& around) {
  for (const Wants wants : {Wants::last_made, Wants::current}) {
    auto fitted = fitted_quickly(open, wants, around);
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

std::string learned_line(const Fitted& fitted) {
  const double changed = fitted.reckoning.changed_since_learned().value_or(0);
  return changed > 0
             ? "The show has changed since weights were last learned from it; this answer "
               "weighs what is recorded now.\n"
             : "";
}

}  // namespace backmark::desk
