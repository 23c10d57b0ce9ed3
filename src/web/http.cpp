// The HTTP library is met here and in wire.h only. Its regular expressions, its reading of
// forms, packed bodies and ranges are kept out of reach: a request that asks for them is
// refused, or the wish is struck from its head.
#include "web/http.h"

#include <algorithm>
#include <atomic>
#include <condition_variable>
#include <deque>
#include <mutex>
#include <sys/socket.h>
#include <thread>
#include <unistd.h>

#include "base/text.h"
#include "web/wire.h"

namespace backmark::web {

namespace {

// The connection that this thread is answering.
thread_local Line* current = nullptr;

Problem said(Fault fault, std::string what, std::string fix) {
  return {fault, std::move(what), "", std::move(fix)};
}

// A fixed number of threads; connections wait in line.
class Workers final : public httplib::TaskQueue {
 public:
  Workers(unsigned threads, std::atomic<int>& waiting) : waiting_(waiting) {
    for (unsigned i = 0; i < threads; ++i) {
      threads_.emplace_back([this] { work(); });
    }
  }

  void enqueue(std::function<void()> job) override {
    {
      const std::lock_guard lock(mutex_);
      jobs_.push_back(std::move(job));
      ++waiting_;
    }
    came_.notify_one();
  }

  void shutdown() override {
    {
      const std::lock_guard lock(mutex_);
      ending_ = true;
    }
    came_.notify_all();
    threads_.clear();  // joins
  }

 private:
  void work() {
    while (true) {
      std::function<void()> job;
      {
        std::unique_lock lock(mutex_);
        came_.wait(lock, [this] { return !jobs_.empty() || ending_; });
        if (jobs_.empty()) {
          return;
        }
        job = std::move(jobs_.front());
        jobs_.pop_front();
        --waiting_;
      }
      job();
    }
  }

