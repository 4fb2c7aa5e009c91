// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A recipe that was read, in the few lines in which tests/recipes/expected.txt says what it should be.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "app/recipe/draft.h"

namespace tinwright {

inline std::string with_range(const std::string& from, const std::string& to) {
  return to.empty() ? from : from + " .. " + to;
}

/// "250 g | | | flour | sifted": amount, size, each, food, remark.
inline std::string words_of(const IngredientDraft& draft) {
  std::string words;
  for (const std::string& text :
       {with_range(draft.amount, draft.up_to), draft.size, draft.each, draft.food, draft.remark}) {
    if (!words.empty()) words += " | ";
    words += text.empty() ? "_" : text;
  }
  return words;
}

inline std::string words_of(const StageDraft& stage) {
  return stage.place + " / " + (stage.air.empty() ? "_" : stage.air) + " / " + with_range(stage.time, stage.up_to) +
         (stage.off.empty() ? "" : " / off " + stage.off);
}

inline std::string words_of(const PanDraft& pan) {
  std::string words;
  for (const auto& [name, text] : pan.fields) words += (words.empty() ? "" : " ") + name + "=" + text;
  return words;
}

inline std::vector<std::string> words_of(const RecipeDraft& draft) {
  std::vector<std::string> lines{"name " + draft.name};
  if (!draft.language.empty()) lines.push_back("language " + draft.language);
  if (!draft.yield.empty()) lines.push_back("yield " + draft.yield);
  if (!(draft.prep_time + draft.cook_time + draft.total_time).empty()) {
    lines.push_back("times " + draft.prep_time + " / " + draft.cook_time + " / " + draft.total_time);
  }
  for (const PartDraft& part : draft.parts) {
    lines.push_back("part " + part.name + (part.role.empty() ? "" : " / " + part.role));
    for (const IngredientDraft& ingredient : part.ingredients) lines.push_back("- " + words_of(ingredient));
  }
  lines.push_back("steps " + std::to_string(draft.steps.size()));
  for (const std::string& step : draft.steps) lines.push_back("step " + step);
  for (const StageDraft& stage : draft.stages) lines.push_back("stage " + words_of(stage));
  for (const PanDraft& pan : draft.pans) lines.push_back("pan " + words_of(pan));
  for (const std::string& line : draft.unread) lines.push_back("unread " + line);
  lines.push_back("doubts " + std::to_string(draft.doubts.size()));
  return lines;
}

}  // namespace tinwright
