#include <deque>

#include "base/text.h"
#include "exchange/list_row.h"

namespace backmark::exchange {

using namespace model;

namespace {

const std::vector<std::pair<std::string_view, SourceKind>> source_kinds{
    {"document", SourceKind::document}, {"publication", SourceKind::publication},
    {"oral", SourceKind::oral},         {"piece", SourceKind::piece},
    {"own", SourceKind::own},           {"record", SourceKind::record}};

void fill_source(const ListRow& row, Source& source, std::vector<CellRemark>& faults) {
  if (row.has(Target::title)) {
    source.title = row.text(Target::title);
  }
  if (row.has(Target::citation)) {
    source.citation = row.text(Target::citation);
  }
  if (row.has(Target::year)) {
    source.year = row.year(Target::year, false, faults);
  }
  if (const std::string kind = row.text(Target::kind); !kind.empty()) {
    if (const auto known = one_of(source_kinds, kind)) {
      source.kind = *known;
    } else {
      faults.push_back(row.fault(Target::kind, fmt::format("\"{}\" is no kind of source", kind),
                                 listed(source_kinds)));
    }
  }
  if (const std::string text = row.text(Target::reliability); !text.empty()) {
    const auto share = to_number(text);
    if (share && *share >= 0 && *share <= 1) {
      source.reliability = *share;
    } else {
      faults.push_back(row.fault(Target::reliability,
                                 fmt::format("\"{}\" is not a share between 0 and 1", text),
                                 "write 0.7 for seven times in ten"));
    }
  }
}

// Sources may derive from one another in any order of rows, so they are added when those they
// derive from are there (Kahn 1962, "Topological sorting of large networks").
class SourceImport {
 public:
  SourceImport(Intake& intake, std::vector<const TableRow*>& faulty)
      : intake_(intake), faulty_(faulty) {
    for (const Source& source : intake.show.all<Source>()) {
      ids_.emplace(source.key, source.id);
    }
  }

  void run() {
    read_rows();
    for (std::size_t i = 0; i < waiting_.size(); ++i) {
      if (waiting_[i].missing == 0) {
        ready_.push_back(i);
      }
    }
    while (!ready_.empty()) {
      const std::size_t i = ready_.front();
      ready_.pop_front();
      place(waiting_[i]);
    }
    for (Waiting& row : waiting_) {
      if (!row.placed) {
        refuse(row.list_row.fault(
                   Target::derives_from,
                   fmt::format("the source \"{}\" derives from itself in a circle, or "
                               "from a source at fault",
                               row.key),
                   "break the circle, or mend the other source"),
               *row.row);
      }
    }
  }

 private:
  struct Waiting {
    const TableRow* row;
    ListRow list_row;
    std::string key;
    std::vector<std::string> from;
    int missing = 0;  // sources of this file that must come first
    bool placed = false;
  };

  void refuse(CellRemark fault, const TableRow& row) {
    intake_.out.faults.push_back(std::move(fault));
    if (faulty_.empty() || faulty_.back() != &row) {
      faulty_.push_back(&row);
    }
  }

  void read_rows() {
    std::unordered_map<std::string, std::size_t> at_key;
    for (const TableRow& row : intake_.table.rows) {
      ListRow list_row(intake_, row);
      std::string key = list_row.text(Target::key);
      if (key.empty()) {
        refuse(list_row.fault(Target::key, "the source has no key",
                              "give a short word that no other source has"),
               row);
        continue;
      }
      const auto [at, is_new] = at_key.try_emplace(key, waiting_.size());
      if (!is_new) {
        refuse(list_row.fault(Target::key,
                              fmt::format("the source \"{}\" stands in row {} already", key,
                                          waiting_[at->second].row->number),
                              "leave one of the two out"),
               row);
        continue;
      }
      waiting_.push_back({&row, std::move(list_row), std::move(key), {}});
    }
    for (std::size_t i = 0; i < waiting_.size(); ++i) {
      link(i, at_key);
    }
  }

  void link(std::size_t i, const std::unordered_map<std::string, std::size_t>& at_key) {
    Waiting& row = waiting_[i];
    const ColumnRule* rule = row.list_row.rule(Target::derives_from);
    const std::string separator =
        rule != nullptr && !rule->split.empty() ? rule->split[0] : ";";
    const std::string text = row.list_row.text(Target::derives_from);
    for (const auto part : split(text, separator)) {
      std::string key(trim(part));
      if (key.empty()) {
        continue;
      }
      if (const auto at = at_key.find(key); at != at_key.end() && !ids_.contains(key)) {
        followers_[key].push_back(i);
        ++row.missing;
      }
      row.from.push_back(std::move(key));
    }
  }

  void place(Waiting& row) {
    row.placed = true;
    const Source* known = intake_.show.source(row.key);
    Source source = known != nullptr ? *known : Source{.key = row.key};
    std::vector<CellRemark> faults;
    fill_source(row.list_row, source, faults);
    if (row.list_row.has(Target::derives_from)) {
      source.derives_from = ids_of(row, faults);
    }
    if (!faults.empty()) {
      for (CellRemark& fault : faults) {
        refuse(std::move(fault), *row.row);
      }
      row.placed = true;
      return;
    }
    if (known == nullptr) {
      const auto id = intake_.out.change.add(std::move(source));
      ids_.emplace(row.key, id);
      intake_.keep_row(id.value, *row.row);
      ++intake_.out.others_new;
    } else if (is_changed(intake_, *known, *row.row)) {
      intake_.out.change.replace(std::move(source));
    }
    for (const std::size_t follower : followers_[row.key]) {
      if (--waiting_[follower].missing == 0) {
        ready_.push_back(follower);
      }
    }
  }

  std::vector<Id<Source>> ids_of(const Waiting& row, std::vector<CellRemark>& faults) const {
    std::vector<Id<Source>> from;
    for (const std::string& key : row.from) {
      const auto at = ids_.find(key);
      if (at != ids_.end()) {
        from.push_back(at->second);
      } else {
        faults.push_back(row.list_row.fault(
            Target::derives_from, fmt::format("there is no source \"{}\"", key),
            "name the key of a source of the show or of this file"));
      }
    }
    return from;
  }

  Intake& intake_;
  std::vector<const TableRow*>& faulty_;
  std::unordered_map<std::string, Id<Source>> ids_;
  std::vector<Waiting> waiting_;
  std::unordered_map<std::string, std::vector<std::size_t>> followers_;
  std::deque<std::size_t> ready_;
};

}  // namespace

void import_sources(Intake& intake, std::vector<const TableRow*>& faulty) {
  SourceImport(intake, faulty).run();
}

}  // namespace backmark::exchange
