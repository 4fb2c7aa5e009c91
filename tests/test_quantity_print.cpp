// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Printing quantities: the exact texts, the bounds of every rounding, and the way back through the reader.
#include "app/quantity/print.h"

#include <cmath>
#include <cstdint>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>

#include "app/quantity/kitchen_measure.h"
#include "app/quantity/parse.h"
#include "app/quantity/units.h"

using namespace tinwright;
using enum Dimension;

namespace {

constexpr UnitChoice kMetric = UnitChoice::kMetric;
constexpr UnitChoice kUs = UnitChoice::kUs;
constexpr double kInch = 0.0254;                // [m] NIST SP 811, exact
constexpr double kTeaspoon = 4.92892159375e-6;  // [m³] NIST Handbook 44 app. C, exact
constexpr double kCup = 48 * kTeaspoon;         // [m³] the same
constexpr double kOunce = 0.028349523125;       // [kg] NIST SP 811, exact
constexpr double kRounding = 1e-12;             // relative slack for the arithmetic of a comparison

double read_back(const std::string& text, Dimension dimension) {
  const Result<double> value = parse_quantity(text, dimension);
  const std::string refusal = value ? std::string() : value.problem().message;
  CAPTURE(text);
  CAPTURE(refusal);
  REQUIRE(static_cast<bool>(value));
  return *value;
}

bool is_near(double a, double b, double relative) {
  return std::fabs(a - b) <= relative * std::fmax(std::fabs(a), std::fabs(b));
}

/// Values spread evenly over orders of magnitude, the same on every machine.
class Spread {
 public:
  explicit Spread(std::uint64_t start) : random_(start) {}
  double between(double low, double high) {
    const double share = static_cast<double>(random_() >> 11) * 0x1p-53;
    return low * std::pow(high / low, share);
  }

 private:
  std::mt19937_64 random_;
};

}  // namespace

TEST_CASE("numbers lose trailing zeros and never show a negative nothing") {
  CHECK(format_number(0, 3) == "0");
  CHECK(format_number(-0.0, 2) == "0");
  CHECK(format_number(-0.004, 2) == "0");
  CHECK(format_number(1.5, 3) == "1.5");
  CHECK(format_number(2, 2) == "2");
  CHECK(format_number(100, 0) == "100");
  CHECK(format_number(0.05, 2) == "0.05");
  CHECK(format_number(0.125, 2) == "0.13");
  CHECK(format_number(-12.345, 1) == "-12.3");
  CHECK(format_number(999999999.999, 2) == "1000000000");
}

TEST_CASE("lengths show the digits they deserve") {
  CHECK(format_mm(0.00635) == "6.4 mm");
  CHECK(format_mm(0.00996) == "10 mm");
  CHECK(format_mm(0.0254) == "25 mm");
  CHECK(format_mm(-0.0015) == "-1.5 mm");
  CHECK(format_cm(0.235) == "23.5 cm");
  CHECK(format_cm(0.2286) == "22.9 cm");
  CHECK(format_cm(0.9996) == "100 cm");
  CHECK(format_cm(1.204) == "120 cm");
  CHECK(format_length(0.0064, kMetric) == "6.4 mm");
  CHECK(format_length(0.0194, kMetric) == "19 mm");
  CHECK(format_length(0.0196, kMetric) == "2 cm");
  CHECK(format_length(0.24, kMetric) == "24 cm");
}

TEST_CASE("inches are sixteenths with the fraction signs that exist") {
  CHECK(format_length(9.5 * kInch, kUs) == "9½ in");
  CHECK(format_length(kInch / 4, kUs) == "¼ in");
  CHECK(format_length(21 * kInch / 16, kUs) == "1 5/16 in");
  CHECK(format_length(5 * kInch / 16, kUs) == "5/16 in");
  CHECK(format_length(2.875 * kInch, kUs) == "2⅞ in");
  CHECK(format_length(9 * kInch, kUs) == "9 in");
  CHECK(format_length(8.99 * kInch, kUs) == "9 in");
  CHECK(format_length(0, kUs) == "0 in");
  CHECK(format_length(0.0005, kUs) == "under 1/16 in");
  CHECK(format_length(-kInch / 4, kUs) == "-¼ in");
  CHECK(format_length(-1e-9, kUs) == "0 in");
  CHECK(format_both_lengths(0.00635, kMetric) == "6.4 mm (¼ in)");
  CHECK(format_both_lengths(0.2286, kUs) == "9 in (22.9 cm)");
}

