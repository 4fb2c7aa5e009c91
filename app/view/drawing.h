// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Drawing to scale: places in metres to places on the canvas, filled shapes, and dimension lines with their figures.
#pragma once

#include <span>
#include <string_view>

#include "app/view/surface.h"
#include "geometry/outline.h"
#include "imgui.h"

namespace tinwright::view {

/// Where a drawing's metres lie on the canvas.
struct Scale {
  ImVec2 origin;  // where (0 m, 0 m) is drawn [device px]
  double px_per_m = 1.0;

  ImVec2 at(double x, double y) const {
    return {origin.x + static_cast<float>(x * px_per_m), origin.y - static_cast<float>(y * px_per_m)};
  }
  ImVec2 at(glm::dvec2 p) const { return at(p.x, p.y); }
};

/// Fills what lies inside an odd number of loops [m, y upwards], by horizontal runs.
void fill_loops(ImDrawList& draw, const Scale& scale, const Loops& loops, Colour colour, float opacity);

/// Fills with slanting lines, so that the area is told apart without colour.
void hatch_loops(ImDrawList& draw, const Scale& scale, const Loops& loops, Colour colour, float spacing);

void stroke_loops(ImDrawList& draw, const Scale& scale, const Loops& loops, Colour colour, float thickness);
void stroke_line(ImDrawList& draw, const Scale& scale, const Loop& line, Colour colour, float thickness);

/// A dimension: arrows at both ends, its text beside the middle. Ends in device px.
void dimension(ImDrawList& draw, ImVec2 from, ImVec2 to, std::string_view text, bool text_on_right);
/// A horizontal dashed line.
void dashes(ImDrawList& draw, ImVec2 from, ImVec2 to, Colour colour, float thickness);
/// A line through `points`, in dashes of `dash` with gaps of `gap` [device px]; a gap of 0 is a plain line.
void dashed_path(ImDrawList& draw, std::span<const ImVec2> points, float dash, float gap, Colour colour,
                 float thickness);
/// Text with its middle at `centre`.
void caption(ImVec2 centre, std::string_view text);

}  // namespace tinwright::view
