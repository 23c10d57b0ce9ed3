// Marks that a table dates: several strikes on one piece combine.
#include "model/mark_table.h"

#include <doctest/doctest.h>
#include <filesystem>
#include <map>

#include "base/text.h"
#include "evidence/reckon.h"
#include "table_file.h"

using namespace backmark;
using namespace backmark::model;
using evidence::Reckoning;

namespace {

struct MarkedShow {
  Show show;
  std::int32_t next = 1;
  Id<Character> mark{next++};
  Id<Source> table{next++};

  MarkedShow() {
    show.all<Character>() = {{.id = mark,
                              .key = std::string(mark_table_key),
                              .label = "Mark",
                              .shape = Shape::text}};
    show.all<Source>() = {{.id = table,
                           .key = "table",
                           .title = "Table of marks",
                           .kind = SourceKind::publication,
                           .reliability = 0.995}};
  }

  void used(const std::string& text, std::optional<int> from, std::optional<int> to) {
    Window window{.id = {next++}, .character = mark, .value = show.pool.take(text)};
    window.source = table;
    if (from) {
      window.from = Year{*from};
    }
    if (to) {
      window.to = Year{*to};
    }
    show.all<Window>().push_back(window);
  }

  void piece(const std::string& number) {
    show.all<Piece>().push_back({.id = {next++}, .number = number});
  }
  void struck(const std::string& text, float certainty = 1) {
    show.all<Mark>().push_back({.id = {next++},
                                .piece = show.all<Piece>().back().id,
                                .text = text,
                                .certainty = certainty});
  }

  // The chance that the piece was made in these years.
  std::vector<double> chances(const std::vector<std::pair<int, int>>& spans) {
    show.settle();
    const auto reckoning = Reckoning::fit(show, {}, {});
    REQUIRE(reckoning);
    std::vector<double> out;
    for (std::size_t i = 0; i < spans.size(); ++i) {
      const YearBelief year = reckoning->judge(i).year;
      double mass = 0;
      for (std::size_t t = 0; t < year.p.size(); ++t) {
        const int at = year.span.first.value + static_cast<int>(t);
        mass += at >= spans[i].first && at <= spans[i].second ? year.p[t] : 0;
      }
      out.push_back(mass);
    }
    return out;
  }
};

std::optional<int> year_of(const std::string& day) {
  return day.empty() ? std::nullopt : std::optional<int>(std::stoi(day.substr(0, 4)));
}

}  // namespace

TEST_CASE("a letter that came round twice leaves both cycles open; a second mark closes one") {
  MarkedShow show;
  show.used("crowned K", 1726, 1727);
  show.used("crowned K", 1750, 1752);
  show.used("crowned A, laurel", 1722, 1726);
  show.piece("letter alone");
  show.struck("crowned K");
  show.piece("both");
  show.struck("crowned K");
  show.struck("crowned A, laurel");
  const auto first = show.chances({{1726, 1727}, {1726, 1726}});
  const auto second = show.chances({{1750, 1752}, {1750, 1752}});
  CHECK(first[0] > 0.3);
  CHECK(second[0] > 0.3);
  CHECK(first[0] + second[0] > 0.9);
  CHECK(first[1] > 0.85);
  CHECK(second[1] < 0.05);
}

TEST_CASE("a mark read with doubt says less than one read clearly") {
  MarkedShow show;
  show.used("c", 1818, 1819);
  show.used("crown", 1800, 1850);
  for (const float certainty : {1.0F, 0.5F}) {
    show.piece(fmt::format("read {}", certainty));
    show.struck("crown");
    show.struck("c", certainty);
  }
  const auto chances = show.chances({{1818, 1819}, {1818, 1819}});
  CHECK(chances[0] > 0.9);
  CHECK(chances[1] > 0.3);
  CHECK(chances[1] < chances[0] - 0.05);
}

TEST_CASE("a mark that was struck on old work only says that the piece was there by then") {
  MarkedShow show;
  show.used("swan", std::nullopt, 1850);
  show.used("always", 1700, 1950);
  show.piece("a");
  show.struck("swan");
  CHECK(show.chances({{1600, 1850}})[0] > 0.95);
}

// C. Bremer-David, French Silver in the J. Paul Getty Museum (2023), entries 1 to 5: the marks
// on each part, the years in which each was struck, and the years the catalogue gives the
// objects. Warden's letters and charge marks were struck at the making; all others by the end
// of their use.
TEST_CASE("strikes on French silver combine to the years that the catalogue gives") {
  const std::filesystem::path folder =
      std::filesystem::path(BACKMARK_SHARED_DIR) / "data/hallmarks";
  if (!std::filesystem::exists(folder / "paris-marks.csv")) {
    MESSAGE("skipped: no table of struck pieces here");
    return;
  }
  MarkedShow show;
  for (const auto& row : table_rows(folder / "paris-marks.csv")) {
    const bool making = row.at("kind") == "warden" || row.at("kind") == "charge";
    const auto to = year_of(row.at("used_to"));
    if (making || to) {
      show.used(row.at("mark_id"), making ? year_of(row.at("used_from")) : std::nullopt, to);
    }
  }
  std::map<std::string, std::pair<int, int>> published;
  for (const auto& row : table_rows(folder / "paris-pieces.csv")) {
    published[row.at("piece_id")] = {std::stoi(row.at("published_from")),
                                     std::stoi(row.at("published_to"))};
  }
  const std::map<std::string, float> sure{
      {"clear", 1.0F}, {"partial", 0.9F}, {"probable", 0.8F}, {"possible", 0.5F}};
  std::vector<std::pair<int, int>> spans;
  std::string component;
  for (const auto& row : table_rows(folder / "paris-strikes.csv")) {
    const auto certainty = sure.find(row.at("certainty"));
    if (row.at("component_id") != component) {
      component = row.at("component_id");
      show.piece(component);
      spans.push_back(published.at(row.at("piece_id")));
    }
    if (certainty != sure.end()) {
      show.struck(row.at("mark_id"), certainty->second);
    }
  }
  const auto chances = show.chances(spans);
  int dated = 0;
  for (std::size_t i = 0; i < chances.size(); ++i) {
    const std::string& number = show.show.all<Piece>()[i].number;
    // The painted bronze figures carry the copper tax of 1745-49 alone: not struck at the
    // making.
    if (number == "88.DH.127.1.c" || number == "88.DH.127.2.c") {
      continue;
    }
    ++dated;
    CHECK_MESSAGE(chances[i] > 0.8, fmt::format("{}: {:.3f}", number, chances[i]));
  }
  CHECK(dated >= 16);
}
