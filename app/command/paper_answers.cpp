// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See paper_answers.h.
#include "app/command/paper_answers.h"

#include "app/plan/paper_pieces.h"
#include "app/plan/words.h"

namespace tinwright {

Json json_of(const PaperOrder& order, std::size_t sheets) {
  const PaperSet set = paper_set(order);
  const auto cm2 = [](double square_metres) { return square_metres * 1e4; };
  const double core = covered_area(set, PieceKind::kCore, order);
  Json pieces = Json::array();
  for (const PaperPiece& piece : set.pieces) {
    const PaperBox box = box_of(piece);
    pieces.push_back({{"name", piece.name},
                      {"cut", piece.copies},
                      {"area_cm2", cm2(piece.area)},
                      {"length_mm", box.high.x - box.low.x},
                      {"width_mm", box.high.y - box.low.y}});
  }
  return {{"pan", paper_name(order)},
          {"paper", paper_size_names()[static_cast<std::size_t>(order.size)]},
          {"sheets", sheets},
          {"floor_piece_area_cm2", cm2(covered_area(set, PieceKind::kFloor, order))},
          {"wall_piece_area_cm2", cm2(covered_area(set, PieceKind::kWall, order) + core)},
          {"core_piece_area_cm2", cm2(core)},
          {"left_out_area_cm2", cm2(set.left_out_area)},
          {"dough_piece_area_cm2", cm2(covered_area(set, PieceKind::kDough, order))},
          {"dough_reach_mm", 1e3 * set.dough_reach},
          {"pieces", pieces},
          {"left_out", set.left_out}};
}

Report describe_paper(const PaperOrder& order, std::size_t sheets) {
  const PaperSet set = paper_set(order);
  const std::string paper(paper_size_names()[static_cast<std::size_t>(order.size)]);
  Report report{figure("Sheets of " + paper, std::to_string(sheets),
                       "print at 100 % and measure the 10 cm bar on the first one")};
  for (const std::string& sentence : set.left_out) report.push_back(remark(sentence));
  return report;
}

std::vector<std::pair<std::string, std::string>> paper_files(const PaperOrder& order,
                                                             const std::vector<PaperSheet>& sheets,
                                                             const std::string& target) {
  constexpr std::string_view kSvg = ".svg";
  if (!target.ends_with(kSvg)) return {{target, paper_page(order, sheets)}};
  if (sheets.size() == 1) return {{target, sheets.front().svg}};
  const std::string stem = target.substr(0, target.size() - kSvg.size());
  std::vector<std::pair<std::string, std::string>> files;
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    files.emplace_back(stem + "-" + std::to_string(i + 1) + std::string(kSvg), sheets[i].svg);
  }
  return files;
}

}  // namespace tinwright
