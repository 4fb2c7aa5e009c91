// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The bench card's drawings, as SVG: a pan cut through its middle, to scale, and its time in the oven as a strip.
#pragma once

#include <string>

#include "app/plan/plan_oven.h"

namespace tinwright {

/// One of the plan's pans in section with its dough, its filling and the measures a cook needs. User units are
/// millimetres of the pan, from the rim's middle downwards. `widest` [mm] is the pan's room on paper, margins not
/// counted; `number` keeps ids apart within a page.
std::string pan_drawing(const OwnPan& own, const PanPlan& pan, UnitChoice units, double widest, std::size_t number);

/// The stages along the time, and over them the band in which it is done; empty where nothing was baked or it never
/// gets done.
std::string oven_strip(const PanBake& baked, UnitChoice units, std::size_t number);

}  // namespace tinwright
