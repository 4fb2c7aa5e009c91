// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See area_curve.h.
#include "geometry/area_curve.h"

#include <algorithm>
#include <utility>

#include "geometry/checks.h"

namespace tinwright {

AreaCurve::AreaCurve(std::vector<Piece> pieces, double closes_at) : pieces_(std::move(pieces)), closes_at_(closes_at) {
  GEOMETRY_ASSERT(!pieces_.empty() && pieces_.front().start == 0.0 && closes_at_ > 0.0);
}

void AreaCurve::append(const std::vector<Sample>& samples) {
  for (std::size_t i = 0; i + 1 < samples.size(); ++i) {
    const Sample& a = samples[i];
    const Sample& b = samples[i + 1];
    const double step = b.inset - a.inset;
    GEOMETRY_ASSERT(step > 0.0);
    const double slope = (b.area - a.area) / step;
    pieces_.push_back({.start = a.inset,
                       .c0 = a.area,
                       .c1 = -a.perimeter,
                       .c2 = (3.0 * slope + 2.0 * a.perimeter + b.perimeter) / step,
                       .c3 = (-a.perimeter - b.perimeter - 2.0 * slope) / (step * step)});
  }
  if (!samples.empty()) closes_at_ = samples.back().inset;
}

const AreaCurve::Piece& AreaCurve::piece_at(double inset) const {
  const auto after = std::upper_bound(pieces_.begin() + 1, pieces_.end(), inset,
                                      [](double d, const Piece& piece) { return d < piece.start; });
  return *(after - 1);
}

double AreaCurve::area(double inset) const {
  if (inset >= closes_at_) return 0.0;
  const Piece& p = piece_at(inset);
  const double u = inset - p.start;
  return std::max(0.0, p.c0 + u * (p.c1 + u * (p.c2 + u * p.c3)));
}

double AreaCurve::perimeter(double inset) const {
  if (inset > closes_at_) return 0.0;
  const Piece& p = piece_at(inset);
  const double u = inset - p.start;
  return std::max(0.0, -(p.c1 + u * (2.0 * p.c2 + u * 3.0 * p.c3)));
}

}  // namespace tinwright
