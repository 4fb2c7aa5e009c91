// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// One of many (the device's own list) and one of few (a row of segments).
#include <algorithm>
#include <cmath>

#include "app/view/controls_detail.h"
#include "imgui.h"

namespace tinwright::view {
namespace {

std::string joined_options(const Labels& labels, std::span<const ChoiceGroup> groups) {
  std::string joined;
  for (int i = 0; i < labels.size(); ++i) {
    for (const ChoiceGroup& group : groups) {
      if (group.first != i) continue;
      if (!joined.empty()) joined += kBetweenRows;
      joined += kGroupMark;
      joined += group.title;
    }
    if (!joined.empty()) joined += kBetweenRows;
    joined += labels[i];
  }
  return joined;
}

/// How many segments stand in one row: all of them, or as many as leave each label room.
int segments_in_row(const Labels& labels, float width, float inset) {
  const Surface& s = surface();
  float widest = 0;
  for (int i = 0; i < labels.size(); ++i) {
    widest = std::max(widest, s.text_size(s.faces().strong, labels[i]).width + 2 * inset);
  }
  const int fitting = std::clamp(static_cast<int>(width / std::max(widest, 1.0f)), 1, std::max(labels.size(), 1));
  const int rows = (labels.size() + fitting - 1) / fitting;
  return rows > 0 ? (labels.size() + rows - 1) / rows : 1;  // rows of equal length look calmer than a short last one
}

/// Takes the presses of all segments; the one that was pressed last, or -1. Arrow keys may press several in one frame.
int pressed_last(Key key, int count) {
  Mirror& mirror = surface().mirror();
  std::size_t latest = 0;
  int pressed = -1;
  for (int i = 0; i < count; ++i) {
    const std::size_t turn = mirror.turn_of(mirror.id_of(part_key(key, std::to_string(i))), ActionKind::kPress);
    if (turn <= latest) continue;
    latest = turn;
    pressed = i;
  }
  for (int i = 0; i < count; ++i) {
    const std::uint32_t id = mirror.id_of(part_key(key, std::to_string(i)));
    while (mirror.take(id, ActionKind::kPress)) {
    }
  }
  return pressed;
}

void draw_segment(const Rect& cell, Text label, const Face& plain, const Face& strong, bool chosen, bool enabled,
                  float inset) {
  Surface& s = surface();
  const Palette& p = s.palette();
  const Face& face = chosen ? strong : plain;
  const Rect inner{cell.x + s.px(0.2f), cell.y + s.px(0.2f), cell.width - s.px(0.4f), cell.height - s.px(0.4f)};
  const bool hovered = enabled && s.is_hovered(cell);
  if (chosen) {
    s.fill(inner, enabled ? p.accent : p.rule, 0.3f);
  } else if (hovered) {
    s.fill(inner, p.tint, 0.3f);
  }
  const Colour ink = !enabled ? p.disabled_ink : chosen ? p.on_accent : p.ink;
  const float wrap = cell.width - inset;
  const Rect words = s.text_size(face, label, wrap);
  s.text(face, cell.x + (cell.width - words.width) / 2, cell.y + (cell.height - words.height) / 2, ink, label, wrap);
}

}  // namespace

int option_number(const std::string& text, int count) {
  int number = 0;
  if (text.empty() || text.size() > 6) return -1;
  for (char c : text) {
    if (c < '0' || c > '9') return -1;
    number = number * 10 + (c - '0');
  }
  return number < count ? number : -1;
}

bool choice(Key key, Text label, int& index, const Labels& labels, std::span<const ChoiceGroup> groups, bool enabled) {
  Surface& s = surface();
  const Palette& p = s.palette();
  const Face& face = s.faces().body;
  const std::uint32_t id = s.mirror().id_of(key);
  std::string picked;
  bool changed = false;
  if (s.mirror().take(id, ActionKind::kEdit, &picked) && enabled) {
    const int number = option_number(picked, labels.size());
    changed = number >= 0 && number != index;
    if (changed) index = number;
  }

  label_above(key, label, id, enabled);
  const Rect rect = s.place(s.touch_height(), 0, kUnderGap);
  const bool known = index >= 0 && index < labels.size();
  const std::size_t node = s.mirror().add(key, Role::kChoice, label, known ? std::to_string(index) : "");
  const std::uint32_t options = s.mirror().put(joined_options(labels, groups));
  s.mirror().at(node).extra = options;
  if (!enabled) s.mirror().at(node).flags |= node_flag::kDisabled;
  s.put_rect(node, rect);

  if (s.is_visible(rect)) {
    s.fill(rect, enabled ? p.well : p.card, kRounding);
    s.outline(rect, !enabled ? p.rule : s.is_hovered(rect) ? p.accent : p.line, kRounding, s.hairline());
    const float y = s.screen_y(rect.y), middle = std::round(y + rect.height / 2), arm = s.px(0.3f);
    const float chevron = rect.right() - s.px(1.0f);
    const ImVec2 points[] = {
        {chevron - arm, middle - arm / 2}, {chevron, middle + arm / 2}, {chevron + arm, middle - arm / 2}};
    s.draw().AddPolyline(points, 3, packed(enabled ? p.ink : p.disabled_ink), 0, std::round(s.px(0.11f)));
    s.draw().PushClipRect({rect.x, y}, {chevron - 2 * arm, y + rect.height}, true);
    if (known) {
      s.text(face, rect.x + s.px(kTextInset), rect.y + (rect.height - s.text_size(face, {}).height) / 2,
             enabled ? p.ink : p.disabled_ink, labels[index]);
    }
    s.draw().PopClipRect();
    s.focus_ring(rect, id, kRounding);
  }
  return changed;
}

bool segments(Key key, Text label, int& index, const Labels& labels, bool enabled) {
  Surface& s = surface();
  const Palette& p = s.palette();
  label_above(key, label, 0, enabled);
  const float inset = s.px(0.5f), row_height = s.touch_height();
  const int in_row = segments_in_row(labels, s.width(), inset);
  const int rows = (labels.size() + in_row - 1) / in_row;
  const Rect rect = s.place(row_height * static_cast<float>(rows), 0, kUnderGap);
  const std::size_t group = s.mirror().add(key, Role::kRadioGroup, label);
  if (!enabled) s.mirror().at(group).flags |= node_flag::kDisabled;
  s.put_rect(group, rect);
  s.mirror().open(group);
  if (s.is_visible(rect)) {
    s.fill(rect, p.well, kRounding);
    s.outline(rect, enabled ? p.line : p.rule, kRounding, s.hairline());
  }

  bool changed = false;
  const float cell_width = rect.width / static_cast<float>(in_row);
  const int pressed = pressed_last(key, labels.size());
  if (pressed >= 0 && enabled && index != pressed) {
    index = pressed;
    changed = true;
  }
  for (int i = 0; i < labels.size(); ++i) {
    const auto column = static_cast<float>(i % in_row), row = static_cast<float>(i / in_row);
    const Rect cell{rect.x + column * cell_width, rect.y + row * row_height, cell_width, row_height};
    const std::size_t node = s.mirror().add(part_key(key, std::to_string(i)), Role::kRadio, labels[i]);
    if (i == index) s.mirror().at(node).flags |= node_flag::kChecked;
    if (!enabled) s.mirror().at(node).flags |= node_flag::kDisabled;
    s.put_rect(node, cell);
    if (!s.is_visible(cell)) continue;
    draw_segment(cell, labels[i], s.faces().body, s.faces().strong, i == index, enabled, inset);
    s.focus_ring(cell, s.mirror().at(node).id, kRounding);
  }
  s.mirror().close();
  return changed;
}

namespace {

/// Labels may wrap, words may not.
float widest_word(const Face& face, Text label) {
  float widest = 0;
  for (std::size_t at = 0; at < label.size();) {
    const std::size_t end = std::min(label.find(' ', at), label.size());
    widest = std::max(widest, surface().text_size(face, label.substr(at, end - at)).width);
    at = end + 1;
  }
  return widest;
}

}  // namespace

bool foot_bar(Key key, Text label, int& index, const Labels& labels) {
  Surface& s = surface();
  const Palette& p = s.palette();
  const Face& face = s.faces().small;
  const float inset = s.px(0.25f), rim = s.px(0.2f);
  float widest = 0;
  for (int i = 0; i < labels.size(); ++i) widest = std::max(widest, widest_word(face, labels[i]));
  const int count = labels.size();
  const float wide = s.viewport().width - 2 * rim;
  const int in_row = widest + 2 * inset <= wide / static_cast<float>(count) ? count : (count + 1) / 2;
  const int rows = (count + in_row - 1) / in_row;
  const float cell_width = wide / static_cast<float>(in_row);
  float row_height = s.touch_height();
  for (int i = 0; i < count; ++i) {
    row_height = std::max(row_height, s.text_size(face, labels[i], cell_width - 2 * inset).height + 2 * inset);
  }
  const Rect bar = s.open_foot(row_height * static_cast<float>(rows) + 2 * rim);
  bool changed = false;
  if (s.viewport().foot > 0) {
    const std::size_t group = s.mirror().add(key, Role::kRadioGroup, label);
    s.put_rect(group, bar);
    s.mirror().open(group);
    s.fill(bar, p.card, 0);
    s.fill({bar.x, bar.y, bar.width, s.hairline()}, p.line, 0);
    const int pressed = pressed_last(key, count);
    changed = pressed >= 0 && pressed != index;
    if (changed) index = pressed;
    for (int i = 0; i < count; ++i) {
      const auto column = static_cast<float>(i % in_row), row = static_cast<float>(i / in_row);
      const Rect cell{rim + column * cell_width, bar.y + rim + row * row_height, cell_width, row_height};
      const std::size_t node = s.mirror().add(part_key(key, std::to_string(i)), Role::kRadio, labels[i]);
      if (i == index) s.mirror().at(node).flags |= node_flag::kChecked;
      s.put_rect(node, cell);
      draw_segment(cell, labels[i], face, face, i == index, true, 2 * inset);
      s.focus_ring({cell.x + rim, cell.y + rim, cell.width - 2 * rim, cell.height - 2 * rim}, s.mirror().at(node).id,
                   kRounding);
    }
    s.mirror().close();
  }
  s.close_foot();
  return changed;
}

}  // namespace tinwright::view
