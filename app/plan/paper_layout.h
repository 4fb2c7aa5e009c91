// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Pieces of paper laid out on sheets: what is larger than a sheet is cut into parts that overlap, and all parts are put
// on shelves, the tallest first.
#pragma once

#include <string>
#include <vector>

#include "app/plan/paper_pieces.h"

namespace tinwright {

/// [mm] A sheet: A4 by ISO 216, Letter 8.5 by 11 in.
glm::dvec2 sheet_size(PaperSize size);

inline constexpr double kPaperMargin = 10.0;   // [mm] that printers leave blank
inline constexpr double kPaperOverlap = 10.0;  // [mm] of neighbouring parts
inline constexpr double kPaperFoot = 20.0;     // [mm] at the foot of a sheet, for its check bar
inline constexpr double kPaperHead = 4.5;      // [mm] over each part, for its title

/// A part of a piece on a sheet.
struct PaperPart {
  std::size_t piece = 0;
  PaperBox box;  // of the piece, that lies here
  std::size_t sheet = 0;
  glm::dvec2 at;                                  // [mm] where the box's low corner lies on the sheet
  int number = 1, of = 1;                         // parts of the piece
  int left = 0, right = 0, above = 0, below = 0;  // the parts next to it; 0: none
};

struct PaperLayout {
  std::vector<PaperPiece> pieces;  // as given, some turned by a right angle
  std::vector<PaperPart> parts;
  std::size_t sheets = 0;
};

/// More parts than this are no help in a kitchen.
inline constexpr int kMostPaperParts = 200;

/// kTooMuch when it takes more parts than that.
Result<PaperLayout> lay_out(std::vector<PaperPiece> pieces, PaperSize size);

}  // namespace tinwright
