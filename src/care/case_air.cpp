#include <cmath>

#include "care/climate_plan.h"
#include "care/leakage.h"
#include "care/vapour.h"

namespace backmark::care {

namespace {

constexpr double mm3_in_m3 = 1e9;
const double ln_2 = std::log(2.0);

// The end of the range that the room draws the case towards.
double end_towards(const CaseClimate& climate, double held, double room) {
  return room > held ? climate.rh.high : climate.rh.low;
}

void add_vapour(CaseAir& air, const model::Case& in, const Room& room) {
  if (!room.celsius) {
    air.ask.push_back("the temperature of the room");
  }
  if (!in.rh_percent) {
    air.ask.push_back("the humidity that is to be held");
  }
  if (!room.celsius || !in.rh_percent) {
    return;
  }
  const Celsius now{*room.celsius};
  const RelativeHumidity held{*in.rh_percent};
  air.absolute_g_m3 = absolute_humidity(now, held);
  air.dew_point_c = dew_point(now, held).value;
  if (in.warmer_c > 0) {
    air.warm_rh = humidity_at(now, held, {*room.celsius + in.warmer_c}).value;
  }
}

// Days until the air goes from `held` to `edge` on its way to `room`; none: it never gets
// there.
std::optional<double> days_to(double held, double edge, double room, double tau_days) {
  const double share = (edge - room) / (held - room);
  if (share <= 0 || share >= 1) {
    return share >= 1 ? std::optional(0.0) : std::nullopt;
  }
  return -tau_days * std::log(share);
}

double saturated_of(const Room& room) {
  return room.celsius ? absolute_humidity({*room.celsius}, {100}) : saturated_at_20_c;
}

void add_buffer(CaseAir& air, const model::Case& in, const Room& room, double days) {
  const Outside outside{saturated_of(room), std::abs(*room.rh_percent - *in.rh_percent) / 100,
                        air.volume_m3, *in.leak_per_day};
  if (!in.reservoir_g_kg) {
    air.ask.push_back(
        "the moisture reservoir of the buffer at the humidity that is held: its "
        "supplier's figure, g per kg and 1 %");
    return;
  }
  if (*air.drift_percent > 0) {
    air.buffer_kg_for_run =
        buffer_mass_kg(outside, days, *in.reservoir_g_kg, *air.drift_percent);
    if (in.buffer_kg && *in.buffer_kg > 0) {
      air.buffer_change_days =
          buffer_days(outside, *in.buffer_kg, *in.reservoir_g_kg, *air.drift_percent);
    }
  }
}

void add_leakage(CaseAir& air, const CaseClimate& climate, const Room& room, double days) {
  const model::Case& in = *climate.contents->in;
  if (!in.leak_per_day || *in.leak_per_day <= 0) {
    air.ask.push_back("the leakage of the case: have it measured with a tracer gas");
    return;
  }
  air.empty_half_days = empty_half_time_days(*in.leak_per_day);
  double tau = 1 / *in.leak_per_day;
  if (in.buffer_kg && *in.buffer_kg > 0 && in.reservoir_g_kg) {
    tau =
        buffered_tau_days({*in.reservoir_g_kg, *in.buffer_kg / air.volume_m3, *in.leak_per_day},
                          saturated_of(room));
    air.buffered_half_days = tau * ln_2;
  }
  if (!room.rh_percent) {
    air.ask.push_back("the humidity of the room");
  }
  if (!room.rh_percent || !in.rh_percent || climate.rh.conflict() ||
      *room.rh_percent == *in.rh_percent) {
    return;
  }
  const double edge = end_towards(climate, *in.rh_percent, *room.rh_percent);
  air.drift_percent =
      std::max(0.0, (edge - *in.rh_percent) * (*room.rh_percent > *in.rh_percent ? 1 : -1));
  air.days_within = days_to(*in.rh_percent, edge, *room.rh_percent, tau);
  if (air.days_within || in.buffer_kg) {
    add_buffer(air, in, room, days);
  }
}

}  // namespace

CaseAir air_of(const CaseClimate& climate, const Room& room, double days) {
  const model::Case& in = *climate.contents->in;
  CaseAir air;
  air.volume_m3 = in.width_mm * in.height_mm * in.depth_mm / mm3_in_m3;
  add_vapour(air, in, room);
  add_leakage(air, climate, room, days);
  return air;
}

}  // namespace backmark::care
