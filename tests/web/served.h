// A small show, served on a free port of loopback while a test runs.
#pragma once

#include <doctest/doctest.h>
#include <thread>

#include "base/json.h"
#include "base/text.h"
#include "store/show_on_disk.h"
#include "store/store.h"
#include "web/client.h"
#include "web/door.h"
#include "web/pairing.h"

namespace backmark {

class Served {
 public:
  explicit Served(web::Patience patience = {}) {
    fill();
    desk::Surroundings around;
    around.who = "ines";
    around.now = 1'800'000'000;
    door_.emplace(web::DoorSettings{folder.path(), around, nullptr});
    server_.emplace(*door_, patience);
    port = *server_->bind("127.0.0.1", 0);
    door_->allow_host(host());
    running_ = std::thread([this] { server_->run(); });
    token = Json::parse(body_of(get("/api/hello"))).value("token", "");
  }
  ~Served() {
    door_->end();
    server_->stop();
    running_.join();
  }

  std::string host() const { return fmt::format("127.0.0.1:{}", port); }

  std::string send(std::string_view bytes) const {
    Client client(port);
    REQUIRE(client.connected);
    client.send(bytes);
    return client.receive();
  }
  std::string get(const std::string& target, const std::string& more = "") const {
    return send(fmt::format("GET {} HTTP/1.1\r\nHost: {}\r\n{}\r\n", target, host(), more));
  }
  std::string post(const std::string& target,
                   const std::string& body,
                   const std::string& more = "") const {
    return send(
        fmt::format("POST {} HTTP/1.1\r\nHost: {}\r\nBackmark-Token: {}\r\n"
                    "Content-Length: {}\r\n{}\r\n{}",
                    target, host(), token, body.size(), more, body));
  }

  ShowFolder folder;
  int port = 0;
  std::string token;

 private:
  void fill() {
    REQUIRE(store::create(folder.path()));
    auto store = store::Store::open(folder.path(), store::Access::change);
    const auto show = store->load();
    model::Change change(*show, "import", "three pieces");
    for (const char* number : {"ES 1", "ES 2", "ES/3"}) {
      change.add(model::Piece{.number = number, .title = "Urchin clasp"});
    }
    change.add(model::Section{.key = "sea", .title = "The sea", .rank = 1});
    REQUIRE(store->apply(change, "ines", 1));
  }

  std::optional<web::Door> door_;
  std::optional<web::HttpServer> server_;
  std::thread running_;
};

inline Json problem_of(const std::string& response) {
  const Json json = Json::parse(body_of(response), nullptr, false);
  REQUIRE(json.is_object());
  REQUIRE(json.contains("problem"));
  return json["problem"];
}

}  // namespace backmark
