// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Quantities rounded to what a US kitchen drawer and ruler hold: measuring cups in quarters and thirds, spoons,
// sixteenths of an inch, fractions of an ounce. Each answer carries what the rounding did.
#pragma once

#include <cstdint>
#include <string>

namespace tinwright {

/// Text of a rounded quantity and what it stands for, in SI.
struct RoundedText {
  std::string text;
  double value = 0;  // the quantity the text names [the SI unit of the argument]
};

/// A length within this of a sixteenth of an inch is that sixteenth to a baker: a steel rule cannot show the
/// difference.
inline constexpr double kExactLength = 0.0002;  // [m]

/// metres [m, 0 or more] to the nearest sixteenth of an inch: "9½ in", "5/16 in"; something below 1/32 in is
/// "under 1/16 in" with value 0. Error at most 1/32 in.
RoundedText inch_measure(double metres);

/// True where inch_measure's text is within kExactLength of the length, so it needs no "about".
bool is_whole_sixteenths(double metres);

/// cubic_metres [m³, 0 or more] in US cups and spoons, one measure or two ("¼ cup + 1 tbsp"). One measure is taken
/// where it comes within 2 %. Below 1 tbsp the step is ¼ tsp (and ⅛ tsp exists); below ¼ cup tablespoons plus quarter
/// teaspoons; from there cups in quarters and thirds plus 1 to 3½ tbsp or ½ to 2½ tsp. Error: at most the larger of
/// ⅛ tsp and 2 % below ¼ cup, at most 3.5 % from there. Less than 1/16 tsp is "under ⅛ tsp" with value 0.
RoundedText kitchen_measure(double cubic_metres);

/// kilograms [kg, 0 or more] in ounces, from 1 lb in pounds and ounces. Steps: 1/8 oz below 1 oz, 1/4 oz below
/// 1 lb, 1/2 oz from there. Less than half the smallest step is "under ⅛ oz" with value 0.
RoundedText ounce_measure(double kilograms);

/// A number of 1/denominator parts as cooks write it: "9½", "¼", "1 5/16", "2⅔", "3". denominator > 0, parts >= 0.
std::string format_parts(std::int64_t parts, std::int64_t denominator);

}  // namespace tinwright
