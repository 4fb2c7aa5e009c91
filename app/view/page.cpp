// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See page.h.
#include "app/view/page.h"

#include "app/plan/examples.h"
#include "app/view/views.h"

namespace tinwright::view {
namespace {

constexpr float kLeastColumn = 19.0f;  // [em] narrower columns make the forms cramped
constexpr int kMostColumns = 3;

bool draw_heading(Page& page) {
  bool changed = false;
  heading("title", "Tinwright", 1);
  paragraph("purpose",
            "Somebody else's recipe, your own pans: how much to make, how thick it presses, how far up to pour.");
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

bool draw_units(Page& page) {
  int units = static_cast<int>(page.bench.units);
  if (!segments("units", "Measures first in", units, {"Metric", "US"})) return false;
  page.bench.units = static_cast<UnitChoice>(units);
  return true;
}

bool draw_recipe_pan(Page& page) {
  begin_region("recipe", "The recipe's pan");
  heading("recipe/title", "The recipe's pan", 2);
  bool changed = toggle("recipe/has", "The recipe names a pan", page.bench.has_recipe_pan);
  if (page.bench.has_recipe_pan) changed |= edit_pan("recipe_pan.", page.bench.recipe_pan, page.answer);
  end_region();
  return changed;
}

bool draw_my_pan(Page& page) {
  begin_region("mine", "My pan");
  heading("mine/title", "My pan", 2);
  const bool changed = edit_pan("my_pan.", page.bench.my_pan, page.answer);
  end_region();
  return changed;
}

void draw_swap(const Page& page) {
  if (page.answer.swap.empty()) return;
  begin_region("swap", "How much to make");
  heading("swap/title", "How much to make", 2);
  show_report("swap", page.answer.swap);
  end_region();
}

bool draw_dough(Page& page) {
  begin_region("dough", "Dough");
  heading("dough/title", "Dough", 2);
  const bool changed = edit_dough(page.bench.dough, page.answer);
  show_report("dough/answer", page.answer.dough);
  end_region();
  return changed;
}

bool draw_filling(Page& page) {
  begin_region("filling", "Filling");
  heading("filling/title", "Filling", 2);
  const bool changed = edit_filling(page.bench.filling, page.answer);
  show_report("filling/answer", page.answer.filling);
  end_region();
  return changed;
}

void draw_pictures(const Page& page) {
  begin_region("pictures", "In my pan");
  heading("pictures/title", "In my pan", 2);
  if (page.answer.picture) {
    show_section(page.answer, page.bench.units);
    show_from_above(page.answer, page.bench.units);
  } else {
    paragraph("pictures/none", "Once my pan is complete, it is drawn here.");
  }
  end_region();
}

void draw_cautions(const Page& page) {
  if (page.answer.cautions.empty()) return;
  begin_region("cautions", "Take care");
  heading("cautions/title", "Take care", 2);
  show_report("cautions", page.answer.cautions);
  end_region();
}

}  // namespace

Page::Page() : bench(worked_examples().front().bench), answer(answer_bench(bench)) {}

void draw_page(Page& page) {
  bool changed = draw_heading(page);
  const int columns = columns_that_fit(kLeastColumn, kMostColumns);
  begin_columns(columns);
  changed |= draw_units(page);
  end_columns();

  begin_columns(columns);
  changed |= draw_recipe_pan(page);
  next_column();
  changed |= draw_my_pan(page);
  next_column();
  draw_swap(page);
  next_column();
  changed |= draw_dough(page);
  next_column();
  changed |= draw_filling(page);
  next_column();
  draw_pictures(page);
  draw_cautions(page);
  end_columns();
  if (changed) page.answer = answer_bench(page.bench);
}

}  // namespace tinwright::view
