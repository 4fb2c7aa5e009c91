// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What is written on a piece of paper, put where it has room, as large as can be.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/plan/paper_mask.h"

namespace tinwright {

struct PaperLabel {
  std::vector<std::string> lines;  // the first one bold
  double letters = 3.0;            // [mm]
  glm::dvec2 at;                   // [mm] low corner of its box
  glm::dvec2 size;                 // [mm] of the box as written, before it is turned
  bool is_upright = false;         // turned to read from top to bottom
};

/// `head` in bold, then the sentences, wrapped; nothing where even the smallest letters have no room.
std::optional<PaperLabel> place_label(const PaperMask& mask, const std::string& head,
                                      const std::vector<std::string>& sentences);

/// At most `most` characters, with … where some were left out.
std::string clipped(const std::string& text, std::size_t most);

}  // namespace tinwright
