// What an operation is: its name, what it takes, and the function that does it.
// The list of all of them is operations.h; every door (terminal, browser) follows from that
// list.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <stop_token>
#include <string>
#include <string_view>
#include <vector>

#include "base/file.h"
#include "base/json.h"
#include "base/result.h"

namespace backmark::desk {

class Warm;

enum class Takes {
  folder,  // a show
  file,
  text,
  texts,  // the rest of the line
  number,
  whole,
  flag,
};

struct Parameter {
  std::string name;  // "show"; an option is written --name
  Takes takes = Takes::text;
  std::string help;
  bool positional = false;
  bool required = false;
};

// The arguments as a door understood them. Asking for one that the operation does not declare
// is a broken promise.
class Call {
 public:
  void set(const std::string& name, std::vector<std::string> values);

  bool has(const std::string& name) const;
  // Empty if not given.
  std::string text(const std::string& name) const;
  std::vector<std::string> texts(const std::string& name) const;
  bool flag(const std::string& name) const { return has(name); }
  Path path(const std::string& name) const { return Path(text(name)); }
  // The number given, or `fallback`; a Problem if it is not a number.
  Result<double> number(const std::string& name, double fallback) const;
  Result<long> whole(const std::string& name, long fallback) const;

  // Text on standard input, where an operation reads it; empty function: there is none.
  std::function<std::string()> standard_input;
  // The show as a door keeps it in memory between calls (desk/warm.h); none: it is read anew.
  Warm* warm = nullptr;
  // What a page that writes knows (store::Store::expect); nothing for the terminal.
  std::optional<std::int64_t> seen;
  std::string once;

 private:
  std::map<std::string, std::vector<std::string>> given_;
};

// What only the outermost door knows.
struct Surroundings {
  std::string who;       // signs the book of changes
  std::int64_t now = 0;  // seconds since 1970-01-01 UTC
  std::function<std::int64_t()>
      clock;            // the same at any later moment, for a door that stays open
  Path program_folder;  // where fonts and reference tables lie
  // Share done (0 to 1) and what is being done; called rarely, from one thread.
  std::function<void(double, std::string_view)> progress = [](double, std::string_view) {};
  std::stop_token stop;
};

struct Answer {
  Json json;
  std::string text;   // for a terminal; ends with a line feed unless empty
  Problems problems;  // the request was understood and something in it is at fault: exit 2
};

struct Operation {
  std::string name;
  std::string help;  // one line
  bool writes = false;
  // A write that whoever records at the table may do; other writes are the curator's.
  bool recording = false;
  // What it answers follows from the show, its newest reckoning and the day alone, so a door
  // may give the answer again until one of them moves. Others look at files as well.
  bool from_show_alone = false;
  std::vector<Parameter> parameters;
  Result<Answer> (*run)(const Call&, const Surroundings&) = nullptr;
};

}  // namespace backmark::desk
