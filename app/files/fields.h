// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What a question was asked with: texts by dotted path ("pan.outline.diameter" -> "24 cm"), whether they come from a
// JSON file or from the fields of the page. Every reader of pans, doughs and fillings reads from here, so file and page
// give the same answers and the same faults.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "app/files/json_tree.h"
#include "app/quantity/units.h"
#include "geometry/problem.h"

namespace tinwright {

struct Field {
  std::string text;
  JsonNode::Kind kind = JsonNode::Kind::kString;
  int line = 0;  // in the file; 0 on the page
};

/// Leaves by path; objects and arrays stand there too, with empty text, so that their line is known. Items of an array
/// are numbered from 0 ("pan.outline.points.3.0"). A member that is null counts as left out.
using Fields = std::map<std::string, Field>;

Fields fields_of(const JsonNode& root);

/// One thing wrong with the input.
struct Fault {
  ProblemCode code = ProblemCode::kMissing;
  std::string place;    // dotted path; empty for the whole input
  std::string message;  // what is wrong and what would be right
  int line = 0;         // of the field, or of the nearest thing around it
};

/// Reads fields by path, collecting what is wrong instead of stopping at the first fault.
class FieldReader {
 public:
  explicit FieldReader(const Fields& fields) : fields_(fields) {}

  /// Whether anything stands at `path`.
  bool has(const std::string& path) const { return fields_.count(path) > 0; }

  /// The SI value of a quantity; nothing when absent or, with a fault noted, when it cannot be read.
  std::optional<double> quantity(const std::string& path, Dimension dimension);
  /// The same for one that has to be there: its absence is a fault. `what` names it for the cook.
  /// `example` shows a size of the right order.
  std::optional<double> required(const std::string& path, Dimension dimension, const std::string& what,
                                 const std::string& example = "");
  std::optional<int> whole_number(const std::string& path);
  std::optional<bool> flag(const std::string& path);
  /// The place of the word at `path` among `choices`; a word that is none of them is a fault that lists them.
  std::optional<std::size_t> choice(const std::string& path, const std::vector<std::string_view>& choices);
  /// A text that is only kept, like a name.
  std::optional<std::string> text(const std::string& path);
  /// Everything whose path starts with `prefix` ("cupboard.2.pan."), as fields without it.
  Fields below(const std::string& prefix) const;
  /// How many items the array at `path` has; nothing when it is no array.
  std::optional<std::size_t> length(const std::string& path);

  /// Notes a fault at `path`.
  void fault(ProblemCode code, const std::string& path, const std::string& message);
  /// Notes a Problem of geometry, whose place is relative to `prefix` ("pan.").
  void fault(const Problem& problem, const std::string& prefix);
  /// Takes everything whose path starts with `prefix` as seen: it hangs on something that was wrong already.
  void skip(const std::string& prefix);
  /// Notes every field that nobody asked for: a slip of the pen must not be passed over in silence.
  void refuse_unread();

  const std::vector<Fault>& faults() const { return faults_; }

 private:
  const Field* find(const std::string& path);
  int line_of(std::string path) const;

  const Fields& fields_;
  std::set<std::string> read_;
  std::vector<Fault> faults_;
};

}  // namespace tinwright
