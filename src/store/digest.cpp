#include <algorithm>
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

  // text_of(word) gives the text of a word.
  template <class M, class TextOf>
  void put_member(const M& member, const TextOf& text_of) {
    if constexpr (is_optional<M>) {
      put(member ? "some" : "none");
      if (member) {
        put_member(*member, text_of);
      }
    } else if constexpr (std::is_same_v<M, model::Word>) {
      put(text_of(member));
    } else if constexpr (std::is_same_v<M, std::string>) {
      put(member);
    } else if constexpr (std::is_arithmetic_v<M> || std::is_enum_v<M>) {
      put_bytes(&member, sizeof member);
    } else if constexpr (requires { member.value; }) {
      put_bytes(&member.value, sizeof member.value);
    } else {
      put_member(member.size(), text_of);
      for (const auto& item : member) {
        put_member(item, text_of);
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

template <class T, class TextOf>
void put_row(Hash& hash, const T& row, const TextOf& text_of) {
  fields_of(row, [&](std::string_view name, const auto& member) {
    if (!is_silent(name)) {
      hash.put_member(member, text_of);
    }
  });
}

// The first and last year of the grid are settings.
bool bears(const model::Setting& setting) {
  return starts_with(setting.key, "years.");
}

template <class T>
void put_rows(Hash& hash, const std::vector<T>& rows, const model::Pool& pool) {
  const auto text_of = [&](model::Word word) { return pool.text(word); };
  if constexpr (weighs<T>) {
    hash.put(table<T>);
    for (const T& row : rows) {
      put_row(hash, row, text_of);
    }
  } else if constexpr (std::is_same_v<T, model::Setting>) {
    for (const T& row : rows) {
      if (bears(row)) {
        put_row(hash, row, text_of);
      }
    }
  }
}

// Whether a row that was written anew says something else of years or makers.
template <class T>
bool says_otherwise(const model::Show& before, const model::Change& change, const T& anew) {
  if constexpr (std::is_same_v<T, model::Setting>) {
    return bears(anew);
  } else if constexpr (weighs<T>) {
    const T* was = before.find(anew.id);
    Hash old;
    Hash now;
    if (was != nullptr) {
      put_row(old, *was, [&](model::Word word) { return before.pool.text(word); });
    }
    put_row(now, anew, [&](model::Word word) { return change.text(word); });
    return was == nullptr || old.hex() != now.hex();
  } else {
    return false;
  }
}

template <class T>
bool bears_by_rows(const model::Show& before,
                   const model::Change& change,
                   const std::vector<T>& rows) {
  const auto ends_one = [&](const model::Withdrawal& withdrawal) {
    const T* row = before.find(model::Id<T>{withdrawal.id});
    if constexpr (std::is_same_v<T, model::Setting>) {
      return row != nullptr && bears(*row);
    } else {
      return row != nullptr;
    }
  };
  const auto otherwise = [&](const T& row) { return says_otherwise(before, change, row); };
  const auto& replaced = std::get<std::vector<T>>(change.replaced());
  const auto& added = std::get<std::vector<T>>(change.added());
  if constexpr (std::is_same_v<T, model::Setting>) {
    return std::any_of(added.begin(), added.end(), otherwise) ||
           std::any_of(replaced.begin(), replaced.end(), otherwise) ||
           std::any_of(change.withdrawn().begin(), change.withdrawn().end(), ends_one);
  } else if constexpr (weighs<T>) {
    return !added.empty() || std::any_of(replaced.begin(), replaced.end(), otherwise) ||
           (!rows.empty() &&
            std::any_of(change.withdrawn().begin(), change.withdrawn().end(), ends_one));
  } else {
    return false;
  }
}

}  // namespace

std::string digest(const model::Show& show) {
  Hash hash;
  show.each_kind([&](const auto& rows) { put_rows(hash, rows, show.pool); });
  return hash.hex();
}

bool bears_on_reckoning(const model::Show& before, const model::Change& change) {
  bool bears = false;
  before.each_kind(
      [&](const auto& rows) { bears = bears || bears_by_rows(before, change, rows); });
  return bears;
}

}  // namespace backmark::store
