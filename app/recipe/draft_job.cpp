// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See draft_job.h.
#include "app/recipe/draft_job.h"

#include <algorithm>

#include "app/recipe/job.h"

namespace tinwright {
namespace {

constexpr std::size_t kMostPerList = 400;  // of a job file

JsonNode item_of(const IngredientDraft& draft) {
  JsonNode item = make_object();
  put_text(item, "said", draft.said);
  put_text(item, "food", draft.food.empty() ? draft.said : draft.food);
  put_text(item, "amount", draft.amount);
  put_text(item, "up_to", draft.up_to);
  put_text(item, "size", draft.size);
  put_text(item, "each", draft.each);
  put_text(item, "remark", draft.remark);
  return item;
}

/// Its own name, told apart from those before it.
std::string name_of(const PartDraft& draft, std::size_t number, const std::vector<std::string>& taken) {
  std::string name = draft.name.empty() ? "Part " + std::to_string(number + 1) : draft.name;
  while (std::find(taken.begin(), taken.end(), name) != taken.end()) name += " (" + std::to_string(number + 1) + ")";
  return name;
}

JsonNode parts_of(const RecipeDraft& draft) {
  JsonNode parts = make_array();
  std::vector<std::string> names;
  for (std::size_t i = 0; i < draft.parts.size(); ++i) {
    const PartDraft& each = draft.parts[i];
    names.push_back(draft.parts.size() == 1 && each.name.empty() ? "All of it" : name_of(each, i, names));
    JsonNode part = make_object();
    put_text(part, "name", names.back());
    put_text(part, "role", each.role.empty() ? "filling" : each.role);
    JsonNode items = make_array();
    for (const IngredientDraft& item : each.ingredients) {
      if (items.items.size() < kMostPerList) items.items.push_back(item_of(item));
    }
    put(part, "ingredients", std::move(items));
    // Crumbs go into the base, or else into what comes next.
    if (each.role == "crumbled") {
      for (std::size_t k = 0; k < draft.parts.size(); ++k) {
        if (k != i && draft.parts[k].role != "crumbled") {
          put_text(part, "into", draft.parts[k].name.empty() ? "Part " + std::to_string(k + 1) : draft.parts[k].name);
          break;
        }
      }
    }
    parts.items.push_back(std::move(part));
  }
  return parts;
}

bool is_in_oven(const StageDraft& stage) {
  return stage.place == "oven" || stage.place == "fan oven";
}

JsonNode oven_of(const RecipeDraft& draft) {
  JsonNode oven = make_array();
  for (const StageDraft& stage : draft.stages) {
    if (!is_in_oven(stage) || stage.time.empty()) continue;
    JsonNode each = make_object();
    put_text(each, "in", stage.place);
    put_text(each, "air", stage.air);
    put_text(each, "off", stage.off);
    put_text(each, "for", stage.time);
    put_text(each, "up_to", stage.up_to);
    put_text(each, "said", stage.said);
    oven.items.push_back(std::move(each));
  }
  return oven;
}

JsonNode rests_of(const RecipeDraft& draft) {
  JsonNode rests = make_array();
  bool is_after = false;
  for (const StageDraft& stage : draft.stages) {
    if (is_in_oven(stage)) {
      is_after = true;
      continue;
    }
    if (stage.time.empty()) continue;
    JsonNode rest = make_object();
    put_text(rest, "what", stage.said);
    put_text(rest, "for", stage.time);
    put_text(rest, "up_to", stage.up_to);
    put_text(rest, "where", stage.place == "rack" ? "room" : stage.place);
    put_text(rest, "when", is_after || stage.place == "rack" ? "after_oven" : "before_oven");
    rests.items.push_back(std::move(rest));
  }
  return rests;
}

JsonNode texts_of(const std::vector<std::string>& lines) {
  JsonNode list = make_array();
  for (const std::string& line : lines) {
    if (list.items.size() < kMostPerList) list.items.push_back(make_string(line));
  }
  return list;
}

bool is_said(const PanDraft& pan, const char* word) {
  return pan.said.find(word) != std::string::npos;
}

/// How deep a pan usually is whose depth a recipe leaves out; common practice, no source.
const char* usual_depth(const PanDraft& pan, const Fields& fields) {
  for (const char* word : {"sheet", "tray", "Swiss roll", "swiss roll", "jelly roll"}) {
    if (is_said(pan, word)) return "2.5 cm";
  }
  const auto kind = fields.find("outline.kind");
  const bool is_tart = is_said(pan, "tart") || is_said(pan, "flan") || is_said(pan, "pie") || is_said(pan, "quiche");
  if (is_tart || (kind != fields.end() && kind->second.text == "fluted")) return "3 cm";
  return is_said(pan, "loaf") ? "7 cm" : "5 cm";
}

/// The first pan the recipe names. Where its depth is left out, the usual one is put in and said in `open`.
JsonNode pan_of(const PanDraft& pan, std::vector<std::string>& open) {
  Fields fields;
  for (const auto& [path, text] : pan.fields) fields[path] = {text};
  if (fields.count("count") > 0) fields["count"].kind = JsonNode::Kind::kNumber;
  const bool has_sizes = fields.count("outline.kind") > 0;
  if (has_sizes && fields.count("profile.depth") == 0) {
    const char* depth = usual_depth(pan, fields);
    fields["profile.depth"] = {depth};
    open.push_back("the depth of \"" + pan.said + "\" is not said: taken as " + depth +
                   "; put it right in the recipe's pan");
  }
  return document_from(fields);
}

JsonNode recipe_of(const RecipeDraft& draft) {
  JsonNode recipe = make_object();
  put_text(recipe, "name", draft.name);
  put_text(recipe, "yield", draft.yield);
  std::vector<std::string> open;
  if (!draft.pans.empty()) put(recipe, "pan", pan_of(draft.pans.front(), open));
  put(recipe, "parts", parts_of(draft));
  put(recipe, "oven", oven_of(draft));
  put(recipe, "rests", rests_of(draft));
  JsonNode steps = make_array();
  for (const std::string& text : draft.steps) {
    JsonNode step = make_object();
    put_text(step, "text", text);
    if (steps.items.size() < kMostPerList) steps.items.push_back(std::move(step));
  }
  put(recipe, "steps", std::move(steps));
  open.insert(open.end(), draft.doubts.begin(), draft.doubts.end());
  open.insert(open.end(), draft.unread.begin(), draft.unread.end());
  put(recipe, "unread", texts_of(open));
  return recipe;
}

}  // namespace

void put_recipe(JsonNode& document, const RecipeDraft& draft) {
  put_text(document, "name", draft.name);
  put(document, "recipe", recipe_of(draft));
  take_away(document, "plan.pans");
  take_away(document, "page.readings");  // of the other recipe's bowls
}

JsonNode job_of(const RecipeDraft& draft) {
  JsonNode document = make_object();
  put(document, "version", make_leaf(JsonNode::Kind::kNumber, std::to_string(kJobVersion)));
  put_recipe(document, draft);
  put(document, "cupboard", make_array());
  return document;
}

}  // namespace tinwright
