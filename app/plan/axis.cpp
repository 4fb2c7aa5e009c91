// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See axis.h.
#include "app/plan/axis.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "app/quantity/units.h"

namespace tinwright {
namespace {

constexpr std::array kDegrees{1.0, 2.0, 5.0, 10.0, 20.0, 25.0, 50.0, 100.0, 200.0, 500.0};
constexpr double kMinute = 60.0;  // [s]
constexpr std::array kMinutes{1.0,   2.0,   5.0,   10.0,  15.0,  20.0,   30.0,   60.0,
                              120.0, 180.0, 240.0, 360.0, 720.0, 1440.0, 2880.0, 10080.0};

constexpr double kSame = 1e-6;  // [degree] what the way through kelvin may add to a round figure

const Unit& degree(UnitChoice units) {
  return *find_unit(Dimension::kTemperature, units == UnitChoice::kMetric ? "C" : "F");
}

/// The smallest of `steps` that fits by `marks`, how many marks a step makes; the largest when none does.
template <class Steps, class Count>
double step_for(const Steps& steps, int most, const Count& marks) {
  for (const double step : steps) {
    if (marks(step) <= static_cast<double>(most)) return step;
  }
  return steps.back();
}

}  // namespace

std::string degree_name(UnitChoice units) {
  return units == UnitChoice::kMetric ? "°C" : "°F";
}

std::vector<Mark> temperature_marks(double low, double high, UnitChoice units, int most) {
  const Unit& unit = degree(units);
  const double from = from_si(low, unit) + kSame, to = from_si(high, unit) - kSame;
  const double step =
      step_for(kDegrees, most, [&](double by) { return std::ceil(to / by) - std::floor(from / by) + 1.0; });
  std::vector<Mark> marks;
  for (double figure = step * std::floor(from / step); marks.size() < 2 || figure < to + step; figure += step) {
    marks.push_back({to_si(figure, unit), format_number(figure, 0)});
  }
  return marks;
}

std::vector<Mark> temperature_marks_within(double low, double high, UnitChoice units, int most) {
  const Unit& unit = degree(units);
  const double from = from_si(low, unit) - kSame, to = from_si(high, unit) + kSame;
  const double step =
      step_for(kDegrees, most, [&](double by) { return std::floor(to / by) - std::ceil(from / by) + 1.0; });
  std::vector<Mark> marks;
  for (double figure = step * std::ceil(from / step); figure <= to; figure += step) {
    marks.push_back({to_si(figure, unit), format_number(figure, 0) + " " + degree_name(units)});
  }
  return marks;
}

std::vector<Mark> time_marks(double end, int most) {
  const double step =
      kMinute * step_for(kMinutes, most, [&](double by) { return std::floor(end / (by * kMinute)) + 1.0; });
  std::vector<Mark> marks{{0.0, "0"}};
  for (double time = step; time <= end; time += step) marks.push_back({time, format_duration(time)});
  return marks;
}

}  // namespace tinwright
