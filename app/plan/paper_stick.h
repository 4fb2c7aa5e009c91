// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The depth stick: a ruler to stand upright in the pan, with marks where dough and filling end.
#pragma once

#include "app/plan/paper_pieces.h"

namespace tinwright {

/// Millimetres on the left, eighths of an inch on the right, from the lower end up.
PaperPiece depth_stick(const PaperOrder& order);

}  // namespace tinwright
