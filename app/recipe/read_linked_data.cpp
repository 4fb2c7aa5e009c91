// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See read_linked_data.h. Words of schema.org are compared without prefix and letter case.
#include "app/recipe/read_linked_data.h"

#include <algorithm>
#include <map>
#include <optional>

#include "app/files/json_tree.h"
#include "app/recipe/markup.h"
#include "app/recipe/mend_json.h"
#include "app/recipe/part_role.h"
#include "app/recipe/plain_text.h"

namespace tinwright {
namespace {

using Kind = JsonNode::Kind;

constexpr std::size_t kMostLines = 2000;  // of ingredients or steps; no kitchen has more
constexpr int kDeepestSteps = 12;

/// "schema:Recipe", "https://schema.org/Recipe", "recipe" -> "recipe".
std::string bare_word(std::string_view word) {
  const std::size_t end = word.find_last_of(":/#");
  return lower_case(end == std::string_view::npos ? word : word.substr(end + 1));
}

const JsonNode* member(const JsonNode& object, std::string_view name) {
  for (std::size_t i = 0; i < object.keys.size(); ++i) {
    if (bare_word(object.keys[i]) == name && object.items[i].kind != Kind::kNull) return &object.items[i];
  }
  return nullptr;
}

class LinkedDataReader {
 public:
  explicit LinkedDataReader(const JsonNode& root, bool is_decoded) : is_decoded_(is_decoded) { note_ids(root); }

  std::optional<ListedRecipe> read(const JsonNode& root) {
    const JsonNode* best = nullptr;
    int best_score = -1, recipes = 0;
    find(root, best, best_score, recipes);
    if (best == nullptr) return std::nullopt;
    ListedRecipe recipe = read_recipe_node(*best);
    if (recipes > 1)
      recipe.unread.push_back("the data holds " + std::to_string(recipes) + " recipes; the fullest was read");
    return recipe;
  }

 private:
  void note_ids(const JsonNode& node) {
    for (std::size_t i = 0; i < node.items.size(); ++i) {
      const bool is_id = node.kind == Kind::kObject && node.keys[i] == "@id" && node.items.size() > 1;
      if (is_id) ids_.emplace(node.items[i].text, &node);
      note_ids(node.items[i]);
    }
  }

  /// What {"@id": "..."} stands for.
  const JsonNode& resolved(const JsonNode& node) const {
    if (node.kind != Kind::kObject || node.keys.size() != 1 || node.keys[0] != "@id") return node;
    const auto found = ids_.find(node.items[0].text);
    return found == ids_.end() ? node : *found->second;
  }

  static bool is_type(const JsonNode& node, std::string_view name) {
    if (node.kind != Kind::kObject) return false;
    for (std::size_t i = 0; i < node.keys.size(); ++i) {
      if (node.keys[i] != "@type" && node.keys[i] != "type") continue;
      if (bare_word(node.items[i].text) == name) return true;
      for (const JsonNode& type : node.items[i].items) {
        if (bare_word(type.text) == name) return true;
      }
    }
    return false;
  }

  void find(const JsonNode& node, const JsonNode*& best, int& best_score, int& recipes) const {
    if (is_type(node, "recipe") && node.items.size() > 2) {
      const int score =
          (ingredients_of(node) != nullptr ? 2 : 0) + (member(node, "recipeinstructions") != nullptr ? 1 : 0);
      if (score > 0) ++recipes;
      if (score > best_score) {
        best = &node;
        best_score = score;
      }
    }
    for (const JsonNode& item : node.items) find(item, best, best_score, recipes);
  }

  static const JsonNode* ingredients_of(const JsonNode& recipe) {
    for (const std::string_view name :
         {"recipeingredient", "ingredients", "recipeingredients", "ingredient", "supply"}) {
      const JsonNode* found = member(recipe, name);
      if (found != nullptr && (!found->items.empty() || !found->text.empty())) return found;
    }
    return nullptr;
  }

  std::string plain(const std::string& text) const {
    return is_decoded_ ? clean_text(without_markup_only(text)) : without_markup(text);
  }

