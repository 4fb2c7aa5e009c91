// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See paper.h.
#include "app/plan/paper.h"

#include <cmath>
#include <utility>

#include "app/plan/html_text.h"
#include "app/plan/paper_sheet.h"
#include "app/quantity/print.h"

namespace tinwright {
namespace {

constexpr double kRoundEnough = 1e-3;  // [m] of difference between length and width

const char* kind_words(const Pan& pan) {
  if (pan.core) return "Ring pan";
  static constexpr const char* kWords[] = {"Round pan",      "Rectangular pan", "Oval pan",
                                           "Pan with sides", "Fluted pan",      "Freeform pan"};
  return kWords[pan.outline.shape.index()];
}

}  // namespace

const std::vector<std::string_view>& paper_size_names() {
  static const std::vector<std::string_view> names{"A4", "Letter"};
  return names;
}

const std::vector<std::string_view>& paper_wish_names() {
  static const std::vector<std::string_view> names{"all", "liner", "dough", "stick"};
  return names;
}

std::string paper_name(const PaperOrder& order) {
  if (!order.pan_name.empty()) return order.pan_name;
  const Outline& outline = order.pan.outline;
  const std::string length = format_length(outline.length, order.units);
  const std::string deep = format_length(depth(order.pan), order.units) + " deep";
  const std::string across = std::abs(outline.length - outline.width) < kRoundEnough
                                 ? length + " across"
                                 : length + " by " + format_length(outline.width, order.units);
  return std::string(kind_words(order.pan)) + ", " + across + ", " + deep;
}

Result<std::vector<PaperSheet>> paper_sheets(const PaperOrder& order) {
  const PaperSet set = paper_set(order);
  const auto layout = lay_out(set.pieces, order.size);
  if (!layout) return layout.problem();
  const std::string name = paper_name(order);
  std::vector<PaperSheet> sheets;
  for (std::size_t i = 0; i < layout->sheets; ++i)
    sheets.push_back(draw_sheet(*layout, i, order.size, name, set.left_out));
  return sheets;
}

std::string paper_page(const PaperOrder& order, const std::vector<PaperSheet>& sheets) {
  const std::string paper = order.size == PaperSize::kA4 ? "210mm 297mm" : "8.5in 11in";
  std::string html =
      "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"/><meta http-equiv=\"Content-Security-Policy\" "
      "content=\"default-src 'none'; style-src 'unsafe-inline'\"/><meta name=\"viewport\" "
      "content=\"width=device-width\"/><title>" +
      html_text("Paper for: " + paper_name(order)) + "</title><style>@page{size:" + paper +
      ";margin:0}\nbody{margin:0;background:#fff;color-scheme:light}\nsvg{overflow:hidden}\n"
      ".sheet>svg{display:block}\n.sheet{break-inside:avoid;break-after:page}\n.sheet:last-child{break-after:auto}\n"
      "@media screen{.sheet{margin:4mm;width:max-content;outline:.3mm solid #666}}</style></head><body><main>";
  for (const PaperSheet& sheet : sheets) html += "<section class=\"sheet\">" + sheet.svg + "</section>";
  return html + "</main></body></html>\n";
}

PaperOrder paper_order(const Job& job, const PanPlan& pan, PaperSize size, UnitChoice units) {
  const OwnPan& own = job.cupboard[pan.own];
  PaperOrder order;
  order.pan_name = own.name;
  order.pan = own.pan;
  order.pans = pan.count;
  order.size = size;
  order.units = units;
  if (pan.shell.is_there()) order.lining = lining_of(pan.shell, own.pan);
  if (pan.filling > 0.0) order.pour_height = pan.fill_height;
  return order;
}

std::optional<PaperOrder> paper_order(const BenchAnswer& answer, PaperSize size, UnitChoice units) {
  if (!answer.my_pan) return std::nullopt;
  PaperOrder order;
  order.pan = *answer.my_pan;
  order.size = size;
  order.units = units;
  if (answer.fill_job) order.lining = answer.fill_job->lining;
  if (!order.lining && answer.press_job && answer.press) order.lining = crust_of(*answer.press_job, *answer.press);
  if (answer.fill) order.pour_height = answer.fill->height;
  return order;
}

Result<std::string> paper_html(const PaperOrder& order) {
  const auto sheets = paper_sheets(order);
  if (!sheets) return sheets.problem();
  return paper_page(order, *sheets);
}

}  // namespace tinwright
