// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Lines of ingredients as they are found, against what they say. The table was written by hand.
#include "app/recipe/read_ingredient.h"

#include <string>
#include <string_view>

#include <doctest/doctest.h>

#include "app/quantity/characters.h"
#include "app/quantity/number.h"
#include "app/quantity/parse.h"
#include "app/recipe/plain_text.h"
#include "tests/recipe_words.h"

using namespace tinwright;

namespace {

struct Row {
  std::string_view line;
  std::string_view words;  // amount | size | each | food | remark
};

bool is_mass_or_volume(const std::string& text) {
  return static_cast<bool>(parse_quantity(text, Dimension::kMass)) ||
         static_cast<bool>(parse_quantity(text, Dimension::kVolume));
}

bool is_plain_number(const std::string& text) {
  const auto characters = read_characters(text);
  if (!characters) return false;
  Cursor cursor(*characters);
  return static_cast<bool>(read_number(cursor)) && cursor.at_end();
}

void check_readable(const IngredientDraft& draft) {
  if (!draft.amount.empty()) CHECK((is_mass_or_volume(draft.amount) || is_plain_number(draft.amount)));
  if (!draft.up_to.empty()) CHECK((is_mass_or_volume(draft.up_to) || is_plain_number(draft.up_to)));
  if (!draft.each.empty()) CHECK(is_mass_or_volume(draft.each));
}

constexpr Row kUnderstood[] = {
    // Numbers
    {"250 g plain flour", "250 g | _ | _ | plain flour | _"},
    {"250g plain flour", "250 g | _ | _ | plain flour | _"},
    {"1 1/2 cups sugar", "1 1/2 cup | _ | _ | sugar | _"},
    {"1½ cups sugar", "1 1/2 cup | _ | _ | sugar | _"},
    {"1 ½ cups sugar", "1 1/2 cup | _ | _ | sugar | _"},
    {"1-1/2 cups sugar", "1 1/2 cup | _ | _ | sugar | _"},
    {"1 and 1/2 cups sugar", "1 1/2 cup | _ | _ | sugar | _"},
    {"one and a half cups sugar", "1 1/2 cup | _ | _ | sugar | _"},
    {"½ tsp salt", "1/2 tsp | _ | _ | salt | _"},
    {"⅓ cup oil", "1/3 cup | _ | _ | oil | _"},
    {"2⅔ cups flour", "2 2/3 cup | _ | _ | flour | _"},
    {"1⁄2 cup oil", "1/2 cup | _ | _ | oil | _"},
    {"0.5 l milk", "0.5 l | _ | _ | milk | _"},
    {".5 cup milk", "0.5 cup | _ | _ | milk | _"},
    {"2,5 dl milk", "2.5 dl | _ | _ | milk | _"},
    {"1/2tsp salt", "1/2 tsp | _ | _ | salt | _"},
    {"half a lemon", "1/2 | _ | _ | lemon | _"},
    {"½ of a lemon", "1/2 | _ | _ | lemon | _"},
    {"half a dozen eggs", "6 | _ | _ | eggs | _"},
    {"1 dozen eggs", "12 | _ | _ | eggs | _"},
    {"a dozen quail eggs", "12 | _ | _ | quail eggs | _"},
    {"one egg", "1 | _ | _ | egg | _"},
    {"two eggs", "2 | _ | _ | eggs | _"},
    {"an egg", "1 | _ | _ | egg | _"},
    {"three quarters of a cup of milk", "3/4 cup | _ | _ | milk | _"},
    {"a quarter of a teaspoon of mace", "1/4 tsp | _ | _ | mace | _"},
    {"about 12 biscuits", "12 | _ | _ | biscuits | about"},
    {"approx. 200 g biscuits", "200 g | _ | _ | biscuits | approx."},
    // Ranges
    {"2-3 tbsp water", "2 tbsp .. 3 tbsp | _ | _ | water | _"},
    {"2 to 3 tablespoons cold water", "2 tbsp .. 3 tbsp | _ | _ | cold water | _"},
    {"2–3 Tbsp. water", "2 tbsp .. 3 tbsp | _ | _ | water | _"},
    {"1–1½ cups milk", "1 cup .. 1 1/2 cup | _ | _ | milk | _"},
    {"1/2-3/4 cup milk", "1/2 cup .. 3/4 cup | _ | _ | milk | _"},
    {"1 tsp to 1 tbsp honey", "1 tsp .. 1 tbsp | _ | _ | honey | _"},
    {"100 g - 120 g sugar", "100 g .. 120 g | _ | _ | sugar | _"},
    {"3 or 4 apples", "3 .. 4 | _ | _ | apples | _"},
    {"8-10 digestive biscuits", "8 .. 10 | _ | _ | digestive biscuits | _"},
    {"5-6 sheets filo pastry", "5 .. 6 | sheet | _ | filo pastry | _"},
    // Units in all their spellings
    {"2 T butter", "2 tbsp | _ | _ | butter | _"},
    {"1 t vanilla", "1 tsp | _ | _ | vanilla | _"},
    {"1 Tbs. honey", "1 tbsp | _ | _ | honey | _"},
    {"3 tblsp cocoa", "3 tbsp | _ | _ | cocoa | _"},
    {"1 c. sugar", "1 cup | _ | _ | sugar | _"},
    {"2 C flour", "2 cup | _ | _ | flour | _"},
    {"8 oz. self-raising flour", "8 oz | _ | _ | self-raising flour | _"},
    {"1 fl. oz. rum", "1 fl oz | _ | _ | rum | _"},
    {"2 fluid ounces rum", "2 fl oz | _ | _ | rum | _"},
    {"2 lbs. apples", "2 lb | _ | _ | apples | _"},
    {"1 pound plums", "1 lb | _ | _ | plums | _"},
    {"250 gr flour", "250 g | _ | _ | flour | _"},
    {"250 grams flour", "250 g | _ | _ | flour | _"},
    {"1kg pears", "1 kg | _ | _ | pears | _"},
    {"1 kilo of pears", "1 kg | _ | _ | pears | _"},
    {"300ml cream", "300 ml | _ | _ | cream | _"},
    {"3 dl cream", "3 dl | _ | _ | cream | _"},
    {"20 cl cream", "20 cl | _ | _ | cream | _"},
    {"1 litre whole milk", "1 l | _ | _ | whole milk | _"},
    {"1 pint cream", "1 pt | _ | _ | cream | _"},
    {"1 quart milk", "1 qt | _ | _ | milk | _"},
    {"1 metric cup oats", "1 metric cup | _ | _ | oats | _"},
    {"1 heaped tsp cinnamon", "1 tsp | _ | _ | cinnamon | heaped"},
    {"2 level tablespoons cornflour", "2 tbsp | _ | _ | cornflour | level"},
    {"1 cuillère à soupe de sucre", "1 metric tbsp | _ | _ | sucre | _"},
    {"1 Pck. Vanillezucker", "1 | packet | _ | Vanillezucker | _"},
    {"1 EL Zucker", "1 metric tbsp | _ | _ | Zucker | _"},
    {"200 g de farine", "200 g | _ | _ | farine | _"},
    // Sums
    {"6 tablespoons plus 1 teaspoon sugar", "6 tbsp 1 tsp | _ | _ | sugar | _"},
    {"1 cup + 2 tbsp flour", "1 cup 2 tbsp | _ | _ | flour | _"},
    {"1 cup and 2 tablespoons flour", "1 cup 2 tbsp | _ | _ | flour | _"},
    {"2 tsp plus 1 tbsp oil", "1 tbsp 2 tsp | _ | _ | oil | _"},
    {"1 teaspoon plus a pinch of salt", "1 tsp | _ | _ | salt | plus a pinch"},
    {"1 lb 4 oz apples", "1 lb 4 oz | _ | _ | apples | _"},
    // Two measures
    {"1 cup (120 g) flour", "120 g | _ | _ | flour | 1 cup"},
    {"115g/4oz butter", "115 g | _ | _ | butter | 4oz"},
    {"4oz/115g butter", "115 g | _ | _ | butter | 4oz"},
    {"12 oz (350 g) pumpkin", "350 g | _ | _ | pumpkin | 12 oz"},
    {"1kg/2lb 4oz apples", "1 kg | _ | _ | apples | 2lb 4oz"},
    {"300ml/½ pint double cream", "300 ml | _ | _ | double cream | ½ pint"},
    {"2 cups all-purpose flour (240 g)", "240 g | _ | _ | all-purpose flour | 2 cups"},
    {"240 g flour (2 cups)", "240 g | _ | _ | flour | 2 cups"},
    {"200 grams (7 oz / 1 cup) caster sugar", "200 g | _ | _ | caster sugar | 7 oz / 1 cup"},
    {"4 tbsp (60 ml) oil", "60 ml | _ | _ | oil | 4 tbsp"},
    {"1 cup / 240 ml milk", "240 ml | _ | _ | milk | 1 cup"},
    {"1 cup milk (240 ml), warm", "240 ml | _ | _ | milk | 1 cup, warm"},
    {"1/2 cup (1 stick) butter", "1/2 cup | _ | _ | butter | 1 stick"},
    {"2 sticks (1 cup/226 g) butter", "226 g | _ | _ | butter | 2 sticks, 1 cup"},
    // Pieces
    {"2 large eggs, separated", "2 | large | _ | eggs | separated"},
    {"1 medium-sized egg", "1 | medium | _ | egg | _"},
    {"1 extra-large egg", "1 | extra large | _ | egg | _"},
    {"3 egg whites", "3 | _ | _ | egg whites | _"},
    {"4 egg yolks, lightly beaten", "4 | _ | _ | egg yolks | lightly beaten"},
    {"1 vanilla pod, split", "1 | _ | _ | vanilla pod | split"},
    {"1 stick butter", "1 | stick | _ | butter | _"},
    {"a pinch of salt", "1 | pinch | _ | salt | _"},
    {"pinch salt", "1 | pinch | _ | salt | _"},
    {"2 pinches ground cloves", "2 | pinch | _ | ground cloves | _"},
    {"a generous handful of raisins", "1 | handful | _ | raisins | generous"},
    {"2 cloves garlic", "2 | clove | _ | garlic | _"},
    {"1 clove", "1 | _ | _ | clove | _"},
    {"4 sheets gelatine", "4 | sheet | _ | gelatine | _"},
    {"1 large (200 g) apple", "1 | large | 200 g | apple | _"},
    {"one 9-inch unbaked pie crust", "1 | _ | _ | unbaked pie crust | 9-inch"},
    {"1 (9-inch) pie crust", "1 | _ | _ | pie crust | 9-inch"},
    {"a 2 cm piece of ginger, grated", "1 | piece | _ | ginger | 2 cm, grated"},
    // Packings
    {"1 (14-ounce) can condensed milk", "1 | can | 14 oz | condensed milk | _"},
    {"1 14-oz. can condensed milk", "1 | can | 14 oz | condensed milk | _"},
    {"1 can (14 oz) condensed milk", "1 | can | 14 oz | condensed milk | _"},
    {"1 (14-ounce/396 g) can condensed milk", "1 | can | 396 g | condensed milk | _"},
    {"a 400g tin of plums", "1 | tin | 400 g | plums | _"},
    {"400g tin plums, drained", "1 | tin | 400 g | plums | drained"},
    {"2 x 400g tins chopped plums", "2 | tin | 400 g | chopped plums | _"},
    {"2 × 400 g cans plums", "2 | can | 400 g | plums | _"},
    {"2 (8 oz) packages cream cheese", "2 | package | 8 oz | cream cheese | _"},
    {"2 packages (8 oz each) cream cheese", "2 | package | 8 oz | cream cheese | _"},
    {"two 8-ounce packages cream cheese", "2 | package | 8 oz | cream cheese | _"},
    {"½ (17.3 ounce) package frozen puff pastry, thawed", "1/2 | package | 17.3 oz | frozen puff pastry | thawed"},
    {"12-oz bag chocolate chips", "1 | bag | 12 oz | chocolate chips | _"},
    {"1 (7 g) sachet yeast", "1 | sachet | 7 g | yeast | _"},
    {"1 jar jam", "1 | jar | _ | jam | _"},
    // The amount behind
    {"flour 250 g", "250 g | _ | _ | flour | _"},
    {"Flour: 250 g", "250 g | _ | _ | Flour | _"},
    {"butter - 100g", "100 g | _ | _ | butter | _"},
    {"Butter (100 g)", "100 g | _ | _ | Butter | _"},
    {"sugar ..... 200 g", "200 g | _ | _ | sugar | _"},
    {"eggs x2", "2 | _ | _ | eggs | _"},
    {"Eggs: 3", "3 | _ | _ | Eggs | _"},
    {"70% chocolate 200 g", "200 g | _ | _ | 70% chocolate | _"},
    // A part of the food
    {"juice of 1 lemon", "1 | _ | _ | lemon | juice"},
    {"juice of a lemon", "1 | _ | _ | lemon | juice"},
    {"zest of 2 limes", "2 | _ | _ | limes | zest"},
    {"finely grated zest of half a lemon", "1/2 | _ | _ | lemon | finely grated zest"},
    {"zest and juice of 1 orange", "1 | _ | _ | orange | zest and juice"},
    {"juice 1½ lemons", "1 1/2 | _ | _ | lemons | juice"},
    {"zest and juice 2 limes", "2 | _ | _ | limes | zest and juice"},
    {"1 lemon, juice only", "1 | _ | _ | lemon | juice only"},
    // No amount
    {"salt, to taste", "_ | _ | _ | salt | to taste"},
    {"Salt and pepper to taste", "_ | _ | _ | Salt and pepper | to taste"},
    {"butter for greasing", "_ | _ | _ | butter | for greasing"},
    {"For greasing: butter", "_ | _ | _ | butter | for greasing"},
    {"icing sugar, to dust", "_ | _ | _ | icing sugar | to dust"},
    {"Icing sugar", "_ | _ | _ | Icing sugar | _"},
    {"a few drops of vanilla", "_ | _ | _ | vanilla | a few drops"},
    // Remarks, numbers in names, bullets
    {"100 g butter, softened, plus extra for greasing", "100 g | _ | _ | butter | softened, plus extra for greasing"},
    {"100 g butter (softened)", "100 g | _ | _ | butter | softened"},
    {"50 g walnuts (optional)", "50 g | _ | _ | walnuts | optional"},
    {"200g dark chocolate (70%)", "200 g | _ | _ | dark chocolate | 70%"},
    {"500 g 00 flour", "500 g | _ | _ | 00 flour | _"},
    {"500 g T55 flour", "500 g | _ | _ | T55 flour | _"},
    {"100 g boiled beetroot – grated", "100 g | _ | _ | boiled beetroot | grated"},
    {"• 3 eggs", "3 | _ | _ | eggs | _"},
    {"- [ ] 1 egg", "1 | _ | _ | egg | _"},
    {"▢ 2 cups oats", "2 cup | _ | _ | oats | _"},
    {"* 2 tbsp milk", "2 tbsp | _ | _ | milk | _"},
    {"200 g crème fraîche", "200 g | _ | _ | crème fraîche | _"},
    {"2 tbsp 2% milk", "2 tbsp | _ | _ | 2% milk | _"},
    {"1 small handful mint leaves", "1 | small handful | _ | mint leaves | _"},
};

}  // namespace

