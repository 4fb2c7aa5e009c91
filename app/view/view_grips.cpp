// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See view_grips.h.
#include "app/view/view_grips.h"

#include <algorithm>

#include "imgui.h"

namespace tinwright::view {

Grips::~Grips() {
  // Only now: the finger's last movement may have come together with its going.
  if (look_.held.empty() || ImGui::GetIO().MouseDown[0]) return;
  look_.held.clear();
  surface().ask_frame_in(0.0);
}

double Grips::scale(Drawn drawn, double fitting) {
  double& kept = look_.px_per_m[static_cast<std::size_t>(drawn)];
  kept = is_holding() ? std::min(kept, fitting) : fitting;
  return kept;
}

double Grips::shown(double fitting) {
  if (!is_holding()) look_.shown = fitting;
  return look_.shown;
}

void Grips::put(Key key, Grip which, const std::string& aside, float x, float y, Way outwards, double px_per_m) {
  const auto state = grip_state(bench_, answer_, which);
  if (!state) return;
  const GripValue value{state->at, state->first, state->last, state->words, state->figure, outwards != Way::kRight};
  const GripMove move = grip(key, state->name + aside, x, y, value, look_.held == key);
  if (move.is_begun) {
    look_.held = key;
    look_.from = *state;
    look_.before = bench_;
    ++look_.steps;
  }
  if (move.is_dragged && look_.held == key) {
    const float by = outwards == Way::kRight ? move.right : outwards == Way::kDown ? move.down : -move.down;
    const int to = dragged_to(look_.from, which, by / px_per_m, bench_.units);
    // Back where it came from, a pan of the catalogue is one again.
    if (to == look_.from.at) {
      changed_ |= state->at != to;
      if (state->at != to) bench_ = look_.before;
    } else {
      changed_ |= move_grip(bench_, answer_, which, to);
    }
  }
  if (move.step && move_grip(bench_, answer_, which, *move.step)) {
    ++look_.steps;
    changed_ = true;
  }
}

}  // namespace tinwright::view
