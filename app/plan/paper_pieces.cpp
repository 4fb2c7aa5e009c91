// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See paper_pieces.h. Sizes of tabs and overlaps are common practice, no source.
#include "app/plan/paper_pieces.h"

#include <algorithm>
#include <cmath>

#include <glm/common.hpp>

#include "app/plan/paper_stick.h"
#include "geometry/sweep.h"

namespace tinwright {
namespace {

using glm::dvec2;

constexpr double kTab = 0.012;        // [m] folded in under the floor piece
constexpr double kTabWidth = 0.015;   // [m]
constexpr double kLap = 0.015;        // [m] of a strip's ends over each other
constexpr double kOverhang = 0.015;   // [m] of dough beyond the wall's top, to trim
constexpr double kWidestGore = 0.06;  // [m] a wider one does not lie down in a bowl
constexpr int kFewestGores = 6;

Loop in_mm(const Loop& line) {
  Loop scaled;
  for (const dvec2 p : line) scaled.push_back(1e3 * p);
  return scaled;
}

Loops in_mm(const Loops& lines) {
  Loops scaled;
  for (const Loop& line : lines) scaled.push_back(in_mm(line));
  return scaled;
}

/// Puts the liners and the dough of one order together.
class Cutter {
 public:
  explicit Cutter(const PaperOrder& order) : order_(order), pan_(order.pan) {}

  PaperSet take() { return std::move(set_); }

  void add_liner() {
    add_floor();
    const auto& pieces = pan_.wall.pieces();
    if (pieces.size() == 1 && pieces.front().is_arc()) {
      add_gores();
      return;
    }
    add_walls();
    if (pan_.core) add_core();
  }

  void add_dough() {
    if (pan_.core && is_closed_at(pan_, 0.0)) {
      set_.left_out.push_back("A ring without a flat floor cannot be lined with dough in one piece.");
      return;
    }
    const double top = order_.lining ? std::min(order_.lining->height, depth(pan_)) : depth(pan_);
    const bool is_base = order_.lining && order_.lining->wall <= 0.0;
    const double up = is_base ? 0.0 : wall_length(pan_.wall, top);
    set_.dough_reach = is_base ? 0.0 : up + kOverhang;
    const DoughSheet sheet = dough_sheet(pan_.outline, pan_.wall.floor_inset(), set_.dough_reach);
    if (sheet.edge.empty()) return;
    PaperPiece piece;
    piece.kind = PieceKind::kDough;
    piece.name = "Dough";
    piece.copies = cavities();
    piece.area = sheet.area;
    piece.cut = {in_mm(sheet.edge)};
    piece.folds = in_mm(floor_loops(pan_));
    for (Loop& line : piece.folds) line.push_back(line.front());
    const std::string beyond = format_both_lengths(up, order_.units) + " up the wall and " +
                               format_both_lengths(kOverhang, order_.units) + " to trim.";
    if (is_base) {
      piece.folds.clear();
      piece.says = {"Roll the dough out to this shape: it covers the floor."};
    } else if (piece.folds.empty()) {
      piece.says = {"Roll the dough out to this shape, in one piece.", "From its middle it is " + beyond};
    } else {
      piece.says = {"Roll the dough out to this shape, in one piece.",
                    "The dashed line is the floor; beyond it lie " + beyond};
    }
    if (pan_.core) {
      const double foot = 0.5 * pan_.core->outline.length + pan_.core->wall.floor_inset();
      piece.cut.push_back(in_mm(circle_loop(foot)));
      if (!piece.folds.empty()) piece.folds.pop_back();
      piece.area -= loop_area(circle_loop(foot));
      piece.says.push_back("The core goes through the hole; line it with a strip cut like its paper.");
    }
    set_.pieces.push_back(piece);
  }

 private:
  int cavities() const { return order_.pans * pan_.count; }

  PaperPiece liner(PieceKind kind, const std::string& name) const {
    PaperPiece piece;
    piece.kind = kind;
    piece.name = name;
    piece.copies = cavities();
    return piece;
  }

  void add_floor() {
    const Loops loops = floor_loops(pan_);
    if (loops.empty()) return;
    PaperPiece piece = liner(PieceKind::kFloor, "Floor");
    piece.area = floor_area(pan_);
    piece.cut = in_mm(loops);
    piece.says = {pan_.bottomless ? "Lay it on the tray, inside the ring."
                                  : "Lay it on the floor of the pan, on top of the wall's folded tabs."};
    set_.pieces.push_back(piece);
  }

  /// Feet of a wall that ends on a floor are folded under its paper; a rounded corner is covered by longer tabs.
  double tab_length(const Profile& wall) const {
    if (pan_.bottomless || is_closed_at(pan_, 0.0)) return 0.0;
    return kTab + (wall.pieces().front().is_arc() ? wall_length(wall, wall.pieces().front().z1) : 0.0);
  }

  void add_strips(const std::vector<Strip>& strips, PieceKind kind, const std::string& name, double tab) {
    const bool is_round = std::holds_alternative<Round>(pan_.outline.shape);
    for (std::size_t i = 0; i < strips.size(); ++i) {
      const Strip& strip = strips[i];
      const bool is_half = strips.size() > 1;
      PaperPiece piece = liner(kind, name);
      if (is_half && is_round) {
        piece.copies *= static_cast<int>(strips.size());
      } else if (is_half) {
        piece.name += i == 0 ? ", first half" : ", second half";
      }
      piece.area = strip.area;
      piece.cut = {in_mm(strip_outline(strip, {tab, kTabWidth, kLap}))};
      piece.folds = in_mm(strip.folds);
      piece.laps = {in_mm(Loop{strip.upper.back(), strip.lower.back().line.back()})};
      for (const StripEdge& edge : strip.lower) {
        if (edge.is_foot && tab > 0.0) piece.folds.push_back(in_mm(edge.line));
      }
      piece.says = {"Stand it against the " + std::string(kind == PieceKind::kCore ? "core" : "wall") +
                    (is_half ? ", two halves end to end." : ".") + " Ends lie over each other up to the dotted line."};
      if (tab > 0.0) piece.says.push_back("Snip between the tabs and fold them in under the floor's paper.");
      set_.pieces.push_back(piece);
      if (is_half && is_round) break;
    }
  }

