// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See oven.h.
#include "app/plan/oven.h"

#include <algorithm>
#include <cmath>

#include "app/plan/bake_job.h"
#include "app/quantity/parse.h"

namespace tinwright {
namespace {

constexpr std::size_t kMostCurvePoints = 600;  // as many as a wide screen can show
constexpr std::size_t kMostFrames = 120;

/// What goes into the oven: the filling in its shell, or dough alone.
struct Food {
  BakePans pans;
  std::string fill, crust;  // ids of mixtures
};

/// My pan as the bench filled it; nothing, with the reason as the problem "oven", where it is not complete.
std::optional<Food> food_in_my_pan(const Bench& bench, const BenchAnswer& answer, Texts& problems) {
  const auto refuse = [&](const char* why) -> std::optional<Food> {
    problems["oven"] = why;
    return std::nullopt;
  };
  if (!answer.my_pan) return refuse("My pan is not complete yet.");
  Food food;
  food.pans.mine.pan = *answer.my_pan;
  if (answer.fill && answer.fill_job) {
    food.fill = bench.filling.mixture;
    food.pans.mine.fill_height = answer.fill->height;
    if (answer.fill_job->lining) {
      food.pans.mine.is_lined = true;
      food.pans.mine.lining = *answer.fill_job->lining;
      food.crust = bench.dough.mixture;
      if (food.crust.empty()) return refuse("Choose a kind of dough: its density alone does not say how it bakes.");
    }
    if (food.fill.empty()) return refuse("Choose a kind of filling: its density alone does not say how it bakes.");
    return food;
  }
  if (answer.press && bench.dough.cover != Cover::kFloorAndWall) {
    food.fill = bench.dough.mixture;
    food.pans.mine.fill_height = answer.press->floor_thickness;
    if (food.fill.empty()) return refuse("Choose a kind of dough: its density alone does not say how it bakes.");
    return food;
  }
  return refuse("Say how much filling there is, or how far up to fill.");
}

/// [m³] of filling in one cavity of my pan.
double filling_volume(const FilledPan& mine) {
  const auto cavity = mine.is_lined ? line_pan(mine.pan, mine.lining) : Result<Pan>(mine.pan);
  return cavity ? volume(*cavity, std::min(mine.fill_height, depth(*cavity))) : 0.0;
}

/// The recipe's pan with a lining as thick as mine and the filling as deep as the cook says, or as the same amount is.
std::optional<FilledPan> food_in_recipe_pan(const Bench& bench, const BenchAnswer& answer, const FilledPan& mine,
                                            Texts& problems) {
  FilledPan recipe = mine;
  recipe.pan = *answer.recipe_pan;
  if (mine.is_lined) {
    recipe.lining.height = std::min(depth(recipe.pan), depth(recipe.pan) * mine.lining.height / depth(mine.pan));
  }
  const auto cavity = recipe.is_lined ? line_pan(recipe.pan, recipe.lining) : Result<Pan>(recipe.pan);
  if (!cavity) {
    problems["oven.recipe_depth"] = "In the recipe's pan the crust does not work: " + cavity.problem().message;
    return std::nullopt;
  }
  const std::string text = text_of(bench.oven.texts, "recipe_depth");
  if (!text.empty()) {
    const auto given = parse_quantity(text, Dimension::kLength);
    if (given && *given <= depth(*cavity)) {
      recipe.fill_height = *given;
      return recipe;
    }
    problems["oven.recipe_depth"] = !given            ? "This has to be a length, like 4 cm."
                                    : recipe.is_lined ? "That is higher than the crust would stand in the recipe's pan."
                                                      : "That is higher than the recipe's pan.";
    return std::nullopt;
  }
  const double mine_all = filling_volume(mine) * mine.pan.count;
  const auto height = fill_height(*cavity, mine_all / recipe.pan.count);
  if (height) {
    recipe.fill_height = *height;
    return recipe;
  }
  problems["oven.recipe_depth"] = "This amount does not fit the recipe's pan: say how high the filling stands in it.";
  return std::nullopt;
}

Fields oven_fields(const Bench& bench, const Food& food) {
  Fields fields;
  const std::string in = "oven.";
  const auto add = [&](const std::string& path, const std::string& text) {
    if (!text.empty()) fields[in + path] = {text};
  };
  add("fill.substance", food.fill);
  if (food.pans.mine.is_lined) add("lining.substance", food.crust);
  const std::string start = text_of(bench.oven.texts, "start");
  add("start", start.empty() ? "20 C" : start);
  add("report_every", "1 min");
  const std::string stages = food.pans.recipe ? "recipe.stages" : "stages";
  fields[in + stages] = {"", JsonNode::Kind::kArray};
  for (std::size_t i = 0; i < bench.oven.stages.size(); ++i) {
    const std::string item = stages + "." + std::to_string(i);
    fields[in + item] = {"", JsonNode::Kind::kObject};
    const StageEntry& stage = bench.oven.stages[i];
    const bool is_off = stage.air == AirEntry::kOffShut || stage.air == AirEntry::kOffOpen;
    add(item + ".in", std::string(place_names()[stage.place]));
    add(item + ".for", text_of(stage.texts, "for"));
    if (is_off) add(item + ".off", stage.air == AirEntry::kOffShut ? "shut" : "open");
    if (!is_off) add(item + ".air", text_of(stage.texts, "air"));
    if (stage.air == AirEntry::kRamp) fields[in + item + ".from"] = {text_of(stage.texts, "from")};
    if (stage.has_bath) fields[in + item + ".bath"] = {text_of(stage.texts, "bath")};
  }
  fields[in + "cool"] = {"", JsonNode::Kind::kObject};
  add("cool.rack", text_of(bench.oven.texts, "rack"));
  if (bench.oven.store > 0) add("cool.store", bench.oven.store == 1 ? "4 C" : "-18 C");
  return fields;
}

void note_problems(Texts& problems, const std::vector<Fault>& faults) {
  for (const Fault& fault : faults) {
    std::string path = fault.place;
    const std::string recipe = "oven.recipe.";
    if (path.rfind(recipe, 0) == 0) path = "oven." + path.substr(recipe.size());
    if (path.rfind("oven.cool.", 0) == 0) path = "oven." + path.substr(std::string("oven.cool.").size());
    const bool has_field = path.rfind("oven.stages.", 0) == 0 || path == "oven.start" || path == "oven.rack";
    problems.emplace(has_field ? path : "oven", fault.message);
  }
}

void add_curve(OvenAnswer& shown, const BakeJobAnswer& answer) {
  const auto& rows = answer.run.history;
  const std::size_t every = rows.size() / kMostCurvePoints + 1;
  for (std::size_t i = 0; i < rows.size(); i += every) {
    shown.curve.push_back({rows[i].time, rows[i].air, rows[i].watched, rows[i].mean});
  }
  shown.oven_ends = answer.oven_time;
  if (!answer.timing || !answer.timing->reached) return;
  shown.early = answer.timing->band.early;
  shown.late = answer.timing->band.late;
}

/// The cells of the cut: of a rectangle those along its middle plane.
void add_frames(OvenAnswer& shown, const BakeJobAnswer& answer) {
  std::vector<std::size_t> cut;
  for (std::size_t i = 0; i < answer.grid.cells.size(); ++i) {
    const HeatGrid::Cell& cell = answer.grid.cells[i];
    if (cell.size[1] > 0.0 && cell.middle[1] > 0.51 * cell.size[1]) continue;
    cut.push_back(i);
    shown.patches.push_back({cell.middle[0] - 0.5 * cell.size[0], cell.middle[2] - 0.5 * cell.size[2], cell.size[0],
                             cell.size[2], cell.part == Part::kDough});
  }
  const auto& fields = answer.run.fields;
  const std::size_t every = fields.size() / kMostFrames + 1;
  bool is_first = true;
  for (std::size_t i = 0; i < fields.size(); i += every) {
    std::vector<double> frame;
    for (const std::size_t cell : cut) frame.push_back(fields[i][cell]);
    const auto [low, high] = std::minmax_element(frame.begin(), frame.end());
    shown.coldest_shown = is_first ? *low : std::min(shown.coldest_shown, *low);
    shown.warmest_shown = is_first ? *high : std::max(shown.warmest_shown, *high);
    is_first = false;
    shown.frame_times.push_back(answer.run.history[i].time);
    shown.frames.push_back(std::move(frame));
  }
}

}  // namespace

OvenAnswer pictures_of(const BakeJobAnswer& solved) {
  OvenAnswer shown;
  add_curve(shown, solved);
  add_frames(shown, solved);
  return shown;
}

OvenAnswer answer_oven(const Bench& bench, const BenchAnswer& answer, const Progress& progress) {
  OvenAnswer shown;
  if (bench.oven.stages.empty()) return shown;
  auto food = food_in_my_pan(bench, answer, shown.problems);
  if (!food) return shown;
  if (bench.has_recipe_pan && answer.recipe_pan) {
    food->pans.recipe = food_in_recipe_pan(bench, answer, food->pans.mine, shown.problems);
    if (!food->pans.recipe) return shown;
  }
  const Fields fields = oven_fields(bench, *food);
  FieldReader reader(fields);
  const auto job = read_bake_job(reader, "oven.", food->pans);
  std::optional<BakeJobAnswer> solved;
  if (job) solved = solve_bake(reader, *job, "oven.", progress);
  note_problems(shown.problems, reader.faults());
  if (!solved) return shown;
  shown.sentence = bake_sentence(*job, *solved, bench.units);
  for (const ReportLine& line : describe_bake(*job, *solved, bench.units)) {
    (line.kind == ReportLine::Kind::kCaution ? shown.cautions : shown.report).push_back(line);
  }
  add_curve(shown, *solved);
  add_frames(shown, *solved);
  return shown;
}

}  // namespace tinwright
