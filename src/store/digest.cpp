#include <sodium.h>

#include "base/text.h"
#include "store/codec.h"
#include "store/fields.h"
#include "store/store.h"

namespace backmark::store {

namespace {

// BLAKE2b over the members of records, words as their texts.
class Hash {
 public:
  Hash() { crypto_generichash_init(&state_, nullptr, 0, size_); }

  void put(std::string_view text) {
    const std::uint64_t length = text.size();
    put_bytes(&length, sizeof length);
    put_bytes(text.data(), text.size());
  }

  template <class M>
  void put_member(const M& member, const model::Pool& pool) {
    if constexpr (is_optional<M>) {
      put(member ? "some" : "none");
      if (member) {
        put_member(*member, pool);
      }
    } else if constexpr (std::is_same_v<M, model::Word>) {
      put(pool.text(member));
    } else if constexpr (std::is_same_v<M, std::string>) {
      put(member);
    } else if constexpr (std::is_arithmetic_v<M> || std::is_enum_v<M>) {
      put_bytes(&member, sizeof member);
    } else if constexpr (requires { member.value; }) {
      put_bytes(&member.value, sizeof member.value);
    } else {
      put_member(member.size(), pool);
      for (const auto& item : member) {
        put_member(item, pool);
      }
    }
  }

  std::string hex() {
    unsigned char bytes[size_];
    crypto_generichash_final(&state_, bytes, size_);
    std::string text;
    for (const unsigned char byte : bytes) {
      text += fmt::format("{:02x}", byte);
    }
    return text;
  }

 private:
  static constexpr std::size_t size_ = 16;
  void put_bytes(const void* bytes, std::size_t count) {
    crypto_generichash_update(&state_, static_cast<const unsigned char*>(bytes), count);
  }
  crypto_generichash_state state_{};
};

// Whether records of this kind bear on years and makers.
template <class T>
constexpr bool weighs = std::is_same_v<T, model::Piece> || std::is_same_v<T, model::Part> ||
                        std::is_same_v<T, model::Observation> ||
                        std::is_same_v<T, model::Mark> || std::is_same_v<T, model::Character> ||
                        std::is_same_v<T, model::Lineage> || std::is_same_v<T, model::Window> ||
                        std::is_same_v<T, model::Maker> || std::is_same_v<T, model::Source> ||
                        std::is_same_v<T, model::Claim> || std::is_same_v<T, model::Event>;

// Members that say nothing of years or makers: writing prose does not make a reckoning stale.
bool is_silent(std::string_view name) {
  return name == "prose" || name == "tray" || name == "lender" || name == "inverted" ||
         name == "living" || name == "citation" || name == "minutes";
}

template <class T>
void put_rows(Hash& hash, const std::vector<T>& rows, const model::Pool& pool) {
  if constexpr (weighs<T>) {
    hash.put(table<T>);
    for (const T& row : rows) {
      fields_of(row, [&](std::string_view name, const auto& member) {
        if (!is_silent(name)) {
          hash.put_member(member, pool);
        }
      });
    }
  }
}

}  // namespace

std::string digest(const model::Show& show) {
  Hash hash;
  std::apply([&](const auto&... rows) { (put_rows(hash, rows, show.pool), ...); },
             show.records);
  return hash.hex();
}

}  // namespace backmark::store
