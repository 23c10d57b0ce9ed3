// What goes wrong, as a value: a Problem names what, where and what to do.
#pragma once

#include <stdexcept>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace backmark {

enum class Fault {
  bad_input,  // the text, number or file given cannot be understood
  not_found,  // the thing named does not exist
  conflict,   // the show changed meanwhile, or two things cannot both hold
  refused,    // understood, and not done on purpose
  io,         // a file or the disk would not
};

// One thing that went wrong, in the curator's words.
struct Problem {
  Fault fault = Fault::bad_input;
  std::string what;   // one sentence: "the date \"195?-ish\" was not understood"
  std::string where;  // "pieces.csv, row 14, column made"; may be empty
  std::string fix;    // "write 1953, 195X or 1947/1962"; may be empty

  friend bool operator==(const Problem&, const Problem&) = default;
};

using Problems = std::vector<Problem>;

// "where: what; fix" on one line, leaving out what is empty.
std::string to_line(const Problem& problem);

// Nothing, for a Result that only says whether it went well.
struct Done {};

// A promise of the program itself was broken: never the user's fault. Caught only at the doors.
class BrokenPromise : public std::logic_error {
 public:
  using std::logic_error::logic_error;
};

// A value, or the Problem that stood in its way. There is no value() that throws: test first.
template <class T>
class [[nodiscard]] Result {
 public:
  // NOLINTNEXTLINE(google-explicit-constructor): returning a plain value must read as such.
  Result(T value) : held_(std::in_place_index<0>, std::move(value)) {}
  // NOLINTNEXTLINE(google-explicit-constructor): returning a Problem must read as such.
  Result(Problem problem) : held_(std::in_place_index<1>, std::move(problem)) {}

  explicit operator bool() const { return held_.index() == 0; }
  bool ok() const { return held_.index() == 0; }

  // Only after ok(); otherwise a BrokenPromise.
  T& operator*() & { return get(); }
  const T& operator*() const& { return const_cast<Result*>(this)->get(); }
  T&& operator*() && { return std::move(get()); }
  T* operator->() { return &get(); }
  const T* operator->() const { return &const_cast<Result*>(this)->get(); }

  const Problem& problem() const {
    if (ok()) {
      throw BrokenPromise("a Result that went well was asked for its problem");
    }
    return std::get<1>(held_);
  }

  // Calls `next` with the value, or hands the problem on. `next` returns a Result.
  template <class Next>
  auto then(Next&& next) && -> decltype(next(std::declval<T>())) {
    if (ok()) {
      return next(std::move(get()));
    }
    return std::get<1>(held_);
  }

 private:
  T& get() {
    if (!ok()) {
      throw BrokenPromise("a Result was used without looking: " + std::get<1>(held_).what);
    }
    return std::get<0>(held_);
  }

  std::variant<T, Problem> held_;
};

}  // namespace backmark
