// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A pan's inside unrolled into flat pieces of their true size: floors, ledges, walls as strips, bowls as gores, and the
// sheet of dough that lines it all. Walls of straight pieces unroll without stretching: the strip's edge bends as the
// outline does, times the sine of the wall's lean (its geodesic curvature), so round walls become annular sectors and
// walls with sides become chains of trapezoids.
#pragma once

#include <vector>

#include "geometry/pan.h"

namespace tinwright {

/// [m] How far a drawn edge may leave the true one: a hundredth of a millimetre, a tenth of a pencil line.
inline constexpr double kDrawingTolerance = 1e-5;

/// A stretch of a strip's lower edge.
struct StripEdge {
  Loop line;             // open, in the direction of the upper edge [m]
  bool is_foot = false;  // lies along the lower end of the wall; else a notch that closes when the strip is bent
};

/// A wall, or half of it, unrolled: x along the wall, y down the slope, its middle heading along x.
struct Strip {
  Loop upper;                    // open, from seam to seam [m]
  std::vector<StripEdge> lower;  // from end to end, each beginning where the one before ends
  Loops folds;                   // creases at corners, from the lower edge up [m]
  double end_heading = 0.0;      // [rad] of the upper edge where it ends
  double area = 0.0;             // [m²] of the wall it covers
  double upper_length = 0.0;     // [m] of the wall's upper edge
  double lower_length = 0.0;     // [m] of its feet
};

/// One straight piece of wall: `top` and `bottom` are its insets [m], `height` its rise [m] >= 0, not both 0 run and 0
/// height. One strip, or two halves when one would bend by more than half a turn and could cross itself. Area and
/// lengths are exact but where creases or mitres of freeform, oval or fluted walls have to be sampled (2e-4 relative).
std::vector<Strip> develop_wall(const Outline& outline, double top, double bottom, double height,
                                double tolerance = kDrawingTolerance);

/// The same for a ring's core, which grows from radius `top` to `bottom` [m].
std::vector<Strip> develop_core(double top, double bottom, double height, double tolerance = kDrawingTolerance);

/// What is added to a strip to hold it in the pan. [m], 0 without.
struct StripExtras {
  double tab = 0.0;        // how far tabs reach beyond the feet
  double tab_width = 0.0;  // at most, along the feet
  double lap = 0.0;        // beyond the end, for the other end to lie on
};

/// The closed line to cut a strip along.
Loop strip_outline(const Strip& strip, const StripExtras& extras);

/// A strip narrowing towards its ends, `count` of which, bent, cover a round wall of arcs. y runs down the wall.
struct Gore {
  Loop edge;           // closed [m]
  double area = 0.0;   // [m²] of one; all together are the wall's, each parallel keeps its length
  double width = 0.0;  // [m] the widest
};

/// The round wall of `profile` under a rim of radius `rim` [m], in `count` gores; a core's where `grows`. With
/// `beyond`, the wall goes on up that core's wall of the same arcs (half a torus).
Gore develop_gore(double rim, const Profile& profile, bool grows, int count, const Core* beyond = nullptr);

/// [m] From the floor's edge up the wall to `height` [m], along the slope, ledges included.
double wall_length(const Profile& profile, double height);

/// The floor, or the opening of the pan at `inset`: closed loops, holes among them. Circles within kDrawingTolerance.
Loops floor_loops(const Pan& pan);
/// A circle about the origin.
Loop circle_loop(double radius, double tolerance = kDrawingTolerance);

/// One piece of dough: floor and, all round, `reach` [m] beyond it. Not an unrolled wall but a disc that is eased up
/// it: true from the floor upwards, and all round too long by what the wall is shorter at its foot, which thickens or
/// pleats.
struct DoughSheet {
  Loop edge;          // closed; hollows of the floor are bridged [m]
  double area = 0.0;  // [m²]
};
DoughSheet dough_sheet(const Outline& outline, double floor_inset, double reach);

/// [m²] Enclosed by a closed loop, positive when counter-clockwise.
double loop_area(const Loop& loop);
/// [m] Of an open line.
double line_length(const Loop& line);

}  // namespace tinwright
