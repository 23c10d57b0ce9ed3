// An operation asked for over HTTP: run on the show that is kept in memory, one writer at a
// time.
#pragma once

#include <mutex>
#include <string>

#include "desk/warm.h"
#include "web/answers.h"
#include "web/ask.h"
#include "web/http.h"
#include "web/later.h"
#include "web/lots.h"

namespace backmark::web {

class Operate {
 public:
  Operate(Path show, desk::Surroundings around)
      : show_(std::move(show)), around_(std::move(around)) {}

  // 200 with the operation's JSON, or the Problem with its status; of a conflict with what
  // somebody else wrote also "theirs" (the changes since `seen`, with their values) and "yours"
  // (the body). The name of the show's folder is struck from what is said.
  Response run(const desk::Operation& operation, Ask ask, const std::string& who);

  // Weighs the show before anybody asks, behind everybody's back.
  void weigh_ahead();

  // A photograph by the name of its file; the answer of desk::take_photographs. One of a lot
  // waits for the others of it (web/lots.h); an empty `lot`: it comes alone.
  Response take_photograph(const std::string& name,
                           std::string bytes,
                           const std::string& who,
                           const std::string& lot);
  // All that came of the lot, as one change.
  Response end_lot(const std::string& lot, const std::string& who);

  // The show as it is now, from memory. Problems: those of the store.
  Result<std::shared_ptr<const model::Show>> current_show();

  // {show, title, ...} as desk::overview gives it.
  Result<Json> overview();

  const Path& show() const { return show_; }

 private:
  Result<desk::OpenShow> open_to_write();
  // One lot of photographs that somebody left, on the show as it is by then.
  bool end_still_lot(const desk::Surroundings& around);
  desk::Surroundings around_now(const std::string& who) const;
  Response write(const desk::Operation& operation, Ask& ask, const desk::Surroundings& around);
  // From memory, if nothing moved since the same was asked. An answer from what was last
  // weighed (desk/warm.h) says so in the header Backmark-Weighing and is worked out anew
  // later.
  Response look(const desk::Operation& operation, Ask ask, const desk::Surroundings& around);
  void look_again(const desk::Operation& operation,
                  const Ask& ask,
                  const desk::Surroundings& around);
  // Runs the operation; what it answers is kept unless it turns out to be of an earlier show.
  Response look_anew(const desk::Operation& operation,
                     const Ask& ask,
                     const desk::Surroundings& around,
                     const bool& earlier);
  // Where the book is, if the show in memory is there too.
  std::optional<store::Moment> settled_moment();
  Response answer_of(const Result<desk::Answer>& result) const;
  Response conflict(const Ask& ask, const Problem& problem, store::Store& store);
  Problem without_paths(Problem problem) const;

  Path show_;
  desk::Surroundings around_;
  std::mutex settling_;
  std::optional<store::Store> settled_;  // for settled_moment alone
  desk::Warm warm_;
  Answers answers_;
  std::mutex writing_;
  Later later_;  // last: what it does uses the others
  Lots lots_;  // under writing_
};

}  // namespace backmark::web
