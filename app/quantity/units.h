// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Every unit a quantity may carry, in one table: its spellings, its exact factor to SI, and where the factor
// is laid down. Reading and printing both go by this table.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace tinwright {

/// Kinds of quantity, with the SI unit they are held in.
enum class Dimension {
  kLength,        // m
  kVolume,        // m³
  kMass,          // kg
  kTemperature,   // K
  kDuration,      // s
  kAngle,         // rad
  kDensity,       // kg/m³
  kRatio,         // 1
  kConductivity,  // W/(m K)
  kHeatCapacity,  // J/(kg K), of each kilogram
  kTransfer,      // W/(m² K), heat transfer coefficient
};

/// One unit. SI value = (number + shift) * numerator / denominator. Numerator and denominator are whole numbers that
/// a double holds exactly (π aside), so a metric quantity costs a single rounding.
struct Unit {
  Dimension dimension;
  std::string_view name;       // as written by us
  std::string_view spellings;  // separated by spaces; '_' stands for a gap; a leading '=' means this letter case only;
                               // brackets below a '/' are left out
  double numerator;
  double denominator;
  double shift;             // [this unit], 0 for all but temperatures
  std::string_view source;  // where the factor is laid down
};

/// How a cook is told about a dimension.
struct DimensionWords {
  std::string_view kind;     // "a length"
  std::string_view units;    // "mm, cm, in or ft"
  std::string_view example;  // "24 cm or 9 1/2 in"
  std::string_view parts;    // "1 ft 2 in"; empty where a quantity has one part only
};

/// The whole table, grouped by dimension. kDensity has no rows: it is a mass unit over a volume unit.
std::span<const Unit> all_units();

/// The unit of that dimension spelled so (letter case ignored, but T is a tablespoon and t a teaspoon); null if none.
const Unit* find_unit(Dimension dimension, std::string_view spelling);

/// The same over all dimensions; null if nobody knows the spelling.
const Unit* find_unit(std::string_view spelling);

/// number in `unit` as SI.
double to_si(double number, const Unit& unit);

/// SI value as a number in `unit`.
double from_si(double si, const Unit& unit);

/// Words for messages.
const DimensionWords& words_for(Dimension dimension);

/// Up to three units of the dimension spelled most like `spelling`, as "cm, mm or m"; the usual ones if none is near.
std::string nearest_units(Dimension dimension, std::string_view spelling);

}  // namespace tinwright
