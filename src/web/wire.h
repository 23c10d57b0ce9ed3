// The bytes of one connection, with the patience that this house has for the other side. For
// the bodies of this room only.
#pragma once

#include <chrono>
#include <functional>
#include <httplib.h>
#include <optional>
#include <string>
#include <string_view>

#include "web/http.h"

namespace backmark::web {

// What a connection tells the wrapper besides its bytes.
class Line : public httplib::Stream {
 public:
  // A head of more bytes than this is not read to its end.
  static constexpr std::size_t longest_head = 32 * 1024;

  // The next request begins: its head is counted and timed.
  virtual void begin();
  // The head is read; `length` bytes of body follow.
  virtual void head_done(std::uint64_t length);

  Request head;
  std::optional<Response> refused;
  bool close = false;  // after the response

 protected:
  bool counted(std::size_t bytes);

 private:
  bool in_head_ = true;
  std::size_t head_bytes_ = 0;
};

// A socket. Does not own it.
class Wire final : public Line {
 public:
  Wire(int socket, const Patience& patience) : socket_(socket), patience_(patience) {}

  // Waits for the first byte of a request; `leave` is asked every quarter second.
  bool waited(const std::function<bool()>& leave);
  void begin() override;
  void head_done(std::uint64_t length) override;
  // Sends what was written. False: the other side is gone or too slow.
  bool flush();
  // After a refusal: takes a little of what is still coming, so that the refusal is not lost.
  void drain();

  bool is_readable() const override;
  bool is_writable() const override { return true; }
  ssize_t read(char* bytes, std::size_t size) override;
  ssize_t write(const char* bytes, std::size_t size) override;
  void get_remote_ip_and_port(std::string& ip, int& port) const override;
  void get_local_ip_and_port(std::string& ip, int& port) const override;
  socket_t socket() const override { return socket_; }

 private:
  using Clock = std::chrono::steady_clock;
  bool filled();
  bool ready(short what, Clock::time_point until) const;

  int socket_;
  Patience patience_;
  Clock::time_point until_;
  std::string in_;
  std::size_t at_ = 0;
  std::string out_;
};

// Bytes in memory, for one exchange.
class Paper final : public Line {
 public:
  explicit Paper(std::string_view in) : in_(in) {}
  std::string written;

  bool is_readable() const override { return !in_.empty(); }
  bool is_writable() const override { return true; }
  ssize_t read(char* bytes, std::size_t size) override;
  ssize_t write(const char* bytes, std::size_t size) override;
  void get_remote_ip_and_port(std::string& ip, int& port) const override;
  void get_local_ip_and_port(std::string& ip, int& port) const override;
  socket_t socket() const override { return INVALID_SOCKET; }

 private:
  std::string_view in_;
};

}  // namespace backmark::web
