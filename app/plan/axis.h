// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Where the marks of an axis stand: at round figures of the cook's own unit, not more of them than there is room for.
#pragma once

#include <string>
#include <vector>

#include "app/quantity/print.h"

namespace tinwright {

struct Mark {
  double at = 0.0;  // [K] or [s]
  std::string text;
};

/// Marks at round degrees that enclose `low` to `high` [K]: the first is not above, the last not below. At least two.
std::vector<Mark> temperature_marks(double low, double high, UnitChoice units, int most);

/// The round degrees within `low` to `high` [K]; the text has its unit.
std::vector<Mark> temperature_marks_within(double low, double high, UnitChoice units, int most);

/// "°C" or "°F".
std::string degree_name(UnitChoice units);

/// Round minutes or hours from 0 up to `end` [s].
std::vector<Mark> time_marks(double end, int most);

}  // namespace tinwright
