// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the files of drawings share: a white sheet with a title above and words below.
#pragma once

#include <string>

#include "app/plan/svg_pen.h"
#include "geometry/outline.h"

namespace tinwright {

// [mm] of paper
inline constexpr double kSheetWidth = 160.0;
inline constexpr double kSheetMargin = 8.0;
inline constexpr double kSheetTop = 24.0;  // where drawings begin, under the title
inline constexpr double kSheetLetters = 3.8;

/// Colours of a drawing on white paper.
inline constexpr const char* kPaperDough = "#d2e2de";
inline constexpr const char* kPaperFilling = "#f3e3c3";
inline constexpr const char* kPaperRule = "#d9d2c7";

/// The whole file around what the pen drew, down to `bottom` [mm]; `words` stand beneath it in lines.
std::string sheet(SvgPen& pen, const std::string& title, const std::string& words, double bottom);

/// Where a drawing's metres lie on the sheet.
struct SheetScale {
  glm::dvec2 origin{0.0, 0.0};  // [mm] where (0 m, 0 m) is
  double mm_per_m = 1.0;

  glm::dvec2 at(double x, double y) const { return {origin.x + x * mm_per_m, origin.y - y * mm_per_m}; }
  /// The loops as path data, closed or as open lines.
  std::string path(const Loops& loops, bool is_closed = true) const;
};

}  // namespace tinwright
