// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Reads the catalogue of ingredients. The file is short of words, since every page carries it: shares are grams in 100
// g in a fixed order, an id is left out where it is the name with hyphens, a source is a letter and a number. The tests
// check it; here it is taken as sound.
#include "app/files/ingredients.h"

#include <algorithm>

#include "app/files/catalogue.h"
#include "app/files/document.h"
#include "app/files/food_words.h"
#include "app/files/json_tree.h"

namespace tinwright {

extern const std::string_view kIngredientsJson;

namespace {

struct Catalogue {
  std::vector<Ingredient> ingredients;
  std::vector<std::string> others;
};

/// "oats, porridge oats" -> the two.
std::vector<std::string> listed(const std::string& text, std::string_view between) {
  std::vector<std::string> items;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t to = std::min(text.find(between, from), text.size());
    items.push_back(text.substr(from, to - from));
    from = to + between.size();
  }
  return items;
}

std::string hyphenated(std::string_view name) {
  std::string id;
  for (const char c : plain_letters(name)) id += c == ' ' ? '-' : c;
  return id;
}

/// From [water, protein, fat, carbohydrate without fibre, fibre, ash, sugar], grams in 100 g.
std::optional<Composition> read_shares(const JsonNode& shares) {
  if (shares.items.size() != 7) return std::nullopt;
  const auto share = [&](std::size_t i) {
    return quantity_of(shares.items[i].text + " %", Dimension::kRatio).value_or(0.0);
  };
  Composition asked;
  asked.water = share(0);
  asked.protein = share(1);
  asked.fat = share(2);
  asked.carbohydrate = share(3);
  asked.fibre = share(4);
  asked.ash = share(5);
  asked.sugar = share(6);
  const auto food = make_composition(asked);
  return food ? std::optional<Composition>(*food) : std::nullopt;
}

/// "S20081cp": a row of USDA SR, seen (S) or from memory (M); density (c) or weights of pieces (p) from memory.
std::string source_in_words(const std::string& code) {
  const std::size_t end = code.find_first_not_of("0123456789", 1);
  const std::string row = code.substr(std::min<std::size_t>(1, code.size()), end == std::string::npos ? end : end - 1);
  if (row.empty()) return "from memory";
  std::string words = "USDA SR " + row;
  if (code[0] == 'M') words += ", from memory";
  if (code.find('c') != std::string::npos) words += "; cup from memory";
  if (code.find('p') != std::string::npos) words += "; pieces from memory";
  return words;
}

std::string keeping_source(const std::string& code) {
  if (code == "K1") return "USDA FSIS, Shell Eggs from Farm to Table";
  if (code == "K2") return "US Food and Drug Administration, as quoted; freezer from memory";
  return "from memory";
}

void read_flags(const std::string& flags, Ingredient& ingredient) {
  for (const std::string& flag : listed(flags, " ")) {
    if (flag == "leavening") {
      ingredient.leavening = true;
    } else if (flag == "salt") {
      ingredient.salt = true;
    } else if (flag == "egg") {
      ingredient.egg = true;
    } else if (flag == "dairy") {
      ingredient.dairy = true;
    } else {
      ingredient.allergens.push_back(flag);
    }
  }
}

Ingredient read_ingredient(const JsonNode& node) {
  Ingredient ingredient;
  ingredient.name = text_at(node, "name");
  ingredient.id = text_at(node, "id");
  if (ingredient.id.empty()) ingredient.id = hyphenated(ingredient.name);
  ingredient.aliases = listed(text_at(node, "also"), ", ");
  ingredient.loosely = listed(text_at(node, "loosely"), ", ");
  if (const JsonNode* shares = node_at(node, "holds")) ingredient.composition = read_shares(*shares);
  ingredient.cup_density = quantity_of(text_at(node, "density"), Dimension::kDensity);
  if (const JsonNode* pieces = node_at(node, "pieces")) {
    for (std::size_t i = 0; i < pieces->items.size(); ++i) {
      const auto mass = quantity_of(pieces->items[i].text, Dimension::kMass);
      if (mass) ingredient.pieces.push_back({pieces->keys[i], *mass});
    }
  }
  read_flags(text_at(node, "flags"), ingredient);
  ingredient.left_over = text_at(node, "leaves");
  const JsonNode* keeps = node_at(node, "keeps");
  if (keeps != nullptr && keeps->items.size() == 3) {
    ingredient.keeps = Keeping{keeps->items[0].text, keeps->items[1].text, keeping_source(keeps->items[2].text)};
  }
  ingredient.source = source_in_words(text_at(node, "source"));
  return ingredient;
}

Catalogue read_catalogue() {
  Catalogue catalogue;
  const auto tree = read_json(kIngredientsJson);
  if (!tree) return catalogue;
  catalogue.others = listed(text_at(*tree, "others"), ", ");
  const JsonNode* list = node_at(*tree, "ingredients");
  if (list == nullptr) return catalogue;
  for (const JsonNode& node : list->items) catalogue.ingredients.push_back(read_ingredient(node));
  return catalogue;
}

const Catalogue& catalogue() {
  static const Catalogue read = read_catalogue();
  return read;
}

}  // namespace

const std::vector<Ingredient>& catalogue_ingredients() {
  return catalogue().ingredients;
}

const std::vector<std::string>& foods_not_catalogued() {
  return catalogue().others;
}

const Ingredient* find_ingredient(std::string_view id) {
  const auto& all = catalogue_ingredients();
  const auto found = std::find_if(all.begin(), all.end(), [&](const Ingredient& one) { return one.id == id; });
  return found == all.end() ? nullptr : &*found;
}

std::optional<double> weigh_volume(const Ingredient& ingredient, double volume) {
  if (!ingredient.cup_density) return std::nullopt;
  return *ingredient.cup_density * volume;
}

std::optional<double> weigh_pieces(const Ingredient& ingredient, double count, std::string_view size) {
  const auto asked = plain_words(size);
  for (const PieceWeight& piece : ingredient.pieces) {
    if (asked.empty() || plain_words(piece.name) == asked) return count * piece.mass;
  }
  return std::nullopt;
}

}  // namespace tinwright
