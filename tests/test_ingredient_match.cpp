// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What recipes call things, and what is meant. The wordings are our own, in the manner of British and American recipes.
#include <string>
#include <string_view>

#include <doctest/doctest.h>

#include "app/files/food_words.h"
#include "app/files/ingredients.h"

namespace tinwright {
namespace {

struct Wording {
  std::string_view words, id;  // an empty id: nothing of the catalogue
};

std::string id_of(std::string_view words) {
  const auto match = match_ingredient(words);
  return match ? match->ingredient->id : "";
}

double confidence_in(std::string_view words) {
  const auto match = match_ingredient(words);
  return match ? match->confidence : 0.0;
}

template <std::size_t kCount>
void check_all(const Wording (&wordings)[kCount]) {
  for (const Wording& wording : wordings) {
    CAPTURE(std::string(wording.words));
    CHECK(id_of(wording.words) == wording.id);
  }
}

}  // namespace

TEST_CASE("amounts, sizes, states and remarks do not change what is meant") {
  check_all({
      {"unsalted butter, softened", "butter"},
      {"115g (4 oz/1 stick) unsalted butter, melted and cooled", "butter"},
      {"cold butter, cut into small cubes", "butter"},
      {"Butter, at room temperature, plus extra for greasing the tin", "butter"},
      {"butter, browned", "butter"},
      {"organic, unsalted butter", "butter"},
      {"a knob of butter", "butter"},
      {"all-purpose flour (sifted)", "plain-flour"},
      {"250 g plain flour, plus more for dusting", "plain-flour"},
      {"2½ cups all purpose flour, spooned and levelled", "plain-flour"},
      {"self raising flour", "self-raising-flour"},
      {"Self-Rising Flour", "self-raising-flour"},
      {"wholewheat flour", "wholemeal-flour"},
      {"packed light brown sugar", "light-brown-sugar"},
      {"1 cup (packed) dark brown sugar", "dark-brown-sugar"},
      {"light soft brown sugar", "light-brown-sugar"},
      {"large eggs, separated", "egg"},
      {"3 free-range eggs, lightly beaten", "egg"},
      {"2 large eggs plus 1 egg yolk", "egg"},
      {"1 whole egg plus 2 yolks", "egg"},
      {"2 to 3 large eggs", "egg"},
      {"4 eggs, whites and yolks separated", "egg"},
      {"beaten egg to glaze", "egg"},
      {"For dusting: icing sugar", "icing-sugar"},
      {"neutral oil such as grapeseed", "vegetable-oil"},
      {"stem ginger in syrup", "stem-ginger"},
      {"egg yolks", "egg-yolk"},
      {"egg whites, at room temperature", "egg-white"},
      {"full-fat cream cheese at room temperature", "cream-cheese"},
      {"16 oz package cream cheese, softened", "cream-cheese"},
      {"cold double cream", "double-cream"},
      {"heavy (whipping) cream, chilled", "whipping-cream"},
      {"cream, whipped", "whipping-cream"},
      {"boiling water", "water"},
      {"ice water, as needed", "water"},
      {"fine sea salt", "salt"},
      {"a pinch of salt", "salt"},
      {"bananas, very ripe, mashed", "banana"},
      {"ripe, mashed bananas", "banana"},
      {"frozen raspberries, thawed and drained", "raspberries"},
      {"strawberries, hulled and halved", "strawberries"},
      {"pecan halves, toasted and roughly chopped", "pecans"},
      {"freshly grated nutmeg", "nutmeg"},
      {"finely grated fresh ginger", "fresh-ginger"},
      {"crushed digestive biscuits", "digestive-biscuits"},
      {"graham cracker crumbs", "graham-crackers"},
      {"good-quality dark chocolate (70% cocoa solids), chopped", "extra-dark-chocolate"},
      {"dark chocolate, broken into pieces", "dark-chocolate"},
      {"2 x 400 ml tins coconut milk, chilled", "coconut-milk"},
      {"pineapple in juice, drained", "pineapple"},
  });
}

TEST_CASE("a remark may say which kind") {
  check_all({
      {"sugar, caster", "caster-sugar"},
      {"sugar (icing)", "icing-sugar"},
      {"flour, self-raising, sifted", "self-raising-flour"},
      {"butter, salted", "salted-butter"},
      {"cream, double", "double-cream"},
      {"milk, whole", "milk"},
      {"eggs, yolks only", "egg-yolk"},
      {"1 egg (white only)", "egg-white"},
      {"lemon, juice only", "lemon-juice"},
      {"1 lemon, zested", "lemon-zest"},
      {"1 lemon, zested and juiced", "lemon"},
      {"sugar, plus 2 tbsp brown sugar", "granulated-sugar"},
      {"flour (not self-raising)", "plain-flour"},
      {"milk, plus 1 tbsp dried milk", "milk"},
  });
}

TEST_CASE("parts of fruit and eggs are found however they are said") {
  check_all({
      {"freshly squeezed lemon juice", "lemon-juice"},
      {"juice of half a lemon", "lemon-juice"},
      {"the juice from 2 lemons", "lemon-juice"},
      {"finely grated zest of 1 unwaxed lemon", "lemon-zest"},
      {"grated rind of 2 large lemons", "lemon-zest"},
      {"juice and finely grated zest of 1 lemon", "lemon"},
      {"zest and juice of 2 limes", "lime"},
      {"zest of an orange", "orange-zest"},
      {"yolks of 4 large eggs", "egg-yolk"},
      {"egg whites from 3 eggs", "egg-white"},
      {"scraped seeds of 1 vanilla pod", "vanilla-pod"},
      {"1 vanilla bean, split lengthwise", "vanilla-pod"},
  });
}

TEST_CASE("American and British words, spellings and accents mean the same") {
  check_all({
      {"cornstarch", "cornflour"},
      {"corn starch", "cornflour"},
      {"confectioners’ sugar", "icing-sugar"},
      {"confectioner's sugar, sifted", "icing-sugar"},
      {"superfine sugar", "caster-sugar"},
      {"golden caster sugar", "caster-sugar"},
      {"castor sugar", "caster-sugar"},
      {"almond meal", "ground-almonds"},
      {"ground almonds", "ground-almonds"},
      {"almond flour", "ground-almonds"},
      {"slivered almonds", "flaked-almonds"},
      {"crème fraîche", "creme-fraiche"},
      {"cre\xCC\x80me frai\xCC\x82"
       "che",
       "creme-fraiche"},
      {"CREME FRAICHE", "creme-fraiche"},
      {"sour cream", "soured-cream"},
      {"half & half", "half-cream"},
      {"half-and-half", "half-cream"},
      {"baking soda", "bicarbonate-of-soda"},
      {"bicarb of soda", "bicarbonate-of-soda"},
      {"molasses", "black-treacle"},
      {"plain full-fat yoghurt", "yogurt"},
      {"Greek yoghurt", "greek-yogurt"},
      {"zucchini, grated", "courgette"},
      {"golden raisins", "sultanas"},
      {"powdered gelatin", "gelatine"},
      {"3 leaves of gelatine", "gelatine"},
      {"active dry yeast", "dried-yeast"},
      {"instant yeast", "dried-yeast"},
      {"fresh yeast, crumbled", "fresh-yeast"},
      {"kosher salt", "coarse-salt"},
      {"vanilla bean paste", "vanilla-paste"},
      {"Tahitian vanilla extract", "vanilla-extract"},
      {"glace cherries", "glace-cherries"},
      {"soy milk", "soya-milk"},
      {"skim milk", "skimmed-milk"},
      {"2% milk", "semi-skimmed-milk"},
      {"2 cups milk", "milk"},
      {"sweetened condensed milk", "condensed-milk"},
      {"canned pumpkin", "pumpkin-puree"},
      {"pumpkin purée", "pumpkin-puree"},
      {"old-fashioned rolled oats", "oats"},
      {"strong brewed coffee, cooled", "coffee"},
      {"Dutch-processed cocoa powder, sifted", "cocoa-powder"},
      {"70% dark chocolate", "extra-dark-chocolate"},
      {"semisweet chocolate chips", "chocolate-chips"},
      {"Medjool dates, pitted", "medjool-dates"},
  });
}

TEST_CASE("of two that the cook may choose between, the first that is known is taken") {
  check_all({
      {"butter or margarine", "butter"},
      {"light or dark brown sugar", "dark-brown-sugar"},
      {"milk or water", "milk"},
      {"lemon or lime juice", "lemon-juice"},
      {"dark or milk chocolate", "dark-chocolate"},
      {"milk or dark chocolate", "milk-chocolate"},
      {"peanut or almond butter", "peanut-butter"},
      {"plain or self-raising flour", "plain-flour"},
      {"1 egg or 2 egg whites", "egg"},
      {"butter or coconut oil", "butter"},
      {"fresh or frozen cranberries", "cranberries"},
      {"plain/all-purpose flour", "plain-flour"},
      {"schmaltz or lard", "lard"},
  });
  CHECK(confidence_in("schmaltz or lard") < confidence_in("lard"));
  CHECK(confidence_in("fresh or frozen cranberries") == kPlainlyDescribed);
}

TEST_CASE("a word that makes another food of it is never passed over") {
  check_all({
      {"peanut butter", "peanut-butter"},
      {"crunchy peanut butter", "peanut-butter"},
      {"almond butter", "almond-butter"},
      {"apple butter", ""},
      {"peanut butter cups", ""},
      {"sunflower seed butter", ""},
      {"cookie butter", ""},
      {"vegan butter", ""},
      {"brown butter", ""},
      {"browned butter", ""},
      {"buttercream", ""},
      {"butter beans", ""},
      {"butternut squash", ""},
      {"coconut milk", "coconut-milk"},
      {"oat milk", "oat-milk"},
      {"rice milk", ""},
      {"goat's milk", ""},
      {"chocolate milk", ""},
      {"milk chocolate", "milk-chocolate"},
      {"almond extract", "almond-extract"},
      {"almond oil", ""},
      {"peppermint extract", ""},
      {"rice flour", "rice-flour"},
      {"coconut flour", ""},
      {"chickpea flour", ""},
      {"gluten-free plain flour", ""},
      {"gluten-free self-raising flour", ""},
      {"cream of tartar", "cream-of-tartar"},
      {"cream of coconut", ""},
      {"ice cream", ""},
      {"vanilla ice cream", ""},
      {"vegan cream cheese", ""},
      {"cream cheese frosting", ""},
      {"egg wash", ""},
      {"egg noodles", ""},
      {"eggplant", ""},
      {"egg replacer", ""},
      {"quail eggs", ""},
      {"peanut oil", ""},
      {"sesame oil", ""},
      {"olive oil", "olive-oil"},
      {"rapeseed oil", "vegetable-oil"},
      {"rum raisin ice cream", ""},
      {"lemon curd", ""},
      {"lemon thyme", ""},
      {"lemongrass", ""},
      {"apple pie", ""},
      {"apple juice", "apple-juice"},
      {"apple cider vinegar", "vinegar"},
      {"apple cider", ""},
      {"hot chocolate", ""},
      {"hot milk", "milk"},
      {"ground coffee", ""},
      {"coffee beans", ""},
      {"sweet potato", "sweet-potato"},
      {"potato chips", ""},
      {"ginger beer", ""},
      {"crystallised ginger", "stem-ginger"},
      {"vanilla sugar", "vanilla-sugar"},
      {"vanilla custard", ""},
      {"baking paper", ""},
      {"brown rice", ""},
      {"watermelon", ""},
      {"water chestnuts", ""},
      {"rose water", "rose-water"},
      {"salt and pepper", ""},
      {"flour and butter", ""},
      {"celery salt", ""},
      {"red currant jelly", "fruit-jelly"},
      {"dried currants", "currants"},
      {"red currants", "redcurrants"},
      {"cherry tomatoes", ""},
      {"honeydew melon", ""},
      {"date syrup", ""},
      {"saffron threads", ""},
      {"Zucker", ""},
      {"baby spinach", ""},
      {"cooking spray", ""},
      {"chocolate cake mix", ""},
  });
}

TEST_CASE("what is no food, or no text, matches nothing") {
  check_all({{"", ""},
             {" , ()", ""},
             {"2 large", ""},
             {"or", ""},
             {"of", ""},
             {"zest of", ""},
             {"100%", ""},
             {"\xFF\xFE\xC3", ""},
             {"/ or / plus", ""}});
  CHECK(id_of(std::string(5000, ' ') + "butter").empty());
  CHECK(id_of(std::string(100000, '(')).empty());
  CHECK(id_of("butter, " + std::string(100000, 'x')) == "butter");
}

TEST_CASE("confidence falls from the same words by plain description and usual meaning to a vague one") {
  CHECK(confidence_in("unsalted butter") == kSameWords);
  CHECK(confidence_in("Cornstarch") == kSameWords);
  CHECK(confidence_in("3 large egg yolks, beaten") == kPlainlyDescribed);
  CHECK(confidence_in("cream") == kUsuallyMeant);
  CHECK(confidence_in("reduced-fat coconut milk") == kVaguelyDescribed);
  CHECK(confidence_in("Madagascan vanilla extract") == kVaguelyDescribed);
  CHECK(confidence_in("schmaltz or cream") == doctest::Approx(kSecondChoice * kUsuallyMeant));
}

TEST_CASE("every ingredient is found by its name and by each of its other words") {
  for (const Ingredient& one : catalogue_ingredients()) {
    CAPTURE(one.id);
    CHECK(id_of(one.name) == one.id);
    CHECK(confidence_in(one.name) == kSameWords);
    for (const std::string& alias : one.aliases) {
      CAPTURE(alias);
      CHECK(id_of(alias) == one.id);
      CHECK(confidence_in(alias) == kSameWords);
    }
    for (const std::string& alias : one.loosely) {
      CAPTURE(alias);
      CHECK(id_of(alias) == one.id);
      CHECK(confidence_in(alias) == kUsuallyMeant);
    }
  }
  for (const std::string& other : foods_not_catalogued()) {
    CAPTURE(other);
    CHECK(id_of(other).empty());
  }
}

TEST_CASE("plurals, accents and apostrophes fall away") {
  using Words = std::vector<std::string>;
  CHECK(plain_words("Crème brûlées") == Words{"creme", "brulee"});
  CHECK(plain_words("raspberries") == plain_words("raspberry"));
  CHECK(plain_words("cookies") == plain_words("cookie"));
  CHECK(plain_words("peaches, mangoes, leaves, halves, glasses") == Words{"peach", "mango", "leaf", "half", "glass"});
  CHECK(plain_words("baker's") == Words{"baker"});
  CHECK(plain_words("12 eggs, 70 % cocoa 85%") == Words{"egg", "70%", "cocoa", "85%"});
  CHECK(plain_letters("  Crème   fraîche! ") == "creme fraiche");
}

}  // namespace tinwright
