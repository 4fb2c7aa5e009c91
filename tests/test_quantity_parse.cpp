// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Reading quantities: factors against the published ones, numbers against the compiler's, spellings against each other.
#include "app/quantity/parse.h"

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>

#include "app/quantity/units.h"

using namespace tinwright;
using enum Dimension;

namespace {

// Two conversions of at most four roundings each stay below this, relative.
constexpr double kRounding = 2e-15;

bool is_near(double a, double b, double relative = kRounding) {
  return std::fabs(a - b) <= relative * std::fmax(std::fabs(a), std::fabs(b));
}

double value_of(std::string_view text, Dimension dimension) {
  const Result<double> value = parse_quantity(text, dimension);
  const std::string refusal = value ? std::string() : value.problem().message;
  CAPTURE(text);
  CAPTURE(refusal);
  REQUIRE(static_cast<bool>(value));
  return *value;
}

struct Row {
  const char* text;
  Dimension dimension;
  double si;
};

void check_rows(const std::vector<Row>& rows, double relative) {
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(is_near(value_of(row.text, row.dimension), row.si, relative));
  }
}

}  // namespace

TEST_CASE("units have the factors their laws give") {
  // NIST SP 811 (2008) app. B.8 for the inch, pound and ounce; NIST Handbook 44 app. C for the gallon of 231 cubic
  // inches and its parts; UK Weights and Measures Act 1985 for imperial measures. The volumes and weights were read in
  // a public table of exact values worked from NIST's weights and measures tables; foot and Fahrenheit are from memory.
  // All are exact by definition, so the tolerance is rounding alone.
  check_rows(
      {
          {"1 in", kLength, 0.0254},
          {"1 ft", kLength, 0.3048},
          {"1 gal", kVolume, 3.785411784e-3},
          {"1 gal", kVolume, 231 * 1.6387064e-5},
          {"1 qt", kVolume, 9.46352946e-4},
          {"1 pt", kVolume, 4.73176473e-4},
          {"1 cup", kVolume, 2.365882365e-4},
          {"1 fl oz", kVolume, 2.95735295625e-5},
          {"1 tbsp", kVolume, 1.478676478125e-5},
          {"1 tsp", kVolume, 4.92892159375e-6},
          {"1 in3", kVolume, 1.6387064e-5},
          {"1 imperial_pt", kVolume, 5.6826125e-4},
          {"8 imperial_pt", kVolume, 4.54609e-3},
          {"1 imperial_fl_oz", kVolume, 2.84130625e-5},
          {"1 metric_cup", kVolume, 2.5e-4},   // national practice, from memory
          {"1 metric_tbsp", kVolume, 1.5e-5},  // national practice, from memory
          {"1 metric_tsp", kVolume, 5e-6},     // national practice, from memory
          {"1 lb", kMass, 0.45359237},
          {"1 oz", kMass, 0.028349523125},
          {"32 F", kTemperature, 273.15},
          {"212 F", kTemperature, 373.15},
          {"1 d", kDuration, 86400},
          {"180 deg", kAngle, 3.14159265358979323846},
          // SI Brochure, 9th edition, tables 3, 5 and 7 (prefixes and coherent units), from memory.
          {"1 W/mK", kConductivity, 1},
          {"1 J/kgK", kHeatCapacity, 1},
          {"1 kJ/kgK", kHeatCapacity, 1e3},
          {"1 J/gK", kHeatCapacity, 1e3},
          {"1 W/m2K", kTransfer, 1},
      },
      kRounding);
}

TEST_CASE("printed conversions of household tables are met to their last digit") {
  // NIST SP 430, household table: cup 237 ml, quart 946 ml, pint 473 ml, tablespoon 15 ml, fluid ounce 30 ml,
  // teaspoon 4.9 ml; NIST, Cooking measurement equivalencies: 1 oz 28 g, 1/4 lb 114 g (113.4, printed rounded up),
  // 1 lb 454 g. Tolerance: half a unit of the last printed digit, but 0.6 g for the quarter pound.
  const auto within = [](const char* text, Dimension dimension, double si, double tolerance) {
    CAPTURE(text);
    CHECK(std::fabs(value_of(text, dimension) - si) <= tolerance);
  };
  within("1 cup", kVolume, 237e-6, 0.5e-6);
  within("1 qt", kVolume, 946e-6, 0.5e-6);
  within("1 pt", kVolume, 473e-6, 0.5e-6);
  within("1 tbsp", kVolume, 15e-6, 0.5e-6);
  within("1 fl_oz", kVolume, 30e-6, 0.5e-6);
  within("1 tsp", kVolume, 4.9e-6, 0.05e-6);
  within("1 oz", kMass, 28e-3, 0.5e-3);
  within("1/4 lb", kMass, 114e-3, 0.61e-3);
  within("1 lb", kMass, 454e-3, 0.5e-3);
}

