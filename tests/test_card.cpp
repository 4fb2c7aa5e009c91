// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The bench card: whatever a recipe is called, the page stays the page; all amounts are on it, and its drawings are to
// scale.
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <set>
#include <string>

#include <doctest/doctest.h>

#include "app/plan/card_drawing.h"
#include "app/plan/demos.h"
#include "app/plan/desk.h"
#include "app/plan/html_text.h"
#include "app/plan/job_baking.h"
#include "tests/markup_scan.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using markup::Element;
using markup::Page;

JobAnswer answer_text(std::string_view text, bool bakes = true) {
  const auto document = read_json(text);
  REQUIRE(static_cast<bool>(document));
  JobAnswer answer = answer_job(*document, UnitChoice::kMetric);
  for (const auto& problem : answer.problems) MESSAGE(problem.first << ": " << problem.second);
  REQUIRE(answer.plan.has_value());
  while (bakes && answer.is_baking()) bake_next(answer);
  return answer;
}

Page page_of(const JobAnswer& answer) {
  Page page = markup::scan(bench_card(answer));
  CHECK(page.fault == "");
  return page;
}

std::vector<Element> elements(const Page& page, const std::string& name, const std::string& of_class = "") {
  std::vector<Element> found;
  for (const Element& each : page.elements) {
    const auto it = each.attributes.find("class");
    if (each.name == name && (of_class.empty() || (it != each.attributes.end() && it->second == of_class))) {
      found.push_back(each);
    }
  }
  return found;
}

bool is_within(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
  for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + to.size())) {
    text.replace(at, from.size(), to);
  }
  return text;
}

/// Everything a text could try, as it stands in JSON.
const std::string kHostile =
    R"(</title></style></svg><script>alert(1)</script><img src=x onerror=\"alert(2)\" a='b'>&lt;&#x3c;]]>-->\u202e\u2066\u0000\u001b\u0007\u2028)";

std::string hostile_job() {
  const std::string job = R"({"version": 1, "name": "name X", "X": "X",
    "recipe": {"name": "recipe X", "from": "from X", "yield": "yield X",
      "pan": {"outline": {"kind": "round", "diameter": "20 cm"}, "profile": {"depth": "5 cm"}},
      "parts": [
        {"name": "crust X", "role": "lining", "mixture": "shortcrust", "ingredients": [
          {"food": "flour X", "amount": "200 g", "remark": "remark X"}, {"food": "pieces X", "amount": "3", "size": "size X"},
          {"food": "open X"}, {"food": "pinch X", "remark": "pinch X"}]},
        {"name": "filling X", "role": "filling", "ingredients": [{"food": "water X", "amount": "600 ml"}]}],
      "rests": [{"what": "rest X", "for": "1 h", "where": "room", "when": "after_oven"}],
      "steps": [{"text": "step X", "part": "crust X", "adds": ["flour X", "nowhere X"]}],
      "unread": ["unread X"]},
    "cupboard": [{"name": "tin X", "count": 2, "pan": {"outline": {"kind": "round", "diameter": "18 cm"},
      "profile": {"depth": "4 cm"}, "count": 2}}],
    "plan": {"make": "pans", "pans": [{"name": "tin X", "count": 2}]}})";
  return replaced(job, "X", kHostile);
}

/// The fill lines of a drawing, as {x0, y0, x1, y1} in millimetres of the pan.
std::vector<std::array<double, 4>> fill_lines(const std::string& svg) {
  std::vector<std::array<double, 4>> lines;
  const Page page = markup::scan(svg);
  CHECK(page.fault == "");
  for (const Element& line : elements(page, "path", "fill-line")) {
    const char* at = line.attributes.at("d").c_str();
    std::array<double, 4> ends{};
    for (double& value : ends) {
      char* next = nullptr;
      value = std::strtod(at + 1, &next);  // past M, a blank, L, a blank
      at = next;
    }
    lines.push_back(ends);
  }
  return lines;
}

