// Bytes: the word below, then every member in its order; numbers as the machine has them,
// counts as 64 bits before what they count.
#include "evidence/lessons.h"

#include <algorithm>
#include <bit>
#include <cstring>
#include <type_traits>

namespace backmark::evidence {

namespace {

// The version of the program too: lessons of another one might mean something else.
constexpr std::string_view opening = "backmark " BACKMARK_VERSION " lessons 2\n";

static_assert(std::endian::native == std::endian::little, "kept little end first");

class Writer {
 public:
  std::string bytes{opening};

  void raw(const void* from, std::size_t count) {
    bytes.append(static_cast<const char*>(from), count);
  }
  template <class T>
  void many(std::vector<T>& items) {
    counted(items.size());
    if constexpr (std::is_arithmetic_v<T>) {
      raw(items.data(), items.size() * sizeof(T));
    } else {
      for (T& item : items) {
        walk(*this, item);
      }
    }
  }
  template <class Key, class T>
  void map(std::map<Key, T>& items) {
    counted(items.size());
    for (auto& [key, value] : items) {
      Key copy = key;
      walk(*this, copy);
      walk(*this, value);
    }
  }
  void text(std::string& text) {
    counted(text.size());
    raw(text.data(), text.size());
  }
  template <class T>
  void perhaps(std::optional<T>& item) {
    std::uint8_t there = item ? 1 : 0;
    raw(&there, 1);
    if (item) {
      walk(*this, *item);
    }
  }

 private:
  void counted(std::uint64_t count) { raw(&count, sizeof count); }
};

// After the first thing that cannot be, everything reads as nothing and `torn` stays set.
class Reader {
 public:
  explicit Reader(std::string_view bytes) : left_(bytes) {
    torn = !bytes.starts_with(opening);
    left_.remove_prefix(torn ? 0 : opening.size());
  }
  bool torn = false;
  bool at_end() const { return left_.empty(); }

  void raw(void* to, std::size_t count) {
    torn = torn || left_.size() < count;
    if (torn || count == 0) {
      return;
    }
    std::memcpy(to, left_.data(), count);
    left_.remove_prefix(count);
  }
  template <class T>
  void many(std::vector<T>& items) {
    constexpr std::size_t each = std::is_arithmetic_v<T> ? sizeof(T) : 1;
    items.resize(counted(each));
    if constexpr (std::is_arithmetic_v<T>) {
      raw(items.data(), items.size() * sizeof(T));
    } else {
      for (T& item : items) {
        walk(*this, item);
      }
    }
  }
  template <class Key, class T>
  void map(std::map<Key, T>& items) {
    for (std::size_t left = counted(1); left > 0 && !torn; --left) {
      Key key{};
      walk(*this, key);
      walk(*this, items[key]);
    }
  }
  void text(std::string& text) {
    text.resize(counted(1));
    raw(text.data(), text.size());
  }
  template <class T>
  void perhaps(std::optional<T>& item) {
    std::uint8_t there = 0;
    raw(&there, 1);
    if (there != 0 && !torn) {
      walk(*this, item.emplace());
    }
  }

 private:
  // How many things of at least `each` bytes follow; never more than there can be.
  std::size_t counted(std::size_t each) {
    std::uint64_t count = 0;
    raw(&count, sizeof count);
    torn = torn || count > left_.size() / each;
    return torn ? 0 : static_cast<std::size_t>(count);
  }
  std::string_view left_;
};

template <class A, class T>
requires std::is_arithmetic_v<T>
void walk(A& archive, T& number) {
  archive.raw(&number, sizeof number);
}
// A byte that is neither 0 nor 1 is no bool.
template <class A>
void walk(A& archive, bool& flag) {
  std::uint8_t byte = flag ? 1 : 0;
  archive.raw(&byte, sizeof byte);
  flag = byte != 0;
}
template <class A>
void walk(A& archive, std::string& text) {
  archive.text(text);
}
template <class A, class T>
void walk(A& archive, std::vector<T>& items) {
  archive.many(items);
}
template <class A, class Key, class T>
void walk(A& archive, std::map<Key, T>& items) {
  archive.map(items);
}
template <class A, class T>
void walk(A& archive, std::optional<T>& item) {
  archive.perhaps(item);
}

template <class A, class... Members>
void walk_all(A& archive, Members&... members) {
  (walk(archive, members), ...);
}

template <class A>
void walk(A& archive, YearSpan& span) {
  walk_all(archive, span.first.value, span.last.value);
}
template <class A>
void walk(A& archive, Known& known) {
  walk_all(archive, known.cumulative, known.stated, known.judged);
}
template <class A>
void walk(A& archive, StyleLessons& style) {
  walk_all(archive, style.names, style.axis, style.d, style.open, style.b, style.b_alone,
           style.curve_years, style.lags, style.ranks, style.left_out, style.left_out_score,
           style.small);
}
template <class A>
void walk(A& archive, HandLessons& hands) {
  walk_all(archive, hands.names, hands.d, hands.open, hands.listed_share);
}
template <class A>
void walk(A& archive, Sampled& sampled) {
  walk_all(archive, sampled.chains, sampled.rhat_max, sampled.ess_min, sampled.reliability,
           sampled.replaced, sampled.variants, sampled.converged);
}
template <class A>
void walk(A& archive, Lessons& lessons) {
  walk_all(archive, lessons.settings, lessons.axis, lessons.style, lessons.hands,
           lessons.makers_power, lessons.sampled, lessons.pieces, lessons.frame);
}

}  // namespace

double changed_share(const Lessons& then, const Lessons& now) {
  if (then.frame != now.frame || then.axis != now.axis || now.pieces.empty()) {
    return 1;
  }
  std::size_t same = 0;
  for (const auto& [id, mark] : now.pieces) {
    const auto found = then.pieces.find(id);
    same += found != then.pieces.end() && found->second == mark ? 1U : 0U;
  }
  const std::size_t all = std::max(then.pieces.size(), now.pieces.size());
  return static_cast<double>(all - same) / static_cast<double>(all);
}

std::string to_bytes(const Lessons& lessons) {
  Writer writer;
  Lessons copy = lessons;  // one walk serves both ways
  walk(writer, copy);
  return std::move(writer.bytes);
}

Result<Lessons> lessons_of(std::string_view bytes) {
  Reader reader(bytes);
  Lessons lessons;
  walk(reader, lessons);
  if (reader.torn || !reader.at_end()) {
    return Problem{Fault::bad_input, "what the last reckoning learned cannot be read", "",
                   "run \"backmark infer\" again"};
  }
  return lessons;
}

}  // namespace backmark::evidence
