// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See bake_job.h.
#include "app/plan/bake_job.h"

#include <algorithm>
#include <string>

#include "app/files/pan_reader.h"
#include "app/plan/words.h"
#include "app/quantity/parse.h"
#include "geometry/heat/composition.h"

namespace tinwright {
namespace {

/// [W/m²K] Effective coefficients where none are given: the middle of 20 to 48 measured on cakes in a tunnel oven,
/// three quarters of it radiation (Baik, Grabowski, Trigui, Marcotte and Castaigne 1999, J. Food Sci. 64, 688); a still
/// home oven lies at the lower end (common practice, no source).
constexpr Transfer kUsualTransfer{25.0, 22.0, 22.0};

double fraction(FieldReader& reader, const std::string& path) {
  const auto text = reader.text(path);
  if (!text) return 0.0;
  const auto value = parse_quantity(*text, Dimension::kRatio);
  if (value) return *value;
  reader.fault(ProblemCode::kNotANumber, path, "this has to be a share, like 0.3");
  return 0.0;
}

std::optional<ThermalTable> accept(FieldReader& reader, const std::string& path, const Result<ThermalTable>& table) {
  if (table) return *table;
  reader.fault(table.problem(), path + ".");
  return std::nullopt;
}

std::optional<ThermalTable> read_substance(FieldReader& reader, const std::string& path, const std::string& what) {
  if (!reader.has(path)) {
    reader.fault(ProblemCode::kMissing, path,
                 "say what the " + what +
                     " is: its conductivity, density and heat capacity, or "
                     "its composition");
    return std::nullopt;
  }
  const std::size_t faults_before = reader.faults().size();
  const std::string in = path + ".";
  if (reader.has(in + "conductivity") || reader.has(in + "heat_capacity")) {
    const auto k = reader.required(in + "conductivity", Dimension::kConductivity, "conductivity");
    const auto rho = reader.required(in + "density", Dimension::kDensity, "density");
    const auto c = reader.required(in + "heat_capacity", Dimension::kHeatCapacity, "heat capacity");
    if (!k || !rho || !c) return std::nullopt;
    return accept(reader, path, make_thermal_table(Properties{*k, *rho, *c}));
  }
  if (!reader.has(in + "water")) {
    reader.skip(in);
    reader.fault(
        ProblemCode::kUnknown, path,
        "no thermal data are known under that name; give conductivity, density and heat_capacity, or a composition "
        "like {\"water\": 0.3, \"fat\": 0.2, \"carbohydrate\": 0.5}");
    static_cast<void>(reader.text(path));
    return std::nullopt;
  }
  Composition food;
  food.water = fraction(reader, in + "water");
  food.protein = fraction(reader, in + "protein");
  food.fat = fraction(reader, in + "fat");
  food.carbohydrate = fraction(reader, in + "carbohydrate");
  food.fibre = fraction(reader, in + "fibre");
  food.ash = fraction(reader, in + "ash");
  food.air = fraction(reader, in + "air");
  if (reader.faults().size() > faults_before) return std::nullopt;
  return accept(reader, path, make_thermal_table(food));
}

std::vector<Stage> read_stages(FieldReader& reader) {
  std::vector<Stage> stages;
  if (!reader.has("stages")) {
    reader.fault(ProblemCode::kMissing, "stages",
                 "the programme is missing; give stages like "
                 "[{\"air\": \"190 C\", \"for\": \"12 min\"}]");
    return stages;
  }
  const std::size_t count = reader.length("stages").value_or(0);
  for (std::size_t i = 0; i < count; ++i) {
    const std::string in = "stages." + std::to_string(i) + ".";
    const auto air = reader.required(in + "air", Dimension::kTemperature, "stage's air temperature", "190 C");
    const auto length = reader.required(in + "for", Dimension::kDuration, "stage's length", "12 min");
    if (air && length) stages.push_back({*air, *length});
  }
  return stages;
}

Transfer read_transfer(FieldReader& reader) {
  if (!reader.has("transfer")) return kUsualTransfer;
  const auto read = [&](const std::string& side) {
    return reader.required("transfer." + side, Dimension::kTransfer, side + "'s surface coefficient").value_or(0.0);
  };
  return {read("top"), read("wall"), read("base")};
}

std::string at(double kelvin, UnitChoice choice) {
  return format_temperature(kelvin, choice);
}

}  // namespace

std::optional<BakeJob> read_bake_job(FieldReader& reader) {
  const std::size_t faults_before = reader.faults().size();
  const auto pan = read_pan(reader, "pan.");
  FilledPan filled;
  filled.is_lined = reader.has("lining");
  std::optional<ThermalTable> crust;
  if (filled.is_lined) {
    filled.lining = read_lining(reader, "lining").value_or(Lining{});
    crust = read_substance(reader, "lining.substance", "lining");
  }
  filled.fill_height = reader.required("fill.height", Dimension::kLength, "filling's height", "25 mm").value_or(0.0);
  const auto fill = read_substance(reader, "fill.substance", "filling");
  BakeQuestion question;
  question.start =
      reader.required("start", Dimension::kTemperature, "food's starting temperature", "20 C").value_or(0.0);
  question.stages = read_stages(reader);
  question.transfer = read_transfer(reader);
  question.until_coldest = reader.quantity("until.core", Dimension::kTemperature);
  question.report_every = reader.quantity("report_every", Dimension::kDuration).value_or(question.report_every);
  if (reader.faults().size() > faults_before || !pan || !fill) return std::nullopt;
  filled.pan = *pan;
  const Transfer& transfer = question.transfer;
  const double h = std::max({transfer.top, transfer.wall, transfer.base});
  auto grid = make_grid(filled, fineness_for(0.5 * h * filled.fill_height / fill->conductivity(question.start)));
  if (!grid) {
    reader.fault(grid.problem(), "");
    return std::nullopt;
  }
  const bool is_dry =
      reader.has("fill.substance.conductivity") && (!filled.is_lined || reader.has("lining.substance.conductivity"));
  return BakeJob{{*grid, {*fill, crust.value_or(*fill)}}, question, is_dry};
}

std::optional<BakeAnswer> solve_bake(FieldReader& reader, const BakeJob& job) {
  const auto answer = bake(job.problem, job.question);
  if (answer) return *answer;
  reader.fault(answer.problem(), "");
  return std::nullopt;
}

Report describe_bake(const BakeJob& job, const BakeAnswer& answer, UnitChoice choice) {
  Report report;
  if (job.question.until_coldest && answer.reached) {
    report.push_back(figure("Coldest point reaches " + at(*job.question.until_coldest, choice),
                            "after " + format_duration(answer.time)));
  } else if (job.question.until_coldest) {
    report.push_back(figure("Coldest point", at(answer.coldest, choice) + " after " + format_duration(answer.time)));
    report.push_back(caution("It never gets to " + at(*job.question.until_coldest, choice) +
                             " in this programme: make it longer, or hotter."));
  } else {
    report.push_back(figure("Coldest point", at(answer.coldest, choice) + " after " + format_duration(answer.time)));
  }
  report.push_back(figure("On average", at(answer.mean, choice)));
  report.push_back(figure("Warmest point", at(answer.hottest, choice)));
  if (job.question.until_coldest && *job.question.until_coldest < job.question.start) {
    report.push_back(
        caution("When food cools, its middle stays warm longest: it is only as cold as its warmest point."));
  }
  for (const BakeRow& row : answer.history) {
    report.push_back(
        figure("At " + (row.time > 0.0 ? format_duration(row.time) : std::string("the start")),
               at(row.coldest, choice) + " at the coldest point, " + at(row.mean, choice) + " on average"));
  }
  report.push_back(
      remark("Heat conduction only: what evaporates, and the steam it makes, is not counted, so above 100 °C (212 °F) "
             "this runs ahead of a real bake."));
  report.push_back(
      caution("Trust a thermometer in the middle over any prediction. Your local food-safety rules come first."));
  return report;
}

}  // namespace tinwright
