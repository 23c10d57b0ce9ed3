#include "web/role.h"

#include <doctest/doctest.h>

#include "desk/operations.h"
#include "web/served.h"

using namespace backmark;

namespace {

// A door on the network: every request but those of this machine must come from a paired
// device.
struct Paired {
  explicit Paired(const Path& show) {
    auto passphrases = web::Passphrases::read(show);
    REQUIRE(passphrases->set(web::Role::look, "look look look look"));
    REQUIRE(passphrases->set(web::Role::record, "urchin wave amber"));
    pairing = std::make_shared<web::Pairing>(*std::move(passphrases));
    desk::Surroundings around;
    around.who = "ines";
    around.now = 1000;
    door.emplace(web::DoorSettings{show, around, pairing});
    door->allow_host("10.0.0.2:4170");
  }

  static web::Request request(const char* method, std::vector<std::string> path) {
    web::Request one;
    one.method = method;
    one.path = std::move(path);
    one.headers["host"] = "10.0.0.2:4170";
    one.remote = "10.0.0.7";
    return one;
  }

  // The cookie of a device let in by that passphrase.
  std::string let_in(const std::string& passphrase) {
    auto form = request("POST", {"api", "pair"});
    form.body = "code=" + pairing->new_code(1000) + "&who=tablet&passphrase=" + passphrase;
    CHECK_FALSE(door->refuse(form, form.body.size()));
    const web::Response response = door->answer(form);
    REQUIRE(response.status == 303);
    for (const auto& [name, value] : response.headers) {
      if (name == "Set-Cookie") {
        CHECK(contains(value, "HttpOnly"));
        CHECK(contains(value, "SameSite=Strict"));
        return value.substr(0, value.find(';'));
      }
    }
    FAIL("no cookie");
    return "";
  }

  web::Response ask(const std::string& cookie, const char* operation, const std::string& body) {
    auto greeting = request("GET", {"api", "hello"});
    greeting.headers["cookie"] = cookie;
    const Json hello = Json::parse(door->answer(greeting).body);
    auto post = request("POST", {"api", operation});
    post.headers["cookie"] = cookie;
    post.headers["backmark-token"] = hello.value("token", "");
    post.body = body;
    if (auto refused = door->refuse(post, body.size())) {
      return *refused;
    }
    return door->answer(post);
  }

  std::shared_ptr<web::Pairing> pairing;
  std::optional<web::Door> door;
};

}  // namespace

TEST_CASE("a device that is not paired sees nothing of the show") {
  const Served served;
  Paired paired(served.folder.path());
  for (const auto& path : std::vector<std::vector<std::string>>{
           {"api", "hello"}, {"photo", "ES 1", "front"}, {"prints", "book.pdf"}, {"table"}}) {
    CHECK(paired.door->answer(Paired::request("GET", path)).status == 401);
  }
  const auto post = Paired::request("POST", {"api", "list"});
  CHECK(paired.door->refuse(post, 0)->status == 401);
  CHECK(paired.door->answer(Paired::request("GET", {"pair"})).status == 200);
}

TEST_CASE("who is not let in yet reads why on a page, and the form of a browser is taken") {
  const Served served;
  Paired net(served.folder.path());
  auto bare = Paired::request("GET", {"table"});
  bare.headers["accept"] = "text/html,application/xhtml+xml";
  const web::Response told = net.door->answer(bare);
  CHECK(told.status == 401);
  CHECK(contains(told.body, "<p>Scan the code at the terminal.</p>"));

  const std::string code = net.pairing->new_code(1000);
  auto scanned = Paired::request("GET", {"pair"});
  scanned.query["code"] = code;
  const web::Response form = net.door->answer(scanned);
  CHECK(contains(form.body, "name=\"passphrase\""));
  // A page whose referrer policy is no-referrer has its forms come from the origin "null"
  // (Fetch standard, "append a request Origin header"), which no door lets in.
  for (const auto& [name, value] : form.headers) {
    CHECK_FALSE((name == "Referrer-Policy" && value == "no-referrer"));
  }
  auto sent = Paired::request("POST", {"api", "pair"});
  sent.headers["origin"] = "http://10.0.0.2:4170";
  sent.headers["sec-fetch-site"] = "same-origin";
  sent.headers["sec-fetch-mode"] = "navigate";
  sent.body = "code=" + code + "&who=%3Cb%3Etablet&passphrase=nonsense";
  CHECK_FALSE(net.door->refuse(sent, sent.body.size()));
  const web::Response wrong = net.door->answer(sent);
  CHECK(wrong.status == 403);
  CHECK(contains(wrong.body, "The code or the passphrase does not hold."));
  CHECK(contains(wrong.body, code));  // to be tried once more
  sent.body = "code=" + code + "&who=tablet&passphrase=urchin+wave+amber";
  CHECK(net.door->answer(sent).status == 303);
}

TEST_CASE("a role may do what it is for and nothing more") {
  const Served served;
  Paired paired(served.folder.path());
  const std::string looker = paired.let_in("look+look+look+look");
  const std::string recorder = paired.let_in("urchin+wave+amber");
  CHECK(paired.ask(looker, "list", "{}").status == 200);
  CHECK(paired.ask(looker, "pick", R"({"number":["ES 1"]})").status == 403);
  CHECK(paired.ask(looker, "photographs", "{}").status == 403);
  CHECK(paired.ask(recorder, "photographs", "{}").status == 200);
  CHECK(paired.ask(recorder, "pick", R"({"number":["ES 1"]})").status == 403);
  CHECK(contains(paired.ask(recorder, "setting", "{}").body,
                 "this needs the role \\\"curate\\\""));
}

TEST_CASE("one device's token is no use to another") {
  const Served served;
  Paired paired(served.folder.path());
  const std::string first = paired.let_in("urchin+wave+amber");
  const std::string second = paired.let_in("urchin+wave+amber");
  auto greeting = Paired::request("GET", {"api", "hello"});
  greeting.headers["cookie"] = first;
  auto post = Paired::request("POST", {"api", "list"});
  post.headers["cookie"] = second;
  post.headers["backmark-token"] =
      Json::parse(paired.door->answer(greeting).body).value("token", "");
  CHECK(paired.door->refuse(post, 0)->status == 403);
}

TEST_CASE("operations that write need more than looking, and none makes another show") {
  for (const desk::Operation& operation : desk::operations()) {
    const auto needed = web::needed_for(operation);
    INFO(operation.name);
    CHECK(needed.has_value() == (operation.name != "new" && operation.name != "demo"));
    if (needed && operation.writes) {
      CHECK(*needed > web::Role::look);
    }
  }
}