  std::atomic<int>& waiting_;
  std::mutex mutex_;
  std::condition_variable came_;
  std::deque<std::function<void()>> jobs_;
  bool ending_ = false;
  std::vector<std::jthread> threads_;
};

struct Refused {
  int status = 0;
  Problem problem;
};

// What of the head makes the request impossible to take, whoever asks and whatever for.
std::optional<Refused> fault_of(const httplib::Request& request) {
  if (request.get_header_value_count("Host") != 1 ||
      request.get_header_value_count("Content-Length") > 1) {
    return Refused{400, said(Fault::bad_input, "the request names its host or length not once",
                             "send each of these headers once")};
  }
  if (request.has_header("Transfer-Encoding")) {
    return Refused{411, said(Fault::bad_input, "the body comes without its length",
                             "send a Content-Length")};
  }
  if (request.has_header("Content-Encoding") || request.is_multipart_form_data()) {
    return Refused{415, said(Fault::bad_input, "packed bodies and forms in parts are not taken",
                             "send plain JSON, or the bytes of one picture")};
  }
  return std::nullopt;
}

std::uint64_t length_of(const httplib::Request& request) {
  const auto length = to_whole(request.get_header_value("Content-Length"));
  return length && *length > 0 ? static_cast<std::uint64_t>(*length) : 0;
}

bool length_is_sound(const httplib::Request& request) {
  const std::string text = request.get_header_value("Content-Length");
  return !request.has_header("Content-Length") ||
         (!text.empty() && text.size() < 12 &&
          text.find_first_not_of("0123456789") == std::string::npos);
}

void put(Response&& from, httplib::Response& into) {
  into.status = from.status;
  for (const auto& [name, value] : from.headers) {
    into.set_header(name, value);
  }
  if (!from.type.empty()) {
    into.set_header("Content-Type", from.type);
  }
  into.body = std::move(from.body);
}

Problem words_for(int status) {
  switch (status) {
    case 413:
      return said(Fault::refused, "this is more than one request may bring",
                  "send smaller parts");
    case 414:
      return said(Fault::bad_input, "the address is too long", "ask for less at once");
    default:
      return said(Fault::bad_input, "the request cannot be understood",
                  "send HTTP/1.1 with a head of at most 32 kB");
  }
}

}  // namespace

class HttpServer::Inside final : public httplib::Server {
 public:
  Inside(Answerer& answerer, Patience patience) : answerer_(answerer), patience_(patience) {
    new_task_queue = [this] { return new Workers(patience_.threads, waiting_); };
    set_tcp_nodelay(true);
    set_keep_alive_max_count(100'000);
    set_keep_alive_timeout(patience_.idle_seconds);
    set_payload_max_length(256UL * 1024 * 1024);
    set_pre_routing_handler(
        [this](const httplib::Request& request, httplib::Response& response) {
          return look_at_head(request, response);
        });
    const auto answer = [this](const httplib::Request& request, httplib::Response& response) {
      current->head.body = request.body;
      put(answerer_.answer(current->head), response);
    };
    Get(".*", answer);
    Post(".*", answer);
    set_error_handler([this](const httplib::Request&, httplib::Response& response) {
      if (response.body.empty()) {
        put(answerer_.refusal(response.status, words_for(response.status)), response);
      }
    });
    set_exception_handler(
        [this](const httplib::Request&, httplib::Response& response, std::exception_ptr) {
          put(answerer_.refusal(500, said(Fault::io, "a fault of the program", "")), response);
        });
  }

  bool talk(Line& line) {
    current = &line;
    line.begin();
    bool closed = false;
    const bool went_well =
        process_request(line, stopping, closed, [](httplib::Request& request) {
          for (const char* name : {"Range", "If-Range", "Accept-Encoding"}) {
            request.headers.erase(name);
          }
          if (starts_with(request.get_header_value("Content-Type"),
                          "application/x-www-form-urlencoded")) {
            request.headers.erase("Content-Type");  // the library would take 8 kB of it at most
          }
          request.ranges.clear();
        });
    current = nullptr;
    return went_well && !closed && !line.close;
  }

  // The library lets five connections wait to be taken; on a busy machine those of one page
  // with its pictures are more, and each turned away comes back only after seconds.
  void queue() { ::listen(svr_sock_, 128); }

  std::atomic<bool> stopping = false;
  std::string host;
  int port = 0;

 private:
  bool process_and_close_socket(socket_t socket) override {
    Wire wire(socket, patience_);
    const auto leave = [this] { return stopping.load() || waiting_ > 0; };
    bool more = true;
    while (more && wire.waited(leave)) {
      more = talk(wire);
      more = wire.flush() && more;
    }
    wire.drain();
    ::close(socket);
    return true;
  }

  HandlerResponse look_at_head(const httplib::Request& request, httplib::Response& response) {
    Line& line = *current;
    auto refused = refusal_of(request, line.head);
    line.head_done(length_of(request));
    if (!refused) {
      return HandlerResponse::Unhandled;
    }
    line.close = true;
    put(std::move(*refused), response);
    response.set_header("Connection", "close");
    return HandlerResponse::Handled;
  }

  std::optional<Response> refusal_of(const httplib::Request& request, Request& head) {
    head.method = request.method;
    head.remote = request.remote_addr;
    for (const auto& [name, value] : request.headers) {
      head.headers.emplace(lower_ascii(name), value);
    }
    if (const auto fault = fault_of(request)) {
      return answerer_.refusal(fault->status, fault->problem);
    }
    if (!length_is_sound(request) || !read_target(request.target, head)) {
      return answerer_.refusal(
          400, said(Fault::bad_input, "the address or the length cannot be understood",
                    "write the address as the pages of the workbench do"));
    }
    if (head.method != "GET" && head.method != "HEAD" && head.method != "POST") {
      return answerer_.refusal(
          405, said(Fault::refused, "only GET, HEAD and POST are understood", ""));
    }
    return answerer_.refuse(head, length_of(request));
  }

  Answerer& answerer_;
  Patience patience_;
  std::atomic<int> waiting_ = 0;
};

HttpServer::HttpServer(Answerer& answerer, Patience patience)
    : inside_(std::make_unique<Inside>(answerer, patience)) {}

HttpServer::~HttpServer() = default;

Result<int> HttpServer::bind(const std::string& host, int port) {
  inside_->host = host;
  if (port == 0) {
    port = inside_->bind_to_any_port(host);
  } else if (!inside_->bind_to_port(host, port)) {
    port = -1;
  }
  if (port <= 0) {
    return Problem{Fault::io, "this port cannot be used; another program may have it", "--port",
                   "name another port, or 0 for any that is free"};
  }
  inside_->port = port;
  inside_->queue();
  return port;
}

void HttpServer::run() {
  while (!inside_->stopping && inside_->listen_after_bind() == false && !inside_->stopping) {
    // The system could not take a connection: listen anew on the same port.
    std::this_thread::sleep_for(std::chrono::milliseconds(50));
    inside_->bind_to_port(inside_->host, inside_->port);
    inside_->queue();
  }
}

void HttpServer::stop() {
  inside_->stopping = true;
  inside_->stop();
}

bool HttpServer::stopping() const {
  return inside_->stopping;
}

std::string HttpServer::exchange(std::string_view bytes) {
  Paper paper(bytes);
  inside_->talk(paper);
  return std::move(paper.written);
}

}  // namespace backmark::web
