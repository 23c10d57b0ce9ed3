#include "desk/bench_reading.h"

#include <algorithm>

#include "base/text.h"
#include "reference/material.h"

namespace backmark::desk {

namespace {

Problem bad_value(const std::string& key, const std::string& text, std::string fix) {
  return {Fault::bad_input, fmt::format("\"{}\" is no value for {}", text, key), "",
          std::move(fix)};
}

class Reader {
 public:
  explicit Reader(const Pairs& given) : given_(given) {}

  bool has(const std::string& key) const { return given_.contains(key); }
  std::string text(const std::string& key) const {
    const auto at = given_.find(key);
    return at == given_.end() ? "" : std::string(trim(at->second));
  }
  Result<double> number(const std::string& key, double fallback) const {
    if (!has(key)) {
      return fallback;
    }
    const auto value = to_number(text(key));
    if (!value) {
      return bad_value(key, text(key), "write a number with a full stop as decimal mark");
    }
    return *value;
  }

 private:
  const Pairs& given_;
};

Result<Done> check_keys(const Pairs& given) {
  std::vector<std::string> keys;
  for (const BenchKey& one : bench_keys()) {
    keys.push_back(one.key);
  }
  for (const auto& [key, text] : given) {
    if (std::find(keys.begin(), keys.end(), key) == keys.end()) {
      const auto near = closest(key, keys);
      return Problem{
          Fault::bad_input, fmt::format("nothing measured is called \"{}\"", key), "",
          near ? fmt::format("did you mean \"{}\"?", *near) : "known are: " + join(keys, ", ")};
    }
  }
  return Done{};
}

// From two weighings, or as given.
Result<std::optional<assay::Density>> density_of(const Reader& reader) {
  if (reader.has("density")) {
    const auto value = reader.number("density", 0);
    const auto u = reader.number("density_u", 0.01);
    if (!value || !u) {
      return value ? u.problem() : value.problem();
    }
    if (!(*value > 0) || !(*u >= 0)) {
      return bad_value("density", reader.text("density"), "write grams in a cubic centimetre");
    }
    return std::optional(assay::Density{*value, *u});
  }
  if (!reader.has("air_g") && !reader.has("water_g")) {
    return std::optional<assay::Density>();
  }
  if (!reader.has("air_g") || !reader.has("water_g")) {
    return Problem{Fault::refused, "one weighing gives no density", "",
                   "give both air_g and water_g, or density"};
  }
  assay::Weighing weighing;
  const auto air = reader.number("air_g", 0);
  const auto water = reader.number("water_g", 0);
  const auto warm = reader.number("water_C", 20);
  const auto u = reader.number("reading_g", 0.002);
  const auto air_density = reader.number("air_density", assay::usual_air_density);
  for (const auto* one : {&air, &water, &warm, &u, &air_density}) {
    if (!*one) {
      return one->problem();
    }
  }
  weighing = {Grams{*air}, Grams{*water}, Celsius{*warm}, Grams{*u}, *air_density};
  const auto density = assay::density_of(weighing);
  if (!density) {
    return density.problem();
  }
  return std::optional(*density);
}

// "10.36", "2.45-2.80" or the name of a material.
Result<std::pair<double, double>> density_range(const std::string& key,
                                                const std::string& text) {
  for (const reference::Material& material : reference::materials()) {
    if (material.name == lower_ascii(text)) {
      return std::pair{material.density_low, material.density_high};
    }
  }
  const auto ends = split(text, "-");
  const auto low = to_number(trim(ends.front()));
  const auto high = to_number(trim(ends.back()));
  if (!low || !high || !(*low > 0) || *high < *low || ends.size() > 2) {
    return bad_value(key, text, "write a density, two with a hyphen between, or a material");
  }
  return std::pair{*low, *high};
}

Result<Done> read_index(const Reader& reader, assay::Bench& bench) {
  if (lower_ascii(reader.text("spot_ri")) == "over") {
    bench.index_over = true;
  } else if (reader.has("spot_ri")) {
    const auto index = reader.number("spot_ri", 0);
    if (!index) {
      return index.problem();
    }
    bench.spot_index = *index;
  }
  if (reader.has("ri_low") != reader.has("ri_high")) {
    return Problem{Fault::bad_input, "a blink has two edges", "",
                   "give both ri_low and ri_high"};
  }
  if (reader.has("ri_low")) {
    const auto low = reader.number("ri_low", 0);
    const auto high = reader.number("ri_high", 0);
    if (!low || !high) {
      return low ? high.problem() : low.problem();
    }
    if (*high <= *low) {
      return bad_value("ri_high", reader.text("ri_high"), "the upper edge is the larger");
    }
    bench.index_blink = {*low, *high};
  }
  return Done{};
}

Result<Done> read_angle(const Reader& reader, assay::Bench& bench) {
  if (!reader.has("schreger_deg")) {
    return Done{};
  }
  const auto angle = reader.number("schreger_deg", 0);
  const auto count = reader.number("schreger_n", 1);
  if (!angle || !count) {
    return angle ? count.problem() : angle.problem();
  }
  if (!(*count >= 1 && *count <= 10000)) {
    return bad_value("schreger_n", reader.text("schreger_n"),
                     "write how many angles were measured");
  }
  bench.angle = *angle;
  bench.angles = static_cast<int>(*count);
  return Done{};
}

Result<Done> read_composite(const Reader& reader, BenchReading& reading) {
  if (reader.has("stone")) {
    const auto range = density_range("stone", reader.text("stone"));
    if (!range) {
      return range.problem();
    }
    reading.lighter = *range;
  }
  if (reader.has("metal")) {
    const auto range = density_range("metal", reader.text("metal"));
    if (!range) {
      return range.problem();
    }
    reading.denser = 0.5 * (range->first + range->second);
  }
  return Done{};
}

}  // namespace

const std::vector<BenchKey>& bench_keys() {
  static const std::vector<BenchKey> keys{
      {"air_g", "weight in air, grams, of the thing alone: loose, solid, bare"},
      {"water_g", "weight hung in water, grams"},
      {"water_C", "temperature of the water, 0 to 40 degrees C (20)"},
      {"reading_g", "standard uncertainty of a reading, grams (0.002)"},
      {"air_density", "g/cm3 of the air (0.0012)"},
      {"density", "g/cm3, where it was reckoned already"},
      {"density_u", "its standard uncertainty (0.01)"},
      {"spot_ri", "refractive index by spot, good to 0.01; \"over\" above 1.81"},
      {"ri_low", "lower edge of a blink"},
      {"ri_high", "upper edge of a blink"},
      {"uv_long", "glow in long-wave ultraviolet: inert, weak, strong"},
      {"uv_short", "glow in short-wave ultraviolet: inert, weak, strong"},
      {"magnet", "held near: no, weak, yes"},
      {"seen", "under the loupe, parted by commas: \"bubbles, mould seams\""},
      {"schreger_deg", "angle of outer crossing lines, degrees: a mean if schreger_n is given"},
      {"schreger_n", "how many angles the mean is of (1)"},
      {"fineness_mark", "as it stands: sterling, 925, 750"},
      {"group", "what it looks like at least: stone, organic, synthetic, glass, metal"},
      {"set", "yes: a stone in its setting, weighed as one"},
      {"stone", "of a set thing, the lighter part: a density, two with a hyphen, a material"},
      {"metal", "of a set thing, the denser part: a density or a material"}};
  return keys;
}

Result<BenchReading> read_bench(const Pairs& given) {
  if (auto fine = check_keys(given); !fine) {
    return fine.problem();
  }
  const Reader reader(given);
  BenchReading reading;
  const auto density = density_of(reader);
  if (!density) {
    return density.problem();
  }
  const std::string set = lower_ascii(reader.text("set"));
  if (!set.empty() && set != "yes" && set != "no") {
    return bad_value("set", set, "write yes or no");
  }
  (set == "yes" || reader.has("stone") || reader.has("metal") ? reading.whole
                                                              : reading.bench.density) =
      *density;
  for (const auto step : {read_index, read_angle}) {
    if (auto fine = step(reader, reading.bench); !fine) {
      return fine.problem();
    }
  }
  if (auto fine = read_composite(reader, reading); !fine) {
    return fine.problem();
  }
  reading.bench.uv_long = lower_ascii(reader.text("uv_long"));
  reading.bench.uv_short = lower_ascii(reader.text("uv_short"));
  reading.bench.magnet = lower_ascii(reader.text("magnet"));
  reading.bench.fineness_mark = reader.text("fineness_mark");
  reading.bench.group = lower_ascii(reader.text("group"));
  for (const auto one : split(reader.text("seen"), ",")) {
    if (!trim(one).empty()) {
      reading.bench.seen.push_back(lower_ascii(trim(one)));
    }
  }
  return reading;
}

}  // namespace backmark::desk
