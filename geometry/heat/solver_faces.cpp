// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What a step sets at its start, see solver.h: the faces as the stages go through them, what each conducts, what each
// surface takes up, and how long a step that allows.
#include <algorithm>
#include <cmath>

#include "geometry/heat/drying_surface.h"
#include "geometry/heat/solver.h"

namespace tinwright {
namespace {

/// [K] A cell this near boiling may run dry within a step, and then holds as little heat as dry food.
constexpr double kNearBoiling = 15.0;
/// [-] One as dry as this is taken to do so; should a wetter one, the step is done again.
constexpr double kNearlyDry = 0.8;
/// [-] Lines steeper by less are steep from rounding.
constexpr double kSteeper = 1e-9;
/// [-] of a cell's water that may dry off in one step, besides what flows in.
constexpr double kMostDried = 0.5;
/// [K] Closer together, one conductivity serves two places.
constexpr double kSameTemperature = 1e-3;

}  // namespace

void HeatStepper::make_links() {
  const HeatGrid& grid = problem_.grid;
  const std::size_t blocks = (grid.cells.size() + kBlock - 1) / kBlock;
  // Whole blocks; what is beyond the last cell stays 0 and so does nothing.
  for (auto* values : {&outer_conductance_, &outer_heat_, &per_volume_, &work_[0], &work_[1], &work_[2], &work_[3]}) {
    values->resize(blocks * kBlock);
  }
  std::vector<std::vector<std::ptrdiff_t>> of_block(blocks);  // how far its links go
  std::ptrdiff_t furthest = 0;
  const auto note = [&](int from, int to) {
    std::vector<std::ptrdiff_t>& links = of_block[index(from) / kBlock];
    const std::ptrdiff_t apart = to - from;
    furthest = std::max(furthest, std::abs(apart));
    if (std::find(links.begin(), links.end(), apart) == links.end()) links.push_back(apart);
  };
  for (const HeatGrid::Face& face : grid.faces) {
    note(face.a, face.b);
    note(face.b, face.a);
  }
  first_link_.assign(1, 0);
  for (const auto& links : of_block) {
    for (const std::ptrdiff_t apart : links) links_.push_back({apart});
    first_link_.push_back(links_.size());
  }
  conductance_.resize(links_.size() * kBlock);
  const auto place = [&](int from, int to) {
    const std::size_t block = index(from) / kBlock;
    const auto& links = of_block[block];
    const auto found = static_cast<std::size_t>(std::find(links.begin(), links.end(), to - from) - links.begin());
    return static_cast<std::uint32_t>((first_link_[block] + found) * kBlock + index(from) % kBlock);
  };
  for (std::size_t f = 0; f < grid.faces.size(); ++f) {
    const HeatGrid::Face& face = grid.faces[f];
    const auto a = static_cast<std::uint32_t>(face.a);
    const auto b = static_cast<std::uint32_t>(face.b);
    const Places places{place(face.a, face.b), place(face.b, face.a)};
    const bool is_within = part_[a] == part_[b];
    const double across = face.area / (face.half_a + face.half_b);
    if (face.partner != 0) {
      const HeatGrid::Face& other = grid.faces[f + static_cast<std::size_t>(face.partner)];
      corners_.push_back(
          {{a, b, static_cast<std::uint32_t>(other.a), static_cast<std::uint32_t>(other.b)}, places, face.area});
    } else {
      joints_.push_back({a, b, places, face.half_a / face.area, face.half_b / face.area, across, is_within});
    }
    if (is_within && across > 0.0 && substance_of(a).can_dry()) pores_.push_back({face.a, face.b, across, 0.0});
  }
  margin_ = static_cast<std::size_t>(furthest);
  staged_.assign(2 * margin_ + blocks * kBlock, 0.0);
}

/// [W/(m K)] over the way from where the cell will be to a surface of `temperature` [K].
double HeatStepper::conductivity_to(double temperature, std::size_t cell, double dryness) const {
  const double apart = temperature - ahead_[cell];
  if (is_constant_ || std::abs(apart) < kSameTemperature) return conductivity_[cell];
  return (substance_of(cell).conductivity_integral(temperature, dryness) - integral_[cell]) / apart;
}

/// A link across a corner takes the least conductivity of the four cells there, so that a negative one never outweighs
/// the ways round it (see bounded_corner), however dry or frozen some of them are.
void HeatStepper::set_inner(const std::vector<double>& dryness) {
  if (has_inner_ && is_constant_) return;
  for (std::size_t i = 0; i < conductivity_.size(); ++i) {
    const Substance::Conduction there = substance_of(i).conduction(ahead_[i], dryness[i]);
    conductivity_[i] = there.conductivity;
    integral_[i] = there.integral;
  }
  std::fill(conductance_.begin(), conductance_.end(), 0.0);
  std::fill(backward_.begin(), backward_.end(), 0.0);
  for (const Joint& joint : joints_) {
    const double conductivity_a = conductivity_[joint.a];
    const double conductivity_b = conductivity_[joint.b];
    const double apart = ahead_[joint.b] - ahead_[joint.a];
    const bool is_mean = joint.is_within && dryness[joint.a] == dryness[joint.b] && std::abs(apart) > kSameTemperature;
    const double conductance =
        is_mean ? joint.across * (integral_[joint.b] - integral_[joint.a]) / apart
                : conductivity_a * conductivity_b / (joint.half_a * conductivity_b + joint.half_b * conductivity_a);
    for (const std::uint32_t place : joint.places) conductance_[place] += conductance;
  }
  for (const Corner& corner : corners_) {
    const auto& [a, b, c, d] = corner.cells;
    const double least = std::min({conductivity_[a], conductivity_[b], conductivity_[c], conductivity_[d]});
    const double conductance = corner.area * least;
    for (const std::uint32_t place : corner.places) conductance_[place] += conductance;
    backward_[a] += std::min(conductance, 0.0);
    backward_[b] += std::min(conductance, 0.0);
  }
  has_inner_ = true;
}

void HeatStepper::set_outer(const HeatState& state, const Surroundings& around, double air, double dt) {
  for (const int cell : outer_cells_) outer_conductance_[index(cell)] = outer_heat_[index(cell)] = 0.0;
  const HeatGrid& grid = problem_.grid;
  for (std::size_t f = 0; f < grid.outer.size(); ++f) {
    const HeatGrid::OuterFace& face = grid.outer[f];
    const auto i = index(face.cell);
    const Surface& side = around.at(face.side);
    const Substance& substance = substance_of(i);
    // The surface was found at the middle of the last step; since then it moved about as its cell did.
    const double moved = ahead_[i] - 0.5 * (before_[i] + temperature_[i]);
    const double guess = last_step_ > 0.0 ? surface_[f] + moved : temperature_[i];
    SurfaceCell cell{
        .temperature = ahead_[i], .inner = conductivity_to(guess, i, state.dryness[i]) / face.half, .guess = guess};
    SurfaceFlow flow;
    if (side.drying > 0.0 && substance.can_dry()) {
      cell.takes_dew = state.dryness[i] <= 0.0;
      const double left = (1.0 - state.dryness[i]) * substance.water() * grid.cells[i].volume;
      cell.most_drying = (kMostDried * left / dt + std::max(0.0, inflow_[i])) / face.area;
      flow = drying_surface_flow(side, air, around.humidity, cell, {substance, state.dryness[i], face.half},
                                 surface_share_[f]);
    } else {
      flow = surface_flow(side, air, around.humidity, cell);
    }
    outer_conductance_[i] += face.area * flow.conductance;
    outer_heat_[i] += face.area * flow.conductance * flow.towards;
    surface_[f] = flow.surface;
    drying_[f] = face.area * flow.drying;
  }
}

/// [s] The longest stable explicit step, by Gershgorin's circles. Links across corners may be negative. Holds for as
/// long as no cell's line is steeper than steepest_, which it sets: at its dryness, or dry, for cells near boiling
/// where `all_may_dry` and else for those that are nearly so.
double HeatStepper::explicit_limit(const std::vector<double>& dryness, bool all_may_dry) {
  struct Least {
    double wet = 0.0, more = 0.0;  // [J/(m³ K)]
    double dries_above;            // [K]
  };
  std::array<Least, 2> least;
  const double coolest = coolest_ - kSameTemperature;  // so that rounding puts no cell below it
  for (std::size_t part = 0; part < least.size(); ++part) {
    const Substance& substance = problem_.substances[part];
    const double wet = substance.least_capacity(coolest, 0.0);
    least[part] = {wet, substance.least_capacity(coolest, 1.0) - wet, substance.boiling_point(0.0) - kNearBoiling};
  }
  const std::size_t cells = dryness.size();
  double fastest = 0.0;  // [1/s]
  const double* conductance = conductance_.data();
  for (std::size_t block = 0; block + 1 < first_link_.size(); ++block) {
    std::array<double, kBlock> linked{};  // [W/K]
    for (std::size_t l = first_link_[block]; l < first_link_[block + 1]; ++l, conductance += kBlock) {
      for (std::size_t k = 0; k < kBlock; ++k) linked[k] += conductance[k];
    }
    for (std::size_t i = block * kBlock; i < std::min((block + 1) * kBlock, cells); ++i) {
      const double row = linked[i % kBlock];
      const double sum = row - 2.0 * backward_[i] + std::abs(row + outer_conductance_[i]);
      const Least& of = least[part_[i]];
      const bool may_dry =
          (all_may_dry || dryness[i] > kNearlyDry) && std::max(temperature_[i], ahead_[i]) > of.dries_above;
      const double capacity = of.wet + of.more * (may_dry ? 1.0 : std::clamp(dryness[i], 0.0, 1.0));
      const double slope = 1.0 / capacity;
      steepest_[i] = (1.0 + kSteeper) * slope;
      fastest = std::max(fastest, sum * per_volume_[i] * slope);
    }
  }
  return 2.0 / fastest;
}

}  // namespace tinwright
