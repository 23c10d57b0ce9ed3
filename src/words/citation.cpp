#include "words/citation.h"

#include <algorithm>
#include <map>

#include "base/text.h"

namespace backmark::words {

namespace {

using model::CitedName;
using model::Reference;
using model::ReferenceKind;

const std::vector<CitedName>& creators(const Reference& reference) {
  return reference.authors.empty() ? reference.editors : reference.authors;
}

std::string short_name(const CitedName& name) {
  return name.family.empty() ? name.literal : name.family;
}

std::string inverted(const CitedName& name) {
  if (name.family.empty()) {
    return name.literal;
  }
  return name.given.empty() ? name.family : name.family + ", " + name.given;
}

std::string natural(const CitedName& name) {
  return name.family.empty() || name.given.empty() ? short_name(name)
                                                   : name.given + " " + name.family;
}

std::string with_dashes(std::string text) {
  text = replace_all(std::move(text), "--", "–");
  return replace_all(std::move(text), "-", "–");
}

// The first words of a title, where it must stand for a name.
std::string short_of_title(const std::string& title) {
  const std::size_t end = title.find_first_of(":.,;");
  return title.substr(0, end);
}

bool is_pages(const std::string& locator) {
  return !locator.empty() && locator.find_first_not_of("0123456789-– ,") == std::string::npos;
}

std::string located(const std::string& locator) {
  if (!is_pages(locator)) {
    return locator;
  }
  const bool several =
      locator.find_first_of("-,") != std::string::npos || contains(locator, "–");
  return (several ? "pp.\u00a0" : "p.\u00a0") + with_dashes(locator);
}

// Puts sentences of a list entry together: each ends with one full stop.
class Entry {
 public:
  void add(std::string text, CitationVoice voice = CitationVoice::roman) {
    if (!text.empty()) {
      runs_.push_back({std::move(text), voice});
    }
  }
  // Ends a sentence if one is open.
  void stop() {
    if (runs_.empty() || ends_with(runs_.back().text, " ")) {
      return;
    }
    const std::string& last = runs_.back().text;
    const bool closed = ends_with(last, ".") || ends_with(last, "?") || ends_with(last, "!") ||
                        ends_with(last, ".”") || ends_with(last, "?”");
    add(closed ? " " : ". ");
  }
  std::vector<CitationRun> finish() {
    stop();
    if (!runs_.empty()) {
      runs_.back().text = without_trailing_spaces(runs_.back().text);
    }
    std::vector<CitationRun> joined;
    for (CitationRun& run : runs_) {
      if (!joined.empty() && joined.back().voice == run.voice) {
        joined.back().text += run.text;
      } else if (!run.text.empty()) {
        joined.push_back(std::move(run));
      }
    }
    return joined;
  }

