#include "web/pairing.h"

#include <arpa/inet.h>
#include <ifaddrs.h>
#include <memory>
#include <net/if.h>
#include <netinet/in.h>
#include <qrencode.h>
#include <sodium.h>
#include <sys/stat.h>

#include "base/json.h"
#include "base/text.h"
#include "web/session.h"

namespace backmark::web {

namespace {

constexpr std::int64_t code_seconds = 600;
constexpr std::int64_t window_seconds = 300;
constexpr int most_failures = 5;  // in a window, whoever tries
constexpr std::size_t shortest = 12;
constexpr std::size_t code_length = 32;

Problem not_admitted() {
  return {Fault::refused, "the code or the passphrase does not hold", "",
          "scan the code at the terminal again; it lasts for ten minutes"};
}

struct FreeCode {
  void operator()(QRcode* code) const { ::QRcode_free(code); }
};
struct FreeAddresses {
  void operator()(ifaddrs* list) const { ::freeifaddrs(list); }
};

}  // namespace

Result<Passphrases> Passphrases::read(const Path& show) {
  Passphrases all(show / "door.json");
  std::error_code none;
  if (!std::filesystem::exists(all.file_, none)) {
    return all;
  }
  const auto text = read_file(all.file_);
  if (!text) {
    return text.problem();
  }
  const Json json = Json::parse(*text, nullptr, false);
  if (!json.is_object()) {
    return Problem{Fault::bad_input, "the file of passphrases is no JSON object",
                   all.file_.string(), "remove it and set the passphrases again"};
  }
  for (const auto& [name, hash] : json.items()) {
    const auto role = role_named(name);
    if (!role || !hash.is_string() ||
        hash.get<std::string>().size() >= crypto_pwhash_STRBYTES) {
      return Problem{Fault::bad_input, "the file of passphrases holds what was not put there",
                     all.file_.string(), "remove it and set the passphrases again"};
    }
    all.hashes_[*role] = hash.get<std::string>();
  }
  return all;
}

Result<Done> Passphrases::set(Role role, const std::string& passphrase) {
  if (to_code_points(passphrase).size() < shortest) {
    return Problem{Fault::bad_input, "the passphrase is too short", "",
                   "take at least 12 letters; four or five words are easy to type"};
  }
  char hash[crypto_pwhash_STRBYTES];
  if (::sodium_init() < 0 || ::crypto_pwhash_str_alg(hash, passphrase.data(), passphrase.size(),
                                                     crypto_pwhash_OPSLIMIT_INTERACTIVE,
                                                     crypto_pwhash_MEMLIMIT_INTERACTIVE,
                                                     crypto_pwhash_ALG_ARGON2ID13) != 0) {
    return Problem{Fault::io, "there is not memory enough to hash a passphrase", "",
                   "close other programs; 64 MB are needed"};
  }
  hashes_[role] = hash;
  Json json = Json::object();
  for (const auto& [one, text] : hashes_) {
    json[std::string(name_of(one))] = text;
  }
  if (auto written = write_file(file_, json.dump(2) + "\n"); !written) {
    return written;
  }
  ::chmod(file_.c_str(), S_IRUSR | S_IWUSR);
  return Done{};
}

std::optional<Role> Passphrases::role_of(const std::string& passphrase) const {
  std::optional<Role> found;
  for (const auto& [role, hash] : hashes_) {
    if (::crypto_pwhash_str_verify(hash.c_str(), passphrase.data(), passphrase.size()) == 0) {
      found = role;
    }
  }
  return found;
}

std::string Pairing::new_code(std::int64_t now) {
  const std::lock_guard lock(mutex_);
  std::erase_if(codes_, [now](const auto& one) { return one.second <= now; });
  const std::string code = secret().substr(0, code_length);
  codes_[code] = now + code_seconds;
  return code;
}

bool Pairing::has_code(std::int64_t now) {
  const std::lock_guard lock(mutex_);
  std::erase_if(codes_, [now](const auto& one) { return one.second <= now; });
  return !codes_.empty();
}

Result<Role> Pairing::admit(const std::string& code,
                            const std::string& passphrase,
                            std::int64_t now) {
  const std::lock_guard lock(mutex_);  // one try at a time: hashing is dear on purpose
  if (now - failing_since_ > window_seconds) {
    failures_ = 0;
    failing_since_ = now;
  }
  if (failures_ >= most_failures) {
    return Problem{Fault::refused, "too many tries", "", "wait five minutes"};
  }
  const auto at = codes_.find(code);
  const bool holds = at != codes_.end() && at->second > now;
  const auto role =
      holds && passphrase.size() <= 1024 ? passphrases_.role_of(passphrase) : std::nullopt;
  if (!role) {
    ++failures_;
    return not_admitted();
  }
  codes_.erase(at);
  return *role;
}

std::string drawn_code(const std::string& text) {
  const std::unique_ptr<QRcode, FreeCode> code(
      ::QRcode_encodeString(text.c_str(), 0, QR_ECLEVEL_M, QR_MODE_8, 1));
  if (code == nullptr) {
    return "";
  }
  constexpr int quiet = 2;  // modules around; the standard asks for 4, readers take 2
  const auto dark = [&](int x, int y) {
    return x >= 0 && y >= 0 && x < code->width && y < code->width &&
           (code->data[y * code->width + x] & 1) != 0;
  };
  std::string out;
  for (int y = -quiet; y < code->width + quiet; y += 2) {
    out += "\x1b[30;107m";  // black on white, whatever the terminal's own colours
    for (int x = -quiet; x < code->width + quiet; ++x) {
      out += dark(x, y) ? (dark(x, y + 1) ? "█" : "▀") : (dark(x, y + 1) ? "▄" : " ");
    }
    out += "\x1b[0m\n";
  }
  return out;
}

std::vector<std::string> network_addresses() {
  ifaddrs* first = nullptr;
  std::vector<std::string> addresses;
  if (::getifaddrs(&first) != 0) {
    return addresses;
  }
  const std::unique_ptr<ifaddrs, FreeAddresses> owner(first);
  for (const ifaddrs* one = first; one != nullptr; one = one->ifa_next) {
    if (one->ifa_addr == nullptr || one->ifa_addr->sa_family != AF_INET ||
        (one->ifa_flags & IFF_LOOPBACK) != 0 || (one->ifa_flags & IFF_UP) == 0) {
      continue;
    }
    char text[INET_ADDRSTRLEN] = "";
    ::inet_ntop(AF_INET, &reinterpret_cast<const sockaddr_in*>(one->ifa_addr)->sin_addr, text,
                sizeof text);
    addresses.emplace_back(text);
  }
  return addresses;
}

}  // namespace backmark::web
