// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Substances from fields: three ways to give one, and refusals with their place.
#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "app/files/substance_reader.h"

namespace tinwright {
namespace {

/// What reading `json` as {"fill": {"substance": json}} gives, with the fields nobody asked for refused as well.
struct Reading {
  std::optional<SubstanceChoice> choice;
  std::vector<Fault> faults;
};

Reading read(const std::string& json) {
  const auto tree = read_json("{\"fill\":\n {\n  \"substance\": " + json + "}}");
  REQUIRE(static_cast<bool>(tree));
  const Fields fields = fields_of(*tree);
  FieldReader reader(fields);
  Reading reading;
  reading.choice = read_substance(reader, "fill.substance", "filling");
  reader.refuse_unread();
  reading.faults = reader.faults();
  return reading;
}

bool has_fault(const Reading& reading, ProblemCode code, const std::string& place) {
  return std::any_of(reading.faults.begin(), reading.faults.end(),
                     [&](const Fault& fault) { return fault.code == code && fault.place == place; });
}

/// Whether it is refused with exactly this one fault.
bool is_refused(const std::string& json, ProblemCode code, const std::string& place) {
  const Reading reading = read(json);
  return !reading.choice && reading.faults.size() == 1 && has_fault(reading, code, place);
}

bool offers(const std::string& unknown, const std::string& name) {
  const Reading reading = read("\"" + unknown + "\"");
  return !reading.choice && reading.faults.size() == 1 &&
         reading.faults[0].message.find("\"" + name + "\"") != std::string::npos;
}

}  // namespace

TEST_CASE("constants are taken as they are") {
  const Reading reading =
      read(R"({"conductivity": "0.35 W/mK", "density": "1000 kg/m3", "heat_capacity": "3000 J/kgK"})");
  CHECK(reading.faults.empty());
  REQUIRE(static_cast<bool>(reading.choice));
  CHECK_FALSE(static_cast<bool>(reading.choice->food));
  CHECK(reading.choice->mixture == nullptr);
  REQUIRE(static_cast<bool>(reading.choice->constants));
  CHECK(reading.choice->constants->conductivity == doctest::Approx(0.35));
  CHECK(reading.choice->constants->density == doctest::Approx(1000.0));
  CHECK(reading.choice->constants->heat_capacity == doctest::Approx(3000.0));
}

TEST_CASE("a composition is checked and scaled, shares as numbers, texts or percents alike") {
  const Reading reading = read(
      R"({"water": 0.30, "protein": "0.05", "fat": "20 %", "carbohydrate": 0.45, "ash": 0.01, "air": 0.1,
          "sugar": 0.2, "freezing_point": "-4 C"})");
  CHECK(reading.faults.empty());
  REQUIRE(static_cast<bool>(reading.choice));
  CHECK_FALSE(static_cast<bool>(reading.choice->constants));
  REQUIRE(static_cast<bool>(reading.choice->food));
  const Composition& food = *reading.choice->food;
  CHECK(food.water == doctest::Approx(0.30 / 1.01));
  CHECK(food.fat == doctest::Approx(0.20 / 1.01));
  CHECK(food.fibre == 0.0);
  CHECK(food.air == doctest::Approx(0.1));
  CHECK(food.sugar.value_or(0.0) == doctest::Approx(0.2 / 1.01));
  CHECK(food.freezing_point.value_or(0.0) == doctest::Approx(269.15));
}

TEST_CASE("sugar and freezing point stay unknown when they are not given, and a food may have no water") {
  const Reading reading = read(R"({"fat": 1})");
  CHECK(reading.faults.empty());
  REQUIRE(static_cast<bool>(reading.choice));
  CHECK(reading.choice->food->fat == 1.0);
  CHECK_FALSE(static_cast<bool>(reading.choice->food->sugar));
  CHECK_FALSE(static_cast<bool>(reading.choice->food->freezing_point));
}

TEST_CASE("every mixture is found by its id and by its name, in any case") {
  for (const Mixture& mixture : catalogue_mixtures()) {
    std::string loud = mixture.name;
    for (char& c : loud) c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    for (const std::string& name : {mixture.id, mixture.name, loud}) {
      CAPTURE(name);
      const Reading reading = read("\"" + name + "\"");
      CHECK(reading.faults.empty());
      REQUIRE(static_cast<bool>(reading.choice));
      CHECK(reading.choice->mixture == &mixture);
      REQUIRE(static_cast<bool>(reading.choice->food));
      CHECK(reading.choice->food->water == mixture.composition->water);
      CHECK(reading.choice->food->air == mixture.composition->air);
    }
  }
  CHECK(read("\" Baked_Cheesecake \"").choice.has_value());
}

