// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See plan_oven.h.
#include "app/plan/plan_oven.h"

#include <algorithm>

#include "app/quantity/parse.h"
#include "app/quantity/print.h"

namespace tinwright {
namespace {

constexpr const char* kUsualStart = "20 C";

/// The heaviest part of that role.
std::optional<std::size_t> heaviest(const Job& job, Role role) {
  std::optional<std::size_t> found;
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    if (job.parts[i].role != role) continue;
    if (!found || job.parts[i].mass > job.parts[*found].mass) found = i;
  }
  return found;
}

std::optional<std::size_t> crust_part(const Job& job) {
  const auto lining = heaviest(job, Role::kLining);
  return lining ? lining : heaviest(job, Role::kBase);
}

bool has_filling(const Job& job) {
  return heaviest(job, Role::kFilling).has_value();
}

/// What a part is to the heat solver: its own composition, else its mixture of the catalogue.
bool add_substance(Fields& fields, const std::string& path, const RecipePart& part) {
  if (!part.composition) {
    if (part.mixture == nullptr) return false;
    fields[path] = {part.mixture->id};
    return true;
  }
  fields[path] = {"", JsonNode::Kind::kObject};
  const Composition& own = *part.composition;
  const auto add = [&](const char* name, double share) { fields[path + "." + name] = {plain_number(share, 6)}; };
  add("water", own.water);
  add("protein", own.protein);
  add("fat", own.fat);
  add("carbohydrate", own.carbohydrate);
  add("fibre", own.fibre);
  add("ash", own.ash);
  add("air", own.air);
  add("sugar", own.sugar.value_or(0.0));
  return true;
}

/// The recipe's rack, refrigerator or freezer, from its rests after the oven.
void add_cooling(Fields& fields, const Job& job) {
  fields["cool"] = {"", JsonNode::Kind::kObject};
  for (const Rest& rest : job.rests) {
    if (!rest.is_after_oven) continue;
    if (rest.where == "room" && fields.count("cool.rack") == 0) {
      fields["cool.rack"] = {plain_number(rest.least / 60.0, 3) + " min"};
    }
    if (rest.where == "refrigerator") fields["cool.store"] = {"4 C"};
    if (rest.where == "freezer") fields["cool.store"] = {"-18 C"};
  }
}

/// The recipe's stages. Of "35 to 40 min" the middle is meant: it is where the band is laid around.
void add_stages(Fields& fields, const Fields& oven, const std::string& path) {
  fields[path] = {"", JsonNode::Kind::kArray};
  for (const auto& [name, field] : oven) {
    fields.try_emplace(path + name, field);
    const std::string end = ".up_to";
    if (!name.ends_with(end)) continue;
    const std::string from = name.substr(0, name.size() - end.size()) + ".for";
    const auto least = oven.count(from) > 0 ? parse_quantity(oven.at(from).text, Dimension::kDuration)
                                            : parse_quantity("", Dimension::kDuration);
    const auto most = parse_quantity(field.text, Dimension::kDuration);
    if (least && most && *most > *least) fields[path + from] = {plain_number((*least + *most) / 120.0, 6) + " min"};
  }
}

void note_faults(FieldReader& reader, const std::vector<Fault>& faults) {
  for (const Fault& fault : faults) {
    std::string place = fault.place;
    for (const char* stages : {"recipe.stages", "stages"}) {
      if (place.rfind(stages, 0) != 0) continue;
      place = "recipe.oven" + place.substr(std::string(stages).size());
      break;
    }
    if (place == "start") place = "recipe.start";
    reader.fault(fault.code, place, fault.message);
  }
}

}  // namespace

std::size_t baked_part(const Job& job) {
  for (const Role role : {Role::kFilling, Role::kBase, Role::kLining}) {
    if (const auto part = heaviest(job, role)) return *part;
  }
  return 0;
}

std::optional<BakePans> bake_pans(const Job& job, const Plan& plan, const PanPlan& pan, std::string& why) {
  BakePans pans;
  pans.mine.pan = job.cupboard[pan.own].pan;
  const bool is_filled = has_filling(job);
  if (is_filled) {
    pans.mine.is_lined = pan.shell.is_there();
    pans.mine.lining = lining_of(pan.shell, pans.mine.pan);
    pans.mine.fill_height = pan.fill_height;
  } else if (pan.shell.base > 0.0 && pan.shell.lining <= 0.0) {
    pans.mine.fill_height = pan.shell.base;
  } else {
    why = "An empty shell is baked by eye: the oven's time is worked out for a filled one, or for dough on a floor.";
    return std::nullopt;
  }
  if (!job.recipe_pan) return pans;
  FilledPan recipe;
  recipe.pan = *job.recipe_pan;
  recipe.is_lined = pans.mine.is_lined;
  recipe.lining = lining_of(plan.recipe.shell, recipe.pan);
  recipe.fill_height = is_filled ? plan.recipe.fill_height : plan.recipe.shell.base;
  pans.recipe = recipe;
  return pans;
}

PanBake bake_pan(FieldReader& reader, const Job& job, const Plan& plan, const PanPlan& pan, const Progress& progress) {
  PanBake baked;
  const auto pans = bake_pans(job, plan, pan, baked.why_not);
  if (!pans) return baked;
  Fields fields;
  const RecipePart& food = job.parts[baked_part(job)];
  const auto crust = crust_part(job);
  if (!add_substance(fields, "fill.substance", food) ||
      (pans->mine.is_lined && !add_substance(fields, "lining.substance", job.parts[*crust]))) {
    baked.why_not = "The oven's time needs to know what goes in: choose a kind of mixture for \"" + food.name +
                    "\", or settle its ingredients.";
    return baked;
  }
  const Fields start = reader.below("recipe.start");
  fields["start"] = start.count("") > 0 ? start.at("") : Field{kUsualStart};
  fields["report_every"] = {"1 min"};
  add_stages(fields, reader.below("recipe.oven"), pans->recipe ? "recipe.stages" : "stages");
  add_cooling(fields, job);
  FieldReader own(fields);
  baked.job = read_bake_job(own, "", *pans);
  if (baked.job && food.mixture != nullptr) {  // when it is done, and whether it has to be kept cold
    baked.job->fill.mixture = food.mixture;
    baked.job->egg_or_dairy = food.mixture->egg_or_dairy && food.mixture->use == MixtureUse::kFilling;
  }
  if (baked.job) baked.solved = solve_bake(own, *baked.job, "", progress);
  note_faults(reader, own.faults());
  if (!own.faults().empty()) baked.why_not = own.faults().front().message;
  return baked;
}

std::vector<PanBake> bake_plan(FieldReader& reader, const Job& job, const Plan& plan) {
  std::vector<PanBake> baked;
  if (!job.has_oven) return baked;
  for (const PanPlan& pan : plan.pans) {
    baked.push_back(bake_pan(reader, job, plan, pan));
    if (!reader.faults().empty()) break;
  }
  return baked;
}

}  // namespace tinwright
