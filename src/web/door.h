// The door itself: decides who may come in, and hands each request to what answers it.
#pragma once

#include <memory>
#include <optional>
#include <set>
#include <string>

#include "desk/operation.h"
#include "web/http.h"
#include "web/operate.h"
#include "web/ration.h"
#include "web/session.h"
#include "web/shelf.h"
#include "web/watchman.h"

namespace backmark::web {

class Pairing;

struct DoorSettings {
  Path show;
  desk::Surroundings around;
  // Devices must be paired; without it whoever reaches the loopback address is the curator.
  std::shared_ptr<Pairing> pairing;
};

class Door final : public Answerer {
 public:
  explicit Door(DoorSettings settings);

  // The names under which this machine may be asked for, with their port: "127.0.0.1:8080".
  void allow_host(const std::string& host) { hosts_.insert(host); }

  std::optional<Response> refuse(const Request& head, std::uint64_t length) override;
  Response answer(const Request& request) override;
  Response refusal(int status, const Problem& problem) override;

  // Wakes the pages that wait for changes, so that the server can end.
  void end() { watchman_.end(); }

 private:
  std::optional<Problem> stranger(const Request& head) const;
  std::optional<Response> refuse_writer(const Request& head, const Session& session) const;
  std::optional<Session> session_of(const Request& head);
  std::int64_t now() const;

  Response route(const Request& request);
  Response api(const Request& request, const Session& session);
  Response hello(const Session& session);
  Response operate(const Request& request, const Session& session);
  Response changes(const Request& request);
  Response pair_page(const Request& request) const;
  Response pair(const Request& request);
  Response upload(const Request& request, const Session& session);
  Response printed(const Request& request);
  Response page(const Request& request) const;
  Response finished(Response response);

  DoorSettings settings_;
  Operate operate_;
  Watchman watchman_;
  Shelf shelf_;
  Sessions sessions_;
  Session curator_;
  Ration requests_{2000, 500};
  std::set<std::string> hosts_;
};

}  // namespace backmark::web
