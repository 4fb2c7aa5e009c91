// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See press_job.h.
#include "app/plan/press_job.h"

#include "app/files/catalogue.h"
#include "app/plan/words.h"

namespace tinwright {
namespace {

/// [m] Thinner tears and burns, thicker stays raw in the middle: common practice, no source.
constexpr double kThinnestDough = 0.002;
constexpr double kThickestDough = 0.012;

std::optional<double> read_density(FieldReader& reader, const std::string& prefix) {
  if (reader.has(prefix + "density") || !reader.has(prefix + "dough")) {
    return reader.required(prefix + "density", Dimension::kDensity, "dough's density");
  }
  const Mixture* mixture = find_mixture(reader.text(prefix + "dough").value_or(""));
  if (mixture == nullptr || mixture->use != MixtureUse::kDough) {
    reader.fault(ProblemCode::kUnknown, prefix + "dough",
                 "the catalogue has no dough called that; give its density instead");
    return std::nullopt;
  }
  return quantity_of(mixture->density, Dimension::kDensity);
}

std::string of_both(double cubic_metres, double density, const Pan& pan, UnitChoice choice) {
  const double all = pan.count * cubic_metres;
  return format_both_masses(all * density, choice) + ", " + format_both_volumes(all, choice);
}

std::string slab_size(const Pan& pan, double coverage, UnitChoice choice) {
  const SlabExtent extent = slab_extent(pan, coverage);
  const std::string length = format_both_lengths(extent.length, choice);
  if (pan.core) return "a band round the core, " + length + " across";
  if (std::holds_alternative<Rectangle>(pan.outline.shape)) {
    const std::string along = format_both_lengths(extent.length_full_width, choice);
    return "a rectangle of " + length + " by " + format_both_lengths(extent.width, choice) +
           (extent.length_full_width > 0.0 ? ", or full width and " + along + " along" : "");
  }
  return "the shape of the floor, " + length + " across";
}

void add_thickness(Report& report, const PressJob& job, const PressAnswer& answer, UnitChoice choice) {
  const std::string on_floor = format_both_lengths(answer.floor_thickness, choice);
  const std::string label = answer.thickness_was_given ? "Pressed to" : "Presses out to";
  if (job.question.cover != Cover::kFloorAndWall) {
    report.push_back(figure(label, on_floor + " thick"));
  } else if (answer.wall_thickness <= 0.0) {
    report.push_back(figure(label, on_floor + " on the floor", "nothing is left for the wall"));
  } else if (answer.wall_thickness == answer.floor_thickness) {
    report.push_back(figure(label, on_floor + " thick", "on the floor and up the wall"));
  } else {
    report.push_back(figure(
        label, on_floor + " on the floor, " + format_both_lengths(answer.wall_thickness, choice) + " up the wall"));
  }
  if (job.question.cover == Cover::kFloorAndWall && job.question.wall_height) {
    report.push_back(
        figure("Crust stands", format_both_lengths(answer.wall_height, choice) + " above the pan's floor"));
  }
}

}  // namespace

std::optional<PressJob> read_press_job(FieldReader& reader, const std::string& prefix, const std::optional<Pan>& pan) {
  static const std::vector<std::string_view> kCovers{"floor", "floor_and_wall", "slab"};
  const std::size_t faults_before = reader.faults().size();
  PressQuestion question;
  const auto mass = reader.quantity(prefix + "mass", Dimension::kMass);
  const auto density = read_density(reader, prefix);
  if (!reader.has(prefix + "cover")) {
    reader.fault(ProblemCode::kMissing, prefix + "cover", "say what the dough covers: floor, floor_and_wall or slab");
  }
  question.cover = static_cast<Cover>(reader.choice(prefix + "cover", kCovers).value_or(0));
  question.thickness = reader.quantity(prefix + "thickness", Dimension::kLength);
  question.floor_thickness = reader.quantity(prefix + "floor_thickness", Dimension::kLength);
  question.wall_height = reader.quantity(prefix + "wall_height", Dimension::kLength);
  question.wall_to_floor = reader.quantity(prefix + "wall_to_floor", Dimension::kRatio);
  if (density && !(*density >= 50.0 && *density <= 5000.0)) {
    reader.fault(ProblemCode::kOutOfRange, prefix + "density",
                 "dough weighs between 0.05 and 5 g/ml, mostly 0.9 to 1.3");
  }
  if (reader.faults().size() > faults_before || !pan) return std::nullopt;
  if (mass) question.dough = *mass / *density / pan->count;
  return PressJob{*pan, *density, question};
}

std::optional<PressAnswer> solve_press(FieldReader& reader, const PressJob& job, const std::string& prefix) {
  const auto answer = press_dough(job.pan, job.question);
  if (answer) return *answer;
  reader.fault(answer.problem(), prefix);
  return std::nullopt;
}

std::optional<Lining> crust_of(const PressJob& job, const PressAnswer& answer) {
  if (job.question.cover == Cover::kSlab || !answer.reaches_edges) return std::nullopt;
  const bool has_wall = job.question.cover == Cover::kFloorAndWall;
  return Lining{answer.floor_thickness, answer.wall_thickness, has_wall ? answer.wall_height : depth(job.pan)};
}

Report describe_press(const PressJob& job, const PressAnswer& answer, UnitChoice choice) {
  Report report;
  add_thickness(report, job, answer, choice);
  const bool is_wall_short = !answer.reaches_edges && answer.coverage >= 1.0;
  if (answer.reaches_edges) {
    report.push_back(figure("Reaches", "all the way to the edge"));
  } else if (is_wall_short) {
    report.push_back(figure("Reaches", "all of the floor, but not all of the wall"));
  } else {
    report.push_back(figure("Reaches", format_percent(answer.coverage) + " of the floor",
                            job.question.cover == Cover::kSlab ? slab_size(job.pan, answer.coverage, choice) : ""));
  }
  report.push_back(
      figure("Dough", of_both(answer.dough, job.density, job.pan, choice),
             job.pan.count > 1 ? format_both_masses(answer.dough * job.density, choice) + " for each" : ""));
  if (answer.left > 0.0) report.push_back(figure("Left over", of_both(answer.left, job.density, job.pan, choice)));
  if (answer.missing > 0.0) {
    report.push_back(figure(is_wall_short ? "To line the wall" : "To reach the edge",
                            of_both(answer.missing, job.density, job.pan, choice) + " more"));
  }
  const bool thin_wall = answer.wall_thickness > 0.0 && answer.wall_thickness < kThinnestDough;
  if (answer.floor_thickness < kThinnestDough || thin_wall) {
    report.push_back(caution("Under 2 mm dough tears and burns easily: make more, or line less of the pan."));
  }
  if (answer.floor_thickness > kThickestDough && job.question.cover != Cover::kSlab) {
    report.push_back(caution("Over 12 mm the middle of the crust stays soft: bake it empty first, or use less."));
  }
  add_raw_dough_caution(report);
  add_pan_cautions(report, job.pan);
  return report;
}

}  // namespace tinwright
