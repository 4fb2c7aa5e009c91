// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The page of card.h: heading, then section by section. Parts and steps are in card_lists.cpp.
#include "app/plan/card.h"

#include <algorithm>
#include <iterator>

#include "app/plan/card_drawing.h"
#include "app/plan/card_lists.h"
#include "app/plan/card_style.h"
#include "app/plan/html_text.h"
#include "app/plan/words.h"

namespace tinwright {
namespace {

constexpr int kLinesByHand = 2;
constexpr double kWidePan = 115.0, kSmallPan = 58.0;  // [mm] of paper: over the page, or beside its figures

std::string card_title(const Job& job) {
  return title_of(job).empty() ? "Bench card" : title_of(job);
}

/// "16 × " and the pan's name, kept apart.
std::string pan_title(const Job& job, const PanPlan& pan) {
  const OwnPan& own = job.cupboard[pan.own];
  const std::string holes = own.pan.count > 1 ? " <small>of " + std::to_string(own.pan.count) + "</small>" : "";
  return counted(pan.count, foreign_text(own.name)) + holes;
}

std::string heading(const Job& job, const Plan& plan) {
  std::string about;
  const auto add = [&about](const char* before, const std::string& said) {
    if (!said.empty()) about += (about.empty() ? "" : " · ") + std::string(before) + foreign_text(said);
  };
  if (job.recipe_name != card_title(job)) add("", job.recipe_name);
  add("from ", job.source);
  add("the recipe makes ", job.yield);
  add("on the table ", job.table_at);
  std::string pans;
  for (const PanPlan& pan : plan.pans) pans += (pans.empty() ? "" : " + ") + pan_title(job, pan);
  return "<header><h1>" + foreign_text(card_title(job)) + "</h1><p>" + about + "</p><p class=\"pans\">" + pans +
         "</p></header>";
}

/// A cook at the oven has no use for these.
bool is_for_paper(const ReportLine& line) {
  return line.label != "In my pan" && line.label != "On average" && line.label != "Warmest point" &&
         line.label != "Bakes away";
}

std::string oven_html(const Job& job, const PanPlan& pan, const PanBake& baked, const PanWords& words, UnitChoice units,
                      std::size_t number) {
  const std::string strip = oven_strip(baked, units, number);
  Report lines;
  // With a strip, it says the time; without, the words have to.
  std::copy_if(words.oven_lines.begin(), words.oven_lines.end(), std::back_inserter(lines),
               [&](const ReportLine& line) { return strip.empty() || is_for_paper(line); });
  if (strip.empty() && lines.empty()) return "";
  return "<div><h4>" + pan_title(job, pan) + " in the oven</h4>" + strip + figures_html(lines, "two oven") + "</div>";
}

std::string pans_section(const Job& job, const Plan& plan, const std::vector<PanBake>& baked, const PlanWords& words,
                         UnitChoice units) {
  const bool is_alone = plan.pans.size() == 1;
  std::string html = "<section><h2>In the pans</h2>";
  for (std::size_t i = 0; i < plan.pans.size() && i < words.in_pans.size(); ++i) {
    const PanPlan& pan = plan.pans[i];
    html += "<article class=\"pan\"><div" + std::string(is_alone ? "" : " class=\"side\"") + "><h3>" +
            pan_title(job, pan) + "</h3>" +
            pan_drawing(job.cupboard[pan.own], pan, units, is_alone ? kWidePan : kSmallPan, i) + "<div>" +
            figures_html(words.in_pans[i].lines, "two") + "</div></div>" +
            (i < baked.size() ? oven_html(job, pan, baked[i], words.in_pans[i], units, i) : "") + "</article>";
  }
  return html + "</section>";
}

/// `list_class` "two" for one that has the page's width.
std::string small_section(const char* title, const Report& report, const std::string& list_class) {
  if (report.empty()) return "";
  return "<section class=\"small\"><h2>" + std::string(title) + "</h2>" + figures_html(report, list_class) +
         "</section>";
}

std::string care_section(const Report& cautions) {
  if (cautions.empty()) return "";
  std::string html = "<section class=\"care\"><h2>Take care</h2><ul class=\"two\">";
  for (const ReportLine& line : cautions) {
    const bool is_bold = line.kind == ReportLine::Kind::kCaution;
    html += std::string("<li>") + (is_bold ? "<b>" : "") + html_text(line.value) + (is_bold ? "</b>" : "") + "</li>";
  }
  return html + "</ul></section>";
}

std::string hand_section() {
  std::string html = "<section class=\"hand\"><h2>My notes</h2>";
  for (int i = 0; i < kLinesByHand; ++i) html += "<p></p>";
  return html + "</section>";
}

}  // namespace

std::string card_html(const Job& job, const Plan& plan, const std::vector<PanBake>& baked, const PlanWords& words,
                      UnitChoice units) {
  const std::vector<Bowl> bowls = bowls_of(job, plan);
  return "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"/><meta "
         "http-equiv=\"Content-Security-Policy\" "
         "content=\"default-src 'none'; style-src 'unsafe-inline'\"/><meta name=\"viewport\" "
         "content=\"width=device-width\"/><title>" +
         html_text(card_title(job)) + "</title><style>" + std::string(card_style()) + "</style></head><body><main>" +
         heading(job, plan) + parts_section(words, bowls) + steps_section(job, words, bowls) +
         (words.clock.empty() ? rests_section(job) : small_section("When", words.clock, "lines two")) +
         pans_section(job, plan, baked, words, units) + care_section(words.cautions) + "<div class=\"two last\">" +
         small_section("Left over", words.left_over, "lines") + small_section("To settle", words.open, "lines") +
         hand_section() + "</div></main></body></html>\n";
}

}  // namespace tinwright