TEST_CASE("oven temperatures in Fahrenheit meet the conversion formula") {
  // C = (F - 32) / 1.8, NIST SP 811 (from memory); values to 0.1 °C.
  constexpr std::array<std::array<double, 2>, 6> kPairs{
      {{325, 162.8}, {350, 176.7}, {375, 190.6}, {400, 204.4}, {425, 218.3}, {450, 232.2}}};
  for (const auto& pair : kPairs) {
    const std::string text = std::to_string(static_cast<int>(pair[0])) + " F";
    CHECK(std::fabs(value_of(text, kTemperature) - 273.15 - pair[1]) <= 0.05);
  }
}

TEST_CASE("metric quantities are the double a programmer would write") {
  CHECK(value_of("24 cm", kLength) == 0.24);
  CHECK(value_of("6.35 mm", kLength) == 0.00635);
  CHECK(value_of("1/4 in", kLength) == 0.00635);
  CHECK(value_of("640 ml", kVolume) == 0.00064);
  CHECK(value_of("115 g", kMass) == 0.115);
  CHECK(value_of("1.2 g/ml", kDensity) == 1200.0);
  CHECK(value_of("1 h 20 min", kDuration) == 4800.0);
  CHECK(value_of("0.35 W/mK", kConductivity) == 0.35);
  CHECK(value_of("3000 J/kgK", kHeatCapacity) == 3000.0);
  CHECK(value_of("3.6 kJ/kgK", kHeatCapacity) == 3600.0);
  CHECK(value_of("20 W/m2K", kTransfer) == 20.0);
}