  void add_walls() {
    const auto& pieces = pan_.wall.pieces();
    const std::size_t lowest = pieces.front().is_arc() ? 1 : 0, count = pieces.size() - lowest;
    if (lowest == 1) leave_out_corner(pan_.outline.curve, pan_.wall, Lean::kInwards);
    for (std::size_t i = pieces.size(); i-- > lowest;) {
      const WallPiece& wall = pieces[i];
      std::string name = "Wall";
      if (count > 1) {
        name += " " + std::to_string(i - lowest + 1) + " of " + std::to_string(count) + " from below";
      }
      add_strips(develop_wall(pan_.outline, wall.d1, wall.d0, wall.height()), PieceKind::kWall, name,
                 i == lowest ? tab_length(pan_.wall) : 0.0);
      if (i > lowest && pieces[i - 1].d1 > wall.d0) add_ledge(wall.d0, pieces[i - 1].d1);
    }
  }

  /// The flat step between two pieces of wall.
  void add_ledge(double outer, double inner) {
    PaperPiece piece = liner(PieceKind::kWall, "Ledge");
    piece.area = pan_.outline.curve.area(outer) - pan_.outline.curve.area(inner);
    piece.cut = in_mm(outline_loops(pan_.outline, outer));
    for (const Loop& hole : in_mm(outline_loops(pan_.outline, inner))) piece.cut.push_back(hole);
    piece.says = {"Lay it on the step in the wall."};
    set_.pieces.push_back(piece);
  }

  void add_core() {
    const Profile& wall = pan_.core->wall;
    const WallPiece& piece = wall.pieces().back();
    if (piece.is_arc()) return;
    if (wall.pieces().size() > 1) leave_out_corner(pan_.core->outline.curve, wall, Lean::kOutwards);
    const double rim = 0.5 * pan_.core->outline.length;
    add_strips(develop_core(rim + piece.d1, rim + piece.d0, piece.height()), PieceKind::kCore, "Core",
               tab_length(wall));
  }

  void leave_out_corner(const AreaCurve& curve, const Profile& wall, Lean lean) {
    set_.left_out_area += swept_surface(curve, wall, lean, wall.pieces().front().z1);
    const std::string said = "The rounded corner above the floor has no piece of its own: the tabs lie over it.";
    if (std::find(set_.left_out.begin(), set_.left_out.end(), said) == set_.left_out.end()) {
      set_.left_out.push_back(said);
    }
  }

  /// A wall that is one arc cannot be unrolled: a round one is covered in gores.
  void add_gores() {
    if (!std::holds_alternative<Round>(pan_.outline.shape)) {
      set_.left_out_area += wall_area(pan_, depth(pan_));
      set_.left_out.push_back(
          "This wall is curved both ways and not round: no flat piece fits it. Press crumpled parchment into "
          "it.");
      return;
    }
    const double rim = 0.5 * pan_.outline.length;
    const double around = 2.0 * std::acos(-1.0) * rim;
    const int count = std::max(kFewestGores, static_cast<int>(std::ceil(around / kWidestGore)));
    const bool goes_on = pan_.core && is_closed_at(pan_, 0.0);
    add_gore(develop_gore(rim, pan_.wall, false, count, goes_on ? &*pan_.core : nullptr), PieceKind::kWall, "Wall gore",
             count);
    if (!pan_.core || goes_on) return;
    add_gore(develop_gore(0.5 * pan_.core->outline.length, pan_.core->wall, true, count), PieceKind::kCore, "Core gore",
             count);
  }

  void add_gore(const Gore& gore, PieceKind kind, const std::string& name, int count) {
    PaperPiece piece = liner(kind, name);
    piece.copies *= count;
    piece.area = gore.area;
    piece.cut = {in_mm(gore.edge)};
    piece.says = {"Lay " + std::to_string(count) + " of these side by side into each pan, wide end at the rim."};
    set_.pieces.push_back(piece);
  }

  const PaperOrder& order_;
  const Pan& pan_;
  PaperSet set_;
};

}  // namespace

PaperSet paper_set(const PaperOrder& order) {
  Cutter cutter(order);
  if (order.wish == PaperWish::kAll || order.wish == PaperWish::kLiner) cutter.add_liner();
  if (order.wish == PaperWish::kAll || order.wish == PaperWish::kDough) cutter.add_dough();
  PaperSet set = cutter.take();
  if (order.wish == PaperWish::kAll || order.wish == PaperWish::kStick) set.pieces.push_back(depth_stick(order));
  return set;
}

double covered_area(const PaperSet& set, PieceKind kind, const PaperOrder& order) {
  double area = 0.0;
  for (const PaperPiece& piece : set.pieces) {
    if (piece.kind == kind) area += piece.area * piece.copies;
  }
  return area / (order.pans * order.pan.count);
}

PaperBox box_of(const PaperPiece& piece) {
  PaperBox box{piece.cut.front().front(), piece.cut.front().front()};
  for (const Loop& loop : piece.cut) {
    for (const dvec2 p : loop) {
      box.low = glm::min(box.low, p);
      box.high = glm::max(box.high, p);
    }
  }
  return box;
}

}  // namespace tinwright
