// Stated windows of use ("this fitting from about 1946 to about 1958, says SOURCE") and tables
// of marks, which are windows of the character "mark".
#include <map>

#include "base/text.h"
#include "exchange/list_row.h"
#include "model/mark_table.h"

namespace backmark::exchange {

using namespace model;

namespace {

// What a window is of, and whose word it is; one mark may return in several windows.
using Of = std::tuple<std::int32_t, std::string, std::int32_t>;

class WindowImport {
 public:
  WindowImport(Intake& intake, std::vector<const TableRow*>& faulty)
      : intake_(intake), faulty_(faulty) {
    for (const Window& window : intake.show.all<Window>()) {
      if (intake.last_row(window.id.value) != nullptr) {
        known_[of(window)].push_back(&window);
      }
    }
  }

  void run() {
    for (const TableRow& row : intake_.table.rows) {
      std::vector<CellRemark> faults;
      take(row, faults);
      if (!faults.empty()) {
        intake_.out.faults.insert(intake_.out.faults.end(), faults.begin(), faults.end());
        faulty_.push_back(&row);
      }
    }
  }

 private:
  Of of(const Window& window) const {
    return {window.character.value, std::string(intake_.show.text(window.value)),
            window.source.value};
  }

  void take(const TableRow& table_row, std::vector<CellRemark>& faults) {
    const ListRow row(intake_, table_row);
    const std::string key = to_key(row.text(Target::character));
    std::string value = row.text(Target::value);
    if (key.empty()) {
      faults.push_back(row.fault(Target::character, "the row names no character",
                                 "say what the value is of, such as \"fitting\" or \"mark\""));
    }
    if (value.empty()) {
      faults.push_back(row.fault(Target::value, "the row names no value",
                                 "write what was in use in these years, or leave the row out"));
    }
    Window window{.from = row.year(Target::from, false, faults),
                  .to = row.year(Target::to, true, faults)};
    if (faults.empty() && !window.from && !window.to) {
      faults.push_back(row.fault(Target::from, "the row gives neither a first nor a last year",
                                 "write the years of use, one of them at least"));
    }
    if (window.from && window.to && *window.to < *window.from) {
      faults.push_back(row.fault(Target::to,
                                 fmt::format("the last year, {}, is before the first, {}",
                                             window.to->value, window.from->value),
                                 "turn the two round, or mend one"));
    }
    window.source = source_of(row, faults);
    if (!faults.empty()) {
      return;
    }
    const bool mark = key == mark_table_key;
    if (!mark && row.rule(Target::value)->lower) {
      value = lower_ascii(value);
    }
    window.character = intake_.character(
        {.key = key, .shape = mark ? Shape::text : Shape::category, .label = {}});
    window.value = intake_.out.change.word(value);
    keep(std::move(window), value, table_row);
  }

  Id<Source> source_of(const ListRow& row, std::vector<CellRemark>& faults) {
    const std::string key = row.text(Target::source);
    if (key.empty()) {
      return intake_.source();
    }
    const Source* known = intake_.show.source(key);
    if (known == nullptr) {
      faults.push_back(row.fault(Target::source, fmt::format("there is no source \"{}\"", key),
                                 "import the sources first, or leave the cell empty"));
      return {};
    }
    return known->id;
  }

  void keep(Window window, const std::string& value, const TableRow& row) {
    const Of which{window.character.value, value, window.source.value};
    const auto held = known_.find(which);
    const std::size_t at = taken_[which]++;
    if (held == known_.end() || at >= held->second.size()) {
      const auto id = intake_.out.change.add(std::move(window));
      intake_.keep_row(id.value, row);
      ++intake_.out.others_new;
      return;
    }
    window.id = held->second[at]->id;
    if (is_changed(intake_, *held->second[at], row)) {
      intake_.out.change.replace(std::move(window));
    }
  }

  Intake& intake_;
  std::vector<const TableRow*>& faulty_;
  std::map<Of, std::vector<const Window*>> known_;  // those of this file
  std::map<Of, std::size_t> taken_;
};

}  // namespace

void import_windows(Intake& intake, std::vector<const TableRow*>& faulty) {
  WindowImport(intake, faulty).run();
}

}  // namespace backmark::exchange
