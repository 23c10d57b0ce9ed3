#include "press/book/kinds.h"

namespace backmark::press::book {

const std::vector<Kind>& kinds() {
  static const std::vector<Kind> all{
      {"title", lay_title},
      {"contents", lay_contents},
      {"how to read", lay_how_to_read},
      {"essays", lay_essays},
      {"entries", lay_entries},
      {"chronology", lay_chronology},
      {"makers", lay_makers},
      {"fittings", lay_fittings},
      {"glossary", lay_glossary},
      {"concordance", lay_concordance},
      {"note on method", lay_method},
      {"works cited", lay_bibliography},
      {"index", lay_index},
      {"credits", lay_credits},
      {"colophon", lay_colophon},
  };
  return all;
}

}  // namespace backmark::press::book
