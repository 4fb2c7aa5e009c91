// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Quantities that are refused: each by its code, its place and a sentence for the cook; and a storm of random text.
#include <cmath>
#include <cstddef>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>

#include "app/quantity/characters.h"
#include "app/quantity/parse.h"

using namespace tinwright;
using enum Dimension;

namespace {

struct Refusal {
  const char* text;
  Dimension dimension;
  ProblemCode code;
  const char* place;
};

void check_refusals(const std::vector<Refusal>& rows) {
  for (const Refusal& row : rows) {
    CAPTURE(row.text);
    const Result<double> value = parse_quantity(row.text, row.dimension);
    REQUIRE_FALSE(static_cast<bool>(value));
    CAPTURE(value.problem().message);
    CHECK(value.problem().code == row.code);
    CHECK(value.problem().place == row.place);
    CHECK(value.problem().message.size() > 20);
    CHECK(value.problem().message.find('\n') == std::string::npos);
  }
}

bool mentions(std::string_view text, Dimension dimension, std::string_view part) {
  const Result<double> value = parse_quantity(text, dimension);
  return !value && value.problem().message.find(part) != std::string::npos;
}

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> words;
  while (!text.empty()) {
    const std::size_t gap = text.find(' ');
    words.emplace_back(text.substr(0, gap));
    text = gap == std::string_view::npos ? std::string_view() : text.substr(gap + 1);
  }
  return words;
}

const std::string& any_of(const std::vector<std::string>& words, std::mt19937_64& random) {
  return words[random() % words.size()];
}

}  // namespace

TEST_CASE("text that holds no readable number is refused where the fault lies") {
  using enum ProblemCode;
  check_refusals({
      {"", kLength, kNotANumber, ""},
      {"   ", kRatio, kNotANumber, ""},
      {"nan cm", kLength, kNotANumber, "column 1"},
      {"inf", kRatio, kNotANumber, "column 1"},
      {"NaN", kRatio, kNotANumber, "column 1"},
      {"cm", kLength, kNotANumber, "column 1"},
      {"about 24 cm", kLength, kNotANumber, "column 1"},
      {"-", kTemperature, kNotANumber, "column 2"},
      {"--3 cm", kLength, kNotANumber, "column 2"},
      {"+-3 C", kTemperature, kNotANumber, "column 2"},
      {"1e3 g", kMass, kNotANumber, "column 2"},
      {"1.5E-3 g", kMass, kNotANumber, "column 4"},
      {"0x10 cm", kLength, kNotANumber, "column 2"},
      {"9x13 in", kLength, kNotANumber, "column 2"},
      {"9 × 13 in", kLength, kNotANumber, "column 3"},
      {"9 in x 13 in", kLength, kNotANumber, "column 6"},
      {"1/0 in", kLength, kNotANumber, "column 3"},
      {"3/", kRatio, kNotANumber, "column 3"},
      {"/3", kRatio, kNotANumber, "column 1"},
      {"1/2/3", kRatio, kNotANumber, "column 4"},
      {"1.5/2 in", kLength, kNotANumber, "column 4"},
      {"1/2.5 in", kLength, kNotANumber, "column 3"},
      {"2 5/4 in", kLength, kNotANumber, "column 3"},
      {"2 2/2 in", kLength, kNotANumber, "column 3"},
      {"½½ in", kLength, kNotANumber, "column 2"},
      {"1.5½ in", kLength, kNotANumber, "column 4"},
      {"1 2 cm", kLength, kNotANumber, "column 3"},
      {"1 000 g", kMass, kNotANumber, "column 3"},
      {"1,000 g", kMass, kNotANumber, "column 1"},
      {"1,234,567 g", kMass, kNotANumber, "column 1"},
      {"1.234,5 g", kMass, kNotANumber, "column 1"},
      {"1.2.3 g", kMass, kNotANumber, "column 1"},
      {"9. cm", kLength, kNotANumber, "column 1"},
      {". cm", kLength, kNotANumber, "column 1"},
      {"2-3 cm", kLength, kNotANumber, "column 2"},
      {"½ – ¾ in", kLength, kNotANumber, "column 3"},
      {"24 cm round", kLength, kNotANumber, "column 7"},
      {"24 cm!", kLength, kNotANumber, "column 6"},
      {"2 cups + ", kVolume, kNotANumber, "column 8"},
      {"350 F 10 F", kTemperature, kNotANumber, "column 7"},
      {"½ cup flour", kVolume, kNotANumber, "column 7"},
      {"75 % 5", kRatio, kNotANumber, "column 6"},
      {"", kTransfer, kNotANumber, ""},
      {"W/mK", kConductivity, kNotANumber, "column 1"},
      {"0.35 W/mK crumb", kConductivity, kNotANumber, "column 11"},
      {"0.35 W/m K 2", kConductivity, kNotANumber, "column 12"},
      {"0.35 W/mK)", kConductivity, kNotANumber, "column 10"},
      {"0.35 W/(m K))", kConductivity, kNotANumber, "column 13"},
      {"0.35 W/m/K/s", kConductivity, kNotANumber, "column 11"},
      {"3 kJ/kgK 600 J/kgK", kHeatCapacity, kNotANumber, "column 10"},
      {"20-30 W/m2K", kTransfer, kNotANumber, "column 3"},
      {"٢ cm", kLength, kNotANumber, "column 1"},
  });
}

