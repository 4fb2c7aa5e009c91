// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The form of a pan: one of the catalogue, or own sizes by shape.
#include <array>
#include <span>

#include "app/files/catalogue.h"
#include "app/files/pan_reader.h"
#include "app/view/views.h"

namespace tinwright::view {
namespace {

struct FieldWords {
  const char* path;
  const char* label;
  const char* hint;
  const char* help;
};

constexpr FieldWords kDiameter{"outline.diameter", "Inside diameter at the rim", "24 cm", ""};
constexpr FieldWords kLength{"outline.length", "Inside length at the rim", "33 cm", ""};
constexpr FieldWords kWidth{"outline.width", "Inside width at the rim", "23 cm", ""};
constexpr FieldWords kCornerRadius{"outline.corner_radius", "Radius of the corners", "0 cm",
                                   "May be left empty for sharp corners."};
constexpr std::array kRound{kDiameter};
constexpr std::array kRectangle{kLength, kWidth, kCornerRadius};
constexpr std::array kOval{kLength, kWidth};
constexpr std::array kPolygon{FieldWords{"outline.sides", "Number of sides", "6", ""},
                              FieldWords{"outline.across_flats", "Across, from side to side", "20 cm", ""}};
constexpr std::array kFluted{FieldWords{"outline.diameter", "Largest inside diameter", "24 cm", "Crest to crest."},
                             FieldWords{"outline.flutes", "Number of flutes", "40", ""},
                             FieldWords{"outline.flute_depth", "Depth of a flute", "6 mm", "Crest to hollow."}};
constexpr std::array kRing{FieldWords{"outline.outer_diameter", "Outer diameter, inside the wall", "24 cm", ""},
                           FieldWords{"outline.inner_diameter", "Diameter of the core", "8 cm", "At the rim."}};
constexpr std::array kFreeform{FieldWords{"outline.points", "Corners in order round the rim",
                                          "0 cm, 0 cm; 30 cm, 0 cm; 30 cm, 20 cm",
                                          "Each corner: so far to the right, so far up; corners apart by ;"}};
constexpr std::array kStraight{
    FieldWords{"profile.depth", "Depth", "5 cm", ""},
    FieldWords{"profile.base_inset", "Floor narrower by, each side", "0 cm",
               "How far the wall runs in. May be left empty."},
    FieldWords{"profile.floor_radius", "Rounding of the floor corner", "0 mm", "May be left empty."}};
constexpr std::array kBowl{FieldWords{"profile.depth", "Depth in the middle", "8 cm", ""}};
constexpr std::array kMeasured{
    FieldWords{"profile.points", "Wall, from the floor up", "0 cm, 1 cm; 5 cm, 0 cm",
               "Each point: height above the floor, how far inside the rim; points apart by ;"}};
constexpr FieldWords kCoreInset{"profile.core_inset", "Core wider at the floor by", "0 cm",
                                "Each side. May be left empty."};

std::span<const FieldWords> outline_fields(std::size_t outline) {
  switch (outline) {
    case 0:
      return kRound;
    case 1:
      return kRectangle;
    case 2:
      return kOval;
    case 3:
      return kPolygon;
    case 4:
      return kFluted;
    case 5:
      return kRing;
    default:
      return kFreeform;
  }
}

std::span<const FieldWords> wall_fields(WallEntry wall) {
  switch (wall) {
    case WallEntry::kBowl:
      return kBowl;
    case WallEntry::kMeasured:
      return kMeasured;
    case WallEntry::kStraight:
      break;
  }
  return kStraight;
}

/// "Own sizes", then the catalogue by family.
struct PanList {
  std::vector<std::string> labels{"Own sizes"};
  std::vector<ChoiceGroup> groups;
};

const PanList& pan_list() {
  static const PanList list = [] {
    PanList made;
    std::string family;
    for (const CataloguePan& pan : catalogue_pans()) {
      if (pan.family != family) {
        family = pan.family;
        made.groups.push_back({pan.family, static_cast<int>(made.labels.size())});
      }
      made.labels.push_back(pan.name);
    }
    return made;
  }();
  return list;
}

int place_of(const std::string& id) {
  const auto& pans = catalogue_pans();
  for (std::size_t i = 0; i < pans.size(); ++i) {
    if (pans[i].id == id) return static_cast<int>(i) + 1;
  }
  return 0;
}

bool edit_fields(const std::string& prefix, std::span<const FieldWords> fields, PanEntry& entry,
                 const Texts& problems) {
  bool changed = false;
  for (const FieldWords& words : fields) {
    changed |=
        edit_text(prefix, words.path, words.label, entry.texts, problems, {.hint = words.hint, .help = words.help});
  }
  return changed;
}

bool edit_own_sizes(const std::string& prefix, PanEntry& entry, const Texts& problems) {
  bool changed = false;
  int outline = static_cast<int>(entry.outline);
  if (choice(
          prefix + "outline.kind", "Shape from above", outline,
          {"Round", "Rectangle or square", "Oval", "Many straight sides", "Fluted", "Ring with a core", "Freeform"})) {
    entry.outline = static_cast<std::size_t>(outline);
    changed = true;
  }
  changed |= edit_fields(prefix, outline_fields(entry.outline), entry, problems);
  int wall = static_cast<int>(entry.wall);
  if (segments(prefix + "wall", "Wall", wall, {"Straight", "Bowl", "Measured"})) {
    entry.wall = static_cast<WallEntry>(wall);
    changed = true;
  }
  changed |= edit_fields(prefix, wall_fields(entry.wall), entry, problems);
  const bool is_ring = outline_kinds()[entry.outline] == "ring";
  if (is_ring && entry.wall != WallEntry::kBowl) changed |= edit_fields(prefix, {&kCoreInset, 1}, entry, problems);
  changed |= edit_text(prefix, "count", "Cavities in the tin", entry.texts, problems,
                       {.hint = "1", .keyboard = Keyboard::kDecimal});
  int material = static_cast<int>(entry.material);
  if (choice(prefix + "material", "Material", material,
             {"Bright aluminium", "Dark steel", "Tinned steel", "Glass", "Ceramic", "Silicone"})) {
    entry.material = static_cast<std::size_t>(material);
    changed = true;
  }
  changed |= toggle(prefix + "bottomless", "A ring without a bottom", entry.bottomless);
  return changed;
}

}  // namespace

bool edit_text(const std::string& prefix, const std::string& path, Text label, Texts& texts, const Texts& problems,
               FieldOptions options) {
  const auto problem = problems.find(prefix + path);
  if (problem != problems.end()) options.problem = problem->second;
  return field(prefix + path, label, texts[path], options);
}

bool edit_pan_entry(const std::string& prefix, PanEntry& entry, const Texts& problems) {
  bool changed = false;
  int pan = place_of(entry.catalogue);
  if (choice(prefix + "catalogue", "Pan", pan, pan_list().labels, pan_list().groups)) {
    if (pan == 0) {
      take_own_sizes(entry);
    } else {
      entry.catalogue = catalogue_pans()[static_cast<std::size_t>(pan) - 1].id;
    }
    changed = true;
  }
  if (entry.catalogue.empty()) {
    changed |= edit_own_sizes(prefix, entry, problems);
  } else {
    const CataloguePan* chosen = find_catalogue_pan(entry.catalogue);
    const std::string about = chosen != nullptr ? chosen->note : "";
    if (!about.empty()) remark(prefix + "about", about);
    if (button(prefix + "own", "Change its sizes", ButtonLook::kQuiet)) {
      take_own_sizes(entry);
      changed = true;
    }
  }
  return changed;
}

bool edit_pan(const std::string& prefix, PanEntry& entry, const BenchAnswer& answer) {
  const bool changed = edit_pan_entry(prefix, entry, answer.problems);
  show_report(prefix + "facts", prefix == "my_pan." ? answer.my_facts : answer.recipe_facts);
  return changed;
}

}  // namespace tinwright::view
