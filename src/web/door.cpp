#include "web/door.h"

#include <iostream>

#include "base/json.h"
#include "base/text.h"
#include "web/assets.h"
#include "web/pair_page.h"
#include "web/pairing.h"
#include "web/reply.h"

namespace backmark::web {

namespace {

constexpr std::uint64_t most_body = 1024 * 1024;
constexpr std::uint64_t most_picture = 64 * 1024 * 1024;
constexpr double longest_wait = 25;  // seconds that a page waits for changes

Problem refused(std::string what, std::string fix) {
  return {Fault::refused, std::move(what), "", std::move(fix)};
}

bool is_pairing(const Request& request) {
  return request.path == std::vector<std::string>{"api", "pair"};
}

bool is_upload(const Request& request) {
  return request.path == std::vector<std::string>{"api", "photograph"};
}

bool is_first(const Request& request, std::string_view name) {
  return !request.path.empty() && request.path.front() == name;
}

}  // namespace

Door::Door(DoorSettings settings)
    : settings_(std::move(settings)),
      operate_(settings_.show, settings_.around),
      watchman_(settings_.show),
      shelf_(settings_.show),
      curator_{settings_.around.who, Role::curate, secret(), 0} {
  operate_.weigh_ahead();
}

std::int64_t Door::now() const {
  return settings_.around.clock ? settings_.around.clock() : settings_.around.now;
}

// A name that leads here although it is not ours was made to by somebody else's page.
std::optional<Problem> Door::stranger(const Request& head) const {
  if (!hosts_.contains(lower_ascii(head.header("host")))) {
    return refused("this address is not the one the workbench is served at",
                   "open the address that the terminal shows");
  }
  const std::string origin = head.header("origin");
  if (!origin.empty() && origin != "http://" + head.header("host")) {
    return refused("another page asked for this", "open the workbench itself");
  }
  const std::string site = head.header("sec-fetch-site");
  const bool to_page = head.header("sec-fetch-mode") == "navigate" && head.method == "GET";
  if (!site.empty() && site != "same-origin" && site != "none" && !to_page) {
    return refused("another page asked for this", "open the workbench itself");
  }
  return std::nullopt;
}

std::optional<Session> Door::session_of(const Request& head) {
  // Whoever sits at the machine that serves is its curator; others must be paired.
  if (settings_.pairing == nullptr || head.remote == "127.0.0.1") {
    return curator_;
  }
  return sessions_.find(session_cookie(head.header("cookie")), now());
}

std::optional<Response> Door::refuse_writer(const Request& head, const Session& session) const {
  if (!same_secret(head.header("backmark-token"), session.token)) {
    return reply(refused("the request does not show the token of this workbench",
                         "load the page again"));
  }
  return std::nullopt;
}

std::optional<Response> Door::refuse(const Request& head, std::uint64_t length) {
  if (!requests_.take(head.remote, steady_seconds())) {
    return finished(reply(429, refused("too many requests at once", "wait a second")));
  }
  if (const auto problem = stranger(head)) {
    return finished(reply(*problem));
  }
  if (head.method == "POST" && !is_pairing(head)) {
    const auto session = session_of(head);
    if (!session) {
      return finished(
          reply(401, refused("this device is not paired", "scan the code at the terminal")));
    }
    if (auto response = refuse_writer(head, *session)) {
      return finished(*std::move(response));
    }
  }
  const std::uint64_t most = is_upload(head) ? most_picture : most_body;
  if (length > most) {
    return finished(reply(413, refused("this is more than one request may bring",
                                       fmt::format("send at most {} kB", most / 1024))));
  }
  return std::nullopt;
}

Response Door::refusal(int status, const Problem& problem) {
  return finished(reply(status, problem));
}

Response Door::finished(Response response) {
  add_security(response);
  response.headers.emplace_back("Backmark-Change", std::to_string(watchman_.last()));
  return response;
}

Response Door::answer(const Request& request) {
  try {
    return finished(route(request));
  } catch (const std::exception& fault) {
    std::cerr << "backmark: a fault of the program: " << fault.what() << std::endl;
    return finished(reply(program_fault, {Fault::io, "a fault of the program", "",
                                          "the terminal that serves says more"}));
  }
}

Response Door::route(const Request& request) {
  const bool of_page = is_first(request, "assets") || is_first(request, "sw.js");
  if (request.method != "POST" && of_page) {
    return page(request);
  }
  if (settings_.pairing != nullptr && is_pairing(request) && request.method == "POST") {
    return pair(request);
  }
  const auto session = session_of(request);
  if (!session && request.method == "GET" && is_first(request, "pair")) {
    return pair_page(request);
  }
  if (!session) {
    const Problem problem =
        refused("this device is not paired", "scan the code at the terminal");
    const bool by_person =
        request.method == "GET" && contains(request.header("accept"), "text/html");
    return by_person ? pair_refusal(problem, 401) : reply(401, problem);
  }
  if (is_first(request, "api")) {
    return api(request, *session);
  }
  if (request.method == "POST") {
    return reply(405, refused("nothing is written here", "write to /api"));
  }
  if (is_first(request, "photo")) {
    const auto show = operate_.current_show();
    return show ? shelf_.photograph(request, **show) : reply(show.problem());
  }
  if (is_first(request, "prints") && request.path.size() > 1) {
    return printed(request);
  }
  return page(request);
}

Response Door::api(const Request& request, const Session& session) {
  if (request.path.size() != 2) {
    return reply(
        Problem{Fault::not_found, "there is no such place", "", "ask /api/hello first"});
  }
  if (request.method == "POST") {
    return is_upload(request) ? upload(request, session) : operate(request, session);
  }
  if (request.path[1] == "hello") {
    return hello(session);
  }
  if (request.path[1] == "changes") {
    return changes(request);
  }
  if (request.path[1] == "table" && request.query.empty()) {
    // Asked for by the page itself before its script runs, which alone knows the token.
    Request whole = request;
    whole.body = "{}";
    return operate(whole, session);
  }
  return reply(405, refused("operations are asked for by POST", "send the fields as JSON"));
}

Response Door::hello(const Session& session) {
  auto overview = operate_.overview();
  if (!overview) {
    return reply(overview.problem());
  }
  (*overview)["who"] = session.who;
  (*overview)["role"] = name_of(session.role);
  (*overview)["token"] = session.token;
  (*overview)["version"] = BACKMARK_VERSION;
  return reply(*overview);
}

Response Door::operate(const Request& request, const Session& session) {
  const auto operation = operation_named(request.path[1]);
  if (!operation) {
    return reply(operation.problem());
  }
  const auto needed = needed_for(**operation);
  if (!needed) {
    return reply(refused("this makes another show", "do it at the terminal"));
  }
  if (session.role < *needed) {
    return reply(refused(fmt::format("this needs the role \"{}\"; this device has \"{}\"",
                                     name_of(*needed), name_of(session.role)),
                         "pair the device anew with the passphrase of that role"));
  }
  auto ask = read_ask(**operation, request.body);
  if (!ask) {
    return reply(ask.problem());
  }
  Response response = operate_.run(**operation, *std::move(ask), session.who);
  if ((*operation)->writes) {
    watchman_.ring();
  }
  return response;
}

Response Door::pair_page(const Request& request) const {
  const auto at = request.query.find("code");
  const std::string code = at == request.query.end() ? "" : at->second;
  if (code.empty()) {
    return pair_refusal(refused("a device is let in by a code", "scan the one at the terminal"),
                        200);
  }
  if (code.find_first_not_of("0123456789abcdef") != std::string::npos) {
    return pair_refusal(
        {Fault::bad_input, "this is no code of the terminal", "code", "scan it again"}, 400);
  }
  return pair_form(code, std::nullopt, 200);
}

Response Door::pair(const Request& request) {
  Request form;
  const bool read = read_target("/?" + request.body, form) && form.query.size() == 3 &&
                    form.query.contains("code") && form.query.contains("who") &&
                    form.query.contains("passphrase");
  const std::string who = read ? std::string(trim(form.query["who"])) : "";
  if (who.empty() || who.size() > 200) {
    const Problem problem{Fault::bad_input, "the form is not filled in", "",
                          "give a name and the passphrase"};
    return read ? pair_form(form.query["code"], problem, 400) : pair_refusal(problem, 400);
  }
  const auto role =
      settings_.pairing->admit(form.query["code"], form.query["passphrase"], now());
  if (!role) {
    return pair_form(form.query["code"], role.problem(), status_of(role.problem().fault));
  }
  return {303,
          "",
          "",
          {{"Location", "/"},
           {"Set-Cookie", set_session_cookie(sessions_.open(who, *role, now()))},
           {"Cache-Control", "no-store"}}};
}

// One picture as the body; ?name= says the name of its file, ?lot= that others come with it:
// all of them are one change when the lot is ended, by ?lot= alone and no body.
Response Door::upload(const Request& request, const Session& session) {
  const auto name = request.query.find("name");
  if (session.role < Role::record) {
    return reply(refused("this needs the role \"record\"",
                         "pair the device anew with the passphrase of that role"));
  }
  const auto lot = request.query.find("lot");
  const bool has_lot = lot != request.query.end();
  const bool has_name = name != request.query.end();
  if (has_lot && (lot->second.empty() || lot->second.size() > 64)) {
    return reply(Problem{Fault::bad_input, "this is no name of a lot", "lot",
                         "give 1 to 64 characters of your own"});
  }
  if (has_lot && !has_name && request.query.size() == 1 && request.body.empty()) {
    Response response = operate_.end_lot(lot->second, session.who);
    watchman_.ring();
    return response;
  }
  if (request.query.size() != (has_lot ? 2U : 1U) || !has_name || name->second.size() > 200 ||
      contains(name->second, "/") || contains(name->second, "\\")) {
    return reply(Problem{Fault::bad_input,
                         "the name of the picture's file is missing or unsafe", "name",
                         "give it without folders, as ?name=ES-118-back.jpg"});
  }
  Response response = operate_.take_photograph(name->second, request.body, session.who,
                                               has_lot ? lot->second : std::string());
  watchman_.ring();
  return response;
}

Response Door::changes(const Request& request) {
  const auto after = request.query.find("after");
  const long position =
      after == request.query.end() ? -1 : to_whole(after->second).value_or(-1);
  if (request.query.size() > 1 || position < 0) {
    return reply(Problem{Fault::bad_input, "after which change is not said", "after",
                         "give the number of the last change you saw"});
  }
  const auto changes = watchman_.changes_after(position, longest_wait);
  return changes ? reply(*changes) : reply(changes.problem());
}

// A paper that was printed: a plain file of prints/, no folder and no link.
Response Door::printed(const Request& request) {
  const std::string& name = request.path[1];
  const Problem missing{Fault::not_found, "there is no such paper", shortened(name, 80),
                        "print it first"};
  if (request.path.size() != 2 || name.front() == '.' || contains(name, "/") ||
      contains(name, "\\")) {
    return reply(missing);
  }
  const Path file = settings_.show / "prints" / name;
  std::error_code none;
  if (std::filesystem::symlink_status(file, none).type() !=
      std::filesystem::file_type::regular) {
    return reply(missing);
  }
  auto bytes = read_file(file);
  if (!bytes) {
    return reply(missing);
  }
  const auto written = std::filesystem::last_write_time(file, none).time_since_epoch().count();
  return reply_bytes(request, *std::move(bytes), std::string(type_of(name)),
                     std::to_string(written), "no-cache");
}

Response Door::page(const Request& request) const {
  std::string name = is_first(request, "sw.js") ? "sw.js" : "index.html";
  if (is_first(request, "assets")) {
    name.clear();
    for (std::size_t i = 1; i < request.path.size(); ++i) {
      name += (i > 1 ? "/" : "") + request.path[i];
    }
  }
  const Asset* found = asset(name);
  if (found == nullptr) {
    return reply(Problem{Fault::not_found, "there is no such file", "", "load the page again"});
  }
  return reply_bytes(request, std::string(found->bytes), std::string(type_of(name)),
                     std::string(found->tag), "no-cache");
}

}  // namespace backmark::web
