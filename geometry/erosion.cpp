// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See erosion.h.
#include "geometry/erosion.h"

#include <cmath>
#include <vector>

namespace tinwright {
namespace {

constexpr int kFirstSteps = 16;
constexpr int kMostHalvings = 22;
constexpr std::size_t kMostSamples = 4000;

using Sample = AreaCurve::Sample;

bool is_good_enough(const Sample& a, const Sample& b, const Sample& middle, const Sample& rim) {
  AreaCurve cubic;
  cubic.append({a, b});
  return std::abs(cubic.area(middle.inset) - middle.area) <= kAreaTolerance * rim.area &&
         std::abs(cubic.perimeter(middle.inset) - middle.perimeter) <= kPerimeterTolerance * rim.perimeter;
}

}  // namespace

void append_measured(AreaCurve& curve, const std::function<Sample(double)>& measure, const Sample& rim,
                     const Sample& from, const Sample& to) {
  struct Span {
    Sample a, b;
    int halvings;
  };
  std::vector<Span> waiting;  // the next one last
  Sample right = to;
  for (int i = kFirstSteps - 1; i >= 0; --i) {
    const Sample left = i == 0 ? from : measure(from.inset + (to.inset - from.inset) * i / kFirstSteps);
    waiting.push_back({left, right, 0});
    right = left;
  }
  std::vector<Sample> samples{from};
  while (!waiting.empty()) {
    const Span span = waiting.back();
    waiting.pop_back();
    const Sample middle = measure(0.5 * (span.a.inset + span.b.inset));
    if (span.halvings >= kMostHalvings || samples.size() > kMostSamples ||
        is_good_enough(span.a, span.b, middle, rim)) {
      samples.push_back(middle);
      samples.push_back(span.b);
    } else {
      waiting.push_back({middle, span.b, span.halvings + 1});
      waiting.push_back({span.a, middle, span.halvings + 1});
    }
  }
  curve.append(samples);
}

}  // namespace tinwright
