// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See drawing_sheet.h.
#include "app/plan/drawing_sheet.h"

#include <algorithm>
#include <vector>

#include "app/plan/html_text.h"

namespace tinwright {
namespace {

constexpr std::size_t kLineLetters = 78;        // that fit beside each other
constexpr double kLine = 1.45 * kSheetLetters;  // [mm]

std::vector<std::string> lines_of(const std::string& words) {
  std::vector<std::string> lines{""};
  for (std::size_t at = 0; at < words.size();) {
    const std::size_t end = std::min(words.find(' ', at), words.size());
    if (!lines.back().empty() && lines.back().size() + end - at > kLineLetters) lines.emplace_back();
    lines.back() += (lines.back().empty() ? "" : " ") + words.substr(at, end - at);
    at = end + 1;
  }
  return lines;
}

}  // namespace

std::string SheetScale::path(const Loops& loops, bool is_closed) const {
  std::string data;
  for (const Loop& loop : loops) {
    const char* command = "M";
    for (const glm::dvec2 p : loop) {
      const glm::dvec2 on_sheet = at(p.x, p.y);
      data += command + svg_number(on_sheet.x) + " " + svg_number(on_sheet.y);
      command = "L";
    }
    if (is_closed && !loop.empty()) data += "Z";
  }
  return data;
}

std::string sheet(SvgPen& pen, const std::string& title, const std::string& words, double bottom) {
  pen.text(kSheetMargin, kSheetMargin + 5.0, 5.2, SvgPen::Anchor::kStart, title, true);
  double y = bottom + kLine;
  for (const std::string& line : lines_of(words)) {
    pen.text(kSheetMargin, y, kSheetLetters, SvgPen::Anchor::kStart, line);
    y += kLine;
  }
  const std::string width = svg_number(kSheetWidth), height = svg_number(y - kLine + kSheetMargin);
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" "
         "aria-labelledby=\"t w\" width=\"" +
         width + "mm\" height=\"" + height + "mm\" viewBox=\"0 0 " + width + " " + height +
         "\" font-family=\"sans-serif\"><title id=\"t\">" + html_text(title) + "</title><desc id=\"w\">" +
         html_text(words) + "</desc>" + svg_hatch("h", 1.0) + "<path fill=\"#fff\" d=\"M0 0h" + width + "v" + height +
         "H0z\"/>" + pen.take() + "</svg>\n";
}

}  // namespace tinwright
