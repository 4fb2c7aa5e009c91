// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See fill_job.h.
#include "app/plan/fill_job.h"

#include <algorithm>

#include "app/files/catalogue.h"
#include "app/files/pan_reader.h"
#include "app/plan/words.h"

namespace tinwright {
namespace {

/// [m³] Less than a teaspoon over is nothing over.
constexpr double kWorthKeeping = 5e-6;
/// [m] Less than this is not worth a figure.
constexpr double kShownLength = 5e-4;
/// [m] A filling nearer than this to the rim slops on the way to the oven: common practice, no source.
constexpr double kSlopMargin = 0.003;

const Mixture* read_mixture(FieldReader& reader, const std::string& prefix) {
  if (!reader.has(prefix + "filling")) return nullptr;
  const Mixture* mixture = find_mixture(reader.text(prefix + "filling").value_or(""));
  if (mixture != nullptr && mixture->use != MixtureUse::kDough) return mixture;
  reader.fault(ProblemCode::kUnknown, prefix + "filling",
               "the catalogue has no filling or batter called that; give its density instead");
  return nullptr;
}

/// The volume there is, from a volume or from mass and density.
std::optional<double> read_amount(FieldReader& reader, const std::string& prefix,
                                  const std::optional<double>& density) {
  const auto volume = reader.quantity(prefix + "volume", Dimension::kVolume);
  const auto mass = reader.quantity(prefix + "mass", Dimension::kMass);
  if (reader.has(prefix + "volume") && reader.has(prefix + "mass")) {
    reader.fault(ProblemCode::kContradiction, prefix + "volume", "give the filling's mass or its volume, not both");
    return std::nullopt;
  }
  if (volume) return volume;
  if (!mass) return std::nullopt;
  if (!density) {
    reader.fault(ProblemCode::kMissing, prefix + "density",
                 "the filling's density is missing; give it like \"1.05 g/ml\", or give a volume instead of the mass");
    return std::nullopt;
  }
  return *mass / *density;
}

std::string amount(const FillJob& job, double cubic_metres, UnitChoice choice) {
  const double all = job.pan.count * cubic_metres;
  const std::string volume = format_both_volumes(all, choice);
  return job.density ? volume + ", " + format_both_masses(all * *job.density, choice) : volume;
}

}  // namespace

std::optional<FillJob> read_fill_job(FieldReader& reader, const std::string& prefix, const std::optional<Pan>& pan,
                                     const std::optional<Lining>& crust) {
  const std::size_t faults_before = reader.faults().size();
  FillJob job;
  job.lining = crust ? crust : read_lining(reader, prefix + "lining");
  const Mixture* mixture = read_mixture(reader, prefix);
  job.density = reader.quantity(prefix + "density", Dimension::kDensity);
  if (!job.density && mixture != nullptr) job.density = quantity_of(mixture->density, Dimension::kDensity);
  if (job.density && !(*job.density >= 20.0 && *job.density <= 5000.0)) {
    reader.fault(ProblemCode::kOutOfRange, prefix + "density",
                 "fillings weigh between 0.02 and 5 g/ml, mostly about 1");
  }
  job.question.amount = read_amount(reader, prefix, job.density);
  job.question.level = reader.quantity(prefix + "level", Dimension::kRatio);
  if (auto rise = reader.quantity(prefix + "rise", Dimension::kRatio)) {
    job.question.rise = *rise;
  } else if (mixture != nullptr) {
    job.question.rise = quantity_of(mixture->rise, Dimension::kRatio).value_or(1.0);
  }
  job.egg_or_dairy = mixture != nullptr && mixture->egg_or_dairy;
  if (reader.faults().size() > faults_before || !pan) return std::nullopt;

  job.pan = *pan;
  job.cavity = *pan;
  if (job.question.amount) *job.question.amount /= pan->count;
  if (job.lining) {
    const auto cavity = line_pan(*pan, *job.lining);
    if (!cavity) {
      reader.fault(cavity.problem(), prefix);
      return std::nullopt;
    }
    job.cavity = *cavity;
  }
  return job;
}

std::optional<FillAnswer> solve_fill(FieldReader& reader, const FillJob& job, const std::string& prefix) {
  const auto answer = fill_cavity(job.cavity, job.question);
  if (answer) return *answer;
  Problem problem = answer.problem();
  if (problem.place == "volume" && reader.has(prefix + "mass")) problem.place = "mass";
  reader.fault(problem, prefix);
  return std::nullopt;
}

Report describe_fill(const FillJob& job, const FillAnswer& answer, UnitChoice choice) {
  Report report;
  const std::string rim = job.lining ? "the crust's top" : "the rim";
  const bool brimful = answer.below_rim < kShownLength;
  report.push_back(figure(
      "Stop pouring", brimful ? "level with " + rim : format_both_lengths(answer.below_rim, choice) + " below " + rim,
      format_both_lengths(answer.height, choice) + " deep, " + format_percent(answer.level) +
          (job.lining ? " of the shell" : " of the pan")));
  const double poured = std::min(answer.volume, brim_volume(job.cavity));
  report.push_back(figure("That takes", amount(job, poured, choice),
                          job.pan.count > 1 ? format_both_volumes(poured, choice) + " in each" : ""));
  if (answer.left > kWorthKeeping) report.push_back(figure("Left over", amount(job, answer.left, choice)));
  if (answer.missing > kWorthKeeping)
    report.push_back(figure("Short of that level", amount(job, answer.missing, choice)));
  if (job.question.rise > 1.0) {
    report.push_back(figure("Rises to", answer.overflow > 0.0
                                            ? "over " + rim
                                            : format_both_lengths(answer.risen_below_rim, choice) + " below " + rim));
  }
  const double unpoured = answer.volume - poured;
  if (unpoured > kWorthKeeping) report.push_back(figure("Does not fit", amount(job, unpoured, choice)));
  if (answer.overflow > kWorthKeeping && job.question.rise > 1.0) {
    report.push_back(caution("Risen, " + amount(job, answer.overflow, choice) + " would run over: fill less."));
  } else if (answer.below_rim < kSlopMargin) {
    report.push_back(
        caution("That is nearly brimful and slops on the way to the oven: put the pan on a tray in the oven "
                "first, then pour the last of it."));
  }
  if (job.egg_or_dairy) add_filling_caution(report);
  add_pan_cautions(report, job.pan);
  return report;
}

}  // namespace tinwright
