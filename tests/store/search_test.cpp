#include <algorithm>
#include <doctest/doctest.h>

#include "store/show_on_disk.h"
#include "store/store.h"

using namespace backmark;
using namespace backmark::model;

namespace {

// Four pieces: a signed silver slide by Oda Vessen of 1954, an unsigned one of 1957, a brass
// clasp from Tarn, and a café spoon.
class Found {
 public:
  Found() : store_(opened()) {
    const auto show = store_->load();
    Change change(*show, "import", "four pieces");
    const auto material = change.add(Character{.key = "material", .label = "Material"});
    const auto maker = change.add(Maker{.key = "vessen", .name = "Oda Vessen"});
    const auto source = change.add(Source{.key = "list", .title = "A list"});
    const auto piece = [&](const char* number, const char* title, const char* value) {
      const auto id = change.add(Piece{.number = number, .title = title});
      change.add(Observation{.piece = id, .character = material, .value = change.word(value)});
      return id;
    };
    const auto made = [&](Id<Piece> id, int year) {
      change.add(Claim{.source = source,
                       .about = About::piece,
                       .subject = id.value,
                       .says = Says::made,
                       .text = "made then",
                       .from = Year{year},
                       .to = Year{year}});
    };
    const auto first = piece("ES 1", "Urchin slide", "silver");
    made(first, 1954);
    change.add(Mark{.piece = first, .kind = MarkKind::stamp, .text = "OV"});
    change.add(Claim{.source = source,
                     .about = About::piece,
                     .subject = first.value,
                     .says = Says::made_by,
                     .text = "by her",
                     .maker = maker});
    made(piece("ES 2", "Scallop slide", "silver"), 1957);
    const auto third = piece("ES 3", "Wave clasp of 1954", "brass");
    made(third, 1961);
    change.add(Claim{.source = source,
                     .about = About::piece,
                     .subject = third.value,
                     .says = Says::made_at,
                     .text = "at Tarn",
                     .word = change.word("Tarn")});
    piece("ES 4", "Café spoon", "silver");
    REQUIRE(store_->apply(change, "ines", 1));
  }

  std::vector<std::string> operator()(const char* words) {
    const auto hits = store_->search(words, 50);
    REQUIRE(hits);
    std::vector<std::string> numbers;
    for (const store::Hit& hit : *hits) {
      numbers.push_back(hit.number);
    }
    return numbers;
  }
  std::vector<std::string> sorted(const char* words) {
    auto numbers = (*this)(words);
    std::sort(numbers.begin(), numbers.end());
    return numbers;
  }

 private:
  Result<store::Store> opened() {
    REQUIRE(store::create(folder_.path()));
    return store::Store::open(folder_.path(), store::Access::change);
  }
  ShowFolder folder_;
  Result<store::Store> store_;
};

using Numbers = std::vector<std::string>;

}  // namespace

TEST_CASE("a material, a decade and a missing signature find the piece that has all three") {
  Found found;
  CHECK(found("silver 1950s unsigned") == Numbers{"ES 2"});
  CHECK(found("silver 1950s signed") == Numbers{"ES 1"});
  CHECK(found.sorted("silver 1950s") == Numbers{"ES 1", "ES 2"});
  CHECK(found("1960s") == Numbers{"ES 3"});
  CHECK(found.sorted("1950-1960") == Numbers{"ES 1", "ES 2"});
  CHECK(found("1920s").empty());
}

TEST_CASE("a year that stands in a title is found before a year that was said") {
  Found found;
  CHECK(found("1954") == Numbers{"ES 3", "ES 1"});
}

TEST_CASE("makers, places, marks and numbers are found") {
  Found found;
  CHECK(found("vessen") == Numbers{"ES 1"});
  CHECK(found("tarn") == Numbers{"ES 3"});
  CHECK(found("ov") == Numbers{"ES 1"});
  CHECK(found("ES 2") == Numbers{"ES 2"});
}

TEST_CASE("a word not quite written right is taken for the nearest that a piece has") {
  Found found;
  CHECK(found("vesen") == Numbers{"ES 1"});
  CHECK(found("scalop") == Numbers{"ES 2"});
  CHECK(found("iurchin") == Numbers{"ES 1"});
  CHECK(found.sorted("slver slide") == Numbers{"ES 1", "ES 2"});
  CHECK(found("cafe") == Numbers{"ES 4"});
  CHECK(found("xylophone").empty());
}

TEST_CASE("nothing that is typed is taken for the language of the index") {
  Found found;
  for (const char* words :
       {"\"", "silver OR", "NEAR(silver", "title:urchin", "*", "(", "-", "a\"b*", "silver AND",
        "' ; DROP TABLE piece", "1950s \"", "((((silver))))"}) {
    INFO(words);
    found(words);
  }
  CHECK(found("silver").size() == 3);
}
