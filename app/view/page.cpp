// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See page.h.
#include "app/view/page.h"

#include <string>

#include "app/plan/examples.h"
#include "app/view/views.h"

namespace tinwright::view {
namespace {

constexpr float kLeastColumn = 19.0f;  // [em] narrower columns make the forms cramped
constexpr int kMostColumns = 3;

/// A panel with its title above what `draw` puts in it; says what `draw` says.
template <class Draw>
bool card(const std::string& key, Text title, const Draw& draw) {
  begin_region(key, title);
  heading(key + "/title", title, 2);
  const bool changed = draw();
  end_region();
  return changed;
}

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

void draw_pictures(const Page& page) {
  card("pictures", "In my pan", [&] {
    if (page.answer.picture) {
      show_section(page.answer, page.bench.units);
      show_from_above(page.answer, page.bench.units);
    } else {
      paragraph("pictures/none", "Once my pan is complete, it is drawn here.");
    }
    return false;
  });
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
  draw_report("swap", "How much to make", page.answer.swap);
  next_column();
  changed |= draw_dough(page);
  next_column();
  changed |= draw_filling(page);
  next_column();
  draw_pictures(page);
  draw_report("cautions", "Take care", page.answer.cautions);
  end_columns();
  if (changed) page.answer = answer_bench(page.bench);
}

}  // namespace tinwright::view
