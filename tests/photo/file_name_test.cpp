#include "photo/file_name.h"

#include <doctest/doctest.h>

using namespace backmark;
using model::View;

namespace {

struct Wanted {
  const char* file;
  std::size_t number;
  View view;
};

}  // namespace

TEST_CASE("a camera's file names lead to the piece and the side") {
  const photo::NameReader reader({"ES 001", "ES 118", "ES 12", "ES 12.3", "B/7"});
  const Wanted wanted[] = {{"ES-118-back.jpg", 1, View::back},
                           {"es118_BACK (2).JPG", 1, View::back},
                           {"ES 1.png", 0, View::front},
                           {"ES0118 reverse.jpeg", 1, View::back},
                           {"ES 12 tip left.jpg", 2, View::tips},
                           {"ES 12.3 hallmark.jpg", 3, View::mark},
                           {"es_012_obverse_final.jpg", 2, View::front},
                           {"b7-edge.jpg", 4, View::side}};
  for (const Wanted& one : wanted) {
    INFO(one.file);
    const auto named = reader.read(one.file);
    REQUIRE(named);
    CHECK(named->number == one.number);
    CHECK(named->view == one.view);
  }
}

TEST_CASE("a name that begins with no number of the show leads nowhere") {
  const photo::NameReader reader({"ES 001", "ES 118"});
  for (const char* file :
       {"DSC_0118.jpg", "ES 2.jpg", "ES 1180.jpg", "back.jpg", ".jpg", "", "ES"}) {
    INFO(file);
    CHECK_FALSE(reader.read(file));
  }
}

TEST_CASE("a copy's name holds nothing that could lead out of its folder") {
  CHECK(photo::copy_name("ES 118", View::back, "jpg") == "ES-118-back.jpg");
  CHECK(photo::copy_name("../../etc", View::front, "png") == "etc-front.png");
  CHECK(photo::copy_name("/", View::front, "png") == "piece-front.png");
}
