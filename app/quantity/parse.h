// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The one reader of quantities: a number (or several, larger unit first) with its unit, as text from a file, a
// recipe or a field on the page, to an SI value. It follows no locale and never throws.
#pragma once

#include <string_view>

#include "app/quantity/units.h"
#include "geometry/problem.h"

namespace tinwright {

/// The SI value [m, m³, kg, K, s, rad, kg/m³, 1, W/(m K), J/(kg K), W/(m² K)] of a quantity such as "9 1/2 in",
/// "2½ cups", "1 lb 4 oz", "350 °F", "1 h 20 min", "1.2 g/ml", "75 %", "0.35 W/mK" or "20 W/(m²·K)". Always finite and
/// not negative. Zero is read: whether it makes sense is for the caller to say.
///  text       at most kLongestQuantity characters of UTF-8
///  dimension  what is wanted; only a ratio may stand without a unit, only a temperature below zero
/// Accuracy: that of read_number and at most four more roundings for each part.
/// Failure: a Problem whose place is "column N" (1-based, in characters) or empty for the whole text, and whose code is
///  kNotANumber   no readable number, or something besides the quantity
///  kMissingUnit  a bare number
///  kWrongUnit    an unknown unit, one of another dimension, or parts not in order of size
///  kOutOfRange   negative, below absolute zero, or larger than kLargestNumber
///  kUnreadable   not UTF-8
Result<double> parse_quantity(std::string_view text, Dimension dimension);

}  // namespace tinwright
