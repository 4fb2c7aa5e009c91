// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The weigh check: what the scale should read as each bowl is filled, and what it means when it does not.
#include "app/plan/plan_weigh.h"
#include "app/view/views.h"

namespace tinwright::view {
namespace {

void weigh_bowl(JobForm& form, const Job& job, const Plan& plan, const Bowl& bowl) {
  const std::string at = "page.readings." + std::to_string(bowl.part);
  std::vector<std::string> typed;
  for (std::size_t i = 0; i < bowl.items.size(); ++i) typed.push_back(form.text(at + "." + std::to_string(i)));
  const BowlCheck check = check_bowl(bowl, typed);
  const std::string title = "On the scale: " + job.parts[bowl.part].name;
  begin_region(at, title);
  heading(at + "/title", title, 2);
  if (!check.words.empty()) note(at + "/words", check.is_fine ? NoteKind::kPlain : NoteKind::kCaution, check.words);
  for (std::size_t i = 0; i < bowl.items.size(); ++i) {
    const RecipeItem& item = job.parts[bowl.part].items[bowl.items[i]];
    const double mass = plan.parts[bowl.part].items[bowl.items[i]].mass;
    const std::string path = at + "." + std::to_string(i);
    std::string text = typed[i];
    if (field(path, format_grams(mass) + " " + item.food + ": " + check.expected[i], text,
              {.hint = "not weighed", .problem = check.wrong[i]})) {
      form.put(path, text);
    }
  }
  end_region();
}

}  // namespace

void edit_scale(JobForm& form, const JobAnswer& answer) {
  if (!answer.plan) return;
  begin_region("scale", "My scale");
  heading("scale/title", "My scale", 2);
  form.edit("scale.bowl", "The bowl weighs", "640 g",
            "Leave it empty where the scale is set to zero with the bowl on it.");
  form.edit("scale.step", "It reads to", "1 g");
  remark("scale/about", "Type what the scale shows as you go: a forgotten or doubled ingredient is named.");
  end_region();
  for (const Bowl& bowl : bowls_of(*answer.job, *answer.plan)) {
    next_panel();
    weigh_bowl(form, *answer.job, *answer.plan, bowl);
  }
}

}  // namespace tinwright::view
