#include "web/session.h"

#include <algorithm>
#include <array>
#include <sodium.h>

#include "base/text.h"

namespace backmark::web {

namespace {

constexpr std::int64_t holds_seconds = 12 * 3600;
constexpr std::size_t most_devices = 64;
constexpr std::string_view cookie_name = "backmark";

}  // namespace

std::string secret() {
  std::array<unsigned char, 32> bytes{};
  if (::sodium_init() < 0) {
    throw BrokenPromise("the system gives no chance to draw secrets from");
  }
  ::randombytes_buf(bytes.data(), bytes.size());
  std::string text(bytes.size() * 2 + 1, '\0');
  ::sodium_bin2hex(text.data(), text.size(), bytes.data(), bytes.size());
  text.pop_back();
  return text;
}

bool same_secret(const std::string& a, const std::string& b) {
  return !a.empty() && a.size() == b.size() &&
         ::sodium_memcmp(a.data(), b.data(), a.size()) == 0;
}

std::string Sessions::open(const std::string& who, Role role, std::int64_t now) {
  const std::lock_guard lock(mutex_);
  std::erase_if(open_, [now](const auto& one) { return one.second.until <= now; });
  if (open_.size() >= most_devices) {
    open_.erase(std::min_element(open_.begin(), open_.end(), [](const auto& a, const auto& b) {
      return a.second.until < b.second.until;
    }));
  }
  const std::string cookie = secret();
  open_[cookie] = {who, role, secret(), now + holds_seconds};
  return cookie;
}

std::optional<Session> Sessions::find(const std::string& cookie, std::int64_t now) {
  const std::lock_guard lock(mutex_);
  const auto at = open_.find(cookie);
  return at == open_.end() || at->second.until <= now ? std::nullopt
                                                      : std::optional(at->second);
}

std::string session_cookie(const std::string& header) {
  for (const auto part : split(header, ";")) {
    const auto one = trim(part);
    if (starts_with(one, cookie_name) && one.substr(cookie_name.size(), 1) == "=") {
      return std::string(one.substr(cookie_name.size() + 1));
    }
  }
  return "";
}

std::string set_session_cookie(const std::string& cookie) {
  return fmt::format("{}={}; Path=/; HttpOnly; SameSite=Strict; Max-Age={}", cookie_name,
                     cookie, holds_seconds);
}

}  // namespace backmark::web
