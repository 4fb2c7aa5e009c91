// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What the controls promise, without a browser: actions posted to the mirror come back from the calls, and every
// control leaves a node in reading order. Also what the pictures stand on: round figures on axes, an even ramp of
// colours.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "app/plan/axis.h"
#include "app/view/controls.h"
#include "app/view/warmth.h"
#include "imgui.h"

using namespace tinwright;
using namespace tinwright::view;

namespace {

/// A page without graphics: frames are drawn into lists that nobody shows.
class Bench {
 public:
  Bench() : context_(ImGui::CreateContext()), surface_(FontFiles{}) {
    ImGui::GetIO().IniFilename = nullptr;
    viewport_.width = 800;
    viewport_.height = 600;
    surface_.bake(viewport_.em);
  }
  ~Bench() { ImGui::DestroyContext(context_); }

  void frame(const std::function<void()>& draw) {
    ImGui::GetIO().DisplaySize = {viewport_.width, viewport_.height};
    ImGui::GetIO().DeltaTime = 1.0f / 60.0f;
    ImGui::NewFrame();
    surface_.begin(viewport_);
    draw();
    surface_.end();
    ImGui::Render();
    changed_ = mirror().end_frame();
  }

  const Node& node(std::string_view key) {
    for (const Node& found : mirror().nodes()) {
      if (mirror().text_at(found.key) == key) return found;
    }
    FAIL("no control has the key ", std::string(key));
    return mirror().nodes().front();
  }

  void post(std::string_view key, ActionKind kind, std::string_view text = {}) {
    mirror().post(node(key).id, kind, text);
  }
  Mirror& mirror() { return surface_.mirror(); }
  float height() const { return surface_.content_height(); }
  Viewport& viewport() { return viewport_; }
  bool changed() const { return changed_; }
  std::optional<double> wish() const { return surface_.frame_asked_in(); }

 private:
  ImGuiContext* context_;
  Surface surface_;
  Viewport viewport_;
  bool changed_ = false;
};

constexpr double kZero = 273.15;  // [K] of 0 °C

std::string joined(const std::vector<Mark>& marks) {
  std::string all;
  for (const Mark& mark : marks) all += (all.empty() ? "" : ",") + mark.text;
  return all;
}

/// CIE lightness of an sRGB colour, 0 to 100 (CIE 15; IEC 61966-2-1).
double lightness(Colour c) {
  const auto linear = [](double v) { return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4); };
  const double y = 0.2126 * linear(c.red / 255.0) + 0.7152 * linear(c.green / 255.0) + 0.0722 * linear(c.blue / 255.0);
  return y <= 216.0 / 24389.0 ? y * 24389.0 / 27.0 : 116.0 * std::cbrt(y) - 16.0;
}

}  // namespace

TEST_CASE("a posted press comes back once") {
  Bench bench;
  int presses = 0;
  const auto draw = [&] { presses += button("go", "Go") ? 1 : 0; };
  bench.frame(draw);
  bench.post("go", ActionKind::kPress);
  for (int i = 0; i < 3; ++i) bench.frame(draw);
  CHECK(presses == 1);
}

TEST_CASE("a grip tells how far the finger went in device px, the last word only, and what keys chose") {
  Bench bench;
  bench.viewport().scale = 2.0f;
  GripMove move;
  const auto draw = [&] { move = grip("line", "Line", 100, 100, {5, 2, 9, "5", "5", false}, false); };
  bench.frame(draw);
  CHECK_FALSE(move.is_begun);
  bench.post("line", ActionKind::kPress);
  bench.post("line", ActionKind::kDrag, "10 20");
  bench.post("line", ActionKind::kDrag, "125 -40");
  bench.frame(draw);
  CHECK(move.is_begun);
  CHECK(move.is_dragged);
  CHECK(move.right == doctest::Approx(25.0));
  CHECK(move.down == doctest::Approx(-8.0));
  CHECK_FALSE(move.step);
  for (const auto& [text, step] : {std::pair{"9", 9}, {"2", 2}, {"1", -1}, {"10", -1}, {"-3", -1}, {"x", -1}}) {
    bench.post("line", ActionKind::kEdit, text);
    bench.frame(draw);
    CHECK(move.step.value_or(-1) == step);
    CHECK_FALSE(move.is_dragged);
  }
  bench.post("line", ActionKind::kDrag, "rubbish");
  bench.frame(draw);
  CHECK(move.right == 0.0f);
}

