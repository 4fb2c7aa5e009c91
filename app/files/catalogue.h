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

namespace tinwright {

struct CataloguePan {
  std::string id, name, family, note, source;
  Fields fields;  // as read_pan takes them, without a prefix
};

enum class MixtureUse { kDough, kFilling, kBatter };

struct Mixture {
  std::string id, name, density, rise, spread, note, source;  // density "1.2 g/ml"; rise "1.5" or empty
  MixtureUse use = MixtureUse::kDough;
  bool egg_or_dairy = false;
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
