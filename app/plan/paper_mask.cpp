// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See paper_mask.h. Squares are filled by scan lines through their middles; those that a line touches are not free.
#include "app/plan/paper_mask.h"

#include <algorithm>
#include <cmath>

#include <glm/common.hpp>
#include <glm/geometric.hpp>

namespace tinwright {
namespace {

using glm::dvec2;

/// Where a level line at y crosses the loops, from left to right.
std::vector<double> crossings(const Loops& loops, double y) {
  std::vector<double> places;
  for (const Loop& loop : loops) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
      const dvec2 a = loop[i], b = loop[(i + 1) % loop.size()];
      if ((a.y <= y) != (b.y <= y)) places.push_back(a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y));
    }
  }
  std::sort(places.begin(), places.end());
  return places;
}

/// Whether the stretch from a to b meets the box (Liang and Barsky 1984).
bool meets(dvec2 a, dvec2 b, const PaperBox& box) {
  double from = 0.0, to = 1.0;
  for (int axis = 0; axis < 2; ++axis) {
    const double way = b[axis] - a[axis], low = box.low[axis] - a[axis], high = box.high[axis] - a[axis];
    if (way == 0.0) {
      if (low > 0.0 || high < 0.0) return false;
      continue;
    }
    from = std::max(from, std::min(low / way, high / way));
    to = std::min(to, std::max(low / way, high / way));
  }
  return from <= to;
}

}  // namespace

PaperMask::PaperMask(const Loops& loops, const Loops& lines, const PaperBox& part)
    : origin_(part.low),
      columns_(std::max(0, static_cast<int>(part.high.x - part.low.x))),
      rows_(std::max(0, static_cast<int>(part.high.y - part.low.y))) {
  std::vector<char> is_free(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_), 0);
  const auto square = [&](int x, int y) -> char& {
    return is_free[static_cast<std::size_t>(y) * static_cast<std::size_t>(columns_) + static_cast<std::size_t>(x)];
  };
  for (int y = 0; y < rows_; ++y) {
    const auto places = crossings(loops, origin_.y + y + 0.5);
    for (std::size_t i = 0; i + 1 < places.size(); i += 2) {
      const double low = std::clamp(places[i] - origin_.x, 0.0, static_cast<double>(columns_));
      const double high = std::clamp(places[i + 1] - origin_.x, 0.0, static_cast<double>(columns_));
      for (int x = static_cast<int>(std::ceil(low)); x + 1 <= high; ++x) square(x, y) = 1;
    }
  }
  const auto block = [&](dvec2 a, dvec2 b) {
    const int steps = std::max(1, static_cast<int>(2.0 * glm::distance(a, b)));
    for (int i = 0; i <= steps; ++i) {
      const dvec2 p = glm::mix(a, b, static_cast<double>(i) / steps) - origin_;
      const int x = static_cast<int>(std::floor(p.x)), y = static_cast<int>(std::floor(p.y));
      if (x >= 0 && y >= 0 && x < columns_ && y < rows_) square(x, y) = 0;
    }
  };
  for (const Loop& loop : loops) {
    for (std::size_t i = 0; i < loop.size(); ++i) block(loop[i], loop[(i + 1) % loop.size()]);
  }
  for (const Loop& line : lines) {
    for (std::size_t i = 0; i + 1 < line.size(); ++i) block(line[i], line[i + 1]);
  }
  const std::size_t wide = static_cast<std::size_t>(columns_) + 1;
  sums_.assign(wide * (static_cast<std::size_t>(rows_) + 1), 0);
  for (int y = 0; y < rows_; ++y) {
    for (int x = 0; x < columns_; ++x) {
      const std::size_t at = (static_cast<std::size_t>(y) + 1) * wide + static_cast<std::size_t>(x) + 1;
      sums_[at] = square(x, y) + sums_[at - 1] + sums_[at - wide] - sums_[at - wide - 1];
    }
  }
}

int PaperMask::full_squares(int x, int y, int width, int height) const {
  const auto sum = [&](int column, int row) {
    return sums_[static_cast<std::size_t>(row) * (static_cast<std::size_t>(columns_) + 1) +
                 static_cast<std::size_t>(column)];
  };
  return sum(x + width, y + height) - sum(x, y + height) - sum(x + width, y) + sum(x, y);
}

std::optional<dvec2> PaperMask::room_for(dvec2 size) const {
  const int width = static_cast<int>(std::ceil(size.x)), height = static_cast<int>(std::ceil(size.y));
  std::optional<dvec2> best;
  double nearest = 0.0;
  for (int y = 0; y + height <= rows_; ++y) {
    for (int x = 0; x + width <= columns_; ++x) {
      const double away = std::hypot(x + 0.5 * (width - columns_), y + 0.5 * (height - rows_));
      if ((best && away >= nearest) || full_squares(x, y, width, height) < width * height) continue;
      best = origin_ + dvec2(x, y);
      nearest = away;
    }
  }
  return best;
}

bool touches(const Loops& loops, const PaperBox& part) {
  for (const Loop& loop : loops) {
    for (std::size_t i = 0; i < loop.size(); ++i) {
      if (meets(loop[i], loop[(i + 1) % loop.size()], part)) return true;
    }
  }
  const dvec2 middle = 0.5 * (part.low + part.high);
  const auto places = crossings(loops, middle.y);
  return std::count_if(places.begin(), places.end(), [&](double x) { return x < middle.x; }) % 2 == 1;
}

}  // namespace tinwright