TEST_CASE("a grip's element is large enough for a finger, and lies with its middle on the place") {
  Bench bench;
  bench.viewport().scale = 3.0f;
  bench.frame([] { grip("line", "Line", 300, 240, {1, 0, 2, "1", "1", false}, false); });
  const Node& node = bench.node("line");
  CHECK(node.width >= kTouchHeight);
  CHECK(node.height >= kTouchHeight);
  CHECK(node.x + 0.5f * node.width == doctest::Approx(100.0).epsilon(0.01));
  CHECK(node.y + 0.5f * node.height == doctest::Approx(80.0).epsilon(0.01));
}

TEST_CASE("a bar at the foot stays there however far the page is scrolled, and the page gets as much longer") {
  Bench bench;
  bench.viewport().foot = 600;
  int shown = 0;
  bool has_bar = true;
  const auto draw = [&] {
    if (has_bar) foot_bar("parts", "Show", shown, {"One part", "Another"});
    space(50);
  };
  bench.frame(draw);
  const Node before = bench.node("parts");
  CHECK((before.flags & node_flag::kAtFoot) != 0);
  CHECK(before.y + before.height == doctest::Approx(0.0));
  const float with_bar = bench.height();
  bench.viewport().scroll = 300;
  bench.frame(draw);
  CHECK(bench.node("parts").y == before.y);
  bench.post("parts/1", ActionKind::kPress);
  bench.frame(draw);
  CHECK(shown == 1);
  bench.viewport().foot = 0;  // a keyboard is open
  bench.frame(draw);
  CHECK(bench.mirror().nodes().empty());
  CHECK(bench.height() == with_bar);
  has_bar = false;
  bench.frame(draw);
  CHECK(bench.height() == doctest::Approx(with_bar - before.height));
}

TEST_CASE("letters larger than are baked keep the size that is wanted") {
  ImGuiContext* context = ImGui::CreateContext();
  const Faces small = bake_faces(FontFiles{}, 20.0f);
  CHECK(small.body.size == 20.0f);
  CHECK(small.body.font->FontSize == 20.0f);
  const Faces large = bake_faces(FontFiles{}, 2.0f * kMostBaked);
  CHECK(large.body.size == 2.0f * kMostBaked);
  CHECK(large.body.font->FontSize == kMostBaked);
  ImGui::DestroyContext(context);
}

TEST_CASE("two presses before one frame come back in two frames") {
  Bench bench;
  int presses = 0;
  const auto draw = [&] { presses += button("go", "Go") ? 1 : 0; };
  bench.frame(draw);
  bench.post("go", ActionKind::kPress);
  bench.post("go", ActionKind::kPress);
  bench.frame(draw);
  CHECK(presses == 1);
  CHECK(bench.mirror().was_acted_on());
  bench.frame(draw);
  CHECK(presses == 2);
}

TEST_CASE("a press on a control that is gone is forgotten") {
  Bench bench;
  int presses = 0;
  bool shown = true;
  const auto draw = [&] { presses += shown && button("go", "Go") ? 1 : 0; };
  bench.frame(draw);
  bench.post("go", ActionKind::kPress);
  shown = false;
  bench.frame(draw);
  shown = true;
  bench.frame(draw);
  CHECK(presses == 0);
}

TEST_CASE("what is disabled cannot be pressed, typed into or chosen") {
  Bench bench;
  bool pressed = false, ticked = false;
  int index = 0, step = 1;
  std::string text = "as it was";
  const auto draw = [&] {
    pressed = button("button", "B", ButtonLook::kPlain, false) || pressed;
    field("field", "F", text, {.enabled = false});
    toggle("toggle", "T", ticked, false);
    choice("choice", "C", index, {"a", "b"}, {}, false);
    segments("segments", "S", index, {"a", "b"}, false);
    slider("slider", "L", step, 5, "", false);
  };
  bench.frame(draw);
  bench.post("button", ActionKind::kPress);
  bench.post("field", ActionKind::kEdit, "changed");
  bench.post("toggle", ActionKind::kPress);
  bench.post("choice", ActionKind::kEdit, "1");
  bench.post("segments/1", ActionKind::kPress);
  bench.post("slider", ActionKind::kEdit, "3");
  bench.frame(draw);
  CHECK_FALSE(pressed);
  CHECK_FALSE(ticked);
  CHECK(index == 0);
  CHECK(step == 1);
  CHECK(text == "as it was");
}

TEST_CASE("of several edits before one frame the last wins, and stays even when it is wrong") {
  Bench bench;
  std::string text;
  int changes = 0;
  const auto draw = [&] { changes += field("depth", "Depth", text, {.problem = text == "1x" ? "no" : ""}) ? 1 : 0; };
  bench.frame(draw);
  for (const char* typed : {"1", "12", "1x"}) bench.post("depth", ActionKind::kEdit, typed);
  bench.frame(draw);
  bench.frame(draw);
  CHECK(text == "1x");
  CHECK(changes == 1);
  CHECK((bench.node("depth").flags & node_flag::kInvalid) != 0);
  CHECK(bench.node("depth").problem == bench.node("depth/problem").id);
}

