// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// ISO 8601 durations, sound and broken ones. Seconds are counted by hand: 60, 3600, 86400.
#include "app/recipe/duration.h"

#include <string>
#include <string_view>

#include <doctest/doctest.h>

#include "app/quantity/parse.h"

using namespace tinwright;

TEST_CASE("durations of ISO 8601 are read") {
  struct Row {
    std::string_view text;
    double seconds;
    std::string_view words;
  };
  constexpr Row kRows[] = {
      {"PT1H30M", 5400, "1 h 30 min"},
      {"PT90M", 5400, "1 h 30 min"},
      {"P0DT45M", 2700, "45 min"},
      {"P0DT0H35M", 2100, "35 min"},
      {"PT0H0M", 0, "0 min"},
      {"PT2H", 7200, "2 h"},
      {"P1D", 86400, "24 h"},
      {"P1DT2H", 93600, "26 h"},
      {"P1W", 604800, "168 h"},
      {"PT45S", 45, "45 s"},
      {"PT1.5H", 5400, "1 h 30 min"},
      {"PT0,25H", 900, "15 min"},
      {"P0Y0M0DT0H20M0S", 1200, "20 min"},
      {"P0Y0M0DT0H20M0.000S", 1200, "20 min"},
      {"pt15m", 900, "15 min"},
      {" PT10M\n", 600, "10 min"},
      {"PT1H30M15S", 5415, "1 h 30 min 15 s"},
  };
  for (const Row& row : kRows) {
    CAPTURE(row.text);
    const auto seconds = read_duration(row.text);
    REQUIRE(static_cast<bool>(seconds));
    CHECK(*seconds == doctest::Approx(row.seconds));
    const auto words = duration_in_words(row.text);
    REQUIRE(static_cast<bool>(words));
    CHECK(*words == row.words);
    const auto again = parse_quantity(*words, Dimension::kDuration);
    REQUIRE(static_cast<bool>(again));
    CHECK(*again == doctest::Approx(row.seconds));
  }
}

TEST_CASE("broken durations are refused") {
  for (const std::string_view text : {"", "P", "PT", "PTM", "PT30", "30M", "PT1X", "PT30M1H", "PT1H1H", "PT-30M",
                                      "-PT30M", "PT1..5H", "PT.H", "T30M", "PT 30 M", "thirty", "PT1W"}) {
    CAPTURE(text);
    const auto seconds = read_duration(text);
    REQUIRE_FALSE(static_cast<bool>(seconds));
    CHECK(seconds.problem().code == ProblemCode::kNotANumber);
  }
}

TEST_CASE("a time part without its T is read where only one meaning is left") {
  const auto seconds = read_duration("P1H");
  REQUIRE(static_cast<bool>(seconds));
  CHECK(*seconds == doctest::Approx(3600.0));
}

TEST_CASE("years, months and decades are no times of a recipe") {
  for (const std::string_view text : {"P1Y", "P2M", "P45M", "P1Y2DT3H", "P9999W", "PT99999999999999999999H"}) {
    CAPTURE(text);
    const auto seconds = read_duration(text);
    REQUIRE_FALSE(static_cast<bool>(seconds));
    CHECK(seconds.problem().code == ProblemCode::kOutOfRange);
  }
}

TEST_CASE("durations in words are read as well") {
  CHECK(*duration_in_words("1 hour 30 minutes") == "1 h 30 min");
  CHECK(*duration_in_words("20 mins") == "20 min");
  CHECK(*duration_in_words("1/2 hour") == "30 min");
  CHECK_FALSE(static_cast<bool>(duration_in_words("a while")));
  CHECK_FALSE(static_cast<bool>(duration_in_words("200 g")));
}
