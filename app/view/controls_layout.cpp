// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Regions, columns, flows and space.
#include <algorithm>

#include "app/view/controls_detail.h"

namespace tinwright::view {
namespace {

constexpr float kCardInset = 1.0f;        // [em]
constexpr float kNarrowCardInset = 0.8f;  // [em] on a phone, where width is dear
constexpr float kNarrow = 26.0f;          // [em]

}  // namespace

void begin_region(Key key, Text label, RegionLook look) {
  Surface& s = surface();
  const float inset = look == RegionLook::kPlain ? 0 : s.px(s.width() < s.px(kNarrow) ? kNarrowCardInset : kCardInset);
  const std::size_t node = s.mirror().add(key, Role::kRegion, label);
  s.mirror().open(node);
  s.open_region(node, inset);
}

void end_region() {
  Surface& s = surface();
  s.close_region();
  s.mirror().close();
}

int columns_that_fit(float least_em, int most) {
  const Surface& s = surface();
  return std::clamp(static_cast<int>(s.width() / s.px(least_em)), 1, std::max(most, 1));
}

void begin_columns(int count, float gap_em) {
  surface().open_columns(count, surface().px(gap_em));
}
void next_column() {
  surface().next_column();
}
void next_panel() {
  surface().next_panel();
}
void end_columns() {
  surface().close_columns();
}

void begin_flow() {
  surface().open_flow();
}
void end_flow() {
  surface().close_flow();
}

void space(float em) {
  surface().place(surface().px(em), 0, 0);
}

}  // namespace tinwright::view
