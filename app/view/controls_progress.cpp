// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// How far something has come: a label, its share in words, and a bar.
#include <algorithm>
#include <cmath>
#include <string>

#include "app/view/controls_detail.h"

namespace tinwright::view {
namespace {

constexpr float kBar = 0.6f;  // [em] high

}  // namespace

void progress(Key key, Text label, double done) {
  Surface& s = surface();
  const Palette& p = s.palette();
  const int percent = static_cast<int>(std::lround(100.0 * std::clamp(done, 0.0, 1.0)));
  const std::string words = std::to_string(percent) + " %";
  const Face& face = s.faces().small;
  const float line = s.text_size(face, {}).height;
  const Rect rect = s.place(line + s.px(0.3f + kBar), 0, 0.65f);
  const std::size_t node = s.mirror().add(key, Role::kProgress, label, std::to_string(percent));
  s.put_rect(node, rect);
  if (!s.is_visible(rect)) return;
  s.text(face, rect.x, rect.y, p.ink, label);
  s.text(face, rect.right() - s.text_size(face, words).width, rect.y, p.soft_ink, words);
  const Rect bar{rect.x, rect.bottom() - s.px(kBar), rect.width, s.px(kBar)};
  s.fill(bar, p.well, 0.5f * kBar);
  s.fill({bar.x, bar.y, std::max(bar.height, bar.width * static_cast<float>(percent) / 100.0f), bar.height}, p.accent,
         0.5f * kBar);
  s.outline(bar, p.line, 0.5f * kBar, s.hairline());
}

}  // namespace tinwright::view
