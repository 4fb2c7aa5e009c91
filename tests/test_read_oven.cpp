// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Sentences about ovens, racks, refrigerators and freezers, against the stages they tell. The table was written by
// hand.
#include "app/recipe/read_oven.h"

#include <string>
#include <string_view>
#include <vector>

#include <doctest/doctest.h>

#include "app/quantity/parse.h"
#include "app/recipe/oven_words.h"
#include "app/recipe/plain_text.h"
#include "tests/recipe_words.h"

using namespace tinwright;

namespace {

/// Steps separated by '|'; the stages by "; ".
struct Row {
  std::string_view steps;
  std::string_view stages;
  int doubts = 0;
};

std::vector<std::string> split(std::string_view text) {
  std::vector<std::string> parts;
  while (true) {
    const std::size_t bar = text.find('|');
    parts.push_back(clean_text(text.substr(0, bar)));
    if (bar == std::string_view::npos) return parts;
    text.remove_prefix(bar + 1);
  }
}

std::string stages_of(const OvenReading& reading) {
  std::string words;
  for (const StageDraft& stage : reading.stages) words += (words.empty() ? "" : "; ") + words_of(stage);
  return words;
}

constexpr Row kRows[] = {
    {"Preheat the oven to 350°F.|Bake for 35-40 minutes.", "oven / 350 F / 35 min .. 40 min"},
    {"Preheat the oven to 350 °F. Bake 35 min.", "oven / 350 F / 35 min"},
    {"Bake at 180C/160C fan/gas 4 for 35-40 minutes.", "oven / 180 C / 35 min .. 40 min"},
    {"Bake at 180°C (fan 160°C) for 35 minutes.", "oven / 180 C / 35 min"},
    {"Heat oven to 200C/fan 180C/gas 6. Bake for 20 mins.", "oven / 200 C / 20 min"},
    {"Heat the oven to 160C fan. Bake for 1 hour 15 minutes.", "fan oven / 160 C / 1 h 15 min"},
    {"Preheat a fan oven to 150 °C. Bake 50 minutes.", "fan oven / 150 C / 50 min"},
    {"Bake at 350°F (175°C) for 1 to 1 1/2 hours.", "oven / 350 F / 1 h .. 1 1/2 h"},
    {"Bake for 50 minutes at 170℃.", "oven / 170 C / 50 min"},
    {"Bake at 350°F for 15 minutes, then reduce the temperature to 325 degrees and bake 20 minutes more.",
     "oven / 350 F / 15 min; oven / 325 F / 20 min"},
    {"Bake 25 minutes at 425°F; lower oven to 350°F and continue baking 40 to 45 minutes.",
     "oven / 425 F / 25 min; oven / 350 F / 40 min .. 45 min"},
    {"Bake for the first 15 minutes at 220C, then turn the oven down to 180C for the remaining 25 minutes.",
     "oven / 220 C / 15 min; oven / 180 C / 25 min"},
    {"Put the pie in the oven at 220C. After 15 minutes, reduce the heat to 180C and cook for another 30-35 minutes.",
     "oven / 220 C / 15 min; oven / 180 C / 30 min .. 35 min"},
    {"Heat the oven to 200C. Blind bake for 15 mins, remove the baking beans and bake for 5 mins more.",
     "oven / 200 C / 15 min; oven / 200 C / 5 min"},
    {"Blind bake at 190°C (Fan 170°C, Gas 5) for 15 mins; remove beans; 5 mins more.",
     "oven / 190 C / 15 min; oven / 190 C / 5 min"},
    {"Bake for 50 minutes at 170°C, rotating after 25 minutes.", "oven / 170 C / 50 min"},
    {"Bake at 170°C for 50 minutes, covering with foil for the last 10 minutes.", "oven / 170 C / 50 min"},
    {"Bake in the preheated oven at 180C for an hour and a half.", "oven / 180 C / 1 1/2 h"},
    {"Bake at 160C for half an hour.", "oven / 160 C / 1/2 h"},
    {"Bake until done, 45 minutes to 1 hour, at 350°F.", "oven / 350 F / 45 min .. 1 h"},
    {"Bake until the core reaches 200°F, about 40 minutes, at 350°F.", "oven / 350 F / 40 min"},
    {"Preheat oven to 350. Bake 30 to 35 minutes or until set.", "oven / 350 F / 30 min .. 35 min"},
    {"Bake at gas mark 3 for 1¼ hours", "oven / 325 F / 1 1/4 h", 1},
    {"Bake at gas 1/2 for 2 hours", "oven / 250 F / 2 h", 1},
    {"Bake at 160-170C for 30 minutes.", "oven / 160 C / 30 min", 1},
    {"Bake at 220 degrees for 30 minutes.", "oven / _ / 30 min", 1},
    {"Preheat to 180°C. Later bake at 200 degrees for 30 minutes.", "oven / 200 C / 30 min"},
    {"Bake for 12 minutes.", "oven / _ / 12 min"},
    {"Roast for 20 min at 190 °C. Let stand 15 minutes.", "oven / 190 C / 20 min; rack / _ / 15 min"},
    {"Bake at 180C for 30 minutes. Cool on a rack for 3 hours, then freeze overnight.",
     "oven / 180 C / 30 min; rack / _ / 3 h; freezer / _ / 8 h"},
    {"Bake at 180C for 30 minutes. Cool in the tin for 10 minutes before turning out onto a rack.",
     "oven / 180 C / 30 min; rack / _ / 10 min"},
    {"Bake at 180C for 30 minutes. Remove from the oven and leave for 10 minutes. Cool completely, about 2 hours.",
     "oven / 180 C / 30 min; rack / _ / 10 min; rack / _ / 2 h"},
    {"Chill the dough for 30 minutes.|Preheat oven to 400F.|Bake 20 minutes. Cool 1 hour. Chill at least 4 hours or "
     "overnight.",
     "refrigerator / _ / 30 min; oven / 400 F / 20 min; rack / _ / 1 h; refrigerator / _ / 4 h .. 8 h"},
    {"Chill overnight, or for at least 6 hours.", "refrigerator / _ / 6 h .. 8 h"},
    {"Refrigerate for 2 hours or up to 3 days.", "refrigerator / _ / 2 h .. 3 d"},
    {"Leave overnight in the fridge.", "refrigerator / _ / 8 h"},
    {"Leave to cool for 1 hour in the fridge.", "refrigerator / _ / 1 h"},
    {"Place in the freezer for 3 hours.", "freezer / _ / 3 h"},
    {"Freeze for at least 6 hours, preferably overnight.", "freezer / _ / 6 h .. 8 h"},
    {"Bake at 150C for 1 hour. Turn off the oven and leave the cake inside for 1 hour with the door ajar. Refrigerate "
     "overnight.",
     "oven / 150 C / 1 h; oven / _ / 1 h / off open; refrigerator / _ / 8 h"},
    {"Bake at 150°C for 40 minutes, leave to cool in the oven with the door open for 2 hours, then chill overnight.",
     "oven / 150 C / 40 min; oven / _ / 2 h / off open; refrigerator / _ / 8 h"},
    {"Refrigerate at least 3 hours and up to 2 days.", "refrigerator / _ / 3 h .. 2 d"},
    {"Bake at 150C for 1 hour. Switch the oven off and leave it in there for 30 minutes.",
     "oven / 150 C / 1 h; oven / _ / 30 min / off shut"},
    {"Bake the shell at 180C for 15 minutes. Cool for 20 minutes. Fill and bake 30 minutes. Cool 1 hour.",
     "oven / 180 C / 15 min; oven / 180 C / 30 min; rack / _ / 1 h"},
    // What is no stage
    {"Whisk for 5 minutes.", ""},
    {"Simmer for 20 minutes, stirring.", ""},
    {"Knead for 10 minutes and prove for 1 hour.", ""},
    {"Heat the milk to 80°C and keep it there for 5 minutes.", ""},
    {"Cook the onions in a pan for 10 minutes.", ""},
    {"Remove from the fridge 30 minutes before serving.", ""},
    {"Keeps in the freezer for up to 3 months.", ""},
    {"Store in the fridge for 3 days.", ""},
    {"Toast the nuts in the oven for 8 minutes.", ""},
    {"Add 180 g flour and 20 ml milk.", ""},
    {"", ""},
};

}  // namespace

