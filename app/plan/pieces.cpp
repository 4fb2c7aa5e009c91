// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See pieces.h.
#include "app/plan/pieces.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace tinwright {
namespace {

constexpr double kWorthKeeping = 0.005;  // [kg] of what is left over
constexpr int kMostPieces = 1000;        // beyond that nobody minds a part of one

bool is_whole(double pieces) {
  return std::abs(pieces - std::round(pieces)) <= kWholePiece;
}

/// The factors at which `item` comes out whole, next below and above.
void offer_whole(const RecipeItem& item, double factor, std::vector<WholeFactor>& offers) {
  const double pieces = item.amount * factor;
  if (item.measure != Measure::kPieces || item.amount <= 0.0 || item.most > item.least) return;
  const bool is_small = item.piece > 0.0 && item.piece < kSmallestPiece;
  if (is_whole(pieces) || is_small || pieces > kMostPieces) return;
  for (const double whole : {std::floor(pieces), std::ceil(pieces)}) {
    if (whole < 1.0) continue;

    offers.push_back({whole / item.amount, item.food, static_cast<int>(whole)});
  }
}

bool is_container(const std::string& size) {
  static const std::vector<std::string> kContainers{"tin", "can", "jar", "packet", "pack", "bottle", "carton", "tub"};
  return std::any_of(kContainers.begin(), kContainers.end(),
                     [&](const std::string& each) { return size == each || size == each + "s"; });
}

std::string words_for(const std::optional<Keeping>& keeps) {
  if (!keeps) return "";
  std::string words;
  if (!keeps->refrigerator.empty()) words = "keeps " + keeps->refrigerator + " in the refrigerator";
  if (!keeps->freezer.empty()) words += (words.empty() ? "keeps " : ", ") + keeps->freezer + " in the freezer";
  return words;
}

/// Pieces used of each ingredient, over all parts, and what one of them weighs.
struct Use {
  double pieces = 0.0;
  double piece = 0.0;  // [kg]
  const RecipeItem* item = nullptr;
};

std::map<std::string, Use> count_uses(const Job& job, const std::vector<PartPlan>& parts) {
  std::map<std::string, Use> uses;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    for (std::size_t k = 0; k < job.parts[i].items.size(); ++k) {
      const RecipeItem& item = job.parts[i].items[k];
      if (item.measure != Measure::kPieces || item.piece <= 0.0) continue;
      Use& use = uses[(item.known == nullptr ? item.food : item.known->id) + "/" + item.size];
      use.pieces += parts[i].items[k].amount;
      use.piece = item.piece;
      use.item = &item;
    }
  }
  return uses;
}

/// Pieces of the ingredient of that id, whatever their size.
double pieces_of(const std::map<std::string, Use>& uses, const std::string& id) {
  double pieces = 0.0;
  for (const auto& [key, use] : uses) {
    if (use.item->known != nullptr && use.item->known->id == id) pieces += use.pieces;
  }
  return pieces;
}

/// What the other half of a parted piece leaves: whites for yolks.
std::optional<ByProduct> other_half(const std::map<std::string, Use>& uses, const Use& use) {
  if (use.item->known == nullptr || use.item->known->left_over.empty()) return std::nullopt;
  const Ingredient* other = find_ingredient(use.item->known->left_over);
  if (other == nullptr) return std::nullopt;
  const double own = std::ceil(pieces_of(uses, use.item->known->id) - kWholePiece);
  const double over = own - pieces_of(uses, other->id);
  const double mass = over * weigh_pieces(*other, 1.0).value_or(0.0);
  if (over <= 0.0 || mass < kWorthKeeping) return std::nullopt;
  return ByProduct{other->name, mass, over, words_for(other->keeps)};
}

/// The rest of a piece that was opened for a part of it.
std::optional<ByProduct> rest_of_piece(const Use& use) {
  const bool is_opened = is_container(use.item->size) || (use.item->known != nullptr && use.item->known->egg);
  if (!is_opened || is_whole(use.pieces) || use.pieces > kMostPieces) return std::nullopt;
  const double mass = (std::ceil(use.pieces) - use.pieces) * use.piece;
  if (mass < kWorthKeeping) return std::nullopt;
  const std::string what = is_container(use.item->size) ? ", opened " + use.item->size : ", beaten";
  const std::optional<Keeping> keeps = use.item->known == nullptr ? std::nullopt : use.item->known->keeps;
  return ByProduct{use.item->food + what, mass, 0.0, words_for(keeps)};
}

}  // namespace

void scale_items(const RecipePart& part, PartPlan& plan) {
  plan.items.clear();
  plan.whole.clear();
  for (const RecipeItem& item : part.items) {
    plan.items.push_back({plan.factor * item.amount, plan.factor * item.mass});
    offer_whole(item, plan.factor, plan.whole);
  }
  // The nearest factors first; the same one is offered once.
  std::stable_sort(plan.whole.begin(), plan.whole.end(), [&](const WholeFactor& a, const WholeFactor& b) {
    return std::abs(a.factor - plan.factor) < std::abs(b.factor - plan.factor);
  });
  constexpr std::size_t kMostOffers = 4;
  if (plan.whole.size() > kMostOffers) plan.whole.resize(kMostOffers);
}

void press_on_trays(const Job& job, Plan& plan) {
  for (std::size_t i = 0; i < job.parts.size(); ++i) {
    const RecipePart& part = job.parts[i];
    const std::optional<Pan>& tray = part.my_tray ? part.my_tray : part.tray;
    if (part.role != Role::kCrumbled || !tray || part.density <= 0.0) continue;
    PressQuestion question;
    question.dough = plan.parts[i].mass / part.density / tray->count;
    question.cover = part.thickness ? Cover::kSlab : Cover::kFloor;
    question.thickness = part.thickness;
    const auto pressed = press_dough(*tray, question);
    if (pressed) plan.parts[i].on_tray = *pressed;
  }
}

std::vector<ByProduct> find_by_products(const Job& job, const std::vector<PartPlan>& parts) {
  std::vector<ByProduct> found;
  const auto uses = count_uses(job, parts);
  std::vector<std::string> parted;  // ingredients whose other half has been said
  for (const auto& [key, use] : uses) {
    const std::string id = use.item->known == nullptr ? key : use.item->known->id;
    if (std::find(parted.begin(), parted.end(), id) == parted.end()) {
      if (auto half = other_half(uses, use)) found.push_back(std::move(*half));
      parted.push_back(id);
    }
    if (auto rest = rest_of_piece(use)) found.push_back(std::move(*rest));
  }
  return found;
}

}  // namespace tinwright
