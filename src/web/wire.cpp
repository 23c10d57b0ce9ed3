#include "web/wire.h"

#include <algorithm>
#include <arpa/inet.h>
#include <cstring>
#include <netinet/in.h>
#include <poll.h>
#include <sys/socket.h>

namespace backmark::web {

namespace {

using std::chrono::milliseconds;
using std::chrono::seconds;

constexpr std::size_t most_waiting = 256 * 1024;  // bytes written and not yet sent

void say_address(const sockaddr_storage& address, std::string& ip, int& port) {
  char text[INET6_ADDRSTRLEN] = "";
  if (address.ss_family == AF_INET) {
    const auto& v4 = reinterpret_cast<const sockaddr_in&>(address);
    ::inet_ntop(AF_INET, &v4.sin_addr, text, sizeof text);
    port = ntohs(v4.sin_port);
  } else if (address.ss_family == AF_INET6) {
    const auto& v6 = reinterpret_cast<const sockaddr_in6&>(address);
    ::inet_ntop(AF_INET6, &v6.sin6_addr, text, sizeof text);
    port = ntohs(v6.sin6_port);
  }
  ip = text;
}

}  // namespace

void Line::begin() {
  in_head_ = true;
  head_bytes_ = 0;
  head = {};
  refused.reset();
}

void Line::head_done(std::uint64_t) {
  in_head_ = false;
}

bool Line::counted(std::size_t bytes) {
  head_bytes_ += in_head_ ? bytes : 0;
  return head_bytes_ <= longest_head;
}

bool Wire::ready(short what, Clock::time_point until) const {
  pollfd asked{socket_, what, 0};
  const auto left = std::chrono::duration_cast<milliseconds>(until - Clock::now()).count();
  return left > 0 && ::poll(&asked, 1, static_cast<int>(std::min<long long>(left, 60'000))) > 0;
}

bool Wire::waited(const std::function<bool()>& leave) {
  if (at_ < in_.size()) {
    return true;
  }
  const auto end = Clock::now() + seconds(patience_.idle_seconds);
  while (Clock::now() < end) {
    if (ready(POLLIN, Clock::now() + milliseconds(250))) {
      char byte = 0;
      return ::recv(socket_, &byte, 1, MSG_PEEK | MSG_DONTWAIT) == 1;
    }
    if (leave()) {
      return false;
    }
  }
  return false;
}

void Wire::begin() {
  Line::begin();
  until_ = Clock::now() + seconds(patience_.head_seconds);
}

void Wire::head_done(std::uint64_t length) {
  Line::head_done(length);
  until_ = Clock::now() + seconds(patience_.body_seconds) +
           milliseconds(std::min<std::uint64_t>(length / 64, 3'600'000));
}

bool Wire::filled() {
  while (ready(POLLIN, until_)) {
    in_.resize(16 * 1024);
    const ssize_t count = ::recv(socket_, in_.data(), in_.size(), MSG_DONTWAIT);
    in_.resize(count > 0 ? static_cast<std::size_t>(count) : 0);
    at_ = 0;
    if (count >= 0 || (errno != EAGAIN && errno != EINTR)) {
      return count > 0;
    }
  }
  return false;
}

bool Wire::is_readable() const {
  return at_ < in_.size() || ready(POLLIN, until_);
}

ssize_t Wire::read(char* bytes, std::size_t size) {
  if (at_ >= in_.size() && !filled()) {
    return -1;
  }
  const std::size_t count = std::min(size, in_.size() - at_);
  if (!counted(count)) {
    return -1;
  }
  std::memcpy(bytes, in_.data() + at_, count);
  at_ += count;
  return static_cast<ssize_t>(count);
}

ssize_t Wire::write(const char* bytes, std::size_t size) {
  out_.append(bytes, size);
  return out_.size() < most_waiting || flush() ? static_cast<ssize_t>(size) : -1;
}

bool Wire::flush() {
  std::string_view left = out_;
  const auto until = Clock::now() + seconds(patience_.body_seconds) +
                     milliseconds(static_cast<long long>(left.size() / 64));
  while (!left.empty()) {
    const ssize_t count =
        ::send(socket_, left.data(), left.size(), MSG_NOSIGNAL | MSG_DONTWAIT);
    if (count > 0) {
      left.remove_prefix(static_cast<std::size_t>(count));
    } else if ((errno != EAGAIN && errno != EINTR) || !ready(POLLOUT, until)) {
      break;
    }
  }
  const bool sent = left.empty();
  out_.clear();
  return sent;
}

void Wire::drain() {
  ::shutdown(socket_, SHUT_WR);
  const auto until = Clock::now() + milliseconds(500);
  std::size_t taken = 0;
  char bytes[16 * 1024];
  while (taken < 8 * most_waiting && ready(POLLIN, until)) {
    const ssize_t count = ::recv(socket_, bytes, sizeof bytes, MSG_DONTWAIT);
    if (count <= 0) {
      return;
    }
    taken += static_cast<std::size_t>(count);
  }
}

void Wire::get_remote_ip_and_port(std::string& ip, int& port) const {
  sockaddr_storage address{};
  socklen_t size = sizeof address;
  if (::getpeername(socket_, reinterpret_cast<sockaddr*>(&address), &size) == 0) {
    say_address(address, ip, port);
  }
}

void Wire::get_local_ip_and_port(std::string& ip, int& port) const {
  sockaddr_storage address{};
  socklen_t size = sizeof address;
  if (::getsockname(socket_, reinterpret_cast<sockaddr*>(&address), &size) == 0) {
    say_address(address, ip, port);
  }
}

ssize_t Paper::read(char* bytes, std::size_t size) {
  const std::size_t count = std::min(size, in_.size());
  if (count == 0 || !counted(count)) {
    return -1;
  }
  std::memcpy(bytes, in_.data(), count);
  in_.remove_prefix(count);
  return static_cast<ssize_t>(count);
}

ssize_t Paper::write(const char* bytes, std::size_t size) {
  written.append(bytes, size);
  return static_cast<ssize_t>(size);
}

void Paper::get_remote_ip_and_port(std::string& ip, int& port) const {
  ip = "127.0.0.1";
  port = 0;
}

void Paper::get_local_ip_and_port(std::string& ip, int& port) const {
  ip = "127.0.0.1";
  port = 0;
}

}  // namespace backmark::web
