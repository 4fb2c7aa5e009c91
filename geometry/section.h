// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Lines for drawing a pan cut through its middle along its length. Only drawings use them; no figure does.
#pragma once

#include <vector>

#include <glm/vec2.hpp>

#include "geometry/pan.h"

namespace tinwright {

/// The wall as an open line from the floor up to `height` [m]: x = inset, y = height [m], arcs in steps of about 3°.
Loop wall_line(const Profile& wall, double height);

/// The closed shape, seen in section, of what fills `pan` to `height` [m]: right-hand half, x = distance from the
/// middle, y = height above the pan's own floor [m], counter-clockwise from the floor's middle or core. Mirror it
/// in x = 0 for the other half. Empty when there is no height.
Loop section_half(const Pan& pan, double height);

}  // namespace tinwright
