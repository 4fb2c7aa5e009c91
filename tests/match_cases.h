// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Short ways to say a cupboard of round pans. All sizes in metres.
#pragma once

#include <cmath>
#include <numbers>
#include <string>

#include <doctest/doctest.h>

#include "app/plan/match.h"

namespace tinwright::match_cases {

/// A round pan of straight, leaning wall: the frustum's closed forms.
inline PanKind round_pan(const std::string& name, double rim, double depth, double taper, int count) {
  using std::numbers::pi;
  const double floor = rim / 2.0 - taper;
  const auto radius = [=](double h) { return floor + taper * h / depth; };
  const auto table = make_depth_table(
      [=](double h) { return pi * h / 3.0 * (floor * floor + floor * radius(h) + radius(h) * radius(h)); },
      [=](double h) { return pi * (floor + radius(h)) * std::hypot(h, radius(h) - floor); }, depth);
  REQUIRE(static_cast<bool>(table));
  return {name, count, *table};
}

/// The answer of a question that has to have one.
inline MatchAnswer answer_of(const MatchQuestion& question) {
  const auto answer = match_pans(question);
  REQUIRE(static_cast<bool>(answer));
  REQUIRE_FALSE(answer->sets.empty());
  return *answer;
}

}  // namespace tinwright::match_cases
