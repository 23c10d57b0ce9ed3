#include "press/book/set_once.h"

#include <type_traits>

namespace backmark::press::book {

namespace {

// The bytes of a plain value.
template <class T>
void add(std::string& key, T value) {
  static_assert(std::is_arithmetic_v<T> || std::is_enum_v<T>);
  key.append(reinterpret_cast<const char*>(&value), sizeof value);
}

void add_style(std::string& key, const draw::Style& style) {
  add(key, style.face);
  add(key, style.size_pt);
  for (const double part :
       {style.colour.red, style.colour.green, style.colour.blue, style.colour.alpha}) {
    add(key, part);
  }
  add(key, style.figures);
  add(key, style.tabular);
  add(key, style.small_caps);
  add(key, style.tracking);
  add(key, style.raise);
}

std::string key_of(char how,
                   const std::vector<draw::Stretch>& text,
                   const draw::Measures& measures) {
  std::string key(1, how);
  add(key, measures.width);
  add(key, measures.first_indent);
  for (const draw::Stretch& stretch : text) {
    add(key, stretch.text.size());
    key += stretch.text;
    add_style(key, stretch.style);
    add(key, stretch.divide);
    add(key, stretch.tag);
  }
  return key;
}

}  // namespace

const draw::Paragraph& SetOnce::ragged(const draw::Fonts& fonts,
                                       const std::vector<draw::Stretch>& text,
                                       const draw::Measures& measures) {
  const auto [at, fresh] = known_.try_emplace(key_of('r', text, measures));
  if (fresh) {
    at->second = draw::set_ragged(fonts, text, measures);
  }
  return at->second;
}

const draw::Paragraph& SetOnce::justified(const draw::Fonts& fonts,
                                          const draw::Hyphens& hyphens,
                                          const std::vector<draw::Stretch>& text,
                                          const draw::Measures& measures) {
  const auto [at, fresh] = known_.try_emplace(key_of('j', text, measures));
  if (fresh) {
    at->second = draw::set_justified(fonts, hyphens, text, measures);
  }
  return at->second;
}

}  // namespace backmark::press::book
