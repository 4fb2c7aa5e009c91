// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// How long the heat solver takes, best of several runs, with the work it did. Build the target `bench` and run
// tinwright_bench; nothing here is asserted.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <optional>
#include <string>

#include "app/files/catalogue.h"
#include "app/files/pan_reader.h"
#include "geometry/heat/bake.h"

namespace tinwright {
namespace {

constexpr int kRuns = 9;

struct Case {
  std::string name, pan;
  bool is_lined = false;
  double fill_share = 0.7;  // of the pan's or cavity's depth
  std::vector<Stage> stages;
};

ThermalTable raw(double conductivity, double density, double heat_capacity) {
  return *make_thermal_table(Properties{conductivity, density, heat_capacity});
}

void measure(const Case& each) {
  const CataloguePan* entry = find_catalogue_pan(each.pan);
  FieldReader reader(entry->fields);
  FilledPan filled;
  filled.pan = *read_pan(reader, "");
  filled.is_lined = each.is_lined;
  filled.lining = {0.005, 0.004, 0.9 * depth(filled.pan)};
  filled.fill_height =
      each.fill_share * (each.is_lined ? filled.lining.height - filled.lining.floor : depth(filled.pan));
  const Transfer transfer{25, 22, 22};
  const double biot = 0.5 * 25 * filled.fill_height / 0.45;
  double best = 1e9;
  std::optional<BakeAnswer> last;
  for (int i = 0; i < kRuns; ++i) {
    const auto start = std::chrono::steady_clock::now();
    const HeatProblem problem{*make_grid(filled, fineness_for(biot)), {raw(0.45, 1060, 3400), raw(0.25, 1200, 2300)}};
    last = *bake(problem, {.start = 293.15, .stages = each.stages, .transfer = transfer});
    best = std::min(best, std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
  }
  std::printf("%-34s %6ld cells %6ld steps %7ld stages %8.2f ms\n", each.name.c_str(), last->cells, last->steps,
              last->stages, best);
}

}  // namespace
}  // namespace tinwright

int main() {
  const std::vector<tinwright::Stage> oven{{463.15, 720}, {438.15, 1680}};
  const std::vector<tinwright::Stage> freezer{{255.15, 8.0 * 3600}};
  for (const tinwright::Case& each :
       {tinwright::Case{"bake 40 min, lined springform 23 cm", "springform-23cm", true, 0.5, oven},
        tinwright::Case{"bake 40 min, lined pie tin 9 in", "pie-9x1-1-2", true, 0.8, oven},
        tinwright::Case{"bake 40 min, fluted tart 24 cm", "tart-24cm", false, 0.8, oven},
        tinwright::Case{"bake 40 min, loaf 9 x 5 in", "loaf-9x5", false, 0.7, oven},
        tinwright::Case{"cool 8 h in freezer air, springform", "springform-23cm", false, 0.5, freezer}}) {
    tinwright::measure(each);
  }
}
