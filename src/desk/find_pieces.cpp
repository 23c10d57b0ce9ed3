#include "base/json.h"
#include "base/text.h"
#include "desk/each.h"

namespace backmark::desk {

namespace {

constexpr std::size_t most_hits = 50;

Result<Answer> run(const Call& call, const Surroundings&) {
  auto store = store::Store::open(call.path("show"), store::Access::look);
  if (!store) {
    return store.problem();
  }
  const auto hits = store->search(join(call.texts("words"), " "), most_hits);
  if (!hits) {
    return hits.problem();
  }
  Answer answer;
  answer.json = Json::array();
  for (const store::Hit& hit : *hits) {
    answer.json.push_back({{"number", hit.number}, {"where", hit.where}});
    answer.text += fmt::format("{:<10} {}\n", hit.number, replace_all(hit.where, "\n", " "));
  }
  if (hits->empty()) {
    answer.text = "No piece has these words.\n";
  }
  return answer;
}

}  // namespace

Operation find_pieces() {
  return {.name = "find",
          .help = "pieces by any words of their number, title, marks, notes or observations",
          .from_show_alone = true,
          .parameters = {show_folder(),
                         {.name = "words",
                          .takes = Takes::texts,
                          .help = "words to look for; accents do not matter",
                          .positional = true,
                          .required = true}},
          .run = run};
}

}  // namespace backmark::desk
