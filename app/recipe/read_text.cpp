// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Where the text has headings they decide; elsewhere each line is judged by its look: an ingredient is short, begins
// with an amount or a bullet and is no sentence.
#include "app/recipe/read_text.h"

#include <algorithm>
#include <optional>

#include "app/recipe/line_kind.h"
#include "app/recipe/part_role.h"
#include "app/recipe/plain_text.h"
#include "app/recipe/read_amount.h"
#include "app/recipe/read_ingredient.h"
#include "app/recipe/tokens.h"

namespace tinwright {
namespace {

constexpr std::size_t kLongestTitle = 120;  // bytes
constexpr std::size_t kMostLines = 10000;   // of a text; the whole of a page about a recipe has some hundreds

class Sorter {
 public:
  ListedRecipe sort(std::string_view text) {
    for (std::string& line : lines_of(text)) {  // a page has many empty lines, of which one says as much
      if (!line.empty() || lines_.empty() || !lines_.back().empty()) lines_.push_back(std::move(line));
    }
    if (lines_.size() > kMostLines) {
      recipe_.left_out = lines_.size() - kMostLines;
      lines_.resize(kMostLines);
    }
    for (std::string& line : lines_) line = without_emphasis(line);
    has_sections_ = std::any_of(lines_.begin(), lines_.end(), [](const std::string& line) {
      const auto section = section_of(line);
      return section == TextSection::kIngredients || section == TextSection::kSteps;
    });
    has_list_heading_ = std::any_of(lines_.begin(), lines_.end(), [](const std::string& line) {
      return section_of(line.substr(0, line.find(':'))) == TextSection::kIngredients;
    });
    for (at_ = 0; at_ < lines_.size(); ++at_) take(lines_[at_]);
    flush_step();
    return std::move(recipe_);
  }

 private:
  /// "**Serves:** 6" -> "Serves: 6"; a line that is all emphasis is a heading and stays.
  static std::string without_emphasis(const std::string& line) {
    if (!contains(line, "**") ||
        (starts_with(line, "**") && ends_with(line, "**") && line.find("**", 2) == line.size() - 2))
      return line;
    std::string plain;
    for (std::size_t i = 0; i < line.size(); ++i) {
      if (line[i] == '*' && ((i + 1 < line.size() && line[i + 1] == '*') || (i > 0 && line[i - 1] == '*'))) continue;
      plain += line[i];
    }
    return std::string(trimmed(plain));
  }

  void take(const std::string& line) {
    if (line.empty()) {
      flush_step();
      return;
    }
    if (bare(line).empty()) return;  // a ruled line
    if (const auto section = section_of(line)) {
      flush_step();
      section_ = *section;
      return;
    }
    if (take_inline_list(line)) return;
    if (section_ == TextSection::kTop && recipe_.name.empty() && is_title(line)) {
      take_title(line);
      return;
    }
    if (section_ != TextSection::kSteps && take_fact(line, recipe_)) return;
    switch (section_) {
      case TextSection::kIngredients:
        return take_in_ingredients(line);
      case TextSection::kSteps:
        return take_in_steps(line);
      case TextSection::kEquipment:
        recipe_.equipment.push_back(without_bullet(line));
        return;
      case TextSection::kRest:
        recipe_.unread.push_back(without_bullet(line));
        return;
      case TextSection::kTop:
        return take_by_look(line);
    }
  }

  void take_title(const std::string& line) {
    recipe_.name = bare(line);
    const std::size_t open = line.find('('), close = line.find(')', open == std::string::npos ? 0 : open);
    if (open == std::string::npos || open == 0 || close == std::string::npos || !names_yield(line)) return;
    if (take_fact(line.substr(open + 1, close - open - 1), recipe_)) recipe_.name = bare(line.substr(0, open));
  }

  /// "Plum cake (serves 8)"
  static bool names_yield(const std::string& line) {
    return has_any_word(lower_case(line), "serves|makes") && !read_count(tokens_of(line), 0);
  }

