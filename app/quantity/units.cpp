// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Factors are exact by definition, as numerator over denominator in SI. Each row names where its figure is laid down;
// the volumes and weights were read in a public table worked from NIST's, the rest is from memory. Metric cup and
// spoons are national kitchen practice, which no measure law fixes.
#include "app/quantity/units.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <numbers>
#include <vector>

namespace tinwright {
namespace {

constexpr std::string_view kSi = "SI Brochure, 9th edition";
constexpr std::string_view kSp811 = "NIST SP 811 (2008), appendix B";
constexpr std::string_view kHandbook44 = "NIST Handbook 44, appendix C";
constexpr std::string_view kUkAct = "UK Weights and Measures Act 1985, schedule 1";
constexpr std::string_view kPractice = "national kitchen practice (Australia, Canada, New Zealand)";

using enum Dimension;

constexpr std::array kUnits{
    Unit{kLength, "m", "m metre metres meter meters", 1, 1, 0, kSi},
    Unit{kLength, "dm", "dm decimetre decimetres decimeter decimeters", 1, 10, 0, kSi},
    Unit{kLength, "cm", "cm cms centimetre centimetres centimeter centimeters", 1, 100, 0, kSi},
    Unit{kLength, "mm", "mm mms millimetre millimetres millimeter millimeters", 1, 1000, 0, kSi},
    Unit{kLength, "ft", "ft foot feet '", 3048, 10000, 0, kSp811},        // 12 in
    Unit{kLength, "in", "in ins inch inches \"", 254, 10000, 0, kSp811},  // 25.4 mm

    Unit{kVolume, "m3", "m3", 1, 1, 0, kSi},
    Unit{kVolume, "dm3", "dm3", 1, 1e3, 0, kSi},
    Unit{kVolume, "cm3", "cm3 cc ccm", 1, 1e6, 0, kSi},
    Unit{kVolume, "in3", "in3", 16387064, 1e12, 0, kSp811},  // 2.54³ ml
    Unit{kVolume, "l", "l litre litres liter liters", 1, 1e3, 0, kSi},
    Unit{kVolume, "dl", "dl decilitre decilitres deciliter deciliters", 1, 1e4, 0, kSi},
    Unit{kVolume, "cl", "cl centilitre centilitres centiliter centiliters", 1, 1e5, 0, kSi},
    Unit{kVolume, "ml", "ml mls millilitre millilitres milliliter milliliters", 1, 1e6, 0, kSi},
    Unit{kVolume, "gal", "gal gals gallon gallons", 3785411784, 1e12, 0, kHandbook44},                       // 231 in³
    Unit{kVolume, "qt", "qt qts quart quarts", 946352946, 1e12, 0, kHandbook44},                             // 1/4 gal
    Unit{kVolume, "pt", "pt pts pint pints", 473176473, 1e12, 0, kHandbook44},                               // 1/8 gal
    Unit{kVolume, "cup", "cup cups", 2365882365, 1e13, 0, kHandbook44},                                      // 1/16 gal
    Unit{kVolume, "fl_oz", "fl_oz floz fluid_ounce fluid_ounces", 295735295625, 1e16, 0, kHandbook44},       // 1/8 cup
    Unit{kVolume, "tbsp", "tbsp tbsps tbs =T tablespoon tablespoons", 1478676478125, 1e17, 0, kHandbook44},  // 1/16 cup
    Unit{kVolume, "tsp", "tsp tsps =t teaspoon teaspoons", 492892159375, 1e17, 0, kHandbook44},              // 1/3 tbsp
    Unit{kVolume, "metric_cup", "metric_cup metric_cups", 250, 1e6, 0, kPractice},
    Unit{kVolume, "metric_tbsp", "metric_tbsp metric_tablespoon metric_tablespoons", 15, 1e6, 0, kPractice},
    Unit{kVolume, "metric_tsp", "metric_tsp metric_teaspoon metric_teaspoons", 5, 1e6, 0, kPractice},
    Unit{kVolume, "imperial_pt", "imperial_pt imperial_pint imperial_pints", 56826125, 1e11, 0, kUkAct},
    Unit{kVolume, "imperial_fl_oz", "imperial_fl_oz imperial_fluid_ounce imperial_fluid_ounces", 284130625, 1e13, 0,
         kUkAct},  // 1/20 imperial pint

    Unit{kMass, "kg", "kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes", 1, 1, 0, kSi},
    Unit{kMass, "g", "g gr gram grams gramme grammes", 1, 1e3, 0, kSi},
    Unit{kMass, "mg", "mg milligram milligrams", 1, 1e6, 0, kSi},
    Unit{kMass, "lb", "lb lbs pound pounds", 45359237, 1e8, 0, kSp811},  // avoirdupois
    Unit{kMass, "oz", "oz ounce ounces", 28349523125, 1e12, 0, kSp811},  // 1/16 lb

    Unit{kTemperature, "C", "c deg_c degc degree_c degrees_c celsius deg_celsius degree_celsius degrees_celsius", 1, 1,
         273.15, kSi},
    Unit{kTemperature, "F",
         "f deg_f degf degree_f degrees_f fahrenheit deg_fahrenheit degree_fahrenheit degrees_fahrenheit", 5, 9, 459.67,
         kSp811},
    Unit{kTemperature, "K", "k deg_k kelvin kelvins", 1, 1, 0, kSi},

    Unit{kDuration, "d", "d day days", 86400, 1, 0, kSi},
    Unit{kDuration, "h", "h hr hrs hour hours", 3600, 1, 0, kSi},
    Unit{kDuration, "min", "min mins minute minutes", 60, 1, 0, kSi},
    Unit{kDuration, "s", "s sec secs second seconds", 1, 1, 0, kSi},

    Unit{kAngle, "deg", "deg degs degree degrees", std::numbers::pi, 180, 0, kSi},
    Unit{kAngle, "rad", "rad rads radian radians", 1, 1, 0, kSi},

    Unit{kRatio, "%", "% percent", 1, 100, 0, kSi},

    Unit{kConductivity, "W/mK", "w/mk w/m_k w/m/k", 1, 1, 0, kSi},

    Unit{kHeatCapacity, "J/kgK", "j/kgk j/kg_k j/kg/k", 1, 1, 0, kSi},
    Unit{kHeatCapacity, "kJ/kgK", "kj/kgk kj/kg_k kj/kg/k", 1e3, 1, 0, kSi},
    Unit{kHeatCapacity, "J/gK", "j/gk j/g_k j/g/k", 1e3, 1, 0, kSi},

    Unit{kTransfer, "W/m2K", "w/m2k w/m2_k w/m2/k", 1, 1, 0, kSp811},
};

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool equal_ignoring_case(std::string_view a, std::string_view b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(), [](char x, char y) { return lower(x) == lower(y); });
}

/// Calls visit(spelling) for each spelling until it returns true; says whether it did.
template <class Visit>
bool any_spelling(const Unit& unit, Visit visit) {
  std::string_view rest = unit.spellings;
  while (!rest.empty()) {
    const std::size_t gap = rest.find(' ');
    if (visit(rest.substr(0, gap))) return true;
    rest = gap == std::string_view::npos ? std::string_view() : rest.substr(gap + 1);
  }
  return false;
}

bool is_spelled(const Unit& unit, std::string_view spelling) {
  return any_spelling(unit, [spelling](std::string_view known) {
    return known.front() == '=' ? known.substr(1) == spelling : equal_ignoring_case(known, spelling);
  });
}

/// Edits (one letter put in, left out or changed) between two spellings: V. I. Levenshtein, 1966.
std::size_t edits_between(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 0; i < a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i + 1;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t change = diagonal + (lower(a[i]) == lower(b[j]) ? 0 : 1);
      diagonal = row[j + 1];
      row[j + 1] = std::min({change, row[j] + 1, row[j + 1] + 1});
    }
  }
  return row[b.size()];
}

