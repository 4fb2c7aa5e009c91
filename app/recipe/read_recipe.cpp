// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Decides what the input is, then reads the listed lines. What a page's data lacks is taken from the page's text.
#include "app/recipe/read_recipe.h"

#include <algorithm>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "app/recipe/duration.h"
#include "app/recipe/markup.h"
#include "app/recipe/part_role.h"
#include "app/recipe/plain_text.h"
#include "app/recipe/read_ingredient.h"
#include "app/recipe/read_linked_data.h"
#include "app/recipe/read_oven.h"
#include "app/recipe/read_pan_words.h"
#include "app/recipe/read_text.h"

namespace tinwright {
namespace {

constexpr std::size_t kMostIngredients = 1000, kMostSteps = 1000, kMostUnread = 200;
constexpr std::size_t kLongestStep = 10000, kLongestUnread = 300, kLongestName = 300;  // [bytes]

bool looks_like_json(std::string_view text) {
  text = trimmed(text);
  if (text.size() < 2 || (text[0] != '{' && text[0] != '[')) return false;
  const std::string_view behind = trimmed(text.substr(1));
  if (behind.empty()) return true;
  if (text[0] == '[') return behind[0] == '{' || behind[0] == '[' || (behind[0] == ']' && behind.size() == 1);
  return behind[0] == '"' || behind[0] == '}' || behind[0] == '@' || behind[0] == '\'';
}

bool is_empty(const ListedRecipe& recipe) {
  return recipe.steps.empty() && std::all_of(recipe.parts.begin(), recipe.parts.end(),
                                             [](const ListedPart& part) { return part.lines.empty(); });
}

bool has_ingredients(const ListedRecipe& recipe) {
  return std::any_of(recipe.parts.begin(), recipe.parts.end(),
                     [](const ListedPart& part) { return !part.lines.empty(); });
}

/// The fullest recipe among a page's blocks of data; nothing where none holds one.
std::optional<ListedRecipe> from_blocks(const std::vector<std::string>& blocks, std::vector<std::string>& notes) {
  std::optional<ListedRecipe> best;
  const auto score = [](const ListedRecipe& r) { return (has_ingredients(r) ? 2 : 0) + (r.steps.empty() ? 0 : 1); };
  for (const std::string& block : blocks) {
    auto recipe = list_linked_data(block);
    if (recipe) {
      if (!best || score(*recipe) > score(*best)) best = std::move(*recipe);
    } else if (recipe.problem().code == ProblemCode::kUnreadable && contains(lower_case(block), "recipe")) {
      notes.push_back("the page's recipe data could not be read (" + recipe.problem().message + ")");
    }
  }
  return best;
}

ListedRecipe from_page(std::string_view html) {
  const SavedPage page = read_page(html);
  std::vector<std::string> notes;
  std::optional<ListedRecipe> data = from_blocks(page.linked_data, notes);
  ListedRecipe recipe;
  if (data && !is_empty(*data)) {
    recipe = std::move(*data);
    const bool lacks_list = !has_ingredients(recipe), lacks_steps = recipe.steps.empty();
    if (lacks_list || lacks_steps) {
      const ListedRecipe text = list_text(page.text);
      if (lacks_list) recipe.parts = text.parts;
      if (lacks_steps) recipe.steps = text.steps;
      notes.push_back(std::string("the page's recipe data has no ") + (lacks_list ? "ingredients" : "steps") +
                      "; they were taken from its text");
    }
  } else {
    recipe = list_text(page.text);
    if (data && recipe.name.empty()) recipe.name = data->name;
  }
  if (recipe.name.empty()) recipe.name = page.title;
  if (recipe.language.empty()) recipe.language = page.language;
  recipe.unread.insert(recipe.unread.begin(), notes.begin(), notes.end());
  return recipe;
}

/// Marks that a text brings along are no part of it, but a '<' between numbers is.
ListedRecipe from_plain_text(std::string_view text) {
  return list_text(without_markup(text));
}

class Drafter {
 public:
  explicit Drafter(ListedRecipe listed) : listed_(std::move(listed)), left_out_(listed_.left_out) {}

  RecipeDraft make() {
    draft_.name = shortened(listed_.name, kLongestName);
    draft_.language = shortened(listed_.language, 40);
    draft_.yield = shortened(listed_.yield, kLongestName);
    read_times();
    read_steps();
    read_parts();
    std::vector<std::string> places = draft_.steps;
    places.insert(places.end(), listed_.equipment.begin(), listed_.equipment.end());
    draft_.pans = read_pan_words(places);
    for (const PanDraft& pan : draft_.pans) {
      if (std::string doubt = doubt_of(pan); !doubt.empty()) draft_.doubts.push_back(std::move(doubt));
    }
    OvenReading oven = read_oven(draft_.steps);
    draft_.stages = std::move(oven.stages);
    for (std::string& doubt : oven.doubts) draft_.doubts.push_back(std::move(doubt));
    for (std::string& line : listed_.unread) unread(line);
    ask_about_time();
    ask_about_measures();
    if (left_out_ > 0) draft_.unread.push_back("and " + std::to_string(left_out_) + " more lines");
    return std::move(draft_);
  }

