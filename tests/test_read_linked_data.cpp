// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Recipe data in odd shapes, and JSON that is not quite JSON. Whole recipes are in test_read_recipes.cpp.
#include "app/recipe/read_linked_data.h"

#include <string>
#include <string_view>

#include <doctest/doctest.h>

#include "app/files/json_tree.h"
#include "app/recipe/mend_json.h"

using namespace tinwright;

namespace {

ListedRecipe listed(std::string_view json) {
  auto recipe = list_linked_data(json);
  CAPTURE(json);
  REQUIRE(static_cast<bool>(recipe));
  return *recipe;
}

std::string ingredients(const ListedRecipe& recipe) {
  std::string words;
  for (const ListedPart& part : recipe.parts) {
    words += "[" + part.heading + "]";
    for (const std::string& line : part.lines) words += line + "/";
  }
  return words;
}

std::string steps(const ListedRecipe& recipe) {
  std::string words;
  for (const std::string& step : recipe.steps) words += step + "/";
  return words;
}

}  // namespace

TEST_CASE("the recipe is found wherever it lies") {
  for (
      const std::string_view json : {
          R"({"@type":"Recipe","name":"N","recipeIngredient":["a"]})",
          R"([{"@type":"X"},{"@type":"Recipe","name":"N","recipeIngredient":["a"]}])",
          R"([[{"@type":["Thing","Recipe"],"name":"N","recipeIngredient":["a"]}]])",
          R"({"@graph":[{"@type":"https://schema.org/Recipe","name":"N","recipeIngredient":["a"]}]})",
          R"({"@type":"WebPage","mainEntity":{"@type":"http://schema.org/Recipe","name":"N","ingredients":["a"]}})",
          R"({"@type":"ItemList","itemListElement":[{"@type":"ListItem","item":{"@type":"recipe","name":"N","recipeIngredient":"a"}}]})",
          R"({"type":"schema:Recipe","schema:name":"N","schema:recipeIngredient":["a"]})",
          R"({"http://schema.org/name":"N","@type":"Recipe","http://schema.org/recipeIngredient":[{"@value":"a"}]})",
      }) {
    const ListedRecipe recipe = listed(json);
    CHECK(recipe.name == "N");
    CHECK(ingredients(recipe) == "[]a/");
  }
}

TEST_CASE("instructions come in many shapes") {
  const auto steps_for = [](const std::string& value) {
    return steps(
        listed(R"({"@type":"Recipe","name":"N","recipeIngredient":["a"],"recipeInstructions":)" + value + "}"));
  };
  CHECK(steps_for(R"("Mix.\nBake.")") == "Mix./Bake./");
  CHECK(steps_for(R"(["Mix.","Bake."])") == "Mix./Bake./");
  CHECK(steps_for(R"([["Mix."],["Bake."]])") == "Mix./Bake./");
  CHECK(steps_for(R"("1. Mix. 2. Bake. 3) Eat.")") == "Mix./Bake./Eat./");
  CHECK(steps_for(R"("<p>Mix.</p><p>Bake.</p>")") == "Mix./Bake./");
  CHECK(steps_for(R"("Mix.<br/><br>Bake.")") == "Mix./Bake./");
  CHECK(steps_for(R"([{"@type":"HowToStep","text":"Mix."},{"@type":"HowToStep","name":"Bake."}])") == "Mix./Bake./");
  CHECK(
      steps_for(
          R"([{"@type":"HowToStep","name":"Mixing","text":"Mix.","image":"x"},{"@type":"HowToTip","text":"A tip."}])") ==
      "Mix./");
  CHECK(
      steps_for(
          R"([{"@type":"HowToSection","name":"S","itemListElement":[{"@type":"HowToStep","text":"Mix."},{"@type":"HowToSection","itemListElement":{"@type":"HowToStep","text":"Bake."}}]}])") ==
      "Mix./Bake./");
  CHECK(steps_for(R"({"@type":"HowToSection","steps":[{"text":"Mix."}]})") == "Mix./");
  CHECK(steps_for(R"([{"@type":"HowToStep","itemListElement":[{"@type":"HowToDirection","text":"Mix."}]}])") ==
        "Mix./");
  CHECK(steps_for(R"([{"@type":"HowToStep","itemListElement":[],"text":"Mix."}])") == "Mix./");
  CHECK(steps_for(R"(["Step 1: Mix.","2) Bake."])") == "Mix./Bake./");
  CHECK(steps_for("null") == "");
  CHECK(steps_for("7") == "7/");
  CHECK(steps_for("[{},[],null,\"\"]") == "");
}

TEST_CASE("yield and language come in many shapes") {
  const auto with = [](const std::string& fields) {
    return listed(R"({"@type":"Recipe","name":"N","recipeIngredient":["a"],)" + fields + "}");
  };
  CHECK(with(R"("recipeYield":"8 slices")").yield == "8 slices");
  CHECK(with(R"("recipeYield":8)").yield == "8");
  CHECK(with(R"("recipeYield":["8","8 slices"])").yield == "8 slices");
  CHECK(with(R"("recipeYield":["8 slices","8"])").yield == "8 slices");
  CHECK(with(R"("yield":{"@type":"QuantitativeValue","value":"2","unitText":"pies"})").yield == "2 pies");
  CHECK(with(R"("recipeYield":[])").yield.empty());
  CHECK(with(R"("inLanguage":"en-AU")").language == "en-AU");
  CHECK(with(R"("inLanguage":["en","fr"])").language == "en");
  CHECK(with(R"("inLanguage":{"@type":"Language","name":"English"})").language == "English");
}

