#include "exchange/bibliography.h"

#include <algorithm>
#include <set>

#include "base/json.h"
#include "base/text.h"
#include "exchange/bibliography_part.h"

namespace backmark::exchange {

namespace {

using model::CitedName;
using model::Reference;
using model::ReferenceKind;

ReferenceKind kind_of_csl(const std::string& type) {
  if (type == "chapter" || type == "paper-conference" || starts_with(type, "entry")) {
    return ReferenceKind::part;
  }
  if (starts_with(type, "article") || starts_with(type, "review")) {
    return ReferenceKind::article;
  }
  if (type == "thesis") {
    return ReferenceKind::thesis;
  }
  if (type == "report" || type == "patent" || type == "standard") {
    return ReferenceKind::report;
  }
  if (type == "webpage" || starts_with(type, "post")) {
    return ReferenceKind::page;
  }
  if (type == "manuscript" || type == "document" || type == "personal_communication" ||
      type == "collection" || type == "graphic") {
    return ReferenceKind::unpublished;
  }
  if (type == "interview" || type == "speech") {
    return ReferenceKind::spoken;
  }
  return ReferenceKind::book;
}

// A text or a number as text.
std::string text_at(const Json& item, const char* field) {
  const auto at = item.find(field);
  if (at == item.end()) {
    return {};
  }
  if (at->is_string()) {
    return std::string(trim(at->get<std::string>()));
  }
  return at->is_number_integer() ? std::to_string(at->get<long long>()) : std::string();
}

std::vector<CitedName> names_at(const Json& item, const char* field) {
  std::vector<CitedName> names;
  const auto at = item.find(field);
  if (at == item.end() || !at->is_array()) {
    return names;
  }
  for (const Json& one : *at) {
    if (one.is_object()) {
      std::string family = text_at(one, "family");
      const std::string particle = text_at(one, "non-dropping-particle");
      names.push_back({particle.empty() ? family : particle + " " + family,
                       text_at(one, "given"), text_at(one, "literal")});
    }
  }
  return names;
}

std::string year_at(const Json& item) {
  const auto at = item.find("issued");
  if (at == item.end() || !at->is_object()) {
    return {};
  }
  const auto parts = at->find("date-parts");
  if (parts != at->end() && parts->is_array() && !parts->empty() && (*parts)[0].is_array() &&
      !(*parts)[0].empty()) {
    const Json& year = (*parts)[0][0];
    const std::string text = year.is_string() ? year.get<std::string>() : year.dump();
    return at->contains("circa") ? "about " + text : text;
  }
  return text_at(*at, "raw") + text_at(*at, "literal");
}

Reference reference_of(const Json& item) {
  Reference one{.key = text_at(item, "id"),
                .kind = kind_of_csl(text_at(item, "type")),
                .authors = names_at(item, "author"),
                .editors = names_at(item, "editor"),
                .title = text_at(item, "title"),
                .host = text_at(item, "container-title"),
                .edition = text_at(item, "edition"),
                .place = text_at(item, "publisher-place"),
                .publisher = text_at(item, "publisher"),
                .year = year_at(item),
                .volume = text_at(item, "volume"),
                .issue = text_at(item, "issue"),
                .pages = text_at(item, "page"),
                .series = text_at(item, "collection-title"),
                .holder = text_at(item, "archive"),
                .address = text_at(item, "URL"),
                .note = text_at(item, "genre")};
  const std::string doi = text_at(item, "DOI");
  const std::string isbn = text_at(item, "ISBN");
  one.identifier = !doi.empty() ? "DOI " + doi : !isbn.empty() ? "ISBN " + isbn : "";
  return one;
}

}  // namespace

void keep(Bibliography& all,
          std::set<std::string>& keys,
          Reference one,
          const std::string& where) {
  if (one.key.empty()) {
    all.faults.push_back({Fault::bad_input, "a work without a key cannot be cited", where,
                          "give it an id, such as \"rell-1951\""});
  } else if (one.title.empty()) {
    all.faults.push_back({Fault::bad_input, fmt::format("\"{}\" has no title", one.key), where,
                          "a title in a few words will do"});
  } else if (!keys.insert(one.key).second) {
    all.faults.push_back({Fault::bad_input,
                          fmt::format("two works have the key \"{}\"", one.key), where,
                          "the first is kept; give the other a key of its own"});
  } else {
    all.references.push_back(std::move(one));
  }
}

Result<Bibliography> read_csl_json(std::string_view text, const std::string& file) {
  const Json items = Json::parse(text, nullptr, false);
  if (items.is_discarded() || !items.is_array()) {
    return Problem{Fault::bad_input, "this is no list of works in CSL-JSON", file,
                   "export it from the reference manager as CSL JSON: it begins with ["};
  }
  Bibliography all;
  std::set<std::string> keys;
  for (std::size_t at = 0; at < items.size(); ++at) {
    const std::string where = fmt::format("{}, item {}", file, at + 1);
    if (items[at].is_object()) {
      keep(all, keys, reference_of(items[at]), where);
    } else {
      all.faults.push_back({Fault::bad_input, "an item that is no work", where, ""});
    }
  }
  return all;
}

Result<Bibliography> read_bibliography(std::string_view text, const std::string& file) {
  if (!is_utf8(text)) {
    return Problem{Fault::bad_input, "the list of works is not UTF-8", file,
                   "export it again as UTF-8"};
  }
  return ends_with(lower_ascii(file), ".bib") ? read_bibtex(text, file)
                                              : read_csl_json(text, file);
}

}  // namespace backmark::exchange