TEST_CASE("a line of ingredients is taken apart") {
  CHECK(std::size(kUnderstood) >= 120);
  for (const Row& row : kUnderstood) {
    CAPTURE(row.line);
    const IngredientLine read = read_ingredient(clean_text(row.line));
    CHECK(words_of(read.draft) == std::string(row.words));
    CHECK(read.is_understood);
    check_readable(read.draft);
  }
}

TEST_CASE("a line whose number cannot be read keeps its words and has no amount") {
  for (const std::string_view line :
       {"1,000 g flour", "1.500 g Mehl", "1 cup minus 1 tbsp flour", "1 dessertspoon honey", "0 g salt",
        "99999999999999999999999999999999999999999 g salt", "1/0 cup milk", "mix of 3 or so spices and 2 herbs"}) {
    CAPTURE(line);
    const IngredientLine read = read_ingredient(line);
    CHECK_FALSE(read.is_understood);
    CHECK(read.draft.amount.empty());
    CHECK(read.draft.said == std::string(line));
  }
}

TEST_CASE("a second ingredient that hides in a line is not passed over in silence") {
  for (const std::string_view line :
       {"2 eggs plus 1 yolk", "2 eggs and 1 yolk", "100 g butter plus 1 tbsp for the tin"}) {
    CAPTURE(line);
    CHECK_FALSE(read_ingredient(line).is_understood);
  }
}

