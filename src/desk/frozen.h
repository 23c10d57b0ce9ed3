// Sets of printed facts kept under a name (prints/frozen/NAME), to say later what has changed.
#pragma once

#include <string>
#include <vector>

#include "desk/papers.h"
#include "press/agreement.h"
#include "words/fact.h"

namespace backmark::desk {

// Whether a set may be kept under this name. Problems: bad_input (other letters than a to z,
// figures,
// "-" and "_"), conflict (there is one: a frozen set is never overwritten).
Result<Done> may_freeze(const Path& prints, const std::string& name);

// Keeps the records; the set is there whole or not at all. Problems: those of may_freeze; io.
Result<Done> freeze(const Path& prints,
                    const std::string& name,
                    const std::vector<PrintRecord>& records);

// Problems: not_found, with the names there are; as read_records.
Result<std::vector<PrintRecord>> frozen_records(const Path& prints, const std::string& name);

// Frozen facts that the show words otherwise now, that a piece no longer in the show had, or
// (of kinds that the grammar does not word, such as values) that the paper as printed now words
// otherwise; and facts that a paper of the set has now and had not then.
std::vector<press::FactChange> changed_since(const words::Grammar& grammar,
                                             const std::vector<PrintRecord>& frozen,
                                             const std::vector<PrintRecord>& printed);

}  // namespace backmark::desk
