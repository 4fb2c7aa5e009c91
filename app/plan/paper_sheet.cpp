// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See paper_sheet.h. A part is an inner drawing in its piece's own coordinates, cut off at the part's box.
#include "app/plan/paper_sheet.h"

#include <glm/common.hpp>

#include "app/plan/html_text.h"
#include "app/plan/paper_label.h"
#include "app/plan/svg_pen.h"

namespace tinwright {
namespace {

using glm::dvec2;
using Anchor = SvgPen::Anchor;

// [mm]
constexpr double kCutLine = 0.35, kFoldLine = 0.25, kThinLine = 0.18, kThickLine = 0.6;
constexpr double kTitleLetters = 3.0, kFootLetters = 2.8;
constexpr double kMatch = 2.5;  // half of a matching mark
constexpr std::size_t kLongestName = 60, kLongestTitle = 44;

const char* const kFold = "class=\"fold\" stroke-dasharray=\"3 2\"";
const char* const kLapLine = "class=\"lap\" stroke-dasharray=\"0.3 1.3\"";
const char* const kJoin = "class=\"join\" stroke-dasharray=\"5 1.5 1 1.5\"";
const char* const kParchment = "Parchment: only up to the heat on its packet.";

std::string path_of(const Loops& lines, bool is_closed) {
  std::string path;
  for (const Loop& line : lines) {
    for (std::size_t i = 0; i < line.size(); ++i) {
      path += (i == 0 ? "M" : "L") + svg_number(line[i].x) + " " + svg_number(line[i].y);
    }
    if (is_closed) path += "Z";
  }
  return path;
}

void add(std::string& words, const char* before, int number) {
  if (number > 0) words += (words.empty() ? "" : ", ") + std::string(before) + " " + std::to_string(number);
}

/// "part 1 of 4: left of 2"; empty for a piece in one.
std::string part_words(const PaperPart& part) {
  if (part.of == 1) return "";
  std::string beside;
  add(beside, "left of", part.right);
  add(beside, "right of", part.left);
  add(beside, "above", part.below);
  add(beside, "below", part.above);
  return "part " + std::to_string(part.number) + " of " + std::to_string(part.of) +
         (beside.empty() ? "" : ": " + beside);
}

/// The line down the middle of an overlap, and two marks on it that come to lie on the neighbour's.
void draw_join(SvgPen& pen, dvec2 from, dvec2 to) {
  pen.line(from, to, kThinLine, kJoin);
  for (const double share : {0.25, 0.75}) {
    const dvec2 at = from + share * (to - from);
    const std::string r = svg_number(kMatch), back = svg_number(-kMatch);
    pen.path("M" + svg_number(at.x) + " " + svg_number(at.y - kMatch) + "l" + r + " " + r + "l" + back + " " + r + "l" +
                 back + " " + back + "z",
             "none", kThinLine, "class=\"match\"");
  }
}

void draw_joins(SvgPen& pen, const PaperPart& part) {
  const double half = 0.5 * kPaperOverlap;
  const auto& [low, high] = part.box;
  if (part.left > 0) draw_join(pen, {low.x + half, low.y}, {low.x + half, high.y});
  if (part.right > 0) draw_join(pen, {high.x - half, low.y}, {high.x - half, high.y});
  if (part.above > 0) draw_join(pen, {low.x, low.y + half}, {high.x, low.y + half});
  if (part.below > 0) draw_join(pen, {low.x, high.y - half}, {high.x, high.y - half});
}

std::string written(const PaperLabel& label) {
  SvgPen pen(1.0);
  double y = 1.0;
  for (std::size_t i = 0; i < label.lines.size(); ++i) {
    y += 1.25 * label.letters;
    pen.text(1.0, y - 0.25 * label.letters, label.letters, Anchor::kStart, label.lines[i], i == 0);
  }
  const std::string at = svg_number(label.at.x) + " " + svg_number(label.at.y);
  const std::string turned = label.is_upright ? "translate(" + svg_number(label.at.x + label.size.y) + " " +
                                                    svg_number(label.at.y) + ") rotate(90)"
                                              : "translate(" + at + ")";
  return "<g transform=\"" + turned + "\">" + pen.take() + "</g>";
}

/// Everything that is to be said of a piece, or as much of it as there is room for.
std::string label_of(const PaperPiece& piece, const PaperPart& part, const std::string& pan_name) {
  PaperBox room = part.box;  // without what the neighbours cover
  room.low += kPaperOverlap * dvec2(part.left > 0, part.above > 0);
  room.high -= kPaperOverlap * dvec2(part.right > 0, part.below > 0);
  if (piece.label) room = {glm::max(room.low, piece.label->low), glm::min(room.high, piece.label->high)};
  Loops lines = piece.folds;
  lines.insert(lines.end(), piece.laps.begin(), piece.laps.end());
  const PaperMask mask(piece.cut, lines, room);
  const std::string name = clipped(pan_name, kLongestName), words = part_words(part);
  std::string head = piece.name;
  if (piece.copies > 1) head += ", cut " + std::to_string(piece.copies);
  std::vector<std::string> brief{name};
  if (!words.empty()) brief.push_back("P" + words.substr(1) + ".");
  std::vector<std::string> full = brief;
  full.insert(full.end(), piece.says.begin(), piece.says.end());
  if (piece.kind != PieceKind::kStick && piece.kind != PieceKind::kDough) full.push_back(kParchment);
  for (const auto& sentences : {full, brief, std::vector<std::string>{}}) {
    if (const auto label = place_label(mask, head, sentences)) return written(*label);
  }
  return "";
}

std::string draw_part(const PaperPiece& piece, const PaperPart& part, const std::string& pan_name) {
  SvgPen pen(1.0);
  pen.path(path_of(piece.cut, true), "none", kCutLine, "class=\"cut\" stroke-linejoin=\"round\"");
  if (!piece.folds.empty()) pen.path(path_of(piece.folds, false), "none", kFoldLine, kFold);
  if (!piece.laps.empty()) pen.path(path_of(piece.laps, false), "none", kFoldLine, kLapLine);
  if (!piece.ticks.empty()) pen.path(path_of(piece.ticks, false), "none", kThinLine, "class=\"ticks\"");
  if (!piece.marks.empty()) pen.path(path_of(piece.marks, false), "none", kThickLine, "class=\"marks\"");
  for (const PaperText& text : piece.texts) {
    pen.text(text.at.x, text.at.y, text.letters, text.is_right ? Anchor::kEnd : Anchor::kStart, text.words);
  }
  draw_joins(pen, part);
  const dvec2 size = part.box.high - part.box.low;
  const std::string box = svg_number(part.box.low.x) + " " + svg_number(part.box.low.y) + " " + svg_number(size.x) +
                          " " + svg_number(size.y);
  const std::string words = part_words(part);
  SvgPen title(1.0);
  title.text(part.at.x, part.at.y - 1.0, kTitleLetters, Anchor::kStart,
             piece.name + (piece.copies > 1 ? ", cut " + std::to_string(piece.copies) : "") +
                 (words.empty() ? "" : ", " + words));
  return title.take() + "<svg x=\"" + svg_number(part.at.x) + "\" y=\"" + svg_number(part.at.y) + "\" width=\"" +
         svg_number(size.x) + "\" height=\"" + svg_number(size.y) + "\" viewBox=\"" + box + "\">" + pen.take() +
         label_of(piece, part, pan_name) + "</svg>";
}

/// The check bar with its centimetres, what the lines mean, and which sheet it is.
std::string draw_foot(dvec2 sheet, const std::string& title, const std::string& pan_name,
                      const std::vector<std::string>& left_out) {
  SvgPen pen(1.0);
  const double left = kPaperMargin, right = sheet.x - kPaperMargin, y = sheet.y - kPaperMargin - 10.6;
  pen.line({left, y}, {left + kCheckBar, y}, 0.5, "class=\"check-bar\"");
  for (int cm = 0; cm <= 10; ++cm) {
    const double x = left + 0.1 * kCheckBar * cm;
    pen.line({x, y - (cm % 5 == 0 ? 2.5 : 1.5)}, {x, y}, 0.25);
  }
  pen.text(left, y - 3.6, kFootLetters, Anchor::kStart,
           "This bar is 10 cm long. Measure it: print at 100 %, not fitted to the page.");
  pen.text(
      left, y + 3.4, kFootLetters, Anchor::kStart,
      "Solid line: cut. Dashed: fold. Dotted: the other end lies up to here. Dots and dashes: join of two sheets.");
  pen.text(left, y + 7.0, kFootLetters, Anchor::kStart, kParchment);
  std::string said;
  for (const std::string& sentence : left_out) said += (said.empty() ? "" : " ") + sentence;
  if (!said.empty()) pen.text(left, y + 10.6, kFootLetters, Anchor::kStart, said);
  pen.text(right, y - 3.6, kFootLetters, Anchor::kEnd, title, true);
  pen.text(right, y, kFootLetters, Anchor::kEnd, clipped(pan_name, kLongestTitle));
  return pen.take();
}

}  // namespace

PaperSheet draw_sheet(const PaperLayout& layout, std::size_t number, PaperSize size, const std::string& pan_name,
                      const std::vector<std::string>& left_out) {
  const dvec2 sheet = sheet_size(size);
  const std::string title = "Sheet " + std::to_string(number + 1) + " of " + std::to_string(layout.sheets);
  const std::string wide = svg_number(sheet.x), high = svg_number(sheet.y);
  std::string svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-label=\"" +
                    html_text(title + ", " + pan_name) + "\" width=\"" + wide + "mm\" height=\"" + high +
                    "mm\" viewBox=\"0 0 " + wide + " " + high +
                    "\" font-family=\"Liberation Sans, Arial, Helvetica, sans-serif\">";
  for (const PaperPart& part : layout.parts) {
    if (part.sheet == number) svg += draw_part(layout.pieces[part.piece], part, pan_name);
  }
  return {svg + draw_foot(sheet, title, pan_name, left_out) + "</svg>\n", title};
}

}  // namespace tinwright
