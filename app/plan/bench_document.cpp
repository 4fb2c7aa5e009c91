// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See bench_document.h.
#include "app/plan/bench_document.h"

#include <algorithm>

#include "app/plan/bake_job.h"

namespace tinwright {
namespace {

constexpr std::size_t kMostStages = 12;

using Names = std::vector<std::string_view>;

const Names kCovers{"floor", "floor_and_wall", "slab"};
const Names kAirs{"held", "ramp", "off_shut", "off_open"};
const Names kStores{"nowhere", "refrigerator", "freezer"};
const Names kUnits{"metric", "us"};

void add_flag(JsonNode& object, const char* name, bool value) {
  put(object, name, make_leaf(JsonNode::Kind::kBoolean, value ? "true" : "false"));
}

void add_word(JsonNode& object, const char* name, const Names& names, std::size_t index) {
  put(object, name, make_string(std::string(names[std::min(index, names.size() - 1)])));
}

void add_texts(JsonNode& object, const Texts& texts) {
  JsonNode node = make_object();
  for (const auto& [name, text] : texts) {
    if (text.empty()) continue;
    node.keys.push_back(name);
    node.items.push_back(make_string(text));
  }
  put(object, "texts", std::move(node));
}

JsonNode node_of(const OvenEntry& oven) {
  JsonNode node = make_object();
  JsonNode stages = make_array();
  for (const StageEntry& stage : oven.stages) {
    JsonNode each = make_object();
    add_word(each, "in", place_names(), stage.place);
    add_word(each, "air", kAirs, static_cast<std::size_t>(stage.air));
    add_flag(each, "bath", stage.has_bath);
    add_texts(each, stage.texts);
    stages.items.push_back(std::move(each));
  }
  put(node, "stages", std::move(stages));
  add_word(node, "store", kStores, oven.store);
  add_texts(node, oven.texts);
  return node;
}

/// The place of the word at `path`; 0 where it is none of them.
std::size_t word(const JsonNode& node, const char* path, const Names& names) {
  const auto found = std::find(names.begin(), names.end(), text_at(node, path));
  return found == names.end() ? 0 : static_cast<std::size_t>(found - names.begin());
}

Texts texts_of(const JsonNode& node) {
  Texts texts;
  const JsonNode* found = node_at(node, "texts");
  if (found == nullptr || found->kind != JsonNode::Kind::kObject) return texts;
  for (std::size_t i = 0; i < found->items.size(); ++i) {
    if (found->items[i].kind == JsonNode::Kind::kString) texts[found->keys[i]] = found->items[i].text;
  }
  return texts;
}

OvenEntry oven_of(const JsonNode& node) {
  OvenEntry oven;
  const std::size_t count = std::min(count_at(node, "stages"), kMostStages);
  for (std::size_t i = 0; i < count; ++i) {
    const JsonNode& each = node_at(node, "stages")->items[i];
    StageEntry stage;
    stage.place = word(each, "in", place_names());
    stage.air = static_cast<AirEntry>(word(each, "air", kAirs));
    stage.has_bath = text_at(each, "bath") == "true";
    stage.texts = texts_of(each);
    oven.stages.push_back(std::move(stage));
  }
  oven.store = word(node, "store", kStores);
  oven.texts = texts_of(node);
  return oven;
}

const JsonNode& below(const JsonNode& node, const char* path) {
  static const JsonNode nothing = make_object();
  const JsonNode* found = node_at(node, path);
  return found == nullptr ? nothing : *found;
}

}  // namespace

JsonNode document_of(const Bench& bench) {
  JsonNode node = make_object();
  add_word(node, "units", kUnits, static_cast<std::size_t>(bench.units));
  add_flag(node, "has_recipe_pan", bench.has_recipe_pan);
  put(node, "recipe_pan", document_from(pan_fields(bench.recipe_pan, "")));
  put(node, "my_pan", document_from(pan_fields(bench.my_pan, "")));
  JsonNode dough = make_object();
  put_text(dough, "mixture", bench.dough.mixture);
  add_word(dough, "cover", kCovers, static_cast<std::size_t>(bench.dough.cover));
  add_texts(dough, bench.dough.texts);
  put(node, "dough", std::move(dough));
  JsonNode filling = make_object();
  put_text(filling, "mixture", bench.filling.mixture);
  add_texts(filling, bench.filling.texts);
  put(node, "filling", std::move(filling));
  put(node, "oven", node_of(bench.oven));
  return node;
}

Bench bench_of(const JsonNode& document) {
  Bench bench;
  bench.units = static_cast<UnitChoice>(word(document, "units", kUnits));
  bench.has_recipe_pan = text_at(document, "has_recipe_pan") != "false";
  bench.recipe_pan = pan_entry_of(fields_of(below(document, "recipe_pan")));
  bench.my_pan = pan_entry_of(fields_of(below(document, "my_pan")));
  const JsonNode& dough = below(document, "dough");
  bench.dough = {text_at(dough, "mixture"), static_cast<Cover>(word(dough, "cover", kCovers)), texts_of(dough)};
  const JsonNode& filling = below(document, "filling");
  bench.filling = {text_at(filling, "mixture"), texts_of(filling)};
  bench.oven = oven_of(below(document, "oven"));
  return bench;
}

}  // namespace tinwright
