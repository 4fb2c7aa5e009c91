// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A plan in words, section by section, for the command line, the page and the bench card alike.
#pragma once

#include <string>
#include <vector>

#include "app/plan/item_words.h"
#include "app/plan/plan_oven.h"
#include "app/plan/report.h"

namespace tinwright {

/// A line of a part's list.
struct ItemLine {
  std::string food;      // with its remark: "plain flour, sifted"
  std::string amount;    // to weigh or count
  std::string detail;    // the kitchen measure and what it is off by
  bool is_open = false;  // not understood, or of unknown weight: for the cook to settle
};

struct PartWords {
  std::string title;   // "Crust"
  std::string factor;  // "× 0.87"
  std::string total;   // "makes 412 g"
  std::vector<ItemLine> items;
  Report notes;  // crumbs, trays, whole eggs nearby, what is left
};

struct PanWords {
  std::string title;        // "2 × 20 cm springform"
  Report lines;             // dough, thickness, filling, where to stop
  std::string oven;         // a sentence; empty without one
  std::string oven_detail;  // its band, in words
  Report oven_lines;
};

struct PlanWords {
  Report pans;  // which of my pans, and why
  std::vector<PartWords> parts;
  std::vector<PanWords> in_pans;  // as plan.pans
  Report left_over;               // filling, dough, by-products
  Report open;                    // what the cook has to settle
  Report clock;                   // when to do what, where the job says when it is to be ready
  Report cautions;                // each once
};

/// All but the oven and the clock.
PlanWords describe_plan(const Job& job, const Plan& plan, UnitChoice units);

/// Adds what the oven says of the first pans, up to all of them: their times, and its cautions.
void add_oven_words(PlanWords& words, const Job& job, const Plan& plan, const std::vector<PanBake>& baked,
                    UnitChoice units);

}  // namespace tinwright
