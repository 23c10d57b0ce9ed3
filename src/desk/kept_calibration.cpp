#include "desk/kept_calibration.h"

#include "base/json.h"
#include "desk/calendar.h"

namespace backmark::desk {

namespace {

Path file_of(const OpenShow& open) {
  return open.store.folder() / "prints" / "calibration.json";
}

}  // namespace

Result<Done> keep_calibration(OpenShow& open, Json answer, std::int64_t now) {
  answer["at"] = to_minute(now);
  answer["digest"] = store::digest(open.show);
  return write_file(file_of(open), answer.dump(1) + "\n");
}

Json kept_calibration(OpenShow& open) {
  const auto text = read_file(file_of(open));
  if (!text) {
    return Json();
  }
  Json kept = Json::parse(*text, nullptr, false);
  if (!kept.is_object() || !kept.contains("at") || !kept.contains("verdict")) {
    return Json();
  }
  kept["stale"] = kept.value("digest", "") != store::digest(open.show);
  kept.erase("digest");
  return kept;
}

}  // namespace backmark::desk
