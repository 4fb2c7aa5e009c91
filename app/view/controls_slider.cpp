// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// One of many steps in a row. The browser's own range input moves it, so finger, mouse and keys all work; only its
// looks are drawn here.
#include <algorithm>
#include <cmath>

#include "app/view/controls_detail.h"
#include "imgui.h"

namespace tinwright::view {
namespace {

constexpr float kKnob = 1.4f;   // [em] across; web/page.css has the same
constexpr float kTrack = 0.4f;  // [em] high

/// The label on the left, where it stands on the right.
void draw_label(const Rect& rect, Text label, Text words, bool enabled) {
  Surface& s = surface();
  const Palette& p = s.palette();
  const Face& face = s.faces().small;
  s.text(face, rect.x, rect.y, enabled ? p.ink : p.disabled_ink, label);
  s.text(face, rect.right() - s.text_size(face, words).width, rect.y, enabled ? p.soft_ink : p.disabled_ink, words);
}

void draw_track(const Rect& rect, float share, bool enabled) {
  Surface& s = surface();
  const Palette& p = s.palette();
  const float knob = s.px(kKnob), high = std::round(s.px(kTrack));
  const float centre = rect.x + 0.5f * knob + share * (rect.width - knob);
  const Rect track{rect.x, std::round(rect.y + 0.5f * (rect.height - high)), rect.width, high};
  const bool hovered = enabled && s.is_hovered(rect);
  const Colour done = !enabled ? p.rule : hovered ? p.accent_over : p.accent;
  s.fill(track, p.well, 0.5f * kTrack);
  s.fill({track.x, track.y, centre - track.x, track.height}, done, 0.5f * kTrack);
  s.outline(track, enabled ? p.line : p.rule, 0.5f * kTrack, s.hairline());
  const ImVec2 middle{centre, s.screen_y(rect.y + 0.5f * rect.height)};
  s.draw().AddCircleFilled(middle, 0.5f * knob, packed(done), 32);
  s.draw().AddCircleFilled(middle, 0.2f * knob, packed(p.on_accent), 24);
}

}  // namespace

bool slider(Key key, Text label, int& index, int count, Text words, bool enabled) {
  Surface& s = surface();
  const std::uint32_t id = s.mirror().id_of(key);
  std::string moved;
  bool changed = false;
  if (s.mirror().take(id, ActionKind::kEdit, &moved) && enabled) {
    const int number = option_number(moved, count);
    changed = number >= 0 && number != index;
    if (changed) index = number;
  }
  const int last = std::max(count - 1, 0);
  const int shown = std::clamp(index, 0, last);
  const Face& face = s.faces().small;
  const bool on_one_line = s.text_size(face, label).width + s.px(1) + s.text_size(face, words).width <= s.width();
  const float line = s.text_size(face, {}).height;
  const Rect title = s.place(line, 0, 0.65f);
  const Rect second = on_one_line ? title : s.place(line, 0, 0);
  const Rect rect = s.place(s.touch_height(), 0, 0);
  const std::size_t node = s.mirror().add(key, Role::kSlider, label, std::to_string(shown));
  const std::uint32_t rest = s.mirror().put(std::to_string(last) + kBetweenCells + std::string(words));
  s.mirror().at(node).extra = rest;
  if (!enabled) s.mirror().at(node).flags |= node_flag::kDisabled;
  s.put_rect(node, rect);
  if (s.is_visible({title.x, title.y, title.width, rect.bottom() - title.y})) {
    draw_label(title, label, on_one_line ? words : Text(), enabled);
    if (!on_one_line) draw_label(second, words, {}, enabled);
    draw_track(rect, last > 0 ? static_cast<float>(shown) / static_cast<float>(last) : 0.0f, enabled);
    s.focus_ring(rect, id, kRounding);
  }
  return changed;
}

}  // namespace tinwright::view
