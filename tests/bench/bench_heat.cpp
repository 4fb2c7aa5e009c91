// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// How long the heat solver takes, best of several runs, with the work it did, against the times aimed at and against
// what the machine can do. Nothing here is asserted: seconds belong to the machine that they were measured on.
//
//     cmake --build build/native --target bench && build/native/tinwright_bench
//     build/native/tinwright_bench FILE    times the answer to a job of `tinwright bake` alone, as one line of JSON
//
// As wasm in node, with the page's flags (after web/setup, NODE_PATH as in web/build):
//     emcmake cmake -S . -B build/wasm-bench -DCMAKE_BUILD_TYPE=MinSizeRel -DCMAKE_CXX_FLAGS=-flto
//         -DTINWRIGHT_HEADERS=$PWD/build/third_party/include -DTINWRIGHT_IMGUI=$PWD/build/third_party/imgui-1.90.1
//     cmake --build build/wasm-bench --target bench && node --no-experimental-fetch build/wasm-bench/tinwright_bench.js
#include <cstdio>
#include <fstream>
#include <iterator>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "app/files/catalogue.h"
#include "app/files/pan_reader.h"
#include "app/plan/bake_job.h"
#include "geometry/heat/bake_time.h"
#include "tests/bench/machine.h"
#include "tests/bench/timing.h"