void check_line(const std::array<double, 4>& line, double x0, double x1, double y) {
  CHECK(line[0] == doctest::Approx(x0));
  CHECK(line[2] == doctest::Approx(x1));
  CHECK(line[1] == doctest::Approx(y));
  CHECK(line[3] == doctest::Approx(y));
}

PanPlan filled(const Pan& cavity, double height) {
  PanPlan plan;
  plan.cavity = cavity;
  plan.fill_height = height;
  plan.filling = volume(cavity, height);
  plan.below_rim = depth(cavity) - height;
  return plan;
}

std::string drawn(const Pan& pan, const PanPlan& plan) {
  OwnPan own;
  own.name = "pan";
  own.pan = pan;
  return pan_drawing(own, plan, UnitChoice::kMetric, 115.0, 0);
}

bool has_word(const std::string& text, const std::string& word) {
  const auto is_letter = [&](std::size_t i) { return i < text.size() && markup::is_name_letter(text[i]); };
  for (std::size_t at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    if (!(at > 0 && is_letter(at - 1)) && !is_letter(at + word.size())) return true;
  }
  return false;
}

}  // namespace

TEST_CASE("a text in HTML keeps its letters and loses its power") {
  CHECK(html_text("a<b>&\"'") == "a&lt;b&gt;&amp;&quot;&#39;");
  CHECK(html_text("cr\xC3\xA8me \xE2\x9C\x93 \xF0\x9F\x8D\xB0") == "cr\xC3\xA8me \xE2\x9C\x93 \xF0\x9F\x8D\xB0");
  CHECK(html_text(std::string_view("a\0b\x1B[c\x7F", 7)) == "ab[c");
  CHECK(html_text("one\ntwo\tthree\xE2\x80\xA8") == "one two three ");
  CHECK(html_text("\xE2\x80\xAE"
                  "abc\xE2\x81\xA6\xE2\x80\x8F") == "abc");
  CHECK(foreign_text("<i>") == "<bdi>&lt;i&gt;</bdi>");
}

TEST_CASE("bytes that are no UTF-8 become replacement characters, and never swallow what follows") {
  const std::string gap = "\xEF\xBF\xBD";
  CHECK(html_text("\xFF<") == gap + "&lt;");
  CHECK(html_text("\xC3<") == gap + "&lt;");
  CHECK(html_text("\xE2\x80") == gap + gap);
  CHECK(html_text("\xC0\xBC") == gap + gap);                      // < overlong
  CHECK(html_text("\xED\xA0\x80") == gap + gap + gap);            // half a surrogate pair
  CHECK(html_text("\xF4\x90\x80\x80") == gap + gap + gap + gap);  // beyond Unicode
}

TEST_CASE("a job whose every text is markup changes no element of the card") {
  const Page page = page_of(answer_text(hostile_job()));
  static const std::set<std::string> kElements{
      "html", "head", "meta", "title", "style", "body", "main",   "header", "section", "article", "div",
      "h1",   "h2",   "h3",   "h4",    "p",     "bdi",  "b",      "small",  "table",   "thead",   "tbody",
      "tr",   "th",   "td",   "ol",    "ul",    "li",   "dl",     "dt",     "dd",      "label",   "input",
      "span", "svg",  "desc", "defs",  "path",  "text", "circle", "pattern"};
  static const std::set<std::string> kAttributes{"lang",
                                                 "charset",
                                                 "http-equiv",
                                                 "content",
                                                 "name",
                                                 "class",
                                                 "scope",
                                                 "type",
                                                 "role",
                                                 "width",
                                                 "height",
                                                 "viewBox",
                                                 "id",
                                                 "aria-labelledby",
                                                 "aria-label",
                                                 "d",
                                                 "fill",
                                                 "stroke",
                                                 "stroke-width",
                                                 "stroke-linejoin",
                                                 "fill-rule",
                                                 "x",
                                                 "y",
                                                 "cx",
                                                 "cy",
                                                 "r",
                                                 "font-size",
                                                 "font-weight",
                                                 "text-anchor",
                                                 "patternUnits",
                                                 "patternTransform"};
  for (const Element& each : page.elements) {
    CAPTURE(each.name);
    CHECK(kElements.count(each.name) == 1);
    for (const auto& attribute : each.attributes) {
      CAPTURE(attribute.first);
      CHECK(kAttributes.count(attribute.first) == 1);
    }
  }
  CHECK(elements(page, "title").size() == 2);  // of the page, and of the one drawing
  CHECK(elements(page, "style").size() == 1);
}

