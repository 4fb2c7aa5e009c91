// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Whole recipes of our own making, in the shapes in which recipes are found, against what a reader would take from
// them. expected.txt was written by hand from the inputs.
#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>

#include "app/recipe/plain_text.h"
#include "app/recipe/read_recipe.h"
#include "tests/recipe_words.h"

namespace tinwright {

struct EmbeddedRecipe {
  std::string_view file;
  std::string_view text;
};
extern const std::vector<EmbeddedRecipe>& embedded_recipes();
extern const std::string_view kRecipesExpectedTxt;

namespace {

/// Lines by file. An empty cell of an ingredient or a stage is written as nothing and shown as "_".
std::map<std::string, std::vector<std::string>> expectations() {
  std::map<std::string, std::vector<std::string>> expected;
  std::string file;
  for (std::string line : lines_of(kRecipesExpectedTxt)) {
    if (line.empty()) continue;
    if (starts_with(line, "== ")) {
      file = line.substr(3);
      expected[file] = {};
      continue;
    }
    expected[file].push_back(line);
  }
  return expected;
}

/// The same with every empty cell gone, so that spaces do not count.
std::string squeezed(const std::string& line) {
  std::string out;
  for (const char c : line) {
    if (c != ' ' && c != '_') out += c;
  }
  return out;
}

}  // namespace

TEST_CASE("each of our recipes comes out as a reader would take it down") {
  const auto expected = expectations();
  CHECK(embedded_recipes().size() >= 30);
  CHECK(expected.size() == embedded_recipes().size());
  for (const EmbeddedRecipe& recipe : embedded_recipes()) {
    const std::string_view file = recipe.file;
    CAPTURE(file);
    const auto draft = read_recipe(recipe.text);
    REQUIRE(static_cast<bool>(draft));
    const auto found = expected.find(std::string(file));
    REQUIRE(found != expected.end());
    const bool wants_steps = std::any_of(found->second.begin(), found->second.end(),
                                         [](const std::string& line) { return starts_with(line, "step "); });
    std::vector<std::string> got = words_of(*draft);
    if (!wants_steps) {
      got.erase(
          std::remove_if(got.begin(), got.end(), [](const std::string& line) { return starts_with(line, "step "); }),
          got.end());
    }
    for (std::size_t i = 0; i < std::max(got.size(), found->second.size()); ++i) {
      const std::string is = i < got.size() ? got[i] : "(nothing)";
      const std::string wanted = i < found->second.size() ? found->second[i] : "(nothing)";
      CAPTURE(is);
      CAPTURE(wanted);
      CHECK(squeezed(is) == squeezed(wanted));
    }
  }
}

}  // namespace tinwright