  /// Entities were decoded with the whole block; they are decoded once.
  static std::string without_markup_only(const std::string& text) {
    std::string escaped;
    for (const char c : text) {
      if (c == '&') {
        escaped += "&amp;";
      } else {
        escaped += c;
      }
    }
    return without_markup(escaped);
  }

  /// The text of a node, whatever holds it.
  std::string text_of(const JsonNode& given) const {
    const JsonNode& node = resolved(given);
    if (node.kind == Kind::kString || node.kind == Kind::kNumber) return plain(node.text);
    if (node.kind == Kind::kObject) {
      for (const std::string_view name : {"@value", "text", "name", "value", "description"}) {
        if (const JsonNode* found = member(node, name)) {
          if (found->kind == Kind::kString || found->kind == Kind::kNumber) return plain(found->text);
        }
      }
    }
    if (node.kind == Kind::kArray && !node.items.empty() && node.items[0].kind != Kind::kArray)
      return text_of(node.items[0]);
    return "";
  }

  std::string text_at(const JsonNode& object, std::string_view name) const {
    const JsonNode* found = member(object, name);
    return found == nullptr ? "" : one_line(text_of(*found));
  }

  ListedRecipe read_recipe_node(const JsonNode& node) {
    ListedRecipe recipe;
    recipe.name = text_at(node, "name");
    if (recipe.name.empty()) recipe.name = text_at(node, "headline");
    recipe.yield = yield_of(node);
    recipe.language = language_of(node);
    recipe.prep_time = text_at(node, "preptime");
    recipe.cook_time = text_at(node, "cooktime");
    if (recipe.cook_time.empty()) recipe.cook_time = text_at(node, "performtime");
    recipe.total_time = text_at(node, "totaltime");
    if (const JsonNode* list = ingredients_of(node)) add_ingredients(*list, recipe, 0);
    const JsonNode* steps = member(node, "recipeinstructions");
    if (steps == nullptr) steps = member(node, "instructions");
    if (steps == nullptr) steps = member(node, "step");
    if (steps != nullptr) add_steps(*steps, recipe, 0);
    if (const JsonNode* tools = member(node, "tool")) {
      if (tools->kind == Kind::kArray) {
        for (const JsonNode& tool : tools->items) recipe.equipment.push_back(one_line(text_of(tool)));
      } else {
        recipe.equipment.push_back(one_line(text_of(*tools)));
      }
    }
    return recipe;
  }

  /// The most telling of several: words before a bare number.
  std::string yield_of(const JsonNode& recipe) const {
    const JsonNode* node = member(recipe, "recipeyield");
    if (node == nullptr) node = member(recipe, "yield");
    if (node == nullptr) return "";
    if (node->kind == Kind::kObject && member(*node, "value") != nullptr) {
      const std::string unit = text_at(*node, "unittext");
      return text_at(*node, "value") + (unit.empty() ? "" : " " + unit);
    }
    if (node->kind != Kind::kArray) return one_line(text_of(*node));
    std::string best;
    for (const JsonNode& item : node->items) {
      const std::string text = one_line(text_of(item));
      const bool has_words = std::any_of(text.begin(), text.end(), [](char c) { return c > '9'; });
      if (best.empty() || (has_words && std::none_of(best.begin(), best.end(), [](char c) { return c > '9'; })))
        best = text;
    }
    return best;
  }

  std::string language_of(const JsonNode& recipe) const {
    const JsonNode* node = member(recipe, "inlanguage");
    if (node == nullptr) return "";
    if (node->kind == Kind::kObject) {
      const std::string code = text_at(*node, "alternatename");
      return code.empty() ? text_at(*node, "name") : code;
    }
    return one_line(text_of(*node));
  }

