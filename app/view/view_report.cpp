// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Reports: the first figure large, the others beneath it, then remarks and cautions.
#include "app/view/views.h"

namespace tinwright::view {

void show_report(Key key, const Report& report) {
  bool is_first = true;
  int notes = 0;
  for (const ReportLine& line : report) {
    const std::string scope(key);
    switch (line.kind) {
      case ReportLine::Kind::kFigure:
        (is_first ? answer : fact)(scope + "/" + line.label, line.label, line.value, line.detail);
        is_first = false;
        break;
      case ReportLine::Kind::kRemark: note(scope + "/note" + std::to_string(notes++), NoteKind::kPlain, line.value); break;
      case ReportLine::Kind::kCaution: note(scope + "/note" + std::to_string(notes++), NoteKind::kCaution, line.value); break;
    }
  }
}

}  // namespace tinwright::view
