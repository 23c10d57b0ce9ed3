// The Sources page as JSON.
#pragma once

#include "base/json_fwd.h"
#include "desk/sources_weighed.h"

namespace backmark::desk {

// How a source stands among the others.
struct SourceStanding {
  const model::Source* source = nullptr;
  std::string origin;      // key of whom it has it from in the end; its own if from nobody
  std::size_t claims = 0;  // things said, stated windows and events with it
  std::size_t pieces = 0;  // it speaks of
};

// One a source, in the order of the show.
std::vector<SourceStanding> source_standings(const model::Show& show);

// What `sources` answers. `weighed` may be null.
Json sources_json(const model::Show& show,
                  const std::vector<SourceStanding>& standings,
                  const std::vector<evidence::ClaimOnFile>& claims,
                  const SourcesWeighed* weighed,
                  const LastRun* last);

// "document", "publication", "oral", "piece", "own", "record".
const char* source_kind_word(model::SourceKind kind);

}  // namespace backmark::desk
