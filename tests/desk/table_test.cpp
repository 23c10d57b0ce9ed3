// The Table's answer after each kind of change, of a door that keeps what it wrote before, is
// the one that is written anew from the show on disk.
#include <doctest/doctest.h>
#include <set>

#include "base/json.h"
#include "desk/each.h"
#include "desk/open.h"
#include "desk/warm.h"
#include "desk/written.h"
#include "store/show_on_disk.h"

using namespace backmark;
using namespace backmark::model;

namespace {

PieceBelief belief_of(Id<Piece> piece, Id<Maker> maker, int first) {
  PieceBelief belief;
  belief.piece = piece;
  belief.year = {{Year{first}, Year{first + 3}}, {0.1, 0.4, 0.4, 0.1}};
  belief.maker = {{{maker, 0.75}}, 0.25, false};
  belief.dated = true;
  return belief;
}

class Table {
 public:
  Table() {
    REQUIRE(store::create(folder_.path()));
    call_.set("show", {folder_.path().string()});
    change([](Change& one, const Show&) {
      one.add(Maker{.key = "oda", .name = "Oda \"O\" Vessen"});
      const auto fitting = one.add(Character{.key = "fitting", .label = "Fitting"});
      one.add(Character{.key = "height", .label = "Height", .shape = Shape::number});
      for (const char* number : {"ES 1", "ES 2", "ES 3"}) {
        const auto piece = one.add(Piece{.number = number, .title = "Urchin\\clasp"});
        one.add(Observation{.piece = piece, .character = fitting, .value = one.word("loop")});
      }
    });
  }

  template <class Build>
  void change(Build&& build) {
    desk::OpenShow opened = open(&warm_, store::Access::change);
    Change one(opened.show, "edit", "tried");
    build(one, opened.show);
    REQUIRE(opened.store.apply(one, "ines", 1));
  }

  void reckon(int first, bool without_last) {
    desk::OpenShow opened = open(&warm_, store::Access::change);
    store::Run run;
    const auto maker = opened.show.all<Maker>().front().id;
    for (const Piece& piece : opened.show.all<Piece>()) {
      run.beliefs.pieces.push_back(belief_of(piece.id, maker, first));
      run.phrases.push_back({.made = "about " + std::to_string(first), .maker = "Oda"});
    }
    if (without_last) {
      run.beliefs.pieces.pop_back();
      run.phrases.pop_back();
    }
    REQUIRE(opened.store.record_run(run));
  }

  Json kept() { return answer(&warm_); }
  Json anew() { return answer(nullptr); }

 private:
  desk::OpenShow open(desk::Warm* warm, store::Access access) {
    call_.warm = warm;
    auto opened = desk::open_show(call_, access);
    REQUIRE(opened);
    return std::move(*opened);
  }
  Json answer(desk::Warm* warm) {
    call_.warm = warm;
    const auto said = desk::table_pieces().run(call_, {});
    REQUIRE(said);
    return Json::parse(desk::to_written(said->json, -1));
  }

  ShowFolder folder_;
  desk::Warm warm_;
  desk::Call call_;
};

// The text that a column names for a piece.
std::string text_of(const Json& table, const Json& column, std::size_t row) {
  return table["words"][column[row].get<std::size_t>()].get<std::string>();
}

}  // namespace

TEST_CASE("the table after a change is the table written anew") {
  Table table;
  const auto same = [&] {
    const Json kept = table.kept();
    CHECK(kept == table.anew());
    return kept;
  };
  Json now = same();
  CHECK(now["columns"]["year"]["p"] == Json::array({"", "", ""}));
  table.reckon(1950, false);
  now = same();
  CHECK(now["columns"]["year"]["p50"] == Json::array({1951, 1951, 1951}));
  CHECK(text_of(now, now["columns"]["made"], 2) == "about 1950");
  CHECK(text_of(now, now["columns"]["title"], 0) == "Urchin\\clasp");
  table.change([](Change& one, const Show& show) {
    Piece renamed = show.all<Piece>()[1];
    renamed.title = "Knot";
    one.replace(renamed);
  });
  now = same();
  CHECK(text_of(now, now["columns"]["title"], 1) == "Knot");
  table.change([](Change& one, const Show& show) {
    const auto piece = show.all<Piece>()[2].id;
    one.add(Observation{
        .piece = piece, .character = show.character("height")->id, .number = 12.5});
    one.add(Observation{
        .piece = piece, .character = show.character("fitting")->id, .seen = Seen::none});
    const auto section = one.add(Section{.key = "sea", .title = "The sea"});
    one.add(Pick{.piece = piece, .section = section, .lead = true, .rank = 4});
    one.add(Photograph{.piece = piece, .file = "a.jpg", .width_px = 30, .height_px = 20});
  });
  now = same();
  CHECK(text_of(now, now["columns"]["seen"]["fitting"], 2) == "loop; none");
  CHECK(text_of(now, now["columns"]["seen"]["height"], 2) == "12.5");
  CHECK(text_of(now, now["columns"]["section"], 2) == "sea");
  CHECK(now["columns"]["pictures"][2][0][4] == 1.5);
}

TEST_CASE("a maker who is called otherwise is so on the table before the next reckoning") {
  Table table;
  table.reckon(1950, true);
  Json now = table.kept();
  const std::string makers = now["columns"]["makers"][0];
  CHECK(makers.substr(makers.find(' ')) == " 750 250");
  table.change([](Change& one, const Show& show) {
    Maker married = show.all<Maker>().front();
    married.name = "Oda Rask";
    one.replace(married);
  });
  now = table.kept();
  CHECK(now == table.anew());
  const Json& words = now["words"];
  CHECK(std::count(words.begin(), words.end(), "Oda Rask") == 1);
  CHECK(std::count(words.begin(), words.end(), "Oda \"O\" Vessen") == 0);
  CHECK(now["columns"]["makers"][2] == "");  // it was not reckoned
  CHECK(now["columns"]["year"]["q"][0] == "1950 0 1 0 0 0 0 0 0 0 1 0 0 0 0 0 0 0 1 0");
}

TEST_CASE("no text is named twice, and each reckoning is told anew") {
  Table table;
  table.reckon(1950, false);
  CHECK(table.kept()["columns"]["year"]["p50"][0] == 1951);
  table.reckon(1960, false);
  const Json now = table.kept();
  CHECK(now == table.anew());
  CHECK(now["columns"]["year"]["p50"][0] == 1961);
  const std::set<std::string> all(now["words"].begin(), now["words"].end());
  CHECK(all.size() == now["words"].size());
}

TEST_CASE("what is written by hand reads as JSON, whatever the text") {
  for (const std::string text : {"plain", "a \"word\"", "back\\slash", "line\nfeed",
                                 "na\xc3\xafve", "bad \xff byte", "\x7f", ""}) {
    std::string written;
    desk::write_quoted(text, written);
    const Json read = Json::parse(written);
    const Json by_library =
        Json::parse(Json(text).dump(-1, ' ', false, Json::error_handler_t::replace));
    CHECK(read == by_library);
  }
}
