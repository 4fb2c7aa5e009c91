// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Pans as recipes name them, against what is said of them. The table was written by hand.
#include "app/recipe/read_pan_words.h"

#include <algorithm>
#include <string>
#include <string_view>

#include <doctest/doctest.h>

#include "app/files/catalogue.h"
#include "app/files/pan_reader.h"
#include "app/quantity/parse.h"
#include "app/recipe/plain_text.h"
#include "tests/recipe_words.h"

using namespace tinwright;

namespace {

struct Row {
  std::string_view sentence;
  std::string_view pans;  // separated by "; "; "outline." and "profile." left out
};

std::string pans_of(const std::vector<PanDraft>& pans) {
  std::string words;
  for (const PanDraft& pan : pans) {
    words += (words.empty() ? "" : "; ");
    std::string one = words_of(pan);
    for (const std::string_view prefix : {"outline.", "profile."}) {
      for (std::size_t at = one.find(prefix); at != std::string::npos; at = one.find(prefix))
        one.erase(at, prefix.size());
    }
    words += one;
  }
  return words;
}

constexpr Row kRows[] = {
    {"Grease two 9-inch round cake tins.", "kind=round diameter=9 in count=2"},
    {"Line the base of two 8-inch (20 cm) round cake pans with paper.", "kind=round diameter=8 in count=2"},
    {"Line a 9 x 13 inch baking dish.", "catalogue=rectangle-9x13"},
    {"Pour into a 9x13-inch pan.", "catalogue=rectangle-9x13"},
    {"Pour into a 9-by-13-inch pan.", "catalogue=rectangle-9x13"},
    {"Butter a 9\" x 13\" pan.", "catalogue=rectangle-9x13"},
    {"Butter a 9″ × 13″ pan.", "catalogue=rectangle-9x13"},
    {"Line a 9x13 pan.", "catalogue=rectangle-9x13"},
    {"Line a 20cmx30cm tin.", "kind=rectangle length=30 cm width=20 cm"},
    {"Pour into a tin measuring 20 x 30 cm.", "kind=rectangle length=30 cm width=20 cm"},
    {"Grease a 23cm/9in springform tin.", "catalogue=springform-23cm"},
    {"Grease a 26-cm springform.", "catalogue=springform-26cm"},
    {"Press into the bottom of a 9-inch springform pan with 3-inch sides.", "kind=round diameter=9 in depth=3 in"},
    {"Butter a 12-hole muffin tin.", "catalogue=muffin-12"},
    {"Line two 12-cup muffin tins with paper cases.", "kind=round count=24"},
    {"Fit the pastry into a 9-inch deep-dish pie plate.", "kind=round diameter=9 in"},
    {"Fit the pastry into a 9 x 1½-inch pie tin.", "catalogue=pie-9x1-1-2"},
    {"Use a 9½-inch glass pie dish.", "kind=round diameter=9 1/2 in material=glass"},
    {"Grease a 900g/2lb loaf tin.", "catalogue=loaf-2lb-uk"},
    {"Spoon into a 1-lb loaf tin.", "catalogue=loaf-1lb-uk"},
    {"Grease a 9 x 5-inch loaf pan.", "catalogue=loaf-9x5"},
    {"Grease a 9 x 5 x 3-inch loaf pan.", "kind=rectangle length=9 in width=5 in depth=3 in"},
    {"Line a 20cm round, loose-bottomed cake tin (at least 7 cm deep).", "kind=round diameter=20 cm depth=7 cm"},
    {"Use an 8-inch square pan.", "catalogue=square-8"},
    {"Press into a 20 x 20 cm tin.", "catalogue=square-20cm"},
    {"Butter a 24 cm fluted tart tin with a removable base.", "catalogue=tart-24cm"},
    {"Pour the batter into a 10-inch tube pan.", "kind=ring outer_diameter=10 in"},
    {"Divide between 2 x 20cm sandwich tins.", "kind=round diameter=20 cm count=2"},
    {"Divide between six ramekins.", "kind=round count=6"},
    {"Place an 8 cm tart ring on a baking sheet.", "catalogue=ring-8cm"},
    {"Line a half sheet pan with paper.", "catalogue=half-sheet"},
    {"Use a 28cm x 20cm oval dish.", "kind=oval length=28 cm width=20 cm"},
    {"Grease a 3cm-deep, 16cm x 26cm (base) slice pan.", "kind=rectangle length=26 cm width=16 cm depth=3 cm"},
    {"Use a 20 cm hexagonal tin.", "kind=polygon sides=6 across_flats=20 cm"},
    {"Grease a 9-inch pan.", "kind=round diameter=9 in"},
    {"Line a 9x13 pan and a 9-inch pie plate.", "catalogue=rectangle-9x13; kind=round diameter=9 in"},
    {"Grease a 23 cm springform tin. Bake, then release the springform tin.", "catalogue=springform-23cm"},
    // No pan of the recipe
    {"Pour into the prepared tin and bake for 35 minutes at 180C.", ""},
    {"Melt the butter in a large saucepan.", ""},
    {"Fry in a 20 cm frying pan.", ""},
    {"Drain the tin of plums and add to the dish.", ""},
    {"Roll to 30 cm across.", ""},
    {"Lay a sheet of filo on top.", ""},
    {"", ""},
};

}  // namespace

TEST_CASE("pans are read from the steps") {
  for (const Row& row : kRows) {
    CAPTURE(row.sentence);
    const auto pans = read_pan_words({clean_text(row.sentence)});
    CHECK(pans_of(pans) == std::string(row.pans));
    for (const PanDraft& pan : pans) {  // whatever is given is a field that read_pan knows
      Fields fields;
      for (const auto& field : pan.fields) fields[field.first] = {field.second};
      if (fields.count("count") > 0) fields["count"].kind = JsonNode::Kind::kNumber;
      if (fields.count("bottomless") > 0) fields["bottomless"].kind = JsonNode::Kind::kBoolean;
      if (fields.count("outline.sides") > 0) fields["outline.sides"].kind = JsonNode::Kind::kNumber;
      FieldReader reader(fields);
      static_cast<void>(read_pan(reader, ""));
      reader.refuse_unread();
      for (const Fault& fault : reader.faults()) {
        CAPTURE(fault.place);
        CAPTURE(fault.message);
        CHECK(fault.code == ProblemCode::kMissing);  // what the recipe does not say
      }
    }
    for (const PanDraft& pan : pans) {
      CHECK_FALSE(pan.said.empty());
      for (const auto& field : pan.fields) {
        const std::string &name = field.first, &text = field.second;
        CAPTURE(name);
        const bool is_length = name == "profile.depth" || name == "outline.length" || name == "outline.width" ||
                               name.find("diameter") != std::string::npos;
        if (is_length) CHECK(static_cast<bool>(parse_quantity(text, Dimension::kLength)));
        if (name == "catalogue") CHECK(find_catalogue_pan(text) != nullptr);
      }
    }
  }
}

TEST_CASE("what the recipe does not say of a pan is told") {
  const auto doubt = [](const std::string& step) {
    const auto pans = read_pan_words({step});
    REQUIRE(pans.size() == 1);
    return doubt_of(pans[0]);
  };
  CHECK_FALSE(doubt("Grease a 9-inch pan.").empty());
  CHECK_FALSE(doubt("Grease a 20 cm heart-shaped cake tin.").empty());
  CHECK_FALSE(doubt("Grease a 26 cm springform tin.").empty());
  CHECK(doubt("Grease a 9-inch pie plate.").empty());
  CHECK(doubt("Grease a 20 x 30 cm tin.").empty());
}
