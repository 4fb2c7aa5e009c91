// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A piece of paper as squares of a millimetre: which lie wholly within its lines, and where a box of words has room.
#pragma once

#include <optional>
#include <vector>

#include "app/plan/paper_pieces.h"

namespace tinwright {

class PaperMask {
 public:
  /// Of the part of `loops` (even-odd) within `part` [mm]; nothing may be written over `lines`.
  PaperMask(const Loops& loops, const Loops& lines, const PaperBox& part);

  /// The low corner of a box of `size` [mm] that lies inside, as near to the middle of the part as can be.
  std::optional<glm::dvec2> room_for(glm::dvec2 size) const;

 private:
  int full_squares(int x, int y, int width, int height) const;

  glm::dvec2 origin_;
  int columns_ = 0, rows_ = 0;
  std::vector<int> sums_;  // of free squares above and left, one column and row more
};

/// Whether any of the piece lies within `part`, or a line of it crosses that.
bool touches(const Loops& loops, const PaperBox& part);

}  // namespace tinwright
