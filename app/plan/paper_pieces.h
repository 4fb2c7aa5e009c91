// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Which flat pieces a pan asks for, in millimetres, with what is written on them.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/plan/paper.h"
#include "geometry/development.h"

namespace tinwright {

enum class PieceKind { kFloor, kWall, kCore, kDough, kStick };

struct PaperText {
  glm::dvec2 at;         // [mm]
  double letters = 3.0;  // [mm]
  std::string words;
  bool is_right = false;  // ends at `at` instead of starting there
};

struct PaperBox {
  glm::dvec2 low, high;  // [mm]
};

struct PaperPiece {
  PieceKind kind = PieceKind::kFloor;
  std::string name;               // "Wall, half 1 of 2"
  std::vector<std::string> says;  // what it is for, sentence by sentence
  int copies = 1;                 // to cut
  double area = 0.0;              // [m²] of the pan that one covers, tabs and overlaps not counted
  Loops cut;                      // closed; holes too (even-odd) [mm]
  Loops folds, laps;              // open: to crease, and where the other end comes to lie [mm]
  Loops ticks, marks;             // open: thin and thick lines of a ruler [mm]
  std::vector<PaperText> texts;
  std::optional<PaperBox> label;  // where its name goes; anywhere inside when not given
};

struct PaperSet {
  std::vector<PaperPiece> pieces;
  std::vector<std::string> left_out;  // what no piece covers, in words
  double left_out_area = 0.0;         // [m²] of wall that no piece covers but by its tabs, for one cavity
  double dough_reach = 0.0;           // [m] of the dough beyond the floor: up the wall, and over
};

PaperSet paper_set(const PaperOrder& order);

/// [m²] Of all pieces of a kind that one cavity takes.
double covered_area(const PaperSet& set, PieceKind kind, const PaperOrder& order);

/// What bounds its cut lines.
PaperBox box_of(const PaperPiece& piece);

}  // namespace tinwright
