// Answers that stand until the show or its reckoning moves on: kept as they were sent, so that
// the same question costs nothing twice. Safe to use from several threads.
#pragma once

#include <map>
#include <memory>
#include <mutex>
#include <string>

#include "store/store.h"

namespace backmark::web {

class Answers {
 public:
  // Null: not asked since the show moved to `now`.
  std::shared_ptr<const std::string> find(const store::Moment& now,
                                          const std::string& question);

  // Answers of an earlier moment are dropped; of one moment at most 64 MB are kept.
  void keep(const store::Moment& now, const std::string& question, std::string answer);
  void forget();

 private:
  std::mutex using_;
  store::Moment at_;
  std::size_t bytes_ = 0;
  std::map<std::string, std::shared_ptr<const std::string>> kept_;
};

}  // namespace backmark::web
