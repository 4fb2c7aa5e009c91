// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The profile of a pan's wall with a layer of dough on it: the wall's parallel curve at right angles to it.
#pragma once

#include "geometry/profile.h"

namespace tinwright {

/// The wall moved inwards by `thickness` [m], measured at right angles to it, between heights `low` and `high`
/// of the bare wall (low < high <= depth), its floor moved to z = 0. Straight pieces shift by
/// thickness·√(1 + d'²) horizontally, hollow corners shrink about their centre, and every bend towards the middle
/// gains an arc: the upper envelope of all of these. A straight wall is taken to go on below the floor.
Profile offset_profile(const Profile& wall, double thickness, double low, double high);

}  // namespace tinwright