TEST_CASE("hostile texts are on the card as they were written, in every place") {
  const JobAnswer answer = answer_text(hostile_job());
  const std::string html = bench_card(answer);
  const std::string shown =
      " &lt;/title&gt;&lt;/style&gt;&lt;/svg&gt;&lt;script&gt;alert(1)&lt;/script&gt;&lt;img src=x "
      "onerror=&quot;alert(2)&quot; a=&#39;b&#39;&gt;&amp;lt;&amp;#x3c;]]&gt;--&gt; ";
  for (const char* place : {"name", "recipe", "from", "yield", "crust", "filling", "flour", "remark", "pieces", "size",
                            "open", "pinch", "water", "rest", "step", "nowhere", "unread", "tin"}) {
    CAPTURE(place);
    CHECK(is_within(html, place + shown));
  }
  CHECK_FALSE(is_within(html, "\xE2\x80\xAE"));  // U+202E
  for (const char c : html) CHECK((static_cast<unsigned char>(c) >= 0x20 || c == '\n'));
}

TEST_CASE("every demo's card is well formed, with all of its amounts, steps and pans") {
  for (const Demo& demo : demo_jobs()) {
    CAPTURE(demo.key);
    const JobAnswer answer = answer_text(demo.text);
    const Page page = page_of(answer);
    const auto parts = elements(page, "article", "part");
    REQUIRE(parts.size() == answer.words.parts.size());
    std::size_t boxes = answer.job->steps.size() + (answer.clock ? 0 : answer.job->rests.size());
    for (std::size_t i = 0; i < parts.size(); ++i) {
      const PartWords& words = answer.words.parts[i];
      CHECK(is_within(parts[i].text, words.factor));
      boxes += words.items.size();
      for (const ItemLine& item : words.items) {
        CAPTURE(item.food);
        CHECK(is_within(parts[i].text, html_text(item.amount)));
        CHECK(is_within(parts[i].text, html_text(item.food)));
        CHECK(is_within(parts[i].text, html_text(item.detail)));
      }
    }
    CHECK(elements(page, "input").size() == boxes);
    const auto chosen = elements(page, "p", "pans");
    REQUIRE(chosen.size() == 1);
    for (const PanPlan& pan : answer.plan->pans) {
      const std::string count = pan.count > 1 ? std::to_string(pan.count) + " × " : "";
      CHECK(is_within(chosen.front().text, count + html_text(answer.job->cupboard[pan.own].name)));
    }
    const std::string html = bench_card(answer);
    for (const char* word : {"nan", "inf", "undefined", "null"}) CHECK_FALSE(has_word(html, word));
    for (const ReportLine& line : answer.words.cautions) CHECK(is_within(html, html_text(line.value)));
    CHECK(html == bench_card(answer));
  }
}

TEST_CASE("the card asks for nothing from elsewhere and runs nothing") {
  const std::string html = bench_card(answer_text(demo_jobs().front().text));
  for (const char* word : {"http:", "https:", "<script", "javascript", "<link", "<img", "@import", "src="}) {
    CAPTURE(word);
    CHECK_FALSE(is_within(html, word));
  }
  std::size_t addresses = 0;
  for (std::size_t at = html.find("url("); at != std::string::npos; at = html.find("url(", at + 1)) {
    ++addresses;
    CHECK(html[at + 4] == '#');
  }
  CHECK(addresses > 0);
}

