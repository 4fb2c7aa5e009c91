// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See bench.h.
#include "app/plan/bench.h"

#include <algorithm>

#include "app/files/catalogue.h"
#include "app/files/pan_reader.h"
#include "app/plan/words.h"
#include "app/quantity/parse.h"
#include "app/recipe/plain_text.h"

namespace tinwright {
namespace {

constexpr const char* kWallPoints = "profile.points";
constexpr const char* kCorners = "outline.points";

std::vector<std::string> split(const std::string& text, char by) {
  std::vector<std::string> parts{""};
  for (const char c : text) {
    if (c == by) {
      parts.emplace_back();
    } else {
      parts.back() += c;
    }
  }
  return parts;
}

/// "0 cm, 0 cm; 30 cm, 0 cm" as the nested lists of a file.
void add_points(Fields& fields, const std::string& path, const std::string& text) {
  fields[path] = {"", JsonNode::Kind::kArray};
  std::size_t index = 0;
  for (const std::string& point : split(text, ';')) {
    if (trimmed(point).empty()) continue;
    const std::string item = path + "." + std::to_string(index++);
    fields[item] = {"", JsonNode::Kind::kArray};
    std::size_t place = 0;
    for (const std::string& size : split(point, ','))
      fields[item + "." + std::to_string(place++)] = {std::string(trimmed(size))};
  }
}

/// The nested lists back as "0 cm, 0 cm; 30 cm, 0 cm".
std::string points_text(const Fields& fields, const std::string& path) {
  std::string text;
  for (std::size_t i = 0;; ++i) {
    const std::string item = path + "." + std::to_string(i);
    const auto first = fields.find(item + ".0"), second = fields.find(item + ".1");
    if (first == fields.end() || second == fields.end()) return text;
    text += (text.empty() ? "" : "; ") + first->second.text + ", " + second->second.text;
  }
}

void add_texts(Fields& fields, const std::string& prefix, const Texts& texts, const std::vector<std::string>& names) {
  for (const std::string& name : names) {
    const auto found = texts.find(name);
    if (found != texts.end() && !trimmed(found->second).empty())
      fields[prefix + name] = {std::string(trimmed(found->second))};
  }
}

Fields dough_fields(const DoughEntry& dough) {
  static constexpr const char* kCovers[] = {"floor", "floor_and_wall", "slab"};
  Fields fields;
  std::vector<std::string> names{"mass", "thickness"};
  if (dough.cover == Cover::kFloorAndWall) names.push_back("wall_height");
  if (dough.mixture.empty()) names.push_back("density");
  add_texts(fields, "dough.", dough.texts, names);
  fields["dough.cover"] = {kCovers[static_cast<std::size_t>(dough.cover)]};
  if (!dough.mixture.empty()) fields["dough.dough"] = {dough.mixture};
  return fields;
}

Fields filling_fields(const FillingEntry& filling) {
  Fields fields;
  std::vector<std::string> names{"level", "rise"};
  if (filling.mixture.empty()) names.push_back("density");
  add_texts(fields, "filling.", filling.texts, names);
  if (!filling.mixture.empty()) fields["filling.filling"] = {filling.mixture};
  const std::string amount = text_of(filling.texts, "amount");
  if (!amount.empty()) {
    const bool is_volume = static_cast<bool>(parse_quantity(amount, Dimension::kVolume));
    fields[is_volume ? "filling.volume" : "filling.mass"] = {amount};
  }
  return fields;
}

void note_problems(Texts& problems, const std::vector<Fault>& faults) {
  for (const Fault& fault : faults) {
    std::string path = fault.place;
    if (path == "filling.mass" || path == "filling.volume") path = "filling.amount";
    if (path.rfind("filling.lining", 0) == 0) path = "dough.thickness";
    for (const char* list : {kWallPoints, kCorners}) {
      const std::size_t at = path.find(list);
      if (at != std::string::npos) path.resize(at + std::string(list).size());
    }
    problems.emplace(path, fault.message);
  }
}

Report without_cautions(const Report& report, Report& cautions) {
  Report kept;
  for (const ReportLine& line : report) {
    if (line.kind != ReportLine::Kind::kCaution) {
      kept.push_back(line);
    } else if (!is_said(cautions, line)) {
      cautions.push_back(line);
    }
  }
  return kept;
}

void answer_dough(const Bench& bench, BenchAnswer& answer) {
  if (text_of(bench.dough.texts, "mass").empty() && text_of(bench.dough.texts, "thickness").empty()) return;
  const Fields fields = dough_fields(bench.dough);
  FieldReader reader(fields);
  answer.press_job = read_press_job(reader, "dough.", answer.my_pan);
  if (answer.press_job) answer.press = solve_press(reader, *answer.press_job, "dough.");
  note_problems(answer.problems, reader.faults());
  if (answer.press) {
    answer.dough = without_cautions(describe_press(*answer.press_job, *answer.press, bench.units), answer.cautions);
  }
}

void answer_filling(const Bench& bench, BenchAnswer& answer) {
  if (text_of(bench.filling.texts, "amount").empty() && text_of(bench.filling.texts, "level").empty()) return;
  const Fields fields = filling_fields(bench.filling);
  FieldReader reader(fields);
  std::optional<Lining> crust;
  if (answer.press) crust = crust_of(*answer.press_job, *answer.press);
  answer.fill_job = read_fill_job(reader, "filling.", answer.my_pan, crust);
  if (answer.fill_job) answer.fill = solve_fill(reader, *answer.fill_job, "filling.");
  note_problems(answer.problems, reader.faults());
  if (!answer.fill) return;
  answer.filling = without_cautions(describe_fill(*answer.fill_job, *answer.fill, bench.units), answer.cautions);
  if (answer.press && !crust) {
    answer.filling.push_back(remark("The dough does not line the pan, so this is worked out for the bare pan."));
  }
}

std::optional<Pan> answer_pan(const Fields& fields, const std::string& prefix, Texts& problems) {
  FieldReader reader(fields);
  const auto pan = read_pan(reader, prefix);
  note_problems(problems, reader.faults());
  return pan;
}

}  // namespace

std::string text_of(const Texts& texts, const std::string& name) {
  const auto found = texts.find(name);
  return found == texts.end() ? "" : std::string(trimmed(found->second));
}

Fields pan_fields(const PanEntry& entry, const std::string& prefix) {
  static const std::vector<std::string> kOutlineNames{
      "outline.diameter",       "outline.length",        "outline.width",  "outline.corner_radius",
      "outline.sides",          "outline.across_flats",  "outline.flutes", "outline.flute_depth",
      "outline.outer_diameter", "outline.inner_diameter"};
  Fields fields;
  if (!entry.catalogue.empty()) {
    fields[prefix + "catalogue"] = {entry.catalogue};
    return fields;
  }
  const std::string_view kind = outline_kinds()[entry.outline];
  fields[prefix + "outline.kind"] = {std::string(kind)};
  add_texts(fields, prefix, entry.texts, kOutlineNames);
  if (kind == "freeform") add_points(fields, prefix + kCorners, text_of(entry.texts, kCorners));
  fields[prefix + "profile"] = {"", JsonNode::Kind::kObject};
  if (kind == "ring" && entry.wall != WallEntry::kBowl) add_texts(fields, prefix, entry.texts, {"profile.core_inset"});
  if (entry.wall == WallEntry::kMeasured) {
    add_points(fields, prefix + kWallPoints, text_of(entry.texts, kWallPoints));
  } else {
    add_texts(fields, prefix, entry.texts, {"profile.depth"});
    if (entry.wall == WallEntry::kBowl) fields[prefix + "profile.kind"] = {"bowl"};
    if (entry.wall == WallEntry::kStraight) {
      add_texts(fields, prefix, entry.texts, {"profile.base_inset", "profile.wall_angle", "profile.floor_radius"});
    }
  }
  fields[prefix + "material"] = {std::string(material_names()[entry.material])};
  fields[prefix + "bottomless"] = {entry.bottomless ? "true" : "false", JsonNode::Kind::kBoolean};
  add_texts(fields, prefix, entry.texts, {"count"});
  return fields;
}

PanEntry pan_entry_of(const Fields& fields) {
  PanEntry entry;
  const auto place = [](const std::vector<std::string_view>& words, const std::string& word) {
    const auto found = std::find(words.begin(), words.end(), word);
    return found == words.end() ? 0 : static_cast<std::size_t>(found - words.begin());
  };
  for (const char* list : {kCorners, kWallPoints}) {
    const std::string points = points_text(fields, list);
    if (points.empty()) continue;
    entry.texts[list] = points;
    if (list == kWallPoints) entry.wall = WallEntry::kMeasured;
  }
  for (const auto& [path, field] : fields) {
    if (path == "catalogue") {
      entry.catalogue = field.text;
    } else if (path == "outline.kind") {
      entry.outline = place(outline_kinds(), field.text);
    } else if (path == "material") {
      entry.material = place(material_names(), field.text);
    } else if (path == "profile.kind") {
      if (field.text == "bowl") entry.wall = WallEntry::kBowl;
    } else if (path == "bottomless") {
      entry.bottomless = field.text == "true";
    } else if (path.find("points") == std::string::npos &&
               (field.kind == JsonNode::Kind::kString || field.kind == JsonNode::Kind::kNumber)) {
      entry.texts[path] = field.text;
    }
  }
  return entry;
}

void take_own_sizes(PanEntry& entry) {
  const CataloguePan* pan = find_catalogue_pan(entry.catalogue);
  entry.catalogue.clear();
  if (pan != nullptr) entry = pan_entry_of(pan->fields);
}

BenchAnswer answer_bench(const Bench& bench) {
  BenchAnswer answer;
  answer.my_pan = answer_pan(pan_fields(bench.my_pan, "my_pan."), "my_pan.", answer.problems);
  if (bench.has_recipe_pan) {
    answer.recipe_pan = answer_pan(pan_fields(bench.recipe_pan, "recipe_pan."), "recipe_pan.", answer.problems);
  }
  if (answer.recipe_pan) answer.recipe_facts = describe_capacity(*answer.recipe_pan, bench.units);
  if (!answer.my_pan) return answer;
  answer.my_facts = describe_capacity(*answer.my_pan, bench.units);
  if (answer.recipe_pan) {
    answer.swap = without_cautions(describe_swap(*answer.recipe_pan, *answer.my_pan, bench.units), answer.cautions);
  }
  answer_dough(bench, answer);
  answer_filling(bench, answer);
  const auto pointer = [](const auto& value) { return value ? &*value : nullptr; };
  answer.picture = draw_picture(*answer.my_pan, pointer(answer.press_job), pointer(answer.press),
                                pointer(answer.fill_job), pointer(answer.fill));
  for (Report* report :
       {&answer.dough, &answer.filling}) {  // what a pan asks for is said once, with the swap or the dough
    std::erase_if(*report, [&](const ReportLine& line) {
      return line.kind == ReportLine::Kind::kRemark &&
             (is_said(answer.swap, line) || (report == &answer.filling && is_said(answer.dough, line)));
    });
  }
  return answer;
}

}  // namespace tinwright