TEST_CASE("a length in sixteenths is off by at most 1/32 in and says when it is exact") {
  Spread spread(11);
  for (int i = 0; i < 20000; ++i) {
    const double metres = spread.between(0.0008, 2);
    CAPTURE(metres);
    const RoundedText inches = inch_measure(metres);
    REQUIRE(std::fabs(inches.value - metres) <= kInch / 32 * (1 + kRounding));
    REQUIRE(is_near(read_back(inches.text, kLength), inches.value, kRounding));
    REQUIRE(is_whole_sixteenths(metres) == (std::fabs(inches.value - metres) <= 0.0002));
  }
  CHECK(is_whole_sixteenths(0.00635));
  CHECK(is_whole_sixteenths(0.0064));
  CHECK_FALSE(is_whole_sixteenths(0.24));
}

TEST_CASE("volumes in millilitres and litres show the digits they deserve") {
  CHECK(format_volume(4.93e-6, kMetric) == "4.9 ml");
  CHECK(format_volume(9.97e-6, kMetric) == "10 ml");
  CHECK(format_volume(640e-6, kMetric) == "640 ml");
  CHECK(format_volume(999.7e-6, kMetric) == "1 l");
  CHECK(format_volume(1.25e-3, kMetric) == "1.25 l");
  CHECK(format_volume(9.996e-3, kMetric) == "10 l");
  CHECK(format_volume(12.46e-3, kMetric) == "12.5 l");
  CHECK(format_both_volumes(640e-6, kMetric) == "640 ml (2⅔ cups)");
  CHECK(format_both_volumes(2 * kCup, kUs) == "2 cups (473 ml)");
}

TEST_CASE("kitchen measures are the cups and spoons of a drawer") {
  CHECK(format_volume(0, kUs) == "0 tsp");
  CHECK(format_volume(-1e-15, kUs) == "0 tsp");
  CHECK(format_volume(kTeaspoon / 20, kUs) == "under ⅛ tsp");
  CHECK(format_volume(kTeaspoon / 8, kUs) == "⅛ tsp");
  CHECK(format_volume(1.5 * kTeaspoon, kUs) == "1½ tsp");
  CHECK(format_volume(3 * kTeaspoon, kUs) == "1 tbsp");
  CHECK(format_volume(2.95 * kTeaspoon, kUs) == "1 tbsp");
  CHECK(format_volume(4 * kTeaspoon, kUs) == "1 tbsp + 1 tsp");
  CHECK(format_volume(4.5 * kTeaspoon, kUs) == "1½ tbsp");
  CHECK(format_volume(12 * kTeaspoon, kUs) == "¼ cup");
  CHECK(format_volume(15 * kTeaspoon, kUs) == "¼ cup + 1 tbsp");
  CHECK(format_volume(kCup / 3, kUs) == "⅓ cup");
  CHECK(format_volume(kCup, kUs) == "1 cup");
  CHECK(format_volume(1.5 * kCup, kUs) == "1½ cups");
  CHECK(format_volume(kCup * 8 / 3, kUs) == "2⅔ cups");
  CHECK(format_volume(2 * kCup + 3 * kTeaspoon, kUs) == "2 cups + 1 tbsp");
  CHECK(format_volume(16 * kCup, kUs) == "16 cups");
}

