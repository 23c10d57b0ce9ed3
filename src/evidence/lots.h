// Lots: pieces that came together and are taken out together.
#pragma once

#include <vector>

#include "evidence/style_table.h"

namespace backmark::evidence {

// Whole lots in an order by chance (always the same) until `most` of the members are reached,
// the last lot cut; all, as given, if they are fewer. Ascending.
std::vector<std::size_t> drawn_lots(const StyleTable& table,
                                    std::vector<std::size_t> members,
                                    std::size_t most);

}  // namespace backmark::evidence
