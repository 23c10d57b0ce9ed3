// Any bytes at all on one connection to a door with a show of one piece: an answer or a
// hang-up, never a fault. A token that holds is put in where the bytes ask for it, so that
// bodies are read too.
#include <cstdlib>
#include <filesystem>
#include <unistd.h>

#include "base/json.h"
#include "base/text.h"
#include "store/store.h"
#include "web/door.h"
#include "web/http.h"

using namespace backmark;

namespace {

struct House {
  House()
      : folder(std::filesystem::temp_directory_path() /
               fmt::format("backmark-fuzz-{}", ::getpid())) {
    if (!store::create(folder)) {
      std::abort();
    }
    fill();
    desk::Surroundings around;
    around.who = "fuzz";
    around.now = 1;
    door.emplace(web::DoorSettings{folder, around, nullptr});
    door->allow_host("h");
    server.emplace(*door);
    const std::string hello = server->exchange("GET /api/hello HTTP/1.1\r\nHost: h\r\n\r\n");
    token = Json::parse(hello.substr(hello.find("\r\n\r\n") + 4)).value("token", "");
  }
  ~House() { std::filesystem::remove_all(folder); }

  void fill() const {
    auto store = store::Store::open(folder, store::Access::change);
    const auto show = store ? store->load() : Result<model::Show>(store.problem());
    if (!show) {
      std::abort();
    }
    model::Change change(*show, "import", "one piece");
    change.add(model::Piece{.number = "ES 1", .title = "Urchin clasp"});
    if (!store->apply(change, "fuzz", 1)) {
      std::abort();
    }
  }

  Path folder;
  std::optional<web::Door> door;
  std::optional<web::HttpServer> server;
  std::string token;
};

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static House house;
  std::string bytes(reinterpret_cast<const char*>(data), size);
  if (contains(bytes, "after=")) {
    return 0;  // would wait for a change
  }
  const std::string answer = house.server->exchange(replace_all(bytes, "TOKEN", house.token));
  if (!answer.empty() && !starts_with(answer, "HTTP/1.1 ")) {
    std::abort();
  }
  const std::string path = house.folder.string();
  if (contains(answer, path) && !contains(bytes, path)) {
    std::abort();  // a path of the machine leaked that the asker did not name himself
  }
  return 0;
}
