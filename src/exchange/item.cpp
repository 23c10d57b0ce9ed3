#include "exchange/item.h"

#include <algorithm>

#include "base/text.h"

namespace backmark::exchange {

namespace {

constexpr char between = '\x1F';  // stands in no cell that a spreadsheet writes

std::string year_text(const std::optional<Year>& year) {
  return year ? std::to_string(year->value) : "";
}

}  // namespace

std::string Item::slot() const {
  std::string slot = std::to_string(static_cast<int>(kind)) + between;
  switch (kind) {
    case ItemKind::observation:
      return slot + key + between + part;
    case ItemKind::claim:
      return slot + std::to_string(static_cast<int>(says));
    case ItemKind::note:
      return slot + key;
    case ItemKind::event:
    case ItemKind::mark:
      break;
  }
  return slot;
}

std::string Item::statement() const {
  std::string all = slot();
  const auto add = [&](std::string_view more) {
    all += between;
    all += more;
  };
  add(std::to_string(static_cast<int>(seen)));
  if (kind == ItemKind::observation) {
    add(fmt::format("{} {:.3g} {}", static_cast<int>(how), certainty, by));
  }
  if (kind == ItemKind::observation && shape == model::Shape::number) {
    add(fmt::format("{:.6g}", number));
    return all;
  }
  add(text);
  if (kind == ItemKind::claim || kind == ItemKind::event) {
    add(year_text(from)), add(year_text(to)), add(approximate ? "about" : "");
    add(maker), add(qualifier), add(role), add(word);
  }
  return all;
}

MakerNames::MakerNames(const model::Show& show) {
  for (const model::Maker& maker : show.all<model::Maker>()) {
    for (const std::string& name : {maker.name, maker.inverted, maker.key}) {
      if (!name.empty()) {
        names_.try_emplace(lower_ascii(name), maker.name);
      }
    }
  }
}

std::string MakerNames::known(std::string_view name) const {
  const auto at = names_.find(lower_ascii(name));
  return at == names_.end() ? std::string(name) : at->second;
}

std::string to_key(std::string_view text) {
  std::string key;
  for (const char character : lower_ascii(text)) {
    const bool plain = (character >= 'a' && character <= 'z') ||
                       (character >= '0' && character <= '9') ||
                       static_cast<unsigned char>(character) >= 0x80;
    if (plain) {
      key += character;
    } else if (!key.empty() && key.back() != '_') {
      key += '_';
    }
  }
  while (!key.empty() && key.back() == '_') {
    key.pop_back();
  }
  return key;
}

}  // namespace backmark::exchange