TEST_CASE("spellings of one quantity read as the same value") {
  const std::vector<std::vector<Row>> groups{
      {{"2.5 in", kLength, 0},
       {"2 1/2 in", kLength, 0},
       {"2-1/2 in", kLength, 0},
       {"2½ in", kLength, 0},
       {"2 ½ in", kLength, 0},
       {"2-½ in", kLength, 0},
       {"2 and 1/2 in", kLength, 0},
       {"2 And ½ in", kLength, 0},
       {"2\u00a01\u20442\u2009in", kLength, 0},
       {"2,5 inches", kLength, 0},
       {"+2.5 in", kLength, 0},
       {"5/2 IN", kLength, 0},
       {"2½\"", kLength, 0},
       {"2½″", kLength, 0},
       {"2½''", kLength, 0},
       {"2½′′", kLength, 0},
       {"2½”", kLength, 0},
       {"2 1/2 in.", kLength, 0},
       {"2.5-inch", kLength, 0},
       {"  2.50000 inch ", kLength, 0},
       {"2.50in", kLength, 0},
       {"2 1 / 2 in", kLength, 0}},
      {{"1 ft 2 in", kLength, 0}, {"1' 2\"", kLength, 0}, {"1′2″", kLength, 0}, {"1 foot and 2 inches", kLength, 0}},
      {{"3 tbsp", kVolume, 0},
       {"3 T", kVolume, 0},
       {"3T", kVolume, 0},
       {"3 Tbsp.", kVolume, 0},
       {"3 tablespoons", kVolume, 0},
       {"3 TBSP", kVolume, 0}},
      {{"3 tsp", kVolume, 0}, {"3 t", kVolume, 0}, {"3 Teaspoons", kVolume, 0}},
      {{"8 fl_oz", kVolume, 0}, {"8 fl oz", kVolume, 0}, {"8 fl. oz.", kVolume, 0}, {"8 fluid ounces", kVolume, 0}},
      {{"5 cm3", kVolume, 0},
       {"5 cm³", kVolume, 0},
       {"5 cm^3", kVolume, 0},
       {"5 cc", kVolume, 0},
       {"5 mL", kVolume, 0},
       {"5 millilitres", kVolume, 0}},
      {{"2 cups + 1 tbsp", kVolume, 0}, {"2 cups 1 tbsp", kVolume, 0}, {"2 cups and 1 T", kVolume, 0}},
      {{"1 lb 4 oz", kMass, 0}, {"1 lb, 4 oz", kMass, 0}, {"1 pound 4 ounces", kMass, 0}, {"1lb4oz", kMass, 0}},
      {{"350 F", kTemperature, 0},
       {"350F", kTemperature, 0},
       {"350 °F", kTemperature, 0},
       {"350℉", kTemperature, 0},
       {"350 degrees F", kTemperature, 0},
       {"350 deg F", kTemperature, 0},
       {"350º f", kTemperature, 0}},
      {{"-18 C", kTemperature, 0},
       {"−18 °C", kTemperature, 0},
       {"–18℃", kTemperature, 0},
       {"-18 degrees Celsius", kTemperature, 0},
       {"- 18C", kTemperature, 0}},
      {{"300 K", kTemperature, 0}, {"300 °K", kTemperature, 0}, {"300 \u212a", kTemperature, 0}},
      {{"1 h 20 min", kDuration, 0},
       {"1h20min", kDuration, 0},
       {"80 min", kDuration, 0},
       {"1 hour and 20 minutes", kDuration, 0},
       {"1 hr 20 mins", kDuration, 0},
       {"4800 s", kDuration, 0}},
      {{"15 deg", kAngle, 0}, {"15°", kAngle, 0}, {"15 degrees", kAngle, 0}},
      {{"1200 kg/m3", kDensity, 0},
       {"1.2 g/ml", kDensity, 0},
       {"1.2 g/cm³", kDensity, 0},
       {"1.2 kg per l", kDensity, 0}},
      {{"0.35 W/mK", kConductivity, 0},
       {"0.35W/mK", kConductivity, 0},
       {"0,35 w/mk", kConductivity, 0},
       {"0.35 W/m K", kConductivity, 0},
       {"0.35 W/m·K", kConductivity, 0},
       {"0.35 W/m · K", kConductivity, 0},
       {"0.35 W/m⋅K", kConductivity, 0},
       {"0.35 W/m∙K", kConductivity, 0},
       {"0.35 W/(m K)", kConductivity, 0},
       {"0.35 W/(m·K)", kConductivity, 0},
       {"0.35 W/(mK)", kConductivity, 0},
       {"0.35 W / ( m K ) ", kConductivity, 0},
       {"0.35 W∕(m K)", kConductivity, 0},
       {"0.35 W/m/K", kConductivity, 0},
       {"0.35 W per m K", kConductivity, 0},
       {"0.35 W/mK.", kConductivity, 0},
       {"7/20 W/(m K).", kConductivity, 0}},
      {{"3600 J/kgK", kHeatCapacity, 0},
       {"3600 J/kg K", kHeatCapacity, 0},
       {"3600 J/kg·K", kHeatCapacity, 0},
       {"3600 J/(kg K)", kHeatCapacity, 0},
       {"3600 J/(kg·K)", kHeatCapacity, 0},
       {"3600 J/(kgK)", kHeatCapacity, 0},
       {"3600 J/kg/K", kHeatCapacity, 0},
       {"3.6 kJ/kgK", kHeatCapacity, 0},
       {"3.6 kJ/kg K", kHeatCapacity, 0},
       {"3.6 kJ/(kg K)", kHeatCapacity, 0},
       {"3.6 kJ/(kg·K)", kHeatCapacity, 0},
       {"3.6 kJ/kg/K", kHeatCapacity, 0},
       {"3.6 J/gK", kHeatCapacity, 0},
       {"3.6 J/g K", kHeatCapacity, 0},
       {"3.6 J/(g·K)", kHeatCapacity, 0},
       {"3.6 J/g/K", kHeatCapacity, 0}},
      {{"20 W/m2K", kTransfer, 0},
       {"20 W/m²K", kTransfer, 0},
       {"20 W/m^2K", kTransfer, 0},
       {"20 W/m² K", kTransfer, 0},
       {"20 W/m2 K", kTransfer, 0},
       {"20 W/m²·K", kTransfer, 0},
       {"20 W/(m2 K)", kTransfer, 0},
       {"20 W/(m²·K)", kTransfer, 0},
       {"20 W/(m²K)", kTransfer, 0},
       {"20 W/(m^2 K)", kTransfer, 0},
       {"20 W/m²/K", kTransfer, 0},
       {"20 W/m2/K", kTransfer, 0}},
      {{"75 %", kRatio, 0},
       {"75%", kRatio, 0},
       {"0.75", kRatio, 0},
       {"0,75", kRatio, 0},
       {".75", kRatio, 0},
       {"3/4", kRatio, 0},
       {"¾", kRatio, 0},
       {"3⁄4", kRatio, 0}},
  };
  for (const std::vector<Row>& group : groups) {
    const double first = value_of(group.front().text, group.front().dimension);
    for (const Row& row : group) {
      CAPTURE(row.text);
      CHECK(is_near(value_of(row.text, row.dimension), first));
    }
  }
}

