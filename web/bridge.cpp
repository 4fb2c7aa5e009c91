// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The C functions that bridge.js calls. The browser owns events, scrolling, editing and time; this side owns the frame:
// it draws with WebGL 2 when asked to and hands the mirror's nodes over when they changed.
#include "web/bridge.h"

#include <GLES3/gl3.h>
#include <emscripten/emscripten.h>
#include <emscripten/html5.h>

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "app/view/surface.h"
#include "imgui.h"
#include "imgui_impl_opengl3.h"
#include "web/solid_gl.h"

// In imports.js. page_mirror hands the nodes over: their number, their words, and the strings they point into;
// page_wish a wish, whose text may hold zeros; page_errand an errand.
extern "C" void page_mirror(const void* nodes, int count, const char* strings);
extern "C" void page_wish(int kind, const char* name, const char* type, const char* text, int size);
extern "C" void page_errand(const char* bytes, int size, int replaces);

namespace tinwright::web {
namespace {

constexpr const char* kShaderVersion = "#version 300 es";

using view::Surface;
using view::Viewport;

struct State {
  DrawPage draw = nullptr;
  const Desk* desk = nullptr;
  std::vector<std::byte> fonts[3];
  std::unique_ptr<Surface> surface;
  TextScale text_scale = nullptr;
  Viewport viewport;
  float ratio = 1, zoom = 1;              // device px per css px before the page was pinched, and by how much it was
  float text = 18;                        // [css px] height of the body text as the browser has it
  ImVec2 part_at{0, 0}, part_size{0, 0};  // [device px] of the window: what the canvas shows
  float baked_em = 0;
};

State& state() {
  static State only;
  return only;
}

bool make_context() {
  EmscriptenWebGLContextAttributes wish;
  emscripten_webgl_init_context_attributes(&wish);
  wish.majorVersion = 2;
  wish.alpha = wish.antialias = wish.depth = wish.stencil = false;
  wish.preserveDrawingBuffer = true;  // a page that is drawn only on demand must keep what it showed
  wish.powerPreference = EM_WEBGL_POWER_PREFERENCE_LOW_POWER;
  wish.enableExtensionsByDefault = false;
  const EMSCRIPTEN_WEBGL_CONTEXT_HANDLE context = emscripten_webgl_create_context("#canvas", &wish);
  return context > 0 && emscripten_webgl_make_context_current(context) == EMSCRIPTEN_RESULT_SUCCESS;
}

/// The letters' size as the browser, the screen, the cook and their fingers want it. Whole pixels, unless pinched: then
/// the page keeps its proportions.
void bake_if_needed() {
  State& s = state();
  const float larger = s.text_scale == nullptr ? 1.0f : s.text_scale();
  s.viewport.em = std::round(s.text * s.ratio * larger) * s.zoom;
  if (s.viewport.em == s.baked_em) return;
  s.surface->bake(s.viewport.em);
  if (s.baked_em > 0) {  // the first one is made with everything else
    ImGui_ImplOpenGL3_DestroyFontsTexture();
    ImGui_ImplOpenGL3_CreateFontsTexture();
    ImGui::GetIO().Fonts->ClearTexData();
  }
  s.baked_em = s.viewport.em;
}

void clear(view::Colour colour) {
  glViewport(0, 0, static_cast<GLsizei>(state().part_size.x), static_cast<GLsizei>(state().part_size.y));
  glClearColor(static_cast<float>(colour.red) / 255.0f, static_cast<float>(colour.green) / 255.0f,
               static_cast<float>(colour.blue) / 255.0f, 1.0f);
  glClear(GL_COLOR_BUFFER_BIT);
}

/// Draws what the canvas shows of the window. The page is laid out for all of it; only the camera moves.
void render() {
  ImGui::Render();
  ImDrawData& drawn = *ImGui::GetDrawData();
  drawn.DisplayPos = state().part_at;
  drawn.DisplaySize = state().part_size;
  clear(state().surface->palette().page);
  ImGui_ImplOpenGL3_RenderDrawData(&drawn);
}

void pass_wish(int kind, const std::string& name, const std::string& type, const std::string& text) {
  page_wish(kind, name.c_str(), type.c_str(), text.data(), static_cast<int>(text.size()));
}

void pass_errand(const std::string& bytes, bool replaces) {
  page_errand(bytes.data(), static_cast<int>(bytes.size()), replaces ? 1 : 0);
}

}  // namespace

void set_page(DrawPage draw, const Desk* desk, TextScale text_scale) {
  state().draw = draw;
  state().desk = desk;
  state().text_scale = text_scale;
}

extern "C" {

EMSCRIPTEN_KEEPALIVE void* page_alloc(int size) {
  return std::malloc(static_cast<std::size_t>(size));
}
EMSCRIPTEN_KEEPALIVE void page_free(void* memory) {
  std::free(memory);
}

/// Takes a font file: 0 regular, 1 semi-bold, 2 signs. Before page_start().
EMSCRIPTEN_KEEPALIVE void page_font(int which, const std::byte* data, int size) {
  state().fonts[which].assign(data, data + size);
}

/// Returns 0 when the browser gives no WebGL 2.
EMSCRIPTEN_KEEPALIVE int page_start() {
  if (!make_context()) return 0;
  IMGUI_CHECKVERSION();
  ImGui::CreateContext();
  ImGuiIO& io = ImGui::GetIO();
  io.IniFilename = nullptr;
  io.LogFilename = nullptr;
  io.ConfigInputTrickleEventQueue = false;  // a press and a move in one frame are what happened; do not spread them
  ImGui_ImplOpenGL3_Init(kShaderVersion);
  State& s = state();
  s.surface = std::make_unique<Surface>(view::FontFiles{s.fonts[0], s.fonts[1], s.fonts[2]});
  s.surface->set_solid_host(draw_solid);
  return 1;
}

/// Size of the window [device px], device px per css px without pinching, how much larger it was pinched, and the
/// height of body text [css px].
EMSCRIPTEN_KEEPALIVE void page_resize(float width, float height, float ratio, float zoom, float text) {
  State& s = state();
  s.viewport.width = width;
  s.viewport.height = height;
  s.viewport.scale = ratio * zoom;
  s.ratio = ratio;
  s.zoom = zoom;
  s.text = text;
  bake_if_needed();
}

/// Which part of the window the canvas shows [device px].
EMSCRIPTEN_KEEPALIVE void page_part(float x, float y, float width, float height) {
  state().part_at = {x, y};
  state().part_size = {width, height};
}

/// Where a bar at the window's foot ends [device px]; 0 where there is no room for one.
EMSCRIPTEN_KEEPALIVE void page_foot(float y) {
  state().viewport.foot = y;
}

/// The size of the letters [css px] for what the browser draws itself: 0 body, 1 small, 2 big.
EMSCRIPTEN_KEEPALIVE float page_text_size(int which) {
  const view::Faces& f = state().surface->faces();
  const view::Face* const all[] = {&f.body, &f.small, &f.big};
  return all[which]->size / state().viewport.scale;
}

EMSCRIPTEN_KEEPALIVE void page_night(int night) {
  state().viewport.night = night != 0;
}
/// Whether the device is set to as little movement as possible.
EMSCRIPTEN_KEEPALIVE void page_less_motion(int less) {
  state().viewport.less_motion = less != 0;
}
EMSCRIPTEN_KEEPALIVE void page_scroll(float y) {
  state().viewport.scroll = y;
}

/// Where the pointer is [device px]; outside the window when there is none.
EMSCRIPTEN_KEEPALIVE void page_pointer(float x, float y, int down) {
  ImGuiIO& io = ImGui::GetIO();
  io.AddMousePosEvent(x, y);
  io.AddMouseButtonEvent(ImGuiMouseButton_Left, down != 0);
}

EMSCRIPTEN_KEEPALIVE void page_action(std::uint32_t id, int kind, const char* text) {
  state().surface->mirror().post(id, static_cast<view::ActionKind>(kind), text);
}

/// The graphics context came back empty: make everything in it anew.
EMSCRIPTEN_KEEPALIVE void page_restore() {
  // The backend would delete what the lost context had, of which browsers complain; so it starts anew.
  ImGui::MemFree(std::exchange(ImGui::GetIO().BackendRendererUserData, nullptr));
  ImGui_ImplOpenGL3_Init(kShaderVersion);
  forget_solids();
}

/// Height of the content [css px], to make the page as long.
EMSCRIPTEN_KEEPALIVE float page_height() {
  return state().surface->content_height() / state().viewport.scale;
}

/// Where the page wants to be scrolled to [css px]; negative: nowhere.
EMSCRIPTEN_KEEPALIVE float page_scroll_wish() {
  const auto wish = state().surface->scroll_wish();
  return wish ? *wish / state().viewport.scale : -1.0f;
}

/// The colour by that name, as 0xRRGGBB, for what the browser draws itself.
EMSCRIPTEN_KEEPALIVE std::uint32_t page_colour(int which) {
  const view::Palette& p = state().viewport.night ? view::night_palette() : view::day_palette();
  const view::Colour all[] = {p.page, p.ink, p.soft_ink, p.well, p.accent};
  const view::Colour c = all[which];
  return static_cast<std::uint32_t>(c.red << 16 | c.green << 8 | c.blue);
}

/// [s] after which the page wants the next frame even if nothing happens; negative: it wants none.
EMSCRIPTEN_KEEPALIVE double page_frame_wish() {
  return state().surface->frame_asked_in().value_or(-1.0);
}

/// Gives the page a text from `source`; 0 when it was refused.
EMSCRIPTEN_KEEPALIVE int page_take_in(int source, const char* text, int size) {
  const Desk* desk = state().desk;
  return desk != nullptr && desk->take_in(source, {text, static_cast<std::size_t>(size)}) ? 1 : 0;
}

/// What became of the page's errands; only for a page with a desk.
EMSCRIPTEN_KEEPALIVE void page_outcome(const char* bytes, int size) {
  state().desk->take_outcome({bytes, static_cast<std::size_t>(size)});
}
EMSCRIPTEN_KEEPALIVE void page_progress(double done) {
  state().desk->take_progress(done);
}
EMSCRIPTEN_KEEPALIVE void page_errands_failed() {
  state().desk->errands_failed();
}

/// Whether the text that came in last was refused; of a recipe that is known some frames later.
EMSCRIPTEN_KEEPALIVE int page_is_refusal() {
  return state().desk->is_refusal() ? 1 : 0;
}

/// What is to be kept [UTF-8], its size, and a number that grows when it changes; -1: this page keeps nothing.
EMSCRIPTEN_KEEPALIVE const char* page_kept() {
  return state().desk->kept().data();
}
EMSCRIPTEN_KEEPALIVE int page_kept_size() {
  return static_cast<int>(state().desk->kept().size());
}
EMSCRIPTEN_KEEPALIVE int page_edition() {
  return state().desk == nullptr ? -1 : static_cast<int>(state().desk->edition());
}

/// Draws one frame, `seconds` after the last one and at `time` [s] on a clock that only goes forward; returns 1 when
/// another one is due because this one changed what it had drawn already.
EMSCRIPTEN_KEEPALIVE int page_frame(float seconds, double time) {
  State& s = state();
  s.viewport.time = time;
  bake_if_needed();
  ImGuiIO& io = ImGui::GetIO();
  io.DeltaTime = seconds;
  io.DisplaySize = {s.viewport.width, s.viewport.height};
  ImGui_ImplOpenGL3_NewFrame();
  ImGui::NewFrame();
  s.surface->begin(s.viewport);
  s.draw();
  s.surface->end();
  render();
  view::Mirror& mirror = s.surface->mirror();
  if (mirror.end_frame()) {
    page_mirror(mirror.nodes().data(), static_cast<int>(mirror.nodes().size()), mirror.strings().c_str());
  }
  if (s.desk != nullptr) {
    s.desk->hand_wishes(pass_wish);
    s.desk->hand_errands(pass_errand);
  }
  return mirror.was_acted_on() ? 1 : 0;
}

}  // extern "C"

}  // namespace tinwright::web
