// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See pan_reader.h.
#include "app/files/pan_reader.h"

#include <cmath>
#include <numbers>

#include "app/files/catalogue.h"

namespace tinwright {
namespace {

enum OutlineKind { kRound, kRectangle, kOval, kPolygon, kFluted, kRing, kFreeform };

/// Pairs of lengths: [["0 cm", "1 cm"], …].
std::vector<glm::dvec2> read_points(FieldReader& reader, const std::string& path) {
  std::vector<glm::dvec2> points;
  const std::size_t count = reader.length(path).value_or(0);
  for (std::size_t i = 0; i < count; ++i) {
    const std::string item = path + "." + std::to_string(i);
    if (reader.length(item).value_or(2) != 2) {
      reader.fault(ProblemCode::kContradiction, item, "a point is two lengths, like [\"2 cm\", \"5 mm\"]");
      continue;
    }
    const auto x = reader.required(item + ".0", Dimension::kLength, "first length");
    const auto y = reader.required(item + ".1", Dimension::kLength, "second length");
    if (x && y) points.emplace_back(*x, *y);
  }
  return points;
}

int read_count(FieldReader& reader, const std::string& path, const std::string& what) {
  if (!reader.has(path)) reader.fault(ProblemCode::kMissing, path, "the number of " + what + " is missing");
  return reader.whole_number(path).value_or(0);
}

void read_outline(FieldReader& reader, const std::string& prefix, PanShape& shape) {
  const auto length = [&](const std::string& name, const std::string& what) {
    return reader.required(prefix + name, Dimension::kLength, what).value_or(0.0);
  };
  if (!reader.has(prefix + "kind")) {
    reader.fault(ProblemCode::kMissing, prefix + "kind",
                 "the outline's kind is missing: round, rectangle, oval, "
                 "polygon, fluted, ring or freeform");
    reader.skip(prefix);
    return;
  }
  const auto kind = reader.choice(prefix + "kind", outline_kinds());
  if (!kind) {
    reader.skip(prefix);
    return;
  }
  switch (static_cast<OutlineKind>(*kind)) {
    case kRound:
      shape.outline = Round{length("diameter", "diameter")};
      break;
    case kRectangle:
      shape.outline = Rectangle{length("length", "length"), length("width", "width"),
                                reader.quantity(prefix + "corner_radius", Dimension::kLength).value_or(0.0)};
      break;
    case kOval:
      shape.outline = Oval{length("length", "length"), length("width", "width")};
      break;
    case kPolygon:
      shape.outline = RegularPolygon{read_count(reader, prefix + "sides", "sides"),
                                     length("across_flats", "size across the flats")};
      break;
    case kFluted:
      shape.outline =
          Fluted{length("diameter", "diameter"), read_count(reader, prefix + "flutes", "flutes"),
                 reader.required(prefix + "flute_depth", Dimension::kLength, "flute depth", "6 mm").value_or(0.0)};
      break;
    case kRing:
      shape.outline = Round{length("outer_diameter", "outer diameter")};
      shape.core = CoreShape{length("inner_diameter", "inner diameter"), 0.0};
      break;
    case kFreeform:
      if (!reader.has(prefix + "points")) {
        reader.fault(ProblemCode::kMissing, prefix + "points", "a freeform outline needs its corners as points");
      }
      shape.outline = Freeform{read_points(reader, prefix + "points")};
      break;
  }
}

/// The horizontal run of the wall, given as such or by its angle from the vertical.
double read_run(FieldReader& reader, const std::string& prefix, double depth) {
  const auto inset = reader.quantity(prefix + "base_inset", Dimension::kLength);
  const auto angle = reader.quantity(prefix + "wall_angle", Dimension::kAngle);
  if (reader.has(prefix + "base_inset") && reader.has(prefix + "wall_angle")) {
    reader.fault(ProblemCode::kContradiction, prefix + "wall_angle",
                 "give the base inset or the wall's angle, not both");
  }
  if (!angle) return inset.value_or(0.0);
  if (*angle >= 0.5 * std::numbers::pi) {
    reader.fault(ProblemCode::kOutOfRange, prefix + "wall_angle", "a wall leans less than 90 deg from the vertical");
    return 0.0;
  }
  return depth * std::tan(*angle);
}

void read_profile(FieldReader& reader, const std::string& prefix, PanShape& shape) {
  static const std::vector<std::string_view> kKinds{"straight", "bowl"};
  const bool has_points = reader.has(prefix + "points");
  const bool is_bowl = reader.choice(prefix + "kind", kKinds).value_or(0) == 1;
  if (shape.core) shape.core->inset = reader.quantity(prefix + "core_inset", Dimension::kLength).value_or(0.0);
  if (has_points && is_bowl) {
    reader.fault(ProblemCode::kContradiction, prefix + "points",
                 "a bowl is one arc; leave its kind out, or the points");
  }
  if (has_points) {
    shape.wall = SteppedWall{read_points(reader, prefix + "points")};
    return;
  }
  const double depth = reader.required(prefix + "depth", Dimension::kLength, "depth").value_or(0.0);
  if (is_bowl) {
    shape.wall = BowlWall{depth};
    return;
  }
  shape.wall = StraightWall{depth, read_run(reader, prefix, depth),
                            reader.quantity(prefix + "floor_radius", Dimension::kLength).value_or(0.0)};
}

/// A pan named by its id in the catalogue; its sizes are not repeated beside it.
std::optional<Pan> read_catalogue_pan(FieldReader& reader, const std::string& prefix) {
  const std::string path = prefix + "catalogue";
  const auto id = reader.text(path);
  if (!id) return std::nullopt;
  const CataloguePan* entry = find_catalogue_pan(*id);
  if (entry == nullptr) {
    reader.fault(ProblemCode::kUnknown, path, "the catalogue has no pan called that; give its sizes instead");
    return std::nullopt;
  }
  FieldReader entry_reader(entry->fields);
  return read_pan(entry_reader, "");
}

}  // namespace

const std::vector<std::string_view>& outline_kinds() {
  static const std::vector<std::string_view> kinds{"round",  "rectangle", "oval",    "polygon",
                                                   "fluted", "ring",      "freeform"};
  return kinds;
}

const std::vector<std::string_view>& material_names() {
  static const std::vector<std::string_view> names{"bright_aluminium", "dark_steel", "tinned_steel", "glass",
                                                   "ceramic",          "silicone"};
  return names;
}

std::optional<Pan> read_pan(FieldReader& reader, const std::string& prefix) {
  const std::size_t faults_before = reader.faults().size();
  if (reader.has(prefix + "catalogue")) return read_catalogue_pan(reader, prefix);
  PanShape shape;
  const auto has_part = [&](const std::string& part, const char* first) {
    if (reader.has(prefix + part) || reader.has(prefix + part + first)) return true;
    reader.fault(ProblemCode::kMissing, prefix + part, "the pan's " + part + " is missing");
    return false;
  };
  if (has_part("outline", ".kind")) read_outline(reader, prefix + "outline.", shape);
  if (has_part("profile", ".depth")) read_profile(reader, prefix + "profile.", shape);
  shape.material = static_cast<Material>(reader.choice(prefix + "material", material_names()).value_or(0));
  shape.bottomless = reader.flag(prefix + "bottomless").value_or(false);
  shape.count = reader.whole_number(prefix + "count").value_or(1);
  static_cast<void>(reader.text(prefix + "name"));
  static_cast<void>(reader.text(prefix + "note"));
  if (reader.faults().size() > faults_before) return std::nullopt;
  auto pan = make_pan(shape);
  if (!pan) {
    Problem problem = pan.problem();
    const bool is_ring = shape.core.has_value();
    if (is_ring && problem.place == "outline.diameter") problem.place = "outline.outer_diameter";
    if (reader.has(prefix + "profile.wall_angle") && problem.place == "profile.base_inset") {
      problem.place = "profile.wall_angle";
      problem.message = "leaning that far, " + problem.message;
    }
    reader.fault(problem, prefix);
    return std::nullopt;
  }
  return *pan;
}

std::optional<Lining> read_lining(FieldReader& reader, const std::string& path) {
  if (!reader.has(path)) return std::nullopt;
  const auto floor = reader.required(path + ".floor", Dimension::kLength, "lining's floor thickness", "5 mm");
  const auto wall = reader.required(path + ".wall", Dimension::kLength, "lining's wall thickness", "4 mm");
  const auto height = reader.required(path + ".height", Dimension::kLength, "lining's height", "28 mm");
  if (!floor || !wall || !height) return std::nullopt;
  return Lining{*floor, *wall, *height};
}

}  // namespace tinwright