TEST_CASE("every fraction sign is the fraction it shows") {
  const std::vector<Row> rows{
      {"½", kRatio, 1.0 / 2}, {"⅓", kRatio, 1.0 / 3},  {"⅔", kRatio, 2.0 / 3}, {"¼", kRatio, 1.0 / 4},
      {"¾", kRatio, 3.0 / 4}, {"⅕", kRatio, 1.0 / 5},  {"⅖", kRatio, 2.0 / 5}, {"⅗", kRatio, 3.0 / 5},
      {"⅘", kRatio, 4.0 / 5}, {"⅙", kRatio, 1.0 / 6},  {"⅚", kRatio, 5.0 / 6}, {"⅛", kRatio, 1.0 / 8},
      {"⅜", kRatio, 3.0 / 8}, {"⅝", kRatio, 5.0 / 8},  {"⅞", kRatio, 7.0 / 8}, {"⅐", kRatio, 1.0 / 7},
      {"⅑", kRatio, 1.0 / 9}, {"⅒", kRatio, 1.0 / 10}, {"↉", kRatio, 0.0}};
  for (const Row& row : rows) {
    CAPTURE(row.text);
    CHECK(value_of(row.text, row.dimension) == row.si);
    CHECK(is_near(value_of("3" + std::string(row.text), row.dimension), 3 + row.si));
  }
}

TEST_CASE("zero is a quantity, and whether it makes sense is not asked") {
  for (const Unit& unit : all_units()) {
    if (unit.dimension == kTemperature) continue;
    CHECK(value_of("0 " + std::string(unit.name), unit.dimension) == 0.0);
  }
  CHECK(value_of("0/4 in", kLength) == 0.0);
  CHECK(value_of("-273.15 C", kTemperature) == 0.0);
  CHECK(value_of("-459.67 F", kTemperature) == 0.0);
}

TEST_CASE("decimals of up to 15 digits are correctly rounded") {
  // The compiler reads the literals with correct rounding.
  CHECK(value_of("0.1", kRatio) == 0.1);
  CHECK(value_of("0.123456789012345", kRatio) == 0.123456789012345);
  CHECK(value_of("236.588236543219", kRatio) == 236.588236543219);
  CHECK(value_of("3.14159265358979", kRatio) == 3.14159265358979);
  CHECK(is_near(value_of("0.333333333333333333333333333333333333", kRatio), 1.0 / 3, 1e-15));
  CHECK(is_near(value_of("0.00000000000000000000000000000000001234567890123456789", kRatio), 1.234567890123456789e-35,
                1e-15));
}

TEST_CASE("decimals agree with a ratio of whole numbers over many random digits") {
  std::mt19937_64 random(20240501);
  for (int i = 0; i < 20000; ++i) {
    const auto above = static_cast<std::int64_t>(random() % 1'000'000'000);
    const int places = static_cast<int>(random() % 10);
    std::string digits = std::to_string(above);
    if (places > 0) {
      if (static_cast<int>(digits.size()) <= places) {
        digits.insert(0, static_cast<std::size_t>(places + 1) - digits.size(), '0');
      }
      digits.insert(digits.size() - static_cast<std::size_t>(places), ".");
    }
    double tens = 1;
    for (int k = 0; k < places; ++k) tens *= 10;
    CAPTURE(digits);
    REQUIRE(value_of(digits, kRatio) == static_cast<double>(above) / tens);
  }
}

TEST_CASE("each spelling belongs to one unit and each name is a spelling") {
  for (const Unit& unit : all_units()) {
    CAPTURE(unit.name);
    CHECK(find_unit(unit.dimension, unit.name) == &unit);
    CHECK_FALSE(unit.source.empty());
    std::string_view rest = unit.spellings;
    while (!rest.empty()) {
      const std::size_t gap = rest.find(' ');
      std::string_view spelling = rest.substr(0, gap);
      if (spelling.front() == '=') spelling.remove_prefix(1);
      CAPTURE(spelling);
      CHECK(find_unit(spelling) == &unit);
      rest = gap == std::string_view::npos ? std::string_view() : rest.substr(gap + 1);
    }
  }
}