namespace tinwright {
namespace {

#ifdef __wasm__
constexpr bool kIsWasm = true;
#else
constexpr bool kIsWasm = false;
#endif
/// [ms] aimed at.
constexpr double kBakeTarget = kIsWasm ? 6.0 : 3.0;
constexpr double kBandTarget = 60.0;  // in wasm
constexpr double kFreezingTarget = 30.0;

constexpr double kRoom = 293.15;
constexpr double kUsualBiotCoefficient = 22.0;  // [W/(m² K)] still oven with radiation, as bake_time takes it

/// Arithmetic and bytes of one cell in one stage, counted in HeatStepper for a cell with `links` links:
///   for_rates                3 operations a link (subtract, multiply, add) and 3 for surface and volume;
///                            18 bytes a link (conductance, the neighbour's temperature, a quarter of where it is) and
///                            32 (own temperature, surface's two, volume)
///   combine                  9 operations; 40 bytes (four read, one written)
///   find_stage_temperatures  2 operations; 48 bytes (enthalpy, the line's four words, temperature), besides 2
///                            comparisons
/// That is about 0.15 operations a byte, so no build can come near the peak of its multipliers; the bytes bound it.
struct StageWork {
  double operations, bytes;
};
StageWork stage_work(double links) {
  return {3.0 * links + 14.0, 18.0 * links + 120.0};
}

struct Machine {
  double operations, near, far;  // [1/s], [B/s] in the first and in the second cache
};

Composition composition(const char* mixture) {
  return *find_mixture(mixture)->composition;
}

/// With air so that it is `factor` times as dense; without air as it is.
Composition as_dense(Composition food, double factor) {
  if (food.air > 0.1) food.air = 1.0 - (1.0 - food.air) * factor;
  return food;
}

std::array<Substance, 2> foods(const char* fill, const char* crust) {
  return {*make_substance(composition(fill)), *make_substance(composition(crust))};
}

std::array<Substance, 2> constants() {
  return {*make_substance(Properties{0.45, 1060, 3400}), *make_substance(Properties{0.25, 1200, 2300})};
}

Pan catalogue_pan(const char* id) {
  FieldReader reader(find_catalogue_pan(id)->fields);
  return *read_pan(reader, "");
}

/// In a crust of 5 mm on the floor and 4 mm up the wall.
FilledPan shell(const char* pan, double share) {
  FilledPan filled{catalogue_pan(pan), true, {}, 0.0};
  filled.lining = {0.005, 0.004, 0.9 * depth(filled.pan)};
  filled.fill_height = share * (filled.lining.height - filled.lining.floor);
  return filled;
}

FilledPan bare(const char* pan, double share) {
  FilledPan filled{catalogue_pan(pan), false, {}, 0.0};
  filled.fill_height = share * depth(filled.pan);
  return filled;
}

GridFineness usual_fineness(const FilledPan& filled, const Substance& fill) {
  return fineness_for(0.5 * kUsualBiotCoefficient * filled.fill_height / fill.conductivity(kRoom, 0.0));
}

std::vector<Stage> oven(const Pan& pan) {
  std::vector<Stage> stages{{463.15, 720.0}, {438.15, 1680.0}};
  for (Stage& stage : stages) stage.around = surroundings_in(Place::kOven, pan.material);
  return stages;
}

std::vector<Stage> freezer(const Pan& pan) {
  std::vector<Stage> stages{{255.15, 8.0 * 3600.0}};
  stages[0].around = surroundings_in(Place::kFreezer, pan.material);
  return stages;
}

void print_target(double seconds, std::optional<double> target) {
  if (target) std::printf("   target %g ms: %s", *target, 1e3 * seconds <= *target ? "met" : "not met");
  std::printf("\n");
}

/// Cells, the run and the observing; the substances are made once for all runs.
void run(const char* name, const FilledPan& filled, const std::array<Substance, 2>& substances,
         const std::vector<Stage>& stages, double start, const Machine& machine,
         std::optional<double> target = std::nullopt) {
  const GridFineness fineness = usual_fineness(filled, substances[0]);
  std::optional<BakeAnswer> last;
  std::size_t faces = 0;
  const double time = best_time([&] {
    const HeatProblem problem{*make_grid(filled, fineness), substances};
    faces = problem.grid.faces.size();
    last = *bake(problem, {.start = start, .stages = stages});
  });
  const double visits = static_cast<double>(last->cells * last->stages);
  const double links = 2.0 * static_cast<double>(faces) / static_cast<double>(last->cells);
  const StageWork work = stage_work(links);
  std::printf("%-36s %5ld %5ld %6ld %5.1f %6.2f %8.2f %5.0f%% %4.0f%% %4.0f%%", name, last->cells, last->steps,
              last->stages, links, 1e9 * time / visits, 1e3 * time,
              100.0 * work.operations * visits / time / machine.operations,
              100.0 * work.bytes * visits / time / machine.near, 100.0 * work.bytes * visits / time / machine.far);
  print_target(time, target);
}

void run_programmes(const Machine& machine) {
  const FilledPan springform = shell("springform-23cm", 0.5);
  const FilledPan pie = shell("pie-9x1-1-2", 0.8);
  const FilledPan tart = shell("tart-24cm", 0.8);
  const FilledPan loaf = bare("loaf-9x5", 0.7);
  const auto cheesecake = foods("baked-cheesecake", "pressed-biscuit-crumb");
  const auto custard = foods("pumpkin-custard", "shortcrust");
  const auto cake = foods("pound-cake", "pound-cake");
  std::printf("%-36s %5s %5s %6s %5s %6s %8s %6s %5s %5s\n", "", "cells", "steps", "stages", "links", "ns", "ms",
              "peak", "near", "far");
  run("default bake, springform 23 cm", springform, cheesecake, oven(springform.pan), kRoom, machine, kBakeTarget);
  run("  by constants (conduction alone)", springform, constants(), oven(springform.pan), kRoom, machine, kBakeTarget);
  run("lined pie tin 9 in", pie, custard, oven(pie.pan), kRoom, machine);
  run("lined fluted tart 24 cm", tart, custard, oven(tart.pan), kRoom, machine);
  run("loaf 9 x 5 in", loaf, cake, oven(loaf.pan), kRoom, machine);
  run("freezing 8 h, springform 23 cm", springform, cheesecake, freezer(springform.pan), kRoom, machine,
      kFreezingTarget);
}

/// The recipe's shell in a springform, mine in a smaller one and more than twice as deep.
void run_band() {
  const char* const fill = "baked-cheesecake";
  const char* const crust = "pressed-biscuit-crumb";
  std::vector<std::array<Substance, 2>> else_ones;
  for (const double factor : {1.08, 0.92}) {
    else_ones.push_back(
        {*make_substance(as_dense(composition(fill), factor)), *make_substance(as_dense(composition(crust), factor))});
  }
  const FilledPan recipe = shell("springform-23cm", 0.4);
  const FilledPan mine = shell("springform-20cm", 0.95);
  std::vector<Surroundings> around_mine;
  for (const Stage& stage : oven(mine.pan)) around_mine.push_back(*stage.around);
  const BakeTimeQuestion question{.recipe_pan = recipe,
                                  .my_pan = mine,
                                  .substances = foods(fill, crust),
                                  .start = kRoom,
                                  .stages = oven(recipe.pan),
                                  .mine = around_mine,
                                  .sets_at = find_mixture(fill)->sets_at,
                                  .substances_else = else_ones};
  std::optional<BakeTime> found;
  const double band = best_time([&] { found = *bake_time(question); });
  std::printf("calibrated band, %ld runs: %.0f min, %.0f to %.0f %14.2f ms", found->runs, found->time / 60.0,
              found->band.early / 60.0, found->band.late / 60.0, 1e3 * band);
  print_target(band, kIsWasm ? std::optional(kBandTarget) : std::nullopt);
  std::optional<OvenChange> change;
  const double oven_time = best_time([&] { change = *oven_change(question, *found); });
  std::printf("oven_change by %.0f K %38.2f ms\n", change->by, 1e3 * oven_time);
  const double making = best_time([&] { static_cast<void>(foods(fill, crust)); });
  std::printf("two substances from compositions %24.2f ms\n", 1e3 * making);
}

/// One line of JSON; 1 when the file holds no job.
int run_job(const char* path) {
  std::ifstream file(path, std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  const auto tree = read_json(text);
  if (!tree) {
    std::fprintf(stderr, "%s: %s\n", path, tree.problem().message.c_str());
    return 1;
  }
  const Fields fields = fields_of(*tree);
  FieldReader reader(fields);
  const auto job = read_bake_job(reader);
  for (const Fault& fault : reader.faults()) std::fprintf(stderr, "%s: %s\n", path, fault.message.c_str());
  if (!job) return 1;
  std::optional<BakeJobAnswer> answer;
  const double time = best_time([&] { answer = solve_bake(reader, *job); });
  if (!answer) return 1;
  std::printf("{\"ms\": %.4f, \"cells\": %ld, \"steps\": %ld, \"stages\": %ld}\n", 1e3 * time, answer->run.cells,
              answer->run.steps, answer->run.stages);
  return 0;
}

}  // namespace
}  // namespace tinwright

int main(int count, char** arguments) {
  using namespace tinwright;
  if (count > 1) return run_job(arguments[1]);
  const Machine machine{peak_operations(), triad_bandwidth(24U << 10U), triad_bandwidth(384U << 10U)};
  std::printf("One core here: %.1f thousand million operations on doubles a second; %.0f GB/s near, %.0f GB/s far.\n\n",
              1e-9 * machine.operations, 1e-9 * machine.near, 1e-9 * machine.far);
  std::printf(
      "ns: by cell and stage, with all that is done once a step. Shares: of one core's operations, and of what\n"
      "the near and the far cache can carry.\n");
  run_programmes(machine);
  run_band();
}
