// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Volume and wall surface of an outline moved inwards along a profile: the two integrals every answer stands on.
#pragma once

#include "geometry/area_curve.h"
#include "geometry/profile.h"

namespace tinwright {

/// Whether the profile moves the outline inwards going down (a pan's wall) or outwards (a ring's core).
enum class Lean { kInwards, kOutwards };

/// [m³] Integral of area(inset(z)) dz from the floor to `height` [m] in [0, depth]. Exact for straight pieces
/// (the area is a polynomial of z there: the prismoidal rule taken further), 15-point Gauss-Legendre on arcs.
double swept_volume(const AreaCurve& curve, const Profile& profile, Lean lean, double height);

/// [m²] Wall surface up to `height`, measured along the slope, ledges included, the floor not.
double swept_surface(const AreaCurve& curve, const Profile& profile, Lean lean, double height);

/// [m²] Wall surface from height `low` up to `high`.
double surface_between(const AreaCurve& curve, const Profile& profile, Lean lean, double low, double high);

}  // namespace tinwright