  bool is_title(const std::string& line) const {
    if (line.size() > kLongestTitle || is_part_heading(line))
      return (starts_with(line, "# ") || (starts_with(line, "**") && !is_list_ahead())) && line.size() <= kLongestTitle;
    if (names_yield(line)) return true;
    // Above a list that has its heading no ingredient stands.
    return (has_list_heading_ || !looks_like_ingredient(line)) && !has_step_number(line) && line.back() != '.' &&
           !starts_with(lower_case(line), "http");
  }

  /// "Ingredients: 200 g flour, 2 eggs"; "Method: Mix all."
  bool take_inline_list(const std::string& line) {
    const std::size_t colon = line.find(':');
    if (colon == std::string::npos || colon + 1 >= line.size() || colon > 30) return false;
    const auto section = section_of(line.substr(0, colon));
    if (!section || *section == TextSection::kRest || section_ == *section) return false;
    const std::string rest = std::string(trimmed(std::string_view(line).substr(colon + 1)));
    if (rest.empty() || (*section == TextSection::kSteps && tokens_of(rest).size() < 3)) return false;
    flush_step();
    section_ = *section;
    if (*section != TextSection::kIngredients) {
      if (*section == TextSection::kSteps) take_in_steps(rest);
      if (*section == TextSection::kEquipment) recipe_.equipment.push_back(rest);
      return true;
    }
    for (const std::string& piece : pieces_of(rest)) add_listed(recipe_.parts, piece);
    return true;
  }

  /// "200 g flour, 2 eggs, sugar" as three; one where the pieces do not begin with amounts.
  static std::vector<std::string> pieces_of(const std::string& text) {
    const char separator = text.find(';') != std::string::npos ? ';' : ',';
    std::vector<std::string> pieces;
    std::size_t begin = 0, with_amount = 0;
    while (begin <= text.size()) {
      std::size_t end = text.find(separator, begin);
      const auto is_decimal = [&] {
        return end != std::string::npos && end > 0 && end + 1 < text.size() && text[end - 1] >= '0' &&
               text[end - 1] <= '9' && text[end + 1] >= '0' && text[end + 1] <= '9';
      };
      while (is_decimal()) end = text.find(separator, end + 1);
      const std::string piece =
          one_line(std::string_view(text).substr(begin, end == std::string::npos ? std::string::npos : end - begin));
      if (!piece.empty()) {
        pieces.push_back(piece);
        if (read_count(tokens_of(piece.substr(0, 60)), 0)) ++with_amount;
      }
      if (end == std::string::npos) break;
      begin = end + 1;
    }
    if (separator == ';' || 2 * with_amount >= pieces.size()) return pieces;
    return {text};
  }

  /// "For the drizzle: juice of 1 lemon, 85 g sugar" as a part of its own.
  bool take_inline_part(const std::string& line) {
    const std::size_t colon = line.find(':');
    if (colon == std::string::npos || !starts_with(lower_case(line.substr(0, 8)), "for the ")) return false;
    const std::vector<std::string> pieces = pieces_of(std::string(trimmed(std::string_view(line).substr(colon + 1))));
    if (pieces.size() < 2) return false;
    recipe_.parts.push_back({part_name(line.substr(0, colon)), pieces});
    return true;
  }

  void take_in_ingredients(const std::string& line) {
    if (take_inline_part(without_bullet(line))) return;
    if (is_part_heading(line)) {
      add_listed(recipe_.parts, line);
      return;
    }
    if (heads_a_group(line)) {
      recipe_.parts.push_back({part_name(line), {}});
      return;
    }
    // Steps that follow a list without a heading of their own.
    const bool is_step =
        has_step_number(line) ||
        (line.size() > 60 && begins_with_verb(without_bullet(line)) && line.find(". ") != std::string::npos) ||
        (line.size() > 40 && line.back() == '.' && begins_with_verb(without_bullet(line))) ||
        line.size() > 2 * kLongestIngredientLine;
    const bool has_lines = std::any_of(recipe_.parts.begin(), recipe_.parts.end(),
                                       [](const ListedPart& part) { return !part.lines.empty(); });
    if (is_step && has_lines && !is_listed_with_number(line)) {
      section_ = TextSection::kSteps;
      take_in_steps(line);
      return;
    }
    if (!join_with_last(line)) add_listed(recipe_.parts, has_step_number(line) ? without_number(line) : line);
  }