TEST_CASE("kitchen measures keep within their stated error and report it") {
  Spread spread(12);
  for (int i = 0; i < 20000; ++i) {
    const double volume = spread.between(kTeaspoon / 8, 40 * kCup);
    CAPTURE(volume);
    const RoundedText measure = kitchen_measure(volume);
    const double error = std::fabs(measure.value - volume);
    const double small = std::fmax(kTeaspoon / 8, 0.02 * volume), large = 0.035 * volume;
    REQUIRE(error <= (volume < kCup / 4 ? small : large) * (1 + kRounding));
    REQUIRE(is_near(read_back(measure.text, kVolume), measure.value, kRounding));
    REQUIRE(is_near(volume_rounding_error(volume, kUs), measure.value - volume, kRounding));
    const double shown = read_back(format_volume(volume, kMetric), kVolume);
    REQUIRE(std::fabs(volume + volume_rounding_error(volume, kMetric) - shown) <= kRounding * volume);
  }
}

TEST_CASE("weights show the digits they deserve") {
  CHECK(format_mass(0.0075, kMetric) == "7.5 g");
  CHECK(format_mass(0.64, kMetric) == "640 g");
  CHECK(format_mass(0.9996, kMetric) == "1 kg");
  CHECK(format_mass(1.25, kMetric) == "1.25 kg");
  CHECK(format_mass(12.46, kMetric) == "12.5 kg");
  CHECK(format_mass(0.64, kUs) == "1 lb 6½ oz");
  CHECK(format_mass(4 * kOunce, kUs) == "4 oz");
  CHECK(format_mass(0.375 * kOunce, kUs) == "⅜ oz");
  CHECK(format_mass(15.95 * kOunce, kUs) == "1 lb");
  CHECK(format_mass(32 * kOunce, kUs) == "2 lb");
  CHECK(format_mass(0.001, kUs) == "under ⅛ oz");
  CHECK(format_mass(0, kUs) == "0 oz");
  CHECK(format_grams(1.2544) == "1254 g");
  CHECK(format_grams(0.0075) == "7.5 g");
  CHECK(format_both_masses(0.64, kMetric) == "640 g (1 lb 6½ oz)");
}

TEST_CASE("temperatures, times, densities, shares and factors read as in a recipe") {
  CHECK(format_temperature(453.15, kMetric) == "180 °C (356 °F)");
  CHECK(format_temperature(453.15, kUs) == "356 °F (180 °C)");
  CHECK(format_temperature(255.15, kMetric) == "-18 °C (0 °F)");
  CHECK(format_temperature(273.0, kMetric) == "0 °C (32 °F)");
  CHECK(format_duration(0) == "0 s");
  CHECK(format_duration(40) == "40 s");
  CHECK(format_duration(90) == "1 min 30 s");
  CHECK(format_duration(599.6) == "10 min");
  CHECK(format_duration(2700) == "45 min");
  CHECK(format_duration(3599) == "1 h");
  CHECK(format_duration(4800) == "1 h 20 min");
  CHECK(format_duration(86400) == "24 h");
  CHECK(format_duration(187200) == "2 d 4 h");
  CHECK(format_density(1200) == "1.20 g/ml");
  CHECK(format_percent(0.62) == "62 %");
  CHECK(format_percent(0.004) == "0.4 %");
  CHECK(format_percent(0.993) == "99.3 %");
  CHECK(format_percent(1) == "100 %");
  CHECK(format_factor(0.87) == "× 0.87");
  CHECK(format_factor(2) == "× 2");
  CHECK(format_factor(0.0833) == "× 0.083");
  CHECK(format_factor(12.345) == "× 12.3");
}

TEST_CASE("a number printed in any unit reads back as the same quantity") {
  Spread spread(13);
  for (const Unit& unit : all_units()) {
    for (int i = 0; i < 300; ++i) {
      const double number = spread.between(0.01, 5000);
      const std::string text = format_number(number, 9) + " " + std::string(unit.name);
      CAPTURE(text);
      const double si = to_si(number, unit);
      REQUIRE(std::fabs(read_back(text, unit.dimension) - si) <= 1e-9 * unit.numerator / unit.denominator);
      // Taking the scale's zero off again costs digits, so the way back is compared on the shifted scale.
      REQUIRE(std::fabs(from_si(si, unit) - number) <= 1e-14 * (number + unit.shift));
    }
  }
}

