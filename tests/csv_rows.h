// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Reads the reference tables: comma-separated rows after a line of column names; '#' starts a comment line.
#pragma once

#include <cstdlib>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace tinwright::reference {

struct Row {
  std::map<std::string, std::string> cells;

  const std::string& text(const std::string& column) const { return cells.at(column); }
  double number(const std::string& column) const { return std::strtod(cells.at(column).c_str(), nullptr); }
};

inline std::vector<std::string> split(const std::string& line, char by) {
  std::vector<std::string> cells{""};
  for (const char c : line) {
    if (c == by) {
      cells.emplace_back();
    } else {
      cells.back() += c;
    }
  }
  return cells;
}

inline std::vector<Row> rows(std::string_view csv) {
  std::vector<Row> rows;
  std::vector<std::string> columns;
  for (const std::string& line : split(std::string(csv), '\n')) {
    if (line.empty() || line[0] == '#') continue;
    const std::vector<std::string> cells = split(line, ',');
    if (columns.empty()) {
      columns = cells;
      continue;
    }
    Row row;
    for (std::size_t i = 0; i < columns.size() && i < cells.size(); ++i) row.cells[columns[i]] = cells[i];
    rows.push_back(row);
  }
  return rows;
}

}  // namespace tinwright::reference
