// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The sizes that a cook drags on the drawings of the single pan: where each stands, how far it goes, and what the bench
// says once it was moved. A grip moves in whole steps: millimetres, or sixteenths of an inch where US measures come
// first.
#pragma once

#include <optional>
#include <string>

#include "app/plan/bench.h"

namespace tinwright {

enum class Grip {
  kLevel,   // the top of the filling
  kLength,  // across the pan, as the cut shows it
  kWidth,   // the other way across, where the shape has one of its own
  kDepth,
};

struct GripState {
  std::string name, words;          // "The fill line", "3.2 cm (1¼ in) below the rim"
  std::string figure;               // "3.2 cm (1¼ in)"
  int at = 0, first = 0, last = 0;  // [steps]; larger is further up, out, or deeper
  double value = 0.0;               // [m] exactly: of a level from the cavity's floor, else the size
  double drawn = 0.0;               // [m] as long as the value is drawn; differs for a polygon, known by its flats
};

/// [m] 1 mm or 1/16 in.
double grip_step(UnitChoice units);

/// Nothing where this bench has no such size: no pan yet, no filling, a measured outline or wall.
std::optional<GripState> grip_state(const Bench& bench, const BenchAnswer& answer, Grip grip);

/// The step a grip is drawn to from where it was, the drawing's line moved by `metres` [m] of its own scale.
int dragged_to(const GripState& from, Grip grip, double metres, UnitChoice units);

/// Writes the size at step `to` into the bench's texts, where the forms show it; a catalogue pan gets sizes of its own.
/// A level goes into "level", or, where only an amount was given, into "amount". What would be no pan at all (walls
/// that meet) stops on the way there. False when nothing changed.
bool move_grip(Bench& bench, const BenchAnswer& answer, Grip grip, int to);

}  // namespace tinwright
