// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The form of the oven, and its answer in words.
#include <algorithm>
#include <cctype>

#include "app/plan/bake_job.h"
#include "app/view/views.h"

namespace tinwright::view {
namespace {

constexpr std::size_t kMostStages = 8;
constexpr const char* kStages = "oven.stages.";
const Labels kAirLabels{"Stays at one temperature", "Goes evenly to another temperature", "Oven off, door shut",
                        "Oven off, door open"};

const std::vector<std::string>& place_labels() {
  static const std::vector<std::string> labels = [] {
    std::vector<std::string> made(place_names().begin(), place_names().end());
    for (std::string& label : made) {
      std::replace(label.begin(), label.end(), '_', ' ');
      if (!label.empty()) label[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(label[0])));
    }
    return made;
  }();
  return labels;
}

/// One stage; `takes_out` becomes true when the cook wants it gone.
bool edit_stage(std::size_t number, StageEntry& stage, const Texts& problems, bool& takes_out) {
  const std::string prefix = kStages + std::to_string(number) + ".";
  const std::string name = "Stage " + std::to_string(number + 1);
  bool changed = false;
  begin_region(prefix, name, RegionLook::kPlain);
  int place = static_cast<int>(stage.place);
  if (choice(prefix + "in", name + " in the", place, place_labels())) {
    stage.place = static_cast<std::size_t>(place);
    changed = true;
  }
  int air = static_cast<int>(stage.air);
  if (choice(prefix + "does", "Its air", air, kAirLabels)) {
    stage.air = static_cast<AirEntry>(air);
    changed = true;
  }
  const bool is_off = stage.air == AirEntry::kOffShut || stage.air == AirEntry::kOffOpen;
  begin_columns(2);
  if (stage.air == AirEntry::kRamp) {
    changed |= edit_text(prefix, "from", "From", stage.texts, problems, {.hint = "220 C"});
    next_column();
  }
  if (!is_off) {
    const Text label = stage.air == AirEntry::kRamp ? "To" : "Air temperature";
    changed |= edit_text(prefix, "air", label, stage.texts, problems, {.hint = "180 C"});
    next_column();
  }
  changed |= edit_text(prefix, "for", "For", stage.texts, problems, {.hint = "35 min"});
  if (stage.has_bath) {
    next_column();
    changed |= edit_text(prefix, "bath", "Water round the pan at", stage.texts, problems, {.hint = "85 C"});
  }
  end_columns();
  changed |= toggle(prefix + "has_bath", "The pan stands in water", stage.has_bath);
  takes_out = button(prefix + "out", "Take stage " + std::to_string(number + 1) + " out", ButtonLook::kQuiet);
  end_region();
  return changed;
}

bool edit_stages(OvenEntry& oven, const Texts& problems) {
  bool changed = false;
  std::size_t taken_out = oven.stages.size();
  for (std::size_t i = 0; i < oven.stages.size(); ++i) {
    bool takes_out = false;
    changed |= edit_stage(i, oven.stages[i], problems, takes_out);
    if (takes_out) taken_out = i;
  }
  if (taken_out < oven.stages.size()) {
    oven.stages.erase(oven.stages.begin() + static_cast<std::ptrdiff_t>(taken_out));
    changed = true;
  }
  if (button("oven/add", "Add a stage", ButtonLook::kPlain, oven.stages.size() < kMostStages)) {
    StageEntry stage = oven.stages.empty() ? StageEntry{} : oven.stages.back();
    stage.texts.erase("for");
    stage.air = AirEntry::kHeld;
    oven.stages.push_back(stage);
    changed = true;
  }
  return changed;
}

}  // namespace

bool edit_oven(OvenEntry& oven, const OvenAnswer& answer, bool has_recipe_pan) {
  remark("oven/about", oven.stages.empty() ? "Add the recipe's stages to see how long it takes in your pan."
                       : has_recipe_pan    ? "As the recipe has it for its own pan."
                                           : "As you bake it in your pan.");
  bool changed = edit_stages(oven, answer.problems);
  if (oven.stages.empty()) return changed;
  const auto edit = [&](const std::string& name, Text label, Text hint, Text help = {}) {
    changed |= edit_text("oven.", name, label, oven.texts, answer.problems, {.hint = hint, .help = help});
  };
  edit("start", "Food goes in at", "20 C");
  if (has_recipe_pan) {
    edit("recipe_depth", "Filling stands this high in the recipe's pan", "4 cm",
         "Leave it empty: the same amount, poured into the recipe's pan.");
  }
  edit("rack", "Then on a rack for", "3 h", "Leave it empty: until it has cooled.");
  int store = static_cast<int>(oven.store);
  if (choice("oven.store", "After that", store, {"Nowhere cold", "Refrigerator", "Freezer"})) {
    oven.store = static_cast<std::size_t>(store);
    changed = true;
  }
  return changed;
}

void show_oven(const OvenAnswer& answer, bool is_current) {
  const auto problem = answer.problems.find("oven");
  if (problem != answer.problems.end()) note("oven/problem", NoteKind::kError, problem->second);
  if (!answer.sentence.empty()) {
    if (answer.curve.empty()) {
      note("oven/sentence", NoteKind::kPlain, answer.sentence);
    } else {
      view::answer("oven/sentence", "How long", kept_together(answer.sentence));
    }
  }
  if (is_current) {
    remark("oven/state", answer.curve.empty() ? "The answer comes once all it needs is entered and right."
                                              : "Worked out for what is entered now.");
  } else if (!answer.curve.empty()) {
    note("oven/state", NoteKind::kPlain, "This is from before the last change.");
  }
  show_report("oven/report", answer.report, FirstFigure::kLikeOthers);
}

}  // namespace tinwright::view
