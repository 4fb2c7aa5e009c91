// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See drawing.h.
#include "app/view/drawing.h"

#include <algorithm>
#include <cmath>

namespace tinwright::view {
namespace {

/// x of every crossing of the loops with the line y + slope·x, sorted.
std::vector<double> crossings(const Loops& loops, double y, double slope) {
  std::vector<double> found;
  for (const auto& loop : loops) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const glm::dvec2 a = loop[i];
      const glm::dvec2 b = loop[(i + 1) % loop.size()];
      const double ya = a.y - slope * a.x;
      const double yb = b.y - slope * b.x;
      if ((ya <= y) == (yb <= y)) continue;
      found.push_back(a.x + (b.x - a.x) * (y - ya) / (yb - ya));
    }
  }
  std::sort(found.begin(), found.end());
  return found;
}

struct Extent {
  double low = 1e9, high = -1e9;
};

Extent extent_along(const Loops& loops, double slope) {
  Extent extent;
  for (const auto& loop : loops) {
    for (const glm::dvec2 p : loop) {
      extent.low = std::min(extent.low, p.y - slope * p.x);
      extent.high = std::max(extent.high, p.y - slope * p.x);
    }
  }
  return extent;
}

void arrow_head(ImDrawList& draw, ImVec2 tip, float dx, float dy, ImU32 colour) {
  const float size = surface().px(0.3f);
  const ImVec2 back{tip.x - dx * size, tip.y - dy * size};
  const float side = 0.45f * size;
  draw.AddTriangleFilled(tip, {back.x - dy * side, back.y + dx * side}, {back.x + dy * side, back.y - dx * side}, colour);
}

}  // namespace

void fill_loops(ImDrawList& draw, const Scale& scale, const Loops& loops, Colour colour, float opacity) {
  const Extent extent = extent_along(loops, 0.0);
  const ImU32 packed_colour = packed(colour, opacity);
  const double step = 1.0 / scale.px_per_m;
  const ImDrawListFlags flags = draw.Flags;
  draw.Flags &= ~ImDrawListFlags_AntiAliasedFill;
  for (double y = extent.low + 0.5 * step; y < extent.high; y += step) {
    const std::vector<double> x = crossings(loops, y, 0.0);
    for (std::size_t i = 0; i + 1 < x.size(); i += 2) {
      draw.AddRectFilled(scale.at(x[i], y + 0.5 * step), scale.at(x[i + 1], y - 0.5 * step), packed_colour);
    }
  }
  draw.Flags = flags;
}

void hatch_loops(ImDrawList& draw, const Scale& scale, const Loops& loops, Colour colour, float spacing) {
  constexpr double kSlope = 1.0;
  const Extent extent = extent_along(loops, kSlope);
  const double step = spacing / scale.px_per_m;
  for (double c = extent.low + 0.5 * step; c < extent.high; c += step) {
    const std::vector<double> x = crossings(loops, c, kSlope);
    for (std::size_t i = 0; i + 1 < x.size(); i += 2) {
      draw.AddLine(scale.at(x[i], c + kSlope * x[i]), scale.at(x[i + 1], c + kSlope * x[i + 1]), packed(colour),
                   surface().hairline());
    }
  }
}

void stroke_line(ImDrawList& draw, const Scale& scale, const std::vector<glm::dvec2>& line, Colour colour, float thickness) {
  for (const glm::dvec2 p : line) draw.PathLineTo(scale.at(p));
  draw.PathStroke(packed(colour), ImDrawFlags_None, thickness);
}

void stroke_loops(ImDrawList& draw, const Scale& scale, const Loops& loops, Colour colour, float thickness) {
  for (const auto& loop : loops) {
    for (const glm::dvec2 p : loop) draw.PathLineTo(scale.at(p));
    draw.PathStroke(packed(colour), ImDrawFlags_Closed, thickness);
  }
}

void dimension(ImDrawList& draw, ImVec2 from, ImVec2 to, std::string_view text, bool text_on_right) {
  Surface& s = surface();
  const ImU32 colour = packed(s.palette().soft_ink);
  const float length = std::hypot(to.x - from.x, to.y - from.y);
  if (length > 0.0f) {
    const float dx = (to.x - from.x) / length;
    const float dy = (to.y - from.y) / length;
    draw.AddLine(from, to, colour, s.hairline());
    if (length > s.px(0.8f)) {
      arrow_head(draw, from, -dx, -dy, colour);
      arrow_head(draw, to, dx, dy, colour);
    }
  }
  const Rect size = s.text_size(s.faces().small, text);
  const ImVec2 middle{0.5f * (from.x + to.x), 0.5f * (from.y + to.y)};
  const bool is_level = std::abs(to.x - from.x) > std::abs(to.y - from.y);
  if (is_level) {
    caption({middle.x, middle.y + 0.75f * size.height}, text);
  } else {
    const float away = 0.5f * size.width + s.px(0.5f);
    caption({middle.x + (text_on_right ? away : -away), middle.y}, text);
  }
}

void dashes(ImDrawList& draw, ImVec2 from, ImVec2 to, Colour colour, float thickness) {
  const float dash = surface().px(0.4f);
  for (float x = from.x; x < to.x; x += 1.6f * dash) {
    draw.AddLine({x, from.y}, {std::min(x + dash, to.x), to.y}, packed(colour), thickness);
  }
}

void caption(ImVec2 centre, std::string_view text) {
  Surface& s = surface();
  const Rect size = s.text_size(s.faces().small, text);
  const float x = centre.x - 0.5f * size.width;
  const float y = centre.y - 0.5f * size.height + s.viewport().scroll;  // text() counts from the top of the content
  s.text(s.faces().small, x, y, s.palette().ink, text);
}

}  // namespace tinwright::view
