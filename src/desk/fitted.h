// The show as fitted, kept between calls where the door keeps shows.
#pragma once

#include <map>
#include <memory>
#include <mutex>

#include "desk/reckoned.h"

namespace backmark::desk {

// Why each piece is judged as it is, by a fit that does not change: asked of the fit once and
// kept for the pages that ask again. Safe to use from several threads.
class Explained {
 public:
  using Why = evidence::Reckoning::Why;

  // As evidence::Reckoning::explain; always of the same reckoning and number of comparanda.
  std::shared_ptr<const Why> of(const evidence::Reckoning& reckoning,
                                std::size_t row,
                                std::size_t comparanda);

 private:
  std::mutex using_;
  std::map<std::size_t, std::shared_ptr<const Why>> kept_;
};

// A fit together with the show that it looks into.
struct Fitted {
  std::shared_ptr<const model::Show> show;
  evidence::Reckoning reckoning;
  std::unique_ptr<Explained> explained = std::make_unique<Explained>();
};

// What the newest reckoning learned, kept as the file `learned.bin` of the show; none: never
// reckoned, or by another version of the program. The file may be deleted at any time.
std::optional<evidence::Lessons> last_lessons(const OpenShow& open);
// Problems: those of write_file.
Result<Done> keep_lessons(const OpenShow& open, const evidence::Lessons& lessons);

// Settings that a page may ask for again; any others are somebody's trial.
bool usual(const evidence::ReckonSettings& settings);

// Of the show as it stands, with the lessons of the newest reckoning if it had the same
// settings, else learned anew; kept if the settings are the usual ones, with or without the
// sampled part. Problems: those of Reckoning::fit.
Result<std::shared_ptr<const Fitted>> fitted_show(OpenShow& open,
                                                  const evidence::ReckonSettings& settings,
                                                  const Surroundings& around);

// With the usual settings, but without the sampled part if `infer` has not left its lessons: to
// learn them takes seconds where a page has a tenth of one. Answers may then differ from those
// of `infer` by a year or so.
Result<std::shared_ptr<const Fitted>> fitted_show(OpenShow& open, const Surroundings& around);

// A piece in that fit. For a door in a hurry the fit may be of an earlier show (desk/warm.h),
// if the piece was in it: makers and pieces that its answers name may be gone.
struct FittedPiece {
  std::shared_ptr<const Fitted> fitted;
  std::size_t row = 0;  // of the piece in the fit
};
Result<FittedPiece> fitted_piece(OpenShow& open,
                                 const model::Piece& piece,
                                 const Surroundings& around);

// One line to print above answers whose lessons are older than the show; empty if they are not.
std::string learned_line(const Fitted& fitted);

}  // namespace backmark::desk
