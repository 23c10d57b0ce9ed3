#include "desk/frozen.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "base/text.h"

namespace backmark::desk {

namespace {

using press::PrintedFact;

Path folder_of(const Path& prints, const std::string& name) {
  return prints / "frozen" / name;
}

bool is_name(const std::string& name) {
  return !name.empty() && std::all_of(name.begin(), name.end(), [](char letter) {
    return (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9') ||
           letter == '-' || letter == '_';
  });
}

std::vector<std::string> names_in(const Path& prints) {
  std::vector<std::string> names;
  std::error_code error;
  for (const auto& entry : std::filesystem::directory_iterator(prints / "frozen", error)) {
    if (is_name(entry.path().filename().string())) {
      names.push_back(entry.path().filename().string());
    }
  }
  std::sort(names.begin(), names.end());
  return names;
}

using Key = std::tuple<std::string, std::string, words::FactKind>;

Key key_of(const PrintedFact& fact) {
  return {fact.output, fact.piece, fact.kind};
}

// Every fact as it is now: by the grammar where it words the kind, else as printed now.
class Now {
 public:
  Now(const words::Grammar& grammar, const std::vector<PrintRecord>& printed)
      : grammar_(grammar) {
    for (const words::Place& place : grammar.numbering().places()) {
      placed_.insert(place.piece->number);
    }
    for (const PrintRecord& record : printed) {
      papers_.insert(record.output);
      for (const PrintedFact& fact : record.facts) {
        printed_.emplace(key_of(fact), &fact);
      }
    }
  }

  std::string text_of(const PrintedFact& fact) const {
    if (!placed_.contains(fact.piece)) {
      return {};
    }
    if (is_worded(fact.kind)) {
      return grammar_.text_of(*grammar_.show().piece(fact.piece), fact.kind);
    }
    const auto at = printed_.find(key_of(fact));
    // A paper that was not printed since says nothing new.
    return at != printed_.end()            ? at->second->text
           : papers_.contains(fact.output) ? std::string()
                                           : fact.text;
  }

 private:
  const words::Grammar& grammar_;
  std::set<std::string> placed_;
  std::set<std::string> papers_;
  std::map<Key, const PrintedFact*> printed_;
};

}  // namespace

Result<Done> may_freeze(const Path& prints, const std::string& name) {
  if (!is_name(name)) {
    return Problem{Fault::bad_input, fmt::format("\"{}\" is no name for a frozen set", name),
                   "--freeze", "use small letters, figures, - and _, such as \"first-proof\""};
  }
  std::error_code error;
  if (std::filesystem::exists(folder_of(prints, name), error)) {
    return Problem{Fault::conflict, fmt::format("a set \"{}\" is frozen already", name),
                   "--freeze", "a frozen set is never overwritten; give this one another name"};
  }
  return Done{};
}

Result<Done> freeze(const Path& prints,
                    const std::string& name,
                    const std::vector<PrintRecord>& records) {
  if (auto may = may_freeze(prints, name); !may) {
    return may;
  }
  // The point keeps an unfinished set from being taken for one.
  const Path part = folder_of(prints, "." + name);
  std::error_code error;
  std::filesystem::remove_all(part, error);
  std::filesystem::create_directories(part, error);
  for (const PrintRecord& record : records) {
    if (auto written = write_record(part, record); !written) {
      return written;
    }
  }
  std::filesystem::rename(part, folder_of(prints, name), error);
  if (error) {
    return Problem{Fault::io, "the frozen set cannot be written: " + error.message(),
                   folder_of(prints, name).string(), "check the rights of the folder"};
  }
  return Done{};
}

Result<std::vector<PrintRecord>> frozen_records(const Path& prints, const std::string& name) {
  const auto names = names_in(prints);
  if (std::find(names.begin(), names.end(), name) != names.end()) {
    return read_records(folder_of(prints, name));
  }
  return Problem{Fault::not_found, fmt::format("no set \"{}\" was frozen", name), "--frozen",
                 names.empty() ? "freeze one: backmark print SHOW all --freeze NAME"
                               : "frozen are: " + join(names, ", ")};
}

std::vector<press::FactChange> changed_since(const words::Grammar& grammar,
                                             const std::vector<PrintRecord>& frozen,
                                             const std::vector<PrintRecord>& printed) {
  const Now now(grammar, printed);
  std::vector<PrintedFact> then;
  std::vector<PrintedFact> facts;
  std::set<Key> known;
  std::set<std::string> papers;
  for (const PrintRecord& record : frozen) {
    papers.insert(record.output);
    for (const PrintedFact& fact : record.facts) {
      then.push_back(fact);
      known.insert(key_of(fact));
      if (std::string text = now.text_of(fact); !text.empty()) {
        facts.push_back({fact.output, fact.piece, fact.kind, std::move(text)});
      }
    }
  }
  for (const PrintRecord& record : printed) {
    for (const PrintedFact& fact : record.facts) {
      if (papers.contains(record.output) && !known.contains(key_of(fact))) {
        facts.push_back(fact);
      }
    }
  }
  return press::changes(then, facts);
}

}  // namespace backmark::desk
