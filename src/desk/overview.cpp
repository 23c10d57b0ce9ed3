#include "desk/overview.h"

#include <unordered_set>

#include "base/json.h"
#include "desk/calendar.h"
#include "desk/reckoned.h"
#include "press/job.h"

namespace backmark::desk {

namespace {

// Pieces that nobody picked for show or book yet.
std::size_t waiting_pieces(const model::Show& show) {
  std::unordered_set<std::int32_t> picked;
  for (const model::Pick& pick : show.all<model::Pick>()) {
    picked.insert(pick.piece.value);
  }
  return show.all<model::Piece>().size() - picked.size();
}

}  // namespace

Result<Json> overview(OpenShow& open, std::int64_t now) {
  const model::Show& show = open.show;
  const auto last = last_run(open);
  if (!last && last.problem().fault != Fault::not_found) {
    return last.problem();
  }
  const std::string opens(show.setting("opens"));
  const auto day = press::parse_day(opens);
  return Json{{"show", open.store.folder().filename().string()},
              {"title", show.setting("title")},
              {"opening_day", day ? Json(opens) : Json()},
              {"days_to_opening", day ? Json(*day - day_of(now)) : Json()},
              {"counts",
               {{"pieces", show.all<model::Piece>().size()},
                {"makers", show.all<model::Maker>().size()},
                {"sources", show.all<model::Source>().size()},
                {"waiting", waiting_pieces(show)}}},
              {"inferred", last.ok()},
              {"stale", last.ok() && last->stale},
              {"change", show.position}};
}

}  // namespace backmark::desk
