// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What one frame is drawn on: the size of the page, its theme, the mirror, and the running layout. Controls ask it for
// a place and draw there. Lengths are device pixels measured from the top left of the content; the browser scrolls, so
// the surface only moves what it draws. Callers think in em and let px() convert.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "app/view/mirror.h"
#include "app/view/theme.h"

struct ImDrawList;

namespace tinwright::view {

struct SolidScene;
using DrawSolid = std::uintptr_t (*)(const SolidScene& scene);  // see solid_host.h

struct Rect {
  float x = 0, y = 0, width = 0, height = 0;  // [device px], content coordinates
  float right() const { return x + width; }
  float bottom() const { return y + height; }
};

/// What the host knows at the start of a frame.
struct Viewport {
  float width = 0, height = 0;  // [device px]
  float scroll = 0;             // [device px] how far the content is moved up
  float scale = 1;              // device px per css px
  float em = 18;                // [device px] height of the body text
  float foot = 0;               // [device px] where a bar at the window's foot ends; 0: no room, a keyboard is open
  bool night = false;
  bool less_motion = false;  // the cook asked the device for as little movement as possible
  double time = 0;           // [s] on the host's clock, which starts anywhere and only goes forward
};

/// A finger needs this much height. Source: WCAG 2.2, success criterion 2.5.5 (target size, enhanced): 44 css px.
inline constexpr float kTouchHeight = 44.0f;  // [css px]

class Surface {
 public:
  explicit Surface(const FontFiles& files) : files_(files) {}

  /// Between the two, controls may be drawn. begin() expects ImGui::NewFrame() to have been called, and bake() whenever
  /// the em changed.
  void begin(const Viewport& viewport);
  void end();
  void bake(float em);
  /// Who draws bodies; null: nobody can.
  void set_solid_host(DrawSolid host) { solid_host_ = host; }
  DrawSolid solid_host() const { return solid_host_; }

  Mirror& mirror() { return mirror_; }
  const Palette& palette() const { return viewport_.night ? night_palette() : day_palette(); }
  const Faces& faces() const { return faces_; }
  const Viewport& viewport() const { return viewport_; }

  float px(float em) const { return em * viewport_.em; }
  float hairline() const;
  float touch_height() const;
  /// Height of everything drawn so far this frame [device px].
  float content_height() const { return content_height_; }

  /// Frames are drawn only when the cook does something. Whoever needs one by itself asks for it, each frame anew, and
  /// looks at the viewport's time; the soonest asked for counts.
  void ask_frame_in(double seconds);
  std::optional<double> frame_asked_in() const { return frame_asked_in_; }

  /// Moves the page up to that place of the content after this frame, should it be scrolled further down.
  void show_from(float y);
  /// Where that is; nothing where nothing asked for it.
  std::optional<float> scroll_wish() const { return scroll_wish_; }

  // Layout. -----------------------------------------------------------------------------------------------------------
  /// Width a control may fill.
  float width() const { return boxes_.back().width; }
  /// Where what was placed last ends.
  float bottom() const { return boxes_.back().bottom; }
  /// The next free place, as wide as the column unless `width` > 0; `gap` [em] is kept from what stands above.
  Rect place(float height, float width = 0, float gap = 0.7f);
  /// A region holds a column of its own; with an inset it lies on a panel. `node` gets the region's place.
  void open_region(std::size_t node, float inset);
  void close_region();
  void open_columns(int count, float gap);
  void next_column();
  /// The same, in the column that is least full.
  void next_panel();
  void close_columns();
  void open_flow();
  void close_flow() { boxes_.back().flowing = false; }
  /// What is drawn until close_foot() lies over everything else and stays at the foot of the window, as wide as it; the
  /// page gets as much longer. Returns its place in the content; not a panel, columns or regions may be opened in it.
  Rect open_foot(float height);
  void close_foot();

  // Drawing. ----------------------------------------------------------------------------------------------------------
  ImDrawList& draw() const { return *draw_; }
  float screen_y(float y) const { return y - viewport_.scroll; }
  /// False when nothing of it can be seen, so drawing may be left out.
  bool is_visible(const Rect& rect) const;
  void text(const Face& face, float x, float y, Colour colour, std::string_view text, float wrap = 0);
  Rect text_size(const Face& face, std::string_view text, float wrap = 0) const;
  void fill(const Rect& rect, Colour colour, float rounding_em);
  void outline(const Rect& rect, Colour colour, float rounding_em, float thickness);
  void focus_ring(const Rect& rect, std::uint32_t id, float rounding_em);

  bool is_hovered(const Rect& rect) const;
  bool is_pressed(const Rect& rect) const;

  /// The size of that face's letters [em], as the elements over the canvas need it.
  float text_em(const Face& face) const { return face.size / viewport_.em; }
  /// Gives the node its place, in css px.
  void put_rect(std::size_t node, const Rect& rect);

 private:
  struct Box {
    float left = 0, width = 0, bottom = 0;
    bool empty = true;
    bool flowing = false, flow_started = false;
    float flow_x = 0, flow_top = 0;
  };
  struct Columns {
    int count = 1, current = 0;
    float left = 0, top = 0, step = 0;
    std::vector<float> bottoms;  // of each column; 0 while it is empty
  };
  struct Region {
    std::size_t node = 0;
    float left = 0, top = 0, width = 0, inset = 0;
  };
  static constexpr int kPanelDepths = 4;            // draw layers under the controls, one for each nesting of panels
  static constexpr int kLayers = kPanelDepths + 2;  // those, the controls', and the foot's

  Rect place_in_flow(Box& box, float height, float width, float gap);
  void go_to_column(int column);
  void advance(float bottom);
  void panel(const Rect& rect, int depth);

  FontFiles files_;
  Faces faces_;
  Viewport viewport_;
  Mirror mirror_;
  std::vector<Box> boxes_;
  std::vector<Columns> columns_;
  std::vector<Region> regions_;
  ImDrawList* draw_ = nullptr;
  DrawSolid solid_host_ = nullptr;
  float content_height_ = 0;
  float foot_height_ = 0;
  bool at_foot_ = false;
  std::optional<double> frame_asked_in_;  // [s]
  std::optional<float> scroll_wish_;      // [device px]
};

/// The surface being drawn on; valid between its begin() and end().
Surface& surface();

}  // namespace tinwright::view
