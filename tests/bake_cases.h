// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Short ways to say a recipe's bake and a pan of one's own in tests. SI units, but for °C and minutes in stages.
#pragma once

#include <doctest/doctest.h>

#include "app/files/catalogue.h"
#include "geometry/heat/bake_time.h"
#include "tests/foods.h"
#include "tests/heat_cases.h"

namespace tinwright::bake_cases {

/// A food of the catalogue as the solver meets it.
inline Substance mixture(const char* id) {
  const Mixture* found = find_mixture(id);
  REQUIRE(found != nullptr);
  REQUIRE(found->composition.has_value());
  const auto substance = make_substance(*found->composition);
  REQUIRE(static_cast<bool>(substance));
  return *substance;
}

inline Substance substance_of(const Composition& food) {
  const auto made = make_substance(foods::made(food));
  REQUIRE(static_cast<bool>(made));
  return *made;
}

inline BakeAnswer run(const HeatProblem& problem, const BakeQuestion& question) {
  const auto answer = bake(problem, question);
  REQUIRE(static_cast<bool>(answer));
  return *answer;
}

/// A still oven with a dark tin in it, unless told otherwise.
inline Stage stage(double air_c, double minutes, Place place = Place::kOven, Material material = Material::kDarkSteel) {
  Stage stage;
  stage.air = air_c + foods::kZero;
  stage.duration = 60.0 * minutes;
  stage.around = surroundings_in(place, material);
  return stage;
}

/// Both pans made of the same, from 20 °C.
inline BakeTimeQuestion question(const FilledPan& recipe, const FilledPan& mine, const std::vector<Stage>& stages,
                                 const Substance& fill, const Substance& dough) {
  BakeTimeQuestion q{recipe, mine, {fill, dough}, 20.0 + foods::kZero, stages, {}, std::nullopt, {}};
  for (const Stage& each : stages) q.mine.push_back(*each.around);
  return q;
}

inline BakeTime answer(const BakeTimeQuestion& q) {
  const auto found = bake_time(q);
  REQUIRE(static_cast<bool>(found));
  return *found;
}

inline FilledPan round(double diameter, double height) {
  return heat_cases::bare(shapes::pan(Round{diameter}, StraightWall{height + 0.01, 0.0, 0.0}), height);
}

inline FilledPan rectangle(double length, double width, double height) {
  return heat_cases::bare(shapes::pan(Rectangle{length, width, 0.0}, StraightWall{height + 0.01, 0.0, 0.0}), height);
}

}  // namespace tinwright::bake_cases