  /// A word or two alone behind an empty line, with an amount on the very next: "Apples".
  bool heads_a_group(const std::string& line) const {
    const bool is_behind_gap = at_ > 0 && lines_[at_ - 1].empty(), has_next = at_ + 1 < lines_.size();
    if (!is_behind_gap || !has_next || line[0] < 'A' || line[0] > 'Z' || contains(line, ",")) return false;
    const std::vector<Token> tokens = tokens_of(line), next = tokens_of(lines_[at_ + 1]);
    const bool is_short =
        tokens.size() <= 4 && std::all_of(tokens.begin(), tokens.end(), [](const Token& t) { return t.is_word(); });
    return is_short && read_amount(lines_[at_ + 1], next, 0).has_value();
  }

  /// "1. 200 g flour": the list itself is numbered.
  static bool is_listed_with_number(const std::string& line) {
    if (!has_step_number(line)) return false;
    const std::string rest = without_number(line);
    return looks_like_ingredient(rest) && !begins_with_verb(rest);
  }

  /// An amount alone on its line goes with the food on the next; so does a line that was broken.
  bool join_with_last(const std::string& line) {
    if (recipe_.parts.empty() || recipe_.parts.back().lines.empty() || has_bullet(line)) return false;
    std::string& last = recipe_.parts.back().lines.back();
    const std::string text = without_bullet(last);
    if (last.size() > kLongestIngredientLine || line.size() > kLongestIngredientLine) return false;
    const std::vector<Token> tokens = tokens_of(text), mine = tokens_of(line);
    const auto amount = read_amount(text, tokens, 0);
    const bool is_amount_alone = amount && amount->next >= tokens.size() && read_ingredient(text).draft.food.empty();
    const auto my_amount = read_amount(line, mine, 0);
    const bool is_number_alone =
        tokens.size() == 1 && tokens[0].is_number() && mine.size() <= 2 && !my_amount && !mine.empty();
    const bool goes_on = text.back() == ',' && !my_amount && line[0] >= 'a' && line[0] <= 'z';
    if ((!is_amount_alone && !is_number_alone && !goes_on) || (my_amount && !goes_on)) return false;
    last += " " + line;
    return true;
  }

  void take_in_steps(const std::string& line) {
    // The number stays on a line that holds several: they are parted when the step is complete.
    const std::string text = bare(line).empty() ? "" : numbered_steps(line).size() > 1 ? line : without_number(line);
    const bool is_heading = starts_with(line, "#") || (starts_with(line, "**") && ends_with(line, "**")) ||
                            (line.back() == ':' && tokens_of(line.substr(0, 100)).size() <= 8);
    if (is_heading) {
      flush_step();
      const std::string words = lower_case(bare(line));
      const bool is_of_method = begins_with_verb(bare(line)) || starts_with(words, "step") ||
                                starts_with(words, "for the") || !role_of(words, {}).empty() ||
                                has_any_word(words, "assembly|assemble|day|oven|part");
      if (starts_with(line, "#") && !is_of_method && !recipe_.steps.empty()) section_ = TextSection::kRest;
      return;
    }
    if (take_bake_fact(line)) return;
    const bool is_new = has_step_number(line) || has_bullet(line);
    // A line of the same paragraph that was broken goes on where the last one stopped.
    const bool goes_on = !is_new && !step_.empty() && !ends_step(step_);
    if (!goes_on) flush_step();
    if (text.empty()) return;
    step_ += (step_.empty() ? "" : " ") + text;
  }

  /// "Serves 8" between the steps.
  bool take_bake_fact(const std::string& line) {
    const std::string words = lower_case(line);
    const bool is_yield = starts_with(words, "serves ") || starts_with(words, "makes ") || starts_with(words, "yield");
    return is_yield && line.size() < 40 && take_fact(line, recipe_);
  }

  static bool ends_step(const std::string& step) {
    const char last = step.back();
    return last == '.' || last == '!' || last == '?' || last == ':' || last == ')';
  }

