// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What is done with the job as a whole: taking back, files, links, paper.
#include "app/plan/desk.h"
#include "app/view/page_parts.h"

namespace tinwright::view {
namespace {

void wish(Page& page, WishKind kind, const std::string& name = "", const std::string& type = "",
          const std::string& text = "") {
  page.wishes.push_back({kind, name, type, text});
}

void draw_steps(Page& page) {
  if (button("desk/undo", "Take back", ButtonLook::kPlain, !page.workspace.past.empty()) && undo(page.workspace)) {
    follow_document(page);
  }
  if (button("desk/redo", "Do again", ButtonLook::kPlain, !page.workspace.future.empty()) && redo(page.workspace)) {
    follow_document(page);
  }
}

void draw_files(Page& page) {
  const std::string name = file_name(page.workspace.document);
  if (button("desk/new", "Empty job")) take_in(page, Source::kJobFile, kEmptyJob);
  if (button("desk/read", "Read a recipe")) wish(page, WishKind::kPasteRecipe);
  if (button("desk/open", "Open a job file")) wish(page, WishKind::kOpenFile);
  if (button("desk/save", "Save as a file")) {
    wish(page, WishKind::kSaveFile, name + ".json", "application/json", job_file(page.workspace));
  }
  if (button("desk/share", "Share by link")) wish(page, WishKind::kShareLink, name, "", kept_text(page));
}

void draw_paper(Page& page) {
  const bool has_plan = page.job.plan.has_value();
  const std::string name = file_name(page.workspace.document);
  if (button("desk/print", "Print the bench card", ButtonLook::kPrimary, has_plan)) {
    wish(page, WishKind::kPrint, name, "text/html", bench_card(page.job));
  }
  if (button("desk/card", "Save the card", ButtonLook::kPlain, has_plan)) {
    wish(page, WishKind::kSaveFile, name + ".html", "text/html", bench_card(page.job));
  }
  if (button("desk/csv", "Save the amounts (CSV)", ButtonLook::kPlain, has_plan)) {
    wish(page, WishKind::kSaveFile, name + ".csv", "text/csv", amounts_csv(page.job));
  }
  if (button("desk/md", "Save the amounts (Markdown)", ButtonLook::kPlain, has_plan)) {
    wish(page, WishKind::kSaveFile, name + ".md", "text/markdown", amounts_markdown(page.job));
  }
}

}  // namespace

void draw_desk(Page& page) {
  begin_region("desk", "This job", RegionLook::kPlain);
  begin_flow();
  draw_steps(page);
  if (page.shows_job) {
    draw_files(page);
    draw_paper(page);
  }
  end_flow();
  if (!page.message.empty()) {
    note("desk/message", page.is_refusal ? NoteKind::kError : NoteKind::kPlain, page.message);
  }
  end_region();
}

}  // namespace tinwright::view
