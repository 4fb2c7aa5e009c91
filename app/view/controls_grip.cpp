// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A handle on a drawing. The element over it tells of the finger and the keys; which step a drag leads to is for the
// caller to say, who knows the drawing's scale.
#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "app/view/controls_detail.h"
#include "imgui.h"

namespace tinwright::view {
namespace {

constexpr float kRadius = 0.62f;       // [em]
constexpr float kTenths = 10.0f;       // the host tells drags in tenths of a css px
constexpr float kClear = 0.5f;         // [em] between the finger and the figure beside it
constexpr float kFingerReach = 44.0f;  // [css px] above its middle that a fingertip hides; half of it is the target's

/// The whole numbers of `text`; what is none of them is 0.
std::array<int, 2> two_numbers(const std::string& text) {
  std::array<int, 2> numbers{};
  const char* at = text.data();
  for (int& number : numbers) {
    const auto [end, error] = std::from_chars(at, text.data() + text.size(), number);
    if (error != std::errc()) return {};
    at = end < text.data() + text.size() ? end + 1 : end;
  }
  return numbers;
}

/// A disc with an arrow to each side it moves to: told from the drawing by its shape, whatever the colours.
void draw_knob(ImVec2 at, bool is_upright, bool is_held, bool is_hovered) {
  Surface& s = surface();
  const Palette& p = s.palette();
  const float radius = s.px(kRadius), line = 2.0f * s.hairline();
  const Colour fill = is_held ? p.accent : p.well, ink = is_held ? p.on_accent : is_hovered ? p.accent_over : p.ink;
  s.draw().AddCircleFilled(at, radius, packed(fill), 32);
  s.draw().AddCircle(at, radius, packed(is_held ? p.accent : ink), 32, line);
  const float tip = 0.72f * radius, foot = 0.2f * radius, half = 0.42f * radius;
  for (const float way : {-1.0f, 1.0f}) {
    const auto corner = [&](float along, float across) {
      return is_upright ? ImVec2{at.x + across, at.y + way * along} : ImVec2{at.x + way * along, at.y + across};
    };
    const ImVec2 a = corner(tip, 0.0f), b = corner(foot, -half), c = corner(foot, half);
    s.draw().AddTriangleFilled(a, b, c, packed(ink));
  }
}

/// The figure in a box above the finger; beneath it where the window ends.
void draw_figure(float x, float y, Text figure) {
  Surface& s = surface();
  const Palette& p = s.palette();
  const Face& face = s.faces().strong;
  const Rect size = s.text_size(face, figure);
  const float inset = s.px(0.5f), width = size.width + 2.0f * inset, height = size.height + inset;
  const float away = kFingerReach * s.viewport().scale + s.px(kClear);
  const float left = std::clamp(x - 0.5f * width, s.px(0.2f), std::max(s.px(0.2f), s.viewport().width - width));
  const bool fits = s.screen_y(y) - away - height > 0.0f;
  const Rect box{left, fits ? y - away - height : y + away, width, height};
  s.fill(box, p.well, kRounding);
  s.outline(box, p.accent, kRounding, 2.0f * s.hairline());
  s.text(face, box.x + inset, box.y + 0.5f * inset, p.ink, figure);
}

}  // namespace

GripMove grip(Key key, Text label, float x, float y, const GripValue& value, bool is_held) {
  Surface& s = surface();
  Mirror& mirror = s.mirror();
  const std::uint32_t id = mirror.id_of(key);
  GripMove move;
  std::string text;
  move.is_begun = mirror.take(id, ActionKind::kPress);
  if (mirror.take(id, ActionKind::kDrag, &text)) {
    const auto [right, down] = two_numbers(text);
    const float scale = s.viewport().scale / kTenths;
    move.is_dragged = true;
    move.right = static_cast<float>(right) * scale;
    move.down = static_cast<float>(down) * scale;
  }
  if (mirror.take(id, ActionKind::kEdit, &text)) {
    const int step = option_number(text, value.last + 1);
    if (step >= value.first) move.step = step;
  }
  const float side = s.touch_height();
  const Rect rect{std::round(x - 0.5f * side), std::round(y - 0.5f * side), side, side};
  const std::size_t node = mirror.add(key, Role::kGrip, label, std::to_string(value.at));
  const std::uint32_t limits = mirror.put(std::to_string(value.last) + kBetweenCells + std::string(value.words) +
                                          kBetweenCells + std::to_string(value.first));
  mirror.at(node).extra = limits;
  if (value.is_upright) mirror.at(node).flags |= node_flag::kUpright;
  s.put_rect(node, rect);
  if (!s.is_visible(rect)) return move;
  draw_knob({x, s.screen_y(y)}, value.is_upright, is_held, s.is_hovered(rect));
  if (is_held) draw_figure(x, y, value.figure);
  const float ring = s.px(2.0f * kRadius + 0.2f);
  s.focus_ring({x - 0.5f * ring, y - 0.5f * ring, ring, ring}, id, 0.5f * ring / s.px(1.0f));
  return move;
}

}  // namespace tinwright::view