struct Near {
  std::size_t edits;
  std::string_view name;
};

}  // namespace

std::span<const Unit> all_units() {
  return kUnits;
}

const Unit* find_unit(Dimension dimension, std::string_view spelling) {
  const auto* found = std::find_if(kUnits.begin(), kUnits.end(), [&](const Unit& unit) {
    return unit.dimension == dimension && is_spelled(unit, spelling);
  });
  return found == kUnits.end() ? nullptr : found;
}

const Unit* find_unit(std::string_view spelling) {
  const auto* found =
      std::find_if(kUnits.begin(), kUnits.end(), [spelling](const Unit& unit) { return is_spelled(unit, spelling); });
  return found == kUnits.end() ? nullptr : found;
}

double to_si(double number, const Unit& unit) {
  return (number + unit.shift) * unit.numerator / unit.denominator;
}

double from_si(double si, const Unit& unit) {
  return si * unit.denominator / unit.numerator - unit.shift;
}

const DimensionWords& words_for(Dimension dimension) {
  static constexpr std::array<DimensionWords, 11> kWords{{
      {"a length", "mm, cm, m, in or ft", "24 cm or 9 1/2 in", "1 ft 2 in"},
      {"a volume", "ml, l, tsp, tbsp, cup or fl oz", "250 ml or 1 1/2 cups", "1 cup 2 tbsp"},
      {"a weight", "g, kg, oz or lb", "500 g or 1 lb 2 oz", "1 lb 2 oz"},
      {"a temperature", "C or F", "180 C or 350 F", ""},
      {"a time", "s, min, h or d", "45 min or 1 h 20 min", "1 h 20 min"},
      {"an angle", "deg", "15 deg", ""},
      {"a density", "g/ml, kg/m3 or g/cup", "1.2 g/ml or 240 g/cup", ""},
      {"a share", "% or no unit", "75 % or 3/4", ""},
      {"a conductivity", "W/mK", "0.35 W/mK", ""},
      {"a heat capacity", "J/kgK, kJ/kgK or J/gK", "3000 J/kgK or 3.6 kJ/kgK", ""},
      {"a heat transfer coefficient", "W/m2K", "20 W/m2K", ""},
  }};
  return kWords[static_cast<std::size_t>(dimension)];
}

std::string nearest_units(Dimension dimension, std::string_view spelling) {
  // Farther than this a unit is not a slip of the finger but another word.
  const std::size_t reach = spelling.size() < 2 ? 0 : std::max<std::size_t>(1, spelling.size() / 3);
  std::vector<Near> near;
  for (const Unit& unit : kUnits) {
    if (unit.dimension != dimension) continue;
    std::size_t least = reach + 1;
    any_spelling(unit, [&](std::string_view known) {
      least = std::min(least, edits_between(known, spelling));
      return false;
    });
    if (least <= reach) near.push_back({least, unit.name});
  }
  if (near.empty()) return std::string(words_for(dimension).units);
  std::stable_sort(near.begin(), near.end(), [](const Near& a, const Near& b) { return a.edits < b.edits; });
  if (near.size() > 3) near.resize(3);
  std::string list;
  for (std::size_t i = 0; i < near.size(); ++i) {
    if (i > 0) list += i + 1 == near.size() ? " or " : ", ";
    list += near[i].name;
  }
  return list;
}

}  // namespace tinwright
