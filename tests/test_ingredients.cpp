// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The catalogue of ingredients: complete, possible, sourced, and in agreement with published weights and compositions.
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <set>
#include <string>
#include <string_view>

#include <doctest/doctest.h>

#include "app/files/food_words.h"
#include "app/files/ingredients.h"
#include "app/files/json_tree.h"
#include "app/quantity/parse.h"
#include "geometry/heat/food_properties.h"
#include "tests/csv_rows.h"

namespace tinwright {

extern const std::string_view kIngredientsJson;
extern const std::string_view kIngredientsPublishedCsv;

namespace {

constexpr double kUsCup = 236.5882365e-6;  // [m³] 1/16 US gallon of 231 in³

const Ingredient& ingredient(std::string_view id) {
  const Ingredient* found = find_ingredient(id);
  REQUIRE(found != nullptr);
  return *found;
}

/// Grams in a measure of the published table ("cup", "tsp"); NaN where the catalogue has no density.
double grams_in(const Ingredient& one, const std::string& measure) {
  const auto volume = parse_quantity("1 " + measure, Dimension::kVolume);
  REQUIRE(static_cast<bool>(volume));
  return 1000.0 * weigh_volume(one, *volume).value_or(std::numeric_limits<double>::quiet_NaN());
}

double grams_of(const Ingredient& one, double count, std::string_view size = "") {
  return 1000.0 * weigh_pieces(one, count, size).value_or(std::numeric_limits<double>::quiet_NaN());
}

bool has(const std::vector<std::string>& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

TEST_CASE("at least 120 ingredients, each with its own id, name and source") {
  CHECK(catalogue_ingredients().size() >= 120);
  std::set<std::string> ids;
  for (const Ingredient& one : catalogue_ingredients()) {
    CAPTURE(one.id);
    CHECK(ids.insert(one.id).second);
    CHECK(one.id.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") == std::string::npos);
    CHECK_FALSE(one.name.empty());
    CHECK_FALSE(one.source.empty());
    CHECK(find_ingredient(one.id) == &one);
  }
  CHECK(find_ingredient("no-such-thing") == nullptr);
}

TEST_CASE("no two ingredients, nor one of them twice, have the same words") {
  std::set<std::vector<std::string>> seen;
  const auto note = [&](const std::string& words) {
    CAPTURE(words);
    CHECK(seen.insert(plain_words(words)).second);
  };
  for (const Ingredient& one : catalogue_ingredients()) {
    note(one.name);
    for (const std::string& alias : one.aliases) note(alias);
    for (const std::string& alias : one.loosely) note(alias);
  }
  for (const std::string& other : foods_not_catalogued()) note(other);
}

TEST_CASE("what an entry says is read in full: shares, density and pieces") {
  const auto tree = read_json(kIngredientsJson);
  REQUIRE(static_cast<bool>(tree));
  const JsonNode& list = tree->items.back();
  REQUIRE(list.items.size() == catalogue_ingredients().size());
  for (std::size_t i = 0; i < list.items.size(); ++i) {
    const Ingredient& one = catalogue_ingredients()[i];
    CAPTURE(one.id);
    const auto& keys = list.items[i].keys;
    CHECK(has(keys, "holds") == static_cast<bool>(one.composition));
    CHECK(has(keys, "density") == static_cast<bool>(one.cup_density));
    CHECK(has(keys, "keeps") == static_cast<bool>(one.keeps));
    const auto pieces = std::find(keys.begin(), keys.end(), "pieces");
    const std::size_t count =
        pieces == keys.end() ? 0 : list.items[i].items[static_cast<std::size_t>(pieces - keys.begin())].items.size();
    CHECK(one.pieces.size() == count);
  }
}

TEST_CASE("nearly all have a composition, and its shares as written sum to 100 g within 1 g") {
  const auto tree = read_json(kIngredientsJson);
  REQUIRE(static_cast<bool>(tree));
  int without = 0;
  for (const JsonNode& entry : tree->items.back().items) {
    const auto key = std::find(entry.keys.begin(), entry.keys.end(), "holds");
    if (key == entry.keys.end()) {
      ++without;
      continue;
    }
    const JsonNode& shares = entry.items[static_cast<std::size_t>(key - entry.keys.begin())];
    REQUIRE(shares.items.size() == 7);
    CAPTURE(shares.line);
    double sum = 0.0;
    for (std::size_t i = 0; i < 6; ++i) sum += std::strtod(shares.items[i].text.c_str(), nullptr);
    CHECK(std::abs(sum - 100.0) < 1.0);
  }
  CHECK(without <= 6);
}

TEST_CASE("cup densities lie between puffed and solid, and no cup holds more than the food without air") {
  // The second bound comes from Choi & Okos (1986) by composition; 6 %: USDA rounds spoons to the gram (2.5 %), and fat
  // is taken as liquid by those formulas (butter 3 %).
  for (const Ingredient& one : catalogue_ingredients()) {
    CAPTURE(one.id);
    if (!one.cup_density) {
      CHECK_FALSE(one.pieces.empty());
      continue;
    }
    CHECK(*one.cup_density > 100.0);
    CHECK(*one.cup_density < 2200.0);
    if (!one.composition) continue;
    CHECK(*one.cup_density < 1.06 * food_properties(*one.composition, kDensityTemperature).density);
  }
}

TEST_CASE("what pours fills the cup: its density is that of its composition within 4 %") {
  for (const char* id : {"milk",           "skimmed-milk", "buttermilk",      "evaporated-milk", "condensed-milk",
                         "whipping-cream", "double-cream", "single-cream",    "half-cream",      "honey",
                         "maple-syrup",    "corn-syrup",   "dark-corn-syrup", "golden-syrup",    "black-treacle",
                         "agave-syrup",    "lemon-juice",  "orange-juice",    "lime-juice",      "apple-juice",
                         "coffee",         "water",        "vegetable-oil",   "olive-oil",       "soya-milk",
                         "oat-milk",       "egg",          "egg-yolk",        "egg-white"}) {
    CAPTURE(std::string(id));
    const Ingredient& one = ingredient(id);
    REQUIRE(static_cast<bool>(one.composition));
    const double without_air = food_properties(*one.composition, kDensityTemperature).density;
    CHECK(std::abs(one.cup_density.value_or(0.0) / without_air - 1.0) < 0.04);
  }
}

TEST_CASE("weights of cups, spoons and pieces are those that USDA published, within 1 %") {
  // tests/reference/ingredients_published.csv. 1 %: pieces are written with one or two digits.
  int measures = 0;
  int pieces = 0;
  for (const reference::Row& row : reference::rows(kIngredientsPublishedCsv)) {
    CAPTURE(row.text("id"));
    const Ingredient& one = ingredient(row.text("id"));
    CHECK(one.source.rfind("USDA SR " + row.text("usda"), 0) == 0);
    if (!row.text("measure").empty()) {
      CHECK(grams_in(one, row.text("measure")) == doctest::Approx(row.number("grams")).epsilon(0.01));
      ++measures;
    }
    if (row.text("pieces").empty()) continue;
    for (const std::string& piece : reference::split(row.text("pieces"), ';')) {
      const auto cells = reference::split(piece, '=');
      REQUIRE(cells.size() == 2);
      CAPTURE(piece);
      CHECK(grams_of(one, 1.0, cells[0]) == doctest::Approx(std::strtod(cells[1].c_str(), nullptr)).epsilon(0.01));
      ++pieces;
    }
  }
  CHECK(measures >= 100);
  CHECK(pieces >= 40);
}

TEST_CASE("compositions are those that USDA published, to what the catalogue's digits can say") {
  // The catalogue has one decimal of a gram in 100 g and scales to the whole: 0.05 for the digit, 1 % for the scaling.
  int compared = 0;
  for (const reference::Row& row : reference::rows(kIngredientsPublishedCsv)) {
    if (row.text("composition") != "yes") continue;
    CAPTURE(row.text("id"));
    const Ingredient& one = ingredient(row.text("id"));
    REQUIRE(static_cast<bool>(one.composition));
    const Composition& food = *one.composition;
    const auto check = [&](const char* name, double share) {
      CAPTURE(std::string(name));
      CHECK(std::abs(100.0 * share - row.number(name)) < 0.11 + 0.01 * row.number(name));
    };
    check("water", food.water);
    check("protein", food.protein);
    check("fat", food.fat);
    check("carbohydrate", food.carbohydrate + food.fibre);
    check("fibre", food.fibre);
    check("ash", food.ash);
    ++compared;
  }
  CHECK(compared >= 100);
}

TEST_CASE("the weights every baker knows") {
  // NIST, Cooking measurement equivalencies (1 cup of water 237 g by SP 430's 237 ml); USDA SR, household weights.
  CHECK(1000.0 * *weigh_volume(ingredient("plain-flour"), kUsCup) == doctest::Approx(125.0).epsilon(1e-9));
  CHECK(1000.0 * *weigh_volume(ingredient("granulated-sugar"), kUsCup) == doctest::Approx(200.0).epsilon(1e-9));
  CHECK(1000.0 * *weigh_volume(ingredient("butter"), kUsCup) == doctest::Approx(227.0).epsilon(1e-9));
  CHECK(1000.0 * *weigh_volume(ingredient("water"), kUsCup) == doctest::Approx(237.0).epsilon(1e-9));
  CHECK(grams_of(ingredient("egg"), 3.0) == doctest::Approx(150.0));
  CHECK(grams_of(ingredient("butter"), 0.5, "sticks") == doctest::Approx(56.5));
}

TEST_CASE("weights grow with the amount, and a size that is not there weighs nothing at all") {
  const Ingredient& egg = ingredient("egg");
  CHECK(grams_of(egg, 2.0, "Large") == doctest::Approx(100.0));
  CHECK(grams_of(egg, 2.0) == grams_of(egg, 2.0, "large"));
  CHECK(grams_of(egg, 0.0) == 0.0);
  CHECK_FALSE(static_cast<bool>(weigh_pieces(egg, 1.0, "enormous")));
  CHECK_FALSE(static_cast<bool>(weigh_pieces(ingredient("water"), 1.0)));
  CHECK_FALSE(static_cast<bool>(weigh_volume(ingredient("puff-pastry"), 1e-3)));
  CHECK(*weigh_volume(egg, 0.0) == 0.0);
}

TEST_CASE("yolk and white leave each other over, and make up the egg of their size within 2 g") {
  const Ingredient& yolk = ingredient("egg-yolk");
  const Ingredient& white = ingredient("egg-white");
  CHECK(yolk.left_over == "egg-white");
  CHECK(white.left_over == "egg-yolk");
  for (const PieceWeight& size : ingredient("egg").pieces) {
    CAPTURE(size.name);
    const double parts = grams_of(yolk, 1.0, size.name) + grams_of(white, 1.0, size.name);
    CHECK(std::abs(parts - 1000.0 * size.mass) < 2.0);
  }
}

TEST_CASE("what is left over exists, keeps, and has the same sizes") {
  for (const Ingredient& one : catalogue_ingredients()) {
    if (one.left_over.empty()) continue;
    CAPTURE(one.id);
    const Ingredient& rest = ingredient(one.left_over);
    CHECK(static_cast<bool>(rest.keeps));
    for (const PieceWeight& size : one.pieces) CHECK(static_cast<bool>(weigh_pieces(rest, 1.0, size.name)));
  }
}

TEST_CASE("keeping times are days in the refrigerator and, if at all, months in the freezer, with a source") {
  int keeping = 0;
  for (const Ingredient& one : catalogue_ingredients()) {
    if (!one.keeps) continue;
    CAPTURE(one.id);
    const int days = std::atoi(one.keeps->refrigerator.c_str());
    CHECK(one.keeps->refrigerator == std::to_string(days) + " days");
    CHECK(days >= 1);
    CHECK(days <= 30);
    const int months = std::atoi(one.keeps->freezer.c_str());
    if (!one.keeps->freezer.empty()) CHECK(one.keeps->freezer == std::to_string(months) + " months");
    CHECK(months <= 12);
    CHECK_FALSE(one.keeps->source.empty());
    ++keeping;
  }
  CHECK(keeping >= 10);
  // USDA FSIS, Shell Eggs from Farm to Table: raw whites and yolks 2 to 4 days; yolks are given the shorter end.
  CHECK(ingredient("egg-white").keeps->refrigerator == "4 days");
  CHECK(ingredient("egg-yolk").keeps->refrigerator == "2 days");
  CHECK(ingredient("egg-yolk").keeps->freezer == "12 months");
}

TEST_CASE("allergens are words of Regulation (EU) 1169/2011, annex II, and stand where they must") {
  const std::vector<std::string> known{"gluten", "eggs", "peanuts", "soya", "milk", "nuts", "sesame", "sulphites"};
  for (const Ingredient& one : catalogue_ingredients()) {
    CAPTURE(one.id);
    for (const std::string& word : one.allergens) CHECK(has(known, word));
    if (one.egg) CHECK(has(one.allergens, "eggs"));
    if (one.dairy) CHECK(has(one.allergens, "milk"));
  }
  for (const char* id : {"plain-flour", "semolina", "rye-flour", "oats", "digestive-biscuits", "filo-pastry"}) {
    CHECK(has(ingredient(id).allergens, "gluten"));
  }
  for (const char* id : {"rice-flour", "cornflour", "buckwheat-flour", "polenta"}) {
    CHECK_FALSE(has(ingredient(id).allergens, "gluten"));
  }
  for (const char* id : {"butter", "whipping-cream", "milk-chocolate", "cheddar"}) {
    CHECK(has(ingredient(id).allergens, "milk"));
  }
  CHECK(has(ingredient("ground-almonds").allergens, "nuts"));
  CHECK_FALSE(has(ingredient("coconut-milk").allergens, "nuts"));  // no nut in the regulation's sense
}

TEST_CASE("raising agents, salt, fresh egg and fresh dairy are marked, and only they") {
  const auto marked = [](bool Ingredient::*flag) {
    std::set<std::string> ids;
    for (const Ingredient& one : catalogue_ingredients()) {
      if (one.*flag) ids.insert(one.id);
    }
    return ids;
  };
  using Ids = std::set<std::string>;
  CHECK(marked(&Ingredient::leavening) ==
        Ids{"baking-powder", "bicarbonate-of-soda", "cream-of-tartar", "dried-yeast", "fresh-yeast"});
  CHECK(marked(&Ingredient::salt) == Ids{"salt", "coarse-salt"});
  CHECK(marked(&Ingredient::egg) == Ids{"egg", "egg-yolk", "egg-white"});
  CHECK(marked(&Ingredient::dairy).count("cream-cheese") == 1);
  CHECK(marked(&Ingredient::dairy).count("butter") == 0);
}

}  // namespace tinwright
