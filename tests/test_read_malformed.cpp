// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Inputs that are broken, huge or hostile: a sensible answer or a Problem, plain text only.
#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>

#include "app/recipe/plain_text.h"
#include "app/recipe/read_recipe.h"
#include "tests/recipe_words.h"

using namespace tinwright;

namespace {

std::string repeated(std::string_view text, std::size_t times) {
  std::string out;
  for (std::size_t i = 0; i < times; ++i) out += text;
  return out;
}

/// Every text of the draft.
std::vector<std::string> texts_of(const RecipeDraft& draft) {
  std::vector<std::string> texts{draft.name,      draft.language,  draft.yield,
                                 draft.prep_time, draft.cook_time, draft.total_time};
  for (const PartDraft& part : draft.parts) {
    texts.push_back(part.name);
    for (const IngredientDraft& i : part.ingredients) {
      for (const std::string& text : {i.said, i.food, i.amount, i.up_to, i.size, i.each, i.remark})
        texts.push_back(text);
    }
  }
  for (const auto* list : {&draft.steps, &draft.unread, &draft.doubts})
    texts.insert(texts.end(), list->begin(), list->end());
  for (const StageDraft& stage : draft.stages) texts.push_back(stage.said);
  for (const PanDraft& pan : draft.pans) texts.push_back(pan.said);
  return texts;
}

void check_plain(const RecipeDraft& draft) {
  for (const std::string& text : texts_of(draft)) {
    CHECK(clean_text(text) == text);  // UTF-8, no controls, no direction marks
    for (std::size_t i = 0; i + 1 < text.size(); ++i) {
      const char next = text[i + 1];
      const bool is_mark = text[i] == '<' &&
                           ((next >= 'a' && next <= 'z') || (next >= 'A' && next <= 'Z') || next == '/' || next == '!');
      REQUIRE_FALSE(is_mark);
    }
  }
}

const std::string kData =
    R"({"@type":"Recipe","name":"N","recipeIngredient":["100 g flour","2 eggs"],"recipeInstructions":["Bake at 180C for 20 minutes."]})";

}  // namespace

TEST_CASE("broken inputs give a recipe or say what is wrong") {
  struct Row {
    std::string text;
    bool is_read;
    ProblemCode code = ProblemCode::kMissing;
  };
  const std::string script = "<script type=\"application/ld+json\">";
  const std::vector<Row> rows{
      {"", false},
      {" \n\t ", false},
      {std::string(1000, '\0'), false},
      {"hello", false},
      {"{", false, ProblemCode::kMissing},
      {"[]", false},
      {"{}", false},
      {"{\"@type\":\"Recipe\"}", false},
      {"{\"@type\":\"Recipe\",\"name\":\"N\",\"recipeIngredient\":[],\"recipeInstructions\":[]}", false},
      {"{\"@type\":\"Recipe\",\"name\":\"N\",\"recipeIngredient\":{},\"recipeInstructions\":7.5}", true},
      {repeated("[", 200) + "1" + repeated("]", 200), false, ProblemCode::kUnreadable},
      {repeated("{\"a\":", 5000), false, ProblemCode::kUnreadable},
      {"<html><body>" + script + kData, true},
      {"<html><body>" + script + kData.substr(0, 60), true},
      {"<html><body>" + script + repeated("[", 100000) + "</script><p>Ingredients</p><p>2 eggs</p>", true},
      {"<html>" + script + "</script><h2>Ingredients</h2><p>2 eggs", true},
      {"<p>Ingredients<p>2 eggs<script>never closed 3 eggs", true},
      {"<html><!-- never closed <p>Ingredients</p><p>2 eggs</p>", true},
      {"<p title=\"never closed>Ingredients</p><p>2 eggs</p>", true},
      {std::string("Ingredients\n2 ") + '\0' + "eggs\xFF\xFE\n\xC0\x80 1 g salt\n", true},
      {"Ingredients\n\xE2\x80\xAE"
       "2 eggs\xE2\x80\xAC\nMethod\nMix.",
       true},
      {"Ingredients\n" + repeated("1 ", 500000) + "\nMethod\nMix.", true},
      {"Ingredients\n2 eggs\nMethod\n" + repeated("Bake for 5 minutes at 180C and ", 30000), true},
      {std::string(11U << 20U, 'x'), false, ProblemCode::kTooMuch},
  };
  for (std::size_t i = 0; i < rows.size(); ++i) {
    CAPTURE(i);
    const auto draft = read_recipe(rows[i].text);
    CHECK(static_cast<bool>(draft) == rows[i].is_read);
    if (draft) {
      check_plain(*draft);
    } else {
      CHECK(draft.problem().code == rows[i].code);
      CHECK_FALSE(draft.problem().message.empty());
    }
  }
}

TEST_CASE("unread lines are counted where there are too many to keep") {
  const auto draft = read_recipe("Ingredients\n2 eggs\nNotes\n" + repeated("word\n", 1000));
  REQUIRE(static_cast<bool>(draft));
  CHECK(draft->unread.size() == 201);
  CHECK(draft->unread.back() == "and 800 more lines");
}

TEST_CASE("a recipe cut anywhere is read or refused, never worse") {
  const std::string page = "<html><head><script type=\"application/ld+json\">" + kData +
                           "</script></head><body><h2>Ingredients</h2><ul><li>&frac12; cup milk</ul></body>";
  for (std::size_t end = 0; end <= page.size(); ++end) {
    const auto cut_behind = read_recipe(page.substr(0, end));
    if (cut_behind) check_plain(*cut_behind);
    const auto cut_before = read_recipe(page.substr(end));
    if (cut_before) check_plain(*cut_before);
  }
}

TEST_CASE("long runs of one sign or word come out plain") {
  const std::vector<std::string_view> units{"<",
                                            "<a",
                                            "<a \"",
                                            "<!--",
                                            "</",
                                            "&",
                                            "&#",
                                            "<script>",
                                            "<a b='",
                                            "1 ",
                                            "½",
                                            "1/",
                                            "a tin ",
                                            "(",
                                            "((1 g)",
                                            ", ",
                                            "[",
                                            "{\"a\":",
                                            "\"",
                                            "\\u",
                                            "1. ",
                                            "cook ",
                                            "oven ",
                                            "9x",
                                            "bake 5 min, ",
                                            "in ",
                                            "- ",
                                            "**",
                                            "of 1 juice ",
                                            "\n1 g x\n",
                                            "plus 1 g ",
                                            "\xE2\x80\x8F",
                                            "<li>",
                                            "for the ",
                                            ": 1 g",
                                            "a 9 inch ",
                                            ".",
                                            "to taste "};
  for (const std::string_view unit : units) {
    for (const std::string_view head : {"", "Ingredients\n", "Method\n", "<p>x", "{\"@type\":\"Recipe\",\"x\":\"",
                                        "<script type=\"application/ld+json\">{\"a\":["}) {
      CAPTURE(unit);
      CAPTURE(head);
      const auto draft = read_recipe(std::string(head) + repeated(unit, 40000 / unit.size()));
      if (draft) check_plain(*draft);
    }
  }
}
