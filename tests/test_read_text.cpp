// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Which line of a pasted text is what. Whole recipes are in test_read_recipes.cpp.
#include "app/recipe/read_text.h"

#include <string>
#include <string_view>

#include <doctest/doctest.h>

#include "app/recipe/part_role.h"

using namespace tinwright;

namespace {

std::string parts_of(const ListedRecipe& recipe) {
  std::string words;
  for (const ListedPart& part : recipe.parts) {
    words += "[" + part.heading + "]";
    for (const std::string& line : part.lines) words += line + "/";
  }
  return words;
}

std::string steps_of(const ListedRecipe& recipe) {
  std::string words;
  for (const std::string& step : recipe.steps) words += step + "/";
  return words;
}

}  // namespace

TEST_CASE("headings part the list from the steps") {
  const ListedRecipe recipe =
      list_text("Title\n\nIngredients\n\n1 egg\n2 tbsp milk\n\nMethod\n\nMix.\n\nBake.\n\nNotes\nNice.");
  CHECK(recipe.name == "Title");
  CHECK(parts_of(recipe) == "[]1 egg/2 tbsp milk/");
  CHECK(steps_of(recipe) == "Mix./Bake./");
  REQUIRE(recipe.unread.size() == 1);
  CHECK(recipe.unread[0] == "Nice.");
}

TEST_CASE("words for the two sections are many") {
  for (const std::string_view list : {"Ingredients", "INGREDIENTS:", "**Ingredients**", "## Ingredients",
                                      "You will need:", "What you need", "Zutaten"}) {
    for (const std::string_view method :
         {"Method", "DIRECTIONS", "Instructions:", "## Preparation", "How to make it", "Steps"}) {
      const std::string text = "T\n" + std::string(list) + "\n1 egg\n" + std::string(method) + "\nMix.";
      CAPTURE(text);
      const ListedRecipe recipe = list_text(text);
      CHECK(parts_of(recipe) == "[]1 egg/");
      CHECK(steps_of(recipe) == "Mix./");
    }
  }
}

TEST_CASE("without headings the look of the lines decides") {
  const ListedRecipe recipe = list_text(
      "Title\n100 g flour\n1 egg\nsalt, to taste\nMix it all well and leave for a while.\nBake at 180C for 20 "
      "minutes.");
  CHECK(recipe.name == "Title");
  CHECK(parts_of(recipe) == "[]100 g flour/1 egg/salt, to taste/");
  CHECK(steps_of(recipe) == "Mix it all well and leave for a while./Bake at 180C for 20 minutes./");
}

TEST_CASE("a list without its heading may still have parts") {
  const ListedRecipe recipe =
      list_text("Title\n\nFor the base:\n100 g flour\n\nFor the filling:\n2 eggs\n\n1. Mix.\n2. Bake.");
  CHECK(parts_of(recipe) == "[Base]100 g flour/[Filling]2 eggs/");
  CHECK(steps_of(recipe) == "Mix./Bake./");
}

TEST_CASE("numbers of steps are taken off, amounts are not") {
  CHECK(without_number("1. Mix") == "Mix");
  CHECK(without_number("2) Mix") == "Mix");
  CHECK(without_number("Step 3: Mix") == "Mix");
  CHECK(without_number("STEP 3") == "");
  CHECK(without_number("10. Bake 10 minutes") == "Bake 10 minutes");
  CHECK(without_number("2 eggs go in") == "2 eggs go in");
  CHECK(without_number("1.5 cups go in") == "1.5 cups go in");
  CHECK(without_number("- Mix") == "Mix");
}

TEST_CASE("facts about the whole are taken from their lines") {
  const ListedRecipe recipe = list_text(
      "T\nServes 8\nPrep time: 20 minutes\nCook time 1 hour\nTotal: 1 h 20 min\nIngredients\n1 egg\nMethod\nMix.");
  CHECK(recipe.yield == "Serves 8");
  CHECK(recipe.prep_time == "20 minutes");
  CHECK(recipe.cook_time == "1 hour");
  CHECK(recipe.total_time == "1 h 20 min");
  CHECK(list_text("T\nYield: 2 pies\n1 egg\nMix the egg.").yield == "2 pies");
  CHECK(list_text("T\nMakes 12 squares\n1 egg\nMix the egg.").yield == "Makes 12 squares");
  CHECK(list_text("T\nServings: 6\n1 egg\nMix the egg.").yield == "6 servings");
}

