#include "photo/file_name.h"

#include <algorithm>

#include "base/result.h"
#include "base/text.h"

namespace backmark::photo {

namespace {

using model::View;

struct ViewWord {
  std::string_view word;
  View view;
};

// Words that photographers of small objects write (common practice, no source).
constexpr ViewWord view_words[] = {
    {"front", View::front},    {"obverse", View::front}, {"recto", View::front},
    {"face", View::front},     {"back", View::back},     {"reverse", View::back},
    {"verso", View::back},     {"rear", View::back},     {"tips", View::tips},
    {"tip", View::tips},       {"ends", View::tips},     {"mark", View::mark},
    {"marks", View::mark},     {"stamp", View::mark},    {"signature", View::mark},
    {"hallmark", View::mark},  {"side", View::side},     {"edge", View::side},
    {"profile", View::side},   {"detail", View::detail}, {"details", View::detail},
    {"closeup", View::detail},
};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// Runs of digits without leading zeros and runs of other letters, lower case.
std::vector<std::string> tokens_of(std::string_view text) {
  std::vector<std::string> tokens;
  std::string run;
  const auto end_run = [&] {
    if (!run.empty()) {
      const auto first = is_digit(run.front())
                             ? std::min(run.find_first_not_of('0'), run.size() - 1)
                             : std::size_t{0};
      tokens.push_back(run.substr(first));
      run.clear();
    }
  };
  for (const char c : lower_ascii(text)) {
    const bool letter = (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
    if (!letter && !is_digit(c)) {
      end_run();
      continue;
    }
    if (!run.empty() && is_digit(run.back()) != is_digit(c)) {
      end_run();
    }
    run += c;
  }
  end_run();
  return tokens;
}

}  // namespace

NameReader::NameReader(std::vector<std::string> numbers) {
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    sorted_.emplace_back(tokens_of(numbers[i]), i);
  }
  std::sort(sorted_.begin(), sorted_.end());
}

std::optional<Named> NameReader::read(std::string_view file_name) const {
  const auto dot = std::min(file_name.rfind('.'), file_name.size());
  const Tokens tokens = tokens_of(file_name.substr(0, dot));
  for (std::size_t length = tokens.size(); length > 0; --length) {
    const Tokens head(tokens.begin(), tokens.begin() + static_cast<std::ptrdiff_t>(length));
    const auto at = std::lower_bound(
        sorted_.begin(), sorted_.end(), head,
        [](const auto& one, const Tokens& wanted) { return one.first < wanted; });
    if (at == sorted_.end() || at->first != head) {
      continue;
    }
    Named named{at->second, View::front};
    for (std::size_t i = length; i < tokens.size(); ++i) {
      if (const auto view = view_named(tokens[i])) {
        named.view = *view;
        break;
      }
    }
    return named;
  }
  return std::nullopt;
}

std::optional<View> view_named(std::string_view word) {
  const auto* at = std::find_if(std::begin(view_words), std::end(view_words),
                                [word](const ViewWord& one) { return one.word == word; });
  return at == std::end(view_words) ? std::nullopt : std::optional(at->view);
}

std::string_view name_of(View view) {
  for (const ViewWord& one : view_words) {
    if (one.view == view) {
      return one.word;
    }
  }
  throw BrokenPromise("a view without a word");
}

std::string copy_name(std::string_view number, View view, std::string_view ending) {
  std::string name;
  for (const char c : number) {
    const bool kept = is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    if (kept || (!name.empty() && name.back() != '-')) {
      name += kept ? c : '-';
    }
  }
  return fmt::format("{}-{}.{}", name.empty() ? "piece" : name, name_of(view), ending);
}

}  // namespace backmark::photo