TEST_CASE("stages are read from the steps") {
  for (const Row& row : kRows) {
    CAPTURE(row.steps);
    const OvenReading reading = read_oven(split(row.steps));
    CHECK(stages_of(reading) == std::string(row.stages));
    CHECK(reading.doubts.size() == static_cast<std::size_t>(row.doubts));
    for (const StageDraft& stage : reading.stages) {
      CHECK(static_cast<bool>(parse_quantity(stage.time, Dimension::kDuration)));
      if (!stage.up_to.empty()) CHECK(static_cast<bool>(parse_quantity(stage.up_to, Dimension::kDuration)));
      if (!stage.air.empty()) CHECK(static_cast<bool>(parse_quantity(stage.air, Dimension::kTemperature)));
      CHECK_FALSE(stage.said.empty());
    }
  }
}

TEST_CASE("gas marks follow the usual steps of 25 F") {
  // Common practice, no single standard: mark 1 is 275 F, each further one 25 F more; 1/2 is 250 F and 1/4 is 225 F.
  CHECK(gas_mark_fahrenheit(4) == doctest::Approx(350));
  CHECK(gas_mark_fahrenheit(9) == doctest::Approx(475));
  CHECK(gas_mark_fahrenheit(0.5) == doctest::Approx(250));
  CHECK(gas_mark_fahrenheit(0.25) == doctest::Approx(225));
  CHECK(gas_mark_fahrenheit(40) == doctest::Approx(0));
}

TEST_CASE("a sentence ends at its point, not at that of an abbreviation") {
  CHECK(sentences_of("Bake 35 min. or until set. Cool.").size() == 2);
  CHECK(sentences_of("Add 1.5 cups. Stir.").size() == 2);
  CHECK(sentences_of("").size() == 1);
}
