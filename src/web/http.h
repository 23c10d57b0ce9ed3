// HTTP/1.1 spoken over TCP, as plain values: a request in, a response out. The one place that
// knows the HTTP library. What it refuses before anybody is asked: heads over 32 kB or slower
// than 10 s, bodies without a length, packed bodies, forms in parts, more than one Host.
#pragma once

#include <cstdint>
#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/result.h"

namespace backmark::web {

struct Request {
  std::string method;             // "GET"
  std::vector<std::string> path;  // segments, percent-decoded; "/" has none
  std::map<std::string, std::string> query;
  std::map<std::string, std::string> headers;  // names in lower case
  std::string body;
  std::string remote;  // address of the other side

  // Empty if there is none.
  std::string header(const std::string& name) const;
};

struct Response {
  int status = 200;
  std::string type;  // of the content
  std::string body;
  std::vector<std::pair<std::string, std::string>> headers;
};

// Who answers. Called from many threads at once.
class Answerer {
 public:
  virtual ~Answerer() = default;
  // Whether to refuse a request by its head alone, `length` bytes of body still unread; if so
  // the connection ends with the response.
  virtual std::optional<Response> refuse(const Request& head, std::uint64_t length) = 0;
  virtual Response answer(const Request& request) = 0;
  // For what the wrapper refuses itself.
  virtual Response refusal(int status, const Problem& problem) = 0;
};

// The target of a request, cut into decoded segments and query; nothing if it is no clean path:
// bad percent signs, control characters, bytes that are no UTF-8, "." or "..", more than 2048
// bytes.
bool read_target(std::string_view target, Request& into);

struct Patience {
  int head_seconds = 10;
  int body_seconds = 10;  // and one more for every 64 kB
  int idle_seconds = 30;
  unsigned threads = 48;
};

class HttpServer {
 public:
  explicit HttpServer(Answerer& answerer, Patience patience = {});
  ~HttpServer();

  // Port 0: any free one. Gives the port. Problem: io (taken, no right).
  Result<int> bind(const std::string& host, int port);
  // Until stop(); then every request in hand is answered first.
  void run();
  // From any thread; also before run().
  void stop();
  bool stopping() const;

  // What would be answered to these bytes on a connection of their own.
  std::string exchange(std::string_view bytes);

 private:
  class Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace backmark::web
