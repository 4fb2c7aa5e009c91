// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See plan_words.h. Cautions and open points are in plan_cautions.cpp, the oven in plan_oven_words.cpp.
#include "app/plan/plan_words.h"

#include <algorithm>
#include <cmath>

#include "app/plan/plan_cautions.h"
#include "app/plan/plan_match.h"
#include "app/plan/words.h"

namespace tinwright {
namespace {

constexpr double kWorthSaying = 0.005;  // [kg] and [l] of what is left
constexpr double kSame = 0.005;         // [-] of a factor

std::string mass(double kilograms, UnitChoice units) {
  return format_both_masses(kilograms, units);
}

ItemLine line_of(const RecipeItem& item, const ItemPlan& plan, double factor, UnitChoice units) {
  const ItemWords words = words_for_item(item, plan, factor, units);
  ItemLine line;
  line.food = item.food;
  if (!item.remark.empty() && item.measure != Measure::kNone) line.food += ", " + item.remark;
  line.amount = words.amount;
  line.detail = words.measure + (words.off.empty() ? "" : ", " + words.off);
  line.is_open = (item.measure == Measure::kPieces && item.piece <= 0.0) || item.is_taken_as_water ||
                 (item.measure == Measure::kNone && item.remark.empty());
  return line;
}

void say_whole(Report& notes, const PartPlan& plan) {
  for (const WholeFactor& whole : plan.whole) {
    notes.push_back(remark(format_factor(whole.factor) + " gives " + std::to_string(whole.pieces) + " " + whole.food +
                           " exactly."));
  }
}

void say_tray(Report& notes, const Job& job, const RecipePart& part, const PartPlan& plan, UnitChoice units) {
  const double baked = plan.mass * (1.0 - part.bake_loss);
  notes.push_back(figure("Crumbs for " + job.parts[*part.into].name, mass(baked, units),
                         part.bake_loss > 0.0 ? "once " + format_percent(part.bake_loss) + " has baked away" : ""));
  if (!plan.on_tray) return;
  const PressAnswer& pressed = *plan.on_tray;
  const std::string thick = format_both_lengths(pressed.floor_thickness, units) + " thick on my tray";
  notes.push_back(figure("Press out", thick,
                         pressed.reaches_edges ? "it reaches the edges"
                                               : "it covers " + format_percent(pressed.coverage) + " of the tray"));
}

PartWords words_of_part(const Job& job, std::size_t i, const PartPlan& plan, UnitChoice units) {
  const RecipePart& part = job.parts[i];
  PartWords words;
  words.title = part.name;
  words.factor = format_factor(plan.factor);
  words.total = "makes " + mass(plan.mass, units);
  for (std::size_t k = 0; k < part.items.size(); ++k) {
    words.items.push_back(line_of(part.items[k], plan.items[k], plan.factor, units));
  }
  if (part.crumbs > 0.0) {
    words.items.push_back({"crumbs", mass(plan.factor * part.crumbs, units), "baked and crumbled beforehand", false});
  }
  if (part.role == Role::kCrumbled) say_tray(words.notes, job, part, plan, units);
  say_whole(words.notes, plan);
  if (std::abs(plan.factor - plan.needed) > kSame * plan.needed) {
    words.notes.push_back(remark("The pans take " + format_factor(plan.needed) + "."));
  }
  if (plan.left > kWorthSaying) words.notes.push_back(figure("Left over", mass(plan.left, units)));
  if (plan.left < -kWorthSaying)
    words.notes.push_back(caution("Short of what the pans take by " + mass(-plan.left, units) + "."));
  const bool matters = part.role == Role::kBase || part.role == Role::kLining || part.role == Role::kFilling;
  if (part.is_density_guessed && matters) {
    words.notes.push_back(remark("Its density is not given, so it is taken without air, " +
                                 format_density(part.density) + "; choose a kind of mixture, or weigh a cupful."));
  }
  return words;
}

std::string title_of(const Job& job, const PanPlan& pan) {
  return counted(pan.count, job.cupboard[pan.own].name);
}

void say_dough(Report& lines, const Job& job, const PanPlan& pan, UnitChoice units) {
  const double cavities = job.cupboard[pan.own].pan.count;
  const std::string each = cavities > 1.0 ? "for each of its " + format_number(cavities, 0) + " cavities" : "";
  const auto say = [&](const char* label, double volume, double thickness, Role role, const char* where) {
    if (volume <= 0.0) return;
    lines.push_back(figure(label, mass(volume * batch_density(job, role), units), each));
    lines.push_back(figure("Press or roll it", format_both_lengths(thickness, units) + " thick", where));
  };
  say("Base", pan.coverage * pan.base_dough, pan.shell.base, Role::kBase,
      pan.coverage < 0.995 ? "" : "on the floor, out to the edge");
  say("Lining", pan.lining_dough, pan.shell.lining, Role::kLining, "on the floor and up the wall");
  if (pan.shell.lining > 0.0 && pan.shell.wall_height) {
    const Lining lining = lining_of(pan.shell, job.cupboard[pan.own].pan);
    lines.push_back(figure("Up the wall to", format_both_lengths(lining.height, units) + " above the pan's floor"));
  }
  if (pan.coverage < 0.995) {
    lines.push_back(caution("So thick, the dough covers only " + format_percent(pan.coverage) + " of the floor."));
  }
}

void say_filling(Report& lines, const Job& job, const PanPlan& pan, UnitChoice units) {
  if (pan.filling <= 0.0) return;
  const bool is_shell = pan.shell.lining > 0.0;  // a base leaves the pan's own rim to measure from
  const std::string rim = is_shell ? "the crust's top" : "the rim";
  const bool brimful = pan.below_rim < 5e-4;
  lines.push_back(figure("Stop pouring",
                         brimful ? "level with " + rim : format_both_lengths(pan.below_rim, units) + " below " + rim,
                         format_both_lengths(pan.fill_height, units) + " deep, " + format_percent(pan.level) +
                             (is_shell ? " of the shell" : " of the pan")));
  const double cavities = job.cupboard[pan.own].pan.count;
  lines.push_back(figure("Filling",
                         mass(cavities * pan.filling * batch_density(job, Role::kFilling), units) + ", " +
                             format_both_volumes(cavities * pan.filling, units),
                         pan.count > 1 ? "in each" : ""));
  if (rise_of_filling(job) > 1.0) {
    lines.push_back(figure("Rises to", format_both_lengths(pan.risen_below_rim, units) + " below " + rim));
  }
}

PanWords words_of_pan(const Job& job, const PanPlan& pan, UnitChoice units) {
  PanWords words;
  words.title = title_of(job, pan);
  say_dough(words.lines, job, pan, units);
  say_filling(words.lines, job, pan, units);
  return words;
}

Report say_left_over(const Job& job, const Plan& plan, UnitChoice units) {
  Report report;
  if (plan.filling_left * 1e3 > kWorthSaying) {
    report.push_back(
        figure("Filling left over", format_both_volumes(plan.filling_left, units) + ", " +
                                        mass(plan.filling_left * batch_density(job, Role::kFilling), units)));
    for (const std::string& small : small_pans_for(job, plan, units)) report.push_back(remark(small));
  }
  for (const ByProduct& left : plan.by_products) {
    const std::string pieces = left.pieces > 0.0 ? format_pieces(left.pieces) + " " : "";
    report.push_back(figure(pieces + left.food, mass(left.mass, units), left.keeps));
  }
  return report;
}

}  // namespace

PlanWords describe_plan(const Job& job, const Plan& plan, UnitChoice units) {
  PlanWords words;
  words.pans = describe_match(job, plan, units);
  for (std::size_t i = 0; i < plan.parts.size(); ++i) {
    words.parts.push_back(words_of_part(job, i, plan.parts[i], units));
  }
  for (const PanPlan& pan : plan.pans) words.in_pans.push_back(words_of_pan(job, pan, units));
  words.left_over = say_left_over(job, plan, units);
  words.open = describe_open(job);
  words.cautions = plan_cautions(job, plan, units);
  return words;
}

}  // namespace tinwright
