#include "web/reply.h"

#include "base/json.h"
#include "base/text.h"

namespace backmark::web {

int status_of(Fault fault) {
  switch (fault) {
    case Fault::bad_input:
      return 400;
    case Fault::not_found:
      return 404;
    case Fault::conflict:
      return 409;
    case Fault::refused:
      return 403;
    case Fault::io:
      break;
  }
  return 500;
}

std::string_view name_of(Fault fault) {
  switch (fault) {
    case Fault::bad_input:
      return "bad_input";
    case Fault::not_found:
      return "not_found";
    case Fault::conflict:
      return "conflict";
    case Fault::refused:
      return "refused";
    case Fault::io:
      break;
  }
  return "io";
}

Response reply(const Json& json, int status) {
  return reply_written(json.dump(-1, ' ', false, Json::error_handler_t::replace), status);
}

Response reply_written(std::string json, int status) {
  return {status,
          "application/json; charset=utf-8",
          std::move(json),
          {{"Cache-Control", "no-store"}}};
}

Json to_json(const Problem& problem) {
  return {{"fault", name_of(problem.fault)},
          {"what", problem.what},
          {"where", problem.where},
          {"fix", problem.fix}};
}

Response reply(int status, const Problem& problem) {
  return reply(Json{{"problem", to_json(problem)}}, status);
}

Response reply(const Problem& problem) {
  return reply(status_of(problem.fault), problem);
}

Response reply_bytes(const Request& request,
                     std::string bytes,
                     std::string type,
                     const std::string& tag,
                     std::string keep) {
  const std::string quoted = "\"" + tag + "\"";
  Response response{200, std::move(type), std::move(bytes), {}};
  if (contains(request.header("if-none-match"), quoted)) {
    response = {304, "", "", {}};
  }
  response.headers = {{"ETag", quoted}, {"Cache-Control", std::move(keep)}};
  return response;
}

void add_security(Response& response) {
  response.headers.insert(
      response.headers.end(),
      {{"Content-Security-Policy",
        "default-src 'self'; img-src 'self' blob: data:; worker-src 'self' blob:; "
        "object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'self'"},
       {"X-Content-Type-Options", "nosniff"},
       {"X-Frame-Options", "SAMEORIGIN"},
       // No address leaves this place; without it a form here would come from nowhere.
       {"Referrer-Policy", "same-origin"},
       {"Cross-Origin-Opener-Policy", "same-origin"},
       {"Cross-Origin-Resource-Policy", "same-origin"},
       {"Permissions-Policy", "geolocation=(), microphone=(), payment=(), usb=()"}});
}

}  // namespace backmark::web