TEST_CASE("every printed quantity reads back within its own rounding") {
  Spread spread(14);
  for (int i = 0; i < 5000; ++i) {
    const double metres = spread.between(0.001, 3);
    CAPTURE(metres);
    REQUIRE(is_near(read_back(format_length(metres, kMetric), kLength), metres, 0.051));
    REQUIRE(is_near(read_back(format_mm(metres), kLength), metres, 0.051));
    const double kilograms = spread.between(0.004, 40);
    CAPTURE(kilograms);
    REQUIRE(is_near(read_back(format_mass(kilograms, kMetric), kMass), kilograms, 0.051));
    REQUIRE(is_near(read_back(format_grams(kilograms), kMass), kilograms, 0.051));
    const double ounces = kilograms / kOunce;
    const double half_step = (ounces < 1 ? 1.0 / 16 : ounces < 16 ? 1.0 / 8 : 1.0 / 4) * kOunce;
    REQUIRE(std::fabs(read_back(format_mass(kilograms, kUs), kMass) - kilograms) <= half_step * (1 + kRounding));
    const double seconds = spread.between(1, 1e6);
    CAPTURE(seconds);
    const double step = seconds < 599.5 ? 1 : seconds < 48 * 3600 - 30 ? 60 : 3600;
    REQUIRE(std::fabs(read_back(format_duration(seconds), kDuration) - seconds) <= step / 2 + 1e-6);
    const double density = spread.between(100, 2000);
    REQUIRE(std::fabs(read_back(format_density(density), kDensity) - density) <= 5.0001);
    const double share = spread.between(0.001, 1);
    REQUIRE(std::fabs(read_back(format_percent(share), kRatio) - share) <= 0.00501);
    const double kelvin = spread.between(200, 600);
    const std::string both = format_temperature(kelvin, kMetric);
    REQUIRE(std::fabs(read_back(both.substr(0, both.find(" (")), kTemperature) - kelvin) <= 0.5001);
  }
}

TEST_CASE("printing what was read from print changes nothing") {
  Spread spread(15);
  for (int i = 0; i < 5000; ++i) {
    const std::string length = format_length(spread.between(0.001, 2), kUs);
    REQUIRE(format_length(read_back(length, kLength), kUs) == length);
    const std::string volume = format_volume(spread.between(1e-6, 5e-3), kUs);
    REQUIRE(format_volume(read_back(volume, kVolume), kUs) == volume);
    const std::string mass = format_mass(spread.between(0.002, 20), kUs);
    REQUIRE(format_mass(read_back(mass, kMass), kUs) == mass);
    const std::string time = format_duration(spread.between(1, 1e6));
    REQUIRE(format_duration(read_back(time, kDuration)) == time);
    const std::string litres = format_volume(spread.between(1e-6, 5e-2), kMetric);
    REQUIRE(format_volume(read_back(litres, kVolume), kMetric) == litres);
  }
}

#ifndef TINWRIGHT_CHECKS
TEST_CASE("a broken precondition prints a question mark and never rubbish, where asserts are off") {
  for (const double value : {std::nan(""), HUGE_VAL, -HUGE_VAL, 1e300}) {
    for (const UnitChoice choice : {kMetric, kUs}) {
      for (const std::string& text : {format_length(value, choice), format_volume(value, choice),
                                      format_mass(value, choice), format_temperature(value, choice)}) {
        CAPTURE(text);
        CHECK(text.find_first_of(kUnprintable) != std::string::npos);
        CHECK(text.find_first_of("nfe") == std::string::npos);
      }
    }
    CHECK(format_duration(value) == kUnprintable);
  }
}
#endif
