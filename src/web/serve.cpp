#include "web/serve.h"

#include <csignal>
#include <iostream>
#include <thread>

#include "base/json.h"
#include "base/text.h"
#include "desk/open.h"
#include "store/ahead.h"
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

struct Service {
  HttpServer& server;
  Door& door;
  Pairing* pairing;  // may be null
  const Surroundings& around;
  std::string address;  // for other devices; empty: loopback only
};

void show_code(const Service& service) {
  const std::string link = fmt::format("{}/pair?code={}", service.address,
                                       service.pairing->new_code(service.around.clock()));
  std::cout << drawn_code(link) << link << "\nScan it with the device; it lasts ten minutes.\n"
            << std::flush;
}

// Waits for the wish to stop; again and again, since it may come before the server listens.
// Meanwhile there is always a code at the terminal that holds.
void mind(const std::stop_token& over, const Service& service) {
  const sigset_t set = endings();
  const timespec moment{0, 200'000'000};
  bool stopping = false;
  while (!over.stop_requested()) {
    if (service.pairing != nullptr && !stopping &&
        !service.pairing->has_code(service.around.clock())) {
      show_code(service);
    }
    stopping = ::sigtimedwait(&set, nullptr, &moment) > 0 || stopping;
    if (stopping) {
      service.door.end();
      service.server.stop();
    }
  }
}

Result<int> port_of(const Call& call) {
  const auto port = call.whole("port", usual_port);
  if (!port) {
    return port.problem();
  }
  if (*port < 0 || *port > 65535) {
    return Problem{Fault::bad_input, "a port lies between 0 and 65535", "--port",
                   "name one such as 4170, or 0 for any that is free"};
  }
  return static_cast<int>(*port);
}

// None without --lan.
Result<std::shared_ptr<Pairing>> pairing_of(const Call& call) {
  if (!call.flag("lan")) {
    return std::shared_ptr<Pairing>();
  }
  auto passphrases = Passphrases::read(call.path("show"));
  if (!passphrases) {
    return passphrases.problem();
  }
  if (passphrases->empty()) {
    return Problem{Fault::refused, "other devices are let in only with a passphrase", "--lan",
                   "set one first: \"backmark passphrase SHOW record\""};
  }
  return std::make_shared<Pairing>(*std::move(passphrases));
}

// Before any thread begins: one that did not would end the program in the midst of things.
void hold_back_endings() {
  const sigset_t set = endings();
  ::pthread_sigmask(SIG_BLOCK, &set, nullptr);
}

void serve_until_told(const Service& service) {
  const std::jthread minding([&service](const std::stop_token& over) { mind(over, service); });
  service.server.run();
}

std::string greeting(int port, bool lan) {
  return fmt::format(
      "The workbench is open at http://127.0.0.1:{}/\n{}", port,
      lan ? "Devices of this network are let in by the code below. What they send "
            "can be read on the way:\nuse a network you trust. Ctrl-C closes it.\n"
          : "Only this machine can reach it. Ctrl-C closes it.\n");
}

Result<Answer> run(const Call& call, const Surroundings& around) {
  const auto port = port_of(call);
  const auto pairing = pairing_of(call);
  if (!port || !pairing) {
    return port ? pairing.problem() : port.problem();
  }
  // A show that cannot be read is said at once, and an older one is brought up to date.
  if (auto open = desk::open_show(call, store::Access::look); !open) {
    return open.problem();
  }
  const bool lan = *pairing != nullptr;
  hold_back_endings();
  const store::Ahead ahead(call.path("show"));
  Door door({call.path("show"), around, *pairing});
  HttpServer server(door);
  const auto bound = server.bind(lan ? "0.0.0.0" : "127.0.0.1", *port);
  if (!bound) {
    return bound.problem();
  }
  std::vector<std::string> hosts = lan ? network_addresses() : std::vector<std::string>();
  if (lan && hosts.empty()) {
    return Problem{Fault::io, "this machine is on no network", "--lan",
                   "join one, or serve without --lan"};
  }
  const std::string address =
      lan ? fmt::format("http://{}:{}", hosts.front(), *bound) : std::string();
  hosts.insert(hosts.end(), {"127.0.0.1", "localhost"});
  for (const std::string& host : hosts) {
    door.allow_host(fmt::format("{}:{}", host, *bound));
  }
  std::cout << greeting(*bound, lan) << std::flush;
  serve_until_told({server, door, pairing->get(), around, address});
  Answer answer;
  answer.json = {{"port", *bound}};
  answer.text = "The workbench is closed. Everything is kept.\n";
  return answer;
}

Result<Answer> keep_passphrase(const Call& call, const Surroundings&) {
  const auto role = role_named(call.text("role"));
  if (!role) {
    return Problem{Fault::bad_input, fmt::format("there is no role \"{}\"", call.text("role")),
                   "role", "choose: look, record, curate"};
  }
  if (auto open = store::Store::open(call.path("show"), store::Access::look); !open) {
    return open.problem();
  }
  auto passphrases = Passphrases::read(call.path("show"));
  if (!passphrases) {
    return passphrases.problem();
  }
  const std::string typed = call.standard_input();
  const auto first = split(typed, "\n").front();
  if (auto set = passphrases->set(*role, std::string(trim(first))); !set) {
    return set.problem();
  }
  Answer answer;
  answer.json = {{"role", name_of(*role)}};
  answer.text = fmt::format("Whoever knows it is let in to {}.\n", name_of(*role));
  return answer;
}

}  // namespace

desk::Operation serve_show() {
  return {.name = "serve",
          .help = "the workbench in a browser, on this machine or its network",
          .parameters = {desk::show_folder(),
                         {.name = "port",
                          .takes = desk::Takes::whole,
                          .help = "port to serve at (4170); 0: any that is free"},
                         {.name = "lan",
                          .takes = desk::Takes::flag,
                          .help = "let paired devices of the network in"}},
          .run = run};
}

desk::Operation set_passphrase() {
  return {.name = "passphrase",
          .help = "what a device must know to be let in, read from standard input",
          .parameters = {desk::show_folder(),
                         {.name = "role",
                          .help = "look, record or curate",
                          .positional = true,
                          .required = true}},
          .run = keep_passphrase};
}

}  // namespace backmark::web
