// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See read_pan_words.h. What a size means follows the habit of the trade: one length of a round tin is its diameter,
// the second its depth; of others the lengths are length, width and depth.
#include "app/recipe/read_pan_words.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>

#include "app/files/catalogue.h"
#include "app/recipe/oven_words.h"
#include "app/recipe/pan_sizes.h"
#include "app/recipe/plain_text.h"

namespace tinwright {
namespace {

constexpr std::size_t kMostPans = 20;
constexpr std::size_t kLongestSentence = 600;  // tokens
constexpr double kSameSize = 0.0025;           // [m] 23 cm and 9 in are one size of tin
constexpr double kSameDepth = 0.005;           // [m]
constexpr double kExactly = 0.0005;            // [m]

constexpr std::string_view kRing =
    "tube|savarin|angel|ring tin|ring tins|ring mould|ring mold|ring pan|ring cake tin|crown";
constexpr std::string_view kRound =
    "round|springform|spring|sandwich|layer|pie|tart|tarts|tartlet|tartlets|quiche|flan|ramekin|ramekins|cheesecake|"
    "circular|"
    "circle|ring|rings|basin|cocotte|sponge|cake|deep-dish";
constexpr std::string_view kHoles =
    "muffin|cupcake|bun|tartlet|friand|popover|hole|holes|hollow|hollows|cavity|cavities|fairy|madeleine|patty";

using PanFields = std::vector<std::pair<std::string, std::string>>;

struct Sizes {
  std::vector<SaidLength> lengths;  // as said first
  std::string depth;
};

Sizes sizes_of(const NamedPan& pan) {
  Sizes sizes;
  sizes.depth = pan.depth;
  if (pan.groups.empty()) return sizes;
  const auto most = std::max_element(pan.groups.begin(), pan.groups.end(),
                                     [](const auto& a, const auto& b) { return a.size() < b.size(); });
  sizes.lengths = most->size() > 1 ? *most : pan.groups.front();
  return sizes;
}

/// Words that say nothing of the shape of a tin.
bool is_unspoken(const NamedPan& pan) {
  return has_any_word(
      pan.words,
      "frying|roasting|sauce|serving|saute|skillet|heavy|grill|drip|cooling|wire|bowl|pizza stone|cake stand");
}

void add(PanFields& fields, const std::string& name, const std::string& text) {
  if (!text.empty()) fields.emplace_back(name, text);
}

PanFields round_fields(const Sizes& sizes, const std::string& kind, const std::string& name) {
  PanFields fields;
  add(fields, "outline.kind", kind);
  std::string depth = sizes.depth;
  if (!sizes.lengths.empty()) {
    const bool is_turned = sizes.lengths.size() > 1 && sizes.lengths[1].metres > sizes.lengths[0].metres;
    add(fields, name, sizes.lengths[is_turned ? 1 : 0].text);
    if (depth.empty() && sizes.lengths.size() > 1) depth = sizes.lengths[is_turned ? 0 : 1].text;
  }
  add(fields, "profile.depth", depth);
  return fields;
}

PanFields long_fields(const Sizes& sizes, const std::string& kind) {
  PanFields fields;
  add(fields, "outline.kind", kind);
  std::string depth = sizes.depth;
  std::vector<SaidLength> sides = sizes.lengths;
  if (sides.size() > 2) {
    if (depth.empty()) depth = sides[2].text;
    sides.resize(2);
  }
  if (sides.size() == 1 && kind == "rectangle") sides.push_back(sides[0]);
  if (sides.size() == 2 && sides[1].metres > sides[0].metres) std::swap(sides[0], sides[1]);
  if (!sides.empty()) add(fields, "outline.length", sides[0].text);
  if (sides.size() == 2) add(fields, "outline.width", sides[1].text);
  add(fields, "profile.depth", depth);
  return fields;
}

PanFields shape_of(const NamedPan& pan, const Sizes& sizes) {
  const std::string& words = pan.words;
  const std::size_t lengths = sizes.lengths.size();
  if (has_any_word(words, "oval")) return long_fields(sizes, "oval");
  if (has_any_word(words, "hexagonal|hexagon|octagonal|octagon")) {
    PanFields fields = round_fields(sizes, "polygon", "outline.across_flats");
    fields.insert(fields.begin() + 1, {"outline.sides", contains(words, "hexa") ? "6" : "8"});
    return fields;
  }
  if (has_any_word(words, kRing)) return round_fields(sizes, "ring", "outline.outer_diameter");
  if (has_any_word(words, "heart|star")) return round_fields(sizes, "round", "outline.diameter");
  const bool is_round =
      has_any_word(words, kRound) && !has_any_word(words, "loaf|square|rectangular|rectangle|oblong|traybake|brownie");
  const bool is_disc =
      is_round &&
      (lengths < 2 || (lengths == 2 && std::min(sizes.lengths[0].metres, sizes.lengths[1].metres) <=
                                           0.45 * std::max(sizes.lengths[0].metres, sizes.lengths[1].metres)));
  const bool says_round = has_any_word(words, "round|springform|circular|pie|tart|quiche|flan|sandwich") && lengths < 3;
  if (has_any_word(words, "fluted") && is_round && !has_any_word(words, "cake"))
    return round_fields(sizes, "fluted", "outline.diameter");
  if (is_disc || (is_round && says_round)) return round_fields(sizes, "round", "outline.diameter");
  if (has_any_word(words, "loaf|square|rectangular|rectangle|oblong|swiss|jelly|traybake|sheet") || lengths >= 2)
    return long_fields(sizes, "rectangle");
  return round_fields(sizes, "round", "outline.diameter");  // "a 9-inch pan": see doubt_of
}

std::string material_of(const std::string& words) {
  if (has_any_word(words, "glass")) return "glass";
  if (has_any_word(words, "ceramic|stoneware|earthenware|porcelain")) return "ceramic";
  return has_any_word(words, "silicone") ? "silicone" : "";
}

/// Beginning of the ids among which the words choose; empty where they choose none.
std::string family_of(const NamedPan& pan) {
  const std::string& words = pan.words;
  if (has_any_word(words, "springform|spring")) return "springform-";
  if (has_any_word(words, "loaf")) return "loaf-";
  if (has_any_word(words, "pie")) return "pie-";
  if (has_any_word(words, "ring|rings") && !has_any_word(words, kRing)) return "ring-";
  if (has_any_word(words, "tart|quiche|flan")) return has_any_word(words, "fluted") ? "tart-" : "";
  if (has_any_word(words, kRing)) return "";
  if (has_any_word(words, "round|sandwich|layer|cake|sponge") && !has_any_word(words, "square")) return "round-";
  const bool is_square = std::any_of(pan.groups.begin(), pan.groups.end(), [](const auto& group) {
    return group.size() > 1 && std::fabs(group[0].metres - group[1].metres) < kExactly;
  });
  if (is_square || has_any_word(words, "square")) return "square-";
  if (has_any_word(words, "swiss|jelly")) return "swiss-";
  return pan.groups.empty() ? "" : "rectangle-";
}

/// How far the lengths that were said lie from those of a pan of the catalogue [m]; nothing where they are others.
std::optional<double> distance(const PanFields& said, const Fields& fields) {
  double farthest = 0.0;
  bool has_size = false;
  for (const auto& [name, text] : said) {
    const bool is_depth = name == "profile.depth";
    const bool is_length = starts_with(name, "outline.") && name != "outline.kind" && name != "outline.sides";
    if (!is_depth && !is_length) continue;
    const auto field = fields.find(name);
    if (field == fields.end()) return std::nullopt;
    const auto mine = quantity_of(text, Dimension::kLength),
               theirs = quantity_of(field->second.text, Dimension::kLength);
    if (!mine || !theirs || std::fabs(*mine - *theirs) > (is_depth ? kSameDepth : kSameSize)) return std::nullopt;
    farthest = std::max(farthest, std::fabs(*mine - *theirs));
    has_size = has_size || is_length;
  }
  return has_size ? std::optional<double>(farthest) : std::nullopt;
}

std::string catalogue_id(const NamedPan& pan, const PanFields& fields) {
  const std::string& words = pan.words;
  if (has_any_word(words, "half sheet|half-sheet")) return "half-sheet";
  if (has_any_word(words, "quarter sheet|quarter-sheet")) return "quarter-sheet";
  if (has_any_word(words, kHoles)) {
    if (pan.holes == 12 && has_any_word(words, "muffin|cupcake")) return "muffin-12";
    if (pan.holes == 24 && has_any_word(words, "mini")) return "muffin-24-mini";
    return pan.holes == 6 && has_any_word(words, "large|jumbo|deep") ? "muffin-6-large" : "";
  }
  if (has_any_word(words, "loaf") && pan.groups.empty()) {
    const double pounds = std::round(pan.pounds * 10.0) / 10.0;
    return pounds > 1.8 && pounds < 2.3 ? "loaf-2lb-uk" : pounds > 0.9 && pounds < 1.2 ? "loaf-1lb-uk" : "";
  }
  const std::string family = family_of(pan);
  if (family.empty()) return "";
  std::string best;
  bool is_exact = false, is_tied = false;
  for (const CataloguePan& entry : catalogue_pans()) {
    if (!starts_with(entry.id, family)) continue;
    if (contains(entry.name, "Sandwich") != has_any_word(words, "sandwich|layer")) continue;
    const std::string material = material_of(words);
    const auto made_of = entry.fields.find("material");
    if (!material.empty() && made_of != entry.fields.end() && made_of->second.text != material) continue;
    const auto apart = distance(fields, entry.fields);
    if (!apart || (is_exact && *apart > kExactly)) continue;
    is_tied = !best.empty() && is_exact == (*apart <= kExactly);
    best = entry.id;
    is_exact = *apart <= kExactly;
  }
  return is_tied ? "" : best;
}

std::string text_of(const PanFields& fields, const std::string& name) {
  const auto found =
      std::find_if(fields.begin(), fields.end(), [&name](const auto& field) { return field.first == name; });
  return found == fields.end() ? "" : found->second;
}

std::string kind_of(const PanDraft& draft) {
  const CataloguePan* entry = find_catalogue_pan(text_of(draft.fields, "catalogue"));
  if (entry == nullptr) return text_of(draft.fields, "outline.kind");
  const auto kind = entry->fields.find("outline.kind");
  return kind == entry->fields.end() ? "" : kind->second.text;
}

int count_of(const CataloguePan& entry) {
  const auto count = entry.fields.find("count");
  return count == entry.fields.end() ? 1 : std::atoi(count->second.text.c_str());
}

PanDraft draft_of(const NamedPan& pan) {
  const Sizes sizes = sizes_of(pan);
  PanDraft draft{pan.said, {}};
  const bool has_holes = has_any_word(pan.words, kHoles) && !has_any_word(pan.words, kRing);
  draft.fields = has_holes ? round_fields(sizes, "round", "outline.diameter") : shape_of(pan, sizes);
  const bool is_bottomless = has_any_word(pan.words, "ring|rings") && !has_any_word(pan.words, kRing) &&
                             !has_any_word(pan.words, "tin|tins|pan|pans|mould|mold");
  add(draft.fields, "material", material_of(pan.words));
  if (is_bottomless) add(draft.fields, "bottomless", "true");
  const int count = pan.count * (has_holes && pan.holes > 0 ? pan.holes : 1);
  const CataloguePan* entry = find_catalogue_pan(catalogue_id(pan, draft.fields));
  if (entry != nullptr && count == count_of(*entry)) {
    draft.fields = {{"catalogue", entry->id}};  // it has all sizes; read_pan takes no others beside it
    return draft;
  }
  if (count > 1) add(draft.fields, "count", std::to_string(count));
  return draft;
}

bool has_size(const PanDraft& draft) {
  return std::any_of(draft.fields.begin(), draft.fields.end(), [](const auto& field) {
    return field.first == "catalogue" || (starts_with(field.first, "outline.") && field.first != "outline.kind");
  });
}

/// A shape that its name alone gives: "a springform tin", "a loaf tin".
bool is_telling(const NamedPan& pan) {
  return has_any_word(
      pan.words,
      "springform|loaf|muffin|cupcake|ramekin|ramekins|pie|tart|flan|quiche|tube|square|rectangular|bun|tartlet");
}

}  // namespace

std::vector<PanDraft> read_pan_words(const std::vector<std::string>& steps) {
  std::vector<PanDraft> sized, telling;
  for (const std::string& step : steps) {
    for (const Sentence& sentence : sentences_of(step)) {
      if (sentence.tokens.size() > kLongestSentence) continue;
      for (const NamedPan& pan : find_pans(step, sentence.tokens)) {
        if (is_unspoken(pan)) continue;
        PanDraft draft = draft_of(pan);
        if (!has_size(draft) && !is_telling(pan)) continue;
        std::vector<PanDraft>& list = has_size(draft) ? sized : telling;
        const bool is_known =
            std::any_of(list.begin(), list.end(), [&](const PanDraft& d) { return d.fields == draft.fields; });
        if (!is_known && list.size() < kMostPans) list.push_back(std::move(draft));
      }
    }
  }
  for (PanDraft& draft : telling) {  // "release the springform" speaks of the one whose size was said
    const std::string kind = kind_of(draft);
    const bool is_same =
        std::any_of(sized.begin(), sized.end(), [&kind](const PanDraft& d) { return kind_of(d) == kind; });
    if (!is_same && sized.size() < kMostPans) sized.push_back(std::move(draft));
  }
  return sized;
}

std::string doubt_of(const PanDraft& pan) {
  const std::string said = shortened(pan.said, 100), words = lower_case(pan.said);
  if (const CataloguePan* entry = find_catalogue_pan(text_of(pan.fields, "catalogue"))) {
    return said + ": taken for the catalogue's " + entry->name;
  }
  const bool is_shaped = has_any_word(words, kRound) || has_any_word(words, kHoles);
  if (text_of(pan.fields, "outline.kind") != "round" || (is_shaped && !has_any_word(words, "heart|star"))) return "";
  return said + ": the recipe does not say that it is round; round was taken";
}

}  // namespace tinwright
