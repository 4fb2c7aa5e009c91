// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Digits are made from a rounded 64-bit whole number, so no locale and no stream takes part.
#include "app/quantity/print.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>

#include "app/quantity/kitchen_measure.h"
#include "app/quantity/say.h"
#include "app/quantity/units.h"
#include "geometry/checks.h"

namespace tinwright {
namespace {

constexpr int kMostDecimals = 9;
constexpr std::array<std::int64_t, 10> kTens{1,       10,        100,        1'000,       10'000,
                                             100'000, 1'000'000, 10'000'000, 100'000'000, 1'000'000'000};
constexpr double kMostSteps = 9e18;  // below the largest int64

/// value in steps of 10^-decimals. False in `printable` only when the caller broke the precondition.
struct Steps {
  std::int64_t count = 0;
  bool printable = false;
};

Steps count_steps(double value, int decimals) {
  const double scaled = value * static_cast<double>(kTens[static_cast<std::size_t>(decimals)]);
  const bool printable = std::isfinite(scaled) && std::fabs(scaled) < kMostSteps;
  GEOMETRY_ASSERT(printable);
  if (!printable) return {};
  return {std::llround(scaled), true};
}

std::string fixed(double value, int wanted_decimals) {
  const int decimals = std::clamp(wanted_decimals, 0, kMostDecimals);
  GEOMETRY_ASSERT(decimals == wanted_decimals);
  const Steps steps = count_steps(value, decimals);
  if (!steps.printable) return std::string(kUnprintable);
  const std::int64_t size = steps.count < 0 ? -steps.count : steps.count;
  const std::int64_t one = kTens[static_cast<std::size_t>(decimals)];
  std::string text = (steps.count < 0 ? "-" : "") + std::to_string(size / one);
  if (decimals == 0) return text;
  const std::string behind = std::to_string(size % one);
  return text + "." + std::string(static_cast<std::size_t>(decimals) - behind.size(), '0') + behind;
}

/// With the decimal sign of the cook's language.
std::string in_own_sign(std::string number) {
  std::replace(number.begin(), number.end(), '.', decimal_sign());
  return number;
}

/// Rounds first, then asks which side of a bound the value is on, so that 999.7 ml is "1 l" and not "1000 ml".
bool stays_below(double value, int decimals, double bound) {
  const double one = static_cast<double>(kTens[static_cast<std::size_t>(decimals)]);
  return std::fabs(std::round(value * one)) < bound * one;
}

std::string with_unit(double value, int decimals, std::string_view unit) {
  return format_number(value, decimals) + " " + std::string(unit);
}

double in_unit(double si, Dimension dimension, std::string_view unit) {
  return from_si(si, *find_unit(dimension, unit));
}

std::string bracketed(const std::string& first, const std::string& second) {
  return first + " (" + second + ")";
}

/// The chosen household's text first, the other in brackets.
template <class Format>
std::string both(double value, UnitChoice choice, Format format) {
  const UnitChoice other = choice == UnitChoice::kMetric ? UnitChoice::kUs : UnitChoice::kMetric;
  return bracketed(format(value, choice), format(value, other));
}

/// A number in a small unit up to 1000, then in the one a thousand times larger. Returns text and value in the small
/// one.
struct Metric {
  std::string text;
  double value = 0;
};

Metric metric_pair(double small, std::string_view small_unit, std::string_view large_unit) {
  int decimals = stays_below(small, 1, 10) ? 1 : 0;
  double step = 1;
  std::string_view unit = small_unit;
  if (!stays_below(small, 0, 1000)) {
    step = 1000;
    unit = large_unit;
    decimals = stays_below(small / step, 2, 10) ? 2 : 1;
  }
  const double tens = static_cast<double>(kTens[static_cast<std::size_t>(decimals)]);
  return {with_unit(small / step, decimals, unit), std::round(small / step * tens) / tens * step};
}

Metric metric_volume(double cubic_metres) {
  return metric_pair(in_unit(cubic_metres, Dimension::kVolume, "ml"), "ml", "l");
}

/// Two counts with their units; the second is left out when it is nothing.
std::string two_counts(std::int64_t large, std::string_view large_unit, std::int64_t small,
                       std::string_view small_unit) {
  const std::string first = large > 0 ? std::to_string(large) + " " + std::string(large_unit) : std::string();
  if (small == 0 && large > 0) return first;
  return first + (first.empty() ? "" : " ") + std::to_string(small) + " " + std::string(small_unit);
}

}  // namespace

std::string format_number(double value, int max_decimals) {
  return in_own_sign(plain_number(value, max_decimals));
}

std::string plain_number(double value, int max_decimals) {
  std::string text = fixed(value, max_decimals);
  if (text.find('.') != std::string::npos) {
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
  }
  return text;
}

std::string format_mm(double metres) {
  const double millimetres = in_unit(metres, Dimension::kLength, "mm");
  return with_unit(millimetres, stays_below(millimetres, 1, 10) ? 1 : 0, "mm");
}

std::string format_cm(double metres) {
  const double centimetres = in_unit(metres, Dimension::kLength, "cm");
  return with_unit(centimetres, stays_below(centimetres, 1, 100) ? 1 : 0, "cm");
}

std::string format_length(double metres, UnitChoice choice) {
  if (choice == UnitChoice::kUs) {
    const bool is_negative = metres < -to_si(1.0 / 32, *find_unit(Dimension::kLength, "in"));
    return is_negative ? "-" + inch_measure(-metres).text : inch_measure(metres).text;
  }
  // Thicknesses in millimetres, pans in centimetres: 2 cm lies between the two.
  return stays_below(in_unit(metres, Dimension::kLength, "mm"), 0, 20) ? format_mm(metres) : format_cm(metres);
}

std::string format_both_lengths(double metres, UnitChoice choice) {
  return both(metres, choice, format_length);
}

std::string format_volume(double cubic_metres, UnitChoice choice) {
  return choice == UnitChoice::kUs ? kitchen_measure(cubic_metres).text : metric_volume(cubic_metres).text;
}

std::string format_both_volumes(double cubic_metres, UnitChoice choice) {
  return both(cubic_metres, choice, format_volume);
}

double volume_rounding_error(double cubic_metres, UnitChoice choice) {
  if (choice == UnitChoice::kUs) return kitchen_measure(cubic_metres).value - cubic_metres;
  return to_si(metric_volume(cubic_metres).value, *find_unit(Dimension::kVolume, "ml")) - cubic_metres;
}

std::string format_mass(double kilograms, UnitChoice choice) {
  if (choice == UnitChoice::kUs) return ounce_measure(kilograms).text;
  return metric_pair(in_unit(kilograms, Dimension::kMass, "g"), "g", "kg").text;
}

std::string format_grams(double kilograms) {
  const double grams = in_unit(kilograms, Dimension::kMass, "g");
  return with_unit(grams, stays_below(grams, 1, 10) ? 1 : 0, "g");
}

std::string format_both_masses(double kilograms, UnitChoice choice) {
  return both(kilograms, choice, format_mass);
}

std::string format_density(double density) {
  return in_own_sign(fixed(density / 1000, 2)) + " g/ml";
}

std::string format_temperature(double kelvin, UnitChoice choice) {
  return both(kelvin, choice, [](double value, UnitChoice scale) {
    const bool is_celsius = scale == UnitChoice::kMetric;
    return with_unit(in_unit(value, Dimension::kTemperature, is_celsius ? "C" : "F"), 0, is_celsius ? "°C" : "°F");
  });
}

std::string format_duration(double seconds) {
  const Steps whole = count_steps(seconds, 0);
  GEOMETRY_ASSERT(whole.count >= 0);
  if (!whole.printable || whole.count < 0) return std::string(kUnprintable);
  if (whole.count < 600) return two_counts(whole.count / 60, "min", whole.count % 60, "s");
  const std::int64_t minutes = std::llround(seconds / 60);
  if (minutes < 48 * 60) return two_counts(minutes / 60, "h", minutes % 60, "min");
  const std::int64_t hours = std::llround(seconds / 3600);
  return two_counts(hours / 24, "d", hours % 24, "h");
}

std::string format_percent(double share) {
  const double percent = share * 100;
  const bool is_fine = stays_below(percent, 1, 1) || (percent > 99 && percent < 100);
  return with_unit(percent, is_fine ? 1 : 0, "%");
}

std::string format_factor(double factor) {
  const int decimals = stays_below(factor, 3, 0.1) ? 3 : stays_below(factor, 2, 10) ? 2 : 1;
  return "× " + format_number(factor, decimals);
}

}  // namespace tinwright
