#include "web/pairing.h"

#include <doctest/doctest.h>
#include <filesystem>

#include "base/text.h"
#include "store/show_on_disk.h"

using namespace backmark;
using web::Passphrases;
using web::Role;

TEST_CASE("a passphrase is kept as a hash that only its owner may read, and gives its role") {
  const ShowFolder folder;
  std::filesystem::create_directories(folder.path());
  auto all = Passphrases::read(folder.path());
  REQUIRE(all);
  CHECK(all->empty());
  CHECK_FALSE(all->set(Role::record, "short"));
  REQUIRE(all->set(Role::record, "urchin wave amber"));
  REQUIRE(all->set(Role::curate, "north wharf lantern"));
  const auto file = folder.path() / "door.json";
  const auto text = read_file(file);
  CHECK(contains(*text, "$argon2id$"));
  CHECK_FALSE(contains(*text, "urchin"));
  CHECK((std::filesystem::status(file).permissions() & std::filesystem::perms(077)) ==
        std::filesystem::perms::none);
  const auto again = Passphrases::read(folder.path());
  REQUIRE(again);
  CHECK(again->role_of("urchin wave amber") == Role::record);
  CHECK(again->role_of("north wharf lantern") == Role::curate);
  CHECK_FALSE(again->role_of("urchin wave ambe"));
}

TEST_CASE("a code lets one device in, for ten minutes, and tries are counted") {
  const ShowFolder folder;
  std::filesystem::create_directories(folder.path());
  auto all = Passphrases::read(folder.path());
  REQUIRE(all->set(Role::record, "urchin wave amber"));
  web::Pairing pairing(*std::move(all));
  const std::string code = pairing.new_code(1000);
  CHECK(pairing.has_code(1500));
  CHECK_FALSE(pairing.admit(code, "another passphrase", 1001));
  const auto role = pairing.admit(code, "urchin wave amber", 1002);
  REQUIRE(role);
  CHECK(*role == Role::record);
  CHECK_FALSE(pairing.admit(code, "urchin wave amber", 1003));
  const std::string late = pairing.new_code(1000);
  CHECK_FALSE(pairing.admit(late, "urchin wave amber", 1600));
  for (int i = 0; i < 5; ++i) {
    CHECK_FALSE(pairing.admit("none", "urchin wave amber", 1601));
  }
  const std::string fresh = pairing.new_code(1602);
  CHECK(pairing.admit(fresh, "urchin wave amber", 1603).problem().what == "too many tries");
  CHECK(pairing.admit(fresh, "urchin wave amber", 1950));
}

TEST_CASE("the code at the terminal is a square that begins with the finder pattern") {
  const std::string drawn =
      web::drawn_code("http://192.168.1.5:4170/pair?code=0123456789abcdef");
  const auto rows = split(drawn, "\n");
  CHECK(rows.size() > 15);
  // Seven dark modules across, seven down (ISO/IEC 18004, 6.3.3): from memory.
  CHECK(contains(rows[1], "█▀▀▀▀▀█"));
}
