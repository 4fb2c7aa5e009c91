// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See job.h. Parts and their items are in part_reader.cpp, measuring by water in water_gauge.cpp.
#include <algorithm>

#include "app/files/pan_reader.h"
#include "app/recipe/job.h"
#include "app/recipe/job_detail.h"

namespace tinwright {
namespace {

constexpr std::size_t kMostPans = 2000;
constexpr std::size_t kMostSteps = 400;
constexpr int kMostAlike = 400;

std::string item(const std::string& path, std::size_t index) {
  return path + "." + std::to_string(index) + ".";
}

void read_version(FieldReader& reader) {
  if (!reader.has("version")) {
    reader.fault(ProblemCode::kMissing, "version", "the job's version is missing; put \"version\": 1");
    return;
  }
  const auto version = reader.whole_number("version");
  if (version && *version > kJobVersion) {
    reader.fault(ProblemCode::kUnknown, "version",
                 "this job was made by a newer version of the program; get that one to open it");
  } else if (version && *version < 1) {
    reader.fault(ProblemCode::kOutOfRange, "version", "the job's version has to be 1");
  }
}

std::vector<OwnPan> read_cupboard(FieldReader& reader) {
  std::vector<OwnPan> cupboard;
  const std::size_t count = length_of_list(reader, "cupboard", kMostPans);
  for (std::size_t i = 0; i < count; ++i) {
    const std::string at = item("cupboard", i);
    OwnPan own;
    own.name = reader.text(at + "name").value_or("");
    own.count = reader.whole_number(at + "count").value_or(1);
    if (own.count > kMostAlike) {
      reader.fault(ProblemCode::kOutOfRange, at + "count", "that is more pans than a cupboard holds; at most 400");
    }
    const auto pan = read_own_pan(reader, at, own.remark);
    if (own.name.empty()) own.name = pan_name(reader, at + "pan.", i);
    if (!pan) continue;
    own.pan = *pan;
    const bool is_known =
        std::any_of(cupboard.begin(), cupboard.end(), [&](const OwnPan& other) { return other.name == own.name; });
    if (is_known) {
      reader.fault(ProblemCode::kContradiction, at + "name",
                   "two pans of the cupboard are called \"" + own.name + "\"; give each its own name");
    }
    cupboard.push_back(std::move(own));
  }
  return cupboard;
}

void read_chosen(FieldReader& reader, Job& job) {
  const std::size_t count = length_of_list(reader, "plan.pans", kMostPans);
  for (std::size_t i = 0; i < count; ++i) {
    const std::string at = item("plan.pans", i);
    const std::string name = reader.text(at + "name").value_or("");
    const int wanted = reader.whole_number(at + "count").value_or(1);
    const auto own =
        std::find_if(job.cupboard.begin(), job.cupboard.end(), [&](const OwnPan& each) { return each.name == name; });
    if (own == job.cupboard.end()) {
      // A pan of the cupboard that could not be read has its own fault already.
      if (reader.faults().empty()) {
        reader.fault(ProblemCode::kUnknown, at + "name", "there is no pan called \"" + name + "\" in the cupboard");
      }
      continue;
    }
    if (wanted > own->count) {
      reader.fault(ProblemCode::kContradiction, at + "count",
                   "the cupboard has only " + std::to_string(own->count) + " of these");
      continue;
    }
    if (wanted > 0) job.chosen.push_back({static_cast<std::size_t>(own - job.cupboard.begin()), wanted});
  }
}

void read_wishes(FieldReader& reader, Job& job) {
  static const std::vector<std::string_view> kMakes{"pans", "batch"};
  const auto makes = reader.choice("plan.make", kMakes);
  read_chosen(reader, job);
  job.makes_batch = makes ? *makes == 1 : job.chosen.empty();
  job.batches = positive(reader, "plan.batches", Dimension::kRatio, 1.0, 100.0).value_or(1.0);
  job.table_at = reader.text("plan.table_at").value_or("");
  job.bowl = reader.quantity("scale.bowl", Dimension::kMass);
  job.scale_step = positive(reader, "scale.step", Dimension::kMass, 1e-5, 1.0).value_or(0.001);
}

void read_steps(FieldReader& reader, Job& job) {
  const std::size_t count = length_of_list(reader, "recipe.steps", kMostSteps);
  for (std::size_t i = 0; i < count; ++i) {
    const std::string at = item("recipe.steps", i);
    RecipeStep step;
    step.text = reader.text(at + "text").value_or("");
    step.part = part_called(reader, at + "part", job.parts);
    const std::size_t adds = length_of_list(reader, at + "adds", kMostSteps);
    for (std::size_t k = 0; k < adds; ++k) {
      step.adds.push_back(reader.text(at + "adds." + std::to_string(k)).value_or(""));
    }
    if (!step.part && !step.adds.empty() && job.parts.size() == 1) step.part = 0;
    if (!step.part && !step.adds.empty() && reader.faults().empty()) {
      reader.fault(ProblemCode::kMissing, at + "part", "say which part these go into");
    }
    job.steps.push_back(std::move(step));
  }
}

void read_rests(FieldReader& reader, Job& job) {
  static const std::vector<std::string_view> kWhere{"room", "refrigerator", "freezer"};
  static const std::vector<std::string_view> kWhen{"before_oven", "after_oven"};
  const std::size_t count = length_of_list(reader, "recipe.rests", kMostSteps);
  for (std::size_t i = 0; i < count; ++i) {
    const std::string at = item("recipe.rests", i);
    Rest rest;
    rest.what = reader.text(at + "what").value_or("");
    rest.least = reader.required(at + "for", Dimension::kDuration, "rest's length", "1 h").value_or(0.0);
    rest.most = reader.quantity(at + "up_to", Dimension::kDuration).value_or(rest.least);
    rest.keeps = reader.quantity(at + "keeps", Dimension::kDuration).value_or(0.0);
    rest.where = std::string(kWhere[reader.choice(at + "where", kWhere).value_or(0)]);
    rest.is_after_oven = reader.choice(at + "when", kWhen).value_or(0) == 1;
    if (rest.most < rest.least) {
      reader.fault(ProblemCode::kContradiction, at + "up_to", "the longest rest is shorter than the shortest");
    }
    job.rests.push_back(std::move(rest));
  }
}

void read_the_recipe(FieldReader& reader, Job& job) {
  job.recipe_name = reader.text("recipe.name").value_or("");
  job.source = reader.text("recipe.from").value_or("");
  job.yield = reader.text("recipe.yield").value_or("");
  if (reader.has("recipe.pan")) {
    if (auto pan = read_pan(reader, "recipe.pan.")) job.recipe_pan = *pan;
  }
  job.fills = positive(reader, "recipe.fills", Dimension::kRatio, 0.01, 400.0).value_or(1.0);
  read_parts(reader, job);
  read_steps(reader, job);
  read_rests(reader, job);
  const std::size_t unread = length_of_list(reader, "recipe.unread", kMostSteps);
  for (std::size_t i = 0; i < unread; ++i) {
    job.unread.push_back(reader.text("recipe.unread." + std::to_string(i)).value_or(""));
  }
  job.has_oven = reader.length("recipe.oven").value_or(0) > 0;
}

}  // namespace

std::optional<double> positive(FieldReader& reader, const std::string& path, Dimension dimension, double least,
                               double most) {
  const auto value = reader.quantity(path, dimension);
  if (!value) return std::nullopt;
  if (*value >= least && *value <= most) return value;
  reader.fault(ProblemCode::kOutOfRange, path, "this is out of all proportion; check the number and its unit");
  return std::nullopt;
}

std::size_t length_of_list(FieldReader& reader, const std::string& path, std::size_t most) {
  const std::size_t count = reader.length(path).value_or(0);
  if (count <= most) return count;
  reader.fault(ProblemCode::kTooMuch, path, "this list is too long; at most " + std::to_string(most));
  return 0;
}

std::optional<Job> read_job(FieldReader& reader) {
  Job job;
  read_version(reader);
  job.name = reader.text("name").value_or("");
  if (!reader.has("recipe")) {
    reader.fault(ProblemCode::kMissing, "recipe", "the job has no recipe; put it under \"recipe\"");
  }
  read_the_recipe(reader, job);
  job.cupboard = read_cupboard(reader);
  read_wishes(reader, job);
  reader.skip("recipe.oven");
  reader.skip("recipe.start");
  reader.skip("page");
  if (!reader.faults().empty()) return std::nullopt;
  FieldReader rest = reader;
  rest.refuse_unread();
  for (const Fault& fault : rest.faults()) job.not_known.push_back(fault.place);
  return job;
}

}  // namespace tinwright
