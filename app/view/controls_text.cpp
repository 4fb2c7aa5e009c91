// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Controls that are words: headings, paragraphs, notes, answers, and the labels around the others.
#include <algorithm>
#include <cmath>

#include "app/view/controls_detail.h"
#include "imgui.h"

namespace tinwright::view {

std::string part_key(Key key, Text part) {
  std::string whole(key);
  whole += '/';
  whole += part;
  return whole;
}

std::size_t text_block(Key key, Role role, Text text, const Face& face, Colour colour, float gap) {
  Surface& s = surface();
  const Rect rect = s.place(s.text_size(face, text, s.width()).height, 0, gap);
  if (s.is_visible(rect)) s.text(face, rect.x, rect.y, colour, text, rect.width);
  const std::size_t node = s.mirror().add(key, role, text);
  s.mirror().at(node).text_size = s.text_em(face);
  s.put_rect(node, rect);
  return node;
}

void heading(Key key, Text text, int level) {
  Surface& s = surface();
  const Faces& f = s.faces();
  const Face& face = level == 1 ? f.big : level == 2 ? f.head : f.strong;
  const std::size_t node = text_block(key, Role::kHeading, text, face, s.palette().ink, 1.0f);
  s.mirror().at(node).level = static_cast<std::uint32_t>(level);
  s.mirror().at(node).flags |= node_flag::kStrong;
}

void paragraph(Key key, Text text) {
  text_block(key, Role::kText, text, surface().faces().body, surface().palette().ink, 0.5f);
}

void remark(Key key, Text text) {
  text_block(key, Role::kText, text, surface().faces().small, surface().palette().soft_ink, 0.35f);
}

Colour note_ink(NoteKind kind) {
  const Palette& p = surface().palette();
  return kind == NoteKind::kError ? p.error : kind == NoteKind::kCaution ? p.caution : p.accent;
}

Colour note_tint(NoteKind kind) {
  const Palette& p = surface().palette();
  return kind == NoteKind::kError ? p.error_tint : kind == NoteKind::kCaution ? p.caution_tint : p.tint;
}

void draw_sign(NoteKind kind, float x, float y, float side) {
  Surface& s = surface();
  ImDrawList& d = s.draw();
  const ImU32 ink = packed(note_ink(kind)), hole = packed(note_tint(kind));
  const ImVec2 c{x + side / 2, s.screen_y(y) + side / 2};
  const float r = side / 2, w = side * 0.085f;
  if (kind == NoteKind::kCaution) {
    d.AddTriangleFilled({c.x, c.y - r}, {c.x + r * 1.06f, c.y + r * 0.85f}, {c.x - r * 1.06f, c.y + r * 0.85f}, ink);
  } else {
    d.AddNgonFilled(c, r, ink, kind == NoteKind::kError ? 8 : 32);
  }
  // The mark inside: "i", "!", or a cross.
  if (kind == NoteKind::kError) {
    const float a = r * 0.42f;
    d.AddLine({c.x - a, c.y - a}, {c.x + a, c.y + a}, hole, w * 1.6f);
    d.AddLine({c.x - a, c.y + a}, {c.x + a, c.y - a}, hole, w * 1.6f);
    return;
  }
  const bool caution = kind == NoteKind::kCaution;
  const float dot = caution ? c.y + r * 0.56f : c.y - r * 0.5f;
  const float top = caution ? c.y - r * 0.4f : c.y - r * 0.12f, foot = caution ? c.y + r * 0.26f : c.y + r * 0.58f;
  d.AddRectFilled({c.x - w, top}, {c.x + w, foot}, hole, w / 2);
  d.AddCircleFilled({c.x, dot}, w * 1.1f, hole, 12);
}

void note(Key key, NoteKind kind, Text text) {
  Surface& s = surface();
  const Face& face = s.faces().body;
  const float inset = s.px(0.7f), side = std::round(s.px(1.3f)), beside = s.px(0.55f);
  const float wrap = s.width() - 2 * inset - side - beside;
  const float text_height = s.text_size(face, text, wrap).height;
  const Rect rect = s.place(std::max(text_height, side) + 2 * inset);
  const Rect words{std::round(rect.x + inset + side + beside), rect.y + inset, wrap, text_height};
  if (s.is_visible(rect)) {
    s.fill(rect, note_tint(kind), kRounding);
    s.fill({rect.x, rect.y, s.px(0.25f), rect.height}, note_ink(kind), 0.12f);
    draw_sign(kind, rect.x + inset, rect.y + inset, side);
    s.text(face, words.x, words.y, s.palette().ink, text, wrap);
  }
  constexpr Text kNames[] = {"Note: ", "Careful: ", "Mistake: "};
  const std::size_t node = s.mirror().add(key, Role::kNote, text, kNames[static_cast<int>(kind)]);
  s.mirror().at(node).text_size = 1.0f;
  s.mirror().at(node).flags |= node_flag::kLive;
  s.put_rect(node, words);
}

void answer(Key key, Text label, Text value, Text explanation) {
  Surface& s = surface();
  const Faces& f = s.faces();
  const float inset = s.px(0.75f), wrap = s.width() - 2 * inset;
  const float label_height = s.text_size(f.small, label, wrap).height;
  const float value_height = s.text_size(f.big, value, wrap).height;
  const float rest_height = explanation.empty() ? 0 : s.text_size(f.small, explanation, wrap).height;
  const Rect rect = s.place(label_height + value_height + rest_height + 2 * inset);
  if (s.is_visible(rect)) {
    const Palette& p = s.palette();
    const float x = rect.x + inset;
    float y = rect.y + inset;
    s.fill(rect, p.tint, 0.5f);
    s.text(f.small, x, y, p.soft_ink, label, wrap);
    y += label_height;
    s.text(f.big, x, y, p.accent, value, wrap);
    y += value_height;
    if (!explanation.empty()) s.text(f.small, x, y, p.soft_ink, explanation, wrap);
  }
  const std::size_t node = s.mirror().add(key, Role::kAnswer, label, value);
  const std::uint32_t rest = s.mirror().put(explanation);
  s.mirror().at(node).extra = rest;
  s.mirror().at(node).flags |= node_flag::kLive;
  s.put_rect(node, {rect.x + inset, rect.y + inset, wrap, rect.height - 2 * inset});
}

void label_above(Key key, Text text, std::uint32_t target, bool enabled) {
  Surface& s = surface();
  const Palette& p = s.palette();
  const Face& face = s.faces().small;
  const Rect rect = s.place(s.text_size(face, text, s.width()).height, 0, 0.65f);
  if (s.is_visible(rect)) s.text(face, rect.x, rect.y, enabled ? p.ink : p.disabled_ink, text, rect.width);
  if (target == 0) return;
  const std::size_t node = s.mirror().add(part_key(key, "label"), Role::kLabel, text);
  s.mirror().at(node).help = target;
  s.mirror().at(node).text_size = s.text_em(s.faces().small);
  s.put_rect(node, rect);
}

void explain_below(Key key, std::size_t index, Text help, Text problem) {
  Surface& s = surface();
  const Faces& f = s.faces();
  if (!problem.empty()) {
    const float side = std::round(s.px(0.95f)), beside = s.px(0.4f);
    const float wrap = s.width() - side - beside;
    const Rect rect = s.place(s.text_size(f.small, problem, wrap).height, 0, kUnderGap);
    const Rect words{rect.x + side + beside, rect.y, wrap, rect.height};
    if (s.is_visible(rect)) {
      draw_sign(NoteKind::kError, rect.x, rect.y + s.px(0.1f), side);
      s.text(f.small, words.x, words.y, s.palette().error, problem, wrap);
    }
    const std::size_t node = s.mirror().add(part_key(key, "problem"), Role::kText, problem);
    s.mirror().at(node).text_size = s.text_em(s.faces().small);
    s.mirror().at(node).flags |= node_flag::kLive;
    s.put_rect(node, words);
    s.mirror().at(index).problem = s.mirror().at(node).id;
    s.mirror().at(index).flags |= node_flag::kInvalid;
  }
  if (!help.empty()) {
    const std::size_t node =
        text_block(part_key(key, "help"), Role::kText, help, f.small, s.palette().soft_ink, kUnderGap);
    s.mirror().at(index).help = s.mirror().at(node).id;
  }
}

}  // namespace tinwright::view
