// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See line_kind.h. The words are those that recipes use, in English and, for the two great headings, some other
// languages.
#include "app/recipe/line_kind.h"

#include <algorithm>
#include <vector>

#include "app/recipe/duration.h"
#include "app/recipe/plain_text.h"
#include "app/recipe/read_amount.h"
#include "app/recipe/read_ingredient.h"
#include "app/recipe/tokens.h"

namespace tinwright {
namespace {

struct LabelledTime {
  std::string_view labels;      // "cook time" of "Cook time: 1 hour"
  std::string_view beginnings;  // of "Cook time 1 hour"; more than the label, or "Total" alone would do
  std::string ListedRecipe::*field;
};

constexpr LabelledTime kTimes[] = {
    {"prep time|preparation time|prep|hands-on time|active time|preparation", "prep time |preparation time |prep ",
     &ListedRecipe::prep_time},
    {"cook time|cook|bake|cooking time|baking time|bake time|oven time",
     "cook time |cooking time |baking time |cook |bake ", &ListedRecipe::cook_time},
    {"total time|total|ready in|time|overall time", "total time |ready in ", &ListedRecipe::total_time},
};

constexpr std::size_t kLongestFact = 100;  // bytes
constexpr std::size_t kMostFactWords = 12;

/// "Serves 8" and "Makes 2 pies" stay as they are; of "Yield: 2 pies" only what it says.
bool take_yield(const std::string& text, ListedRecipe& recipe) {
  const std::string words = lower_case(text);
  const bool has_number = std::any_of(words.begin(), words.end(), [](char c) { return c >= '0' && c <= '9'; }) ||
                          has_any_word(words, "one|two|three|four|six|eight|ten|twelve|a");
  if (!has_number || !recipe.yield.empty() || tokens_of(words).size() > kMostFactWords) return false;
  for (const std::string_view beginning :
       {"serves", "makes", "yields", "yield", "servings", "serving", "portions", "for"}) {
    if (!starts_with(words, beginning) || words.size() <= beginning.size()) continue;
    if (words[beginning.size()] != ' ' && words[beginning.size()] != ':') continue;
    if (beginning == "for" && !has_any_word(words, "people|persons|servings|portions")) continue;
    recipe.yield = text;
    if (!is_one_of(beginning, "yield|yields|servings|serving|portions")) return true;
    recipe.yield = bare(text.substr(beginning.size()));
    const bool is_bare_number = tokens_of(recipe.yield).size() == 1;
    if (is_bare_number && starts_with(beginning, "serving")) recipe.yield += " servings";
    if (is_bare_number && beginning == "portions") recipe.yield += " portions";
    return true;
  }
  return false;
}

/// "Serves 8 | Prep 20 min", "Prep: 20 min Cook: 45 min" as several.
std::vector<std::string> facts_in(const std::string& text) {
  std::vector<std::string> facts{""};
  const std::string words = lower_case(text);
  for (std::size_t i = 0; i < text.size(); ++i) {
    const std::string_view rest = std::string_view(words).substr(i);
    const bool is_bar = words[i] == '|';
    bool is_label = false;
    for (const std::string_view label : {" cook:", " cook time:", " total:", " total time:", " serves:", " yield:",
                                         " servings:", " makes:", " bake:"}) {
      is_label = is_label || starts_with(rest, label);
    }
    if (is_bar || is_label) {
      facts.emplace_back();
    } else {
      facts.back() += text[i];
    }
  }
  for (std::string& fact : facts) fact = bare(fact);
  return facts;
}

bool take_time(const std::string& text, ListedRecipe& recipe) {
  const std::string words = lower_case(text);
  const std::size_t colon = words.find(':');
  for (const LabelledTime& time : kTimes) {
    std::string value;
    if (colon != std::string::npos) {
      if (is_one_of(trimmed(std::string_view(words).substr(0, colon)), time.labels)) value = text.substr(colon + 1);
    } else {
      const std::size_t digit = words.find_first_of("0123456789");
      const bool is_named = digit != std::string::npos && is_one_of(words.substr(0, digit), time.beginnings);
      if (is_named && duration_in_words(text.substr(digit))) value = text.substr(digit);
    }
    if (trimmed(value).empty()) continue;
    recipe.*time.field = std::string(trimmed(value));
    return true;
  }
  return false;
}

}  // namespace

std::string bare(std::string_view line) {
  constexpr std::string_view kMarks = " #*_=~:.-";
  const std::size_t begin = line.find_first_not_of(kMarks);
  if (begin == std::string_view::npos) return "";
  return std::string(line.substr(begin, line.find_last_not_of(kMarks) - begin + 1));
}

std::optional<TextSection> section_of(const std::string& line) {
  std::string words = lower_case(bare(line));
  const std::size_t bracket = words.find(" (");
  if (bracket != std::string::npos) words.resize(bracket);
  if (is_one_of(words,
                "ingredients|ingredient|ingredient list|ingredients list|you will need|what you need|"
                "what you'll need|you'll need|the ingredients|shopping list|zutaten|ingr\u00E9dients|"
                "ingredientes|ingredienti"))
    return TextSection::kIngredients;
  if (is_one_of(words,
                "method|directions|direction|instructions|instruction|preparation|steps|how to make|"
                "how to make it|procedure|to make|what to do|how to|the method|cooking instructions|"
                "baking instructions|making it|zubereitung|pr\u00E9paration|preparaci\u00F3n|preparazione|"
                "recipe method|how to bake it|let's bake|baking|how it is made"))
    return TextSection::kSteps;
  if (is_one_of(words,
                "equipment|you will also need|special equipment|tools|tins and tools|pans|tin|pan|"
                "equipment needed|utensils"))
    return TextSection::kEquipment;
  if (is_one_of(words,
                "notes|note|tips|tip|nutrition|nutritional information|nutrition facts|storage|to store|storing|"
                "variations|comments|reviews|related recipes|related|you may also like|more recipes|faq|"
                "questions|video|nutrition information|recipe notes|cook's notes|cook's tip|make ahead|"
                "substitutions|about the author|share|tags|keywords|advertisement|leave a reply|leave a comment|"
                "did you make this recipe|share this|print|print recipe|print this recipe|pin it|pin recipe|rate this "
                "recipe|save recipe|subscribe|newsletter"))
    return TextSection::kRest;
  return std::nullopt;
}

bool take_fact(const std::string& line, ListedRecipe& recipe) {
  const std::string text = bare(line);
  if (text.size() > kLongestFact) return false;
  const std::vector<std::string> facts = facts_in(text);
  if (facts.size() == 1) return take_yield(text, recipe) || take_time(text, recipe);
  ListedRecipe taken;  // all of them are facts, or none
  taken.yield = recipe.yield;
  for (const std::string& fact : facts) {
    if (!take_yield(fact, taken) && !take_time(fact, taken)) return false;
  }
  recipe.yield = taken.yield;
  for (const LabelledTime& time : kTimes) {
    if (!(taken.*time.field).empty()) recipe.*time.field = taken.*time.field;
  }
  return true;
}

bool has_bullet(const std::string& line) {
  const std::string rest = without_bullet(line);
  return rest.size() < line.size() && !rest.empty();
}

bool has_step_number(const std::string& line) {
  const std::size_t space = line.find(' ');
  const bool is_bare_number = space != std::string::npos && space > 0 && space <= 2 &&
                              std::all_of(line.begin(), line.begin() + static_cast<std::ptrdiff_t>(space),
                                          [](char c) { return c >= '0' && c <= '9'; });
  if (is_bare_number && line.size() > 20 && line[space + 1] >= 'A' && line[space + 1] <= 'Z' && line.back() == '.') {
    return begins_with_verb(line.substr(space + 1));  // "1 Heat the oven."
  }
  const std::string words = lower_case(line);
  if (starts_with(words, "step ")) return words.size() > 5 && words[5] >= '0' && words[5] <= '9';
  std::size_t at = 0;
  while (at < line.size() && line[at] >= '0' && line[at] <= '9') ++at;
  if (at == 0 || at > 2 || at >= line.size()) return false;
  const char sign = line[at];
  return (sign == '.' || sign == ')') &&
         (at + 1 == line.size() || line[at + 1] == ' ' || (line[at + 1] >= 'A' && line[at + 1] <= 'Z'));
}

bool begins_with_verb(const std::string& line) {
  const std::vector<Token> tokens = tokens_of(std::string_view(line).substr(0, std::min<std::size_t>(line.size(), 80)));
  if (tokens.empty() || !tokens[0].is_word()) return false;
  return is_one_of(tokens[0].text,
                   "preheat|heat|mix|whisk|beat|stir|bake|pour|add|combine|place|put|grease|line|butter|press|roll|"
                   "chill|cool|cream|fold|make|melt|spread|sprinkle|cut|rub|blend|process|knead|leave|let|remove|"
                   "serve|prick|trim|turn|set|bring|simmer|boil|cook|peel|core|arrange|brush|cover|crush|divide|"
                   "drizzle|fill|freeze|refrigerate|in|meanwhile|once|when|using|use|to|reduce|lower|return|repeat|"
                   "separate|shape|sift|scatter|spoon|tip|top|transfer|while|with|work|wrap|take|grate|dust|ease|"
                   "gently|lightly|toss|scrape|store|keep|allow|start|begin|lift|slice|chop|gradually|finally|next|"
                   "then|first|after|before|pulse|lay|drain|soak|toast|blind|decorate|finish");
}

bool looks_like_ingredient(const std::string& line) {
  if (line.size() > kLongestIngredientLine || has_step_number(line)) return false;
  const std::string text = without_bullet(line);
  const std::vector<Token> tokens = tokens_of(text);
  if (tokens.empty()) return false;
  const bool is_sentence = (text.back() == '.' && tokens.size() > 8) || text.find(". ") != std::string::npos;
  const auto amount = read_amount(text, tokens, 0);
  if (amount && !amount->is_bad) return !is_sentence || !begins_with_verb(text);
  if (is_sentence || begins_with_verb(text)) return false;
  const IngredientLine read = read_ingredient(text);
  if (!read.draft.amount.empty()) return true;
  const std::string words = lower_case(text);
  return has_any_word(words, "to taste|for greasing|for dusting|for the tin|for brushing|as needed|to serve") ||
         (has_bullet(line) && tokens.size() <= 8);
}

}  // namespace tinwright
