// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See paper_label.h.
#include "app/plan/paper_label.h"

#include <algorithm>

#include "app/quantity/utf8.h"

namespace tinwright {
namespace {

constexpr double kLetterWidth = 0.54;  // [-] of the letters' size: wide for Arial's mean, from memory
constexpr double kLineHeight = 1.25;   // [-]
constexpr double kBlank = 1.0;         // [mm] round the box

std::size_t characters(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size(); ++count)
    at += std::max<std::size_t>(1, first_character(text.substr(at)).bytes);
  return count;
}

void wrap(const std::string& text, std::size_t widest, std::vector<std::string>& lines) {
  std::string line;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    const std::string word = text.substr(at, end - at);
    if (!line.empty() && characters(line) + 1 + characters(word) > widest) {
      lines.push_back(line);
      line.clear();
    }
    line += (line.empty() ? "" : " ") + word;
    at = end + 1;
  }
  if (!line.empty()) lines.push_back(line);
}

PaperLabel written_out(const std::string& head, const std::vector<std::string>& sentences, std::size_t widest,
                       double letters, bool is_upright) {
  PaperLabel label;
  label.letters = letters;
  label.is_upright = is_upright;
  wrap(head, widest, label.lines);
  for (const std::string& sentence : sentences) wrap(sentence, widest, label.lines);
  std::size_t longest = 0;
  for (const std::string& line : label.lines) longest = std::max(longest, characters(line));
  label.size = glm::dvec2(kLetterWidth * letters * static_cast<double>(longest) + 2.0 * kBlank,
                          kLineHeight * letters * static_cast<double>(label.lines.size()) + 2.0 * kBlank);
  return label;
}

}  // namespace

std::string clipped(const std::string& text, std::size_t most) {
  if (characters(text) <= most) return text;
  std::size_t at = 0;
  for (std::size_t i = 0; i + 1 < most; ++i) {
    at += std::max<std::size_t>(1, first_character(std::string_view(text).substr(at)).bytes);
  }
  return text.substr(0, at) + "…";
}

std::optional<PaperLabel> place_label(const PaperMask& mask, const std::string& head,
                                      const std::vector<std::string>& sentences) {
  struct Way {
    double letters;
    bool is_upright;
  };
  for (const auto& [letters, is_upright] : {Way{3.6, false}, Way{3.0, false}, Way{2.6, false}, Way{3.0, true},
                                            Way{2.6, true}, Way{2.2, false}, Way{2.2, true}}) {
    for (const std::size_t widest : {44U, 60U, 34U, 90U, 26U, 20U}) {
      const PaperLabel label = written_out(head, sentences, widest, letters, is_upright);
      const auto at = mask.room_for(is_upright ? glm::dvec2(label.size.y, label.size.x) : label.size);
      if (!at) continue;
      PaperLabel placed = label;
      placed.at = *at;
      return placed;
    }
  }
  return std::nullopt;
}

}  // namespace tinwright
