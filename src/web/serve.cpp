#include "web/serve.h"

#include <csignal>
#include <iostream>
#include <thread>

#include "base/json.h"
#include "base/text.h"
#include "desk/open.h"
#include "web/door.h"
#include "web/pairing.h"

namespace backmark::web {

namespace {

using desk::Answer;
using desk::Call;
using desk::Surroundings;

constexpr int usual_port = 4170;

sigset_t endings() {
  sigset_t set;
  sigemptyset(&set);
  sigaddset(&set, SIGINT);
  sigaddset(&set, SIGTERM);
  return set;
}

// Waits for the wish to stop; again and again, since it may come before the server listens.
void stop_on_signal(const std::stop_token& over, HttpServer& server, Door& door) {
  const sigset_t set = endings();
  const timespec moment{0, 200'000'000};
  bool stopping = false;
  while (!over.stop_requested()) {
    stopping = ::sigtimedwait(&set, nullptr, &moment) > 0 || stopping;
    if (stopping) {
      door.end();
      server.stop();
    }
  }
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  const auto port = call.whole("port", usual_port);
  if (!port) {
    return port.problem();
  }
  if (*port < 0 || *port > 65535) {
    return Problem{Fault::bad_input, "a port lies between 0 and 65535", "--port",
                   "name one such as 4170, or 0 for any that is free"};
  }
  // A show that cannot be read is said at once, and an older one is brought up to date.
  if (auto open = desk::open_show(call, store::Access::look); !open) {
    return open.problem();
  }
  Door door({call.path("show"), around, nullptr});
  HttpServer server(door);
  const auto bound = server.bind("127.0.0.1", static_cast<int>(*port));
  if (!bound) {
    return bound.problem();
  }
  for (const char* host : {"127.0.0.1", "localhost"}) {
    door.allow_host(fmt::format("{}:{}", host, *bound));
  }
  const sigset_t set = endings();
  ::pthread_sigmask(SIG_BLOCK, &set, nullptr);
  std::cout << fmt::format(
                   "The workbench is open at http://127.0.0.1:{}/\n"
                   "Only this machine can reach it. Ctrl-C closes it.\n",
                   *bound)
            << std::flush;
  {
    const std::jthread waiting(
        [&](const std::stop_token& over) { stop_on_signal(over, server, door); });
    server.run();
  }
  Answer answer;
  answer.json = {{"port", *bound}};
  answer.text = "The workbench is closed. Everything is kept.\n";
  return answer;
}

}  // namespace

desk::Operation serve_show() {
  return {.name = "serve",
          .help = "the workbench in a browser, on this machine alone",
          .parameters = {desk::show_folder(),
                         {.name = "port",
                          .takes = desk::Takes::whole,
                          .help = "port to serve at (4170); 0: any that is free"}},
          .run = run};
}

}  // namespace backmark::web
