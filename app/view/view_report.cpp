// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Reports: the first figure large, the others beneath it, then remarks and cautions.
#include <map>
#include <string>
#include <string_view>

#include "app/view/views.h"

namespace tinwright::view {

std::string kept_together(const std::string& text) {
  constexpr const char* kNoBreak = "\xc2\xa0";  // a space that does not break
  constexpr std::string_view kDegree = "°";
  std::string kept;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto before = i > 0 ? static_cast<unsigned char>(text[i - 1]) : 0U;
    const bool ends_number = (before >= '0' && before <= '9') || before >= 0x80;  // a digit, or a fraction's last byte
    const bool starts_word = i + 1 < text.size() && ((text[i + 1] >= 'a' && text[i + 1] <= 'z') || text[i + 1] == '%');
    const bool starts_unit = starts_word || text.compare(i + 1, kDegree.size(), kDegree) == 0;
    const bool starts_fraction = i + 1 < text.size() && text[i + 1] >= '0' && text[i + 1] <= '9';
    if (text[i] == ' ' && ends_number && (starts_unit || starts_fraction)) {
      kept += kNoBreak;
    } else {
      kept += text[i];
    }
  }
  return kept;
}

void show_report(Key key, const Report& report, FirstFigure first) {
  bool is_first = first == FirstFigure::kLarge;
  int notes = 0;
  std::map<std::string, int> seen;  // labels may come again: "Or", and another set of pans
  for (const ReportLine& line : report) {
    const std::string scope(key);
    switch (line.kind) {
      case ReportLine::Kind::kFigure: {
        const int before = seen[line.label]++;
        const std::string own = scope + "/" + line.label + (before == 0 ? "" : "/" + std::to_string(before));
        (is_first ? answer : fact)(own, line.label, kept_together(line.value), kept_together(line.detail));
        is_first = false;
        break;
      }
      case ReportLine::Kind::kRemark:
        note(scope + "/note" + std::to_string(notes++), NoteKind::kPlain, kept_together(line.value));
        break;
      case ReportLine::Kind::kCaution:
        note(scope + "/note" + std::to_string(notes++), NoteKind::kCaution, kept_together(line.value));
        break;
    }
  }
}

}  // namespace tinwright::view
