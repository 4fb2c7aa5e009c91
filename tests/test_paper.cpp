// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Paper templates: they are at life size, nothing of a piece is lost between sheets, all that a pan has is covered or
// said to be left out, and no name breaks out of its text. A4 is 210 x 297 mm (ISO 216), Letter 8.5 x 11 in.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>

#include <doctest/doctest.h>
#include <glm/common.hpp>

#include "app/files/catalogue.h"
#include "app/files/pan_reader.h"
#include "app/plan/demos.h"
#include "app/plan/examples.h"
#include "app/plan/job_answer.h"
#include "app/plan/paper_layout.h"
#include "app/plan/paper_mask.h"
#include "app/plan/paper_stick.h"
#include "tests/dice.h"
#include "tests/markup_scan.h"
#include "tests/shapes.h"

namespace tinwright {
namespace {

using glm::dvec2;
using shapes::relative_error;

PaperOrder order_for(const Pan& pan, PaperSize size = PaperSize::kA4) {
  PaperOrder order;
  order.pan = pan;
  order.size = size;
  return order;
}

PaperLayout laid_out(const std::vector<PaperPiece>& pieces, PaperSize size) {
  const auto layout = lay_out(pieces, size);
  REQUIRE(static_cast<bool>(layout));
  return *layout;
}

std::vector<PaperSheet> drawn(const PaperOrder& order) {
  const auto sheets = paper_sheets(order);
  REQUIRE(static_cast<bool>(sheets));
  return *sheets;
}

std::string page_for(const PaperOrder& order) {
  const auto page = paper_html(order);
  REQUIRE(static_cast<bool>(page));
  return *page;
}

/// Pans of all kinds of outline and wall [m].
std::vector<Pan> pans() {
  const StraightWall tapered{0.05, 0.015, 0.0};
  const SteppedWall stepped{{{0, 0.03}, {0.03, 0.02}, {0.03, 0.005}, {0.05, 0.0}}};
  return {shapes::pan(Round{0.23}, StraightWall{0.03, 0.025, 0.0}),
          shapes::pan(Round{0.26}, StraightWall{0.065, 0.0, 0.0}),
          shapes::pan(Round{0.20}, StraightWall{0.05, 0.005, 0.012}),
          shapes::pan(Round{0.20}, stepped),
          shapes::pan(Round{0.18}, BowlWall{0.08}),
          shapes::pan(Oval{0.30, 0.20}, BowlWall{0.06}),
          shapes::pan(Rectangle{0.46, 0.33, 0.02}, StraightWall{0.025, 0.005, 0.0}),
          shapes::pan(RegularPolygon{6, 0.2}, tapered),
          shapes::pan(Oval{0.30, 0.20}, tapered),
          shapes::pan(Oval{0.30, 0.20}, stepped),
          shapes::pan(Fluted{0.24, 40, 0.006}, StraightWall{0.03, 0.0, 0.0}),
          shapes::pan(Freeform{{{0, 0}, {0.2, 0}, {0.2, 0.1}, {0.1, 0.1}, {0.1, 0.2}, {0, 0.2}}}, tapered),
          shapes::ring(0.25, 0.08, StraightWall{0.1, 0.015, 0.008}, 0.01),
          shapes::ring(0.24, 0.08, BowlWall{0.04})};
}

bool is_within(dvec2 p, const PaperBox& box) {
  return p.x >= box.low.x && p.y >= box.low.y && p.x <= box.high.x && p.y <= box.high.y;
}

/// Whether p lies inside an odd number of loops.
bool is_inside(const Loops& loops, dvec2 p) {
  bool inside = false;
  for (const Loop& loop : loops) {
    for (std::size_t i = 0, j = loop.size() - 1; i < loop.size(); j = i++) {
      if ((loop[i].y > p.y) != (loop[j].y > p.y) &&
          p.x < (loop[j].x - loop[i].x) * (p.y - loop[i].y) / (loop[j].y - loop[i].y) + loop[i].x) {
        inside = !inside;
      }
    }
  }
  return inside;
}

bool is_on_paper(const PaperLayout& layout, std::size_t piece, dvec2 p) {
  return std::any_of(layout.parts.begin(), layout.parts.end(),
                     [&](const PaperPart& part) { return part.piece == piece && is_within(p, part.box); });
}

std::vector<markup::Element> elements(const std::string& text, const std::string& of_class) {
  const markup::Page page = markup::scan(text);
  CHECK(page.fault == "");
  std::vector<markup::Element> found;
  for (const markup::Element& each : page.elements) {
    const auto it = each.attributes.find("class");
    if (it != each.attributes.end() && it->second == of_class) found.push_back(each);
  }
  return found;
}

}  // namespace

TEST_CASE("every point of every piece is on some sheet, and neighbouring parts share ten millimetres") {
  Dice dice(5);
  for (const PaperSize size : {PaperSize::kA4, PaperSize::kLetter}) {
    for (const Pan& pan : pans()) {
      const PaperLayout layout = laid_out(paper_set(order_for(pan, size)).pieces, size);
      for (std::size_t i = 0; i < layout.pieces.size(); ++i) {
        const PaperPiece& piece = layout.pieces[i];
        CAPTURE(piece.name);
        for (const Loop& loop : piece.cut) {
          for (std::size_t k = 0; k < loop.size(); ++k) {
            for (const double share : {0.0, 0.37, 0.81}) {
              REQUIRE(is_on_paper(layout, i, glm::mix(loop[k], loop[(k + 1) % loop.size()], share)));
            }
          }
        }
        const PaperBox box = box_of(piece);
        for (int k = 0; k < 300; ++k) {
          const double x = dice.between(box.low.x, box.high.x);
          const dvec2 p(x, dice.between(box.low.y, box.high.y));
          if (is_inside(piece.cut, p)) REQUIRE(is_on_paper(layout, i, p));
        }
      }
      for (const PaperPart& part : layout.parts) {
        if (part.right == 0) continue;
        for (const PaperPart& other : layout.parts) {
          if (other.piece != part.piece || other.number != part.right) continue;
          CHECK(std::abs(part.box.high.x - other.box.low.x - 10.0) < 1e-9);
          CHECK(other.left == part.number);
        }
      }
    }
  }
}

TEST_CASE("parts lie within the margins, clear of the check bar and of each other") {
  for (const PaperSize size : {PaperSize::kA4, PaperSize::kLetter}) {
    const dvec2 sheet = size == PaperSize::kA4 ? dvec2(210.0, 297.0) : dvec2(215.9, 279.4);
    CHECK(sheet_size(size) == sheet);
    for (const Pan& pan : pans()) {
      const PaperLayout layout = laid_out(paper_set(order_for(pan, size)).pieces, size);
      for (const PaperPart& part : layout.parts) {
        const dvec2 end = part.at + part.box.high - part.box.low;
        CHECK(part.at.x >= 10.0 - 1e-9);
        CHECK(part.at.y >= 10.0 - 1e-9);
        CHECK(end.x <= sheet.x - 10.0 + 1e-6);
        CHECK(end.y <= sheet.y - 30.0 + 1e-6);
        for (const PaperPart& other : layout.parts) {
          if (&other == &part || other.sheet != part.sheet) continue;
          const dvec2 other_end = other.at + other.box.high - other.box.low;
          const bool apart =
              end.x < other.at.x || other_end.x < part.at.x || end.y < other.at.y || other_end.y < part.at.y;
          CHECK(apart);
        }
      }
    }
  }
}

TEST_CASE("every sheet is a whole SVG of the paper's size with a bar of exactly 100 mm") {
  for (const PaperSize size : {PaperSize::kA4, PaperSize::kLetter}) {
    const bool is_a4 = size == PaperSize::kA4;
    for (const Pan& pan : pans()) {
      const auto sheets = drawn(order_for(pan, size));
      REQUIRE(!sheets.empty());
      for (std::size_t i = 0; i < sheets.size(); ++i) {
        CHECK(sheets[i].title == "Sheet " + std::to_string(i + 1) + " of " + std::to_string(sheets.size()));
        const markup::Page page = markup::scan(sheets[i].svg.substr(0, sheets[i].svg.size() - 1));
        REQUIRE(page.fault == "");
        const auto& root = page.elements.front().attributes;
        CHECK(root.at("width") == (is_a4 ? "210mm" : "215.9mm"));
        CHECK(root.at("height") == (is_a4 ? "297mm" : "279.4mm"));
        CHECK(root.at("viewBox") == (is_a4 ? "0 0 210 297" : "0 0 215.9 279.4"));
        const auto bars = elements(sheets[i].svg, "check-bar");
        REQUIRE(bars.size() == 1);
        double x0 = 0, y0 = 0, x1 = 0, y1 = 0;
        REQUIRE(std::sscanf(bars[0].attributes.at("d").c_str(), "M%lf %lfL%lf %lf", &x0, &y0, &x1, &y1) == 4);
        CHECK(x1 - x0 == 100.0);
        CHECK(y0 == y1);
        CHECK(sheets[i].svg.find("only up to the heat on its packet") != std::string::npos);
      }
    }
  }
}

TEST_CASE("pieces have the pan's size in millimetres") {
  const PaperSet set = paper_set(order_for(shapes::pan(Round{0.23}, StraightWall{0.03, 0.025, 0.0})));
  REQUIRE(set.pieces.size() == 4);
  const PaperBox floor = box_of(set.pieces[0]);
  CHECK(std::abs(floor.high.x - floor.low.x - 180.0) < 0.02);
  CHECK(set.pieces[1].copies == 2);  // two halves
  const PaperBox dough = box_of(set.pieces[2]);
  CHECK(std::abs(dough.high.x - dough.low.x - 2.0 * (90.0 + std::hypot(30.0, 25.0) + 15.0)) < 0.02);
}

TEST_CASE("what pieces cover and what is left out add up to floor and wall") {
  for (const Pan& pan : pans()) {
    const PaperOrder order = order_for(pan);
    const PaperSet set = paper_set(order);
    const double wall = covered_area(set, PieceKind::kWall, order) + covered_area(set, PieceKind::kCore, order);
    CAPTURE(pan.outline.shape.index());
    CHECK(relative_error(wall + set.left_out_area, wall_area(pan, depth(pan))) < 1e-4);
    CHECK(std::abs(covered_area(set, PieceKind::kFloor, order) - floor_area(pan)) < 1e-12);
    CHECK((set.left_out_area > 0.0) <= !set.left_out.empty());
  }
}

TEST_CASE("random pans: the same, for tins of several cavities") {
  Dice dice(99);
  for (int i = 0; i < 40; ++i) {
    const double size = dice.between(0.05, 0.4), wide = dice.between(0.5, 1.0) * size;
    const double deep = dice.between(0.02, 0.12), run = dice.up_to(1) * dice.between(0.0, 0.3) * wide;
    PanShape shape;
    if (i % 3 == 0) shape.outline = Round{size};
    if (i % 3 == 1) shape.outline = Rectangle{size, wide, dice.between(0.0, 0.4) * wide};
    if (i % 3 == 2) shape.outline = RegularPolygon{4 + dice.up_to(4), wide};
    shape.wall = StraightWall{deep, run, 0.0};
    shape.count = 1 + dice.up_to(11);
    const auto pan = make_pan(shape);
    REQUIRE(static_cast<bool>(pan));
    PaperOrder order = order_for(*pan);
    order.pans = 1 + dice.up_to(2);
    const PaperSet set = paper_set(order);
    CHECK(relative_error(covered_area(set, PieceKind::kWall, order), wall_area(*pan, deep)) < 1e-9);
    CHECK(set.pieces.front().copies == order.pans * shape.count);
  }
}

TEST_CASE("every pan of the catalogue, and pans that close at the floor or are very large, have their paper") {
  std::vector<Pan> all{shapes::pan(Round{0.1}, StraightWall{0.12, 0.05, 0.0}),
                       shapes::pan(Rectangle{0.2, 0.1, 0.0}, StraightWall{0.05, 0.05, 0.0}),
                       shapes::pan(Rectangle{0.1, 0.1, 0.05}, StraightWall{0.05, 0.05, 0.0}),
                       shapes::pan(RegularPolygon{3, 0.1}, StraightWall{0.05, 0.05, 0.0}),
                       shapes::pan(Oval{0.2, 0.1}, StraightWall{0.05, 0.05, 0.0}),
                       shapes::pan(Fluted{0.1, 9, 0.02}, StraightWall{0.05, 0.03, 0.0}),
                       shapes::pan(Round{0.1}, StraightWall{0.02, 0.0, 0.02}),
                       shapes::pan(Rectangle{0.002, 0.001, 0.0}, StraightWall{0.001, 0.0002, 0.0}),
                       shapes::pan(Round{1.2}, StraightWall{0.3, 0.2, 0.0})};
  for (const CataloguePan& entry : catalogue_pans()) {
    FieldReader reader(entry.fields);
    const auto pan = read_pan(reader, "");
    REQUIRE(pan.has_value());
    all.push_back(*pan);
  }
  for (const Pan& pan : all) {
    CAPTURE(pan.outline.length);
    CAPTURE(pan.outline.shape.index());
    const PaperOrder order = order_for(pan);
    const PaperSet set = paper_set(order);
    const double wall = covered_area(set, PieceKind::kWall, order) + covered_area(set, PieceKind::kCore, order);
    CHECK(relative_error(wall + set.left_out_area, wall_area(pan, depth(pan))) < 2e-4);
    const auto sheets = drawn(order);
    CHECK(!sheets.empty());
    for (const PaperSheet& sheet : sheets) {
      CHECK(sheet.svg.find("nan") == std::string::npos);
      CHECK(sheet.svg.find("inf") == std::string::npos);
      CHECK(sheet.svg.find('?') == std::string::npos);  // as numbers that cannot be printed are
    }
  }
}

TEST_CASE("a pan of deck-oven size would take hundreds of sheets and is refused") {
  const auto sheets = paper_sheets(order_for(shapes::pan(Rectangle{5.0, 5.0, 0.0}, StraightWall{5.0, 0.0, 0.0})));
  REQUIRE(!sheets);
  CHECK(sheets.problem().code == ProblemCode::kTooMuch);
}

TEST_CASE("an oval bowl and a half-round ring say plainly what has no piece") {
  const PaperSet oval = paper_set(order_for(shapes::pan(Oval{0.30, 0.20}, BowlWall{0.06})));
  REQUIRE(oval.left_out.size() == 1);
  CHECK(oval.left_out.front().find("no flat piece fits it") != std::string::npos);
  const auto sheets = drawn(order_for(shapes::pan(Oval{0.30, 0.20}, BowlWall{0.06})));
  CHECK(sheets.front().svg.find("no flat piece fits it") != std::string::npos);
  const PaperSet ring = paper_set(order_for(shapes::ring(0.24, 0.08, BowlWall{0.04})));
  CHECK(ring.left_out.size() == 1);
  CHECK(std::none_of(ring.pieces.begin(), ring.pieces.end(),
                     [](const PaperPiece& piece) { return piece.kind == PieceKind::kDough; }));
}

TEST_CASE("the stick's marks stand as high above its lower end as they are in the pan") {
  PaperOrder order = order_for(shapes::pan(Round{0.23}, StraightWall{0.05, 0.01, 0.0}));
  order.lining = Lining{0.004, 0.004, 0.048};
  order.pour_height = 0.0365;
  const PaperPiece stick = depth_stick(order);
  const double foot = box_of(stick).high.y;
  std::vector<double> heights;
  for (const Loop& mark : stick.marks) heights.push_back(foot - mark.front().y);
  REQUIRE(heights.size() == 3);
  const double wanted[] = {36.5, 48.0, 50.0};
  for (std::size_t i = 0; i < 3; ++i) CHECK(std::abs(heights[i] - wanted[i]) < 1e-9);
  // What is written beside them never overlaps.
  std::vector<double> rows;
  for (const PaperText& text : stick.texts) {
    if (text.letters == 2.6) rows.push_back(text.at.y);
  }
  REQUIRE(rows.size() == 3);
  for (std::size_t i = 0; i + 1 < rows.size(); ++i) CHECK(rows[i] - rows[i + 1] > 5.0);
  // A tick for every millimetre, and for every eighth of an inch.
  int millimetres = 0, eighths = 0;
  for (const Loop& tick : stick.ticks) {
    const double height = foot - tick.front().y;
    if (tick.front().x == 0.0) millimetres += std::abs(height - std::round(height)) < 1e-9;
    if (tick.back().x == 56.0) eighths += std::abs(height / 3.175 - std::round(height / 3.175)) < 1e-9;
  }
  CHECK(millimetres == 56);
  CHECK(eighths == 17);
}

TEST_CASE("a pan's name is text wherever it stands, however long") {
  PaperOrder order = order_for(shapes::pan(Round{0.23}, StraightWall{0.03, 0.025, 0.0}));
  order.pan_name = "</text></svg><script>alert(1)</script>\" onload='x' & \xE2\x80\xAE\xFF";
  for (int i = 0; i < 6; ++i) order.pan_name += " " + order.pan_name;
  const std::string html = page_for(order);
  const markup::Page page = markup::scan(html.substr(0, html.size() - 1));
  CHECK(page.fault == "");
  for (const markup::Element& each : page.elements) {
    CHECK(each.name != "script");
    CHECK(each.attributes.count("onload") == 0);
  }
}

TEST_CASE("the page for print has a sheet of paper for each sheet, of the paper's size") {
  for (const PaperSize size : {PaperSize::kA4, PaperSize::kLetter}) {
    const PaperOrder order = order_for(shapes::pan(Round{0.23}, StraightWall{0.03, 0.025, 0.0}), size);
    const std::string html = page_for(order);
    CHECK(html.find(size == PaperSize::kA4 ? "@page{size:210mm 297mm" : "@page{size:8.5in 11in") != std::string::npos);
    CHECK(elements(html.substr(0, html.size() - 1), "sheet").size() == drawn(order).size());
  }
}

TEST_CASE("every part of a piece carries its name, the pan's and what it is for") {
  PaperOrder order = order_for(shapes::pan(Round{0.26}, StraightWall{0.065, 0.0, 0.0}));
  order.pan_name = "Blue tin";
  std::size_t names = 0, told = 0;
  const PaperLayout layout = laid_out(paper_set(order).pieces, order.size);
  for (const PaperSheet& sheet : drawn(order)) {
    for (std::size_t at = sheet.svg.find(">Blue tin<"); at != std::string::npos;
         at = sheet.svg.find(">Blue tin<", at + 1)) {
      ++names;
    }
    for (std::size_t at = sheet.svg.find("Lay it on the"); at != std::string::npos;
         at = sheet.svg.find("Lay it on the", at + 1)) {
      ++told;
    }
  }
  CHECK(names == layout.parts.size() + layout.sheets);  // and at the foot of each sheet
  const auto floors = std::count_if(layout.parts.begin(), layout.parts.end(), [&](const PaperPart& part) {
    return layout.pieces[part.piece].kind == PieceKind::kFloor;
  });
  CHECK(told == static_cast<std::size_t>(floors));
}

TEST_CASE("a plan's pan and my pan on the bench have their dough and filling on the stick") {
  const auto document = read_json(demo_jobs().front().text);
  REQUIRE(static_cast<bool>(document));
  const JobAnswer answer = answer_job(*document, UnitChoice::kMetric);
  REQUIRE(answer.plan.has_value());
  const PanPlan& pan = answer.plan->pans.front();
  const PaperOrder order = paper_order(*answer.job, pan, PaperSize::kLetter, UnitChoice::kUs);
  CHECK(order.pan_name == answer.job->cupboard[pan.own].name);
  CHECK(order.pour_height == pan.fill_height);
  CHECK(page_for(order).find("Pour up to here") != std::string::npos);

  CHECK(!paper_order(BenchAnswer{}, PaperSize::kA4, UnitChoice::kMetric).has_value());
  const BenchAnswer bench = answer_bench(worked_examples().front().bench);
  const auto mine = paper_order(bench, PaperSize::kA4, UnitChoice::kMetric);
  REQUIRE(mine.has_value());
  CHECK(mine->pour_height.has_value() == bench.fill.has_value());
  CHECK(page_for(*mine).find("Depth stick") != std::string::npos);
}

}  // namespace tinwright
