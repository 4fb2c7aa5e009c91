// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See erosion.h.
#include "geometry/erosion.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace tinwright {
namespace {

constexpr int kFirstSteps = 16;
constexpr std::size_t kMostSpans = 1200;
/// [-] A span narrower than this share of the whole is left as it is: its errors are the measurements' own rounding.
constexpr double kNarrowest = 1e-7;

using Sample = AreaCurve::Sample;

struct Span {
  Sample a, middle, b;
  double error = 0.0;  // [-] of the cubic at the middle, in tolerances
};

Span make_span(const Sample& a, const Sample& middle, const Sample& b, const Sample& rim) {
  AreaCurve cubic;
  cubic.append({a, b});
  const double area = std::abs(cubic.area(middle.inset) - middle.area) / (kAreaTolerance * rim.area);
  const double perimeter =
      std::abs(cubic.perimeter(middle.inset) - middle.perimeter) / (kPerimeterTolerance * rim.perimeter);
  return {a, middle, b, std::max(area, perimeter)};
}

}  // namespace

void append_measured(AreaCurve& curve, const std::function<Sample(double)>& measure, const Sample& rim,
                     const Sample& from, const Sample& to) {
  const auto between = [&](const Sample& a, const Sample& b) { return measure(0.5 * (a.inset + b.inset)); };
  const auto better = [](const Span& a, const Span& b) { return a.error < b.error; };
  std::vector<Span> spans;  // a heap, the worst first
  Sample left = from;
  for (int i = 1; i <= kFirstSteps; ++i) {
    const Sample right = i == kFirstSteps ? to : measure(from.inset + (to.inset - from.inset) * i / kFirstSteps);
    spans.push_back(make_span(left, between(left, right), right, rim));
    left = right;
  }
  std::make_heap(spans.begin(), spans.end(), better);
  while (spans.size() < kMostSpans && spans.front().error > 1.0) {
    std::pop_heap(spans.begin(), spans.end(), better);
    Span worst = spans.back();
    spans.pop_back();
    if (worst.b.inset - worst.a.inset < kNarrowest * (to.inset - from.inset)) {
      worst.error = 0.0;
      spans.push_back(worst);
      std::push_heap(spans.begin(), spans.end(), better);
      continue;
    }
    spans.push_back(make_span(worst.a, between(worst.a, worst.middle), worst.middle, rim));
    std::push_heap(spans.begin(), spans.end(), better);
    spans.push_back(make_span(worst.middle, between(worst.middle, worst.b), worst.b, rim));
    std::push_heap(spans.begin(), spans.end(), better);
  }
  std::sort(spans.begin(), spans.end(), [](const Span& a, const Span& b) { return a.a.inset < b.a.inset; });
  std::vector<Sample> samples;
  for (const Span& span : spans) {
    samples.push_back(span.a);
    samples.push_back(span.middle);
  }
  samples.push_back(to);
  curve.append(samples);
}

}  // namespace tinwright
