// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// One of every control, in every state, for the browser tests: what they promise must hold whatever the real page
// shows.
#include <string>
#include <vector>

#include "app/view/controls.h"
#include "imgui.h"
#include "web/bridge.h"

namespace {

using namespace tinwright::view;

struct Sampler {
  std::string diameter = "24", name, wrong = "2 4";
  int unit = 0, pan = 1, shape = 0, presses = 0, more = 0, minute = 10;
  bool lined = true, hidden = false;
};

void words() {
  begin_region("words", "Words");
  heading("words/title", "Words", 2);
  paragraph("words/text",
            "A paragraph that is long enough to wrap on a phone: 23 × 30 cm, ½ cup, 180 °C → crème brûlée, 2 ⅔ tsp.");
  remark("words/remark", "Measured inside, rim to rim.");
  note("words/plain", NoteKind::kPlain, "The dough may be rolled a day earlier.");
  note("words/caution", NoteKind::kCaution, "The filling comes to 4 mm below the rim. Carry it level.");
  note("words/error", NoteKind::kError, "This pan is smaller than the dough for its floor.");
  end_region();
}

void filling_in(Sampler& t) {
  begin_region("filling", "Filling in");
  heading("filling/title", "Filling in", 2);
  begin_columns(2);
  field("diameter", "Diameter", t.diameter, {.hint = "24", .keyboard = Keyboard::kDecimal});
  next_column();
  choice("unit", "Unit", t.unit, {"cm", "inches"});
  end_columns();
  field("name", "Name of the pan", t.name, {.hint = "the old blue one", .help = "Only for you to recognise it."});
  field("wrong", "Depth", t.wrong,
        {.problem = t.wrong == "2 4" ? "A length has one number: write 24 or 2.4." : "", .width_em = 8});
  static std::string closed = "not now";
  field("closed", "Not to be filled in", closed, {.enabled = false});
  static const ChoiceGroup groups[] = {{"Round", 0}, {"With corners", 2}};
  choice("pan", "Pan", t.pan, {"Tart pan 28 cm", "Spring form 24 cm", "Loaf pan", "Square 20 cm"}, groups);
  segments("shape", "Shape", t.shape, {"round", "rectangle", "oval", "ring", "with flutes"});
  slider("minute", "Minutes in the oven", t.minute, 41, std::to_string(t.minute) + " min");
  int stuck = 2;
  slider("stuck", "Not to be moved", stuck, 5, "third of five", false);
  toggle("lined", "Line it with dough", t.lined);
  toggle("hidden", "Show one more field", t.hidden);
  if (t.hidden) {
    static std::string extra;
    field("extra", "One more", extra);
  }
  bool no = false;
  toggle("shut", "Cannot be chosen", no, false);
  begin_flow();
  if (button("press", "Press the dough", ButtonLook::kPrimary)) ++t.presses;
  if (button("again", "Start again", ButtonLook::kPlain)) t = Sampler{};
  if (button("more", "More rows", ButtonLook::kQuiet)) t.more += 10;
  button("off", "Not possible yet", ButtonLook::kPlain, false);
  end_flow();
  end_region();
}

void draw_pan(ImDrawList& d, const Rect& r) {
  const ImU32 ink = packed(surface().palette().ink), tint = packed(surface().palette().tint);
  const float w = r.width * 0.6f, x = r.x + r.width * 0.2f, top = r.y + r.height * 0.25f, foot = r.y + r.height * 0.8f;
  const ImVec2 pan[] = {{x, top}, {x + w * 0.06f, foot}, {x + w * 0.94f, foot}, {x + w, top}};
  d.AddConvexPolyFilled(pan, 4, tint);
  d.AddPolyline(pan, 4, ink, 0, surface().px(0.12f));
}

void showing(const Sampler& t) {
  static const char* const kShapes[] = {"round", "rectangle", "oval", "ring", "with flutes"};
  begin_region("showing", "Showing");
  heading("showing/title", "Showing", 2);
  const std::string presses = std::to_string(t.presses), pan = std::to_string(t.pan);
  answer("result", "Result", (t.diameter.empty() ? "–" : t.diameter) + (t.unit == 0 ? " cm" : " in"),
         std::string(kShapes[t.shape]) + (t.lined ? ", lined" : ", bare") + ", pan " + pan + ", pressed " + presses +
             ", minute " + std::to_string(t.minute));
  const TableColumn columns[] = {{"Part", Align::kLeft}, {"Grams", Align::kRight}, {"In the kitchen", Align::kLeft}};
  const std::vector<std::string> rows[] = {{"Flour", "250", "2 cups, level"},
                                           {"Butter, cold and cut in cubes", "125", "1 ⅛ sticks"},
                                           {"Sugar", "80", "⅜ cup"}};
  table("parts", "For the pressed base", columns, rows);
  picture("drawing", "The pan from the side: straight wall, filled half way", 0, 8, draw_pan);
  for (int i = 0; i < t.more; ++i) {
    const KeyScope scope("row" + std::to_string(i));
    button("extra", "Extra " + std::to_string(i));
  }
  end_region();
}

void draw_sampler() {
  static Sampler t;
  heading("title", "One of every control", 1);
  begin_columns(columns_that_fit(22, 3));
  filling_in(t);
  next_column();
  showing(t);
  next_column();
  words();
  end_columns();
}

}  // namespace

int main() {
  tinwright::web::set_page(draw_sampler);
}
