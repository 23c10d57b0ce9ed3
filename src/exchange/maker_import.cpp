#include <unordered_set>

#include "base/maker_dates.h"
#include "base/text.h"
#include "exchange/list_row.h"
#include "exchange/maker_text.h"

namespace backmark::exchange {

using namespace model;

namespace {

const std::vector<std::pair<std::string_view, MakerKind>> maker_kinds{
    {"person", MakerKind::person},
    {"0", MakerKind::person},
    {"workshop", MakerKind::workshop},
    {"collaboration", MakerKind::workshop},
    {"firm", MakerKind::firm},
    {"organization", MakerKind::firm},
    {"organisation", MakerKind::firm},
    {"1", MakerKind::firm},
    {"unrecorded", MakerKind::unrecorded}};

// "1902-1977", "act. 1890-1910": the years of work, with how sure they are.
void fill_dates(const ListRow& row, Maker& maker, std::vector<CellRemark>& faults) {
  const std::string cell = row.text(Target::dates);
  if (cell.empty()) {
    return;
  }
  const MakerDates dates = read_maker_dates(cell);
  if (!dates.understood) {
    faults.push_back(row.fault(
        Target::dates, fmt::format("\"{}\" dates nobody", cell),
        "write 1902-1977, b. 1902, d. 1931, act. 1890-1910 or fl. 1850s, or leave it empty"));
    return;
  }
  const WorkingYears years = working_years(dates);
  maker.from = years.from;
  maker.to = years.to;
  maker.from_sd = years.from_sd;
  maker.to_sd = years.to_sd;
}

// Fills in what the row says; members that the map does not name keep what they had.
void fill_maker(const ListRow& row,
                Change& change,
                Maker& maker,
                std::vector<CellRemark>& faults) {
  const auto take = [&](Target target, std::string& place) {
    if (row.has(target)) {
      place = row.text(target);
    }
  };
  take(Target::name, maker.name);
  if (row.rule(Target::name)->inverted) {
    maker.name = natural_order(maker.name);
  }
  take(Target::inverted, maker.inverted);
  take(Target::mark, maker.mark);
  take(Target::prose, maker.prose);
  if (row.has(Target::place)) {
    maker.place = change.word(row.text(Target::place));
  }
  fill_dates(row, maker, faults);
  if (row.has(Target::from)) {
    maker.from = row.year(Target::from, false, faults);
  }
  if (row.has(Target::to)) {
    maker.to = row.year(Target::to, true, faults);
  }
  if (maker.from && maker.to && *maker.to < *maker.from) {
    faults.push_back(row.fault(Target::from,
                               fmt::format("the first year, {}, is after the last, {}",
                                           maker.from->value, maker.to->value),
                               "exchange the two, or leave both empty"));
  }
  if (const std::string kind = row.text(Target::kind); !kind.empty()) {
    if (const auto known = one_of(maker_kinds, kind)) {
      maker.kind = *known;
    } else {
      faults.push_back(row.fault(Target::kind, fmt::format("\"{}\" is no kind of maker", kind),
                                 "write one of: person, workshop, firm, unrecorded"));
    }
  }
  if (maker.inverted.empty()) {
    maker.inverted = maker.kind == MakerKind::person ? inverted_order(maker.name) : maker.name;
  }
}

bool names_nobody(const std::string& name) {
  const auto makers = read_makers(name);
  return !makers.empty() && makers.front().name.empty();
}

}  // namespace

void import_makers(Intake& intake, std::vector<const TableRow*>& faulty) {
  std::unordered_map<std::string, long> seen;
  std::unordered_map<std::string, const Maker*> known;
  std::unordered_set<const Maker*> met;
  for (const Maker& maker : intake.show.all<Maker>()) {
    known.try_emplace(lower_ascii(maker.name), &maker);
    known.try_emplace(maker.key, &maker);
  }
  for (const TableRow& table_row : intake.table.rows) {
    const ListRow row(intake, table_row);
    std::vector<CellRemark> faults;
    if (names_nobody(row.text(Target::name))) {
      intake.out.notes.push_back(row.fault(
          Target::name,
          fmt::format("\"{}\" names no hand: a place, or nobody", row.text(Target::name)),
          "it was left out of the makers"));
      continue;
    }
    Maker maker;
    fill_maker(row, intake.out.change, maker, faults);
    const std::string key =
        row.text(Target::key).empty() ? to_key(maker.name) : row.text(Target::key);
    if (maker.name.empty()) {
      faults.push_back(row.fault(Target::name, "the maker has no name", "give a name"));
    } else if (const auto [at, is_new] = seen.try_emplace(key, table_row.number); !is_new) {
      faults.push_back(
          row.fault(row.has(Target::key) ? Target::key : Target::name,
                    fmt::format("the maker \"{}\" stands in row {} already", key, at->second),
                    "leave one of the two out"));
    }
    if (!faults.empty()) {
      intake.out.faults.insert(intake.out.faults.end(), faults.begin(), faults.end());
      faulty.push_back(&table_row);
      continue;
    }
    auto at = known.find(key);
    at = at == known.end() ? known.find(lower_ascii(maker.name)) : at;
    // Two rows of one name are two makers.
    if (at == known.end() || !met.insert(at->second).second) {
      maker.key = key;
      intake.keep_row(intake.out.change.add(std::move(maker)).value, table_row);
      ++intake.out.others_new;
    } else if (is_changed(intake, *at->second, table_row)) {
      Maker changed = *at->second;
      fill_maker(row, intake.out.change, changed, faults);
      intake.out.change.replace(std::move(changed));
    }
  }
}

}  // namespace backmark::exchange
