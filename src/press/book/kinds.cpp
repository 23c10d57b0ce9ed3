#include "press/book/kinds.h"

namespace backmark::press::book {

const std::vector<Kind>& kinds() {
  static const std::vector<Kind> all{
      {"title", lay_title},
      {"contents", lay_contents},
      {"essays", lay_essays},
      {"entries", lay_entries},
      {"chronology", lay_chronology},
      {"glossary", lay_glossary},
      {"concordance", lay_concordance},
      {"works cited", lay_bibliography},
      {"index", lay_index},
      {"colophon", lay_colophon},
  };
  return all;
}

}  // namespace backmark::press::book
