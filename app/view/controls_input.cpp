// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Buttons, fields and toggles. What is pressed or typed always comes from the mirror's element, whether by mouse,
// finger, key or screen reader, so there is one way in; the pointer only decides how a control looks.
#include <algorithm>
#include <cmath>

#include "app/view/controls_detail.h"
#include "imgui.h"

namespace tinwright::view {
namespace {

struct Paint {
  Colour fill, line, ink;
  bool outlined = true;
};

Paint button_paint(ButtonLook look, bool enabled, bool hovered, bool pressed) {
  const Palette& p = surface().palette();
  if (!enabled) return {p.card, p.rule, p.disabled_ink, look != ButtonLook::kQuiet};
  if (look == ButtonLook::kPrimary)
    return {hovered || pressed ? p.accent_over : p.accent, p.accent, p.on_accent, false};
  const Colour over = look == ButtonLook::kQuiet ? p.rule : p.tint;
  return {hovered || pressed ? over : p.card, p.accent, p.accent, look == ButtonLook::kPlain};
}

/// A tick, drawn rather than written, so that it fills its box at every size.
void draw_tick(const Rect& box, Colour colour) {
  Surface& s = surface();
  const float y = s.screen_y(box.y), side = box.width;
  const ImVec2 points[] = {{box.x + side * 0.24f, y + side * 0.53f},
                           {box.x + side * 0.43f, y + side * 0.71f},
                           {box.x + side * 0.77f, y + side * 0.30f}};
  s.draw().AddPolyline(points, 3, packed(colour), 0, std::round(s.px(0.14f)));
}

}  // namespace

bool button(Key key, Text label, ButtonLook look, bool enabled) {
  Surface& s = surface();
  const Face& face = s.faces().strong;
  const Rect words = s.text_size(face, label);
  const float inset = look == ButtonLook::kQuiet ? s.px(0.6f) : s.px(1.0f);
  const float wrap = s.width() - 2 * inset;
  const bool wraps = words.width > wrap;
  const float height = wraps ? s.text_size(face, label, wrap).height + s.px(1.0f) : s.touch_height();
  const Rect rect = s.place(std::max(height, s.touch_height()), wraps ? 0 : words.width + 2 * inset);
  const std::size_t node = s.mirror().add(key, Role::kButton, label);
  const std::uint32_t id = s.mirror().at(node).id;
  if (!enabled) s.mirror().at(node).flags |= node_flag::kDisabled;
  s.put_rect(node, rect);

  if (s.is_visible(rect)) {
    const Paint paint = button_paint(look, enabled, s.is_hovered(rect), s.is_pressed(rect));
    const bool sunk = enabled && s.is_pressed(rect);
    if (look != ButtonLook::kQuiet || s.is_hovered(rect)) s.fill(rect, paint.fill, kRounding);
    if (paint.outlined) s.outline(rect, paint.line, kRounding, s.hairline());
    const Rect set = s.text_size(face, label, wraps ? wrap : 0);
    s.text(face, rect.x + (rect.width - set.width) / 2,
           rect.y + (rect.height - set.height) / 2 + (sunk ? s.hairline() : 0), paint.ink, label, wraps ? wrap : 0);
    s.focus_ring(rect, id, kRounding);
  }
  return s.mirror().take(id, ActionKind::kPress) && enabled;
}

bool field(Key key, Text label, std::string& text, const FieldOptions& options) {
  Surface& s = surface();
  const Palette& p = s.palette();
  const Face& face = s.faces().body;
  const std::uint32_t id = s.mirror().id_of(key);
  std::string typed;
  const bool changed = s.mirror().take(id, ActionKind::kEdit, &typed) && options.enabled;
  if (changed) text = typed;

  label_above(key, label, id, options.enabled);
  const Rect rect = s.place(s.touch_height(), s.px(options.width_em), kUnderGap);
  const std::size_t node = s.mirror().add(key, Role::kField, label, text);
  const std::uint32_t hint = s.mirror().put(options.hint);
  s.mirror().at(node).extra = hint;
  if (options.keyboard == Keyboard::kDecimal) s.mirror().at(node).flags |= node_flag::kDecimal;
  if (!options.enabled) s.mirror().at(node).flags |= node_flag::kDisabled;
  s.put_rect(node, rect);

  if (s.is_visible(rect)) {
    const bool wrong = !options.problem.empty();
    s.fill(rect, options.enabled ? p.well : p.card, kRounding);
    s.outline(rect,
              wrong             ? p.error
              : options.enabled ? p.line
                                : p.rule,
              kRounding, wrong ? 2 * s.hairline() : s.hairline());
    // While the browser edits the text, it also shows it.
    if (!s.mirror().is_focused(id)) {
      const Text shown = text.empty() ? options.hint : Text(text);
      const Colour ink = !options.enabled ? p.disabled_ink : text.empty() ? p.soft_ink : p.ink;
      const float x = rect.x + s.px(kTextInset), y = s.screen_y(rect.y);
      s.draw().PushClipRect({x, y}, {rect.right() - s.px(kTextInset), y + rect.height}, true);
      s.text(face, x, rect.y + (rect.height - s.text_size(face, {}).height) / 2, ink, shown);
      s.draw().PopClipRect();
    }
    s.focus_ring(rect, id, kRounding);
  }
  explain_below(key, node, options.help, options.problem);
  return changed;
}

bool toggle(Key key, Text label, bool& value, bool enabled) {
  Surface& s = surface();
  const Palette& p = s.palette();
  const Face& face = s.faces().body;
  const std::uint32_t id = s.mirror().id_of(key);
  const bool changed = s.mirror().take(id, ActionKind::kPress) && enabled;
  if (changed) value = !value;

  const float side = std::round(s.px(1.4f)), beside = s.px(0.6f);
  const float wrap = s.width() - side - beside;
  const Rect words = s.text_size(face, label, wrap);
  const Rect rect = s.place(std::max(words.height + s.px(0.6f), s.touch_height()), side + beside + words.width, 0.15f);
  const std::size_t node = s.mirror().add(key, Role::kToggle, label);
  if (value) s.mirror().at(node).flags |= node_flag::kChecked;
  if (!enabled) s.mirror().at(node).flags |= node_flag::kDisabled;
  s.put_rect(node, rect);

  if (s.is_visible(rect)) {
    const Rect box{rect.x, std::round(rect.y + (rect.height - side) / 2), side, side};
    const Colour line = !enabled ? p.rule : value ? p.accent : p.line;
    s.fill(box, value && enabled ? (s.is_hovered(rect) ? p.accent_over : p.accent) : p.well, 0.28f);
    s.outline(box, s.is_hovered(rect) && enabled ? p.accent : line, 0.28f, s.hairline());
    if (value) draw_tick(box, enabled ? p.on_accent : p.disabled_ink);
    s.text(face, rect.x + side + beside, rect.y + (rect.height - words.height) / 2, enabled ? p.ink : p.disabled_ink,
           label, wrap);
    s.focus_ring(rect, id, kRounding);
  }
  return changed;
}

}  // namespace tinwright::view
