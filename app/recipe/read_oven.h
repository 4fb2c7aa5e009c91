// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The programme of oven, rack, refrigerator and freezer out of a recipe's steps.
#pragma once

#include <string>
#include <vector>

#include "app/recipe/draft.h"

namespace tinwright {

struct OvenReading {
  std::vector<StageDraft> stages;
  std::vector<std::string> doubts;  // what may be meant in two ways, for the cook
};

/// The stages in the order of the text. What is chilled before the oven (a dough before it is rolled) stands before its
/// stages. Rests between two times in the oven are of a part alone (a shell that cools before it is filled) and are
/// left out, as are rests on the rack before the first; they still stand in the steps.
OvenReading read_oven(const std::vector<std::string>& steps);

}  // namespace tinwright
