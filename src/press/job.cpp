#include "press/job.h"

#include <array>
#include <chrono>

#include "base/text.h"

namespace backmark::press {

double PressJob::number_setting(std::string_view key, double otherwise) const {
  return to_number(show.setting(key)).value_or(otherwise);
}

std::string day_text(model::DayNumber day) {
  constexpr std::array<std::string_view, 12> months{
      "January", "February", "March",     "April",   "May",      "June",
      "July",    "August",   "September", "October", "November", "December"};
  if (day == model::unknown_day) {
    return "no day";
  }
  const std::chrono::year_month_day date{std::chrono::sys_days{std::chrono::days{day}}};
  return fmt::format("{} {} {}", static_cast<unsigned>(date.day()),
                     months[static_cast<unsigned>(date.month()) - 1],
                     static_cast<int>(date.year()));
}

const model::Photograph* photograph_of(const model::Show& show,
                                       model::Id<model::Piece> piece,
                                       model::View view) {
  for (const model::Photograph& photograph : show.photographs_of(piece)) {
    if (photograph.view == view) {
      return &photograph;
    }
  }
  return nullptr;
}

std::optional<draw::Picture> picture_of(const PressJob& job,
                                        const model::Photograph& photograph,
                                        Problems& findings) {
  auto picture = job.photograph(photograph).then([](const std::string& bytes) {
    return draw::decode_picture(bytes);
  });
  if (picture) {
    return std::move(*picture);
  }
  Problem finding = picture.problem();
  if (finding.where.empty()) {
    finding.where = "photograph " + photograph.file;
  }
  findings.push_back(std::move(finding));
  return {};
}

}  // namespace backmark::press
