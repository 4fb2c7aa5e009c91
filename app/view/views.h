// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The parts of the page. Each draws its piece of the bench and says whether the cook changed anything; none computes.
#pragma once

#include <string>

#include "app/plan/bench.h"
#include "app/plan/job_answer.h"
#include "app/plan/oven.h"
#include "app/view/controls.h"
#include "app/view/host.h"
#include "app/view/job_form.h"

namespace tinwright::view {

class Grips;  // view_grips.h

/// The form of one pan; `prefix` ("my_pan.") is both the scope of its keys and where its problems are looked up.
bool edit_pan(const std::string& prefix, PanEntry& entry, const BenchAnswer& answer);
/// The same without what the pan holds.
bool edit_pan_entry(const std::string& prefix, PanEntry& entry, const Texts& problems);
bool edit_dough(DoughEntry& dough, const BenchAnswer& answer);
bool edit_filling(FillingEntry& filling, const BenchAnswer& answer);

/// The oven's programme, what goes in, and what follows.
bool edit_oven(OvenEntry& oven, const OvenAnswer& answer, bool has_recipe_pan);

/// A text of `texts` as a field, with what `problems` hold for it.
bool edit_text(const std::string& prefix, const std::string& path, Text label, Texts& texts, const Texts& problems,
               FieldOptions options);

/// Keeps each number and the unit behind it on one line.
std::string kept_together(const std::string& text);

/// Figures as answers, remarks and cautions as notes. Only the first figure is large, if any.
enum class FirstFigure { kLarge, kLikeOthers };
void show_report(Key key, const Report& report, FirstFigure first = FirstFigure::kLarge);

/// My pan cut through, to scale, with dough and filling; and its edge enlarged. Without `grips` nothing can be dragged.
void show_section(const BenchAnswer& answer, UnitChoice units, Grips* grips = nullptr);
/// My pan from above, with how far a slab reaches.
void show_from_above(const BenchAnswer& answer, UnitChoice units, Grips* grips = nullptr);

/// Buttons that save a drawing as a file called `name`; `file` gives it as SVG. `title` is the key of the heading that
/// says which drawing it is.
void offer_drawing(Key title, const std::string& name, std::vector<Wish>& wishes,
                   const std::function<std::string()>& file);

/// How my pan is looked at in three dimensions: no part of the question.
struct SolidLook {
  bool is_shown = false;  // where it is behind a toggle
  bool is_cut = true;
  bool is_refused = false;  // by the device, when last asked
  Turn turn{.round = 25.0f, .above = 30.0f};
};
/// My pan in three dimensions; `answer` has a picture, and keeps the bodies.
void show_solid(BenchAnswer& answer, SolidLook& look);

/// How the oven's pictures are looked at: no part of the question, so nothing is worked out anew.
struct OvenLook {
  int moment = -1;  // among the frames; -1: the cook has chosen none, and the end of the oven is shown
  bool is_playing = false;
  double next_at = 0.0;        // [s] on the viewport's clock: when the next moment is due
  bool shows_cooling = false;  // on the curve
};

/// What a cook would say, and the figures; not `is_current` when something was changed since.
void show_oven(const OvenAnswer& answer, bool is_current);
/// The temperatures against time, and those within the food, moment by moment; `is_ring` says that
/// my pan has a core. With `wishes` the curve can be saved.
void show_inside(const OvenAnswer& answer, bool is_ring, OvenLook& look, UnitChoice units,
                 std::vector<Wish>* wishes = nullptr);

/// The temperatures against time; `moment` [s] is marked.
void show_curve(const OvenAnswer& answer, OvenLook& look, double moment, UnitChoice units);
/// The temperatures within the food at the frame of that number.
void show_warmth(const OvenAnswer& answer, bool is_ring, std::size_t frame, UnitChoice units);

/// Forms of a job that keep what was typed exactly, while the document has it as pans. They follow the document:
/// whoever changes it otherwise sets `edition` back to -1.
struct JobForms {
  PanEntry recipe_pan;
  std::vector<PanEntry> cupboard;
  bool has_recipe_pan = false;
  int open_pan = -1;  // of the cupboard, whose form is unfolded; -1: none
  long edition = -1;  // of the workspace they were made from
};

void edit_recipe(JobForm& form, JobForms& forms, const JobAnswer& answer);
void edit_part_at(JobForm& form, std::size_t number);
/// The button that adds one.
void add_part(JobForm& form);
void edit_job_oven(JobForm& form);
void edit_cupboard(JobForm& form, JobForms& forms, const JobAnswer& answer);
/// How much to make, and when it is to be ready.
void edit_wishes(JobForm& form);
/// The scale, and a panel for each bowl; moves on between them.
void edit_scale(JobForm& form, const JobAnswer& answer);
/// What the plan asks of the page: to show how far the oven has come, where it is waited for, and to print the paper
/// templates of the pan of that number.
struct PlanHooks {
  std::function<void()> show_pending;
  std::function<void(std::size_t)> print_paper;
};

/// The plan in panels; moves on between them.
void show_plan(JobAnswer& answer, std::vector<OvenLook>& looks, std::vector<SolidLook>& solids, const PlanHooks& hooks);

}  // namespace tinwright::view
