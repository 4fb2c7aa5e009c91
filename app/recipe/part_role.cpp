// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See part_role.h.
#include "app/recipe/part_role.h"

#include <algorithm>

#include "app/recipe/plain_text.h"

namespace tinwright {
namespace {

constexpr std::string_view kToppings =
    "topping|toppings|icing|frosting|glaze|meringue|streusel|buttercream|drizzle|decoration|garnish|ganache|finish|"
    "decorate|"
    "sprinkle|lattice|lid";
constexpr std::string_view kFillings =
    "filling|fillings|custard|batter|cake|sponge|cheesecake|curd|frangipane|mousse|cream|pudding|fruit|cakes|brownie|"
    "brownies|muffins|loaf|bread|mixture|compote|caramel|layer|almond cream|jelly";
constexpr std::string_view kCrusts = "crust|base|bottom|pastry|shell|dough|case|lining|shortcrust|shortbread|pate";
constexpr std::string_view kParts =
    "sauce|syrup|jam|nuts|soak|coating|filling and topping|assembly|marinade|swirl|wash|egg wash";
constexpr std::size_t kLongestHeading = 70;  // bytes

std::string_view without_marks(std::string_view text) {
  constexpr std::string_view kMarks = " #*_=~:.-";
  const std::size_t begin = text.find_first_not_of(kMarks);
  if (begin == std::string_view::npos) return {};
  return text.substr(begin, text.find_last_not_of(kMarks) - begin + 1);
}

/// What the steps say of the thing that is pressed or laid into the pan.
std::string role_by_steps(const std::vector<std::string>& steps) {
  for (const std::string& step : steps) {
    const std::string small = lower_case(step);
    const bool is_placed = has_any_word(small, "press|pressed|pressing|line|pat|roll|rolled|ease|fit");
    if (!is_placed) continue;
    const bool names_sides = has_any_word(small, "sides|side|walls|wall|edges|edge|rim");
    if (names_sides && has_any_word(small, "press|pat|up|line|ease|fit|pressed|pressing")) return "lining";
    if (has_any_word(small, "roll out|rolled out|roll the|rolled")) return "lining";
    const bool is_pressed = has_any_word(small, "press|pressed|pressing|pat");
    if (is_pressed && has_any_word(small, "base|bottom|floor|into|over|evenly")) return "base";
  }
  return "";
}

std::string without_article(std::string_view text) {
  std::string name(text);
  for (const std::string_view beginning : {"for the ", "for a ", "for ", "to make the ", "make the ", "the ",
                                           "ingredients for the ", "ingredients for "}) {
    if (!starts_with(lower_case(name), beginning)) continue;
    name.erase(0, beginning.size());
    return name;
  }
  return name;
}

bool is_all_capitals(std::string_view text) {
  bool has_capital = false;
  for (const char c : text) {
    if (c >= 'a' && c <= 'z') return false;
    has_capital = has_capital || (c >= 'A' && c <= 'Z');
  }
  return has_capital;
}

}  // namespace

std::string role_of(std::string_view heading, const std::vector<std::string>& steps) {
  const std::string words = lower_case(heading);
  if (has_any_word(words, kToppings)) return "topping";
  if (has_any_word(words, "crumble") && !has_any_word(words, kCrusts)) return "topping";
  if (has_any_word(words, "crumb|crumbs|crumb mixture|crumbs mixture") && !has_any_word(words, kCrusts))
    return "crumbled";
  if (has_any_word(words, kCrusts)) {
    const bool is_pressed =
        has_any_word(words, "base|bottom|crumb|crumbs|biscuit|biscuits|cookie|cracker|shortbread|pressed");
    const std::string by_steps = role_by_steps(steps);
    if (!by_steps.empty()) return by_steps;
    if (is_pressed) return "base";
    return has_any_word(words, "pastry|shell|case|lining|shortcrust|pate|pie|tart|flan|quiche") ? "lining" : "base";
  }
  return has_any_word(words, kFillings) ? "filling" : "";
}

std::string part_name(std::string_view heading) {
  std::string name = without_article(without_marks(heading));
  const std::string words = lower_case(name);
  if (ends_with(words, " ingredients")) name.resize(name.size() - 12);
  if (is_one_of(lower_case(name), "ingredients|ingredient|you will need|what you need|ingredients list|recipe"))
    return "";
  if (is_all_capitals(name)) name = lower_case(name);
  if (!name.empty() && name[0] >= 'a' && name[0] <= 'z') name[0] = static_cast<char>(name[0] - 'a' + 'A');
  return name;
}

bool is_part_heading(std::string_view line) {
  const std::string_view text = trimmed(line);
  if (text.empty() || text.size() > kLongestHeading) return false;
  const std::string words = lower_case(without_marks(text));
  if (words.empty()) return false;
  const bool has_digit = std::any_of(words.begin(), words.end(), [](char c) { return c >= '0' && c <= '9'; });
  const bool ends_in_colon = text.back() == ':' || ends_with(text, ":**") || ends_with(text, ":*");
  if (starts_with(text, "# ") || starts_with(text, "##") || (starts_with(text, "**") && ends_with(text, "**")))
    return true;
  if (ends_in_colon) return !has_digit || has_any_word(words, kCrusts) || has_any_word(words, kFillings);
  if (has_digit) return false;
  const bool is_for =
      starts_with(words, "for the ") || starts_with(words, "to make the ") || starts_with(words, "for your ");
  if (is_for) return !contains(text, ",");
  const bool names_part =
      is_one_of(words,
                "crust|base|pastry|filling|topping|dough|icing|frosting|glaze|meringue|streusel|batter|"
                "crumble|crumb mixture|crumbs|crumb topping|pie crust|pie dough|tart shell|custard|"
                "pastry case|pastry shell|biscuit base|crumb crust|cake|sponge|the base|the filling|"
                "the topping|the crust|sauce|syrup|garnish|decoration|to serve|to decorate|to finish|"
                "for serving|for greasing|crumble topping|cream filling|assembly");
  if (names_part) return true;
  const std::string_view last = std::string_view(words).substr(words.find_last_of(' ') + 1);
  const bool is_short =
      std::count(words.begin(), words.end(), ' ') <= 3 && !contains(text, ",") && text[0] >= 'A' && text[0] <= 'Z';
  if (is_short && is_one_of(last, "layer|filling|topping|base|crust|batter|glaze|frosting|streusel|mixture"))
    return true;
  const bool names_any = has_any_word(words, kCrusts) || has_any_word(words, kFillings) ||
                         has_any_word(words, kToppings) || has_any_word(words, kParts);
  return is_all_capitals(text) && names_any;
}

}  // namespace tinwright
