// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A pan is an outline and a profile; a ring (tube pan, savarin) has a core inside with a profile of its own.
// Everything a cook asks of a pan's shape is one of the functions below. All sizes are inside sizes.
#pragma once

#include <optional>
#include <string>

#include "geometry/outline.h"
#include "geometry/problem.h"
#include "geometry/profile.h"

namespace tinwright {

enum class Material { kBrightAluminium, kDarkSteel, kTinnedSteel, kGlass, kCeramic, kSilicone };

/// The middle of a ring: a round column that may grow towards the floor.
struct CoreShape {
  double diameter = 0.0;  // [m] at the rim
  double inset = 0.0;     // [m] how far its straight wall has grown at the floor
};

/// What is known of a pan, before it is checked.
struct PanShape {
  OutlineShape outline;
  WallShape wall;
  std::optional<CoreShape> core = std::nullopt;  // only with a round outline
  Material material = Material::kBrightAluminium;
  bool bottomless = false;  // a ring to stand on a tray
  int count = 1;            // alike cavities in one tin
};

struct Core {
  Outline outline;  // round, at the rim
  Profile wall;     // its inset is the growth of the core's radius
};

struct Pan {
  Outline outline;
  Profile wall;
  std::optional<Core> core = std::nullopt;
  Material material = Material::kBrightAluminium;
  bool bottomless = false;
  int count = 1;
};

/// The most cavities in one tin.
inline constexpr int kMostCavities = 400;

/// The pan, or the first thing that is impossible about it and what would be right.
Result<Pan> make_pan(const PanShape& shape);

/// [m] From the floor to the top.
double depth(const Pan& pan);
/// [m³] One cavity filled level to `height` [m], 0 to depth. Within 1e-12 of the closed forms of plain shapes,
/// 1e-7 for deep insets of ovals and flutes, 1e-5 for freeform outlines (relative).
double volume(const Pan& pan, double height);
/// [m³] One cavity filled to the brim.
double brim_volume(const Pan& pan);
/// [m²] Wall of one cavity up to `height` [m], along the slope, a ring's core included, the floor not.
double wall_area(const Pan& pan, double height);
/// [m²] Level surface at `height` [m]: what a filling shows from above.
double surface_area(const Pan& pan, double height);
/// [m²] The flat part of the floor (of a bottomless ring: its lower opening).
double floor_area(const Pan& pan);
/// [m²] The opening at the top.
double rim_area(const Pan& pan);
/// [m] How high `filling` [m³] stands in one cavity. kTooMuch when it does not fit, with how much too much.
Result<double> fill_height(const Pan& pan, double filling);

/// [m] Room between wall and core at a ring's rim; `pan` has a core.
double ring_gap(const Pan& pan);

/// Whether the walls meet at `height`, so that there is no room between them.
bool is_closed_at(const Pan& pan, double height);

}  // namespace tinwright
