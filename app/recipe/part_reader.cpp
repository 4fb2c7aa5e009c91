// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The parts of a recipe and what goes into them, from fields. What cannot be weighed is left open, not guessed in
// silence.
#include <algorithm>
#include <cmath>
#include <string_view>
#include <utility>

#include "app/files/pan_reader.h"
#include "app/quantity/parse.h"
#include "app/recipe/job_detail.h"
#include "geometry/heat/food_properties.h"

namespace tinwright {
namespace {

constexpr std::size_t kMostParts = 40;
constexpr std::size_t kMostItems = 400;
constexpr double kWater = 1000.0;         // [kg/m³]
constexpr double kSureEnough = 0.55;      // [-] of a match in the catalogue
constexpr double kNearlyAll = 0.95;       // [-] of a part's mass that has to be known for its own composition
constexpr double kUsualDensity = 1050.0;  // [kg/m³] batters, custards and doughs without more air than mixing leaves
constexpr double kMostMass = 1000.0;      // [kg] of one item
constexpr double kMostPieces = 100000.0;

/// Mass [kg], volume [m³] or pieces, whichever the text can be read as.
struct Amount {
  Measure measure = Measure::kNone;
  double value = 0.0;
};

std::optional<Amount> read_amount(FieldReader& reader, const std::string& path) {
  const std::string text = reader.text(path).value_or("");
  if (const auto mass = parse_quantity(text, Dimension::kMass)) return Amount{Measure::kMass, *mass};
  if (const auto volume = parse_quantity(text, Dimension::kVolume)) return Amount{Measure::kVolume, *volume};
  if (const auto pieces = parse_quantity(text, Dimension::kRatio)) {
    if (text.find('%') == std::string::npos) return Amount{Measure::kPieces, *pieces};
  }
  // The reader's own words for what is wrong, as for a mass unless the text is meant as something else.
  const auto mass = parse_quantity(text, Dimension::kMass);
  reader.fault(mass.problem().code, path,
               "this has to be a mass (\"120 g\"), a volume (\"1 1/2 cup\") or a number of pieces (\"3\")");
  return std::nullopt;
}

/// [m³] of what is taken between the fingers: a sixteenth and an eighth of a teaspoon, a twentieth of a millilitre
/// (common practice, no source).
constexpr std::pair<std::string_view, double> kTiny[] = {{"pinch", 0.308e-6}, {"dash", 0.616e-6}, {"drop", 0.05e-6}};

const std::vector<std::string>& plain_sizes() {
  static const std::vector<std::string> sizes{"small", "medium", "large", "extra-large", "extra large"};
  return sizes;
}

/// The mass of one piece [kg]; 0 where nobody knows.
double piece_mass(FieldReader& reader, const std::string& at, const RecipeItem& item) {
  if (reader.has(at + "each")) {
    const auto each = read_amount(reader, at + "each");
    if (!each || each->measure == Measure::kPieces) return 0.0;
    if (each->measure == Measure::kMass) return each->value;
    return each->value * (item.known != nullptr && item.known->cup_density ? *item.known->cup_density : kWater);
  }
  for (const auto& [name, volume] : kTiny) {
    if (item.size != name) continue;
    return volume * (item.known != nullptr && item.known->cup_density ? *item.known->cup_density : kWater);
  }
  if (item.known == nullptr) return 0.0;
  if (const auto mass = weigh_pieces(*item.known, 1.0, item.size)) return *mass;
  // A size the catalogue does not tell apart is the usual piece; a tin or a stick is not.
  const auto& sizes = plain_sizes();
  const bool is_plain = std::find(sizes.begin(), sizes.end(), item.size) != sizes.end();
  return is_plain ? weigh_pieces(*item.known, 1.0).value_or(0.0) : 0.0;
}

void weigh(FieldReader& reader, const std::string& at, RecipeItem& item) {
  const auto own_density = positive(reader, at + "density", Dimension::kDensity, 20.0, 5000.0);
  if (item.measure == Measure::kMass) item.mass = item.amount;
  if (item.measure == Measure::kPieces) {
    item.piece = piece_mass(reader, at, item);
    item.mass = item.amount * item.piece;
  }
  if (item.measure != Measure::kVolume) return;
  const bool is_known = item.known != nullptr && item.known->cup_density;
  item.is_taken_as_water = !own_density && !is_known;
  item.mass = item.amount * (own_density ? *own_density : is_known ? *item.known->cup_density : kWater);
}

const Ingredient* identify(FieldReader& reader, const std::string& at, const std::string& food) {
  if (reader.has(at + "known")) {
    const std::string id = reader.text(at + "known").value_or("");
    const Ingredient* chosen = find_ingredient(id);
    if (chosen == nullptr && id != "none") {
      reader.fault(ProblemCode::kUnknown, at + "known",
                   "the catalogue has no ingredient called that; \"none\" is one too");
    }
    return chosen;
  }
  const auto match = match_ingredient(food);
  return match && match->confidence >= kSureEnough ? match->ingredient : nullptr;
}

RecipeItem read_item(FieldReader& reader, const std::string& at) {
  RecipeItem item;
  item.said = reader.text(at + "said").value_or("");
  item.food = reader.text(at + "food").value_or("");
  item.remark = reader.text(at + "remark").value_or("");
  item.size = reader.text(at + "size").value_or("");
  if (item.food.empty()) {
    item.food = item.said;
    if (item.food.empty()) {
      reader.fault(ProblemCode::kMissing, at + "food", "say what this is, like \"plain flour\"");
    }
  }
  item.known = identify(reader, at, item.food);
  if (!reader.has(at + "amount")) {
    reader.skip(at + "each");
    return item;
  }
  const auto least = read_amount(reader, at + "amount");
  if (!least) return item;
  item.measure = least->measure;
  item.least = item.most = item.amount = least->value;
  if (reader.has(at + "up_to")) {
    const auto most = read_amount(reader, at + "up_to");
    if (most && (most->measure != least->measure || most->value < least->value)) {
      reader.fault(ProblemCode::kContradiction, at + "up_to",
                   "the upper end has to be more than the lower one, in the same kind of measure");
    } else if (most) {
      item.most = most->value;
      item.amount = 0.5 * (item.least + item.most);
    }
  }
  weigh(reader, at, item);
  if (item.mass > kMostMass || (item.measure == Measure::kPieces && item.amount > kMostPieces)) {
    reader.fault(ProblemCode::kOutOfRange, at + "amount", "that is more than any kitchen uses; check the unit");
  }
  return item;
}

/// The composition of what is known, taken for all of it where that is nearly all.
std::optional<Composition> mix(const std::vector<RecipeItem>& items, double mass) {
  Composition sum;
  double known = 0.0, sugar = 0.0;
  for (const RecipeItem& item : items) {
    if (item.known == nullptr || !item.known->composition || item.mass <= 0.0) continue;
    const Composition& own = *item.known->composition;
    known += item.mass;
    sum.water += item.mass * own.water;
    sum.protein += item.mass * own.protein;
    sum.fat += item.mass * own.fat;
    sum.carbohydrate += item.mass * own.carbohydrate;
    sum.fibre += item.mass * own.fibre;
    sum.ash += item.mass * own.ash;
    sugar += item.mass * own.sugar.value_or(kUsualSugarShare * own.carbohydrate);
  }
  if (known <= 0.0 || known < kNearlyAll * mass) return std::nullopt;
  for (double* share : {&sum.water, &sum.protein, &sum.fat, &sum.carbohydrate, &sum.fibre, &sum.ash}) *share /= known;
  sum.sugar = std::min(sugar / known, sum.carbohydrate);
  const auto food = make_composition(sum);
  return food ? std::optional<Composition>(*food) : std::nullopt;
}

/// As it goes into the pan: as given, of the mixture, or of its ingredients without air.
void settle_density(FieldReader& reader, const std::string& at, RecipePart& part) {
  if (const auto given = positive(reader, at + "density", Dimension::kDensity, 20.0, 5000.0)) {
    part.density = *given;
  } else if (part.mixture != nullptr) {
    part.density = quantity_of(part.mixture->density, Dimension::kDensity).value_or(kUsualDensity);
  } else {
    part.is_density_guessed = true;
    part.density = part.composition ? food_properties(*part.composition, kDensityTemperature).density : kUsualDensity;
  }
  if (!part.composition) return;
  const double solid = food_properties(*part.composition, kDensityTemperature).density;
  part.composition->air = std::clamp(1.0 - part.density / solid, 0.0, kMostAir);
}

const Mixture* read_mixture(FieldReader& reader, const std::string& path) {
  const auto id = reader.text(path);
  if (!id || id->empty()) return nullptr;
  const Mixture* mixture = find_mixture(*id);
  if (mixture == nullptr) {
    reader.fault(ProblemCode::kUnknown, path, "the catalogue has no mixture called that; give a density instead");
  }
  return mixture;
}

RecipePart read_part(FieldReader& reader, const std::string& at) {
  RecipePart part;
  part.name = reader.text(at + "name").value_or("");
  if (!reader.has(at + "role")) {
    reader.fault(ProblemCode::kMissing, at + "role",
                 "say how this part meets the pan: base, lining, filling, topping or crumbled");
  }
  part.role = static_cast<Role>(reader.choice(at + "role", role_names()).value_or(2));
  const std::size_t count = length_of_list(reader, at + "ingredients", kMostItems);
  double mass = 0.0;
  for (std::size_t i = 0; i < count; ++i) {
    part.items.push_back(read_item(reader, at + "ingredients." + std::to_string(i) + "."));
    mass += part.items.back().mass;
  }
  part.mass = positive(reader, at + "mass", Dimension::kMass, 1e-3, kMostMass).value_or(mass);
  part.mixture = read_mixture(reader, at + "mixture");
  part.composition = mix(part.items, part.mass);
  settle_density(reader, at, part);
  part.thickness = positive(reader, at + "thickness", Dimension::kLength, 1e-4, 0.2);
  part.wall_height = positive(reader, at + "wall_height", Dimension::kLength, 1e-3, 0.5);
  part.level = positive(reader, at + "level", Dimension::kRatio, 0.01, 1.0);
  part.factor = positive(reader, at + "factor", Dimension::kRatio, 0.001, 1000.0);
  const double usual_rise =
      part.mixture == nullptr ? 1.0 : quantity_of(part.mixture->rise, Dimension::kRatio).value_or(1.0);
  part.rise = positive(reader, at + "rise", Dimension::kRatio, 1.0, 5.0).value_or(usual_rise);
  part.bake_loss = positive(reader, at + "bake_loss", Dimension::kRatio, 0.0, 0.9).value_or(0.0);
  if (reader.has(at + "tray")) part.tray = read_pan(reader, at + "tray.");
  if (reader.has(at + "my_tray")) part.my_tray = read_pan(reader, at + "my_tray.");
  return part;
}

}  // namespace

const std::vector<std::string_view>& role_names() {
  static const std::vector<std::string_view> names{"base", "lining", "filling", "topping", "crumbled"};
  return names;
}

std::optional<std::size_t> part_called(FieldReader& reader, const std::string& path,
                                       const std::vector<RecipePart>& parts) {
  const auto name = reader.text(path);
  if (!name) return std::nullopt;
  const auto found =
      std::find_if(parts.begin(), parts.end(), [&](const RecipePart& part) { return part.name == *name; });
  if (found != parts.end()) return static_cast<std::size_t>(found - parts.begin());
  reader.fault(ProblemCode::kUnknown, path, "there is no part called \"" + *name + "\"");
  return std::nullopt;
}

void read_parts(FieldReader& reader, Job& job) {
  const std::string path = "recipe.parts";
  const std::size_t count = length_of_list(reader, path, kMostParts);
  if (count == 0) {
    reader.fault(ProblemCode::kMissing, path, "the recipe has no parts; one part with its ingredients is the least");
  }
  for (std::size_t i = 0; i < count; ++i) {
    const std::string at = path + "." + std::to_string(i) + ".";
    RecipePart part = read_part(reader, at);
    if (part.name.empty()) part.name = count == 1 ? "All of it" : "Part " + std::to_string(i + 1);
    const bool is_known = std::any_of(job.parts.begin(), job.parts.end(),
                                      [&](const RecipePart& other) { return other.name == part.name; });
    if (is_known) {
      reader.fault(ProblemCode::kContradiction, at + "name", "two parts are called \"" + part.name + "\"");
    }
    job.parts.push_back(std::move(part));
  }
  for (std::size_t i = 0; i < count; ++i) {
    const std::string at = path + "." + std::to_string(i) + ".into";
    RecipePart& part = job.parts[i];
    part.into = part_called(reader, at, job.parts);
    const bool is_crumbled = part.role == Role::kCrumbled;
    if (is_crumbled && !reader.has(at)) {
      reader.fault(ProblemCode::kMissing, at, "say which part the crumbs of \"" + part.name + "\" go into");
    }
    if (part.into) {
      const double crumbs = part.mass * (1.0 - part.bake_loss);
      job.parts[*part.into].crumbs += crumbs;
      if (!reader.has(path + "." + std::to_string(*part.into) + ".mass")) job.parts[*part.into].mass += crumbs;
    }
    const bool leads_on = part.into && job.parts[*part.into].role == Role::kCrumbled;
    if (leads_on || (part.into && !is_crumbled)) {
      reader.fault(ProblemCode::kContradiction, at,
                   leads_on ? "crumbs go into a part that is not crumbled itself"
                            : "only a crumbled part goes into another one");
    }
  }
  for (std::size_t i = 0; i < count && reader.faults().empty(); ++i) {
    if (job.parts[i].mass > 0.0) continue;
    reader.fault(ProblemCode::kMissing, path + "." + std::to_string(i) + ".mass",
                 "nothing in \"" + job.parts[i].name + "\" can be weighed; give its ingredients' amounts, or its mass");
  }
}

}  // namespace tinwright
