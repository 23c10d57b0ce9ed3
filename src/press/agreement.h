// Proof that all papers of a show say the same, and that nothing private stands on a public
// one.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/json_fwd.h"
#include "base/result.h"
#include "model/show.h"
#include "words/audience.h"
#include "words/fact.h"

namespace backmark::press {

// A fact as it was set on a paper.
struct PrintedFact {
  std::string output;  // "checklist"
  std::string piece;   // the catalogue number, "ES 118"
  words::FactKind kind = words::FactKind::number;
  std::string text;

  friend bool operator==(const PrintedFact&, const PrintedFact&) = default;
};

// The text as compared: line ends, no-break and other spaces as one space, no soft hyphens,
// ligatures as letters.
std::string flattened(std::string_view text);

// Facts of one piece and kind that two papers word differently: one Problem each pair of
// wordings, naming piece, papers and both wordings. Linear in the facts but for a sort.
Problems disagreements(const std::vector<PrintedFact>& facts);

// Facts that were set but are not in the text extracted from the paper.
Problems not_found_in(std::string_view extracted, const std::vector<PrintedFact>& facts);

// What an audience must never read: names of owners who did not sign to be named, addresses,
// places of keeping and values, as far as the audience's set leaves them out. Words of fewer
// than 4 letters are not searched for.
struct PrivateText {
  std::string text;
  words::FactKind kind = words::FactKind::lender_name;
};
std::vector<PrivateText> private_texts(const model::Show& show, words::Audience audience);

// Those that are in the text all the same; `paper` names it.
Problems leaks(std::string_view extracted,
               const std::vector<PrivateText>& texts,
               std::string_view paper);

// "condition_summary" for FactKind::condition_summary.
std::string_view fact_name(words::FactKind kind);

// What changed between a frozen set of facts and now, by paper, piece and kind: new, gone,
// reworded.
struct FactChange {
  std::string output;
  std::string piece;
  words::FactKind kind = words::FactKind::number;
  std::string before;  // empty: new
  std::string now;     // empty: gone
};
std::vector<FactChange> changes(const std::vector<PrintedFact>& frozen,
                                const std::vector<PrintedFact>& now);

// The facts as JSON, [{output, piece, kind, text}], and back. Problem: bad_input.
Json to_json(const std::vector<PrintedFact>& facts);
Result<std::vector<PrintedFact>> facts_from_json(const std::string& text);

}  // namespace backmark::press
