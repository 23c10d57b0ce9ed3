// Light, air, loads, legibility, access, book and schedule through `reckon`, as a user asks it.
// Each row of the first table names its source; the larger table beside the checkout is read
// where it is there.
#include <doctest/doctest.h>

#include "../table_file.h"
#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"

using namespace backmark;

namespace {

struct Row {
  std::string what;
  std::string inputs;  // key=value, parted by semicolons
  std::string expected;
  double tolerance;
  std::string source;
};

const std::vector<Row> rows{
    {"annual light dose", "lux=50;hours_per_day=8;days_per_week=6;weeks=52", "124800", 0.5,
     "McCormick-Goodhart 2019, Megalux Hours Explained"},
    {"permitted display hours per year", "class=R3;rule=CIE 157", "300", 1e-9,
     "CIE 157:2004: 15 000 lx h at 50 lx"},
    {"years to one just noticeable fade", "iso_blue_wool=4;uv=free;lux=50;hours_per_year=3000",
     "66.6667", 0.001, "10 Mlx h by hand"},
    {"illuminance", "I_cd=100;d_m=4;theta_deg=60", "3.125", 1e-9, "cosine law by hand"},
    {"source intensity from illuminance below", "E_lx=15;height_m=0.6", "5.4", 1e-9,
     "published exercise"},
    {"distance for required illuminance", "I_cd=100;theta_deg=0;E_lx=25", "2", 1e-9,
     "inverse square by hand"},
    {"dew point", "T_C=20;RH_pct=50;formula=17.27/237.3", "9.27", 0.005, "1728.org"},
    {"dew point", "T_C=20;RH_pct=100", "20", 1e-9, "saturated air is at its dew point"},
    {"saturation vapour pressure over water (table)", "T_C=30", "4245.5", 42.5,
     "CRC Handbook, 62nd ed."},
    {"RH in empty leaking case", "RH0_pct=40;RH_room_pct=60;N_per_day=1;days=0.693147", "50",
     1e-3, "half-time by hand"},
    {"gel mass, low-RH practice", "volume_m3=0.35;kg_per_m3=20", "7", 1e-9,
     "Knight, DistList 10:29"},
    {"half-time of buffered case", "M_g_per_kg_pct=2;B_kg_per_m3=20;N_per_day=1;T_C=20", "160",
     1e-6, "Thomson 1977: 4MB/N (from memory)"},
    {"years to silver dose threshold", "H2S_ppt=100;dose_ppb_yr=2.5", "25", 1e-9,
     "Ankersmit, Tennent and Watts 2005"},
    {"mid-span deflection", "w_N_per_m=2000;L_m=6;E_GPa=200;I_m4=8e-6", "21.0938", 0.001,
     "published example, 21 mm"},
    {"maximum bending moment", "P_N=20;L_m=2;held=one end", "40", 1e-9, "P L by hand"},
    {"contrast ratio", "fg=#767676;bg=#ffffff", "4.54", 0.005, "WCAG 2 sample table"},
    {"minimum character height", "baseline_in=54;viewing_distance_in=252", "2.5", 1e-9,
     "2010 ADA Standards, Table 703.5.5"},
    {"ISO size", "name=A4", "210x297", 0, "ISO 216"},
    {"ISO size", "name=B5", "176x250", 0, "ISO 216"},
    {"critical path", "arcs=1-2:7|1-3:10|2-4:6|3-4:5|3-5:4|4-5:3|5-6:2", "1-3-4-5-6", 0,
     "textbook solution (Taylor, Introduction to Management Science)"},
};

Result<desk::Answer> ask(std::string what, const std::string& inputs) {
  std::vector<std::string> pairs;
  std::string key;
  for (const auto pair : split(inputs, ";")) {
    key = std::string(pair);
    pairs.push_back(key);
  }
  const std::string of = " of activity ";
  if (const auto at = what.find(of); at != std::string::npos) {
    pairs.push_back("activity=" + what.substr(at + of.size()));
    what = what.substr(0, at + of.size() - 1);
  }
  desk::Call call;
  call.set("name", {what});
  call.set("inputs", pairs);
  return desk::reckon_formula().run(call, {});
}

// Empty if the answer is the one expected.
std::string trouble(const Row& row) {
  const auto answer = ask(row.what, row.inputs);
  if (!answer) {
    return to_line(answer.problem());
  }
  const Json& value = answer->json.at("value");
  if (value.is_string()) {
    return value == row.expected ? "" : value.dump();
  }
  const double off = value.get<double>() - to_number(row.expected).value_or(1e300);
  return std::abs(off) <= row.tolerance + 1e-9 ? "" : value.dump();
}

std::string refusal(const std::string& what, const std::string& inputs) {
  const auto answer = ask(what, inputs);
  return answer ? "no refusal" : to_line(answer.problem());
}

}  // namespace

