// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The baking ingredients that come with the program (assets/ingredients.json, compiled in): what each is made of, what
// a cup, a spoon or a piece of it weighs, and how to find it from what a recipe calls it. Where the figures come from:
// `source` of each, and assets/SOURCES.md.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/heat/composition.h"

namespace tinwright {

struct PieceWeight {
  std::string name;   // "large", "stick", "tin"; what is eaten of it: an egg without its shell
  double mass = 0.0;  // [kg]
};

/// How long what is left of it keeps, opened or out of its shell; durations as words ("4 days"). An empty freezer: it
/// does not freeze well.
struct Keeping {
  std::string refrigerator, freezer, source;
};

struct Ingredient {
  std::string id;                    // "egg-yolk"
  std::string name;                  // as a British kitchen says it: "egg yolk"
  std::vector<std::string> aliases;  // other words for the same
  std::vector<std::string> loosely;  // words that mostly mean it, but may mean something else: "cream"

  /// Without air, as make_composition returns it. Nothing for what is used by the drop or differs too much by maker.
  std::optional<Composition> composition;
  /// [kg/m³] as spooned into a kitchen cup (brown sugar packed, cream and bananas not whipped): air between the grains
  /// counts. Nothing for what no one measures so.
  std::optional<double> cup_density;
  std::vector<PieceWeight> pieces;     // the usual one first
  std::vector<std::string> allergens;  // words of European food law, short: "gluten", "eggs", "milk", "nuts", ...

  bool leavening = false;
  bool salt = false;
  bool egg = false;       // fresh egg or part of one
  bool dairy = false;     // milk, cream or fresh cheese, which has to stay cold; not butter, not chocolate
  std::string left_over;  // id of what remains, piece for piece, when only this part is used: yolk -> egg-white
  std::optional<Keeping> keeps;
  std::string source;  // "USDA SR 20081", "from memory", ...
};

/// All of them, in the order of the file: by kind.
const std::vector<Ingredient>& catalogue_ingredients();

/// Foods that are no ingredient of the catalogue though their words say so ("hot chocolate"): they match nothing.
const std::vector<std::string>& foods_not_catalogued();

/// The one with that id, or nullptr.
const Ingredient* find_ingredient(std::string_view id);

struct IngredientMatch {
  const Ingredient* ingredient = nullptr;  // never null in an answer
  double confidence = 0.0;                 // (0, 1], see below
};

/// [-] How sure a match is: the words are a name or alias and nothing else; besides it only words about size, state and
/// preparation ("large", "softened"); a word that usually means it ("cream"); a word besides it that changes it
/// ("reduced-fat") or that is not known ("Tahitian vanilla extract").
inline constexpr double kSameWords = 1.0;
inline constexpr double kPlainlyDescribed = 0.95;
inline constexpr double kUsuallyMeant = 0.7;
inline constexpr double kVaguelyDescribed = 0.6;
/// [-] Factor for the second of two that the recipe leaves to the cook, where the first is not known.
inline constexpr double kSecondChoice = 0.8;
/// Bytes of a wording that are looked at; no list of ingredients has longer ones.
inline constexpr std::size_t kLongestWording = 240;

/// The ingredient that an English recipe calls so: "2 large eggs, separated", "freshly squeezed juice of half a lemon",
/// "sugar (caster)". Amounts, letter case, plurals, accents, hyphens and remarks do not matter; of "butter or
/// margarine" it is the first. Nothing when the words, or any word of the food's own name, are not in the catalogue:
/// "peanut oil" is not oil, "brown butter" not butter. Any bytes may be given.
std::optional<IngredientMatch> match_ingredient(std::string_view words);

/// [kg] in `volume` [m³, >= 0] measured with cups or spoons; nothing where the catalogue has no density.
std::optional<double> weigh_volume(const Ingredient& ingredient, double volume);

/// [kg] of `count` (>= 0, parts of one allowed) pieces of that size ("large", "sticks"; empty: the usual one). Nothing
/// where the catalogue has no such piece.
std::optional<double> weigh_pieces(const Ingredient& ingredient, double count, std::string_view size = "");

}  // namespace tinwright
