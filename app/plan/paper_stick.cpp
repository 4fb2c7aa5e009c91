// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See paper_stick.h. All in mm; y runs down, so that the stick stands on its lower end.
#include "app/plan/paper_stick.h"

#include <algorithm>
#include <cmath>

#include "app/quantity/print.h"

namespace tinwright {
namespace {

constexpr double kWidth = 56.0, kGrip = 46.0;
constexpr double kEighth = 25.4 / 8.0;  // [mm] exact: NIST SP 811
constexpr double kTicksWide = 11.0;     // of either scale, with its figures
constexpr double kLetters = 2.6, kApart = 6.4;
constexpr double kMark = 5.0, kLeader = 3.0;  // of what is written at a mark

struct Mark {
  double height;  // [mm]
  std::string what, detail;
};

std::vector<Mark> marks_of(const PaperOrder& order) {
  std::vector<Mark> marks{{1e3 * depth(order.pan), "Rim of the pan", "bare floor"}};
  if (order.lining && order.lining->wall > 0.0) {
    marks.push_back({1e3 * order.lining->height, "Dough up to here", "bare floor"});
  }
  if (order.pour_height) {
    marks.push_back({1e3 * *order.pour_height, "Pour up to here", order.lining ? "on the crust" : "bare floor"});
  }
  std::sort(marks.begin(), marks.end(), [](const Mark& a, const Mark& b) { return a.height < b.height; });
  return marks;
}

void add_scales(PaperPiece& piece, double length, double up_to) {
  for (int mm = 1; mm <= up_to; ++mm) {
    const double y = length - mm;
    piece.ticks.push_back({{0.0, y}, {mm % 10 == 0 ? 7.0 : mm % 5 == 0 ? 5.0 : 3.0, y}});
    if (mm % 10 == 0) piece.texts.push_back({{7.4, y + 0.9}, 2.5, std::to_string(mm / 10)});
  }
  for (int eighths = 1; eighths * kEighth <= up_to; ++eighths) {
    const double y = length - eighths * kEighth;
    const double long_as = eighths % 8 == 0 ? 7.0 : eighths % 4 == 0 ? 5.0 : 3.0;
    piece.ticks.push_back({{kWidth - long_as, y}, {kWidth, y}});
    if (eighths % 8 == 0) piece.texts.push_back({{kWidth - 7.4, y + 0.9}, 2.5, std::to_string(eighths / 8), true});
  }
}

}  // namespace

PaperPiece depth_stick(const PaperOrder& order) {
  const auto marks = marks_of(order);
  const double up_to = marks.back().height + kApart * static_cast<double>(marks.size());
  const double length = up_to + kGrip;
  PaperPiece piece;
  piece.kind = PieceKind::kStick;
  piece.name = "Depth stick";
  piece.says = {"Glue it on card and stand it straight in the pan; left centimetres, right inches.",
                "Take it out before baking."};
  piece.area = 1e-6 * kWidth * length;
  piece.cut = {{{0.0, 0.0}, {kWidth, 0.0}, {kWidth, length}, {0.0, length}}};
  piece.label = PaperBox{{0.0, 0.0}, {kWidth, kGrip - 2.0}};
  add_scales(piece, length, std::floor(marks.back().height + kApart));
  double free_from = 0.0;  // what is written never overlaps: it moves up, with a line to its mark
  for (const Mark& mark : marks) {
    const double at = std::max(mark.height, free_from), y = length - mark.height, words_y = length - at;
    piece.marks.push_back({{kTicksWide, y}, {kTicksWide + kMark, y}});
    piece.ticks.push_back({{kTicksWide + kMark, y}, {kTicksWide + kMark + kLeader, words_y}});
    const double x = kTicksWide + kMark + kLeader + 1.0;
    piece.texts.push_back({{x, words_y - 0.2}, kLetters, mark.what});
    piece.texts.push_back(
        {{x, words_y + 2.4}, 2.2, format_length(1e-3 * mark.height, order.units) + ", " + mark.detail});
    free_from = at + kApart;
  }
  return piece;
}

}  // namespace tinwright
