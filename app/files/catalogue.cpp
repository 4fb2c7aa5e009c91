// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See catalogue.h. The files are checked against their schemas by the tests; here they are taken as sound.
#include "app/files/catalogue.h"

#include <algorithm>

#include "app/quantity/parse.h"

namespace tinwright {

extern const std::string_view kPansJson;
extern const std::string_view kMixturesJson;

namespace {

const JsonNode* member(const JsonNode& object, std::string_view name) {
  const auto key = std::find(object.keys.begin(), object.keys.end(), name);
  return key == object.keys.end() ? nullptr : &object.items[static_cast<std::size_t>(key - object.keys.begin())];
}

std::string text(const JsonNode& object, std::string_view name) {
  const JsonNode* node = member(object, name);
  return node == nullptr ? "" : node->text;
}

template <class Item, class Read>
std::vector<Item> read_list(std::string_view json, std::string_view name, const Read& read) {
  std::vector<Item> items;
  const auto tree = read_json(json);
  const JsonNode* list = tree ? member(*tree, name) : nullptr;
  if (list == nullptr) return items;
  for (const JsonNode& node : list->items) items.push_back(read(node));
  return items;
}

CataloguePan read_catalogue_pan(const JsonNode& node) {
  CataloguePan pan{text(node, "id"),   text(node, "name"),   text(node, "family"),
                   text(node, "note"), text(node, "source"), {}};
  if (const JsonNode* fields = member(node, "pan")) pan.fields = fields_of(*fields);
  return pan;
}

Mixture read_mixture(const JsonNode& node) {
  Mixture mixture{text(node, "id"),     text(node, "name"), text(node, "density"), text(node, "rise"),
                  text(node, "spread"), text(node, "note"), text(node, "source")};
  const std::string use = text(node, "use");
  mixture.use = use == "dough" ? MixtureUse::kDough : use == "batter" ? MixtureUse::kBatter : MixtureUse::kFilling;
  mixture.egg_or_dairy = text(node, "egg_or_dairy") == "true";
  return mixture;
}

template <class Item>
const Item* find(const std::vector<Item>& items, std::string_view id) {
  const auto found = std::find_if(items.begin(), items.end(), [&](const Item& item) { return item.id == id; });
  return found == items.end() ? nullptr : &*found;
}

}  // namespace

const std::vector<CataloguePan>& catalogue_pans() {
  static const auto pans = read_list<CataloguePan>(kPansJson, "pans", read_catalogue_pan);
  return pans;
}

const std::vector<Mixture>& catalogue_mixtures() {
  static const auto mixtures = read_list<Mixture>(kMixturesJson, "mixtures", read_mixture);
  return mixtures;
}

std::optional<double> quantity_of(const std::string& text, Dimension dimension) {
  const auto value = parse_quantity(text, dimension);
  return value ? std::optional<double>(*value) : std::nullopt;
}

const CataloguePan* find_catalogue_pan(std::string_view id) {
  return find(catalogue_pans(), id);
}
const Mixture* find_mixture(std::string_view id) {
  return find(catalogue_mixtures(), id);
}

}  // namespace tinwright
