#include "press/book_index.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "base/text.h"
#include "words/seen.h"

namespace backmark::press {

namespace {

// The plain letters of common accented ones; other code points stand for themselves.
char32_t plain(char32_t letter) {
  static const std::map<char32_t, char32_t> known{
      {U'à', U'a'}, {U'á', U'a'}, {U'â', U'a'}, {U'ä', U'a'}, {U'å', U'a'}, {U'ã', U'a'},
      {U'ç', U'c'}, {U'è', U'e'}, {U'é', U'e'}, {U'ê', U'e'}, {U'ë', U'e'}, {U'ì', U'i'},
      {U'í', U'i'}, {U'î', U'i'}, {U'ï', U'i'}, {U'ñ', U'n'}, {U'ò', U'o'}, {U'ó', U'o'},
      {U'ô', U'o'}, {U'ö', U'o'}, {U'õ', U'o'}, {U'ø', U'o'}, {U'ù', U'u'}, {U'ú', U'u'},
      {U'û', U'u'}, {U'ü', U'u'}, {U'š', U's'}, {U'č', U'c'}, {U'ž', U'z'}, {U'ř', U'r'}};
  if (letter >= 0xC0 && letter <= 0xDE && letter != 0xD7) {
    letter += 0x20;  // capitals of Latin-1
  }
  const auto at = known.find(letter);
  return at == known.end() ? letter : at->second;
}

// Letter by letter: only letters and figures count.
std::u32string letters_of(std::string_view text) {
  std::u32string letters;
  for (char32_t letter : to_code_points(lower_ascii(text))) {
    letter = plain(letter);
    const bool counts = letter >= 0x80 || (letter >= U'0' && letter <= U'9') ||
                        (letter >= U'a' && letter <= U'z');
    if (counts && letter != U'·' && letter != U'’' && letter != U'–') {
      letters += letter;
    }
  }
  return letters;
}

// A sub-entry without the small words it opens with.
std::u32string sub_key(std::string_view words) {
  constexpr std::array<std::string_view, 10> small{"a ",  "an ", "and ", "as ",  "by ",
                                                   "in ", "of ", "on ",  "the ", "with "};
  for (const std::string_view word : small) {
    if (starts_with(words, word)) {
      return sub_key(words.substr(word.size()));
    }
  }
  return letters_of(words);
}

// Sorted, each page once, neighbours joined; a page with a plate is not named bare as well.
std::vector<IndexLocator> joined(const std::vector<IndexMention>& mentions) {
  std::set<int> plates;
  std::set<int> bare;
  for (const IndexMention& one : mentions) {
    if (one.plate) {
      plates.insert(one.page);
    }
  }
  for (const IndexMention& one : mentions) {
    if (!one.plate && plates.count(one.page) == 0) {
      bare.insert(one.page);
    }
  }
  std::vector<IndexLocator> all;
  for (const auto& [pages, plate] : {std::pair{&bare, false}, std::pair{&plates, true}}) {
    const std::size_t from = all.size();
    for (const int page : *pages) {
      if (all.size() > from && all.back().last + 1 == page) {
        all.back().last = page;
      } else {
        all.push_back({page, page, plate});
      }
    }
  }
  std::sort(all.begin(), all.end(), [](const IndexLocator& a, const IndexLocator& b) {
    return std::pair(a.first, a.plate) < std::pair(b.first, b.plate);
  });
  return all;
}

// Plates of a crowded head go under what they are among, if that tells them apart.
void split_crowded(std::vector<IndexMention>& mentions) {
  std::vector<IndexMention> own;
  std::set<std::string> kinds;
  std::set<int> plates;
  for (const IndexMention& one : mentions) {
    if (one.sub.empty()) {
      own.push_back(one);
      kinds.insert(one.among);
    }
    if (one.plate) {
      plates.insert(one.page);
    }
  }
  if (kinds.size() < 2 || joined(own).size() <= most_bare_locators) {
    return;
  }
  std::erase_if(mentions, [&plates](const IndexMention& one) {
    return one.sub.empty() && !one.plate && plates.count(one.page) != 0;
  });
  for (IndexMention& one : mentions) {
    one.sub = one.sub.empty() && one.plate ? one.among : one.sub;
  }
}

IndexHead head_of(const std::string& words, std::vector<IndexMention> mentions) {
  split_crowded(mentions);
  IndexHead head{words, {}, {}, {}};
  std::map<std::pair<std::u32string, std::string>, std::vector<IndexMention>> subs;
  std::vector<IndexMention> own;
  for (const IndexMention& one : mentions) {
    if (one.sub.empty()) {
      own.push_back(one);
    } else {
      subs[{sub_key(one.sub), one.sub}].push_back(one);
    }
  }
  head.locators = joined(own);
  for (const auto& [key, of] : subs) {
    head.subs.push_back({key.second, joined(of)});
  }
  return head;
}

bool heads_before(const IndexHead& a, const IndexHead& b) {
  return std::pair(letters_of(a.words), a.words) < std::pair(letters_of(b.words), b.words);
}

void add_seen(std::vector<IndexMention>& terms,
              const model::Show& show,
              const model::Piece& piece,
              const std::vector<std::string_view>& keys,
              const std::string& among) {
  for (const words::SeenWord& word : words::words_seen(show, piece.id, keys)) {
    if (word.text != "none" && word.text != "unknown") {
      terms.push_back({word.text, "", 0, false, among});
    }
  }
}

// The first of what was seen.
std::string first_seen(const model::Show& show,
                       const model::Piece& piece,
                       const std::vector<std::string_view>& keys) {
  const auto words = words::words_seen(show, piece.id, keys);
  return words.empty() ? "" : words.front().text;
}

}  // namespace

std::vector<IndexHead> make_index(std::vector<IndexMention> mentions,
                                  const std::vector<IndexSee>& sees) {
  std::map<std::string, std::vector<IndexMention>> by_head;
  for (IndexMention& one : mentions) {
    by_head[one.head].push_back(std::move(one));
  }
  std::vector<IndexHead> index;
  for (const auto& [words, of] : by_head) {
    index.push_back(head_of(words, of));
  }
  for (const IndexSee& see : sees) {
    if (by_head.count(see.to) != 0 && by_head.count(see.from) == 0) {
      index.push_back({see.from, {}, {}, see.to});
    }
  }
  std::sort(index.begin(), index.end(), heads_before);
  return index;
}

std::string locator_text(const IndexLocator& locator) {
  return locator.first == locator.last ? std::to_string(locator.first)
                                       : fmt::format("{}–{}", locator.first, locator.last);
}

Problems crowded(const std::vector<IndexHead>& index) {
  Problems found;
  for (const IndexHead& head : index) {
    const auto bare = std::count_if(head.locators.begin(), head.locators.end(),
                                    [](const IndexLocator& one) { return !one.plate; });
    if (static_cast<std::size_t>(bare) > most_bare_locators) {
      found.push_back({Fault::refused,
                       fmt::format("\"{}\" has {} page numbers in a row", head.words, bare),
                       "index", "split it by what the pages say of it"});
    }
  }
  return found;
}

std::vector<IndexMention> index_terms(const model::Show& show,
                                      const model::Beliefs& beliefs,
                                      const model::Piece& piece) {
  std::vector<IndexMention> terms;
  const std::string motif = first_seen(show, piece, {"motif"});
  if (const model::PieceBelief* belief = beliefs.of(piece.id)) {
    for (const model::MakerChance& chance : belief->maker.makers) {
      const model::Maker* maker = show.find(chance.maker);
      if (maker != nullptr && chance.p >= 0.5) {
        terms.push_back(
            {maker->inverted.empty() ? maker->name : maker->inverted, "", 0, false, motif});
      }
    }
    if (belief->place.p >= 0.8) {
      terms.push_back({std::string(show.text(belief->place.place)), "", 0, false, motif});
    }
  }
  add_seen(terms, show, piece, {"material", "metal", "stone"}, motif);
  add_seen(terms, show, piece, {"technique"}, motif);
  add_seen(terms, show, piece, {"motif"}, first_seen(show, piece, {"stone", "material"}));
  for (const model::Mark& mark : show.marks_of(piece.id)) {
    if (!mark.text.empty()) {
      terms.push_back({mark.text, "as a mark", 0, false});
    }
  }
  terms.erase(std::remove_if(terms.begin(), terms.end(),
                             [](const IndexMention& one) { return one.head.empty(); }),
              terms.end());
  return terms;
}

Problems not_on_pages(const std::vector<IndexHead>& index,
                      const std::vector<std::string>& pages) {
  std::vector<std::u32string> letters;
  for (const std::string& page : pages) {
    letters.push_back(letters_of(page));
  }
  Problems found;
  const auto look = [&](const std::string& head, const std::vector<IndexLocator>& locators) {
    const auto end = head.find_first_of(", ");
    const std::u32string word = letters_of(head.substr(0, end));
    for (const IndexLocator& locator : locators) {
      for (int page = locator.first; !locator.plate && page <= locator.last; ++page) {
        const auto at = static_cast<std::size_t>(page) - 1;
        if (page < 1 || at >= letters.size() ||
            letters[at].find(word) == std::u32string::npos) {
          found.push_back(
              {Fault::conflict,
               fmt::format("the index sends \"{}\" to page {}, where it is not", head, page),
               "index", ""});
        }
      }
    }
  };
  for (const IndexHead& head : index) {
    look(head.words, head.locators);
    for (const IndexSub& sub : head.subs) {
      look(head.words, sub.locators);
    }
  }
  return found;
}

}  // namespace backmark::press
