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

void draw_first(Page& page) {
  if (button("desk/read", "Read a recipe")) wish(page, WishKind::kPasteRecipe);
  if (button("desk/open", "Open a job file")) wish(page, WishKind::kOpenFile);
  if (button("desk/share", "Share by link")) {
    wish(page, WishKind::kShareLink, file_name(page.workspace.document), "", kept_text(page));
  }
  if (button("desk/print", "Print the bench card", ButtonLook::kPrimary, page.job.plan.has_value())) {
    send_for_file(page, ErrandKind::kPrintCard);
  }
}

}  // namespace

void draw_desk(Page& page) {
  begin_region("desk", "This job", RegionLook::kPlain);
  begin_flow();
  draw_steps(page);
  if (page.shows_job) draw_first(page);
  end_flow();
  if (page.message_edition != page.workspace.edition) page.message.clear();
  if (!page.message.empty()) {
    note("desk/message", page.is_refusal ? NoteKind::kError : NoteKind::kPlain, page.message);
  }
  end_region();
}

void draw_files(Page& page) {
  const bool has_plan = page.job.plan.has_value();
  const std::string name = file_name(page.workspace.document);
  begin_region("files", "Take it away");
  heading("files/title", "Take it away", 2);
  remark("files/about", "This device keeps the job by itself. A file is for another device, or for safety.");
  begin_flow();
  if (button("desk/save", "Save as a file")) {
    wish(page, WishKind::kSaveFile, name + ".json", "application/json", job_file(page.workspace));
  }
  if (button("desk/card", "Save the card", ButtonLook::kPlain, has_plan)) {
    send_for_file(page, ErrandKind::kSaveCard);
  }
  if (button("desk/csv", "Save the amounts (CSV)", ButtonLook::kPlain, has_plan)) {
    send_for_file(page, ErrandKind::kCsv);
  }
  if (button("desk/md", "Save the amounts (Markdown)", ButtonLook::kPlain, has_plan)) {
    send_for_file(page, ErrandKind::kMarkdown);
  }
  if (button("desk/ics", "Save the clock (calendar)", ButtonLook::kPlain, has_plan && page.job.clock.has_value())) {
    send_for_file(page, ErrandKind::kCalendar);
  }
  if (button("desk/new", "Begin an empty job", ButtonLook::kQuiet)) take_in(page, Source::kJobFile, kEmptyJob);
  end_flow();
  end_region();
}

}  // namespace tinwright::view
