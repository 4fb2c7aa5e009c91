// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// One pan by itself: its forms, answers and pictures.
#include <string>

#include "app/files/document.h"
#include "app/plan/bench_document.h"
#include "app/plan/drawing_file.h"
#include "app/plan/examples.h"
#include "app/plan/words.h"
#include "app/view/page_parts.h"

namespace tinwright::view {
namespace {

/// A panel with its title above what `draw` puts in it; says what `draw` says.
template <class Draw>
bool card(const std::string& key, Text title, const Draw& draw) {
  begin_region(key, title);
  heading(key + "/title", title, 2);
  const bool changed = draw();
  end_region();
  return changed;
}

bool draw_examples(Page& page) {
  bool changed = false;
  begin_region("examples", "Worked examples", RegionLook::kPlain);
  begin_flow();
  const auto& examples = worked_examples();
  for (std::size_t i = 0; i < examples.size(); ++i) {
    const bool is_open = page.example == static_cast<int>(i);
    if (button("example/" + examples[i].key, examples[i].title, is_open ? ButtonLook::kPrimary : ButtonLook::kPlain)) {
      const UnitChoice units = page.bench.units;
      page.bench = examples[i].bench;
      page.bench.units = units;
      page.example = static_cast<int>(i);
      changed = true;
    }
  }
  end_flow();
  remark("example/story", examples[static_cast<std::size_t>(page.example)].story);
  end_region();
  return changed;
}

bool draw_recipe_pan(Page& page) {
  return card("recipe", "The recipe's pan", [&] {
    bool changed = toggle("recipe/has", "The recipe names a pan", page.bench.has_recipe_pan);
    if (page.bench.has_recipe_pan) changed |= edit_pan("recipe_pan.", page.bench.recipe_pan, page.answer);
    return changed;
  });
}

bool draw_my_pan(Page& page) {
  return card("mine", "My pan", [&] { return edit_pan("my_pan.", page.bench.my_pan, page.answer); });
}

bool draw_dough(Page& page) {
  return card("dough", "Dough", [&] {
    const bool changed = edit_dough(page.bench.dough, page.answer);
    show_report("dough/answer", page.answer.dough);
    return changed;
  });
}

bool draw_filling(Page& page) {
  return card("filling", "Filling", [&] {
    const bool changed = edit_filling(page.bench.filling, page.answer);
    show_report("filling/answer", page.answer.filling);
    return changed;
  });
}

/// A panel of answers; nothing where there are none.
void draw_report(const std::string& key, Text title, const Report& report) {
  if (report.empty()) return;
  card(key, title, [&] {
    show_report(key, report);
    return false;
  });
}

bool draw_pictures(Page& page) {
  return card("pictures", "In my pan", [&] {
    if (!page.answer.picture) {
      paragraph("pictures/none", "Once my pan is complete, it is drawn here.");
      return false;
    }
    Grips grips(page.bench, page.answer, page.grip_look);
    const BenchAnswer& answer = page.answer;
    const UnitChoice units = page.bench.units;
    show_section(answer, units, &grips);
    offer_drawing("section/title", "my-pan-cut", page.wishes, [&] { return section_file(answer, units); });
    show_from_above(answer, units, &grips);
    offer_drawing("above/title", "my-pan-from-above", page.wishes, [&] { return above_file(answer, units); });
    show_solid(page.answer, page.solid_look);
    if (button("pictures/paper", "Print its paper templates")) send_for_file(page, ErrandKind::kPanPaper);
    return grips.changed();
  });
}

/// Has the oven worked out when its time has come.
void keep_oven(Page& page) {
  if (!is_due(page.oven_pending)) return;
  if (page.bench.oven.stages.empty()) {
    page.oven = {};
    page.oven_pending.state = Pending::State::kDone;
    return;
  }
  send_away(page, page.oven_pending,
            {.kind = ErrandKind::kOven, .document = write_compact_json(document_of(page.bench))});
}

bool draw_oven(Page& page) {
  return card("oven", "Oven", [&] { return edit_oven(page.bench.oven, page.oven, page.bench.has_recipe_pan); });
}

void draw_oven_answer(Page& page) {
  if (page.bench.oven.stages.empty()) return;
  card("oven/answer", "In the oven", [&] {
    show_oven(page.oven, page.oven_pending.state == Pending::State::kDone);
    draw_pending(page, "oven/pending", page.oven_pending);
    return false;
  });
}

void draw_inside(Page& page) {
  if (page.bench.oven.stages.empty() || page.oven.curve.empty()) return;
  const bool is_ring = page.answer.picture && !page.answer.picture->core.empty();
  card("inside", "Inside, as time goes by", [&] {
    show_inside(page.oven, is_ring, page.oven_look, page.bench.units, &page.wishes);
    return false;
  });
}

/// Those of the bench, then what only the oven adds.
Report all_cautions(const Page& page) {
  Report all = page.answer.cautions;
  for (const ReportLine& line : page.oven.cautions) {
    if (!is_said(all, line)) all.push_back(line);
  }
  return all;
}

}  // namespace

void draw_bench(Page& page, int columns) {
  keep_oven(page);
  bool changed = draw_examples(page);
  begin_columns(columns);
  changed |= draw_recipe_pan(page);
  next_column();
  changed |= draw_my_pan(page);
  next_column();
  draw_report("swap", "How much to make", page.answer.swap);
  next_column();
  changed |= draw_dough(page);
  next_column();
  changed |= draw_filling(page);
  next_column();
  const bool dragged = draw_pictures(page);
  changed |= dragged;
  next_column();
  changed |= draw_oven(page);
  next_column();
  draw_oven_answer(page);
  next_column();
  draw_inside(page);
  next_column();
  draw_report("cautions", "Take care", all_cautions(page));
  end_columns();
  if (changed) {
    page.answer = answer_bench(page.bench);
    put(page.workspace.document, "page.bench", document_of(page.bench));
    note_edit(page.workspace, dragged ? "page.bench/grip" + std::to_string(page.grip_look.steps) : "page.bench");
  }
  put_off(page.oven_pending, changed);
}

}  // namespace tinwright::view
