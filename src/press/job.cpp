#include "press/job.h"

#include <array>
#include <chrono>

#include "base/text.h"

namespace backmark::press {

double PressJob::number_setting(std::string_view key, double otherwise) const {
  return to_number(show.setting(key)).value_or(otherwise);
}

namespace {

constexpr std::array<std::string_view, 12> months{
    "January", "February", "March",     "April",   "May",      "June",
    "July",    "August",   "September", "October", "November", "December"};

std::string written_day(model::DayNumber day, std::size_t letters_of_month) {
  if (day == model::unknown_day) {
    return "no day";
  }
  const std::chrono::year_month_day date{std::chrono::sys_days{std::chrono::days{day}}};
  const std::string_view month = months[static_cast<unsigned>(date.month()) - 1];
  return fmt::format("{} {} {}", static_cast<unsigned>(date.day()),
                     month.substr(0, letters_of_month), static_cast<int>(date.year()));
}

}  // namespace

std::string day_text(model::DayNumber day) {
  return written_day(day, std::string_view::npos);
}

std::string short_day_text(model::DayNumber day) {
  return written_day(day, 3);
}

std::optional<model::DayNumber> parse_day(std::string_view text) {
  const auto cells = split(trim(text), "-");
  std::array<long, 3> parts{};
  for (std::size_t i = 0; i < parts.size(); ++i) {
    parts[i] = cells.size() == parts.size() ? to_whole(cells[i]).value_or(0) : 0;
    if (parts[i] < 1 || parts[i] > 9999) {
      return std::nullopt;
    }
  }
  const std::chrono::year_month_day date{std::chrono::year{static_cast<int>(parts[0])},
                                         std::chrono::month{static_cast<unsigned>(parts[1])},
                                         std::chrono::day{static_cast<unsigned>(parts[2])}};
  if (!date.ok()) {
    return std::nullopt;
  }
  return static_cast<model::DayNumber>(std::chrono::sys_days{date}.time_since_epoch().count());
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
