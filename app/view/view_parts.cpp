// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The forms of the dough and of the filling.
#include "app/files/catalogue.h"
#include "app/view/views.h"

namespace tinwright::view {
namespace {

struct MixtureList {
  std::vector<std::string> labels{"Own density"};
  std::vector<const Mixture*> mixtures{nullptr};
  std::vector<ChoiceGroup> groups;
};

MixtureList list_of(std::initializer_list<std::pair<MixtureUse, const char*>> uses) {
  MixtureList list;
  for (const auto& [use, title] : uses) {
    list.groups.push_back({title, static_cast<int>(list.labels.size())});
    for (const Mixture& mixture : catalogue_mixtures()) {
      if (mixture.use != use) continue;
      list.labels.push_back(mixture.name);
      list.mixtures.push_back(&mixture);
    }
  }
  return list;
}

/// Chooses a mixture by id; the empty id is an own density. Returns the mixture chosen.
const Mixture* edit_mixture(Key key, Text label, std::string& id, const MixtureList& list, bool& changed) {
  int index = 0;
  for (std::size_t i = 1; i < list.mixtures.size(); ++i) {
    if (list.mixtures[i]->id == id) index = static_cast<int>(i);
  }
  if (choice(key, label, index, list.labels, list.groups)) {
    id = index == 0 ? "" : list.mixtures[static_cast<std::size_t>(index)]->id;
    changed = true;
  }
  return list.mixtures[static_cast<std::size_t>(index)];
}

/// "1.05 g/ml, ±4 %. …" under the choice.
void describe_mixture(Key key, const Mixture* mixture) {
  if (mixture == nullptr) return;
  const std::string spread = mixture->spread.empty() ? "" : ", " + mixture->spread;
  const std::string about = mixture->note.empty() ? "" : ". " + mixture->note;
  remark(key, mixture->density + spread + about);
}

void show_problem(const std::string& path, const BenchAnswer& answer) {
  const auto problem = answer.problems.find(path);
  if (problem != answer.problems.end()) note(path + "/problem", NoteKind::kError, problem->second);
}

}  // namespace

bool edit_dough(DoughEntry& dough, const BenchAnswer& answer) {
  static const MixtureList list = list_of({{MixtureUse::kDough, "Doughs and crusts"}});
  bool changed = false;
  const Mixture* mixture = edit_mixture("dough.dough", "Kind of dough", dough.mixture, list, changed);
  describe_mixture("dough/about", mixture);
  if (mixture == nullptr) {
    changed |= edit_text("dough.", "density", "Dough's density", dough.texts, answer.problems, {.hint = "1.2 g/ml"});
  }
  int cover = static_cast<int>(dough.cover);
  if (segments("dough.cover", "Pressed over", cover, {"Floor", "Floor and wall", "Loose slab"})) {
    dough.cover = static_cast<Cover>(cover);
    changed = true;
  }
  changed |= edit_text("dough.", "mass", "Dough there is", dough.texts, answer.problems,
                       {.hint = "430 g", .help = "Leave it empty to see how much a thickness takes."});
  const bool is_slab = dough.cover == Cover::kSlab;
  changed |=
      edit_text("dough.", "thickness", "Thickness wanted", dough.texts, answer.problems,
                {.hint = "1/4 in", .help = is_slab ? "" : "Leave it empty to see how thick the dough presses out."});
  if (dough.cover == Cover::kFloorAndWall) {
    changed |= edit_text("dough.", "wall_height", "Crust stands up to", dough.texts, answer.problems,
                         {.hint = "4 cm", .help = "Above the pan's floor. Leave it empty for the whole wall."});
  }
  show_problem("dough.pan", answer);
  return changed;
}

bool edit_filling(FillingEntry& filling, const BenchAnswer& answer) {
  static const MixtureList list = list_of({{MixtureUse::kFilling, "Fillings"}, {MixtureUse::kBatter, "Batters"}});
  bool changed = false;
  const Mixture* mixture = edit_mixture("filling.filling", "Kind of filling or batter", filling.mixture, list, changed);
  describe_mixture("filling/about", mixture);
  if (mixture == nullptr) {
    changed |=
        edit_text("filling.", "density", "Filling's density", filling.texts, answer.problems, {.hint = "1.05 g/ml"});
  }
  changed |=
      edit_text("filling.", "amount", "Filling there is", filling.texts, answer.problems,
                {.hint = "900 g or 4 cups", .help = "A weight or a volume. Leave it empty to see what a level takes."});
  changed |= edit_text(
      "filling.", "level", "Fill to", filling.texts, answer.problems,
      {.hint = "3/4 or 75 %", .help = "Of the shell's depth. Leave it empty to see how far the filling goes."});
  const std::string usual = mixture != nullptr && !mixture->rise.empty() ? mixture->rise : "1";
  changed |= edit_text("filling.", "rise", "Rises to so many times its volume", filling.texts, answer.problems,
                       {.hint = usual, .help = "Usual for this kind where left empty."});
  return changed;
}

}  // namespace tinwright::view
