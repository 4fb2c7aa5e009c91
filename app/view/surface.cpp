// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Frame and layout. The drawing half is in surface_draw.cpp.
#include "app/view/surface.h"

#include <algorithm>
#include <cmath>

#include "imgui.h"

namespace tinwright::view {
namespace {

Surface* current = nullptr;

constexpr float kPageMargin = 0.9f;      // [em]
constexpr float kWidestContent = 72.0f;  // [em] beyond this, lines grow too long and the margins take the rest

}  // namespace

Surface& surface() {
  return *current;
}

void Surface::bake(float em) {
  faces_ = bake_faces(files_, em);
}

void Surface::begin(const Viewport& viewport) {
  current = this;
  viewport_ = viewport;
  mirror_.begin_frame();
  content_height_ = foot_height_ = 0;
  frame_asked_in_.reset();
  scroll_wish_.reset();

  constexpr int kBare = ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoInputs | ImGuiWindowFlags_NoSavedSettings |
                        ImGuiWindowFlags_NoBackground;
  ImGui::SetNextWindowPos({0, 0});
  ImGui::SetNextWindowSize({viewport.width, viewport.height});
  ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
  ImGui::Begin("page", nullptr, kBare);
  ImGui::PopStyleVar();
  draw_ = ImGui::GetWindowDrawList();
  draw_->ChannelsSplit(kLayers);
  draw_->ChannelsSetCurrent(kPanelDepths);

  const float margin = px(kPageMargin);
  const float width = std::min(viewport.width - 2 * margin, px(kWidestContent));
  Box page;
  page.width = std::max(width, px(8));
  page.left = std::floor(std::max(margin, (viewport.width - page.width) / 2));
  page.bottom = margin;
  boxes_.assign(1, page);
  columns_.clear();
  regions_.clear();
}

void Surface::end() {
  content_height_ = boxes_.front().bottom + px(kPageMargin) + foot_height_;
  draw_->ChannelsMerge();
  ImGui::End();
  draw_ = nullptr;
  current = nullptr;
}

void Surface::ask_frame_in(double seconds) {
  frame_asked_in_ = std::max(0.0, std::min(seconds, frame_asked_in_.value_or(seconds)));
}

void Surface::show_from(float y) {
  if (y < viewport_.scroll) scroll_wish_ = y;
}

Rect Surface::open_foot(float height) {
  foot_height_ = height;
  at_foot_ = true;
  draw_->ChannelsSetCurrent(kLayers - 1);
  return {0, viewport_.scroll + viewport_.foot - height, viewport_.width, height};
}

void Surface::close_foot() {
  at_foot_ = false;
  draw_->ChannelsSetCurrent(kPanelDepths);
}

float Surface::hairline() const {
  return std::max(1.0f, std::round(viewport_.scale));
}

float Surface::touch_height() const {
  return std::ceil(std::max(px(2.45f), kTouchHeight * viewport_.scale));
}

void Surface::advance(float bottom) {
  Box& box = boxes_.back();
  box.bottom = std::max(box.bottom, bottom);
  box.empty = false;
}

Rect Surface::place(float height, float width, float gap) {
  Box& box = boxes_.back();
  if (box.flowing) return place_in_flow(box, height, width > 0 ? width : box.width, gap);
  const float y = std::round(box.bottom + (box.empty ? 0 : px(gap)));
  advance(y + std::ceil(height));
  return {box.left, y, width > 0 ? std::min(width, box.width) : box.width, std::ceil(height)};
}

Rect Surface::place_in_flow(Box& box, float height, float width, float gap) {
  const float between = px(0.5f);
  width = std::ceil(std::min(width, box.width));
  const bool fits = box.flow_started && box.flow_x + between + width <= box.left + box.width;
  if (!fits) {
    box.flow_top = std::round(box.bottom + (box.empty ? 0 : box.flow_started ? between : px(gap)));
    box.flow_x = box.left;
    box.flow_started = true;
  } else {
    box.flow_x += between;
  }
  const Rect rect{std::round(box.flow_x), box.flow_top, width, std::ceil(height)};
  box.flow_x += width;
  advance(rect.bottom());
  return rect;
}

void Surface::open_flow() {
  boxes_.back().flowing = true;
  boxes_.back().flow_started = false;
}

void Surface::open_region(std::size_t node, float inset) {
  const Box& outer = boxes_.back();
  const float top = std::round(outer.bottom + (outer.empty ? 0 : px(0.9f)));
  regions_.push_back({node, outer.left, top, outer.width, inset});
  Box box;
  box.left = outer.left + inset;
  box.width = outer.width - 2 * inset;
  box.bottom = top + inset;
  boxes_.push_back(box);
}

void Surface::close_region() {
  const Region region = regions_.back();
  regions_.pop_back();
  const Rect rect{region.left, region.top, region.width, boxes_.back().bottom + region.inset - region.top};
  boxes_.pop_back();
  put_rect(region.node, rect);
  if (region.inset > 0) panel(rect, static_cast<int>(regions_.size()));
  advance(rect.bottom());
}

void Surface::open_columns(int count, float gap) {
  const Box& outer = boxes_.back();
  Columns columns;
  columns.count = std::max(1, count);
  columns.left = outer.left;
  columns.top = std::round(outer.bottom + (outer.empty ? 0 : px(0.9f)));
  columns.bottoms.assign(static_cast<std::size_t>(columns.count), 0.0f);
  const float width =
      std::floor((outer.width - gap * static_cast<float>(columns.count - 1)) / static_cast<float>(columns.count));
  columns.step = width + gap;
  columns_.push_back(columns);
  Box box;
  box.left = outer.left;
  box.width = width;
  box.bottom = columns.top;
  boxes_.push_back(box);
}

void Surface::next_column() {
  // With one column, or past the last, what follows goes beneath; so the same page code serves every width.
  go_to_column((columns_.back().current + 1) % columns_.back().count);
}

void Surface::next_panel() {
  Columns& columns = columns_.back();
  if (!boxes_.back().empty) columns.bottoms[static_cast<std::size_t>(columns.current)] = boxes_.back().bottom;
  const auto least = std::min_element(columns.bottoms.begin(), columns.bottoms.end());
  go_to_column(static_cast<int>(least - columns.bottoms.begin()));
}

void Surface::go_to_column(int column) {
  Columns& columns = columns_.back();
  Box& box = boxes_.back();
  if (!box.empty) columns.bottoms[static_cast<std::size_t>(columns.current)] = box.bottom;
  columns.current = column;
  const float used = columns.bottoms[static_cast<std::size_t>(column)];
  box.left = columns.left + columns.step * static_cast<float>(column);
  box.bottom = std::round(used > 0.0f ? used + px(0.9f) : columns.top);
  box.empty = true;
}

void Surface::close_columns() {
  const std::vector<float>& bottoms = columns_.back().bottoms;
  const float bottom = std::max(*std::max_element(bottoms.begin(), bottoms.end()), boxes_.back().bottom);
  columns_.pop_back();
  boxes_.pop_back();
  advance(bottom);
}

void Surface::put_rect(std::size_t index, const Rect& rect) {
  Node& node = mirror_.at(index);
  const float origin = at_foot_ ? viewport_.scroll + viewport_.foot : 0.0f;
  if (at_foot_) node.flags |= node_flag::kAtFoot;
  node.x = rect.x / viewport_.scale;
  node.y = (rect.y - origin) / viewport_.scale;
  node.width = rect.width / viewport_.scale;
  node.height = rect.height / viewport_.scale;
}

}  // namespace tinwright::view
