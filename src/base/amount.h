// Unit types: a number that cannot be mistaken for another kind of number.
#pragma once

#include <compare>
#include <cstdint>
#include <string>

namespace backmark {

template <class Tag>
struct Amount {
  double value = 0;

  friend auto operator<=>(Amount, Amount) = default;
  friend Amount operator+(Amount a, Amount b) { return {a.value + b.value}; }
  friend Amount operator-(Amount a, Amount b) { return {a.value - b.value}; }
  friend Amount operator*(Amount a, double factor) { return {a.value * factor}; }
  friend Amount operator*(double factor, Amount a) { return {a.value * factor}; }
  friend double operator/(Amount a, Amount b) { return a.value / b.value; }
};

using Millimetres = Amount<struct MillimetresTag>;
using Grams = Amount<struct GramsTag>;
using Points = Amount<struct PointsTag>;  // of paper: 1/72 inch
using Lux = Amount<struct LuxTag>;
using LuxHours = Amount<struct LuxHoursTag>;
using Celsius = Amount<struct CelsiusTag>;
using RelativeHumidity = Amount<struct RelativeHumidityTag>;  // percent

inline Millimetres operator""_mm(long double v) {
  return {static_cast<double>(v)};
}
inline Millimetres operator""_mm(unsigned long long v) {
  return {static_cast<double>(v)};
}
inline Points operator""_pt(long double v) {
  return {static_cast<double>(v)};
}
inline Points operator""_pt(unsigned long long v) {
  return {static_cast<double>(v)};
}

// 1 inch = 25.4 mm = 72 pt.
inline Points to_points(Millimetres length) {
  return {length.value * 72.0 / 25.4};
}
inline Millimetres to_millimetres(Points length) {
  return {length.value * 25.4 / 72.0};
}

// Money in minor units (cents): never a double.
struct Money {
  std::int64_t minor = 0;
  std::string currency;  // ISO 4217, "EUR"

  friend bool operator==(const Money&, const Money&) = default;
};

}  // namespace backmark
