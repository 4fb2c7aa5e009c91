// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Words in another language: what is looked up, what is not, places, numbers.
#include <string>

#include <doctest/doctest.h>

#include "app/files/words_file.h"
#include "app/plan/words.h"
#include "app/quantity/print.h"
#include "app/quantity/say.h"

using namespace tinwright;

namespace {

/// Speaks a table until the end of the test.
struct Speaking {
  explicit Speaking(std::string_view text) { speak(*read_words(text)); }
  ~Speaking() { speak({}); }
  Speaking(const Speaking&) = delete;
  Speaking& operator=(const Speaking&) = delete;
};

}  // namespace

TEST_CASE("say: English without a table, and where the table has nothing") {
  CHECK(say("Left over") == "Left over");
  const Speaking german(R"({"Left over": "Übrig"})");
  CHECK(say("Left over") == "Übrig");
  CHECK(say("Crust") == "Crust");
}

TEST_CASE("say: places may change their order, and values are not looked up or filled again") {
  CHECK(say("{0} below {1}", {"5 mm", "the rim"}) == "5 mm below the rim");
  CHECK(say("{0} of {1}", {"{1}", "b"}) == "{1} of b");
  CHECK(say("{0} and {2}", {"a"}) == "a and {2}");
  CHECK(say("{", {"a"}) == "{");
  CHECK(say("{0", {"a"}) == "{0");
  const Speaking german(R"({"{0} below {1}": "{1}: {0} tiefer", "the rim": "der Rand"})");
  CHECK(say("{0} below {1}", {"5 mm", "the rim"}) == "the rim: 5 mm tiefer");
}

TEST_CASE("say: one and many") {
  CHECK(say_count(1, "{0} tin of {1}", "{0} tins of {1}", {"oats"}) == "1 tin of oats");
  CHECK(say_count(0, "{0} tin", "{0} tins") == "0 tins");
  CHECK(say_count(12, "{0} tin", "{0} tins") == "12 tins");
}

TEST_CASE("say: a literal is looked up, what the cook wrote is not") {
  const Speaking german(R"({"Filling": "Füllung", "Left over": "Übrig"})");
  const std::string part = "Filling";
  const ReportLine line = figure("Left over", part);
  CHECK(line.label == "Übrig");
  CHECK(line.value == "Filling");
  CHECK(remark("Filling").value == "Füllung");
}

TEST_CASE("say: decimals have the language's sign on the page and a point in files") {
  CHECK(format_number(2.5, 1) == "2.5");
  const Speaking german(R"({".": ","})");
  CHECK(format_number(2.5, 1) == "2,5");
  CHECK(format_density(1200.0) == "1,20 g/ml");
  CHECK(format_mass(0.0075, UnitChoice::kMetric) == "7,5 g");
  CHECK(plain_number(2.5, 1) == "2.5");
}

TEST_CASE("say: a table that is none is refused") {
  for (const char* text : {"", "[]", "{\"a\": 1}", "{\"a\": {}}", "{\"a\"", "null"}) CHECK(!read_words(text));
  CHECK(read_words("{}"));
}
