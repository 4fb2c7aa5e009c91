// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A pan of the cupboard: its sizes as measured, and the water it takes to the brim, which solves a size that was left
// out or judges those that were not.
#include <algorithm>
#include <cmath>
#include <string_view>

#include "app/files/pan_reader.h"
#include "app/quantity/print.h"
#include "app/recipe/job_detail.h"
#include "geometry/numerics.h"

namespace tinwright {
namespace {

constexpr double kWaterDensity = 998.2;  // [kg/m³] at 20 °C (CRC Handbook of Chemistry and Physics; from memory)
constexpr double kAgreement = 0.03;      // [-] of the volume: a ruler's ±1 to 2 mm on a small tin make as much
constexpr int kSamples = 60;
constexpr double kLeastSize = 0.001, kMostSize = 1.0;  // [m]

struct Gauge {
  Fields fields;  // of the pan, without a prefix
  double volume = 0.0;
};

struct Size {
  std::string path, words;
};

/// Sizes a pan cannot do without, by outline.
std::vector<Size> needed_sizes(const std::string& kind) {
  std::vector<Size> sizes;
  const auto add = [&](const char* name, const char* words) {
    sizes.push_back({std::string("outline.") + name, words});
  };
  if (kind == "round" || kind == "fluted") add("diameter", "diameter");
  if (kind == "rectangle" || kind == "oval") {
    add("length", "length");
    add("width", "width");
  }
  if (kind == "polygon") add("across_flats", "size across the flats");
  if (kind == "ring") {
    add("outer_diameter", "outer diameter");
    add("inner_diameter", "inner diameter");
  }
  sizes.push_back({"profile.depth", "depth"});
  return sizes;
}

bool has(const Fields& fields, const std::string& path) {
  return fields.count(path) > 0;
}

std::optional<Pan> pan_of(const Fields& fields) {
  FieldReader reader(fields);
  return read_pan(reader, "");
}

Fields with_size(Fields fields, const std::string& path, double metres) {
  if (path.rfind("profile.", 0) == 0) fields.try_emplace("profile", Field{"", JsonNode::Kind::kObject});
  fields[path] = {plain_number(metres * 1e3, 9) + " mm"};
  return fields;
}

/// The size that makes the pan hold the water; nothing where none does.
std::optional<double> solve_size(const Gauge& gauge, const std::string& path) {
  const auto excess = [&](double size) -> std::optional<double> {
    const auto pan = pan_of(with_size(gauge.fields, path, size));
    if (!pan) return std::nullopt;
    return brim_volume(*pan) - gauge.volume;
  };
  std::optional<double> before;
  double size_before = 0.0;
  for (int i = 0; i <= kSamples; ++i) {
    const double size = kLeastSize * std::pow(kMostSize / kLeastSize, static_cast<double>(i) / kSamples);
    const auto here = excess(size);
    if (here && before && (*here < 0.0) != (*before < 0.0)) {
      return find_root([&](double at) { return excess(at).value_or(0.0); }, size_before, size);
    }
    before = here;
    size_before = size;
  }
  return std::nullopt;
}

std::string litres(double volume) {
  return format_volume(volume, UnitChoice::kMetric);
}

/// The pan with its one missing size solved.
std::optional<Pan> solve_missing(FieldReader& reader, const std::string& prefix, const Gauge& gauge, const Size& size,
                                 std::string& remark) {
  const auto solved = solve_size(gauge, size.path);
  if (!solved) {
    reader.fault(ProblemCode::kContradiction, prefix + "water",
                 "no " + size.words + " makes this pan hold " + litres(gauge.volume) + "; measure again");
    return std::nullopt;
  }
  remark = "From the water it takes, its " + size.words + " comes to " + format_mm(*solved) + ".";
  return pan_of(with_size(gauge.fields, size.path, *solved));
}

/// All sizes are there: the water judges them, and finds the wall's slope where none was given.
std::optional<Pan> judge(const Gauge& gauge, std::string& remark) {
  const auto pan = pan_of(gauge.fields);
  if (!pan) return std::nullopt;
  const double holds = brim_volume(*pan);
  const bool is_straight = !has(gauge.fields, "profile.points") && !has(gauge.fields, "profile.kind") &&
                           !has(gauge.fields, "profile.base_inset") && !has(gauge.fields, "profile.wall_angle") &&
                           !has(gauge.fields, "catalogue");
  if (is_straight && gauge.volume < holds) {
    if (const auto inset = solve_size(gauge, "profile.base_inset")) {
      remark = "From the water it takes, its wall leans in by " + format_mm(*inset) + " down to the floor.";
      return pan_of(with_size(gauge.fields, "profile.base_inset", *inset));
    }
  }
  const double off = gauge.volume / holds - 1.0;
  if (std::abs(off) > kAgreement) {
    remark = "Its sizes and the water contradict each other: by its sizes it holds " + litres(holds) +
             ", but it took " + litres(gauge.volume) + ". Measure again; the sizes are used.";
  } else {
    remark = "The water agrees with its sizes within " + format_percent(std::abs(off)) + ".";
  }
  return pan;
}

/// Mass or volume of the brimful; nothing, with a fault, where it is neither.
std::optional<double> read_water(FieldReader& reader, const std::string& path) {
  const std::string text = reader.text(path).value_or("");
  Fields one{{"water", {text}}};
  FieldReader as_mass(one);
  if (const auto mass = as_mass.quantity("water", Dimension::kMass)) return *mass / kWaterDensity;
  return reader.required(path, Dimension::kVolume, "water's mass or volume", "1850 g");
}

}  // namespace

std::optional<Pan> read_own_pan(FieldReader& reader, const std::string& prefix, std::string& remark) {
  const std::string at = prefix + "pan.";
  if (!reader.has(prefix + "water")) {
    if (!reader.has(prefix + "pan") && !reader.has(at + "catalogue")) {
      reader.fault(ProblemCode::kMissing, prefix + "pan", "this pan has no sizes; put them under \"pan\"");
      return std::nullopt;
    }
    return read_pan(reader, at);
  }
  const auto water = read_water(reader, prefix + "water");
  if (!water) return std::nullopt;
  if (*water < 1e-6 || *water > 0.5) {
    reader.fault(ProblemCode::kOutOfRange, prefix + "water", "no pan takes that much or that little water");
    return std::nullopt;
  }
  Gauge gauge{reader.below(at), *water};
  std::vector<Size> missing;
  const auto kind = gauge.fields.find("outline.kind");
  if (kind != gauge.fields.end()) {
    for (const Size& size : needed_sizes(kind->second.text)) {
      if (has(gauge.fields, "profile.points") && size.path == "profile.depth") continue;
      if (!has(gauge.fields, size.path)) missing.push_back(size);
    }
  }
  // The water is shared by the cavities of a tin; the sizes are those of one.
  const auto cavities = gauge.fields.find("count");
  if (cavities != gauge.fields.end()) {
    FieldReader count(gauge.fields);
    gauge.volume /= std::max(1, count.whole_number("count").value_or(1));
  }
  if (missing.size() == 1) {
    reader.skip(at);
    return solve_missing(reader, prefix, gauge, missing.front(), remark);
  }
  const auto checked = read_pan(reader, at);
  return checked ? judge(gauge, remark) : std::nullopt;
}

std::string pan_name(FieldReader& reader, const std::string& prefix, std::size_t index) {
  if (reader.has(prefix + "catalogue")) {
    const CataloguePan* entry = find_catalogue_pan(reader.text(prefix + "catalogue").value_or(""));
    if (entry != nullptr) return entry->name;
  }
  return "pan " + std::to_string(index + 1);
}

}  // namespace tinwright
