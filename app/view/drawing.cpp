// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See drawing.h.
#include "app/view/drawing.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>
#include <vector>

namespace tinwright::view {
namespace {

/// A run of parallel lines y = slope·x + low + row·step, and where each crosses the loops, from left to right.
struct Rows {
  double low = 0.0;
  std::vector<std::vector<double>> crossings;  // [m] x, by row
};

Rows cross(const Loops& loops, double slope, double step) {
  const auto height = [&](glm::dvec2 p) { return p.y - slope * p.x; };
  double low = std::numeric_limits<double>::infinity();
  double high = -low;
  for (const Loop& loop : loops) {
    for (const glm::dvec2 p : loop) {
      low = std::min(low, height(p));
      high = std::max(high, height(p));
    }
  }
  if (!(high > low)) return {};
  Rows rows{low + 0.5 * step, std::vector<std::vector<double>>(static_cast<std::size_t>((high - low) / step) + 1)};
  for (const Loop& loop : loops) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
      glm::dvec2 a = loop[i];
      glm::dvec2 b = loop[(i + 1) % loop.size()];
      if (height(a) > height(b)) std::swap(a, b);
      const double first = std::max(0.0, std::ceil((height(a) - rows.low) / step));
      for (auto row = static_cast<std::size_t>(first); row < rows.crossings.size(); ++row) {
        const double y = rows.low + static_cast<double>(row) * step;
        if (y >= height(b)) break;
        rows.crossings[row].push_back(a.x + (b.x - a.x) * (y - height(a)) / (height(b) - height(a)));
      }
    }
  }
  for (auto& row : rows.crossings) std::sort(row.begin(), row.end());
  return rows;
}

void arrow_head(ImDrawList& draw, ImVec2 tip, float dx, float dy, ImU32 colour) {
  const float size = surface().px(0.3f);
  const ImVec2 back{tip.x - dx * size, tip.y - dy * size};
  const float side = 0.45f * size;
  draw.AddTriangleFilled(tip, {back.x - dy * side, back.y + dx * side}, {back.x + dy * side, back.y - dx * side},
                         colour);
}

}  // namespace

void fill_loops(ImDrawList& draw, const Scale& scale, const Loops& loops, Colour colour, float opacity) {
  const ImU32 packed_colour = packed(colour, opacity);
  const double step = 1.0 / scale.px_per_m;
  const Rows rows = cross(loops, 0.0, step);
  const ImDrawListFlags flags = draw.Flags;
  draw.Flags &= ~ImDrawListFlags_AntiAliasedFill;
  for (std::size_t row = 0; row < rows.crossings.size(); ++row) {
    const double y = rows.low + static_cast<double>(row) * step;
    const std::vector<double>& x = rows.crossings[row];
    for (std::size_t i = 0; i + 1 < x.size(); i += 2) {
      draw.AddRectFilled(scale.at(x[i], y + 0.5 * step), scale.at(x[i + 1], y - 0.5 * step), packed_colour);
    }
  }
  draw.Flags = flags;
}

void hatch_loops(ImDrawList& draw, const Scale& scale, const Loops& loops, Colour colour, float spacing) {
  const double step = spacing / scale.px_per_m;
  const Rows rows = cross(loops, 1.0, step);
  for (std::size_t row = 0; row < rows.crossings.size(); ++row) {
    const double y = rows.low + static_cast<double>(row) * step;
    const std::vector<double>& x = rows.crossings[row];
    for (std::size_t i = 0; i + 1 < x.size(); i += 2) {
      draw.AddLine(scale.at(x[i], y + x[i]), scale.at(x[i + 1], y + x[i + 1]), packed(colour), surface().hairline());
    }
  }
}

void stroke_line(ImDrawList& draw, const Scale& scale, const Loop& line, Colour colour, float thickness) {
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

void dashed_path(ImDrawList& draw, std::span<const ImVec2> points, float dash, float gap, Colour colour,
                 float thickness) {
  const ImU32 packed_colour = packed(colour);
  if (gap <= 0.0f) {
    draw.AddPolyline(points.data(), static_cast<int>(points.size()), packed_colour, ImDrawFlags_None, thickness);
    return;
  }
  float left = dash;  // of the dash or gap that is being drawn
  bool in_dash = true;
  for (std::size_t i = 1; i < points.size(); ++i) {
    ImVec2 from = points[i - 1];
    float length = std::hypot(points[i].x - from.x, points[i].y - from.y);
    while (length > 0.0f) {
      const float step = std::min(left, length);
      const float along = step / length;
      const ImVec2 to{std::lerp(from.x, points[i].x, along), std::lerp(from.y, points[i].y, along)};
      if (in_dash) draw.AddLine(from, to, packed_colour, thickness);
      from = to;
      length -= step;
      left -= step;
      if (left > 0.0f) continue;
      in_dash = !in_dash;
      left = in_dash ? dash : gap;
    }
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
