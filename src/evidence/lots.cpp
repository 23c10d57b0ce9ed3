#include "evidence/lots.h"

#include <algorithm>
#include <map>

#include "base/random.h"

namespace backmark::evidence {

std::vector<std::size_t> drawn_lots(const StyleTable& table,
                                    std::vector<std::size_t> members,
                                    std::size_t most) {
  if (members.size() <= most) {
    return members;
  }
  std::map<int, std::vector<std::size_t>> lots;
  for (const std::size_t member : members) {
    lots[table.pieces[member].lot].push_back(member);
  }
  std::vector<int> order;
  for (const auto& [lot, held] : lots) {
    order.push_back(lot);
  }
  Random random(1);
  random.shuffle(order);
  std::vector<std::size_t> drawn;
  for (const int lot : order) {
    const auto& held = lots[lot];
    const std::size_t room = most - drawn.size();
    drawn.insert(drawn.end(), held.begin(),
                 held.begin() + static_cast<std::ptrdiff_t>(std::min(room, held.size())));
    if (drawn.size() == most) {
      break;
    }
  }
  std::sort(drawn.begin(), drawn.end());
  return drawn;
}

}  // namespace backmark::evidence
