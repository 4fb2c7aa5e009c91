// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Drawings as files: well-formed, to scale, and saying their measures.
#include <algorithm>
#include <cstdlib>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "app/files/catalogue.h"
#include "app/plan/drawing_file.h"
#include "app/plan/drawing_words.h"
#include "app/plan/examples.h"
#include "tests/markup_scan.h"

namespace tinwright {
namespace {

bool has(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

/// The extent of the first path with that stroke width, from "M… …L… …" data [mm].
struct Extent {
  double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
};

Extent extent_of(const std::string& svg, const std::string& width) {
  const std::size_t stroke = svg.find("stroke-width=\"" + width + "\"");
  REQUIRE(stroke != std::string::npos);
  const std::size_t from = svg.rfind("d=\"", stroke) + 3;
  Extent extent;
  for (std::size_t at = from; svg[at] != '"';) {
    ++at;  // M, L
    char* end = nullptr;
    const double x = std::strtod(svg.c_str() + at, &end);
    const double y = std::strtod(end, &end);
    extent.left = std::min(extent.left, x);
    extent.right = std::max(extent.right, x);
    extent.top = std::min(extent.top, y);
    extent.bottom = std::max(extent.bottom, y);
    at = static_cast<std::size_t>(end - svg.c_str());
    if (svg[at] == 'Z') ++at;
  }
  return extent;
}

}  // namespace

TEST_CASE("every worked example's drawings are well-formed files with a title and their measures in words") {
  for (const Example& example : worked_examples()) {
    const BenchAnswer answer = answer_bench(example.bench);
    const OvenAnswer oven = answer_oven(example.bench, answer);
    std::vector<std::string> files{section_file(answer, example.bench.units), above_file(answer, example.bench.units)};
    if (!oven.curve.empty()) {
      for (const bool with_cooling : {false, true}) {
        files.push_back(curve_file(oven, with_cooling, example.bench.units));
      }
    }
    for (const std::string& file : files) {
      CAPTURE(file.substr(0, 400));
      CHECK(file.rfind("<?xml", 0) == 0);
      CHECK(markup::scan(file.substr(file.find("<svg"))).fault.empty());
      CHECK(has(file, "xmlns=\"http://www.w3.org/2000/svg\""));
      CHECK(has(file, "<title"));
      CHECK_FALSE(has(file, "nan"));
      CHECK_FALSE(has(file, "inf"));
    }
    CHECK(has(files[0], "across"));
    CHECK(has(files[0], format_length(answer.picture->depth, example.bench.units)));
  }
}

TEST_CASE("the cut is drawn to scale: across and deep are in the pan's own proportion") {
  Bench bench;
  bench.my_pan.texts = {{"outline.diameter", "20 cm"}, {"profile.depth", "8 cm"}};
  const std::string svg = section_file(answer_bench(bench), UnitChoice::kMetric);
  const Extent pan = extent_of(svg, "0.9");
  CHECK((pan.right - pan.left) / (pan.bottom - pan.top) == doctest::Approx(20.0 / 8.0).epsilon(0.002));
}

TEST_CASE("from above, length and width are in proportion, for every pan of the catalogue") {
  for (const CataloguePan& each : catalogue_pans()) {
    CAPTURE(each.id);
    Bench bench;
    bench.my_pan.catalogue = each.id;
    const BenchAnswer answer = answer_bench(bench);
    REQUIRE(answer.picture);
    const Extent rim = extent_of(above_file(answer, UnitChoice::kMetric), "0.9");
    const double wanted = answer.picture->length / answer.picture->width;
    // A curve in chords may stop short of its extent by the sagitta of one.
    CHECK((rim.right - rim.left) / (rim.bottom - rim.top) == doctest::Approx(wanted).epsilon(0.01));
  }
}

TEST_CASE("a full pan's cut says level with the rim, another how far below") {
  Bench bench;
  bench.my_pan.texts = {{"outline.diameter", "20 cm"}, {"profile.depth", "8 cm"}};
  bench.filling.texts = {{"level", "100 %"}};
  CHECK(has(section_file(answer_bench(bench), UnitChoice::kMetric), ">level with<"));
  CHECK(has(section_file(answer_bench(bench), UnitChoice::kMetric), ">the rim<"));
  bench.filling.texts = {{"level", "75 %"}};
  CHECK(has(section_file(answer_bench(bench), UnitChoice::kMetric), ">2 cm<"));
  CHECK(has(section_file(answer_bench(bench), UnitChoice::kMetric), ">below the rim<"));
}

TEST_CASE("the curve without its cooling ends soon after the oven, with it at its end") {
  const Bench& bench = worked_examples().front().bench;
  const OvenAnswer oven = answer_oven(bench, answer_bench(bench));
  REQUIRE_FALSE(oven.curve.empty());
  CHECK(goes_on_cooling(oven));
  CHECK(curve_end(oven, true) == oven.curve.back().time);
  CHECK(curve_end(oven, false) >= oven.oven_ends);
  CHECK(curve_end(oven, false) < curve_end(oven, true));
  const auto [low, high] = curve_range(oven, curve_end(oven, false));
  CHECK(low < high);
  CHECK(high == doctest::Approx(473.15).epsilon(0.001));  // the oven's first stage, 200 °C
}

}  // namespace tinwright
