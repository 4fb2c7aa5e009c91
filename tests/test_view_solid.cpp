// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The pan in three dimensions as its view asks a host for it: all of it in the picture from wherever it is seen, turned
// as drags and sliders say, in words where the host cannot.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <string_view>

#include <glm/vec3.hpp>
#include <glm/vec4.hpp>

#include "app/plan/bench.h"
#include "app/plan/examples.h"
#include "app/view/solid_host.h"
#include "app/view/views.h"
#include "imgui.h"

namespace tinwright::view {
namespace {

SolidScene& last_scene() {
  static SolidScene scene;
  return scene;
}

std::uintptr_t take_scene(const SolidScene& scene) {
  last_scene() = scene;
  return 1;
}

/// Frames with the picture alone.
class Stand {
 public:
  explicit Stand(DrawSolid host, std::size_t example = 0)
      : context_(ImGui::CreateContext()),
        surface_(FontFiles{}),
        answer_(answer_bench(worked_examples()[example].bench)) {
    ImGui::GetIO().IniFilename = nullptr;
    surface_.bake(18);
    surface_.set_solid_host(host);
    frame();
  }
  ~Stand() { ImGui::DestroyContext(context_); }

  void frame() {
    Viewport viewport;
    viewport.width = 400;
    viewport.height = 900;
    ImGui::GetIO().DisplaySize = {viewport.width, viewport.height};
    ImGui::GetIO().DeltaTime = 1.0f / 60.0f;
    ImGui::NewFrame();
    surface_.begin(viewport);
    show_solid(answer_, look);
    surface_.end();
    ImGui::Render();
    surface_.mirror().end_frame();
  }

  void post(std::string_view key, std::string_view text) {
    surface_.mirror().post(node(key)->id, ActionKind::kEdit, text);
    frame();
  }

  const Node* node(std::string_view key) {
    for (const Node& found : surface_.mirror().nodes()) {
      if (surface_.mirror().text_at(found.key) == key) return &found;
    }
    return nullptr;
  }
  std::string label(std::string_view key) { return std::string(surface_.mirror().text_at(node(key)->label)); }

  SolidLook look;

 private:
  ImGuiContext* context_;
  view::Surface surface_;
  BenchAnswer answer_;
};

glm::vec3 seen_at(const SolidScene& scene, glm::vec3 p) {
  const glm::vec4 q = scene.clip * glm::vec4(p, 1.0f);
  return {q.x / q.w, q.y / q.w, q.z / q.w};
}

}  // namespace

TEST_CASE("from wherever it is seen, all of the pan is in the picture") {
  for (std::size_t example = 0; example < worked_examples().size(); ++example) {
    Stand stand(take_scene, example);
    for (const float above : {0.0f, 35.0f, 90.0f}) {
      for (float round = 0.0f; round < 360.0f; round += 75.0f) {
        stand.look.turn.round = round;
        stand.look.turn.above = above;
        stand.frame();
        float most = 0.0f;
        for (const SolidCorner& corner : last_scene().solid->corners) {
          const glm::vec3 at = seen_at(last_scene(), corner.at);
          most = std::max({most, std::abs(at.x), std::abs(at.y), std::abs(at.z)});
        }
        CHECK(most <= 1.0f);
        CHECK(most > 0.4f);
      }
    }
  }
}

TEST_CASE("up is up, the front is near, and turning takes what was in front to the right") {
  Stand stand(take_scene);
  stand.look.turn = {};
  stand.frame();
  const glm::vec3 front = seen_at(last_scene(), {0.0f, -0.1f, 0.0f});
  CHECK(front.z < seen_at(last_scene(), {0.0f, 0.1f, 0.0f}).z);
  CHECK(seen_at(last_scene(), {0.1f, 0.0f, 0.0f}).x > 0.1f);
  CHECK(seen_at(last_scene(), {0.0f, 0.0f, 0.1f}).y > front.y + 0.1f);
  stand.look.turn.round = 60.0f;
  stand.frame();
  CHECK(seen_at(last_scene(), {0.0f, -0.1f, 0.0f}).x > front.x + 0.1f);
  stand.look.turn.above = 90.0f;
  stand.frame();
  CHECK(last_scene().facing[2].z == doctest::Approx(1.0f));  // what faces up faces the eye
}

TEST_CASE("a drag is measured from where it began, however few of its moves arrive") {
  Stand stand(take_scene);
  stand.post("solid", "1 10 0");
  stand.post("solid", "1 100 -20");
  CHECK(stand.look.turn.round == doctest::Approx(75.0f));  // 25° and half of 100
  CHECK(stand.look.turn.above == doctest::Approx(20.0f));
  stand.post("solid", "2 -200 -900");
  CHECK(stand.look.turn.round == doctest::Approx(335.0f));
  CHECK(stand.look.turn.above == doctest::Approx(0.0f));
  stand.post("solid", "2 0 0");  // it became a scroll
  CHECK(stand.look.turn.round == doctest::Approx(75.0f));
  CHECK(stand.look.turn.above == doctest::Approx(20.0f));
  stand.post("solid", "nothing of the kind");
  CHECK(std::isfinite(stand.look.turn.round));
}

TEST_CASE("sliders turn it in steps, and the words say how it is seen") {
  Stand stand(take_scene);
  stand.post("solid/round", "9");
  stand.post("solid/above", "18");
  stand.frame();  // the sliders stand beneath the picture
  CHECK(stand.look.turn.round == doctest::Approx(45.0f));
  CHECK(stand.label("solid").find("turned by 45°, seen from above by 90°") != std::string::npos);
  CHECK((stand.node("solid")->flags & node_flag::kTurns) != 0);
}

TEST_CASE("one body serves all frames, another one the cut") {
  Stand stand(take_scene);
  const auto cut = last_scene().solid;
  stand.post("solid/round", "9");
  CHECK(last_scene().solid == cut);
  stand.look.is_cut = false;
  stand.frame();
  CHECK(last_scene().solid != cut);
}

TEST_CASE("where nobody can draw it, words say so") {
  Stand stand(nullptr);
  stand.frame();
  REQUIRE(stand.node("solid/refused") != nullptr);
  CHECK(stand.label("solid").find("cannot draw") != std::string::npos);
  CHECK(stand.node("solid/round") == nullptr);
}

}  // namespace tinwright::view
