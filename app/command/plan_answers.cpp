// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See plan_answers.h.
#include "app/command/plan_answers.h"

#include "app/plan/match_words.h"

namespace tinwright {
namespace {

constexpr double kMm = 1e3, kMl = 1e6, kGrams = 1e3;

Json json_of_items(const RecipePart& part, const PartPlan& plan) {
  Json items = Json::array();
  for (std::size_t i = 0; i < part.items.size(); ++i) {
    const RecipeItem& item = part.items[i];
    const ItemPlan& scaled = plan.items[i];
    Json each{{"food", item.food}, {"known", item.known == nullptr ? Json(nullptr) : Json(item.known->id)}};
    each["mass_g"] = scaled.mass > 0.0 ? Json(scaled.mass * kGrams) : Json(nullptr);
    if (item.measure == Measure::kVolume) each["volume_ml"] = scaled.amount * kMl;
    if (item.measure == Measure::kPieces) each["pieces"] = scaled.amount;
    const ItemWords words = words_for_item(item, scaled, plan.factor, UnitChoice::kMetric);
    each["words"] = words.amount + (words.measure.empty() ? "" : " (" + words.measure + ")");
    items.push_back(each);
  }
  return items;
}

Json json_of_part(const Job& job, std::size_t i, const PartPlan& plan) {
  const RecipePart& part = job.parts[i];
  Json json{{"name", part.name},
            {"role", role_names()[static_cast<std::size_t>(part.role)]},
            {"factor", plan.factor},
            {"factor_needed", plan.needed},
            {"mass_g", plan.mass * kGrams},
            {"recipe_mass_g", part.mass * kGrams},
            {"left_g", plan.left * kGrams},
            {"density_g_per_ml", part.density * 1e-3},
            {"ingredients", json_of_items(part, plan)},
            {"whole", Json::array()}};
  for (const WholeFactor& whole : plan.whole) {
    json["whole"].push_back({{"factor", whole.factor}, {"food", whole.food}, {"pieces", whole.pieces}});
  }
  if (part.role == Role::kCrumbled) json["crumbs_g"] = plan.mass * (1.0 - part.bake_loss) * kGrams;
  if (plan.on_tray) {
    json["tray"] = {{"thickness_mm", plan.on_tray->floor_thickness * kMm},
                    {"coverage", plan.on_tray->coverage},
                    {"reaches_edges", plan.on_tray->reaches_edges}};
  }
  return json;
}

void add_bake(Json& json, const PanBake& baked) {
  json["early_min"] = json["time_min"] = json["late_min"] = json["cooling"] = nullptr;
  if (!baked.solved) {
    json["oven"] = baked.why_not;
    return;
  }
  const Json bake = json_of(*baked.job, *baked.solved);
  json["time_min"] = bake.value("reached", true) ? bake["time_min"] : Json(nullptr);
  for (const char* key : {"early_min", "late_min", "core_c", "mean_c", "recipe_core_c", "lost_g", "stages",
                          "oven_change_c", "time_then_min", "trembles_mm", "cooling"}) {
    if (bake.contains(key)) json[key] = bake[key];
  }
}

Json json_of_pan(const Job& job, const PanPlan& pan, const PanBake* baked) {
  const OwnPan& own = job.cupboard[pan.own];
  const double cavities = own.pan.count;
  Json json{{"name", own.name}, {"count", pan.count}, {"cavities", own.pan.count}};
  if (pan.base_dough > 0.0) {
    json["base"] = {{"thickness_mm", pan.shell.base * kMm},
                    {"mass_g", cavities * pan.coverage * pan.base_dough * batch_density(job, Role::kBase) * kGrams},
                    {"coverage", pan.coverage},
                    {"reaches_edges", pan.coverage >= 1.0 - 1e-9}};
  }
  if (pan.lining_dough > 0.0) {
    json["lining"] = {{"floor_thickness_mm", (pan.shell.base + pan.shell.lining) * kMm},
                      {"wall_thickness_mm", pan.shell.lining * kMm},
                      {"wall_height_mm", lining_of(pan.shell, own.pan).height * kMm},
                      {"mass_g", cavities * pan.lining_dough * batch_density(job, Role::kLining) * kGrams}};
  }
  if (pan.filling > 0.0) {
    json["fill"] = {{"fill_height_mm", pan.fill_height * kMm},
                    {"below_rim_mm", pan.below_rim * kMm},
                    {"level", pan.level},
                    {"volume_ml", cavities * pan.filling * kMl},
                    {"mass_g", cavities * pan.filling * batch_density(job, Role::kFilling) * kGrams},
                    {"cavity_volume_ml", brim_volume(pan.cavity) * kMl},
                    {"risen_below_rim_mm", pan.risen_below_rim * kMm},
                    {"overflow_ml", cavities * pan.overflow * kMl}};
  }
  if (baked != nullptr) add_bake(json, *baked);
  return json;
}

Json json_of(const ClockPlan& clock) {
  Json list = Json::array();
  for (std::size_t i = 0; i < clock.tasks.size(); ++i) {
    list.push_back({{"what", clock.tasks[i].label},
                    {"where", clock.tasks[i].place},
                    {"start", format_civil_time(clock.times[i].start)},
                    {"end", format_civil_time(clock.times[i].end)},
                    {"days_before", clock.times[i].days_before},
                    {"at_night", clock.times[i].is_at_night}});
  }
  return list;
}

Json sentences(const Report& report) {
  Json list = Json::array();
  for (const ReportLine& line : report) {
    list.push_back(line.label.empty() ? line.value : line.label + ": " + line.value);
  }
  return list;
}

void add_lines(std::string& text, const Report& report) {
  for (const ReportLine& line : report) {
    if (line.kind == ReportLine::Kind::kFigure) {
      text += "  " + line.label + ": " + line.value + (line.detail.empty() ? "" : "; " + line.detail) + "\n";
    } else {
      text += (line.kind == ReportLine::Kind::kCaution ? "! " : "  ") + line.value + "\n";
    }
  }
}

void add_section(std::string& text, const std::string& title, const Report& report) {
  if (report.empty()) return;
  text += (text.empty() ? "" : "\n") + title + "\n";
  add_lines(text, report);
}

}  // namespace

Json json_of(const Job& job, const Plan& plan, const std::vector<PanBake>& baked, const PlanWords& words,
             const ClockPlan* clock) {
  Json json{{"name", job.name}, {"parts", Json::array()}, {"pans", Json::array()}};
  for (std::size_t i = 0; i < plan.parts.size(); ++i) json["parts"].push_back(json_of_part(job, i, plan.parts[i]));
  for (std::size_t i = 0; i < plan.pans.size(); ++i) {
    json["pans"].push_back(json_of_pan(job, plan.pans[i], i < baked.size() ? &baked[i] : nullptr));
  }
  json["recipe"] = {{"base_thickness_mm", plan.recipe.shell.base * kMm},
                    {"lining_thickness_mm", plan.recipe.shell.lining * kMm},
                    {"fill_height_mm", plan.recipe.fill_height * kMm},
                    {"level", plan.recipe.level},
                    {"overfills", plan.recipe.overfills}};
  json["filling_left_ml"] = plan.filling_left * kMl;
  json["by_products"] = Json::array();
  for (const ByProduct& left : plan.by_products) {
    json["by_products"].push_back({{"food", left.food},
                                   {"mass_g", left.mass * kGrams},
                                   {"pieces", left.pieces > 0.0 ? Json(left.pieces) : Json(nullptr)},
                                   {"keeps", left.keeps}});
  }
  json["clock"] = clock == nullptr ? Json(nullptr) : json_of(*clock);
  json["to_settle"] = sentences(words.open);
  json["warnings"] = sentences(words.cautions);
  return json;
}

Json json_of(const PanMatch& match, UnitChoice units) {
  Json json{{"proven", match.answer.proven}, {"sets", Json::array()}};
  for (const PanSet& set : match.answer.sets) {
    Json each{{"pans", Json::array()}};
    for (const ChosenPan& pan : set.pans) {
      each["pans"].push_back({{"name", match.question.pans[pan.kind].name},
                              {"count", pan.count},
                              {"fill_height_mm", pan.depth * kMm},
                              {"volume_ml", pan.volume * kMl}});
    }
    each["left_ml"] = set.leftover * kMl;
    each["all_in"] = set.all_in();
    each["depth_factor"] = set.depth / match.question.depth;
    each["cost"] = {{"all", set.cost()},
                    {"depth", set.depth_cost},
                    {"left_over", set.leftover_cost},
                    {"spread", set.spread_cost},
                    {"pans", set.pans_cost}};
    each["words"] = match_words(match.question, set, units);
    json["sets"].push_back(each);
  }
  return json;
}

Json json_of(const Job& job, const WeighQuestion& question, const WeighAnswer& answer, std::size_t part) {
  static constexpr const char* kVerdicts[] = {"all_there", "likely", "cannot_tell", "nothing_explains"};
  static constexpr const char* kSlips[] = {"left_out", "twice", "half", "bowl"};
  Json json{{"part", job.parts[part].name},
            {"after", question.steps[question.readings.back().after].label},
            {"expected_g", answer.expected * kGrams},
            {"reads_g", question.readings.back().mass * kGrams},
            {"difference_g", answer.difference * kGrams},
            {"uncertainty_g", answer.uncertainty * kGrams},
            {"verdict", kVerdicts[static_cast<std::size_t>(answer.verdict)]},
            {"explanations", Json::array()}};
  for (const Explanation& each : answer.explanations) {
    Json slips = Json::array();
    for (const Slip& slip : each.slips) {
      const bool is_bowl = slip.kind == SlipKind::kBowl;
      slips.push_back({{"what", is_bowl ? "the bowl" : question.steps[slip.step].label},
                       {"how", kSlips[static_cast<std::size_t>(slip.kind)]}});
    }
    json["explanations"].push_back(
        {{"slips", slips}, {"probability", each.probability}, {"change_g", each.change * kGrams}});
  }
  json["words"] = weigh_words(question, answer);
  return json;
}

std::string text_of(const PlanWords& words) {
  std::string text;
  add_section(text, "My pans", words.pans);
  for (const PartWords& part : words.parts) {
    text += "\n" + part.title + ", " + part.factor + ", " + part.total + "\n";
    for (const ItemLine& item : part.items) {
      text += "  " + item.amount + "  " + item.food + (item.detail.empty() ? "" : "  (" + item.detail + ")") +
              (item.is_open ? "  ?" : "") + "\n";
    }
    add_lines(text, part.notes);
  }
  for (const PanWords& pan : words.in_pans) {
    add_section(text, pan.title, pan.lines);
    if (!pan.oven.empty())
      text += "  " + pan.oven + (pan.oven_detail.empty() ? "" : "  (" + pan.oven_detail + ")") + "\n";
    add_lines(text, pan.oven_lines);
  }
  add_section(text, "When to do what", words.clock);
  add_section(text, "Left over", words.left_over);
  add_section(text, "To settle", words.open);
  add_section(text, "Take care", words.cautions);
  return text;
}

}  // namespace tinwright
