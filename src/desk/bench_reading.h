// What a curator writes of the bench, as the assay room takes it.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "assay/bench.h"
#include "base/result.h"

namespace backmark::desk {

using Pairs = std::map<std::string, std::string>;

struct BenchReading {
  assay::Bench bench;
  std::optional<assay::Density> whole;  // of a thing of two materials: it names neither
  std::optional<std::pair<double, double>> lighter;  // g/cm3 of its lighter part
  std::optional<double> denser;                      // g/cm3 of its denser part
};

// The keys it knows, each with its unit and meaning, in the order of a day at the bench.
struct BenchKey {
  std::string key;
  std::string what;
};
const std::vector<BenchKey>& bench_keys();

// Problems: bad_input (a key that is none, a value that is none), refused (weights no thing can
// have).
Result<BenchReading> read_bench(const Pairs& given);

}  // namespace backmark::desk
