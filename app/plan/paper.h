// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Paper templates at life size for one pan: parchment liners, the shape to roll dough out to, and a stick to stand in
// the pan. As sheets of A4 or Letter in SVG, and as one page for print.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/plan/bench.h"
#include "app/plan/plan.h"

namespace tinwright {

enum class PaperSize { kA4, kLetter };
const std::vector<std::string_view>& paper_size_names();  // A4 Letter

enum class PaperWish { kAll, kLiner, kDough, kStick };
const std::vector<std::string_view>& paper_wish_names();  // all liner dough stick

struct PaperOrder {
  std::string pan_name;  // anyone's; empty: said by its sizes
  Pan pan;
  int pans = 1;                       // alike, each with pan.count cavities
  std::optional<Lining> lining;       // of dough; it is on the stick, and the dough goes up to its top
  std::optional<double> pour_height;  // [m] above the pan's floor, or above the crust's where lined
  PaperSize size = PaperSize::kA4;
  PaperWish wish = PaperWish::kAll;
  UnitChoice units = UnitChoice::kMetric;
};

/// One sheet, a whole SVG of the paper's size in millimetres; "Sheet 1 of 3".
struct PaperSheet {
  std::string svg, title;
};

/// kTooMuch for a pan so large that its pieces take hundreds of sheets.
Result<std::vector<PaperSheet>> paper_sheets(const PaperOrder& order);

/// The order's sheets as a whole HTML page for print, a sheet of paper for each; well formed as XML too.
std::string paper_page(const PaperOrder& order, const std::vector<PaperSheet>& sheets);

/// The order for one of a plan's pans, with its dough and filling on the stick.
PaperOrder paper_order(const Job& job, const PanPlan& pan, PaperSize size, UnitChoice units);
/// The order for my pan on the bench; nothing while it has none.
std::optional<PaperOrder> paper_order(const BenchAnswer& answer, PaperSize size, UnitChoice units);

/// All of it at once: the page of an order.
Result<std::string> paper_html(const PaperOrder& order);

/// What the pan is called on its pieces: its name, or "Round pan, 24 cm across, 3 cm deep".
std::string paper_name(const PaperOrder& order);

}  // namespace tinwright