  void flush_step() {
    if (step_.empty()) return;
    for (const std::string& step : numbered_steps(step_)) recipe_.steps.push_back(without_number(step));
    step_.clear();
  }

  /// Before any heading, or where the text has none.
  void take_by_look(const std::string& line) {
    const bool has_list = !recipe_.parts.empty();
    if (looks_like_ingredient(line) && recipe_.steps.empty() && step_.empty()) {
      if (!join_with_last(line)) add_listed(recipe_.parts, line);
      return;
    }
    if (is_part_heading(line) && is_list_ahead()) {
      if (!recipe_.steps.empty() || !step_.empty()) flush_step();
      add_listed(recipe_.parts, line);
      return;
    }
    if (is_listed_with_number(line) && recipe_.steps.empty()) {
      add_listed(recipe_.parts, without_number(line));
      return;
    }
    const bool is_step = has_step_number(line) || begins_with_verb(without_bullet(line));
    if (has_sections_ && !has_list) {
      recipe_.unread.push_back(line);  // words before the list
    } else if (is_step || (has_list && line.size() > 40) || !step_.empty()) {
      take_in_steps(line);
    } else if (looks_like_ingredient(line)) {
      add_listed(recipe_.parts, line);
    } else if (has_list && recipe_.steps.empty() && line.size() < 40) {
      add_listed(recipe_.parts, line);  // "vanilla", within the list
    } else {
      recipe_.unread.push_back(line);
    }
  }

  /// Whether the next line that is not empty is an ingredient.
  bool is_list_ahead() const {
    for (std::size_t i = at_ + 1; i < lines_.size() && i < at_ + 4; ++i) {
      if (!lines_[i].empty()) return !section_of(lines_[i]) && looks_like_ingredient(lines_[i]);
    }
    return false;
  }

  std::vector<std::string> lines_;
  std::size_t at_ = 0;
  ListedRecipe recipe_;
  TextSection section_ = TextSection::kTop;
  std::string step_;  // being put together
  bool has_sections_ = false, has_list_heading_ = false;
};

}  // namespace

void add_listed(std::vector<ListedPart>& parts, const std::string& line) {
  if (is_part_heading(line)) {
    parts.push_back({part_name(line), {}});
    return;
  }
  if (parts.empty()) parts.emplace_back();
  parts.back().lines.push_back(without_bullet(line));
}

std::string without_number(std::string_view step) {
  std::string text = without_bullet(step);
  const std::string words = lower_case(text.substr(0, 12));
  std::size_t at = 0;
  if (starts_with(words, "step")) {
    at = 4;
    while (at < text.size() && text[at] == ' ') ++at;
    const std::size_t digits = at;
    while (at < text.size() && text[at] >= '0' && text[at] <= '9') ++at;
    if (at == digits) return text;
  } else if (has_step_number(text)) {
    while (at < text.size() && text[at] >= '0' && text[at] <= '9') ++at;
  } else {
    return text;
  }
  while (at < text.size() &&
         (text[at] == '.' || text[at] == ')' || text[at] == ':' || text[at] == '-' || text[at] == ' '))
    ++at;
  return text.substr(at);
}

std::vector<std::string> numbered_steps(const std::string& line) {
  std::vector<std::string> steps;
  std::size_t begin = 0;
  for (int number = 1; number < 100; ++number) {
    std::size_t next = std::string::npos;
    for (const char sign : {'.', ')'}) {
      const std::string mark = (number > 1 ? " " : "") + std::to_string(number) + sign + " ";
      const std::size_t at = number > 1 ? line.find(mark, begin) : starts_with(line, mark) ? 0 : std::string::npos;
      next = std::min(next, at);
    }
    if (next == std::string::npos) break;
    if (number > 1) {
      steps.push_back(line.substr(begin, next - begin));
      begin = next + 1;
    }
  }
  steps.push_back(line.substr(begin));
  return steps;
}

ListedRecipe list_text(std::string_view text) {
  return Sorter().sort(text);
}

}  // namespace tinwright
