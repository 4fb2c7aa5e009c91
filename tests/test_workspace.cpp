// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Documents edited by path, and taking edits back.
#include <doctest/doctest.h>

#include "app/plan/bench_document.h"
#include "app/plan/demos.h"
#include "app/plan/desk.h"
#include "app/plan/examples.h"
#include "app/plan/workspace.h"

namespace tinwright {
namespace {

Workspace opened(std::string_view text) {
  Workspace workspace;
  REQUIRE(open_document(workspace, text));
  return workspace;
}

TEST_CASE("a tree that is written and read again is the same") {
  for (const Demo& demo : demo_jobs()) {
    const auto tree = read_json(demo.text);
    REQUIRE(tree);
    const std::string text = write_json(*tree);
    const auto again = read_json(text);
    REQUIRE(again);
    CHECK(write_json(*again) == text);
    CHECK(write_compact_json(*again) == write_compact_json(*tree));
    CHECK(write_json(document_from(fields_of(*tree))).size() == text.size());  // members may stand in another order
  }
}

TEST_CASE("texts that JSON cannot hold as they are come back all the same") {
  JsonNode root = make_object();
  const std::string text = "a \"quoted\"\\ line\nand\ttab, \x01, é, 名, \xf0\x9f\xa5\xa7";
  put_text(root, "name", text);
  const auto again = read_json(write_json(root));
  REQUIRE(again);
  CHECK(text_at(*again, "name") == text);
  put_text(root, "name", "bad \xff\xc0\xaf\xed\xa0\x80 end");
  const auto mended = read_json(write_json(root));
  REQUIRE(mended);
  CHECK(text_at(*mended, "name").find("end") != std::string::npos);
}

TEST_CASE("paths make objects on the way, and lists grow at their end only") {
  JsonNode root = make_object();
  CHECK(put_text(root, "recipe.name", "Tart"));
  CHECK(text_at(root, "recipe.name") == "Tart");
  CHECK(!put_text(root, "recipe.name.more", "x"));
  CHECK(put(root, "list", make_array()));
  CHECK(put_text(root, "list.0", "a"));
  CHECK(put_text(root, "list.1", "b"));
  CHECK(!put_text(root, "list.5", "c"));
  CHECK(count_at(root, "list") == 2);
  take_away(root, "list.0");
  CHECK(text_at(root, "list.0") == "b");
  CHECK(put_text(root, "recipe.name", ""));
  CHECK(node_at(root, "recipe.name") == nullptr);
}

TEST_CASE("every edit can be taken back and done again; typing in one field is one step") {
  Workspace workspace = opened(R"({"version": 1, "recipe": {"name": "A"}})");
  for (const char* text : {"AB", "ABC", "ABCD"}) {
    put_text(workspace.document, "recipe.name", text);
    CHECK(note_edit(workspace, "recipe.name"));
  }
  put_text(workspace.document, "recipe.from", "B");
  CHECK(note_edit(workspace, "recipe.from"));
  CHECK(!note_edit(workspace, "recipe.from"));  // nothing changed
  REQUIRE(undo(workspace));
  CHECK(text_at(workspace.document, "recipe.from").empty());
  REQUIRE(undo(workspace));
  CHECK(text_at(workspace.document, "recipe.name") == "A");
  CHECK(!undo(workspace));
  REQUIRE(redo(workspace));
  CHECK(text_at(workspace.document, "recipe.name") == "ABCD");
  put_text(workspace.document, "recipe.name", "Z");
  note_edit(workspace, "recipe.name");
  CHECK(!redo(workspace));
}

TEST_CASE("a damaged or newer file is refused with its line, and the old work stays") {
  Workspace workspace = opened(demo_jobs().front().text);
  const std::string before = workspace.text;
  const auto refused = [&](std::string_view text, const std::string& place) {
    const auto opened_now = open_document(workspace, text);
    REQUIRE(!opened_now);
    CHECK(opened_now.problem().place == place);
    CHECK(!opened_now.problem().message.empty());
    CHECK(workspace.text == before);
    CHECK(write_compact_json(workspace.document) == before);
  };
  refused("", "line 1");
  refused("{\"version\": 1,\n\"recipe\": {", "line 2");
  refused("[]", "line 1");
  refused("{}", "line 1");
  refused("{\n\"version\": 2}", "line 2");
  refused("{\n\"version\": \"1\"}", "line 2");
  refused("{\n\"version\": 0}", "line 2");
  refused("{\"version\": 1,\n\n\"recipe\": []}", "line 3");
  refused("{\"version\": 1,\n\"recipe\": {\"parts\": {}}}", "line 2");
  refused("{\"version\": 1,\n\"cupboard\": 3}", "line 2");
}

TEST_CASE("unknown fields survive opening, editing and saving") {
  Workspace workspace =
      opened(R"({"version": 1, "recipe": {"name": "A", "mood": ["calm", 3, null, true]}, "x.y": 1.50})");
  put_text(workspace.document, "recipe.name", "B");
  note_edit(workspace, "recipe.name");
  const std::string file = job_file(workspace);
  CHECK(file.find("\"mood\"") != std::string::npos);
  CHECK(file.find("\"calm\"") != std::string::npos);
  CHECK(file.find("null") != std::string::npos);
  CHECK(file.find("\"x.y\": 1.50") != std::string::npos);
}

TEST_CASE("the steps kept are bounded") {
  Workspace workspace = opened(R"({"version": 1, "recipe": {}})");
  for (int i = 0; i < 500; ++i) {
    put_text(workspace.document, "recipe.name", std::to_string(i));
    note_edit(workspace, "");
  }
  CHECK(workspace.past.size() == kMostSteps);
  for (int i = 0; i < 20; ++i) {
    put_text(workspace.document, "recipe.name", std::string(1U << 20U, static_cast<char>('a' + i)));
    note_edit(workspace, "");
  }
  CHECK(workspace.past.size() <= 9);
}

TEST_CASE("a bench is the same after its document") {
  for (const Example& example : worked_examples()) {
    const JsonNode document = document_of(example.bench);
    const Bench again = bench_of(document);
    CHECK(write_json(document_of(again)) == write_json(document));
    const BenchAnswer wanted = answer_bench(example.bench), found = answer_bench(again);
    CHECK(found.problems == wanted.problems);
    REQUIRE(found.swap.size() == wanted.swap.size());
    for (std::size_t i = 0; i < found.swap.size(); ++i) CHECK(found.swap[i].value == wanted.swap[i].value);
  }
  const Bench empty = bench_of(*read_json(R"({"units": 3, "dough": [], "oven": {"stages": "x"}, "my_pan": "y"})"));
  CHECK(empty.oven.stages.empty());
}

TEST_CASE("the empty job opens, and file names are plain") {
  Workspace workspace = opened(kEmptyJob);
  CHECK(file_name(workspace.document) == "job");
  put_text(workspace.document, "name", "  Käse & \"Kuchen\" / ../2026  ");
  CHECK(file_name(workspace.document) == "k-se-kuchen-2026");
}

}  // namespace
}  // namespace tinwright
