// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See solver.h.
#include "geometry/heat/solver.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "geometry/checks.h"

namespace tinwright {
namespace {

/// [-] The first step after a jump, as a share of the explicit limit.
constexpr double kFirstStep = 0.5;
constexpr int kFewestStages = 3;
constexpr int kMostStages = 200;
/// [K] A cell this near boiling may run dry within a step, and then holds as little heat as dry food.
constexpr double kNearBoiling = 15.0;
/// [-] How near a surface's dryness is found, or how near what comes to it is to what leaves; in so many tries at most.
constexpr double kSameDryness = 1e-3;
constexpr double kSameFlow = 5e-3;
constexpr int kDrynessTries = 12;
/// [-] of the last step: a step so short is no lever to look ahead by; and how far ahead at most, in last steps.
constexpr double kShortStep = 0.5;
constexpr double kFurthestAhead = 1.0;
/// [-] of a cell's water that may dry off in one step, besides what flows in.
constexpr double kMostDried = 0.5;
/// [K] Closer together, one conductivity serves two places.
constexpr double kSameTemperature = 1e-3;

/// The recurrence of one stage, in place: next = mu now + nu previous + rest start + mu_dt rate + gamma_dt start_rate.
struct Recurrence {
  double mu, nu, rest, mu_dt, gamma_dt;
};
void combine(std::vector<double>& previous, const Recurrence& by, const std::vector<double>& now,
             const std::vector<double>& start, const std::vector<double>& rate, const std::vector<double>& start_rate) {
  const std::size_t cells = previous.size();
  double* const p = previous.data();
  const double* const n = now.data();
  const double* const s = start.data();
  const double* const r = rate.data();
  const double* const sr = start_rate.data();
  for (std::size_t i = 0; i < cells; ++i) {
    p[i] = by.mu * n[i] + by.nu * p[i] + by.rest * s[i] + by.mu_dt * r[i] + by.gamma_dt * sr[i];
  }
}

}  // namespace

HeatState start_at(const HeatProblem& problem, double temperature) {
  HeatState state;
  for (std::size_t i = 0; i < problem.grid.cells.size(); ++i) {
    state.enthalpy.push_back(problem.substance_of(i).enthalpy(temperature, 0.0));
  }
  state.dryness.assign(state.enthalpy.size(), 0.0);
  return state;
}

double stored_heat(const HeatProblem& problem, const HeatState& state) {
  double heat = 0.0;
  for (std::size_t i = 0; i < state.enthalpy.size(); ++i) heat += state.enthalpy[i] * problem.grid.cells[i].volume;
  return heat;
}

std::vector<double> temperature_field(const HeatProblem& problem, const HeatState& state) {
  std::vector<double> field;
  for (std::size_t i = 0; i < state.enthalpy.size(); ++i) {
    field.push_back(problem.substance_of(i).temperature(state.enthalpy[i], state.dryness[i]));
  }
  return field;
}

HeatStepper::HeatStepper(const HeatProblem& problem) : problem_(problem) {
  const HeatGrid& grid = problem.grid;
  const std::size_t cells = grid.cells.size();
  lines_.resize(cells);
  edges_.resize(cells);
  for (auto* values :
       {&temperature_, &before_, &ahead_, &conductivity_, &integral_, &outer_conductance_, &outer_heat_, &moved_,
        &fluidity_, &carried_, &water_heat_, &inflow_, &work_[0], &work_[1], &work_[2], &work_[3]}) {
    values->resize(cells);
  }
  surface_.resize(grid.outer.size());
  drying_.resize(grid.outer.size());
  for (const HeatGrid::Cell& cell : grid.cells) per_volume_.push_back(1.0 / cell.volume);
  is_moving_.assign(cells, 0);
  std::vector<char> is_outer(cells, 0);
  for (const HeatGrid::OuterFace& face : grid.outer) is_outer[index(face.cell)] = 1;
  for (std::size_t i = 0; i < cells; ++i) {
    if (is_outer[i]) outer_cells_.push_back(static_cast<int>(i));
  }
  is_constant_ = problem.substances[0].conducts_evenly() && problem.substances[1].conducts_evenly();
  can_dry_ = problem.substances[0].can_dry() || problem.substances[1].can_dry();
  make_links();
}

void HeatStepper::make_links() {
  const HeatGrid& grid = problem_.grid;
  std::vector<int> count(grid.cells.size() + 1, 0);
  for (const HeatGrid::Face& face : grid.faces) {
    ++count[index(face.a)];
    ++count[index(face.b)];
  }
  first_link_.assign(grid.cells.size() + 1, 0);
  for (std::size_t i = 0; i < grid.cells.size(); ++i) first_link_[i + 1] = first_link_[i] + count[i];
  std::vector<int> next = first_link_;
  links_.resize(2 * grid.faces.size());
  for (const HeatGrid::Face& face : grid.faces) {
    const int at_a = next[index(face.a)]++;
    const int at_b = next[index(face.b)]++;
    links_[index(at_a)].other = face.b;
    links_[index(at_b)].other = face.a;
    of_face_.push_back({at_a, at_b});
  }
}

void HeatStepper::restart() {
  next_step_ = 0.0;
  last_step_ = 0.0;
}

void HeatStepper::mark(Mark& mark) const {
  mark.before = before_;
  mark.surface = surface_;
  mark.inflow = inflow_;
  mark.next_step = next_step_;
  mark.last_step = last_step_;
}

void HeatStepper::go_back(const Mark& mark) {
  before_ = mark.before;
  surface_ = mark.surface;
  inflow_ = mark.inflow;
  next_step_ = mark.next_step;
  last_step_ = mark.last_step;
  std::fill(lines_.begin(), lines_.end(), Substance::Line{});
}

Substance::Line HeatStepper::line_of(std::size_t cell, double enthalpy, double dryness) {
  const Substance& substance = problem_.substance_of(cell);
  if (!substance.can_dry()) return substance.line(enthalpy, dryness);
  Substance::Edge& edge = edges_[cell];
  if (edge.dryness != dryness) edge = substance.edge(dryness);
  return substance.line(enthalpy, edge);
}

void HeatStepper::find_temperatures(const std::vector<double>& enthalpies, const std::vector<double>& dryness) {
  const std::size_t cells = enthalpies.size();
  const double* const enthalpy = enthalpies.data();
  double* const temperature = temperature_.data();
  Substance::Line* const line = lines_.data();
  for (std::size_t i = 0; i < cells; ++i) {
    if (!(enthalpy[i] >= line[i].low && enthalpy[i] < line[i].high)) {
      line[i] = line_of(i, enthalpy[i], dryness[i]);
    }
    temperature[i] = line[i].temperature_at(enthalpy[i]);
  }
}

const std::vector<double>& HeatStepper::temperatures(const HeatState& state) {
  find_temperatures(state.enthalpy, state.dryness);
  return temperature_;
}

/// Keeps the present for the next look ahead. A short step, cut off by a row of history or a stage's end, would make a
/// poor lever for a long one after it: then the older past stays, so much further back.
void HeatStepper::remember(double dt) {
  if (dt < kShortStep * last_step_) {
    last_step_ += dt;
    return;
  }
  before_ = temperature_;
  last_step_ = dt;
}

/// Temperatures half a step on, along the line through now and a step ago.
void HeatStepper::look_ahead(double dt) {
  const double share = last_step_ > 0.0 ? std::min(0.5 * dt / last_step_, kFurthestAhead) : 0.0;
  for (std::size_t i = 0; i < ahead_.size(); ++i) {
    ahead_[i] = temperature_[i] + share * (temperature_[i] - before_[i]);
  }
}

/// [W/(m K)] over the way between two temperatures of one cell's substance.
double HeatStepper::conductivity_between(std::size_t cell, double dryness, double a, double b) const {
  const Substance& substance = problem_.substance_of(cell);
  if (std::abs(b - a) < kSameTemperature) return substance.conductivity(0.5 * (a + b), dryness);
  return (substance.conductivity_integral(b, dryness) - substance.conductivity_integral(a, dryness)) / (b - a);
}

/// A link across a corner takes the least conductivity of the four cells there, so that a negative one never outweighs
/// the ways round it (see bounded_corner), however dry or frozen some of them are.
void HeatStepper::set_inner(const std::vector<double>& dryness) {
  if (has_inner_ && is_constant_) return;
  const HeatGrid& grid = problem_.grid;
  for (std::size_t i = 0; i < conductivity_.size(); ++i) {
    const Substance& substance = problem_.substance_of(i);
    conductivity_[i] = substance.conductivity(ahead_[i], dryness[i]);
    integral_[i] = substance.conductivity_integral(ahead_[i], dryness[i]);
  }
  for (std::size_t f = 0; f < grid.faces.size(); ++f) {
    const HeatGrid::Face& face = grid.faces[f];
    const auto a = index(face.a);
    const auto b = index(face.b);
    double conductance = 0.0;
    if (face.partner != 0) {
      const HeatGrid::Face& other = grid.faces[f + static_cast<std::size_t>(face.partner)];
      conductance = face.area * std::min({conductivity_[a], conductivity_[b], conductivity_[index(other.a)],
                                          conductivity_[index(other.b)]});
    } else if (const double apart = ahead_[b] - ahead_[a]; std::abs(apart) > kSameTemperature &&
                                                           grid.cells[a].part == grid.cells[b].part &&
                                                           dryness[a] == dryness[b]) {
      conductance = face.area * (integral_[b] - integral_[a]) / (apart * (face.half_a + face.half_b));
    } else {
      conductance = face.area / (face.half_a / conductivity_[a] + face.half_b / conductivity_[b]);
    }
    links_[index(of_face_[f][0])].conductance = conductance;
    links_[index(of_face_[f][1])].conductance = conductance;
  }
  has_inner_ = true;
}

/// A drying surface is drier than its cell: water comes to it from the cell's middle, `half` [m] away, no faster than
/// it moves. Finds the dryness at which as much comes as leaves.
SurfaceFlow HeatStepper::drying_surface_flow(const Surface& side, double air, double humidity, SurfaceCell& cell,
                                             double half, std::size_t of, double dryness) const {
  const Substance& substance = problem_.substance_of(of);
  SurfaceFlow flow;
  // False position, Illinois: more leaves than comes at `wetter`, less at `drier`.
  const auto excess = [&](double at) {
    cell.activity = substance.activity(at);
    flow = surface_flow(side, air, humidity, cell);
    cell.guess = flow.surface;
    return flow.drying -
           substance.diffusivity(flow.surface, 0.5 * (at + dryness)) * substance.water() * (at - dryness) / half;
  };
  double wetter = dryness;
  double drier = 1.0;
  double over = excess(wetter);
  double under = excess(drier);
  for (int i = 0; i < kDrynessTries && drier - wetter > kSameDryness; ++i) {
    const double middle = wetter + (drier - wetter) * std::clamp(over / (over - under), 0.05, 0.95);
    const double now = excess(middle);
    if (std::abs(now) < kSameFlow * flow.drying) break;
    if (now > 0.0) {
      wetter = middle;
      over = now;
      under *= 0.5;
    } else {
      drier = middle;
      under = now;
      over *= 0.5;
    }
  }
  return flow;
}

void HeatStepper::set_outer(const HeatState& state, const Surroundings& around, double air, double dt) {
  for (const int cell : outer_cells_) outer_conductance_[index(cell)] = outer_heat_[index(cell)] = 0.0;
  const HeatGrid& grid = problem_.grid;
  for (std::size_t f = 0; f < grid.outer.size(); ++f) {
    const HeatGrid::OuterFace& face = grid.outer[f];
    const auto i = index(face.cell);
    const Surface& side = around.at(face.side);
    const Substance& substance = problem_.substance_of(i);
    // The surface was found at the middle of the last step; since then it moved about as its cell did.
    const double moved = ahead_[i] - 0.5 * (before_[i] + temperature_[i]);
    const double guess = last_step_ > 0.0 ? surface_[f] + moved : temperature_[i];
    SurfaceCell cell{.temperature = ahead_[i],
                     .inner = conductivity_between(i, state.dryness[i], ahead_[i], guess) / face.half,
                     .guess = guess};
    if (side.drying > 0.0 && substance.can_dry()) {
      cell.activity = substance.activity(state.dryness[i]);
      cell.takes_dew = state.dryness[i] <= 0.0;
      const double left = (1.0 - state.dryness[i]) * substance.water() * grid.cells[i].volume;
      cell.most_drying = (kMostDried * left / dt + std::max(0.0, inflow_[i])) / face.area;
    }
    SurfaceFlow flow = surface_flow(side, air, around.humidity, cell);
    if (flow.drying > 0.0) flow = drying_surface_flow(side, air, around.humidity, cell, face.half, i, state.dryness[i]);
    outer_conductance_[i] += face.area * flow.conductance;
    outer_heat_[i] += face.area * flow.conductance * flow.towards;
    surface_[f] = flow.surface;
    drying_[f] = face.area * flow.drying;
  }
}

/// [s] The longest stable explicit step, by Gershgorin's circles. Links across corners may be negative.
double HeatStepper::explicit_limit(const std::vector<double>& dryness) const {
  double limit = std::numeric_limits<double>::infinity();
  for (std::size_t i = 0; i < dryness.size(); ++i) {
    double sum = 0.0;
    double row = 0.0;
    for (int l = first_link_[i]; l < first_link_[i + 1]; ++l) {
      sum += std::abs(links_[index(l)].conductance);
      row += links_[index(l)].conductance;
    }
    sum += std::abs(row + outer_conductance_[i]);
    const Substance& substance = problem_.substance_of(i);
    const bool may_dry = can_dry_ && substance.can_dry() &&
                         std::max(temperature_[i], ahead_[i]) > substance.boiling_point(0.0) - kNearBoiling;
    const double capacity = substance.least_capacity(coolest_, may_dry ? 1.0 : dryness[i]);
    limit = std::min(limit, 2.0 * capacity / (sum * per_volume_[i]));
  }
  return limit;
}

void HeatStepper::rate(std::vector<double>& rates) const {
  const std::size_t cells = rates.size();
  const double* const temperature = temperature_.data();
  const Link* link = links_.data();
  const Link* const links = links_.data();
  double* const rate = rates.data();
  for (std::size_t i = 0; i < cells; ++i) {
    const double own = temperature[i];
    double flow = outer_heat_[i] - outer_conductance_[i] * own;
    for (const Link* const end = links + first_link_[i + 1]; link != end; ++link) {
      flow += link->conductance * (temperature[link->other] - own);
    }
    rate[i] = flow * per_volume_[i];
  }
}

/// [W] through all surfaces.
double HeatStepper::surface_heat() const {
  double heat = 0.0;
  for (const int cell : outer_cells_) {
    const auto i = index(cell);
    heat += outer_heat_[i] - outer_conductance_[i] * temperature_[i];
  }
  return heat;
}

/// One step of `s` stages; temperature_ is that of state at its start.
void HeatStepper::advance(HeatState& state, double dt, int s) {
  auto& [start, start_rate, previous, now_rate] = work_;
  auto& current = state.enthalpy;
  start = current;
  const auto b = [](int j) { return j < 2 ? 1.0 / 3.0 : (j * j + j - 2.0) / (2.0 * j * (j + 1.0)); };
  const double w1 = 4.0 / (s * s + s - 2.0);
  rate(start_rate);
  const double start_heat = surface_heat();
  const double first = b(1) * w1 * dt;
  previous = start;
  for (std::size_t i = 0; i < start.size(); ++i) current[i] = start[i] + first * start_rate[i];
  double previous_heat = 0.0;
  double current_heat = first * start_heat;
  for (int j = 2; j <= s; ++j) {
    const double mu = (2.0 * j - 1.0) / j * b(j) / b(j - 1);
    const double nu = -(j - 1.0) / j * b(j) / b(j - 2);
    const double rest = 1.0 - mu - nu;
    const double mu_dt = mu * w1 * dt;
    const double gamma_dt = -(1.0 - b(j - 1)) * mu_dt;
    find_temperatures(current, state.dryness);
    rate(now_rate);
    const double heat = surface_heat();
    combine(previous, {mu, nu, rest, mu_dt, gamma_dt}, current, start, now_rate, start_rate);
    std::swap(previous, current);
    previous_heat = mu * current_heat + nu * previous_heat + mu_dt * heat + gamma_dt * start_heat;
    std::swap(previous_heat, current_heat);
  }
  state.heat_in += current_heat;
}

double HeatStepper::step(HeatState& state, const Surroundings& around, const Air& air, double time, double most) {
  GEOMETRY_ASSERT(most > 0.0);
  find_temperatures(state.enthalpy, state.dryness);
  const double longest = std::max(kLongestStep, kStepShare * time);
  double dt = std::min({next_step_ > 0.0 ? next_step_ : longest, longest, most});
  const double middle = air.at(time + 0.5 * dt);
  coolest_ = std::min(*std::min_element(temperature_.begin(), temperature_.end()), std::min(air.at(time), middle));
  for (const Surface* side : {&around.top, &around.wall, &around.base}) {
    if (side->held_at) coolest_ = std::min(coolest_, *side->held_at);
  }
  look_ahead(dt);
  set_inner(state.dryness);
  set_outer(state, around, middle, dt);
  const double limit = explicit_limit(state.dryness);
  if (next_step_ <= 0.0) {
    next_step_ = kFirstStep * limit;
    dt = std::min(dt, next_step_);
  }
  next_step_ = std::min(next_step_ * kStepGrowth, longest);

  // Stages s with dt <= limit (s² + s - 2) / 4.
  int s = std::max(kFewestStages, static_cast<int>(std::ceil(0.5 * (std::sqrt(9.0 + 16.0 * dt / limit) - 1.0))));
  if (s > kMostStages) {
    s = kMostStages;
    dt = 0.25 * limit * (s * s + s - 2);
  }
  remember(dt);
  advance(state, dt, s);
  if (can_dry_) {
    find_temperatures(state.enthalpy, state.dryness);
    settle_boiling(state);
    settle_drying(state, dt);
    move_water(state, dt);
  }
  ++steps_;
  stages_ += s;
  return dt;
}

}  // namespace tinwright