TEST_CASE("formulas of display give what their sources print") {
  for (const Row& row : rows) {
    const std::string found = trouble(row);
    CHECK_MESSAGE(found == "", fmt::format("{} ({}): {}", row.what, row.source, found));
  }
}

TEST_CASE("every check of the display table beside the checkout holds") {
  const auto table = read_table(Path(BACKMARK_SHARED_DIR) / "reference" / "display-checks.csv");
  if (table.empty()) {
    MESSAGE("skipped: no table of display checks beside the checkout");
    return;
  }
  for (std::size_t i = 1; i < table.size(); ++i) {
    const auto& cells = table[i];
    REQUIRE(cells.size() == 8);
    const Row row{cells[1], cells[2], cells[3], to_number(cells[5]).value_or(0), cells[6]};
    const std::string found = trouble(row);
    CHECK_MESSAGE(found == "", fmt::format("{} {} ({}): {} and not {}", cells[0], row.what,
                                           row.source, found, row.expected));
  }
}

TEST_CASE("every activity of the networks beside the checkout has its times") {
  const auto table =
      read_table(Path(BACKMARK_SHARED_DIR) / "reference" / "display-networks.csv");
  if (table.empty()) {
    MESSAGE("skipped: no table of networks beside the checkout");
    return;
  }
  std::map<std::string, std::string> nets;
  for (std::size_t i = 1; i < table.size(); ++i) {
    const auto& cells = table[i];
    const bool arrow = cells[3].empty();
    const std::string time = arrow ? cells[6] : cells[3] + "/" + cells[4] + "/" + cells[5];
    const std::string one =
        arrow ? cells[1] + ":" + time
              : cells[1] + ":" + (cells[2].empty() ? "-" : replace_all(cells[2], " ", ",")) +
                    ":" + time;
    std::string& net = nets[cells[0]];
    net += (net.empty() ? (arrow ? "arcs=" : "net=") : "|") + one;
  }
  const std::vector<std::pair<std::string, std::size_t>> wanted{{"earliest start", 8},
                                                                {"earliest finish", 9},
                                                                {"latest start", 10},
                                                                {"latest finish", 11},
                                                                {"total float", 12}};
  for (std::size_t i = 1; i < table.size(); ++i) {
    for (const auto& [what, column] : wanted) {
      const Row row{what + " of activity " + table[i][1], nets[table[i][0]], table[i][column],
                    0.0002, table[i].at(14)};
      const std::string found = trouble(row);
      CHECK_MESSAGE(found == "", fmt::format("{} {}: {}", table[i][0], row.what, found));
    }
  }
}

TEST_CASE("what physics or the tables do not carry is refused") {
  CHECK(contains(refusal("gel mass", "V_m3=1;N_per_day=1;F_pct=5;t_days=90;D=0.1"),
                 "\"MH_g_per_kg_pct\" is missing"));
  CHECK(contains(refusal("dew point", "T_C=80;RH_pct=50"), "T_C = 80 is outside -45 to 60"));
  CHECK(contains(refusal("RH after warming a sealed parcel (vapour pressure held)",
                         "T1_C=25;RH1_pct=60;T2_C=10"),
                 "water settles"));
  CHECK(contains(refusal("permitted display hours per year", "class=R0;lux=50"),
                 "this class has no limit"));
  CHECK(contains(refusal("permitted display hours per year", "class=R9"), "no class \"R9\""));
  CHECK(contains(refusal("annual light dose", "lux=50"), "the hours are missing"));
  CHECK(contains(refusal("project duration", "net=A:B:1/2/3|B:A:1/2/3"),
                 "wait for each other in a circle: A, B"));
  CHECK(contains(refusal("project duration", "net=A:-:3/2/1"), "do not rise"));
  CHECK(contains(refusal("project duration", "net=A:C:1/2/3"), "waits for \"C\""));
  CHECK(contains(refusal("mid-span deflection", "w_N_per_m=60;L_m=0.8;E_GPa=70"),
                 "the section is missing"));
  CHECK(contains(refusal("air-exchange rate from tracer decay",
                         "C0_above_background=100;C1_above_background=200;hours=5"),
                 "a tracer that grows"));
}
