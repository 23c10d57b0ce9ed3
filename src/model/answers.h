// The answer that counts, where several were logged: the latest of each subject and use.
#pragma once

#include <map>
#include <utility>

#include "model/show.h"

namespace backmark::model {

class Answers {
 public:
  // The show must outlive this.
  explicit Answers(const Show& show);

  // Of two of one day the one that was logged later; null: nobody was asked.
  const Permission* on(std::int32_t subject, Use use) const;

  // By subject and use.
  const std::map<std::pair<std::int32_t, Use>, const Permission*>& all() const {
    return latest_;
  }

 private:
  std::map<std::pair<std::int32_t, Use>, const Permission*> latest_;
};

}  // namespace backmark::model
