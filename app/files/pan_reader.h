// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Reads a pan from fields: outline, profile, material, bottomless, count, under a prefix such as "pan."; or just
// the id of one in the catalogue ("pan": {"catalogue": "quarter-sheet"}).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/files/fields.h"
#include "geometry/lining.h"

namespace tinwright {

/// The words of the pan format, in the order of the types they stand for.
const std::vector<std::string_view>& outline_kinds();   // round rectangle oval polygon fluted ring freeform
const std::vector<std::string_view>& material_names();  // in the order of Material

/// The pan under `prefix` ("" or ending in a dot), or nothing after noting every fault.
std::optional<Pan> read_pan(FieldReader& reader, const std::string& prefix);

/// The lining {floor, wall, height} at `path`; nothing when there is none or, with faults noted, when it is incomplete.
std::optional<Lining> read_lining(FieldReader& reader, const std::string& path);

}  // namespace tinwright
