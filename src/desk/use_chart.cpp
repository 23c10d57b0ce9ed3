#include "desk/use_chart.h"

#include "desk/weighed.h"

namespace backmark::desk {

namespace {

UseChart chart_of(const std::shared_ptr<const model::Show>& show, Year today) {
  const evidence::Gathered gathered = evidence::gather(*show, today);
  UseChart chart{show, gathered.years, {}, {}, {}};
  for (const evidence::StylePiece& piece : gathered.style.pieces) {
    chart.known.push_back(piece.stated);
  }
  chart.groups = evidence::uses(*show, gathered);
  chart.makers = evidence::maker_uses(*show, gathered);
  return chart;
}

}  // namespace

Result<std::shared_ptr<const UseChart>> use_chart(OpenShow& open, const Surroundings& around) {
  const Year today = usual_settings(around).today;
  return weighed<UseChart>(
      open, "use chart", [&]() -> Result<UseChart> { return chart_of(open.kept, today); },
      Wants::last_made);
}

}  // namespace backmark::desk
