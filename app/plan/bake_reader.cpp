// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Reads a BakeJob, see bake_job.h.
#include <string>
#include <utility>

#include "app/files/pan_reader.h"
#include "app/plan/bake_job.h"

namespace tinwright {
namespace {

constexpr std::size_t kMostStages = 12;
constexpr double kRoom = 273.15 + 20.0;  // [K]
/// [-] of a measured, effective coefficient on top that is convection and dries: 75 to 80 % of the heat was radiation
/// (Baik, Grabowski, Trigui, Marcotte and Castaigne 1999, J. Food Sci. 64, 688).
constexpr double kConvectiveShare = 0.25;

/// Where the reading stands: the stages so far decide what an oven that is switched off cools from.
struct Reading {
  FieldReader& reader;
  std::string prefix;
  std::optional<Transfer> transfer;

  std::string at(const std::string& path) const { return prefix + path; }
};

std::optional<Transfer> read_transfer(const Reading& in) {
  if (!in.reader.has(in.at("transfer"))) return std::nullopt;
  const auto read = [&](const std::string& side) {
    return in.reader
        .required(in.at("transfer." + side), Dimension::kTransfer, side + "'s surface coefficient", "20 W/m2K")
        .value_or(0.0);
  };
  return Transfer{read("top"), read("wall"), read("base")};
}

struct ReadStage {
  Stage stage;
  Place place = Place::kOven;
  std::optional<double> bath;
};

/// {air, for, from?, in?, bath?, lag?, off?} at `path`.
std::optional<ReadStage> read_stage(const Reading& in, const std::string& path,
                                    const std::optional<double>& air_before) {
  static const std::vector<std::string_view> kOff{"shut", "open"};
  FieldReader& reader = in.reader;
  ReadStage read;
  const auto place = reader.choice(path + "in", place_names());
  read.place = static_cast<Place>(place.value_or(0));
  const auto off = reader.choice(path + "off", kOff);
  const auto air = off ? reader.quantity(path + "air", Dimension::kTemperature).value_or(kRoom)
                       : reader.required(path + "air", Dimension::kTemperature, "stage's air temperature", "190 C");
  const auto length = reader.required(path + "for", Dimension::kDuration, "stage's length", "12 min");
  read.bath = reader.quantity(path + "bath", Dimension::kTemperature);
  read.stage.air_before = reader.quantity(path + "from", Dimension::kTemperature);
  read.stage.lag = reader.quantity(path + "lag", Dimension::kDuration).value_or(0.0);
  if (off) {
    if (!air_before && !read.stage.air_before) {
      reader.fault(ProblemCode::kContradiction, path + "off",
                   "an oven that is switched off has to have been hot: put a stage before this one");
    }
    if (!read.stage.air_before) read.stage.air_before = air_before;
    if (read.stage.lag <= 0.0) read.stage.lag = *off == 0 ? kOvenLagShut : kOvenLagOpen;
  }
  if (read.stage.lag > 0.0 && !read.stage.air_before) {
    reader.fault(ProblemCode::kMissing, path + "from", "say what temperature the air drifts from, like 180 C");
  }
  if (!air || !length) return std::nullopt;
  read.stage.air = *air;
  read.stage.duration = *length;
  return read;
}

std::vector<ReadStage> read_stages(const Reading& in, const std::string& path) {
  std::vector<ReadStage> stages;
  if (!in.reader.has(path)) {
    in.reader.fault(ProblemCode::kMissing, path,
                    "the programme is missing; give stages like [{\"air\": \"190 C\", \"for\": \"12 min\"}]");
    return stages;
  }
  const std::size_t count = in.reader.length(path).value_or(0);
  if (count == 0) {
    in.reader.fault(ProblemCode::kMissing, path, "a programme needs at least one stage");
  } else if (count > kMostStages) {
    in.reader.fault(ProblemCode::kOutOfRange, path, "a programme has at most 12 stages");
    in.reader.skip(path + ".");
    return stages;
  }
  std::optional<double> air_before;
  for (std::size_t i = 0; i < count; ++i) {
    const auto stage = read_stage(in, path + "." + std::to_string(i) + ".", air_before);
    if (!stage) continue;
    air_before = stage->stage.air;
    stages.push_back(*stage);
  }
  return stages;
}

Surroundings around(const Reading& in, const ReadStage& stage, Material material) {
  Surroundings usual = surroundings_in(stage.place, material, stage.bath);
  if (!in.transfer) return usual;
  Surroundings given = surroundings_of(*in.transfer);
  given.humidity = usual.humidity;
  given.top.drying = usual.top.drying > 0.0 ? kConvectiveShare * in.transfer->top : 0.0;
  if (stage.bath) given.wall.held_at = given.base.held_at = stage.bath;
  return given;
}

std::optional<FilledPan> read_filled_pan(const Reading& in, const std::string& where) {
  FilledPan filled;
  const auto pan = read_pan(in.reader, in.at(where + "pan."));
  filled.is_lined = in.reader.has(in.at(where + "lining"));
  if (filled.is_lined) filled.lining = read_lining(in.reader, in.at(where + "lining")).value_or(Lining{});
  filled.fill_height =
      in.reader.required(in.at(where + "fill.height"), Dimension::kLength, "filling's height", "25 mm").value_or(0.0);
  if (!pan) return std::nullopt;
  filled.pan = *pan;
  return filled;
}

std::optional<Substance> made(const Reading& in, const std::string& path, const SubstanceChoice& choice) {
  const auto substance = choice.food ? make_substance(*choice.food) : make_substance(*choice.constants);
  if (substance) return *substance;
  in.reader.fault(substance.problem(), in.at(path + "."));
  return std::nullopt;
}

std::optional<BakeJob::Cooling> read_cooling(const Reading& in) {
  if (!in.reader.has(in.at("cool"))) return std::nullopt;
  BakeJob::Cooling cooling;
  cooling.room = in.reader.quantity(in.at("cool.room"), Dimension::kTemperature).value_or(kRoom);
  cooling.rack = in.reader.quantity(in.at("cool.rack"), Dimension::kDuration);
  cooling.store = in.reader.quantity(in.at("cool.store"), Dimension::kTemperature);
  return cooling;
}

/// All but the pans.
std::optional<BakeJob> read_rest(const Reading& in, const BakePans& pans) {
  FieldReader& reader = in.reader;
  const std::size_t faults_before = reader.faults().size();
  const auto fill = read_substance(reader, in.at("fill.substance"), "filling");
  std::optional<SubstanceChoice> crust;
  if (pans.mine.is_lined) crust = read_substance(reader, in.at("lining.substance"), "lining");
  const double start =
      reader.required(in.at("start"), Dimension::kTemperature, "food's starting temperature", "20 C").value_or(0.0);
  const auto until = reader.quantity(in.at("until.core"), Dimension::kTemperature);
  if (until && pans.recipe) {
    reader.fault(ProblemCode::kContradiction, in.at("until.core"),
                 "the recipe's own time says when it is done; leave out either it or this temperature");
  }
  if (pans.recipe && reader.has(in.at("stages"))) {
    reader.skip(in.at("stages"));
    reader.fault(ProblemCode::kContradiction, in.at("stages"),
                 "the recipe's stages are carried over to this pan; leave these out");
  }
  const auto stages = read_stages(in, in.at(pans.recipe ? "recipe.stages" : "stages"));
  const auto every = reader.quantity(in.at("report_every"), Dimension::kDuration);
  const auto cooling = read_cooling(in);
  if (reader.faults().size() > faults_before || !fill) return std::nullopt;
  const auto filling = made(in, "fill.substance", *fill);
  const auto dough = crust ? made(in, "lining.substance", *crust) : filling;
  if (!filling || !dough) return std::nullopt;
  BakeJob job{
      .mine = pans.mine, .recipe = pans.recipe, .fill = *fill, .crust = crust, .substances = {*filling, *dough}};
  const Material material = pans.recipe ? pans.recipe->pan.material : pans.mine.pan.material;
  for (const ReadStage& read : stages) {
    job.stages.push_back(read.stage);
    job.stages.back().around = around(in, read, material);
    job.my_surroundings.push_back(around(in, read, pans.mine.pan.material));
  }
  job.start = start;
  job.until_coldest = until;
  job.report_every = every.value_or(job.report_every);
  job.cooling = cooling;
  job.is_dry = fill->constants && (!crust || crust->constants);
  // Cakes and crusts keep at room temperature once baked; fillings do not.
  job.egg_or_dairy =
      fill->mixture != nullptr && fill->mixture->egg_or_dairy && fill->mixture->use == MixtureUse::kFilling;
  return job;
}

}  // namespace

const std::vector<std::string_view>& place_names() {
  static const std::vector<std::string_view> names{"oven", "fan oven", "rack", "refrigerator", "freezer"};
  return names;
}

std::optional<BakeJob> read_bake_job(FieldReader& reader, const std::string& prefix) {
  const std::size_t faults_before = reader.faults().size();
  Reading in{reader, prefix, std::nullopt};
  const auto mine = read_filled_pan(in, "");
  std::optional<FilledPan> recipe;
  const bool has_recipe = reader.has(in.at("recipe"));
  if (has_recipe) recipe = read_filled_pan(in, "recipe.");
  if (recipe && mine && recipe->is_lined != mine->is_lined) {
    reader.fault(ProblemCode::kContradiction, in.at("recipe.lining"),
                 "line both pans or neither: the recipe's bake says nothing of the other kind");
  }
  in.transfer = read_transfer(in);
  BakePans pans{mine.value_or(FilledPan{}), has_recipe ? std::optional(recipe.value_or(FilledPan{})) : std::nullopt};
  pans.mine.is_lined = reader.has(in.at("lining"));
  const auto job = read_rest(in, pans);
  if (!mine || (has_recipe && !recipe) || reader.faults().size() > faults_before) return std::nullopt;
  return job;
}

std::optional<BakeJob> read_bake_job(FieldReader& reader, const std::string& prefix, const BakePans& pans) {
  return read_rest({reader, prefix, std::nullopt}, pans);
}

}  // namespace tinwright