  void add_ingredients(const JsonNode& given, ListedRecipe& recipe, int depth, bool is_whole_list = true) {
    const JsonNode& node = resolved(given);
    if (depth > kDeepestSteps || count_lines(recipe) > kMostLines) return;
    if (node.kind == Kind::kArray) {
      for (const JsonNode& item : node.items)
        add_ingredients(item, recipe, depth + 1, is_whole_list && node.items.size() == 1);
      return;
    }
    if (node.kind == Kind::kObject) {
      for (const std::string_view name : {"itemlistelement", "@list", "item", "ingredients", "recipeingredient"}) {
        const JsonNode* list = member(node, name);
        if (list == nullptr) continue;
        const std::string heading = text_at(node, "name");
        if (!heading.empty() && list->kind == Kind::kArray) recipe.parts.push_back({part_name(heading), {}});
        add_ingredients(*list, recipe, depth + 1);
        return;
      }
      std::string amount;
      for (const std::string_view name : {"amount", "requiredquantity", "quantity"}) {
        if (amount.empty()) amount = quantity_text(node, name);
      }
      if (amount.empty() && member(node, "name") != nullptr && member(node, "value") != nullptr) {
        amount = text_at(node, "value") + " " + text_at(node, "unittext");
      }
      const std::string unit = text_at(node, "unit");
      const std::string words =
          one_line(amount + " " + unit + " " + (amount.empty() ? text_of(node) : text_at(node, "name")));
      if (!words.empty()) add_listed(recipe.parts, words);
      return;
    }
    const std::string text = text_of(node);
    if (!is_whole_list) {  // one ingredient, wherever its line was broken
      if (!trimmed(text).empty()) add_listed(recipe.parts, one_line(text));
      return;
    }
    for (const std::string& line : lines_of(text)) {
      if (!line.empty()) add_listed(recipe.parts, line);
    }
  }

  std::string quantity_text(const JsonNode& node, std::string_view name) const {
    const JsonNode* quantity = member(node, name);
    if (quantity == nullptr) return "";
    if (quantity->kind != Kind::kObject) return text_at(node, name);
    return one_line(text_at(*quantity, "value") + " " + text_at(*quantity, "unittext"));
  }

  static std::size_t count_lines(const ListedRecipe& recipe) {
    return recipe.parts.size() + (recipe.parts.empty() ? 0 : recipe.parts.back().lines.size());
  }

  void add_steps(const JsonNode& given, ListedRecipe& recipe, int depth) {
    const JsonNode& node = resolved(given);
    if (depth > kDeepestSteps || recipe.steps.size() > kMostLines) return;
    if (node.kind == Kind::kArray) {
      for (const JsonNode& item : node.items) add_steps(item, recipe, depth + 1);
      return;
    }
    if (node.kind == Kind::kObject) {
      for (const std::string_view name : {"itemlistelement", "@list", "item", "steps", "step"}) {
        if (const JsonNode* list = member(node, name)) {
          const bool has_own = list->kind == Kind::kArray && list->items.empty();
          if (has_own) continue;
          add_steps(*list, recipe, depth + 1);
          return;
        }
      }
    }
    if (is_type(node, "howtotip")) {
      recipe.unread.push_back(one_line(text_of(node)));
      return;
    }
    for (const std::string& line : lines_of(text_of(node))) {
      for (const std::string& part : numbered_steps(line)) {
        const std::string step = without_number(part);
        if (!step.empty()) recipe.steps.push_back(step);
      }
    }
  }

  std::map<std::string, const JsonNode*> ids_;
  bool is_decoded_ = false;
};

}  // namespace

Result<ListedRecipe> list_linked_data(std::string_view json) {
  // Comments and CDATA marks around it, and what stands behind it, are no faults worth a word.
  std::vector<std::string> notes;
  auto tree = read_json(json);
  bool is_decoded = false;
  if (!tree) {
    MendedJson mended = mend_json(json);
    const Problem first = tree.problem();
    tree = read_json(mended.text);
    const bool is_escaped =
        contains(json, "&quot;") || contains(json, "&#34;") || contains(json, "&#034;") || contains(json, "&#x22;");
    if (is_escaped && (!tree || !contains(mended.text, "ecipe") || mended.text.size() < json.size() / 4)) {
      mended = mend_json(decode_entities(json));
      tree = read_json(mended.text);
      is_decoded = true;
    }
    if (!tree) return first;
    notes = mended.notes;
  }
  auto recipe = LinkedDataReader(*tree, is_decoded).read(*tree);
  if (!recipe) {
    return Problem{ProblemCode::kMissing, "this data holds no recipe; paste the recipe's text instead", ""};
  }
  recipe->unread.insert(recipe->unread.begin(), notes.begin(), notes.end());
  return *std::move(recipe);
}

}  // namespace tinwright
