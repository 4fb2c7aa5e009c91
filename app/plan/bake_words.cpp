// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What is said about a BakeJob's answer, see bake_job.h. Cooling limits: FDA Food Code 3-501.14.
#include <algorithm>
#include <cmath>
#include <string>

#include "app/plan/bake_job.h"
#include "app/plan/words.h"

namespace tinwright {
namespace {

constexpr double kTwoHours = 2.0 * 3600.0;
constexpr double kFourHours = 4.0 * 3600.0;
constexpr double kNoticeableWobble = 0.005;   // [m]
constexpr double kNoticeableCarryOver = 1.0;  // [K]
constexpr double kNoticeableLoss = 0.5e-3;    // [kg]
constexpr double kAgrees = 3.0;               // [K] outside the usual range, and still near enough

std::string at(double kelvin, UnitChoice choice) {
  return format_temperature(kelvin, choice);
}

/// A difference of temperatures, the chosen scale only: "10 °C".
std::string degrees(double kelvin, UnitChoice choice) {
  const double size = std::abs(kelvin);
  return choice == UnitChoice::kMetric ? format_number(size, 0) + " °C" : format_number(1.8 * size, 0) + " °F";
}

/// The same in steps an oven's dial has: 5 °C, or 5 °F.
std::string dial_degrees(double kelvin, UnitChoice choice) {
  return choice == UnitChoice::kMetric ? degrees(kelvin, choice)
                                       : format_number(5.0 * std::round(1.8 * std::abs(kelvin) / 5.0), 0) + " °F";
}

/// "12 min at 200 °C (392 °F), then 16 min at 170 °C (338 °F)".
std::string stage_list(const std::vector<Stage>& stages, UnitChoice choice) {
  std::string list;
  for (const Stage& stage : stages) {
    if (!list.empty()) list += ", then ";
    list += format_about(stage.duration) + (stage.air_before ? ", the air going to " : " at ") + at(stage.air, choice);
  }
  return list;
}

double batch_mass(const BakeJobAnswer& answer, const BakeJob& job) {
  double mass = 0.0;
  for (const HeatGrid::Cell& cell : answer.grid.cells) {
    mass += cell.volume * job.substances[static_cast<std::size_t>(cell.part)].table().density();
  }
  return mass;
}

void say_recipe_time(Report& report, const BakeJob& job, const BakeJobAnswer& answer, UnitChoice choice) {
  const BakeTime& timing = *answer.timing;
  if (!timing.reached) {
    report.push_back(caution("In this pan it never gets as warm in the middle as the recipe's does (" +
                             at(timing.recipe_end.coldest, choice) + "): the layer is too deep for this oven."));
    return;
  }
  report.push_back(figure(kInMyPan, "about " + format_about(timing.time),
                          "start looking after " + format_about(timing.band.early) + "; it may take until " +
                              format_about(timing.band.late)));
  report.push_back(figure("Oven", stage_list(answer.my_stages, choice)));
  std::string detail = "as in the recipe's pan at the end of its own time";
  if (timing.hold_at_boil > 0.0) detail += ", and " + format_about(timing.hold_at_boil) + " more at the boil";
  report.push_back(figure("Its middle is then at", at(timing.my_end.coldest, choice), detail));
  const Mixture* mixture = job.fill.mixture;
  if (mixture != nullptr && mixture->done) {
    const DoneRange& done = *mixture->done;
    const double core = timing.recipe_end.coldest;
    const std::string range = at(done.low, choice) + " to " + at(done.high, choice);
    if (core < done.low - kAgrees) {
      report.push_back(remark("By this reckoning the recipe's own time leaves the middle at " + at(core, choice) +
                              ", and this kind is usually done at " + range +
                              ". Its oven or its pan may be hotter than assumed here: look early, and measure."));
    } else if (core > done.high + kAgrees) {
      report.push_back(remark("By this reckoning the recipe's own time takes the middle to " + at(core, choice) +
                              ", beyond the " + range + " at which this kind is usually done: look early."));
    } else {
      report.push_back(remark("The recipe's own time fits its kind, which is done at " + range + " in the middle."));
    }
  }
}

void say_oven_change(Report& report, const BakeJobAnswer& answer, UnitChoice choice) {
  if (!answer.change || !answer.change->then || !answer.timing->reached) return;
  const OvenChange& change = *answer.change;
  const bool is_over = change.rim_over > 0.0;
  report.push_back(
      remark("At the recipe's temperature the rim would end " + degrees(change.rim_over, choice) +
             (is_over ? " hotter than in the recipe by the time the middle is done, so it overbakes. Set the oven "
                      : " cooler than in the recipe by the time the middle is done, so it stays pale. Set the oven ") +
             dial_degrees(change.by, choice) + (change.by < 0.0 ? " lower" : " higher") + " and allow about " +
             format_about(change.then->time) + "."));
}

void say_own_time(Report& report, const BakeJob& job, const BakeJobAnswer& answer, UnitChoice choice) {
  const BakeAnswer& run = answer.run;
  if (job.until_coldest && run.reached) {
    report.push_back(
        figure("Coldest point reaches " + at(*job.until_coldest, choice), "after " + format_duration(run.time)));
  } else {
    report.push_back(figure("Coldest point", at(run.coldest, choice) + " after " + format_duration(run.time)));
    if (job.until_coldest) {
      report.push_back(caution("It never gets to " + at(*job.until_coldest, choice) +
                               " in this programme: make it longer, or hotter."));
    }
  }
  const Mixture* mixture = job.fill.mixture;
  if (mixture != nullptr && mixture->done && !job.until_coldest) {
    report.push_back(remark("This kind is usually done at " + at(mixture->done->low, choice) + " to " +
                            at(mixture->done->high, choice) + " in the middle."));
  }
  if (job.until_coldest && *job.until_coldest < job.start) {
    report.push_back(
        caution("When food cools, its middle stays warm longest: it is only as cold as its warmest point."));
  }
}

void say_state(Report& report, const BakeJob& job, const BakeJobAnswer& answer, UnitChoice choice) {
  const BakeAnswer& run = answer.run;
  report.push_back(figure("On average", at(run.mean, choice)));
  report.push_back(figure("Warmest point", at(run.hottest, choice)));
  if (run.water_lost > kNoticeableLoss) {
    report.push_back(figure("Bakes away", format_mass(run.water_lost * job.mine.pan.count, choice),
                            format_percent(run.water_lost / batch_mass(answer, job)) + " of its weight, as steam"));
  }
  if (job.fill.mixture == nullptr || !job.fill.mixture->sets_at) return;
  report.push_back(figure("When it comes out", answer.wobble > kNoticeableWobble
                                                   ? "a circle of " + format_length(2.0 * answer.wobble, choice) +
                                                         " in the middle still trembles"
                                                   : "it is set through to the middle"));
}

void say_cooling(Report& report, const BakeJob& job, const BakeJobAnswer& answer, UnitChoice choice) {
  if (!answer.cooling) return;
  const CoolingAnswer& cooling = *answer.cooling;
  if (cooling.carried_over > answer.run.coldest + kNoticeableCarryOver) {
    report.push_back(
        figure("Out of the oven", "the middle goes on to " + at(cooling.carried_over, choice),
               "after " + format_about(cooling.carried_over_at) + "; a deep bake may come out a little early"));
  }
  const auto say = [&](const char* label, const std::optional<double>& time) {
    if (time) report.push_back(figure(label, format_about(*time) + " after the oven"));
  };
  say("Cool enough to cut", cooling.room);
  if (job.cooling->store && *job.cooling->store >= kZeroCelsius) {
    say("Cold through, 5 °C (41 °F)", cooling.cold);
  } else if (job.cooling->store) {
    say("Frozen through, -15 °C (5 °F)", cooling.frozen);
  }
  if (!job.egg_or_dairy) return;
  const std::string rest =
      " is the most the published food code allows (FDA Food Code 3-501.14): make it shallower, stand it in cold "
      "water, or move it to the cold sooner. Your local food-safety rules come first.";
  if (cooling.to_21 && *cooling.to_21 > kTwoHours) {
    report.push_back(caution("This has egg or dairy in it, and its middle takes " + format_about(*cooling.to_21) +
                             " from 57 to 21 °C (135 to 70 °F); 2 hours" + rest));
  } else if (!cooling.to_21) {
    report.push_back(
        caution("This has egg or dairy in it and does not get below 21 °C (70 °F) on the rack: move it to "
                "the refrigerator within 2 hours of 57 °C (135 °F). Your local food-safety rules come first."));
  }
  if (cooling.to_5 && *cooling.to_5 > kFourHours) {
    report.push_back(caution("This has egg or dairy in it, and its middle takes " + format_about(*cooling.to_5) +
                             " from 21 to 5 °C (70 to 41 °F); 4 hours" + rest));
  }
}

}  // namespace

std::string bake_sentence(const BakeJob& job, const BakeJobAnswer& answer, UnitChoice choice) {
  const BakeAnswer& run = answer.run;
  if (answer.timing) {
    if (!answer.timing->reached) return "This pan is too deep for that oven: the middle never gets done.";
    return "Bake it about " + format_about(answer.timing->time) + " in my pan: start looking after " +
           format_about(answer.timing->band.early) + ".";
  }
  if (job.until_coldest && run.reached) {
    return "The middle is at " + at(*job.until_coldest, choice) + " after " + format_about(run.time) + ".";
  }
  if (job.until_coldest) return "The middle never gets to " + at(*job.until_coldest, choice) + " in this programme.";
  return "After " + format_about(run.time) + " the coldest point is at " + at(run.coldest, choice) + ".";
}

Report describe_bake(const BakeJob& job, const BakeJobAnswer& answer, UnitChoice choice) {
  Report report;
  if (answer.timing) {
    say_recipe_time(report, job, answer, choice);
    say_oven_change(report, answer, choice);
  } else {
    say_own_time(report, job, answer, choice);
  }
  if (answer.run.reached && (!answer.timing || answer.timing->reached)) {
    say_state(report, job, answer, choice);
    say_cooling(report, job, answer, choice);
  }
  if (job.is_dry) {
    report.push_back(remark("These are constants, so this is heat conduction alone: nothing evaporates or freezes."));
  }
  report.push_back(
      caution("Trust a thermometer in the middle over any prediction. Your local food-safety rules come first."));
  return report;
}

}  // namespace tinwright
