// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The catalogues: complete, possible, sourced, and in agreement with published volumes.
#include <array>
#include <cmath>
#include <set>
#include <string>
#include <string_view>

#include <doctest/doctest.h>

#include "app/files/catalogue.h"
#include "app/files/pan_reader.h"
#include "app/quantity/parse.h"
#include "geometry/heat/food_components.h"
#include "geometry/heat/food_properties.h"
#include "tests/csv_rows.h"

namespace tinwright {

extern const std::string_view kMixtureCompositionCsv;
extern const std::string_view kMixturePublishedCsv;
extern const std::string_view kPanVolumesCsv;

namespace {

Pan pan_of(const CataloguePan& entry) {
  FieldReader reader(entry.fields);
  const auto pan = read_pan(reader, "");
  reader.refuse_unread();
  for (const Fault& fault : reader.faults()) FAIL_CHECK(entry.id << ": " << fault.place << ": " << fault.message);
  REQUIRE(static_cast<bool>(pan));
  return *pan;
}

/// Of 100 g, as labels have it: the fibre in the carbohydrate.
using Label = std::array<double, 5>;
constexpr std::array<const char*, 5> kLabel{"water", "protein", "fat", "carbohydrate", "ash"};

Label label_of(const Composition& food) {
  return {100.0 * food.water, 100.0 * food.protein, 100.0 * food.fat, 100.0 * (food.carbohydrate + food.fibre),
          100.0 * food.ash};
}

Label label_of(const reference::Row& row, const std::string& prefix) {
  Label label{};
  for (std::size_t i = 0; i < label.size(); ++i) label[i] = row.number(prefix + kLabel[i]);
  return label;
}

/// The same without its water, again of 100 g.
Label dried(Label label) {
  const double dry = label[1] + label[2] + label[3] + label[4];
  label[0] = 0.0;
  for (std::size_t i = 1; i < label.size(); ++i) label[i] *= 100.0 / dry;
  return label;
}

/// The energy of a food at 4, 4 and 9 kcal a gram of protein, carbohydrate and fat (Atwater) [kcal per 100 g].
double label_energy(const Composition& food) {
  return 100.0 * (4.0 * food.protein + 4.0 * food.carbohydrate + 9.0 * food.fat);
}

}  // namespace

TEST_CASE("the catalogue has at least 40 possible pans, each with id, name, family and source") {
  CHECK(catalogue_pans().size() >= 40);
  std::set<std::string> ids;
  for (const CataloguePan& entry : catalogue_pans()) {
    CAPTURE(entry.id);
    CHECK(ids.insert(entry.id).second);
    CHECK_FALSE(entry.name.empty());
    CHECK_FALSE(entry.family.empty());
    CHECK_FALSE(entry.source.empty());
    CHECK(brim_volume(pan_of(entry)) > 0.0);
  }
}

TEST_CASE("families stand together, so that a list by family has each once") {
  std::set<std::string> seen;
  std::string last;
  for (const CataloguePan& entry : catalogue_pans()) {
    if (entry.family != last) CHECK(seen.insert(entry.family).second);
    last = entry.family;
  }
}

TEST_CASE("published volumes of pans agree with their computed brim (or stated level) within 12 %") {
  // tests/reference/pan_volumes.csv; its sources are listed in assets/SOURCES.md. Household charts round to the cup,
  // and several inside sizes were chosen with the chart in sight, so this guards against slips, not against the trade.
  int compared = 0;
  for (const reference::Row& row : reference::rows(kPanVolumesCsv)) {
    if (row.text("compare") != "yes") continue;
    CAPTURE(row.text("pan_id"));
    const CataloguePan* entry = find_catalogue_pan(row.text("pan_id"));
    REQUIRE(entry != nullptr);
    const Pan pan = pan_of(*entry);
    const double computed = volume(pan, depth(pan) - 1e-3 * row.number("below_rim_mm")) * 1e6;
    CHECK(std::abs(computed / row.number("published_ml") - 1.0) < 0.12);
    ++compared;
  }
  CHECK(compared >= 30);
}

TEST_CASE("every mixture has a density a kitchen knows, a rise that can be, and a source") {
  CHECK(catalogue_mixtures().size() >= 36);
  std::set<std::string> ids;
  for (const Mixture& mixture : catalogue_mixtures()) {
    CAPTURE(mixture.id);
    CHECK(ids.insert(mixture.id).second);
    CHECK_FALSE(mixture.name.empty());
    CHECK_FALSE(mixture.source.empty());
    const auto density = parse_quantity(mixture.density, Dimension::kDensity);
    REQUIRE(static_cast<bool>(density));
    CHECK(*density > 100.0);
    CHECK(*density < 1700.0);
    if (mixture.rise.empty()) continue;
    const auto rise = parse_quantity(mixture.rise, Dimension::kRatio);
    REQUIRE(static_cast<bool>(rise));
    CHECK(*rise >= 1.0);
    CHECK(*rise <= 3.0);
  }
}

TEST_CASE("every mixture has a composition that comes to 1, with its source") {
  for (const Mixture& mixture : catalogue_mixtures()) {
    CAPTURE(mixture.id);
    REQUIRE(static_cast<bool>(mixture.composition));
    const Composition& food = *mixture.composition;
    CHECK(std::abs(food.water + food.protein + food.fat + food.carbohydrate + food.fibre + food.ash - 1.0) < 1e-12);
    CHECK_FALSE(mixture.composition_source.empty());
    REQUIRE(static_cast<bool>(food.sugar));
    CHECK(*food.sugar <= food.carbohydrate + 1e-12);
    CHECK(food.air < kMostAir);
  }
}

TEST_CASE("the catalogue holds the compositions that the script computes from USDA ingredients, before scaling too") {
  // tests/reference/mixture_composition.csv, by mixture_density.py. The file's own sum may miss 1 by 0.005 at most.
  const auto rows = reference::rows(kMixtureCompositionCsv);
  CHECK(rows.size() == catalogue_mixtures().size());
  for (const reference::Row& row : rows) {
    CAPTURE(row.text("id"));
    const Mixture* mixture = find_mixture(row.text("id"));
    REQUIRE(mixture != nullptr);
    REQUIRE(static_cast<bool>(mixture->composition));
    const Composition& food = *mixture->composition;
    double sum = 0.0;
    const auto check = [&](const char* name, double share) {
      CAPTURE(std::string(name));
      CHECK(std::abs(share - row.number(name)) < 0.0002);
      sum += row.number(name);
    };
    check("water", food.water);
    check("protein", food.protein);
    check("fat", food.fat);
    check("carbohydrate", food.carbohydrate);
    check("fibre", food.fibre);
    check("ash", food.ash);
    CHECK(std::abs(sum - 1.0) < 0.005);
    CHECK(std::abs(food.sugar.value_or(-1.0) - row.number("sugar")) < 0.0002);
  }
}

TEST_CASE("a composition with its air weighs what the catalogue says of the mixture, within 2 %") {
  for (const Mixture& mixture : catalogue_mixtures()) {
    CAPTURE(mixture.id);
    REQUIRE(static_cast<bool>(mixture.composition));
    const double density = quantity_of(mixture.density, Dimension::kDensity).value_or(0.0);
    CHECK(std::abs(food_properties(*mixture.composition, kDensityTemperature).density / density - 1.0) < 0.02);
  }
}

TEST_CASE("mixtures come near the published composition of the same food") {
  // tests/reference/mixture_published.csv: USDA SR rows, with why they may differ.
  int compared = 0;
  for (const reference::Row& row : reference::rows(kMixturePublishedCsv)) {
    CAPTURE(row.text("food"));
    const Mixture* mixture = find_mixture(row.text("mixture"));
    REQUIRE(mixture != nullptr);
    REQUIRE(static_cast<bool>(mixture->composition));
    Label ours = label_of(*mixture->composition);
    Label theirs = label_of(row, "");
    const Label crust = label_of(row, "crust_");
    const double share = row.number("crust_share");
    for (std::size_t i = 0; i < ours.size(); ++i) ours[i] += share * (crust[i] - ours[i]);
    if (row.text("basis") == "dry") {
      ours = dried(ours);
      theirs = dried(theirs);
    }
    for (std::size_t i = 0; i < ours.size(); ++i) {
      CAPTURE(std::string(kLabel[i]));
      const bool is_small = i == 1 || i == 4;  // protein and ash
      CHECK(std::abs(ours[i] - theirs[i]) < row.number("within") * (is_small ? 0.5 : 1.0));
    }
    ++compared;
  }
  CHECK(compared >= 5);
}

TEST_CASE("no mixture holds less energy than fruit or more than nuts in butter") {
  // Raw apples have 52 kcal in 100 g and pecans 691 (USDA SR 09003 and 12142, from memory); batter and dough lie
  // between.
  for (const Mixture& mixture : catalogue_mixtures()) {
    CAPTURE(mixture.id);
    REQUIRE(static_cast<bool>(mixture.composition));
    CHECK(label_energy(*mixture.composition) > 52.0);
    CHECK(label_energy(*mixture.composition) < 691.0);
  }
  REQUIRE(find_mixture("whipped-cream") != nullptr);
  // Heavy cream: 345 kcal in 100 g (USDA SR 01053, from memory); its own factors of milk are a little below Atwater's.
  CHECK(label_energy(*find_mixture("whipped-cream")->composition) == doctest::Approx(345.0).epsilon(0.03));
}

TEST_CASE("what is done is warm enough to be set, and both lie where a kitchen thermometer finds them") {
  int done = 0;
  int setting = 0;
  for (const Mixture& mixture : catalogue_mixtures()) {
    CAPTURE(mixture.id);
    if (mixture.done) {
      CHECK(mixture.done->low < mixture.done->high);
      CHECK(mixture.done->low >= kZeroCelsius + 60.0);
      CHECK(mixture.done->high <= kZeroCelsius + 100.0);
      CHECK_FALSE(mixture.done_source.empty());
      ++done;
    }
    if (mixture.sets_at) {
      CHECK(*mixture.sets_at >= kZeroCelsius + 65.0);
      CHECK(*mixture.sets_at <= kZeroCelsius + 90.0);
      CHECK_FALSE(mixture.sets_source.empty());
      if (mixture.done) CHECK(*mixture.sets_at <= mixture.done->high);
      ++setting;
    }
  }
  CHECK(done >= 20);
  CHECK(setting >= 8);
  REQUIRE(find_mixture("egg-custard") != nullptr);
  const Mixture& custard = *find_mixture("egg-custard");
  REQUIRE(static_cast<bool>(custard.done));
  CHECK(custard.done->low == doctest::Approx(kZeroCelsius + 79.0));
  CHECK(custard.sets_at.value_or(0.0) == doctest::Approx(kZeroCelsius + 75.0));
}

}  // namespace tinwright