TEST_CASE("a bare number is refused where its unit should stand") {
  using enum ProblemCode;
  check_refusals({
      {"9", kLength, kMissingUnit, "column 2"},
      {"9 ", kVolume, kMissingUnit, "column 3"},
      {"2½", kMass, kMissingUnit, "column 3"},
      {"180", kTemperature, kMissingUnit, "column 4"},
      {"0", kLength, kMissingUnit, "column 2"},
      {"20", kDuration, kMissingUnit, "column 3"},
      {"15", kAngle, kMissingUnit, "column 3"},
      {"1.2", kDensity, kMissingUnit, "column 4"},
      {"1.2 g/", kDensity, kMissingUnit, "column 7"},
      {"0.35", kConductivity, kMissingUnit, "column 5"},
      {"3000 ", kHeatCapacity, kMissingUnit, "column 6"},
      {"20", kTransfer, kMissingUnit, "column 3"},
      {"1 h 20", kDuration, kMissingUnit, "column 7"},
      {"1 lb 4", kMass, kMissingUnit, "column 7"},
  });
}

TEST_CASE("unknown units and units of another kind are refused where they stand") {
  using enum ProblemCode;
  check_refusals({
      {"9 qux", kLength, kWrongUnit, "column 3"},
      {"9 cmm", kLength, kWrongUnit, "column 3"},
      {"9 g", kLength, kWrongUnit, "column 3"},
      {"½ g", kLength, kWrongUnit, "column 3"},
      {"5 m2", kLength, kWrongUnit, "column 3"},
      {"5 cm3", kLength, kWrongUnit, "column 3"},
      {"9°", kLength, kWrongUnit, "column 2"},
      {"9 ?", kLength, kWrongUnit, "column 3"},
      {"8 oz", kVolume, kWrongUnit, "column 3"},
      {"5 C", kVolume, kWrongUnit, "column 3"},
      {"2 fl oz", kMass, kWrongUnit, "column 3"},
      {"1.2 g/ml", kMass, kWrongUnit, "column 5"},
      {"180°", kTemperature, kWrongUnit, "column 4"},
      {"5 m", kDuration, kWrongUnit, "column 3"},
      {"20 min 1 h", kDuration, kWrongUnit, "column 10"},
      {"1 h 1 h", kDuration, kWrongUnit, "column 7"},
      {"4 oz 1 lb", kMass, kWrongUnit, "column 8"},
      {"1.2 g", kDensity, kWrongUnit, "column 5"},
      {"1.2 g/cm", kDensity, kWrongUnit, "column 7"},
      {"1.2 ml/g", kDensity, kWrongUnit, "column 5"},
      {"3/4 cup", kRatio, kWrongUnit, "column 5"},
      {"2 x", kRatio, kWrongUnit, "column 3"},
  });
}

