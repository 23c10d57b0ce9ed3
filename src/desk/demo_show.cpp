#include <algorithm>
#include <thread>

#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"
#include "scenario/pictures.h"
#include "scenario/scenario.h"

namespace backmark::desk {

namespace {

Result<scenario::Options> options_of(const Call& call) {
  scenario::Options options;
  const auto seed = call.whole("seed", static_cast<long>(options.seed));
  if (!seed) {
    return seed.problem();
  }
  const auto pieces = call.whole("pieces", options.pieces);
  if (!pieces) {
    return pieces.problem();
  }
  options.seed = static_cast<std::uint64_t>(*seed);
  options.pieces = static_cast<int>(*pieces);
  if (call.flag("undrawn")) {
    options.drawn_up_to = 0;
  }
  return options;
}

Result<Done> write_records(const Path& folder,
                           const scenario::Scenario& made,
                           const Surroundings& around) {
  auto store = store::Store::open(folder, store::Access::change);
  if (!store) {
    return store.problem();
  }
  auto show = store->load();
  if (!show) {
    return show.problem();
  }
  model::Change change(*show, "demo", made.summary());
  scenario::fill(change, made);
  return store->apply(change, around.who, around.now);
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  const Path folder = call.path("show");
  const auto options = options_of(call);
  if (!options) {
    return options.problem();
  }
  const auto made = scenario::make(*options);
  if (!made) {
    return made.problem();
  }
  if (auto begun = store::create(folder); !begun) {
    return begun.problem();
  }
  if (auto written = write_records(folder, *made, around); !written) {
    return written.problem();
  }
  if (auto written = scenario::write_texts(*made, folder); !written) {
    return written.problem();
  }
  if (made->drawn()) {
    around.progress(0, "drawing the pieces");
    const unsigned threads = std::max(1U, std::thread::hardware_concurrency());
    if (auto drawn = scenario::write_photographs(*made, folder / "photos", threads); !drawn) {
      return drawn.problem();
    }
    around.progress(1, "");
  }
  if (call.has("truth")) {
    if (auto written = write_file(call.path("truth"), scenario::pieces_csv(made->truth));
        !written) {
      return written.problem();
    }
  }
  Answer answer;
  answer.json = {{"show", folder.string()},
                 {"pieces", options->pieces},
                 {"seed", options->seed},
                 {"photographs", scenario::shots(*made).size()}};
  answer.text = fmt::format(
      "The demo show is in {}: {} pieces of the Ennet coast. Every maker, place and story in "
      "it "
      "is invented.\nNext: backmark infer {}\n",
      folder.string(), options->pieces, folder.string());
  return answer;
}

}  // namespace

Operation demo_show() {
  return {
      .name = "demo",
      .help = "write the demo show: an invented coast, with drawn photographs",
      .writes = true,
      .parameters = {show_folder(),
                     {.name = "pieces",
                      .takes = Takes::whole,
                      .help = "how many pieces (312; up to 100000)"},
                     {.name = "seed", .takes = Takes::whole, .help = "another coast (1954)"},
                     {.name = "undrawn",
                      .takes = Takes::flag,
                      .help = "records only, no photographs"},
                     {.name = "truth",
                      .takes = Takes::file,
                      .help = "write what is true, for scoring, to this file"}},
      .run = run};
}

}  // namespace backmark::desk
