// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A picture that a drag turns. web/turning.js posts how far the pointer is from where it came down, so that a drag of
// which the page took in only some moves still ends at the right place.
#include <algorithm>
#include <cmath>
#include <cstdlib>

#include "app/view/controls.h"

namespace tinwright::view {
namespace {

constexpr float kTurnPerPx = 0.5f;  // [°] for each css px

/// `text` holds the number of the drag and how far it went right and down [css px].
void take_drag(Turn& turn, const std::string& text) {
  char* at = nullptr;
  const long drag = std::strtol(text.c_str(), &at, 10);
  const auto right = static_cast<float>(std::strtol(at, &at, 10));
  const auto down = static_cast<float>(std::strtol(at, &at, 10));
  if (drag != turn.drag) {
    turn.drag = drag;
    turn.round_before = turn.round;
    turn.above_before = turn.above;
  }
  const float round = std::fmod(turn.round_before + kTurnPerPx * right, 360.0f);
  turn.round = round < 0.0f ? round + 360.0f : round;
  turn.above = std::clamp(turn.above_before + kTurnPerPx * down, 0.0f, 90.0f);
}

}  // namespace

void turning_picture(Key key, Text description, float height_em, Turn& turn, const Drawing& draw) {
  Mirror& mirror = surface().mirror();
  std::string drag;
  if (mirror.take(mirror.id_of(key), ActionKind::kEdit, &drag)) take_drag(turn, drag);
  const std::size_t node = mirror.nodes().size();
  picture(key, description, 0.0f, height_em, draw);
  mirror.at(node).flags |= node_flag::kTurns;
}

}  // namespace tinwright::view
