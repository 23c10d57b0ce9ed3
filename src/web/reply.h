// Responses as every door of this room gives them: JSON, a refusal in words, bytes with a tag.
#pragma once

#include <string>
#include <string_view>

#include "base/json_fwd.h"
#include "base/result.h"
#include "web/http.h"

namespace backmark::web {

// A fault that is the program's own; "program" in JSON.
inline constexpr int program_fault = 500;

int status_of(Fault fault);
std::string_view name_of(Fault fault);

Response reply(const Json& json, int status = 200);
// JSON that is written out already.
Response reply_written(std::string json, int status = 200);
// {"problem": {"fault", "what", "where", "fix"}}
Response reply(const Problem& problem);
Response reply(int status, const Problem& problem);
Json to_json(const Problem& problem);

// The same bytes until `tag` changes: answered by 304 when the asker has them. `keep` is the
// value of Cache-Control.
Response reply_bytes(const Request& request,
                     std::string bytes,
                     std::string type,
                     const std::string& tag,
                     std::string keep);

// What every response carries, so that a browser lets nothing in or out.
void add_security(Response& response);

}  // namespace backmark::web
