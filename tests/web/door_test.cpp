#include "web/door.h"

#include <algorithm>
#include <chrono>
#include <doctest/doctest.h>
#include <filesystem>
#include <fstream>

#include "draw/picture.h"
#include "web/served.h"

using namespace backmark;

TEST_CASE("the page greets with the show, its counts and a token") {
  const Served served;
  const Json hello = Json::parse(body_of(served.get("/api/hello")));
  CHECK(hello["counts"]["pieces"] == 3);
  CHECK(hello["counts"]["waiting"] == 3);
  CHECK(hello["role"] == "curate");
  CHECK(hello["token"].get<std::string>().size() == 64);
  CHECK(hello["inferred"] == false);
  CHECK(hello["change"] == 1);
}

TEST_CASE("every way of asking from another site is refused") {
  const Served served;
  CHECK(status_of(served.send("GET / HTTP/1.1\r\nHost: evil.example\r\n\r\n")) == 403);
  CHECK(status_of(served.send("GET / HTTP/1.1\r\n\r\n")) == 400);
  CHECK(status_of(served.get("/api/hello", "Origin: http://evil.example\r\n")) == 403);
  CHECK(status_of(served.get("/api/hello", "Sec-Fetch-Site: cross-site\r\n")) == 403);
  CHECK(status_of(served.get("/api/hello", "Sec-Fetch-Site: same-origin\r\n")) == 200);
  const std::string bare = fmt::format(
      "POST /api/list HTTP/1.1\r\nHost: {}\r\nContent-Length: 2\r\n\r\n{{}}", served.host());
  CHECK(status_of(served.send(bare)) == 403);
  const std::string other = fmt::format(
      "POST /api/list HTTP/1.1\r\nHost: {}\r\nBackmark-Token: {}\r\nContent-Length: "
      "2\r\n\r\n{{}}",
      served.host(), std::string(64, 'a'));
  CHECK(problem_of(served.send(other))["what"] ==
        "the request does not show the token of this workbench");
}