TEST_CASE("ids are given once, and every one that is referred to is there") {
  const Page page = page_of(answer_text(demo_jobs()[1].text));
  std::set<std::string> ids;
  for (const Element& each : page.elements) {
    const auto id = each.attributes.find("id");
    if (id != each.attributes.end()) CHECK(ids.insert(id->second).second);
  }
  for (const Element& svg : elements(page, "svg")) {
    const std::string& said = svg.attributes.at("aria-labelledby");
    CHECK(ids.count(said.substr(0, said.find(' '))) == 1);
    CHECK(ids.count(said.substr(said.find(' ') + 1)) == 1);
    CHECK(svg.attributes.at("role") == "img");
  }
}

TEST_CASE("headings go down one level at a time") {
  for (const Demo& demo : demo_jobs()) {
    int level = 0;
    for (const Element& each : page_of(answer_text(demo.text)).elements) {
      if (each.name.size() != 2 || each.name[0] != 'h' || each.name[1] > '6') continue;
      const int next = each.name[1] - '0';
      CHECK(next <= level + 1);
      level = next;
    }
    CHECK(level > 0);
  }
}

TEST_CASE("in a straight pan the fill line is at its height below the rim, from wall to wall") {
  const Pan pan = shapes::pan(Round{0.200}, StraightWall{0.050, 0.0, 0.0});
  const auto lines = fill_lines(drawn(pan, filled(pan, 0.030)));
  REQUIRE(lines.size() == 1);
  check_line(lines.front(), -100.0, 100.0, 20.0);
}

TEST_CASE("in a leaning pan the fill line ends where the wall is at that height") {
  const Pan pan = shapes::pan(Round{0.240}, StraightWall{0.040, 0.020, 0.0});
  const auto lines = fill_lines(drawn(pan, filled(pan, 0.030)));  // a quarter of the way down: 5 mm in
  REQUIRE(lines.size() == 1);
  check_line(lines.front(), -115.0, 115.0, 10.0);
}

TEST_CASE("in a lined pan the fill line is within the crust and above its floor") {
  const Pan pan = shapes::pan(Round{0.200}, StraightWall{0.050, 0.0, 0.0});
  Shell shell;
  shell.lining = 0.005;
  shell.wall_height = 0.040;
  const auto cavity = cavity_of(shell, pan);
  REQUIRE(static_cast<bool>(cavity));
  PanPlan plan = filled(*cavity, 0.020);
  plan.shell = shell;
  const std::string svg = drawn(pan, plan);
  const auto lines = fill_lines(svg);
  REQUIRE(lines.size() == 1);
  check_line(lines.front(), -95.0, 95.0, 50.0 - 5.0 - 20.0);
  CHECK(is_within(svg, "fill-rule=\"evenodd\""));
  CHECK(is_within(svg, "below the crust&#39;s top"));
}

TEST_CASE("a ring has a fill line on either side of its core") {
  const Pan pan = shapes::ring(0.200, 0.060, StraightWall{0.050, 0.0, 0.0});
  const auto lines = fill_lines(drawn(pan, filled(pan, 0.030)));
  REQUIRE(lines.size() == 2);
  check_line(lines[0], 30.0, 100.0, 20.0);
  check_line(lines[1], -30.0, -100.0, 20.0);
}

TEST_CASE("a drawing's size on paper is its size in millimetres over the scale it names") {
  const Pan small = shapes::pan(Round{0.080}, StraightWall{0.020, 0.0, 0.0});
  const Pan large = shapes::pan(Round{0.280}, StraightWall{0.035, 0.0, 0.0});
  const auto paper_scale = [](const std::string& svg) {
    const Element head = markup::scan(svg).elements.front();
    const std::string& box = head.attributes.at("viewBox");
    double width = 0.0;
    REQUIRE(std::sscanf(box.c_str(), "%*f %*f %lf", &width) == 1);
    return width / std::strtod(head.attributes.at("width").c_str(), nullptr);
  };
  const std::string at_life_size = drawn(small, filled(small, 0.010)), reduced = drawn(large, filled(large, 0.010));
  CHECK(paper_scale(at_life_size) == doctest::Approx(1.0).epsilon(0.001));
  CHECK(is_within(at_life_size, ">life size<"));
  CHECK(paper_scale(reduced) == doctest::Approx(2.5).epsilon(0.001));
  CHECK(is_within(reduced, ">1 : 2.5<"));
}