TEST_CASE("an unknown name is refused at its place and line, and the nearest three are offered") {
  const Reading reading = read("\"cheescake\"");
  CHECK_FALSE(static_cast<bool>(reading.choice));
  REQUIRE(reading.faults.size() == 1);
  const Fault& fault = reading.faults[0];
  CHECK(fault.code == ProblemCode::kUnknown);
  CHECK(fault.place == "fill.substance");
  CHECK(fault.line == 3);
  CHECK(fault.message.find("did you mean \"Baked cheesecake filling\"") != std::string::npos);
  int offered = 0;
  for (const Mixture& mixture : catalogue_mixtures()) {
    if (fault.message.find("\"" + mixture.name + "\"") != std::string::npos) ++offered;
  }
  CHECK(offered == 3);
  CHECK(offers("brownies", "Brownie batter"));
  CHECK(offers("pumkin", "Pumpkin custard filling"));
  CHECK(offers("quich", "Savoury egg and cream filling (quiche)"));
  CHECK(offers("cherries", "Cooked, thickened cherry filling"));
  CHECK(is_refused("\"\"", ProblemCode::kUnknown, "fill.substance"));
  CHECK(is_refused("\"" + std::string(100000, 'x') + "\"", ProblemCode::kUnknown, "fill.substance"));
}

TEST_CASE("a substance that is left out is asked for by what it is") {
  const Reading reading = read("null");
  CHECK_FALSE(static_cast<bool>(reading.choice));
  REQUIRE(has_fault(reading, ProblemCode::kMissing, "fill.substance"));
  CHECK(reading.faults[0].message.find("say what the filling is") != std::string::npos);
}

TEST_CASE("half the constants, or none that can be read, are refused at the field") {
  CHECK(is_refused(R"({"conductivity": "0.35 W/mK", "density": "1000 kg/m3"})", ProblemCode::kMissing,
                   "fill.substance.heat_capacity"));
  CHECK(is_refused(R"({"conductivity": 0.35, "density": "1 g/ml", "heat_capacity": "3 kJ/kgK"})",
                   ProblemCode::kMissingUnit, "fill.substance.conductivity"));
  const Reading only_density = read(R"({"density": "1 g/ml"})");
  CHECK(has_fault(only_density, ProblemCode::kMissing, "fill.substance.conductivity"));
  CHECK(has_fault(only_density, ProblemCode::kMissing, "fill.substance.heat_capacity"));
}

TEST_CASE("a composition that cannot be is refused at the share, or at the whole for their sum") {
  CHECK(is_refused(R"({"water": 0.5, "fat": 0.3})", ProblemCode::kContradiction, "fill.substance"));
  CHECK(is_refused(R"({"water": "wet", "fat": 0.3})", ProblemCode::kNotANumber, "fill.substance.water"));
  CHECK(is_refused(R"({"water": 30, "fat": 70})", ProblemCode::kOutOfRange, "fill.substance.water"));
  CHECK(is_refused(R"({"water": 0.5, "fat": 0.5, "air": 0.99})", ProblemCode::kOutOfRange, "fill.substance.air"));
  CHECK(is_refused(R"({"water": 0.7, "carbohydrate": 0.3, "sugar": 0.4})", ProblemCode::kContradiction,
                   "fill.substance.sugar"));
  CHECK(is_refused(R"({"water": 0.7, "fat": 0.3, "freezing_point": "5 C"})", ProblemCode::kOutOfRange,
                   "fill.substance.freezing_point"));
  CHECK(is_refused(R"({"water": 0.7, "fat": 0.3, "freezing_point": -2})", ProblemCode::kMissingUnit,
                   "fill.substance.freezing_point"));
}

TEST_CASE("fields that do not belong to the way it is given are refused, not passed over") {
  CHECK(has_fault(read(R"({"water": 0.7, "fat": 0.3, "density": "1 g/ml"})"), ProblemCode::kUnknown,
                  "fill.substance.density"));
  CHECK(has_fault(read(R"({"watr": 0.7})"), ProblemCode::kUnknown, "fill.substance.watr"));
  CHECK(has_fault(read(R"({"watr": 0.7})"), ProblemCode::kUnknown, "fill.substance"));
  CHECK(has_fault(read(R"(["jam"])"), ProblemCode::kUnknown, "fill.substance"));
}

}  // namespace tinwright
