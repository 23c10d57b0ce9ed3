// A bare client: bytes over loopback, no HTTP library of ours or anybody's.
#pragma once

#include <arpa/inet.h>
#include <netinet/in.h>
#include <string>
#include <string_view>
#include <sys/socket.h>
#include <unistd.h>

namespace backmark {

class Client {
 public:
  explicit Client(int port) : socket_(::socket(AF_INET, SOCK_STREAM, 0)) {
    sockaddr_in address{};
    address.sin_family = AF_INET;
    address.sin_port = htons(static_cast<std::uint16_t>(port));
    address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    const timeval patience{20, 0};
    ::setsockopt(socket_, SOL_SOCKET, SO_RCVTIMEO, &patience, sizeof patience);
    connected = ::connect(socket_, reinterpret_cast<sockaddr*>(&address), sizeof address) == 0;
  }
  ~Client() { ::close(socket_); }
  Client(const Client&) = delete;
  Client& operator=(const Client&) = delete;

  bool send(std::string_view bytes) const {
    return ::send(socket_, bytes.data(), bytes.size(), MSG_NOSIGNAL) ==
           static_cast<ssize_t>(bytes.size());
  }

  // One response with its body, or what came until the other side hung up.
  std::string receive() {
    std::string all;
    char bytes[8192];
    while (!is_whole(all)) {
      const ssize_t count = ::recv(socket_, bytes, sizeof bytes, 0);
      if (count <= 0) {
        break;
      }
      all.append(bytes, static_cast<std::size_t>(count));
    }
    return all;
  }

  bool connected = false;

 private:
  static bool is_whole(const std::string& all) {
    const auto head = all.find("\r\n\r\n");
    if (head == std::string::npos) {
      return false;
    }
    const auto at = all.find("Content-Length: ");
    const std::size_t length = at < head ? std::stoul(all.substr(at + 16)) : 0;
    return all.size() >= head + 4 + length;
  }

  int socket_;
};

inline int status_of(const std::string& response) {
  return response.size() > 12 ? std::atoi(response.c_str() + 9) : 0;
}

inline std::string body_of(const std::string& response) {
  const auto head = response.find("\r\n\r\n");
  return head == std::string::npos ? "" : response.substr(head + 4);
}

}  // namespace backmark
