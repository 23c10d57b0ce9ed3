#include "exchange/map_words.h"

#include "base/text.h"

namespace backmark::exchange {

const TargetWords& words_of(RowsOf rows) {
  static const TargetWords pieces{
      {"number", Target::number},       {"title", Target::title},
      {"form", Target::form},           {"maker", Target::maker},
      {"made", Target::made},           {"made-from", Target::made_from},
      {"made-to", Target::made_to},     {"mark", Target::mark},
      {"place", Target::place},         {"acquired", Target::acquired},
      {"note", Target::note},           {"lot", Target::lot},
      {"lender", Target::lender},       {"tray", Target::tray},
      {"character", Target::character}, {"measure", Target::measure},
      {"ignore", Target::ignore}};
  static const TargetWords makers{
      {"key", Target::key},    {"name", Target::name},    {"inverted", Target::inverted},
      {"kind", Target::kind},  {"place", Target::place},  {"from", Target::from},
      {"to", Target::to},      {"dates", Target::dates},  {"mark", Target::mark},
      {"note", Target::prose}, {"ignore", Target::ignore}};
  static const TargetWords sources{{"key", Target::key},
                                   {"title", Target::title},
                                   {"kind", Target::kind},
                                   {"year", Target::year},
                                   {"derives-from", Target::derives_from},
                                   {"reliability", Target::reliability},
                                   {"citation", Target::citation},
                                   {"ignore", Target::ignore}};
  static const TargetWords observations{{"number", Target::number},
                                        {"part", Target::part},
                                        {"character", Target::character},
                                        {"value", Target::value},
                                        {"certainty", Target::certainty},
                                        {"how", Target::how},
                                        {"by", Target::by},
                                        {"ignore", Target::ignore}};
  static const TargetWords windows{
      {"character", Target::character}, {"value", Target::value},
      {"from", Target::from},           {"to", Target::to},
      {"source", Target::source},       {"ignore", Target::ignore}};
  switch (rows) {
    case RowsOf::makers:
      return makers;
    case RowsOf::sources:
      return sources;
    case RowsOf::observations:
      return observations;
    case RowsOf::windows:
      return windows;
    case RowsOf::pieces:
      break;
  }
  return pieces;
}

Problem unknown_word(std::string_view what,
                     std::string_view word,
                     const std::vector<std::string>& known) {
  const auto near = closest(word, known);
  return {.fault = Fault::bad_input,
          .what = fmt::format("{} \"{}\" is not known", what, word),
          .where = "",
          .fix = near ? fmt::format("did you mean \"{}\"?", *near)
                      : "known are: " + join(known, ", ")};
}

Problem wrong_type(std::string_view key, std::string_view wanted) {
  return {.fault = Fault::bad_input,
          .what = fmt::format("\"{}\" is not {}", key, wanted),
          .fix = fmt::format("write {} = {}", key,
                             wanted == "a text"          ? "\"...\""
                             : wanted == "true or false" ? "true"
                                                         : "[\"...\", \"...\"]")};
}

Result<std::string> text_of(std::string_view key, const toml::node& node) {
  if (const auto text = node.value_exact<std::string>()) {
    return *text;
  }
  return wrong_type(key, "a text");
}

Result<std::vector<std::string>> texts_of(std::string_view key, const toml::node& node) {
  std::vector<std::string> texts;
  if (const auto text = node.value_exact<std::string>()) {
    texts.push_back(*text);
    return texts;
  }
  if (!node.is_array()) {
    return wrong_type(key, "a list of texts");
  }
  for (const toml::node& item : *node.as_array()) {
    const auto text = item.value_exact<std::string>();
    if (!text) {
      return wrong_type(key, "a list of texts");
    }
    texts.push_back(*text);
  }
  return texts;
}

}  // namespace backmark::exchange
