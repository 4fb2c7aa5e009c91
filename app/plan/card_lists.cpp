// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See card_lists.h.
#include "app/plan/card_lists.h"

#include <algorithm>

#include "app/plan/html_text.h"
#include "app/quantity/print.h"

namespace tinwright {
namespace {

constexpr std::size_t kLongAmount = 11;  // bytes; longer ones are set smaller
constexpr std::size_t kLongPart = 14;    // items; longer parts may break over columns and pages

std::string small_text(const std::string& text) {
  return text.empty() ? "" : " <small>" + html_text(text) + "</small>";
}

const Bowl* bowl_of(const std::vector<Bowl>& bowls, std::size_t part) {
  const auto found = std::find_if(bowls.begin(), bowls.end(), [&](const Bowl& bowl) { return bowl.part == part; });
  return found == bowls.end() ? nullptr : &*found;
}

/// Whether the recipe's steps say what goes into that bowl: then its readings stand with them, else in the list.
bool is_in_steps(const Bowl& bowl) {
  return std::any_of(bowl.in_step.begin(), bowl.in_step.end(), [](const auto& step) { return step.has_value(); });
}

/// What the scale shows once the bowl's item number `place` is in.
std::string reading_after(const Bowl& bowl, std::size_t place) {
  return "scale " + format_grams(expected_readings(bowl.question)[place]);
}

std::string item_row(const ItemLine& item, const std::string& reading) {
  const std::string amount_class = item.amount.size() > kLongAmount ? " class=\"wordy\"" : "";
  std::string detail = item.detail;
  if (!reading.empty()) detail += (detail.empty() ? "" : " · ") + reading;
  return "<tr><td" + amount_class + "><label><input type=\"checkbox\" aria-label=\"" + html_text(item.food) +
         "\"/><span>" + foreign_text(item.amount) + "</span></label></td><th scope=\"row\">" + foreign_text(item.food) +
         (item.is_open ? " <b>?</b>" : "") + small_text(detail) + "</th></tr>";
}

std::string part_html(const PartWords& part, const Bowl* bowl) {
  std::string html = "<article class=\"part" + std::string(part.items.size() > kLongPart ? " long" : "") +
                     "\"><h3><b class=\"factor\">" + html_text(part.factor) + "</b>" + foreign_text(part.title) +
                     small_text(part.total) + "</h3><table><thead><tr><th scope=\"col\">Weigh or count</th><th " +
                     "scope=\"col\">Food, in kitchen measures</th></tr></thead><tbody>";
  const bool has_readings = bowl != nullptr && bowl->items.size() > 1 && !is_in_steps(*bowl);
  for (std::size_t i = 0; i < part.items.size(); ++i) {
    std::string reading;
    for (std::size_t place = 1; has_readings && place < bowl->items.size(); ++place) {
      if (bowl->items[place] == i) reading = reading_after(*bowl, place);
    }
    html += item_row(part.items[i], reading);
  }
  return html + "</tbody></table>" + figures_html(part.notes, "") + "</article>";
}

/// "290 g plain flour · 145 g butter · scale 435 g".
std::string adds_html(const RecipeStep& step, const RecipePart& part, const PartWords& words) {
  std::string html;
  for (const std::string& food : step.adds) {
    const auto found =
        std::find_if(part.items.begin(), part.items.end(), [&](const RecipeItem& item) { return item.food == food; });
    const auto place = static_cast<std::size_t>(found - part.items.begin());
    html += html.empty() ? "" : " · ";
    if (found != part.items.end() && place < words.items.size()) {
      html += "<b>" + html_text(words.items[place].amount) + "</b> ";
    }
    html += foreign_text(food);
  }
  return html;
}

std::string step_html(const Job& job, std::size_t number, const PlanWords& words, const std::vector<Bowl>& bowls) {
  const RecipeStep& step = job.steps[number];
  std::string adds;
  if (step.part && *step.part < words.parts.size()) {
    adds = adds_html(step, job.parts[*step.part], words.parts[*step.part]);
    if (const Bowl* bowl = bowl_of(bowls, *step.part)) {
      for (std::size_t place = bowl->items.size(); place-- > 0;) {
        if (bowl->in_step[place] != number) continue;
        adds += " → " + reading_after(*bowl, place);
        break;
      }
    }
  }
  return "<li><label><input type=\"checkbox\"/><span>" + foreign_text(step.text) + "</span></label>" +
         (adds.empty() ? "" : "<small>" + adds + "</small>") + "</li>";
}

}  // namespace

std::string figures_html(const Report& report, const std::string& list_class) {
  std::string figures, sentences;
  for (const ReportLine& line : report) {
    if (line.kind == ReportLine::Kind::kFigure) {
      figures += "<div><dt>" + html_text(line.label) + "</dt><dd>" + html_text(line.value) + small_text(line.detail) +
                 "</dd></div>";
    } else {
      const char* tag = line.kind == ReportLine::Kind::kCaution ? "b" : "small";
      sentences += "<p><" + std::string(tag) + ">" + html_text(line.value) + "</" + tag + "></p>";
    }
  }
  if (!figures.empty()) {
    figures = (list_class.empty() ? "<dl>" : "<dl class=\"" + list_class + "\">") + figures + "</dl>";
  }
  return figures + sentences;
}

std::string parts_section(const PlanWords& words, const std::vector<Bowl>& bowls) {
  std::string html = "<section><h2>Weigh out</h2><div class=\"two\">";
  for (std::size_t i = 0; i < words.parts.size(); ++i) html += part_html(words.parts[i], bowl_of(bowls, i));
  return html + "</div></section>";
}

std::string steps_section(const Job& job, const PlanWords& words, const std::vector<Bowl>& bowls) {
  if (job.steps.empty()) return "";
  std::string html = "<section><h2>Steps</h2><ol class=\"two\">";
  for (std::size_t i = 0; i < job.steps.size(); ++i) html += step_html(job, i, words, bowls);
  return html + "</ol></section>";
}

std::string rests_section(const Job& job) {
  if (job.rests.empty()) return "";
  std::string html = "<section class=\"small\"><h2>Rests</h2><ul class=\"two\">";
  for (const Rest& rest : job.rests) {
    std::string time = format_duration(rest.least);
    if (rest.most > rest.least) time += " to " + format_duration(rest.most);
    time += rest.where == "room" ? " in the room" : " in the " + rest.where;
    if (rest.keeps > 0.0) time += "; it may be left " + format_duration(rest.keeps) + " longer";
    html += "<li><label><input type=\"checkbox\"/><span>" + foreign_text(rest.what) + small_text(time) +
            "</span></label></li>";
  }
  return html + "</ul></section>";
}

}  // namespace tinwright
