// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What a food is to the heat solver, from fields: measured constants, a composition, or the name of a mixture of the
// catalogue. For files and page alike.
#pragma once

#include <optional>
#include <string>

#include "app/files/catalogue.h"
#include "app/files/fields.h"
#include "geometry/heat/composition.h"
#include "geometry/heat/food_properties.h"

namespace tinwright {

/// Either `constants` or `food` is there. `mixture` is set when it was named; its composition is then `food`.
struct SubstanceChoice {
  std::optional<Properties> constants;
  std::optional<Composition> food;
  const Mixture* mixture = nullptr;
};

/// Reads S of {"fill": {"substance": S}}, S standing at `path` and `what` naming it for the cook ("filling"):
///  {"conductivity": …, "density": …, "heat_capacity": …}, whose sizes make_thermal_table judges;
///  {"water": …, "protein": …, "fat": …, "carbohydrate": …, "fibre": …, "ash": …, "air": …, "sugar": …,
///   "freezing_point": …}, checked by make_composition, any left out being 0 (sugar and freezing point: unknown);
///  or an id or name of the catalogue, in whatever case, a blank for a hyphen.
/// Nothing, with faults noted at their places, otherwise; an unknown name gets the nearest ones offered.
std::optional<SubstanceChoice> read_substance(FieldReader& reader, const std::string& path, const std::string& what);

}  // namespace tinwright
