// Letting devices of the same network in: a code that is shown at the terminal and lasts for
// minutes, and a passphrase that says which role the device gets.
#pragma once

#include <cstdint>
#include <map>
#include <mutex>
#include <optional>
#include <string>
#include <vector>

#include "base/file.h"
#include "base/result.h"
#include "web/role.h"

namespace backmark::web {

// Passphrases of a show, kept as argon2id hashes in SHOW/door.json, readable by its owner only.
class Passphrases {
 public:
  // No file: none is set. Problems: io, bad_input (the file was tampered with).
  static Result<Passphrases> read(const Path& show);
  // Replaces the one of that role. Problems: bad_input (shorter than 12 letters), io.
  Result<Done> set(Role role, const std::string& passphrase);
  bool empty() const { return hashes_.empty(); }
  // The highest role whose passphrase this is. Takes a tenth of a second on purpose.
  std::optional<Role> role_of(const std::string& passphrase) const;

 private:
  explicit Passphrases(Path file) : file_(std::move(file)) {}
  Path file_;
  std::map<Role, std::string> hashes_;
};

class Pairing {
 public:
  explicit Pairing(Passphrases passphrases) : passphrases_(std::move(passphrases)) {}

  // A code for the terminal, good for ten minutes and for one device.
  std::string new_code(std::int64_t now);
  // Whether a code is shown that still holds.
  bool has_code(std::int64_t now);
  // The role that a device gets; the code is used up only then. Problems: refused (no such
  // code, too late, wrong passphrase, in words that do not tell which; too many tries).
  Result<Role> admit(const std::string& code, const std::string& passphrase, std::int64_t now);

 private:
  Passphrases passphrases_;
  std::mutex mutex_;
  std::map<std::string, std::int64_t> codes_;  // until when
  int failures_ = 0;
  std::int64_t failing_since_ = 0;
};

// The code as a drawing of half blocks for a terminal with dark letters on light, two rows of
// modules a line.
std::string drawn_code(const std::string& text);

// The addresses of this machine on its networks, loopback left out: "192.168.1.5".
std::vector<std::string> network_addresses();

}  // namespace backmark::web
