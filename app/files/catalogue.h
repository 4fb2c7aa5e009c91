// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The pans and mixtures that come with the program (assets/pans.json, assets/mixtures.json), compiled in.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/files/fields.h"
#include "geometry/heat/composition.h"

namespace tinwright {

struct CataloguePan {
  std::string id, name, family, note, source;
  Fields fields;  // as read_pan takes them, without a prefix
};

enum class MixtureUse { kDough, kFilling, kBatter, kBaked };

/// Core temperatures [K] between which the trade calls it done; low <= high.
struct DoneRange {
  double low = 0.0;
  double high = 0.0;
};

struct Mixture {
  std::string id, name, density, rise, spread, note, source;  // density "1.2 g/ml"; rise "1.5" or empty
  MixtureUse use = MixtureUse::kDough;
  bool egg_or_dairy = false;

  /// As it goes into the pan and as make_composition returns it; its air is what the density leaves room for.
  std::optional<Composition> composition;
  std::optional<DoneRange> done;
  std::optional<double> sets_at;  // [K] where the filling becomes firm; nothing for what does not set by heat
  std::string composition_source, done_source, sets_source;
};

/// All of them, in the order of the files: pans by family.
const std::vector<CataloguePan>& catalogue_pans();
const std::vector<Mixture>& catalogue_mixtures();

/// A quantity of the catalogue in SI; nothing where it gives none.
std::optional<double> quantity_of(const std::string& text, Dimension dimension);

/// The one with that id, or nullptr.
const CataloguePan* find_catalogue_pan(std::string_view id);
const Mixture* find_mixture(std::string_view id);

}  // namespace tinwright