 private:
  void unread(const std::string& line) {
    if (line.empty()) return;
    if (draft_.unread.size() < kMostUnread) {
      draft_.unread.push_back(shortened(line, kLongestUnread));
    } else {
      ++left_out_;
    }
  }

  std::string read_time_field(const std::string& said, const char* what) {
    if (said.empty()) return "";
    const auto words = duration_in_words(said);
    if (words && *words == "0 min") return "";
    if (words) return *words;
    unread(std::string(what) + ": " + said);
    return "";
  }

  void read_times() {
    draft_.prep_time = read_time_field(listed_.prep_time, "preparation time");
    draft_.cook_time = read_time_field(listed_.cook_time, "cooking time");
    draft_.total_time = read_time_field(listed_.total_time, "total time");
  }

  void read_steps() {
    for (const std::string& step : listed_.steps) {
      if (draft_.steps.size() >= kMostSteps) {
        unread(step);
        continue;
      }
      draft_.steps.push_back(shortened(step, kLongestStep));
      if (step.size() > kLongestStep) unread("a step of more than 10000 letters was cut short");
    }
  }

  static bool is_pan(const IngredientDraft& draft) {
    const std::string food = lower_case(draft.food);
    const std::string_view last = std::string_view(food).substr(food.find_last_of(' ') + 1);
    return is_one_of(last, "tin|tins|pan|pans|dish|springform|mould|mold|plate|ring|tray|ramekins|moulds|trays") &&
           !read_pan_words({draft.said}).empty();
  }

  void read_parts() {
    std::size_t count = 0;
    for (const ListedPart& listed : listed_.parts) {
      if (listed.lines.empty()) {
        unread(listed.heading);
        continue;
      }
      PartDraft part;
      part.name = shortened(listed.heading, kLongestName);
      part.role = role_of(part.name, draft_.steps);
      for (const std::string& line : listed.lines) {
        if (count++ >= kMostIngredients) {
          unread(line);
          continue;
        }
        IngredientLine read = read_ingredient(line);
        if (is_pan(read.draft)) {  // "2lb loaf tin" among the ingredients
          listed_.equipment.push_back(read.draft.said);
          continue;
        }
        if (!read.is_understood) unread(read.draft.said);
        if (!read.doubt.empty()) draft_.doubts.push_back(read.draft.said + ": " + read.doubt);
        part.ingredients.push_back(std::move(read.draft));
      }
      if (!part.ingredients.empty()) draft_.parts.push_back(std::move(part));
    }
  }

  /// Data often has a cooking time though its steps name none.
  void ask_about_time() {
    const bool bakes = std::any_of(draft_.stages.begin(), draft_.stages.end(), [](const StageDraft& stage) {
      return stage.place == "oven" || stage.place == "fan oven";
    });
    if (!bakes && !draft_.cook_time.empty()) {
      draft_.doubts.push_back("the steps name no time in the oven; the recipe's cooking time is " + draft_.cook_time);
    }
  }

  /// A cup is not the same everywhere, and no recipe says whose it means.
  void ask_about_measures() {
    bool has_cups = false, has_pints = false;
    const auto look = [&](const std::string& amount) {
      const bool is_marked = contains(amount, "metric") || contains(amount, "imperial");
      has_cups = has_cups || (!is_marked && has_word(amount, "cup"));
      has_pints = has_pints || (!is_marked && has_any_word(amount, "pt|qt|gal|fl oz"));
    };
    for (const PartDraft& part : draft_.parts) {
      for (const IngredientDraft& ingredient : part.ingredients) {
        look(ingredient.amount);
        look(ingredient.each);
      }
    }
    if (has_cups) {
      draft_.doubts.push_back(
          "cups are taken for US cups (237 ml); where the recipe is Australian or Canadian, or says 250 ml, write "
          "metric cup");
    }
    if (has_pints) {
      draft_.doubts.push_back(
          "pints, quarts and fluid ounces are taken for US ones (a pint is 473 ml); where the recipe is British, write "
          "imperial pt (568 ml) "
          "or imperial fl oz");
    }
  }

  ListedRecipe listed_;
  RecipeDraft draft_;
  std::size_t left_out_ = 0;
};

}  // namespace

Result<RecipeDraft> read_recipe(std::string_view bytes) {
  if (bytes.size() > kLongestRecipe) {
    return Problem{ProblemCode::kTooMuch,
                   "this is longer than 10 MB, which no recipe is; save the recipe's page alone, or paste its text",
                   ""};
  }
  const std::string text = clean_text(bytes);
  if (trimmed(text).empty()) {
    return Problem{ProblemCode::kMissing, "there is no text here; paste a recipe, or open a saved page", ""};
  }
  ListedRecipe listed;
  if (looks_like_json(text)) {
    auto data = list_linked_data(text);
    if (!data) return data.problem();
    listed = std::move(*data);
  } else {
    listed = looks_like_markup(text) ? from_page(text) : from_plain_text(text);
  }
  if (is_empty(listed)) {
    return Problem{ProblemCode::kMissing,
                   "no ingredients and no steps were found here; paste the list of ingredients and the steps", ""};
  }
  return Drafter(std::move(listed)).make();
}

}  // namespace tinwright