TEST_CASE("what may be meant in two ways is left open") {
  const IngredientLine bananas = read_ingredient("3 bananas (about 300 g)");
  CHECK(bananas.draft.amount == "3");
  CHECK(bananas.draft.each.empty());
  CHECK_FALSE(bananas.doubt.empty());
  CHECK_FALSE(read_ingredient("2 cans (14 oz) plums").doubt.empty());
  CHECK_FALSE(read_ingredient("1/2 tsp each salt and pepper").doubt.empty());
  CHECK_FALSE(read_ingredient("4 oz milk").doubt.empty());
  CHECK(read_ingredient("8 oz cream cheese").doubt.empty());
  CHECK(read_ingredient("8 oz flour").doubt.empty());
}

TEST_CASE("every amount that comes out can be read again, whatever the line") {
  // All pairs of number, unit and tail; the check is that nothing unreadable comes out.
  for (const std::string_view number : {"1", "1½", "1/2", "2-3", "1,5", "1,500", "½-¾", "0", "1/0", "12345678901",
                                        "two", "a", "half a", "1 x", "2 x 3", "-4"}) {
    for (const std::string_view unit : {" g", "g/", " cups", " (8 oz)", " tbsp plus", " lb 3 oz", " large", " tin",
                                        " 400 g tin", "\"", " %", " minus", ""}) {
      for (const std::string_view tail :
           {" flour", "", " 3", " (", ")", ", 4 g", " (120 g / 1 cup) of salt", " to 5 kg"}) {
        const std::string line = std::string(number) + std::string(unit) + std::string(tail);
        CAPTURE(line);
        check_readable(read_ingredient(line).draft);
      }
    }
  }
}

TEST_CASE("a very long line is food that was not understood") {
  const std::string line = "1 " + std::string(100000, 'a');
  const IngredientLine read = read_ingredient(line);
  CHECK_FALSE(read.is_understood);
  CHECK(read.draft.food.size() < 1100);
}
