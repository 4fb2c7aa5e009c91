// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Everything a cook has entered on the page, and everything it answers. The page edits a Bench and shows a BenchAnswer;
// all that lies between is here.
#pragma once

#include <array>
#include <map>
#include <memory>
#include <optional>
#include <string>

#include "app/plan/fill_job.h"
#include "app/plan/pan_job.h"
#include "app/plan/picture.h"
#include "app/plan/press_job.h"

namespace tinwright {

/// Texts as typed, by the path of their field; an empty text counts as not given.
using Texts = std::map<std::string, std::string>;

/// The text of a field without blanks around it; empty when it was not given.
std::string text_of(const Texts& texts, const std::string& name);

/// How a wall is described: by depth and slope, as one arc, or by measured points.
enum class WallEntry { kStraight, kBowl, kMeasured };

struct PanEntry {
  std::string catalogue;    // id of a catalogue pan; empty: own sizes, as below
  std::size_t outline = 0;  // place among outline_kinds()
  WallEntry wall = WallEntry::kStraight;
  std::size_t material = 0;  // place among material_names()
  bool bottomless = false;
  Texts texts;  // "outline.diameter", "profile.depth", "count"; points as "0 cm, 0 cm; 30 cm, 0 cm"
};

struct DoughEntry {
  std::string mixture;  // id; empty: own density
  Cover cover = Cover::kFloorAndWall;
  Texts texts;  // "mass", "density", "thickness", "wall_height"
};

struct FillingEntry {
  std::string mixture;  // id; empty: own density
  Texts texts;          // "amount" (a mass or a volume), "level", "density", "rise"
};

/// What the air does in a stage: stays, goes evenly from one temperature to another, or is left to an oven switched
/// off.
enum class AirEntry { kHeld, kRamp, kOffShut, kOffOpen };

/// A stage of the oven's programme.
struct StageEntry {
  std::size_t place = 0;  // among place_names()
  Texts texts;            // "air", "for", "from" (of a ramp), "bath" (of water round the pan)
  AirEntry air = AirEntry::kHeld;
  bool has_bath = false;
};

/// The oven's part of the bench.
struct OvenEntry {
  std::vector<StageEntry> stages;  // the recipe's programme; empty: the oven is not asked about
  Texts texts;                     // "start", "recipe_depth" (empty: the same amount in the recipe's pan), "rack"
  std::size_t store = 0;           // after the rack: 0 nowhere, 1 refrigerator, 2 freezer
};

struct Bench {
  UnitChoice units = UnitChoice::kMetric;
  bool has_recipe_pan = true;
  PanEntry recipe_pan, my_pan;
  DoughEntry dough;
  FillingEntry filling;
  OvenEntry oven;
};

struct Solid;

struct BenchAnswer {
  std::optional<Pan> recipe_pan, my_pan;
  std::optional<PressJob> press_job;
  std::optional<PressAnswer> press;
  std::optional<FillJob> fill_job;
  std::optional<FillAnswer> fill;
  std::optional<Picture> picture;                      // of my pan
  std::array<std::shared_ptr<const Solid>, 2> solids;  // of my pan, whole and cut open, once asked for: solid_of
  Report recipe_facts, my_facts;                       // what each pan holds
  Report swap, dough, filling, cautions;               // cautions of the others gathered, each once
  Texts problems;  // what is wrong, by path: "my_pan.outline.diameter", "dough.mass", "filling.amount"
};

BenchAnswer answer_bench(const Bench& bench);

/// The entry that pan_fields makes these fields of, whether of the catalogue or with sizes of its own.
PanEntry pan_entry_of(const Fields& fields);

/// Copies a catalogue pan's sizes into the entry's own texts, so that they can be changed; then it has no catalogue id.
void take_own_sizes(PanEntry& entry);

/// The fields of an entry under `prefix`, as read_pan takes them.
Fields pan_fields(const PanEntry& entry, const std::string& prefix);

}  // namespace tinwright
