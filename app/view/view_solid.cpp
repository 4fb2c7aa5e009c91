// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// My pan in three dimensions, with what is in it, turned by dragging or by sliders.
#include <algorithm>
#include <cmath>

#include <glm/trigonometric.hpp>

#include "app/view/solid_host.h"
#include "app/view/views.h"
#include "imgui.h"

namespace tinwright::view {
namespace {

constexpr float kHeight = 16.0f;   // [em]
constexpr float kField = 20.0f;    // [°] of view, top to bottom
constexpr float kRoom = 1.02f;     // [-] round the body
constexpr float kStep = 5.0f;      // [°] of the sliders
constexpr float kLine = 0.07f;     // [em] thickness of edges
constexpr float kHatch = 0.045f;   // [-] of the radius, from one line across the dough to the next
constexpr int kMostPixels = 1600;  // [device px] of a side; a finer picture is stretched

Colour mixed(Colour a, Colour b, float share) {
  const auto mix = [&](std::uint8_t x, std::uint8_t y) {
    return static_cast<std::uint8_t>(std::lround(static_cast<float>(x) + share * static_cast<float>(y - x)));
  };
  return {mix(a.red, b.red), mix(a.green, b.green), mix(a.blue, b.blue)};
}

SolidScene scene_of(std::shared_ptr<const Solid> solid, const Turn& turn, const Rect& rect) {
  const Surface& s = surface();
  const Palette& p = s.palette();
  const float radius = kRoom * std::hypot(solid->radius, 0.5f * solid->height);
  const float distance = radius / std::sin(glm::radians(0.5f * kField));
  SolidScene scene;
  const float aspect = rect.width / rect.height;
  const float before = distance * std::max(1.0f, 1.0f / aspect);  // of the eye to the middle of the body
  const float round = glm::radians(turn.round), above = glm::radians(turn.above);
  const glm::vec3 right(std::cos(round), -std::sin(round), 0.0f);
  const glm::vec3 away(std::sin(round), std::cos(round), 0.0f);
  const glm::vec3 up(std::sin(above) * away.x, std::sin(above) * away.y, std::cos(above));
  const glm::vec3 back(-std::cos(above) * away.x, -std::cos(above) * away.y, std::sin(above));
  const float half = 0.5f * solid->height;
  // Perspective as OpenGL has it (its specification, version 2.1, section 2.11), from `near` to `far`.
  const float near = before - 2.0f * radius, far = before + 2.0f * radius;
  const float lens = 1.0f / std::tan(glm::radians(0.5f * kField));
  const float depth = (far + near) / (near - far);
  const auto columns = [&](int i, float x, float y, float z) {
    scene.facing[i] = {x, y, z};
    scene.clip[i] = {x * lens / aspect, y * lens, depth * z, -z};
  };
  for (int i = 0; i < 3; ++i) columns(i, right[i], up[i], back[i]);
  const float down = -half * up.z, z = -half * back.z - before;
  scene.clip[3] = {0.0f, down * lens, depth * z + 2.0f * far * near / (near - far), -z};
  const float shrink = std::min(1.0f, static_cast<float>(kMostPixels) / std::max(rect.width, rect.height));
  scene.width = static_cast<int>(std::lround(rect.width * shrink));
  scene.height = static_cast<int>(std::lround(rect.height * shrink));
  scene.line = std::max(1.0f, s.px(kLine) * shrink);
  scene.hatch = kHatch * solid->radius;
  scene.background = p.card;
  scene.ink = p.ink;
  scene.parts = {mixed(p.card, p.line, 0.55f), mixed(p.card, p.accent, 0.45f), mixed(p.card, p.caution, 0.45f)};
  scene.solid = std::move(solid);
  return scene;
}

constexpr Text kRefused = "This device cannot draw the pan in three dimensions; the drawings of the cut show the same.";

void draw_solid(ImDrawList& draw, const Rect& rect, SolidScene scene, std::uint32_t id, SolidLook& look) {
  const Surface& s = surface();
  scene.id = id;
  const DrawSolid host = s.solid_host();
  const std::uintptr_t texture = host != nullptr ? host(scene) : 0;
  look.is_refused = texture == 0;
  if (look.is_refused) return;
  draw.AddImage(reinterpret_cast<ImTextureID>(texture), {rect.x, rect.y}, {rect.right(), rect.bottom()}, {0.0f, 1.0f},
                {1.0f, 0.0f});
}

std::string degrees(float angle) {
  return std::to_string(std::lround(angle)) + "°";
}

std::string description(const BenchAnswer& answer, const SolidLook& look) {
  std::string text = "My pan in three dimensions, ";
  text += answer.press && answer.fill ? "with its dough and its filling"
          : answer.press              ? "with its dough"
          : answer.fill               ? "with its filling"
                                      : "empty";
  text += "; turned by " + degrees(look.turn.round) + ", seen from above by " + degrees(look.turn.above);
  if (look.is_cut) text += "; its front half is taken away";
  return text;
}

std::string legend(const BenchAnswer& answer) {
  std::string text = "Drag it sideways to turn it. ";
  if (answer.press) text += "Hatched: dough. ";
  if (answer.fill) text += "Plain, inside: filling. ";
  text += "Round it: the pan, its wall drawn thicker than it is.";
  if (answer.my_pan->count > 1) text += " One cavity of the tin is shown.";
  return text;
}

/// A slider over an angle that drags set more finely than its steps.
void turn_slider(Key key, Text label, float& angle, int steps) {
  int step = std::min(static_cast<int>(std::lround(angle / kStep)), steps - 1);
  if (slider(key, label, step, steps, degrees(angle))) angle = kStep * static_cast<float>(step);
}

}  // namespace

void show_solid(BenchAnswer& answer, SolidLook& look) {
  const std::uint32_t id = surface().mirror().id_of("solid");
  heading("solid/title", "In three dimensions", 3);
  turning_picture("solid", look.is_refused ? std::string(kRefused) : description(answer, look), kHeight, look.turn,
                  [&](ImDrawList& draw, const Rect& rect) {
                    draw_solid(draw, rect, scene_of(solid_of(answer, look.is_cut), look.turn, rect), id, look);
                  });
  if (look.is_refused) return note("solid/refused", NoteKind::kPlain, kRefused);
  remark("solid/legend", legend(answer));
  toggle("solid/cut", "Cut open", look.is_cut);
  turn_slider("solid/round", "Turned by", look.turn.round, 72);
  turn_slider("solid/above", "Seen from above by", look.turn.above, 19);
}

}  // namespace tinwright::view
