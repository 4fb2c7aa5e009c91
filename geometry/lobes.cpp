// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See lobes.h. Curvature and parallel curves as in any differential geometry text (do Carmo, ch. 1-5 and 1-7).
#include "geometry/lobes.h"

#include <cmath>
#include <numbers>

#include <glm/geometric.hpp>

#include "geometry/erosion.h"
#include "geometry/limits.h"
#include "geometry/numerics.h"
#include "geometry/plane.h"

namespace tinwright {
namespace {

constexpr int kPanels = 10;  // quadrature panels over a half lobe, narrow towards crest and hollow, where it bends

double curvature(const LobePoint& p) {
  return cross(p.first, p.second) / std::pow(glm::length(p.first), 3);
}

glm::dvec2 moved_inwards(const LobePoint& p, double inset) {
  const glm::dvec2 tangent = glm::normalize(p.first);
  return p.position + inset * glm::dvec2(-tangent.y, tangent.x);
}

/// Parameter at which the moved curve crosses the crest's mirror line: everything before it is folded over.
double crest_cut(const HalfLobe& lobe, double inset) {
  const auto height = [&](double t) { return moved_inwards(lobe.at(t), inset).y; };
  const double nearly_crest = 1e-7 * lobe.end;
  if (height(nearly_crest) >= 0.0) return 0.0;
  return find_root(height, nearly_crest, lobe.end);
}

template <class Function>
double integrate_lobe(const Function& f, double from, double to) {
  double sum = 0.0;
  for (int i = 0; i < kPanels; ++i) {
    const auto bound = [&](int k) {
      const double s = std::sin(0.5 * std::numbers::pi * k / kPanels);
      return from + (to - from) * s * s;
    };
    sum += integrate(f, bound(i), bound(i + 1));
  }
  return sum;
}

AreaCurve::Sample measure(const HalfLobe& lobe, double inset) {
  const double cut = crest_cut(lobe, inset);
  const auto sector = [&](double t) {
    const LobePoint p = lobe.at(t);
    return 0.5 * cross(moved_inwards(p, inset), p.first) * (1.0 - inset * curvature(p));
  };
  const auto length = [&](double t) {
    const LobePoint p = lobe.at(t);
    return glm::length(p.first) * (1.0 - inset * curvature(p));
  };
  return {.inset = inset,
          .area = lobe.copies * integrate_lobe(sector, cut, lobe.end),
          .perimeter = lobe.copies * integrate_lobe(length, cut, lobe.end)};
}

}  // namespace

HalfLobe oval_lobe(double half_length, double half_width) {
  const auto at = [a = half_length, b = half_width](double t) {
    const double c = std::cos(t);
    const double s = std::sin(t);
    return LobePoint{{a * c, b * s}, {-a * s, b * c}, {-a * c, -b * s}};
  };
  return {.at = at, .end = std::numbers::pi / 2, .copies = 4, .closes_at = half_width};
}

HalfLobe fluted_lobe(double diameter, int flutes, double flute_depth) {
  const auto at = [mean = 0.5 * (diameter - flute_depth), e = 0.5 * flute_depth, n = flutes](double t) {
    const double r = mean + e * std::cos(n * t);
    const double r1 = -e * n * std::sin(n * t);
    const double r2 = -e * n * n * std::cos(n * t);
    const glm::dvec2 out(std::cos(t), std::sin(t));
    const glm::dvec2 round(-out.y, out.x);
    return LobePoint{r * out, r1 * out + r * round, (r2 - r) * out + 2.0 * r1 * round};
  };
  return {.at = at, .end = std::numbers::pi / flutes, .copies = 2 * flutes, .closes_at = 0.5 * diameter - flute_depth};
}

AreaCurve erode_lobes(const HalfLobe& lobe) {
  const AreaCurve::Sample rim = measure(lobe, 0.0);
  const double crest_radius = std::min(1.0 / curvature(lobe.at(0.0)), lobe.closes_at);
  AreaCurve curve({{.start = 0.0, .c0 = rim.area, .c1 = -rim.perimeter, .c2 = std::numbers::pi}}, lobe.closes_at);
  if (lobe.closes_at - crest_radius < kLengthTolerance) return curve;

  const AreaCurve::Sample crest{crest_radius, curve.area(crest_radius), curve.perimeter(crest_radius)};
  append_measured(curve, [&](double inset) { return measure(lobe, inset); }, rim, crest, {lobe.closes_at, 0.0, 0.0});
  return curve;
}

std::vector<glm::dvec2> lobe_points(const HalfLobe& lobe, double inset, int count) {
  const double cut = crest_cut(lobe, inset);
  std::vector<glm::dvec2> points;
  for (int i = 0; i < count; ++i) {
    const double t = cut + (lobe.end - cut) * i / (count - 1);
    points.push_back(moved_inwards(lobe.at(t), inset));
  }
  return points;
}

std::vector<glm::dvec2> lobe_loop(const HalfLobe& lobe, double inset, int count) {
  const auto half = lobe_points(lobe, inset, count);
  const double sector = 2.0 * std::numbers::pi / lobe.copies;
  std::vector<glm::dvec2> loop;
  for (int copy = 0; copy < lobe.copies; ++copy) {
    const bool mirrored = copy % 2 == 1;
    const double turn = (mirrored ? copy + 1 : copy) * sector;
    for (std::size_t i = 0; i + 1 < half.size(); ++i) {
      const glm::dvec2 p = mirrored ? half[half.size() - 1 - i] : half[i];
      const double y = mirrored ? -p.y : p.y;
      loop.emplace_back(p.x * std::cos(turn) - y * std::sin(turn), p.x * std::sin(turn) + y * std::cos(turn));
    }
  }
  return loop;
}

}  // namespace tinwright
