// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The recipe's form: its pan, its parts and what goes into them, its oven and rests.
#include <algorithm>

#include "app/files/catalogue.h"
#include "app/plan/bake_job.h"
#include "app/view/views.h"

namespace tinwright::view {
namespace {

constexpr std::size_t kMostParts = 12;  // on the page; a file may hold more
constexpr std::size_t kMostItems = 400;
constexpr std::size_t kMostStages = 8;

const std::vector<std::string> kRoleLabels{"Base, on the floor", "Lining, floor and wall", "Filling", "Topping",
                                           "Baked apart and crumbled into"};

std::vector<std::string> words_of(const std::vector<std::string_view>& names) {
  return {names.begin(), names.end()};
}

/// All mixtures: their ids, and what they are called.
struct MixtureWords {
  std::vector<std::string> ids{""}, labels{"Not said"};
};

const MixtureWords& mixture_words() {
  static const MixtureWords words = [] {
    MixtureWords made;
    for (const Mixture& mixture : catalogue_mixtures()) {
      made.ids.push_back(mixture.id);
      made.labels.push_back(mixture.name);
    }
    return made;
  }();
  return words;
}

void edit_item(JobForm& form, const std::string& at, std::size_t number) {
  begin_region(at, "Ingredient " + std::to_string(number + 1), RegionLook::kPlain);
  begin_columns(2, 0.5f);
  form.edit(at + ".amount", "Amount", "120 g, ½ cup, 2");
  next_column();
  form.edit(at + ".food", "Of", "plain flour");
  end_columns();
  const std::string said = form.text(at + ".said");
  if (!said.empty() && form.text(at + ".amount").empty()) remark(at + ".said", "The recipe says: " + said);
  form.show_problem(at + ".known");
  end_region();
}

/// One list to take any of them out: a button at each would make the form half as long again.
void take_item_out(JobForm& form, const std::string& part, const std::string& list, std::size_t count) {
  std::vector<std::string> labels{"Choose which"};
  for (std::size_t i = 0; i < count; ++i) {
    labels.push_back(std::to_string(i + 1) + ". " + form.text(list + "." + std::to_string(i) + ".food"));
  }
  int chosen = 0;
  if (!choice(part + ".out_item", "Take an ingredient out", chosen, labels, {}, count > 0) || chosen == 0) return;
  form.remove(list + "." + std::to_string(chosen - 1));
}

void edit_items(JobForm& form, const std::string& part) {
  const std::string list = part + ".ingredients";
  const std::size_t count = count_at(form.document(), list);
  for (std::size_t i = 0; i < count; ++i) edit_item(form, list + "." + std::to_string(i), i);
  if (button(part + ".add", "Add an ingredient", ButtonLook::kPlain, count < kMostItems)) {
    JsonNode item = make_object();
    put_text(item, "food", "new ingredient");
    form.append(list, item);
    return;
  }
  take_item_out(form, part, list, count);
}

void edit_details(JobForm& form, const std::string& at, const std::string& role) {
  const bool is_dough = role == "base" || role == "lining";
  form.choose(at + ".mixture", "Kind of mixture", mixture_words().ids, mixture_words().labels, 0);
  if (form.text(at + ".mixture").empty()) form.edit(at + ".density", "Its density", "1.05 g/ml", "May be left empty.");
  if (is_dough || role == "crumbled") {
    form.edit(at + ".thickness", "Thickness the recipe asks for", "1/4 in",
              is_dough ? "Leave it empty: as thick as it comes out in the recipe's pan." : "");
  }
  if (role == "lining")
    form.edit(at + ".wall_height", "Stands up the wall to", "4 cm", "Leave it empty for the whole wall.");
  if (role == "filling") {
    form.edit(at + ".level", "Fills the shell or pan to", "3/4", "Leave it empty: as it stands in the recipe's pan.");
  }
  if (role == "crumbled") {
    form.edit(at + ".into", "Its crumbs go into the part called", "Base");
    form.edit(at + ".bake_loss", "Bakes away", "9 %");
  }
  form.edit(at + ".factor", "Make this much of it, instead of what is worked out", "0.75", "May be left empty.");
}

void edit_part(JobForm& form, std::size_t number) {
  const std::string at = "recipe.parts." + std::to_string(number);
  const std::string name = form.text(at + ".name");
  const std::string title = name.empty() ? "Part " + std::to_string(number + 1) : name;
  begin_region(at, title);
  heading(at + "/title", title, 2);
  form.edit(at + ".name", "What this part is called", "Crust");
  form.choose(at + ".role", "What it is", words_of(role_names()), kRoleLabels, 2);
  edit_details(form, at, form.text(at + ".role"));
  form.show_problem(at + ".mass");
  heading(at + "/items", "Ingredients as the recipe has them", 3);
  edit_items(form, at);
  if (button(at + ".out", "Take this part out", ButtonLook::kQuiet, count_at(form.document(), "recipe.parts") > 1)) {
    form.remove(at);
  }
  end_region();
}

void edit_stage(JobForm& form, const std::string& at, std::size_t number, bool& takes_out) {
  const std::string name = "Stage " + std::to_string(number + 1);
  static const std::vector<std::string> places = words_of(place_names());
  begin_region(at, name, RegionLook::kPlain);
  form.choose(at + ".in", name + " in the", places, places, 0);
  begin_columns(2);
  form.edit(at + ".air", "Air temperature", "180 C");
  next_column();
  form.edit(at + ".for", "For", "35 min");
  end_columns();
  takes_out = button(at + ".out", "Take stage " + std::to_string(number + 1) + " out", ButtonLook::kQuiet);
  end_region();
}

}  // namespace

void edit_recipe(JobForm& form, JobForms& forms, const JobAnswer& answer) {
  begin_region("recipe", "The recipe");
  heading("recipe/title", "The recipe", 2);
  form.edit("recipe.name", "Its name", "Plum tart");
  form.edit("recipe.from", "Where it comes from", "a card in the drawer", "May be left empty.");
  heading("recipe/pan", "The pan it is written for", 3);
  bool has_pan = forms.has_recipe_pan;
  if (toggle("recipe/has", "The recipe names a pan", has_pan)) {
    forms.has_recipe_pan = has_pan;
    if (has_pan) {
      form.put_node("recipe.pan", document_from(pan_fields(forms.recipe_pan, "")));
    } else {
      form.remove("recipe.pan");
    }
  }
  if (forms.has_recipe_pan) {
    if (edit_pan_entry("recipe.pan.", forms.recipe_pan, answer.problems)) {
      form.put_node("recipe.pan", document_from(pan_fields(forms.recipe_pan, "")));
    }
    form.edit("recipe.fills", "One batch really fills this many of them", "1");
  }
  end_region();
}

void edit_part_at(JobForm& form, std::size_t number) {
  edit_part(form, number);
}

void add_part(JobForm& form) {
  const std::size_t count = count_at(form.document(), "recipe.parts");
  if (!button("parts/add", "Add a part", ButtonLook::kPlain, count < kMostParts)) return;
  JsonNode part = make_object();
  put_text(part, "name", "Part " + std::to_string(count + 1));
  put_text(part, "role", "filling");
  put(part, "ingredients", make_array());
  form.append("recipe.parts", part);
}

void edit_job_oven(JobForm& form) {
  begin_region("joboven", "The recipe's oven");
  heading("joboven/title", "The recipe's oven", 2);
  const std::string list = "recipe.oven";
  const std::size_t count = count_at(form.document(), list);
  std::size_t taken_out = count;
  for (std::size_t i = 0; i < count; ++i) {
    bool takes_out = false;
    edit_stage(form, list + "." + std::to_string(i), i, takes_out);
    if (takes_out) taken_out = i;
  }
  if (taken_out < count) form.remove(list + "." + std::to_string(taken_out));
  if (button("joboven/add", "Add a stage", ButtonLook::kPlain, count < kMostStages)) {
    JsonNode stage = make_object();
    put_text(stage, "in", "oven");
    put_text(stage, "air", count == 0 ? "180 C" : form.text(list + "." + std::to_string(count - 1) + ".air"));
    form.append(list, stage);
  }
  if (count > 0) form.edit("recipe.start", "Food goes in at", "20 C");
  form.show_problem(list);
  end_region();
}

}  // namespace tinwright::view
