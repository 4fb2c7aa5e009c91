// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See paper_layout.h.
#include "app/plan/paper_layout.h"

#include <algorithm>
#include <cmath>

#include "app/plan/paper_mask.h"

namespace tinwright {
namespace {

using glm::dvec2;

constexpr double kRound = 0.5;  // [mm] round a piece, for its line's own width
constexpr double kGap = 3.0;    // [mm] between parts

struct Shelf {
  std::size_t sheet;
  double top, height, used;  // [mm]
};

/// How many parts a length takes, and how long each is.
struct Cuts {
  int count;
  double each;
};

Cuts cuts_of(double length, double room) {
  if (length <= room) return {1, length};
  const int count = static_cast<int>(std::ceil((length - kPaperOverlap) / (room - kPaperOverlap)));
  return {count, (length + (count - 1) * kPaperOverlap) / count};
}

dvec2 room_on(PaperSize size) {
  const dvec2 sheet = sheet_size(size);
  return {sheet.x - 2.0 * kPaperMargin, sheet.y - 2.0 * kPaperMargin - kPaperFoot - kPaperHead};
}

void turn(PaperPiece& piece) {
  for (Loops* lines : {&piece.cut, &piece.folds, &piece.laps, &piece.ticks, &piece.marks}) {
    for (Loop& line : *lines) {
      for (dvec2& p : line) p = dvec2(-p.y, p.x);
    }
  }
}

PaperBox box_with_line(const PaperPiece& piece) {
  PaperBox box = box_of(piece);
  box.low -= kRound;
  box.high += kRound;
  return box;
}

int parts_of(dvec2 size, dvec2 room) {
  return cuts_of(size.x, room.x).count * cuts_of(size.y, room.y).count;
}

/// The parts of one piece, with their neighbours; parts with nothing on them are left out.
std::vector<PaperPart> parts_of(const PaperPiece& piece, std::size_t index, dvec2 room) {
  const PaperBox all = box_with_line(piece);
  const Cuts across = cuts_of(all.high.x - all.low.x, room.x), down = cuts_of(all.high.y - all.low.y, room.y);
  std::vector<PaperPart> parts;
  std::vector<int> numbers(static_cast<std::size_t>(across.count * down.count), 0);
  const auto number_at = [&](int x, int y) -> int& { return numbers[static_cast<std::size_t>(y * across.count + x)]; };
  const dvec2 each(across.each, down.each);
  for (int y = 0; y < down.count; ++y) {
    for (int x = 0; x < across.count; ++x) {
      PaperPart part;
      part.piece = index;
      part.box.low = all.low + dvec2(x, y) * (each - kPaperOverlap);
      part.box.high = part.box.low + each;
      if (!touches(piece.cut, part.box)) continue;
      parts.push_back(part);
      number_at(x, y) = static_cast<int>(parts.size());
    }
  }
  for (int y = 0; y < down.count; ++y) {
    for (int x = 0; x < across.count; ++x) {
      if (number_at(x, y) == 0) continue;
      PaperPart& part = parts[static_cast<std::size_t>(number_at(x, y) - 1)];
      part.number = number_at(x, y);
      part.of = static_cast<int>(parts.size());
      if (x > 0) part.left = number_at(x - 1, y);
      if (x + 1 < across.count) part.right = number_at(x + 1, y);
      if (y > 0) part.above = number_at(x, y - 1);
      if (y + 1 < down.count) part.below = number_at(x, y + 1);
    }
  }
  return parts;
}

/// Puts a part on the first shelf with room, a new shelf, or a new sheet.
void put(PaperPart& part, dvec2 room, std::vector<Shelf>& shelves, std::size_t& sheets) {
  const dvec2 size = part.box.high - part.box.low;
  const double full = room.y + kPaperHead;
  const auto place = [&](Shelf& shelf) {
    part.sheet = shelf.sheet;
    part.at = dvec2(kPaperMargin + shelf.used, kPaperMargin + shelf.top + kPaperHead);
    shelf.used += size.x + kGap;
  };
  for (Shelf& shelf : shelves) {
    if (shelf.used + size.x <= room.x + 1e-9 && kPaperHead + size.y <= shelf.height + 1e-9) return place(shelf);
  }
  for (std::size_t sheet = 0; sheet <= sheets; ++sheet) {
    double top = 0.0;
    for (const Shelf& shelf : shelves) {
      if (shelf.sheet == sheet) top = std::max(top, shelf.top + shelf.height + kGap);
    }
    if (sheet < sheets && top + kPaperHead + size.y > full + 1e-9) continue;
    sheets = std::max(sheets, sheet + 1);
    shelves.push_back({sheet, top, kPaperHead + size.y, 0.0});
    return place(shelves.back());
  }
}

}  // namespace

dvec2 sheet_size(PaperSize size) {
  return size == PaperSize::kA4 ? dvec2(210.0, 297.0) : dvec2(215.9, 279.4);
}

Result<PaperLayout> lay_out(std::vector<PaperPiece> pieces, PaperSize size) {
  const dvec2 room = room_on(size);
  PaperLayout layout;
  layout.pieces = std::move(pieces);
  int needed = 0;
  for (std::size_t i = 0; i < layout.pieces.size(); ++i) {
    PaperPiece& piece = layout.pieces[i];
    const PaperBox box = box_with_line(piece);
    const dvec2 extent = box.high - box.low;
    if (piece.texts.empty() && parts_of({extent.y, extent.x}, room) < parts_of(extent, room)) turn(piece);
    const PaperBox turned = box_with_line(piece);
    needed += parts_of(turned.high - turned.low, room);
    if (needed > kMostPaperParts) {
      return Problem{ProblemCode::kTooMuch,
                     "at life size that takes more than 200 sheets; choose fewer pieces, or a smaller pan", ""};
    }
    for (const PaperPart& part : parts_of(piece, i, room)) layout.parts.push_back(part);
  }
  std::vector<PaperPart*> by_height;
  for (PaperPart& part : layout.parts) by_height.push_back(&part);
  std::stable_sort(by_height.begin(), by_height.end(), [](const PaperPart* a, const PaperPart* b) {
    return a->box.high.y - a->box.low.y > b->box.high.y - b->box.low.y + 1e-6;
  });
  std::vector<Shelf> shelves;
  for (PaperPart* part : by_height) put(*part, room, shelves, layout.sheets);
  return layout;
}

}  // namespace tinwright
