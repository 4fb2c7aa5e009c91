// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The colours that stand for temperature, from cold to warm: one ramp that only ever grows lighter.
#pragma once

#include "app/view/theme.h"

namespace tinwright::view {

/// `share` 0 (coldest) to 1 (warmest); beyond that, the end's colour.
Colour warmth(double share);

}  // namespace tinwright::view