TEST_CASE("several facts on one line are told apart") {
  const ListedRecipe recipe = list_text("T\nServes 8 | Prep 20 mins | Cook 50 mins\nIngredients\n1 egg\nMethod\nMix.");
  CHECK(recipe.yield == "Serves 8");
  CHECK(recipe.prep_time == "20 mins");
  CHECK(recipe.cook_time == "50 mins");
  const ListedRecipe run = list_text("T\nPrep: 10 min Cook: 1 h Total: 70 min\nIngredients\n1 egg\nMethod\nMix.");
  CHECK(run.prep_time == "10 min");
  CHECK(run.cook_time == "1 h");
  CHECK(run.total_time == "70 min");
}

TEST_CASE("a title may say how many it serves") {
  const ListedRecipe recipe = list_text("Plum cake (serves 8)\n\n200 g flour\n2 eggs\n\nMix well and bake.");
  CHECK(recipe.name == "Plum cake");
  CHECK(recipe.yield == "serves 8");
  CHECK(parts_of(recipe) == "[]200 g flour/2 eggs/");
}

TEST_CASE("steps that run on in one line are parted at their numbers") {
  CHECK(steps_of(list_text("T\nIngredients\n1 egg\nMethod\n1. Heat. 2. Mix. 3. Bake.")) == "Heat./Mix./Bake./");
  CHECK(steps_of(list_text("T\nIngredients\n1 egg\nMethod\n1 Heat the oven to 180C.\n2 Mix it all together.")) ==
        "Heat the oven to 180C./Mix it all together./");
}

TEST_CASE("a numbered list of ingredients is no list of steps") {
  const ListedRecipe recipe = list_text("T\nIngredients\n1. 200 g flour\n2. 2 eggs\nMethod\n1. Mix.");
  CHECK(parts_of(recipe) == "[]200 g flour/2 eggs/");
  CHECK(steps_of(recipe) == "Mix./");
}

TEST_CASE("a heading is no ingredient") {
  for (const std::string_view line :
       {"For the crust:", "For the crust", "Filling", "Filling:", "CRUMB TOPPING", "**Topping**", "# Base",
        "Crumb mixture", "To serve", "For the caramel sauce:", "Base layer"}) {
    CAPTURE(line);
    CHECK(is_part_heading(line));
  }
  for (const std::string_view line : {"200 g flour", "salt", "Icing sugar", "butter, for the tin", "1 pie crust",
                                      "Salt and pepper", "for greasing, butter", "SALT", "", "Flour: 200 g"}) {
    CAPTURE(line);
    CHECK_FALSE(is_part_heading(line));
  }
}

TEST_CASE("words and steps tell what a part is") {
  CHECK(role_of("Filling", {}) == "filling");
  CHECK(role_of("Lemon filling", {}) == "filling");
  CHECK(role_of("Topping", {}) == "topping");
  CHECK(role_of("Crumble topping", {}) == "topping");
  CHECK(role_of("Crumb mixture", {}) == "crumbled");
  CHECK(role_of("Biscuit base", {}) == "base");
  CHECK(role_of("Pastry", {}) == "lining");
  CHECK(role_of("Tart shell", {}) == "lining");
  CHECK(role_of("Crust", {"Press evenly into the base of the tin."}) == "base");
  CHECK(role_of("Crust", {"Press over the base and up the sides."}) == "lining");
  CHECK(role_of("Crust", {"Roll out the dough."}) == "lining");
  CHECK(role_of("", {}) == "");
  CHECK(role_of("To serve", {}) == "");
  CHECK(part_name("For the crust:") == "Crust");
  CHECK(part_name("**LEMON FILLING**") == "Lemon filling");
  CHECK(part_name("Ingredients:") == "");
}
