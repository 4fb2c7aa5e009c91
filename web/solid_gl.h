// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Draws the bodies of app/view/solid_host.h with WebGL 2, each into a texture of its own. Nothing is drawn while the
// scene stays as it was.
#pragma once

#include "app/view/solid_host.h"

namespace tinwright::web {

/// See view::DrawSolid. Leaves the default framebuffer bound.
std::uintptr_t draw_solid(const view::SolidScene& scene);

/// Lets go of everything that was in the graphics context, which is a new one.
void forget_solids();

}  // namespace tinwright::web