TEST_CASE("the demos' fill lines are where their plans say") {
  for (const Demo& demo : demo_jobs()) {
    CAPTURE(demo.key);
    const JobAnswer answer = answer_text(demo.text, false);
    for (const PanPlan& plan : answer.plan->pans) {
      const OwnPan& own = answer.job->cupboard[plan.own];
      const auto lines = fill_lines(pan_drawing(own, plan, UnitChoice::kMetric, 115.0, 0));
      REQUIRE(lines.size() == 1);
      const double crust = plan.shell.is_there() ? lining_of(plan.shell, own.pan).height : depth(own.pan);
      const double top = 1e3 * (depth(own.pan) - crust);
      CHECK(std::abs(lines.front()[1] - top - 1e3 * plan.below_rim) < 0.006);
    }
  }
}

TEST_CASE("the strip's band stands over the times it names") {
  const JobAnswer answer = answer_text(demo_jobs().front().text);
  const PanBake& baked = answer.baked.front();
  REQUIRE(baked.solved.has_value());
  REQUIRE(baked.solved->timing.has_value());
  const BakeTime& timing = *baked.solved->timing;
  const std::string svg = oven_strip(baked, UnitChoice::kMetric, 0);
  const Page page = markup::scan(svg);
  CHECK(page.fault == "");
  double early = -1.0, wide = -1.0, stages = 0.0;
  for (const Element& box : elements(page, "path")) {
    const std::string& data = box.attributes.at("d");
    double x = 0.0, y = 0.0, across = 0.0;
    if (std::sscanf(data.c_str(), "M%lf %lfh%lf", &x, &y, &across) != 3) continue;
    if (box.attributes.at("fill") == "#fff") {
      stages += across;
    } else {
      early = x;
      wide = across;
    }
  }
  REQUIRE(stages > 0.0);
  CHECK(early / stages == doctest::Approx(timing.band.early / timing.time).epsilon(0.002));
  CHECK((early + wide) / stages == doctest::Approx(timing.band.late / timing.time).epsilon(0.002));
  for (const char* words : {">look from ", ">likely ", ">until "}) CHECK(is_within(svg, words));
}

TEST_CASE("a part of two hundred foods may go on over columns and pages, a short one may not") {
  std::string foods;
  for (int i = 0; i < 200; ++i) {
    foods += (i > 0 ? ", " : "") + std::string("{\"food\": \"food number ") + std::to_string(i) + "\", \"amount\": \"" +
             std::to_string(i + 1) + " g\"}";
  }
  const std::string job = R"({"version": 1, "name": "Long", "recipe": {"name": "Long",
    "pan": {"outline": {"kind": "round", "diameter": "40 cm"}, "profile": {"depth": "20 cm"}},
    "parts": [{"name": "All of it", "role": "filling", "density": "1 g/ml", "ingredients": [)" +
                          foods + R"(]}]}, "cupboard": [{"name": "Pot", "pan": {"outline": {"kind": "round",
    "diameter": "40 cm"}, "profile": {"depth": "20 cm"}}}], "plan": {"make": "batch"}})";
  const Page page = page_of(answer_text(job));
  const auto parts = elements(page, "article", "part long");
  REQUIRE(parts.size() == 1);
  for (int i = 0; i < 200; ++i) CHECK(is_within(parts.front().text, "food number " + std::to_string(i)));
  CHECK(elements(page, "input").size() == 200);
  CHECK(elements(page_of(answer_text(demo_jobs().front().text)), "article", "part long").empty());
}

}  // namespace tinwright
