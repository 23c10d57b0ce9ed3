#include "base/result.h"

namespace backmark {

std::string to_line(const Problem& problem) {
  std::string line;
  if (!problem.where.empty()) {
    line = problem.where + ": ";
  }
  line += problem.what;
  if (!problem.fix.empty()) {
    line += "; " + problem.fix;
  }
  return line;
}

}  // namespace backmark