TEST_CASE("headings within the list make parts") {
  const ListedRecipe recipe = listed(
      R"({"@type":"Recipe","name":"N","recipeIngredient":["For the crust:","100 g flour","FILLING","2 eggs","Topping","sugar"]})");
  CHECK(ingredients(recipe) == "[Crust]100 g flour/[Filling]2 eggs/[Topping]sugar/");
}

TEST_CASE("the fuller of two recipes is read, and that there were two is said") {
  const ListedRecipe recipe = listed(
      R"([{"@type":"Recipe","name":"A","recipeInstructions":"x","url":"u"},{"@type":"Recipe","name":"B","recipeIngredient":["a"],"recipeInstructions":"x"}])");
  CHECK(recipe.name == "B");
  REQUIRE(recipe.unread.size() == 1);
  CHECK(recipe.unread[0] == "the data holds 2 recipes; the fullest was read");
}

TEST_CASE("data without a recipe is refused as missing, no data as unreadable") {
  CHECK(list_linked_data(R"({"@type":"Person","name":"N"})").problem().code == ProblemCode::kMissing);
  CHECK(list_linked_data("[]").problem().code == ProblemCode::kMissing);
  const auto broken = list_linked_data("\n\nnothing here");
  REQUIRE_FALSE(static_cast<bool>(broken));
  CHECK(broken.problem().code == ProblemCode::kUnreadable);
  CHECK(broken.problem().place == "line 3");
}

TEST_CASE("what is not quite JSON is mended") {
  struct Row {
    std::string_view text;
    std::string_view mended;
    std::size_t notes;
  };
  constexpr Row kRows[] = {
      {R"({"a":1})", R"({"a":1})", 0},
      {R"(<!-- {"a":1} -->)", R"({"a":1})", 0},
      {"//<![CDATA[\n{\"a\":1}\n//]]>", R"({"a":1})", 0},
      {"/* x */ {\"a\": /* y */ 1}", R"({"a":1})", 0},
      {R"({"a":1,})", R"({"a":1})", 0},
      {R"([1,2,])", R"([1,2])", 0},
      {R"([1,,2])", R"([1,2])", 0},
      {R"({"a":1};)", R"({"a":1})", 0},
      {R"({"a":1}{"b":2})", R"({"a":1})", 0},
      {R"(window.x = {"a":1};)", R"({"a":1})", 0},
      {R"({a:1,b:c})", R"({"a":1,"b":"c"})", 0},
      {R"({"a" 1})", R"({"a":1})", 0},
      {R"({"a":})", R"({"a":null})", 0},
      {R"({"a"})", R"({"a":null})", 0},
      {R"({"a","b":1})", R"({"a":null,"b":1})", 0},
      {R"({"a":"x\'y\q"})", R"({"a":"x'yq"})", 0},
      {"{\"a\":\"x\ny\"}", R"({"a":"x\ny"})", 1},
      {R"({"a":1,"b":2,"a":3})", R"({"b":2,"a":3})", 1},
      {R"({"a":1,"a":2,"a":{"x":1,"x":2}})", R"({"a":{"x":2}})", 1},
      {R"({"a":[1,2)", R"({"a":[1,2]})", 1},
      {R"({"a":"xy)", R"({"a":"xy"})", 1},
      {R"({"a)", R"({"a":null})", 1},
      {R"({"a":)", R"({"a":null})", 1},
      {R"([1,2})", R"([1,2])", 1},
      {R"({"a":[1,2})", R"({"a":[1,2]})", 0},
      {R"({"a":"\ud83c"})", R"({"a":""})", 0},
      {R"({"a":"\ud83c\udf70 \u00bd"})", R"({"a":"\ud83c\udf70 \u00bd"})", 0},
      {R"({"a":01,"b":1e5,"c":+3})", R"({"a":"01","b":"1e5","c":"+3"})", 0},
      {"nothing", "", 0},
      {"", "", 0},
  };
  for (const Row& row : kRows) {
    CAPTURE(row.text);
    const MendedJson mended = mend_json(row.text);
    CHECK(mended.text == row.mended);
    CHECK(mended.notes.size() == row.notes);
    if (!mended.text.empty()) CHECK(static_cast<bool>(read_json(mended.text)));
  }
}

TEST_CASE("whatever is mended can be read, cut anywhere") {
  const std::string whole =
      R"({"@type":["Recipe"],"name":"A \"b\" \u00e9","x":{"y":[1,-2.5,true,null,{"z":""}],"y":2},"recipeIngredient":["1 egg","2 \\ cups"]})";
  for (std::size_t begin = 0; begin < whole.size(); begin += 7) {
    for (std::size_t end = begin; end <= whole.size(); ++end) {
      const std::string text = whole.substr(begin, end - begin);
      const MendedJson mended = mend_json(text);
      CAPTURE(text);
      CAPTURE(mended.text);
      if (!mended.text.empty()) CHECK(static_cast<bool>(read_json(mended.text)));
    }
  }
}