 private:
  std::vector<CitationRun> runs_;
};

void add_creators(Entry& entry, const Reference& reference) {
  const auto& names = creators(reference);
  for (std::size_t i = 0; i < names.size(); ++i) {
    if (i > 0) {
      entry.add(i + 1 == names.size() ? " and " : ", ");
    }
    entry.add(i == 0 ? inverted(names[i]) : natural(names[i]), CitationVoice::small_caps);
  }
  if (reference.authors.empty() && !names.empty()) {
    entry.add(names.size() == 1 ? " (ed.)" : " (eds)");
  }
  entry.stop();
}

bool stands_in_host(const Reference& reference) {
  return !reference.host.empty();
}

void add_title(Entry& entry, const Reference& reference) {
  if (reference.title.empty()) {
    return;
  }
  if (!stands_in_host(reference)) {
    const bool unpublished =
        reference.kind == ReferenceKind::unpublished || reference.kind == ReferenceKind::spoken;
    entry.add(reference.title, unpublished ? CitationVoice::roman : CitationVoice::italic);
    entry.stop();
    return;
  }
  entry.add("“" + reference.title + "”");
  entry.stop();
  if (reference.kind != ReferenceKind::article) {
    entry.add("In ");
    if (!reference.authors.empty() && !reference.editors.empty()) {
      std::vector<std::string> names;
      for (const CitedName& name : reference.editors) {
        names.push_back(natural(name));
      }
      entry.add(join(names, ", ") + (names.size() == 1 ? " (ed.), " : " (eds), "));
    }
  }
  entry.add(reference.host, CitationVoice::italic);
  if (reference.kind != ReferenceKind::article) {
    entry.stop();
  }
}

// "Ennet: Quay Press, 1951", "1951, vol. 4, no. 2, pp. 3–9".
std::string imprint(const Reference& reference) {
  std::vector<std::string> parts;
  if (!reference.place.empty() && !reference.publisher.empty()) {
    parts.push_back(reference.place + ": " + reference.publisher);
  } else if (!reference.place.empty() || !reference.publisher.empty()) {
    parts.push_back(reference.place + reference.publisher);
  }
  if (!reference.year.empty()) {
    parts.push_back(reference.year);
  }
  if (!reference.volume.empty()) {
    parts.push_back("vol.\u00a0" + reference.volume);
  }
  if (!reference.issue.empty()) {
    parts.push_back("no.\u00a0" + reference.issue);
  }
  if (!reference.pages.empty()) {
    parts.push_back(is_pages(reference.pages) ? located(reference.pages) : reference.pages);
  }
  return join(parts, ", ");
}

std::string sort_key(const Reference& reference) {
  std::string names;
  for (const CitedName& name : creators(reference)) {
    names += lower_ascii(inverted(name)) + "\n";
  }
  return (names.empty() ? lower_ascii(reference.title) : names) + "\t" + reference.year + "\t" +
         lower_ascii(reference.title) + "\t" + reference.key;
}

std::string letter(std::size_t at) {
  std::string text;
  for (++at; at > 0; at = (at - 1) / 26) {
    text.insert(text.begin(), static_cast<char>('a' + (at - 1) % 26));
  }
  return text;
}

}  // namespace

std::string short_title(const model::Reference& reference, const std::string& locator) {
  const auto& names = creators(reference);
  std::string text = names.empty() ? short_of_title(reference.title) : short_name(names[0]);
  if (names.size() == 2) {
    text += " and " + short_name(names[1]);
  } else if (names.size() > 2) {
    text += " and others";
  }
  if (!reference.year.empty() && !ends_with(text, reference.year)) {
    text += "\u00a0" + reference.year;
  }
  return locator.empty() ? text : text + ", " + located(locator);
}

std::vector<CitationRun> list_entry(const model::Reference& reference) {
  Entry entry;
  add_creators(entry, reference);
  add_title(entry, reference);
  if (reference.kind == ReferenceKind::article && stands_in_host(reference)) {
    const std::string when = imprint(reference);
    entry.add(when.empty() ? "" : ", " + when);
    entry.stop();
  } else {
    const std::string edition =
        reference.edition.find_first_not_of("0123456789") == std::string::npos &&
                !reference.edition.empty()
            ? "Edition " + reference.edition
            : reference.edition;
    for (const std::string& part : {edition, reference.note, imprint(reference)}) {
      entry.add(part);
      entry.stop();
    }
  }
  for (const std::string& part : {reference.series, reference.holder, reference.identifier}) {
    entry.add(part);
    entry.stop();
  }
  entry.add(reference.address);
  return entry.finish();
}

std::string plain_entry(const model::Reference& reference) {
  std::string text;
  for (const CitationRun& run : list_entry(reference)) {
    text += run.text;
  }
  return text;
}

std::vector<model::Reference> in_list_order(std::vector<model::Reference> references) {
  std::sort(references.begin(), references.end(),
            [](const Reference& a, const Reference& b) { return sort_key(a) < sort_key(b); });
  std::map<std::string, std::vector<Reference*>> same;
  for (Reference& reference : references) {
    same[short_title(reference)].push_back(&reference);
  }
  for (const auto& [title, group] : same) {
    for (std::size_t at = 0; group.size() > 1 && at < group.size(); ++at) {
      group[at]->year += letter(at);
    }
  }
  return references;
}

}  // namespace backmark::words
