// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the files that read a job share.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/recipe/job.h"

namespace tinwright {

/// A quantity between `least` and `most` [SI]; outside them a fault.
std::optional<double> positive(FieldReader& reader, const std::string& path, Dimension dimension, double least,
                               double most);

/// The items of a list; 0 where there is none or, with a fault, where there are more than `most`.
std::size_t length_of_list(FieldReader& reader, const std::string& path, std::size_t most);

/// Fills job.parts from recipe.parts.
void read_parts(FieldReader& reader, Job& job);

/// The part whose name stands at `path`; nothing when none is named, or, with a fault, when there is none of that name.
std::optional<std::size_t> part_called(FieldReader& reader, const std::string& path,
                                       const std::vector<RecipePart>& parts);

/// The pan at `prefix` ("cupboard.3."): its sizes, and the brimful of water that solves the one left out, or judges
/// them. `remark` becomes what the cook should know of it.
std::optional<Pan> read_own_pan(FieldReader& reader, const std::string& prefix, std::string& remark);

/// What to call a pan that has no name: its catalogue name, or "pan 3".
std::string pan_name(FieldReader& reader, const std::string& prefix, std::size_t index);

}  // namespace tinwright
