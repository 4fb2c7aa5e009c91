// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See catalogue.h. The files are checked against their schemas by the tests; here they are taken as sound.
#include "app/files/catalogue.h"

#include <algorithm>

#include "app/files/document.h"
#include "app/quantity/parse.h"
#include "geometry/heat/food_properties.h"

namespace tinwright {

extern const std::string_view kPansJson;
extern const std::string_view kMixturesJson;

namespace {

template <class Item, class Read>
std::vector<Item> read_list(std::string_view json, std::string_view name, const Read& read) {
  std::vector<Item> items;
  const auto tree = read_json(json);
  const JsonNode* list = tree ? node_at(*tree, name) : nullptr;
  if (list == nullptr) return items;
  for (const JsonNode& node : list->items) items.push_back(read(node));
  return items;
}

CataloguePan read_catalogue_pan(const JsonNode& node) {
  CataloguePan pan{text_at(node, "id"),   text_at(node, "name"),   text_at(node, "family"),
                   text_at(node, "note"), text_at(node, "source"), {}};
  if (const JsonNode* fields = node_at(node, "pan")) pan.fields = fields_of(*fields);
  return pan;
}

MixtureUse use_called(const std::string& word) {
  if (word == "dough") return MixtureUse::kDough;
  if (word == "batter") return MixtureUse::kBatter;
  return word == "baked" ? MixtureUse::kBaked : MixtureUse::kFilling;
}

/// The composition with as much air as brings it down to `density`; none where that is denser already by a rounding.
std::optional<Composition> read_composition(const JsonNode& node, const std::string& density) {
  const auto share = [&](std::string_view name) {
    return quantity_of(text_at(node, name), Dimension::kRatio).value_or(0.0);
  };
  Composition asked;
  asked.water = share("water");
  asked.protein = share("protein");
  asked.fat = share("fat");
  asked.carbohydrate = share("carbohydrate");
  asked.fibre = share("fibre");
  asked.ash = share("ash");
  asked.sugar = share("sugar");
  const auto food = make_composition(asked);
  const auto weighed = quantity_of(density, Dimension::kDensity);
  if (!food || !weighed) return std::nullopt;
  Composition airy = *food;
  airy.air = std::max(0.0, 1.0 - *weighed / food_properties(*food, kDensityTemperature).density);
  const auto checked = make_composition(airy);
  return checked ? std::optional<Composition>(*checked) : std::nullopt;
}

std::optional<DoneRange> read_done(const JsonNode& node) {
  const JsonNode* core = node_at(node, "core");
  if (core == nullptr || core->items.size() != 2) return std::nullopt;
  const auto low = quantity_of(core->items[0].text, Dimension::kTemperature);
  const auto high = quantity_of(core->items[1].text, Dimension::kTemperature);
  return low && high ? std::optional<DoneRange>({*low, *high}) : std::nullopt;
}

Mixture read_mixture(const JsonNode& node) {
  Mixture mixture;
  mixture.id = text_at(node, "id");
  mixture.name = text_at(node, "name");
  mixture.density = text_at(node, "density");
  mixture.rise = text_at(node, "rise");
  mixture.spread = text_at(node, "spread");
  mixture.note = text_at(node, "note");
  mixture.source = text_at(node, "source");
  mixture.use = use_called(text_at(node, "use"));
  mixture.egg_or_dairy = text_at(node, "egg_or_dairy") == "true";
  if (const JsonNode* shares = node_at(node, "composition")) {
    mixture.composition = read_composition(*shares, mixture.density);
    mixture.composition_source = text_at(node, "composition_source");
  }
  if (const JsonNode* done = node_at(node, "done")) {
    mixture.done = read_done(*done);
    mixture.done_source = text_at(*done, "source");
  }
  mixture.sets_at = quantity_of(text_at(node, "sets_at"), Dimension::kTemperature);
  mixture.sets_source = text_at(node, "sets_source");
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
