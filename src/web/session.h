// Who is on the other side: the curator at this very machine, or a device that was paired.
#pragma once

#include <cstdint>
#include <map>
#include <mutex>
#include <optional>
#include <string>

#include "web/role.h"

namespace backmark::web {

struct Session {
  std::string who;
  Role role = Role::look;
  std::string token;       // what a page must show to write
  std::int64_t until = 0;  // seconds since 1970; 0: as long as the program runs
};

// 64 hexadecimal digits that nobody can guess.
std::string secret();
// Without telling by the time it takes where two texts part.
bool same_secret(const std::string& a, const std::string& b);

// The devices that were paired since the program started.
class Sessions {
 public:
  // Gives the cookie. The oldest goes when there are too many.
  std::string open(const std::string& who, Role role, std::int64_t now);
  std::optional<Session> find(const std::string& cookie, std::int64_t now);

 private:
  std::mutex mutex_;
  std::map<std::string, Session> open_;
};

// The value of the session cookie in a Cookie header; empty if there is none.
std::string session_cookie(const std::string& header);
// The Set-Cookie header for one.
std::string set_session_cookie(const std::string& cookie);

}  // namespace backmark::web
