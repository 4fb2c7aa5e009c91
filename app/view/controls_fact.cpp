// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// A further figure beside the large ones: its label on the left, its value on the right, a rule beneath.
#include <algorithm>

#include "app/view/controls_detail.h"

namespace tinwright::view {
namespace {

constexpr float kLabelShare = 0.4f;  // [-] of the width
constexpr float kInset = 0.4f;       // [em] above and below

}  // namespace

void fact(Key key, Text label, Text value, Text explanation) {
  Surface& s = surface();
  const Palette& p = s.palette();
  const Faces& f = s.faces();
  const float inset = s.px(kInset);
  const float label_width = s.width() * kLabelShare - inset;
  const float value_width = s.width() - label_width - inset;
  const float value_height = s.text_size(f.strong, value, value_width).height;
  const float rest_height = explanation.empty() ? 0 : s.text_size(f.small, explanation, value_width).height;
  const float label_height = s.text_size(f.small, label, label_width).height;
  const Rect rect = s.place(std::max(label_height, value_height + rest_height) + 2 * inset, 0, 0.1f);
  if (s.is_visible(rect)) {
    const float x = rect.x + label_width + inset;
    const float y = rect.y + inset;
    s.text(f.small, rect.x, y + s.px(0.1f), p.soft_ink, label, label_width);
    s.text(f.strong, x, y, p.ink, value, value_width);
    if (!explanation.empty()) s.text(f.small, x, y + value_height, p.soft_ink, explanation, value_width);
    s.fill({rect.x, rect.bottom() - s.hairline(), rect.width, s.hairline()}, p.rule, 0);
  }
  const std::size_t node = s.mirror().add(key, Role::kAnswer, label, value);
  const std::uint32_t rest = s.mirror().put(explanation);
  s.mirror().at(node).extra = rest;
  s.put_rect(node, rect);
}

}  // namespace tinwright::view
