#include "desk/screened.h"

#include "base/text.h"
#include "desk/calendar.h"
#include "press/job.h"

namespace backmark::desk {

const std::string_view screen_caution =
    "Information for asking the right questions, not legal advice: local law, the permit "
    "authority, "
    "the registrar and counsel decide. A piece that may be a cultural item is neither shown, "
    "photographed, measured nor printed before its community has answered.";

namespace {

void add_materials(const model::Show& show,
                   const model::Piece& piece,
                   assay::OnRecord& record) {
  for (const model::Observation& seen : show.observations_of(piece.id)) {
    const model::Character* character = show.find(seen.character);
    if (seen.seen == model::Seen::value && character->shape != model::Shape::number) {
      record.materials.push_back({lower_ascii(show.text(seen.value)),
                                  std::string(show.text(character->part)),
                                  static_cast<double>(seen.certainty)});
    }
  }
}

void add_acquisition(const model::Show& show,
                     const model::Piece& piece,
                     assay::OnRecord& record) {
  for (const model::Event& event : show.events_of(piece.id)) {
    const auto last = event.to ? event.to : event.from;
    if (event.kind == model::EventKind::acquired && last &&
        (!record.acquired_by || *last < *record.acquired_by)) {
      record.acquired_by = last;
      record.acquired_from = event.from ? event.from : last;
    }
  }
}

}  // namespace

std::vector<assay::Screened> screen_piece(const model::Show& show,
                                          const model::Piece& piece,
                                          const std::optional<LastRun>& last,
                                          assay::Day opening) {
  assay::OnRecord record{.opening = opening};
  add_materials(show, piece, record);
  add_acquisition(show, piece, record);
  if (last) {
    if (const model::PieceBelief* belief = last->run.beliefs.of(piece.id)) {
      record.year = belief->year;
    }
  }
  return assay::screen(record);
}

assay::Day opening_of(const model::Show& show, const Surroundings& around) {
  const auto set = press::parse_day(std::string(show.setting("opens")));
  const std::chrono::sys_days day{
      std::chrono::days{static_cast<int>(set ? *set : day_of(around.now))}};
  return assay::Day{day};
}

std::optional<LastRun> reckoned_or_none(OpenShow& open) {
  std::optional<LastRun> last;
  if (auto run = last_run(open)) {
    last.emplace(std::move(*run));
  }
  return last;
}

}  // namespace backmark::desk
