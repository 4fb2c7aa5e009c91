// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A job: somebody's recipe, my cupboard, and what I want made, as a job file holds it (assets/job.schema.json), read
// into values. Reading is in job_reader.cpp and part_reader.cpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/files/catalogue.h"
#include "app/files/fields.h"
#include "app/files/ingredients.h"
#include "geometry/lining.h"

namespace tinwright {

/// How a part meets the pan.
enum class Role {
  kBase,      // on the floor
  kLining,    // on floor and wall
  kFilling,   // poured or put into what is left
  kTopping,   // over the top
  kCrumbled,  // baked apart, crumbled, and going into another part
};
const std::vector<std::string_view>& role_names();  // base lining filling topping crumbled

enum class Measure { kNone, kMass, kVolume, kPieces };

struct RecipeItem {
  std::string said, food, remark, size;
  const Ingredient* known = nullptr;  // in the catalogue
  Measure measure = Measure::kNone;   // kNone: "to taste", or not understood
  double amount = 0.0;                // [kg], [m³] or pieces; the middle of a range
  double least = 0.0, most = 0.0;     // the range; both `amount` where there is none
  double piece = 0.0;                 // [kg] of one piece; 0: not known, or no pieces
  double mass = 0.0;                  // [kg] 0: not known
  bool is_taken_as_water = false;     // a volume of something unknown, weighed as water
};

struct RecipePart {
  std::string name;
  Role role = Role::kFilling;
  std::vector<RecipeItem> items;
  double mass = 0.0;     // [kg] of all items, or as the recipe says it, with the crumbs that go into it
  double crumbs = 0.0;   // [kg] of them, baked
  double density = 0.0;  // [kg/m³] as it goes into the pan
  bool is_density_guessed = false;
  double rise = 1.0;       // [-] volume after baking over before
  double bake_loss = 0.0;  // [-] of a crumbled part's mass
  const Mixture* mixture = nullptr;
  std::optional<Composition> composition;        // its own, when nearly all of its items are known
  std::optional<double> thickness, wall_height;  // [m] as the recipe says
  std::optional<double> level;                   // [-] of the cavity's depth, as the recipe says
  std::optional<std::size_t> into;               // of a crumbled part: the part it goes into
  std::optional<Pan> tray, my_tray;              // of a crumbled part: what it is baked on
  std::optional<double> factor;                  // chosen by the cook instead of the computed one
};

struct RecipeStep {
  std::string text;
  std::optional<std::size_t> part;
  std::vector<std::string> adds;  // names of that part's foods that go into the bowl
};

struct Rest {
  std::string what;
  double least = 0.0, most = 0.0;  // [s]
  std::string where;               // "room", "refrigerator", "freezer"
  bool is_after_oven = false;
  double keeps = 0.0;  // [s] how much longer it may be left; 0: no longer
};

struct OwnPan {
  std::string name;
  Pan pan;
  int count = 1;
  std::string remark;  // what water said about its sizes
};

struct PanChoice {
  std::size_t own = 0;  // among the cupboard
  int count = 1;
};

struct Job {
  std::string name, recipe_name, source, yield;
  std::vector<RecipePart> parts;
  std::optional<Pan> recipe_pan;
  double fills = 1.0;  // [-] how many of the recipe's pans it really fills
  std::vector<RecipeStep> steps;
  std::vector<std::string> unread;  // of the recipe
  bool has_oven = false;
  std::vector<Rest> rests;
  std::vector<OwnPan> cupboard;
  std::vector<PanChoice> chosen;  // empty: the best of the cupboard
  bool makes_batch = false;       // whole batches, spread over the pans; else as much as they take
  double batches = 1.0;
  std::string table_at;                // "2026-12-24 18:00", local
  std::optional<double> bowl;          // [kg]
  double scale_step = 0.001;           // [kg]
  std::vector<std::string> not_known;  // fields nobody asked for; they are kept
};

/// What to call it: the job's own name, or the recipe's.
inline const std::string& title_of(const Job& job) {
  return job.name.empty() ? job.recipe_name : job.name;
}

/// The newest job files this program can read.
inline constexpr int kJobVersion = 1;

/// Reads a whole job. Nothing, after noting every fault, when something in it is wrong. What is only left open (a food
/// that is not known, a line that was not understood) is no fault.
std::optional<Job> read_job(FieldReader& reader);

}  // namespace tinwright
