// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A plan shown: which pans, how much of each part, what goes on in each pan, what is left.
#include "app/view/views.h"

namespace tinwright::view {
namespace {

void show_part(const PartWords& part, const std::string& key) {
  begin_region(key, "Make: " + part.title);
  heading(key + "/title", part.title, 2);
  fact(key + "/factor", "Of the recipe's amount", part.factor, part.total);
  std::vector<std::vector<std::string>> rows;
  for (const ItemLine& item : part.items) {
    rows.push_back({kept_together(item.food + (item.is_open ? " (?)" : "")), kept_together(item.amount),
                    kept_together(item.detail)});
  }
  static const TableColumn columns[] = {{"Ingredient"}, {"Take", Align::kRight}, {"That is"}};
  if (!rows.empty()) table(key + "/items", part.title, columns, rows);
  show_report(key + "/notes", part.notes, FirstFigure::kLikeOthers);
  end_region();
}

/// The oven's line of a pan is of what was there before the last change.
bool is_old(const JobAnswer& answer, std::size_t number) {
  return answer.is_baking() && number >= answer.fresh && number < answer.ovens.size();
}

void show_pan(JobAnswer& answer, std::size_t number, SolidLook& solid, const PlanHooks& hooks) {
  const PanWords& pan = answer.words.in_pans[number];
  const std::string key = "plan/in" + std::to_string(number);
  const KeyScope scope(key);
  begin_region(key, "In: " + pan.title);
  heading(key + "/title", pan.title, 2);
  show_report(key + "/lines", pan.lines, FirstFigure::kLikeOthers);
  if (answer.pictures[number].picture) {
    show_section(answer.pictures[number], answer.units);
    toggle("solid/shown", "Show it in three dimensions", solid.is_shown);
    if (solid.is_shown) show_solid(answer.pictures[number], solid);
  }
  if (!pan.oven.empty())
    view::answer(key + "/oven", "How long", kept_together(pan.oven), kept_together(pan.oven_detail));
  if (is_old(answer, number)) note(key + "/old", NoteKind::kPlain, "The oven's time is from before the last change.");
  if (answer.is_baking() && number == answer.fresh) hooks.show_pending();
  show_report(key + "/oven_lines", pan.oven_lines, FirstFigure::kLikeOthers);
  if (button(key + "/paper", "Print its paper templates", ButtonLook::kQuiet)) hooks.print_paper(number);
  end_region();
}

/// Its temperatures, moment by moment.
void show_heat(const JobAnswer& answer, std::size_t number, OvenLook& look) {
  const std::string key = "plan/heat" + std::to_string(number);
  const std::string title = "Inside, as time goes by: " + answer.words.in_pans[number].title;
  const KeyScope scope(key);
  begin_region(key, title);
  heading(key + "/title", title, 2);
  if (is_old(answer, number)) note(key + "/old", NoteKind::kPlain, "This is from before the last change.");
  const BenchAnswer& picture = answer.pictures[number];
  show_inside(answer.ovens[number], picture.picture && !picture.picture->core.empty(), look, answer.units);
  end_region();
}

void show_card(const std::string& key, Text title, const Report& report) {
  if (report.empty()) return;
  begin_region(key, title);
  heading(key + "/title", title, 2);
  show_report(key, report, FirstFigure::kLikeOthers);
  end_region();
}

void show_clock(const JobAnswer& answer) {
  Report clock = answer.words.clock;
  if (!clock.empty() && answer.is_baking()) {
    clock.push_back({ReportLine::Kind::kRemark, "", "The oven's time is not in it yet; these times will move.", ""});
  }
  show_card("plan/clock", "When to do what", clock);
}

}  // namespace

void show_plan(JobAnswer& answer, std::vector<OvenLook>& looks, std::vector<SolidLook>& solids,
               const PlanHooks& hooks) {
  if (!answer.plan) {
    begin_region("plan", "The plan");
    heading("plan/title", "The plan", 2);
    note("plan/none", NoteKind::kPlain, "The plan comes once what is marked is settled.");
    if (!answer.problems.empty()) {
      const auto& [path, message] = *answer.problems.begin();
      note("plan/first", NoteKind::kError, place_in_words(answer.fields, path) + ": " + message);
    }
    end_region();
    return;
  }
  show_card("plan/pans", "My pans", answer.words.pans);
  looks.resize(answer.words.in_pans.size());
  solids.resize(answer.words.in_pans.size());
  for (std::size_t i = 0; i < answer.words.in_pans.size(); ++i) {
    next_panel();
    show_pan(answer, i, solids[i], hooks);
    if (i >= answer.ovens.size() || answer.ovens[i].curve.empty()) continue;
    next_panel();
    show_heat(answer, i, looks[i]);
  }
  for (std::size_t i = 0; i < answer.words.parts.size(); ++i) {
    next_panel();
    show_part(answer.words.parts[i], "plan/part" + std::to_string(i));
  }
  next_panel();
  show_clock(answer);
  next_panel();
  show_card("plan/left", "Left over", answer.words.left_over);
  next_panel();
  show_card("plan/open", "To settle", answer.words.open);
  next_panel();
  show_card("plan/cautions", "Take care", answer.words.cautions);
}

}  // namespace tinwright::view