TEST_CASE("units of heat flow are refused where they stand unless they are whole and of the kind wanted") {
  using enum ProblemCode;
  check_refusals({
      {"0.35 W", kConductivity, kWrongUnit, "column 6"},      {"0.35 W/", kConductivity, kWrongUnit, "column 6"},
      {"0.35 W/m", kConductivity, kWrongUnit, "column 6"},    {"0.35 W/K", kConductivity, kWrongUnit, "column 6"},
      {"0.35 W/Km", kConductivity, kWrongUnit, "column 6"},   {"0.35 W/m h", kConductivity, kWrongUnit, "column 6"},
      {"0.35 W/(m K", kConductivity, kWrongUnit, "column 6"}, {"0.35 W/(m/K)", kConductivity, kWrongUnit, "column 6"},
      {"0.35 W/(m)K", kConductivity, kWrongUnit, "column 6"}, {"0.35 W/((m K))", kConductivity, kWrongUnit, "column 6"},
      {"0.35 W/()", kConductivity, kWrongUnit, "column 6"},   {"0.35 W/m··K", kConductivity, kWrongUnit, "column 6"},
      {"0.35 W/mK2", kConductivity, kWrongUnit, "column 6"},  {"0.35 W/m³K", kConductivity, kWrongUnit, "column 6"},
      {"0.35 mW/mK", kConductivity, kWrongUnit, "column 6"},  {"0.35 mK/W", kConductivity, kWrongUnit, "column 6"},
      {"0.35 m K", kConductivity, kWrongUnit, "column 6"},    {"20 W/m2K", kConductivity, kWrongUnit, "column 4"},
      {"3000 J/kgK", kConductivity, kWrongUnit, "column 6"},  {"3000 J/kg", kHeatCapacity, kWrongUnit, "column 6"},
      {"3000 J/k gK", kHeatCapacity, kWrongUnit, "column 6"}, {"3.6 kJ/gK", kHeatCapacity, kWrongUnit, "column 5"},
      {"3000 kg", kHeatCapacity, kWrongUnit, "column 6"},     {"20 W/mK", kTransfer, kWrongUnit, "column 4"},
      {"20 W/m2", kTransfer, kWrongUnit, "column 4"},         {"20 W/m22K", kTransfer, kWrongUnit, "column 4"},
      {"20 W/cm2K", kTransfer, kWrongUnit, "column 4"},       {"0.35 W/mK", kLength, kWrongUnit, "column 6"},
      {"3 J/(kg K)", kDensity, kWrongUnit, "column 3"},       {"20 W/m²·K", kRatio, kWrongUnit, "column 4"},
      {"20 W/m2K", kTemperature, kWrongUnit, "column 4"},
  });
}

TEST_CASE("negative, overlarge, overlong and damaged text is refused") {
  using enum ProblemCode;
  const std::string overlong = std::string(kLongestQuantity, '0') + "3 cm";
  check_refusals({
      {"-3 cm", kLength, kOutOfRange, "column 1"},
      {" −3 g", kMass, kOutOfRange, "column 2"},
      {"-0 ml", kVolume, kOutOfRange, "column 1"},
      {"-5 %", kRatio, kOutOfRange, "column 1"},
      {"-0.35 W/mK", kConductivity, kOutOfRange, "column 1"},
      {" −3 kJ/(kg·K)", kHeatCapacity, kOutOfRange, "column 2"},
      {"-20 W/m²K", kTransfer, kOutOfRange, "column 1"},
      {"1000000001 J/kgK", kHeatCapacity, kOutOfRange, "column 1"},
      {"-300 C", kTemperature, kOutOfRange, "column 1"},
      {"-459.68 F", kTemperature, kOutOfRange, "column 1"},
      {"-1 K", kTemperature, kOutOfRange, "column 1"},
      {"1000000001 cm", kLength, kOutOfRange, "column 1"},
      {"1000000000.5 cm", kLength, kOutOfRange, "column 1"},
      {"99999999999999999999999999999999999999999999999999999999999999 cm", kLength, kOutOfRange, "column 1"},
      {"1/99999999999999999999 in", kLength, kOutOfRange, "column 3"},
      {overlong.c_str(), kLength, kNotANumber, ""},
      {"24\xff cm", kLength, kUnreadable, "column 3"},
      {"2\xc2", kLength, kUnreadable, "column 2"},
      {"½\xc0\xaf cm", kLength, kUnreadable, "column 2"},
      {"1\xe0\x80\xaf cm", kLength, kUnreadable, "column 2"},
      {"1\xf0\x80\x80\xaf cm", kLength, kUnreadable, "column 2"},
      {"1\xed\xa0\x80 cm", kLength, kUnreadable, "column 2"},
      {"1\xf4\x90\x80\x80 cm", kLength, kUnreadable, "column 2"},
  });
  const Result<double> zero_byte = parse_quantity(std::string_view("9 cm\0", 5), kLength);
  REQUIRE_FALSE(static_cast<bool>(zero_byte));
  CHECK(zero_byte.problem().place == "column 5");
}

