// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A whole recipe: its forms on one side, the plan on the other.
#include "app/plan/demos.h"
#include "app/view/page_parts.h"

namespace tinwright::view {
namespace {

void draw_demos(Page& page) {
  begin_region("demos", "Worked examples", RegionLook::kPlain);
  heading("demos/title", "Worked examples", 3);
  begin_flow();
  const std::string open = text_at(page.workspace.document, "name");
  for (const Demo& demo : demo_jobs()) {
    const bool is_open = demo.name == open;
    if (!button("demo/" + demo.key, demo.title, is_open ? ButtonLook::kPrimary : ButtonLook::kPlain)) continue;
    take_in(page, Source::kJobFile, demo.text);
    page.message = demo.story;
  }
  end_flow();
  end_region();
}

/// Pans' forms anew after anything but their own edits.
void keep_forms(Page& page) {
  if (page.job_forms.edition == page.workspace.edition) return;
  const JsonNode& document = page.workspace.document;
  const auto entry = [&](const std::string& path) {
    const JsonNode* pan = node_at(document, path);
    return pan == nullptr ? PanEntry{} : pan_entry_of(fields_of(*pan));
  };
  page.job_forms.has_recipe_pan = node_at(document, "recipe.pan") != nullptr;
  page.job_forms.recipe_pan = entry("recipe.pan");
  page.job_forms.cupboard.clear();
  for (std::size_t i = 0; i < count_at(document, "cupboard"); ++i) {
    page.job_forms.cupboard.push_back(entry("cupboard." + std::to_string(i) + ".pan"));
  }
  page.job_forms.edition = page.workspace.edition;
}

/// Has the next pan's time in the oven worked out, once the cook has paused.
void keep_baking(Page& page) {
  if (!is_due(page.job_pending)) return;
  if (!page.job.is_baking()) {
    page.job_pending.state = Pending::State::kDone;
    return;
  }
  send_away(page, page.job_pending, {.kind = ErrandKind::kBake, .document = page.job_errand, .pan = page.job.fresh});
}

void draw_recipe_forms(Page& page, JobForm& form) {
  edit_recipe(form, page.job_forms, page.job);
  const std::size_t parts = count_at(form.document(), "recipe.parts");
  for (std::size_t i = 0; i < parts && i < count_at(form.document(), "recipe.parts"); ++i) {
    next_panel();
    edit_part_at(form, i);
  }
  next_panel();
  add_part(form);
  next_panel();
  edit_job_oven(form);
}

void draw_cupboard_forms(Page& page, JobForm& form) {
  edit_cupboard(form, page.job_forms, page.job);
  next_panel();
  edit_wishes(form);
}

/// All of it side by side where there is room; on a phone one piece at a time.
void draw_pieces(Page& page, JobForm& form, int columns) {
  const bool is_narrow = columns == 1;
  const bool is_other = is_narrow && foot_bar("job/shows", "Show", page.job_piece,
                                              {"The plan", "The recipe", "My cupboard", "The scale"});
  if (is_other) surface().show_from(surface().bottom());
  const auto shows = [&](int piece) { return !is_narrow || page.job_piece == piece; };
  if (shows(0)) {
    begin_columns(columns);
    show_plan(page.job, page.job_looks, page.job_solids,
              {[&] { draw_pending(page, "plan/pending", page.job_pending); },
               [&](std::size_t pan) { send_for_file(page, ErrandKind::kPaper, pan); }});
    next_panel();
    draw_files(page);
    end_columns();
  }
  begin_columns(columns);
  if (shows(1)) draw_recipe_forms(page, form);
  if (!is_narrow) next_panel();
  if (shows(2)) draw_cupboard_forms(page, form);
  if (!is_narrow) next_panel();
  if (shows(3)) edit_scale(form, page.job);
  end_columns();
}

}  // namespace

void draw_job(Page& page, int columns) {
  keep_baking(page);
  keep_forms(page);
  draw_demos(page);
  const long before = page.workspace.edition;
  JobForm form(page.workspace, page.job.problems);
  draw_pieces(page, form, columns);
  const bool changed = page.workspace.edition != before;
  if (changed) {
    const bool keeps_forms = page.job_forms.edition == before;
    answer_anew(page);
    if (keeps_forms) page.job_forms.edition = page.workspace.edition;
  }
  put_off(page.job_pending, false);
}

}  // namespace tinwright::view