TEST_CASE("of several segments pressed before one frame the last wins") {
  Bench bench;
  int index = 3;
  const auto draw = [&] { segments("shape", "Shape", index, {"a", "b", "c", "d"}); };
  bench.frame(draw);
  for (const char* radio : {"shape/2", "shape/1"}) bench.post(radio, ActionKind::kPress);
  bench.frame(draw);
  bench.frame(draw);
  CHECK(index == 1);
  for (const char* radio : {"shape/0", "shape/2", "shape/0", "shape/3", "shape/2"})
    bench.post(radio, ActionKind::kPress);
  bench.frame(draw);
  bench.frame(draw);
  CHECK(index == 2);
}

TEST_CASE("a choice takes only a number of its options") {
  Bench bench;
  int index = 1;
  const auto draw = [&] { choice("pan", "Pan", index, {"a", "b", "c"}); };
  bench.frame(draw);
  for (const char* wrong : {"", "3", "-1", "1x", "99999999999"}) {
    CAPTURE(wrong);
    bench.post("pan", ActionKind::kEdit, wrong);
    bench.frame(draw);
    CHECK(index == 1);
  }
  bench.post("pan", ActionKind::kEdit, "2");
  bench.frame(draw);
  CHECK(index == 2);
}

TEST_CASE("a slider takes only a number of its steps, and tells where it stands") {
  Bench bench;
  int step = 3;
  const auto draw = [&] { slider("moment", "Moment", step, 10, std::to_string(step) + " min"); };
  bench.frame(draw);
  CHECK(bench.mirror().text_at(bench.node("moment").value) == "3");
  CHECK(bench.mirror().text_at(bench.node("moment").extra) == std::string("9") + kBetweenCells + "3 min");
  CHECK(bench.node("moment").height >= kTouchHeight);
  for (const char* wrong : {"", "10", "-1", "3.5", "4x", "99999999999"}) {
    CAPTURE(wrong);
    bench.post("moment", ActionKind::kEdit, wrong);
    bench.frame(draw);
    CHECK(step == 3);
  }
  bench.post("moment", ActionKind::kEdit, "9");
  bench.frame(draw);
  CHECK(step == 9);
}

TEST_CASE("a slider with one step or none stands at its start") {
  Bench bench;
  int one = 0, none = 7;
  bench.frame([&] {
    slider("one", "One", one, 1, "");
    slider("none", "None", none, 0, "");
  });
  CHECK(bench.mirror().text_at(bench.node("one").extra) == std::string("0") + kBetweenCells);
  CHECK(bench.mirror().text_at(bench.node("none").value) == "0");
  CHECK(none == 7);
}

TEST_CASE("a frame is asked for anew each time, and the soonest wish counts") {
  Bench bench;
  bench.frame([] {
    surface().ask_frame_in(2.0);
    surface().ask_frame_in(0.5);
    surface().ask_frame_in(1.0);
  });
  CHECK(bench.wish() == 0.5);
  bench.frame([] { surface().ask_frame_in(-1.0); });
  CHECK(bench.wish() == 0.0);
  bench.frame([] {});
  CHECK_FALSE(bench.wish().has_value());
}

TEST_CASE("an empty text, list or table is drawn like any other") {
  Bench bench;
  std::string none;
  int index = 0;
  bench.frame([&] {
    heading("h", "", 1);
    paragraph("p", "");
    note("n", NoteKind::kPlain, "");
    answer("a", "", "");
    field("f", "", none);
    choice("c", "", index, {});
    segments("s", "", index, {});
    table("t", "", {}, {});
    button("b", "");
  });
  CHECK(bench.mirror().nodes().size() == 11);  // nine controls and the labels of field and choice
}

TEST_CASE("nodes stand in reading order, column by column") {
  Bench bench;
  const auto draw = [] {
    begin_columns(2);
    paragraph("left 1", "a");
    paragraph("left 2", "b");
    next_column();
    paragraph("right", "c");
    end_columns();
    paragraph("below", "d");
  };
  bench.frame(draw);
  std::vector<std::string> keys;
  for (const Node& node : bench.mirror().nodes()) keys.emplace_back(bench.mirror().text_at(node.key));
  CHECK(keys == std::vector<std::string>{"left 1", "left 2", "right", "below"});
  CHECK(bench.node("right").x > bench.node("left 1").x + 300);
  CHECK(bench.node("right").y == bench.node("left 1").y);
  CHECK(bench.node("below").y > bench.node("left 2").y);
  CHECK(bench.node("below").x == bench.node("left 1").x);
}

