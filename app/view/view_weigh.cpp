// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The weigh check: what the scale should read as each bowl is filled, and what it means when it does not.
#include "app/view/views.h"

namespace tinwright::view {
namespace {

void weigh_bowl(JobForm& form, const JobAnswer& answer, std::size_t number) {
  const Bowl& bowl = answer.bowls[number];
  const BowlCheck& check = answer.checks[number];
  const RecipePart& part = answer.job->parts[bowl.part];
  const std::string at = "scale/" + std::to_string(bowl.part);
  const std::string title = "On the scale: " + part.name;
  begin_region(at, title);
  heading(at + "/title", title, 2);
  if (!check.words.empty()) note(at + "/words", check.is_fine ? NoteKind::kPlain : NoteKind::kCaution, check.words);
  for (std::size_t i = 0; i < bowl.items.size(); ++i) {
    const std::string path = reading_path(bowl, i);
    const std::string label =
        format_grams(bowl.question.steps[i].mass) + " " + part.items[bowl.items[i]].food + ": " + check.expected[i];
    std::string text = form.text(path);
    if (field(path, label, text, {.hint = "not weighed", .problem = check.wrong[i]})) form.put(path, text);
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
  for (std::size_t i = 0; i < answer.bowls.size(); ++i) {
    next_panel();
    weigh_bowl(form, answer, i);
  }
}

}  // namespace tinwright::view