TEST_CASE("an operation takes its fields and no others") {
  const Served served;
  CHECK(status_of(served.post("/api/list", "{}")) == 200);
  const Json unknown = problem_of(served.post("/api/pick", R"({"numbr":["ES 1"]})"));
  CHECK(unknown["what"] == "\"numbr\" is no field of \"pick\"");
  CHECK(unknown["fix"] == "did you mean \"number\"?");
  CHECK(problem_of(served.post("/api/pik", "{}"))["fix"] == "did you mean \"pick\"?");
  CHECK(problem_of(served.post("/api/pick", R"({"drop":"yes"})"))["fix"] ==
        "give true or false");
  CHECK(problem_of(served.post("/api/find", "{}"))["where"] == "words");
  CHECK(status_of(served.post("/api/list", "[1,2]")) == 400);
  CHECK(status_of(served.post("/api/list", "{\"limit\":")) == 400);
  CHECK(status_of(served.post("/api/list", std::string(100'000, '['))) == 400);
  CHECK(status_of(served.post("/api/list", "\xff\xfe")) == 400);
}

TEST_CASE("no file of the machine that serves can be named or reached from afar") {
  const Served served;
  CHECK(status_of(served.post("/api/list", R"({"years":"/tmp/x.csv"})")) == 403);
  CHECK(status_of(served.post("/api/import", R"({"file":"/etc/passwd"})")) == 403);
  CHECK(status_of(served.post("/api/list", R"({"show":"/etc"})")) == 400);
  CHECK(status_of(served.post("/api/new", "{}")) == 403);
  for (const char* target :
       {"/prints/../show.db", "/prints/..%2fshow.db", "/prints/%2e%2e/show.db",
        "/prints/.hidden", "/assets/../../etc/passwd", "/assets/%2e%2e%2f%2e%2e%2fetc%2fpasswd",
        "//etc/passwd", "/photo/..%2f..%2fshow.db/front", "/prints/a%00b", "/%", "/prints/%ff",
        "/prints/x%0ay"}) {
    INFO(target);
    const std::string response = served.get(target);
    CHECK((status_of(response) == 400 || status_of(response) == 404));
    CHECK(response.find("SQLite format") == std::string::npos);
    CHECK(response.find(served.folder.path().string()) == std::string::npos);
  }
}

TEST_CASE("a link among the prints leads nowhere") {
  const Served served;
  std::filesystem::create_symlink(served.folder.path() / "show.db",
                                  served.folder.path() / "prints" / "book.pdf");
  CHECK(status_of(served.get("/prints/book.pdf")) == 404);
  std::ofstream(served.folder.path() / "prints" / "labels.pdf") << "%PDF-";
  CHECK(body_of(served.get("/prints/labels.pdf")) == "%PDF-");
}

TEST_CASE("what is too long, packed, in parts or without a length is refused in words") {
  const Served served;
  const auto head = [&](const std::string& more) {
    return status_of(served.send(
        fmt::format("POST /api/list HTTP/1.1\r\nHost: {}\r\nBackmark-Token: {}\r\n{}\r\n\r\n",
                    served.host(), served.token, more)));
  };
  CHECK(head("Content-Length: 1048577") == 413);
  CHECK(head("Content-Length: 99999999999999999999") == 400);
  CHECK(head("Content-Length: -1") == 400);
  CHECK(head("Content-Length: 2\r\nContent-Length: 3") == 400);
  CHECK(head("Transfer-Encoding: chunked") == 411);
  CHECK(head("Content-Encoding: gzip\r\nContent-Length: 2") == 415);
  CHECK(head("Content-Type: multipart/form-data; boundary=x\r\nContent-Length: 2") == 415);
  CHECK(status_of(served.get("/" + std::string(3000, 'a'))) == 400);
  CHECK(status_of(served.get(
            "/", "X: " + std::string(7000, 'a') + "\r\nY: " + std::string(7000, 'a') +
                     "\r\nZ: " + std::string(7000, 'a') + "\r\nA: " + std::string(7000, 'a') +
                     "\r\nB: " + std::string(7000, 'a') + "\r\n")) == 400);
  CHECK(status_of(served.send("BREW / HTTP/1.1\r\nHost: " + served.host() + "\r\n\r\n")) ==
        400);
  CHECK(status_of(served.send("DELETE /api/list HTTP/1.1\r\nHost: " + served.host() +
                              "\r\n\r\n")) == 405);
}

TEST_CASE("the table alone may be asked for without a token, and is the same") {
  const Served served;
  const std::string table = served.get("/api/table");
  CHECK(status_of(table) == 200);
  CHECK(body_of(table) == body_of(served.post("/api/table", "{}")));
  CHECK(status_of(served.get("/api/table?x=1")) == 405);
  CHECK(status_of(served.get("/api/list")) == 405);
  CHECK(status_of(served.get("/api/table", "Sec-Fetch-Site: cross-site\r\n")) == 403);
}

TEST_CASE("a long body is read as what it is, whatever the asker calls it") {
  const Served served;
  const std::string body = R"({"key":"sea","title":")" + std::string(9000, 'a') + R"("})";
  const std::string form = "Content-Type: application/x-www-form-urlencoded\r\n";
  CHECK(status_of(served.post("/api/section", body, form)) ==
        status_of(served.post("/api/section", body)));
  CHECK(status_of(served.post("/api/section", R"({"key":"sea","title":"Sea"})", form)) == 200);
}

TEST_CASE("who dribbles a request is hung up on, and others are served meanwhile") {
  const Served served({.head_seconds = 1, .body_seconds = 1, .idle_seconds = 1, .threads = 4});
  const auto start = std::chrono::steady_clock::now();
  Client slow(served.port);
  slow.send("GET / HT");
  Client half(served.port);
  half.send(
      fmt::format("POST /api/list HTTP/1.1\r\nHost: {}\r\nBackmark-Token: {}\r\n"
                  "Content-Length: 100\r\n\r\n{{",
                  served.host(), served.token));
  CHECK(status_of(served.get("/api/hello")) == 200);
  slow.receive();
  CHECK(status_of(half.receive()) != 200);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
  CHECK(took.count() < 6);
}

TEST_CASE("two pages that change the same thing: the second is shown both") {
  const Served served;
  REQUIRE(status_of(served.post("/api/pick", R"({"number":["ES 1"],"section":"sea"})")) == 200);
  const std::string clash =
      served.post("/api/pick", R"({"number":["ES 1"],"lead":true,"seen":1})");
  CHECK(status_of(clash) == 409);
  const Json json = Json::parse(body_of(clash));
  CHECK(json["problem"]["where"] == "ES 1");
  REQUIRE(json["theirs"].size() == 1);
  CHECK(json["theirs"][0]["what"] == "picked ES 1");
  CHECK(json["yours"]["lead"] == true);
  CHECK(status_of(served.post("/api/pick", R"({"number":["ES 2"],"seen":1})")) == 200);
  CHECK(status_of(served.post("/api/pick", R"({"number":["ES 1"],"lead":true,"seen":3})")) ==
        200);
}

TEST_CASE("a request sent twice under one name is done once and answered the same") {
  const Served served;
  const std::string body = R"({"number":["ES 1"],"once":"tablet-0001"})";
  const std::string first = served.post("/api/pick", body);
  const std::string second = served.post("/api/pick", body);
  CHECK(status_of(first) == 200);
  CHECK(status_of(second) == 200);
  CHECK(body_of(first) == body_of(second));
  const Json hello = Json::parse(body_of(served.get("/api/hello")));
  CHECK(hello["change"] == 2);
}

TEST_CASE("a page hears of a change as soon as it is made") {
  const Served served;
  Client waiting(served.port);
  waiting.send(
      fmt::format("GET /api/changes?after=1 HTTP/1.1\r\nHost: {}\r\n\r\n", served.host()));
  REQUIRE(status_of(served.post("/api/pick", R"({"number":["ES 2"]})")) == 200);
  const Json told = Json::parse(body_of(waiting.receive()));
  CHECK(told["last"] == 2);
  REQUIRE(told["changes"].size() == 1);
  CHECK(told["changes"][0]["pieces"][0] == "ES 2");
  CHECK(told["changes"][0]["who"] == "ines");
}

TEST_CASE(
    "a sheet after a note has the note at once, and says until when its weights are older") {
  const Served served;
  REQUIRE(status_of(served.post("/api/sheet", R"({"number":"ES 1"})")) == 200);
  REQUIRE(status_of(served.post(
              "/api/add",
              R"({"kind":"character","words":["key=height","label=Height","shape=number","unit=mm"]})")) ==
          200);
  REQUIRE(status_of(served.post("/api/note", R"({"number":"ES 1","line":"height: 43"})")) ==
          200);
  bool weighing = true;
  for (int tries = 0; tries < 200 && weighing; ++tries) {
    const std::string sheet = served.post("/api/sheet", R"({"number":"ES 1"})");
    const Json seen = Json::parse(body_of(sheet))["observations"];
    REQUIRE(seen.size() == 1);
    CHECK(seen[0]["value"] == "43 mm");
    weighing = contains(sheet, "Backmark-Weighing: yes");
    std::this_thread::sleep_for(std::chrono::milliseconds(weighing ? 20 : 0));
  }
  CHECK_FALSE(weighing);
}

TEST_CASE("a photograph sent by its name stands on its piece, at every size") {
  const Served served;
  draw::Picture picture = draw::blank_picture(700, 350);
  for (std::size_t i = 3; i < picture.rgba.size(); i += 4) {
    picture.rgba[i] = 255;
  }
  const std::string bytes = draw::encode_png(picture);
  const std::string target = "/api/photograph?name=es_0003_back.PNG";
  const Json taken = Json::parse(body_of(served.post(target, bytes)));
  REQUIRE(taken["taken"].size() == 1);
  CHECK(taken["taken"][0]["number"] == "ES/3");
  CHECK(body_of(served.get("/photo/ES%2F3/back?size=full")) == bytes);
  const auto size = draw::picture_size(body_of(served.get("/photo/ES%2F3/back?size=64")));
  REQUIRE(size);
  CHECK(size->width == 64);
  CHECK(size->height == 32);
  CHECK(status_of(served.get("/photo/ES%2F3/back?size=63")) == 400);
  CHECK(status_of(served.get("/photo/ES%2F3/front")) == 404);
  CHECK(Json::parse(body_of(served.post(target, bytes)))["same"].size() == 1);
  CHECK(Json::parse(body_of(served.post("/api/photograph?name=DSC1.png", bytes)))["unmatched"]
            .size() == 1);
  CHECK(status_of(served.post("/api/photograph?name=..%2Fx.png", bytes)) == 400);
  CHECK(Json::parse(
            body_of(served.post("/api/photograph?name=ES1.png", "no picture")))["unmatched"]
            .size() == 1);
}

TEST_CASE("photographs of one lot are one change, and one step back takes all of them out") {
  const Served served;
  const auto picture = [](int side) {
    draw::Picture blank = draw::blank_picture(side, side);
    return draw::encode_png(blank);
  };
  const auto send = [&](const std::string& name, const std::string& bytes) {
    return Json::parse(
        body_of(served.post("/api/photograph?name=" + name + "&lot=harbour-1", bytes)));
  };
  const auto changes = [&] {
    return Json::parse(body_of(served.post("/api/history", "{}"))).size();
  };
  const auto before = changes();
  CHECK(send("ES1-front.png", picture(20))["taken"].size() == 1);
  CHECK(send("ES1-back.png", picture(30))["taken"].size() == 1);
  CHECK(send("DSC1.png", picture(40))["unmatched"].size() == 1);
  CHECK(changes() == before);  // nothing is said before the lot is through
  const Json ended = Json::parse(body_of(served.post("/api/photograph?lot=harbour-1", "")));
  CHECK(ended["taken"].size() == 2);
  CHECK(changes() == before + 1);
  CHECK(body_of(served.get("/photo/ES%201/back?size=full")) == picture(30));
  CHECK(status_of(served.post("/api/undo", "{}")) == 200);
  CHECK(status_of(served.get("/photo/ES%201/back?size=full")) == 404);
  CHECK(status_of(served.get("/photo/ES%201/front?size=full")) == 404);
  // A lot that nobody began takes nothing; one without a name is refused.
  CHECK(Json::parse(body_of(served.post("/api/photograph?lot=quay", "")))["taken"].empty());
  CHECK(status_of(served.post("/api/photograph?lot=", "")) == 400);
  CHECK(status_of(served.post("/api/photograph?lot=harbour-1", "no name")) == 400);
}

TEST_CASE("every answer tells the browser to let nothing in or out") {
  const Served served;
  for (const char* target : {"/", "/api/hello", "/nowhere/at/all", "/assets/none"}) {
    const std::string response = served.get(target);
    INFO(target);
    CHECK(response.find("Content-Security-Policy: default-src 'self'") != std::string::npos);
    CHECK(response.find("X-Content-Type-Options: nosniff") != std::string::npos);
    CHECK(response.find("Access-Control-Allow") == std::string::npos);
  }
}