TEST_CASE("nothing reaches beyond the page, however narrow") {
  Bench bench;
  std::string text = "a text that is longer than its field on a narrow page";
  int index = 0;
  for (float width : {320.0f, 390.0f, 820.0f, 1440.0f}) {
    CAPTURE(width);
    bench.viewport().width = width;
    bench.frame([&] {
      begin_region("card", "Card");
      begin_columns(columns_that_fit(16, 3));
      field("f", "A label that goes on and on until it has to wrap", text, {.width_em = 40});
      next_column();
      segments("s", "S", index, {"centimetres", "inches", "a third", "a fourth, which is long"});
      button("b", "A button with a sentence on it that is longer than a phone is wide");
      end_columns();
      table(
          "t", "T", std::vector<TableColumn>{{"Unbreakable", Align::kLeft}, {"Words", Align::kRight}},
          std::vector<std::vector<std::string>>{{"Antidisestablishmentarianism, twice", "and many other long words"}});
      end_region();
    });
    for (const Node& node : bench.mirror().nodes()) {
      CAPTURE(bench.mirror().text_at(node.key));
      CHECK(node.x >= 0);
      CHECK(node.x + node.width <= width);
    }
  }
}

TEST_CASE("a key used twice is counted, the same key in two scopes is not") {
  Bench bench;
  bench.frame([] {
    for (const char* pan : {"one", "two"}) {
      const KeyScope scope(pan);
      button("remove", "Remove");
    }
  });
  CHECK(bench.mirror().duplicate_count() == 0);
  bench.frame([] {
    button("remove", "Remove");
    button("remove", "Remove");
  });
  CHECK(bench.mirror().duplicate_count() == 1);
}

TEST_CASE("a page that did not change is not handed over again") {
  Bench bench;
  std::string text = "24";
  const auto draw = [&] { field("f", "F", text); };
  bench.frame(draw);
  CHECK(bench.changed());
  bench.frame(draw);
  CHECK_FALSE(bench.changed());
  text = "25";
  bench.frame(draw);
  CHECK(bench.changed());
}

TEST_CASE("an axis of degrees has round figures that enclose the temperatures, no more than there is room for") {
  CHECK(joined(temperature_marks(kZero + 20, kZero + 200, UnitChoice::kMetric, 6)) == "0,50,100,150,200");
  CHECK(joined(temperature_marks(kZero - 18, kZero + 97, UnitChoice::kMetric, 5)) == "-50,0,50,100");
  CHECK(joined(temperature_marks(kZero + 20, kZero + 200, UnitChoice::kUs, 6)) == "0,100,200,300,400");
  CHECK(temperature_marks(kZero + 20, kZero + 20, UnitChoice::kMetric, 6).size() >= 2);
  for (double low = -20.0; low < 60.0; low += 7.3) {
    for (double span = 0.5; span < 300.0; span *= 1.7) {
      CAPTURE(low);
      CAPTURE(span);
      const auto marks = temperature_marks(kZero + low, kZero + low + span, UnitChoice::kMetric, 6);
      CHECK(marks.size() <= 6);
      CHECK(marks.front().at <= kZero + low + 1e-5);
      CHECK(marks.back().at >= kZero + low + span - 1e-5);
    }
  }
}

TEST_CASE("figures within a range carry their unit and leave out the ends that are not round") {
  CHECK(joined(temperature_marks_within(kZero + 20, kZero + 160, UnitChoice::kMetric, 4)) == "50 °C,100 °C,150 °C");
  CHECK(joined(temperature_marks_within(kZero, kZero + 100, UnitChoice::kMetric, 3)) == "0 °C,50 °C,100 °C");
}

TEST_CASE("an axis of time counts in round minutes or hours from 0") {
  CHECK(joined(time_marks(38 * 60.0, 3)) == "0,15 min,30 min");
  CHECK(joined(time_marks(7 * 3600.0, 5)) == "0,2 h,4 h,6 h");
}

TEST_CASE("the colours of warmth only grow lighter, in steps that differ by little") {
  double least = 100.0, most = 0.0;
  for (int i = 0; i < 12; ++i) {
    const double step = lightness(warmth((i + 1) / 12.0)) - lightness(warmth(i / 12.0));
    least = std::min(least, step);
    most = std::max(most, step);
  }
  CHECK(least > 4.0);
  CHECK(most < 8.0);
  CHECK(lightness(warmth(0.0)) < 25.0);
  CHECK(lightness(warmth(1.0)) > 90.0);
  CHECK(lightness(warmth(-3.0)) == lightness(warmth(0.0)));
  CHECK(lightness(warmth(7.0)) == lightness(warmth(1.0)));
}
