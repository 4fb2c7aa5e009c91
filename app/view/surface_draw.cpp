// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The drawing half of Surface: letters, panels, outlines, and where the pointer is.
#include <algorithm>
#include <cmath>
#include <cstddef>

#include "app/view/surface.h"
#include "imgui.h"

namespace tinwright::view {
namespace {

constexpr float kPanelRounding = 0.7f;  // [em]
constexpr float kRingDistance = 0.3f;   // [em] from a control's edge to the outside of the focus ring
constexpr float kRingWidth = 0.14f;     // [em]
constexpr float kLineHeight = 1.35f;    // of the letters' height; web/page.css has the same
constexpr float kEndless = 1e6f;        // [device px] a line that never wraps

float line_height(const Face& face) {
  return std::round(face.size * kLineHeight);
}

float width_of(const Face& face, const char* from, const char* to) {
  return from == to ? 0 : face.font->CalcTextSizeA(face.size, kEndless, 0, from, to).x;
}

/// Where the line that starts at `at` ends, `end` at the latest. Lines break at spaces only, so that "2.4" and "23 ×
/// 30" with unbreakable spaces stay whole; a word that is too long by itself breaks where it must.
const char* line_end(const Face& face, const char* at, const char* end, float wrap) {
  const char* stop = at;
  while (stop < end) {
    const char* const word_end = std::find(std::find_if(stop, end, [](char c) { return c != ' '; }), end, ' ');
    if (width_of(face, at, word_end) > wrap) break;
    stop = word_end;
  }
  if (stop > at) return stop;
  return std::max(face.font->CalcWordWrapPositionA(face.size / face.font->FontSize, at, end, wrap), at + 1);
}

/// Calls `take` with each line as it breaks at '\n' and, with `wrap` > 0, at that width. No text is one empty line.
template <class Take>
void for_each_line(const Face& face, std::string_view text, float wrap, Take take) {
  const char* at = text.data();
  const char* const end = at + text.size();
  if (at == end) return take(std::string_view());
  while (at < end) {
    const char* const hard = std::find(at, end, '\n');
    const char* const stop = wrap > 0 && at < hard ? line_end(face, at, hard, wrap) : hard;
    take(std::string_view(at, static_cast<std::size_t>(stop - at)));
    at = stop == hard ? hard + (hard < end ? 1 : 0) : std::find_if(stop, hard, [](char c) { return c != ' '; });
  }
}

}  // namespace

bool Surface::is_visible(const Rect& rect) const {
  const float y = screen_y(rect.y), spare = px(1);
  return y < viewport_.height + spare && y + rect.height > -spare;
}

Rect Surface::text_size(const Face& face, std::string_view text, float wrap) const {
  Rect size;
  for_each_line(face, text, wrap, [&](std::string_view line) {
    size.width = std::max(size.width, width_of(face, line.data(), line.data() + line.size()));
    size.height += line_height(face);
  });
  return {0, 0, std::ceil(size.width), size.height};
}

void Surface::text(const Face& face, float x, float y, Colour colour, std::string_view text, float wrap) {
  float top = std::round(screen_y(y) + (line_height(face) - face.size) / 2);
  for_each_line(face, text, wrap, [&](std::string_view line) {
    const bool seen = top < viewport_.height && top + face.size > 0;
    if (seen && !line.empty()) {
      draw_->AddText(face.font, face.size, {std::round(x), top}, packed(colour), line.data(),
                     line.data() + line.size());
    }
    top += line_height(face);
  });
}

void Surface::fill(const Rect& rect, Colour colour, float rounding_em) {
  const float y = screen_y(rect.y);
  draw_->AddRectFilled({rect.x, y}, {rect.right(), y + rect.height}, packed(colour), px(rounding_em));
}

void Surface::outline(const Rect& rect, Colour colour, float rounding_em, float thickness) {
  // Half the thickness inwards, so that the line covers whole pixels and stays inside the rectangle.
  const float y = screen_y(rect.y), in = thickness / 2;
  draw_->AddRect({rect.x + in, y + in}, {rect.right() - in, y + rect.height - in}, packed(colour), px(rounding_em), 0,
                 thickness);
}

void Surface::focus_ring(const Rect& rect, std::uint32_t id, float rounding_em) {
  if (!mirror_.shows_ring(id)) return;
  const float out = std::round(px(kRingDistance));
  const Rect around{rect.x - out, rect.y - out, rect.width + 2 * out, rect.height + 2 * out};
  outline(around, palette().accent, rounding_em + kRingDistance, std::round(px(kRingWidth)));
}

void Surface::panel(const Rect& rect, int depth) {
  if (!is_visible(rect)) return;
  draw_->ChannelsSetCurrent(depth < kPanelDepths ? depth : kPanelDepths - 1);
  fill(rect, palette().card, kPanelRounding);
  outline(rect, palette().rule, kPanelRounding, hairline());
  draw_->ChannelsSetCurrent(kPanelDepths);
}

bool Surface::is_hovered(const Rect& rect) const {
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  const float y = screen_y(rect.y);
  return mouse.x >= rect.x && mouse.x < rect.right() && mouse.y >= y && mouse.y < y + rect.height;
}

bool Surface::is_pressed(const Rect& rect) const {
  return ImGui::GetIO().MouseDown[0] && is_hovered(rect);
}

}  // namespace tinwright::view