TEST_CASE("a refusal says in words what would be right") {
  CHECK(mentions("9", kLength, "24 cm"));
  CHECK(mentions("9 cmm", kLength, "cm or mm"));
  CHECK(mentions("1 tabelspoon", kVolume, "tbsp"));
  CHECK(mentions("9 g", kLength, "is a weight; a length is wanted, like 24 cm"));
  CHECK(mentions("8 oz", kVolume, "fl oz"));
  CHECK(mentions("1,000 g", kMass, "write 1000 or 1.000"));
  CHECK(mentions("1 h 20", kDuration, "1 h 20 min"));
  CHECK(mentions("1e3 g", kMass, "1000"));
  CHECK(mentions("-300 C", kTemperature, "-273.15 C"));
  CHECK(mentions("20 min 1 h", kDuration, "larger unit first"));
  CHECK(mentions("0.35", kConductivity, "a conductivity is wanted, in W/mK, like 0.35 W/mK"));
  CHECK(mentions("3000", kHeatCapacity, "in J/kgK, kJ/kgK or J/gK, like 3000 J/kgK"));
  CHECK(mentions("3000 qux", kHeatCapacity, "write J/kgK, kJ/kgK or J/gK, like 3000 J/kgK"));
  CHECK(mentions("20 W/m2", kTransfer, "'W/m2' is no unit for a heat transfer coefficient; write W/m2K"));
  CHECK(mentions("20 W/(m² K)", kConductivity, "'W/m2 K' is a heat transfer coefficient; a conductivity is wanted"));
  CHECK(mentions("0.35 W/mK", kLength, "'W/mK' is a conductivity; a length is wanted, like 24 cm"));
  CHECK(mentions("-20 W/m2K", kTransfer, "without the minus, like 20 W/m2K"));
}

TEST_CASE("no text makes the reader crash or return a value that is not finite and sound") {
  const std::vector<std::string> numbers =
      words_of("0 1 9 25 .5 9.5 23,5 1/4 2½ ⅞ 3⁄8 1000000000 99999999999999999999 1,000 1e3 0x10 1/0 -18 −3 + - . , /");
  const std::vector<std::string> units = words_of(
      "in cm ft m ' \" ″ g kg lb oz ml cup T t fl_oz fl ° C F ℃ K h min s d deg % per and x ³ ^ _ nan inf g/ml g/cup "
      "W/mK J/(kg·K) W/m² W/( J/g ) · 😀 "
      "\xff \xc2 \xe2\x82 \n \x01");
  const std::vector<std::string> gaps{"", "", " ", " ", "\u00a0", "-", "/", " and ", std::string(1, '\0')};
  std::mt19937_64 random(7);
  int read = 0;
  for (int i = 0; i < 300000; ++i) {
    std::string text;
    const std::size_t length = 1 + random() % 5;
    for (std::size_t k = 0; k < length; ++k) {
      const bool orderly = random() % 4 != 0;
      text += any_of(orderly == (k % 2 == 0) ? numbers : units, random) + any_of(gaps, random);
    }
    if (random() % 8 == 0) text.push_back(static_cast<char>(static_cast<unsigned char>(random() & 0xFF)));
    const auto dimension = static_cast<Dimension>(random() % 11);
    const Result<double> value = parse_quantity(text, dimension);
    if (value) {
      ++read;
      if (!std::isfinite(*value) || *value < 0) FAIL("unsound value from: ", text);
    } else if (value.problem().message.empty()) {
      FAIL("refused without a word: ", text);
    }
  }
  CHECK(read > 1000);  // the storm must also hit good quantities, or it shows nothing
}
