// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Somebody else's recipe as it was read: every quantity still a text, as a job file holds it, so that nothing is
// decided that the cook has not seen. What was not understood is kept in `unread`, never dropped.
#pragma once

#include <string>
#include <utility>
#include <vector>

namespace tinwright {

/// One line of a recipe's list. Empty texts: the recipe does not say.
struct IngredientDraft {
  std::string said;    // the whole line as the recipe has it
  std::string food;    // what it is, without amount and remarks: "plain flour"
  std::string amount;  // as parse_quantity reads a mass or volume: "250 g", "1 1/2 cup"; pieces as a number: "2", "1/2"
  std::string up_to;   // the other end of a range, written likewise: "3 tbsp"
  std::string size;    // of a piece: "large", "tin", "stick"
  std::string each;    // mass or volume of one piece where the recipe says it: "400 g"
  std::string remark;  // "sifted", "at room temperature", "to taste"
};

/// A part of the recipe: what stands under one heading, or everything.
struct PartDraft {
  std::string name;  // the heading; empty for a recipe of one part
  std::string role;  // "base", "lining", "filling", "topping", "crumbled"; empty: the recipe does not show it
  std::vector<IngredientDraft> ingredients;
};

/// A stage of the oven, or of a rest: texts as parse_quantity reads them.
struct StageDraft {
  std::string place;  // a word of place_names(): "oven", "fan oven", "rack", "refrigerator", "freezer"
  std::string air;    // "180 C"; empty for rack, refrigerator and freezer unless the recipe says
  std::string time;   // "35 min"
  std::string up_to;  // the later end of a range of times
  std::string said;   // the sentence it was read from
  std::string off;    // "shut" or "open", the door, where the oven is switched off; its air is then not said
};

/// A pan the recipe names, in fields as read_pan takes them: {"outline.kind", "round"}, {"outline.diameter", "9 in"}.
struct PanDraft {
  std::string said;                                         // the words: "two 9-inch cake tins"
  std::vector<std::pair<std::string, std::string>> fields;  // or {"catalogue", id} alone
};

struct RecipeDraft {
  std::string name, language, yield;  // yield as said: "2 pies", "serves 8"
  std::vector<PartDraft> parts;
  std::vector<std::string> steps;  // one instruction each, plain text
  std::vector<PanDraft> pans;
  std::vector<StageDraft> stages;   // in the order of the text: cold before the oven, oven, rack and cold after it
  std::vector<std::string> unread;  // lines and fields that were not understood
  std::string prep_time, cook_time, total_time;  // as parse_quantity reads them: "1 h 30 min"; empty: not said
  std::vector<std::string> doubts;  // what was read in one of two ways, or left open, in words for the cook
};

}  // namespace tinwright
