// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Tables and pictures.
#include <algorithm>
#include <cmath>
#include <numeric>

#include "app/view/controls_detail.h"
#include "imgui.h"

namespace tinwright::view {
namespace {

using Row = std::vector<std::string>;

constexpr float kCellInset = 0.5f;  // [em] left and right of a cell's text; web/page.css has the same
constexpr float kCellRise = 0.3f;   // [em] above and below it

/// Natural widths where they fit; otherwise the wide columns give way and wrap, and spare room goes to the first
/// column.
std::vector<float> column_widths(std::span<const TableColumn> columns, std::span<const Row> rows, float available) {
  const Surface& s = surface();
  std::vector<float> widths;
  for (std::size_t c = 0; c < columns.size(); ++c) {
    float widest = s.text_size(s.faces().small, columns[c].title).width;
    for (const Row& row : rows) {
      if (c < row.size()) widest = std::max(widest, s.text_size(s.faces().body, row[c]).width);
    }
    widths.push_back(std::ceil(widest + 2 * s.px(kCellInset)));
  }
  const float total = std::accumulate(widths.begin(), widths.end(), 0.0f);
  if (total <= available) {
    if (!widths.empty()) widths.front() += available - total;
    return widths;
  }
  // Columns narrower than an equal share keep their width; the others divide what is left.
  float left = available;
  auto sharing = static_cast<float>(widths.size());
  std::vector<bool> settled(widths.size(), false);
  for (bool again = true; again;) {
    again = false;
    for (std::size_t c = 0; c < widths.size(); ++c) {
      if (settled[c] || widths[c] > left / sharing) continue;
      settled[c] = again = true;
      left -= widths[c];
      sharing -= 1;
    }
  }
  for (std::size_t c = 0; c < widths.size(); ++c) {
    if (!settled[c]) widths[c] = std::floor(left / sharing);
  }
  return widths;
}

float row_height(std::span<const float> widths, const Row& row, const Face& face) {
  const Surface& s = surface();
  float highest = s.text_size(face, {}).height;
  for (std::size_t c = 0; c < row.size() && c < widths.size(); ++c) {
    highest = std::max(highest, s.text_size(face, row[c], widths[c] - 2 * s.px(kCellInset)).height);
  }
  return std::ceil(highest + 2 * s.px(kCellRise));
}

void draw_row(float x, float y, std::span<const float> widths, std::span<const TableColumn> columns, const Row& row,
              const Face& face, Colour ink) {
  Surface& s = surface();
  for (std::size_t c = 0; c < widths.size(); ++c) {
    const float wrap = widths[c] - 2 * s.px(kCellInset);
    if (c < row.size() && !row[c].empty()) {
      const float width = s.text_size(face, row[c], wrap).width;
      const float aside = columns[c].align == Align::kRight ? wrap - width : 0;
      s.text(face, x + s.px(kCellInset) + aside, y + s.px(kCellRise), ink, row[c], wrap);
    }
    x += widths[c];
  }
}

}  // namespace

void table(Key key, Text caption, std::span<const TableColumn> columns, std::span<const Row> rows) {
  Surface& s = surface();
  const Palette& p = s.palette();
  const Faces& f = s.faces();
  Row titles;
  for (const TableColumn& column : columns) titles.push_back(column.title);

  const Rect caption_rect = s.place(s.text_size(f.small, caption, s.width()).height);
  const std::vector<float> widths = column_widths(columns, rows, s.width());
  std::vector<float> heights{row_height(widths, titles, f.small)};
  for (const Row& row : rows) heights.push_back(row_height(widths, row, f.body));
  const Rect rect = s.place(std::accumulate(heights.begin(), heights.end(), 0.0f), 0, kUnderGap);

  if (s.is_visible(caption_rect)) {
    s.text(f.small, caption_rect.x, caption_rect.y, p.soft_ink, caption, caption_rect.width);
  }
  float y = rect.y;
  std::string content(caption), measures;
  for (std::size_t r = 0; r < heights.size(); ++r) {
    const Row& row = r == 0 ? titles : rows[r - 1];
    const Rect line{rect.x, y + heights[r] - s.hairline(), rect.width, s.hairline()};
    if (s.is_visible({rect.x, y, rect.width, heights[r]})) {
      draw_row(rect.x, y, widths, columns, row, r == 0 ? f.small : f.body, r == 0 ? p.soft_ink : p.ink);
      s.fill(line, r == 0 ? p.line : p.rule, 0);
    }
    y += heights[r];
    content += kBetweenRows;
    for (std::size_t c = 0; c < columns.size(); ++c) {
      if (c > 0) content += kBetweenCells;
      if (c < row.size()) content += row[c];
    }
  }
  const auto css = [&](float length) { return std::to_string(length / s.viewport().scale); };
  for (std::size_t c = 0; c < columns.size(); ++c) {
    if (c > 0) measures += kBetweenCells;
    measures += css(widths[c]) + (columns[c].align == Align::kRight ? '>' : '<');
  }
  measures += kBetweenRows + css(rect.y - caption_rect.y);
  for (const float height : heights) measures += kBetweenCells + css(height);
  const std::size_t node = s.mirror().add(key, Role::kTable, caption, content);
  const std::uint32_t place = s.mirror().put(measures);
  s.mirror().at(node).extra = place;
  s.put_rect(node, {rect.x, caption_rect.y, rect.width, rect.bottom() - caption_rect.y});
}

Rect picture(Key key, Text description, float width_em, float height_em, const Drawing& draw) {
  Surface& s = surface();
  const Rect rect = s.place(s.px(height_em), s.px(width_em));
  const std::size_t node = s.mirror().add(key, Role::kPicture, description);
  s.put_rect(node, rect);
  if (!s.is_visible(rect)) return rect;
  const Rect window{rect.x, s.screen_y(rect.y), rect.width, rect.height};
  s.draw().PushClipRect({window.x, window.y}, {window.right(), window.bottom()}, true);
  draw(s.draw(), window);
  s.draw().PopClipRect();
  return rect;
}

}  // namespace tinwright::view
