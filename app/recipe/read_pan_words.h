// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The pans a recipe names in its steps: "two 9-inch round cake tins", "a 9 x 13 inch dish", "23cm/9in springform tin".
#pragma once

#include <string>
#include <vector>

#include "app/recipe/draft.h"

namespace tinwright {

/// Pans with a size or a shape of their own, each once, in the order of the text. Only what is said becomes a field;
/// where one pan of the catalogue fits the words it is given instead, as {"catalogue", id} alone, since it has the
/// sizes that the recipe leaves out.
std::vector<PanDraft> read_pan_words(const std::vector<std::string>& steps);

/// What of the pan is not the recipe's word, for the cook: "a 9-inch pan" may be round or square, a pan of the
/// catalogue has sizes that were not said. Empty if nothing.
std::string doubt_of(const PanDraft& pan);

}  // namespace tinwright
