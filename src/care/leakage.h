// How fast a case takes on the air of the room, and what a buffer does against it. Humidities
// in percent, N in air changes a day, reservoirs in grams of water per kilogram of buffer and 1
// % relative humidity: they are the supplier's figures at the set point and never assumed here.
#pragma once

#include "base/amount.h"

namespace backmark::care {

// Saturated vapour density used by practice figures at 20 degrees, g/m3.
constexpr double saturated_at_20_c = 17.3;

// Days until half the difference is gone: ln 2 / N. Empty case (Breum and Perera 1984, Building
// and Environment 19, on the decay of tracer gas).
double empty_half_time_days(double air_changes);

// N from a tracer above background that fell from `before` to `after` in so many days.
double air_changes_of(double before, double after, double days);

// Humidity after so many days in a case of time constant tau = 1/N (empty) or buffered:
// room + (start - room) exp(-days / tau). Temperature constant.
RelativeHumidity humidity_after(RelativeHumidity start,
                                RelativeHumidity room,
                                double tau_days,
                                double days);

// A case with a buffer. tau = (1/N)(1 + M B / (0.01 c)), c the saturated vapour density, g/m3.
struct Buffer {
  double reservoir_g_kg = 0;  // M: g water per kg and 1 %
  double loading_kg_m3 = 0;   // B
  double air_changes = 0;     // N
};
double buffered_tau_days(const Buffer& buffer, double saturated_g_m3);

// Half-time 4 M B / N days at 20 degrees, times c(20)/c(T) elsewhere (after Thomson 1977,
// Studies in Conservation 22; from memory, and it follows from the balance above).
double buffered_half_time_days(const Buffer& buffer, Celsius air);

// What a buffer must hold out against.
struct Outside {
  double saturated_g_m3 = saturated_at_20_c;
  double difference = 0;  // of humidity between room and case, as a fraction
  double volume_m3 = 0;
  double air_changes = 0;
};

// Kilograms for so many days with a drift of so many percent: Q = c D V N t / (M F). On the
// safe side, since the difference shrinks as the case drifts (form after Weintraub 2002 and
// Canadian Conservation Institute Technical Bulletin 33, 2018; from memory).
double buffer_mass_kg(const Outside& outside,
                      double days,
                      double reservoir_g_kg,
                      double drift_percent);

// Days until a buffer must be changed: the same, solved for t; infinite without difference.
double buffer_days(const Outside& outside,
                   double mass_kg,
                   double reservoir_g_kg,
                   double drift_percent);

// Years until silver has had the lowest dose of hydrogen sulphide that was seen to harm it:
// 2.5 ppb years (Ankersmit, Tennent and Watts 2005, Atmospheric Environment 39). A guide: real
// tarnish is not explained by this gas alone.
constexpr double silver_dose_ppb_years = 2.5;
double years_to_tarnish(double sulphide_ppt, double dose_ppb_years = silver_dose_ppb_years);

}  // namespace backmark::care
