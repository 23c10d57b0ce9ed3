#include "web/pair_page.h"

#include "base/markup.h"
#include "base/text.h"

namespace backmark::web {

namespace {

// Also for a value in quotes.
std::string escaped(std::string text) {
  return replace_all(escaped_markup(std::move(text)), "\"", "&quot;");
}

Response paper(const std::string& title, const std::string& body, int status) {
  return {status,
          "text/html; charset=utf-8",
          fmt::format("<!doctype html><html lang=\"en\"><meta charset=\"utf-8\">"
                      "<meta name=\"viewport\" content=\"width=device-width,initial-scale=1\">"
                      "<title>{0} - Backmark</title>"
                      "<link rel=\"stylesheet\" href=\"/assets/app.css\">"
                      "<main class=\"pairing slip\"><h1>{0}</h1>{1}</main></html>",
                      title, body),
          {{"Cache-Control", "no-store"}}};
}

// A sentence: Problems begin small.
std::string sentence(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
  return escaped(std::move(text)) + ".";
}

std::string in_words(const Problem& problem) {
  return fmt::format("<p role=\"alert\" class=\"torn\">{}</p><p>{}</p>", sentence(problem.what),
                     sentence(problem.fix));
}

}  // namespace

Response pair_form(const std::string& code, const std::optional<Problem>& wrong, int status) {
  return paper(
      "Let this device in",
      (wrong ? in_words(*wrong) : std::string()) +
          fmt::format("<form method=\"post\" action=\"/api/pair\">"
                      "<input type=\"hidden\" name=\"code\" value=\"{}\">"
                      "<p><label>Who is recording? <input name=\"who\" maxlength=\"60\" "
                      "autocomplete=\"name\" required autofocus></label></p>"
                      "<p><label>Passphrase <input name=\"passphrase\" type=\"password\" "
                      "required></label></p><p><button class=\"btn main\">Let in</button></p>"
                      "</form>",
                      escaped(code)),
      status);
}

Response pair_refusal(const Problem& problem, int status) {
  return paper("Not let in", in_words(problem), status);
}

}  // namespace backmark::web
