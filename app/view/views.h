// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The parts of the page. Each draws its piece of the bench and says whether the cook changed anything; none computes.
#pragma once

#include <string>

#include "app/plan/bench.h"
#include "app/view/controls.h"

namespace tinwright::view {

/// The form of one pan; `prefix` ("my_pan.") is both the scope of its keys and where its problems are looked up.
bool edit_pan(const std::string& prefix, PanEntry& entry, const BenchAnswer& answer);
bool edit_dough(DoughEntry& dough, const BenchAnswer& answer);
bool edit_filling(FillingEntry& filling, const BenchAnswer& answer);

/// A text of `texts` as a field, with the problem noted for it.
bool edit_text(const std::string& prefix, const std::string& path, Text label, Texts& texts, const BenchAnswer& answer,
               FieldOptions options);

/// Figures as answers, remarks and cautions as notes.
void show_report(Key key, const Report& report);

/// My pan cut through, to scale, with dough and filling; and its edge enlarged.
void show_section(const BenchAnswer& answer, UnitChoice units);
/// My pan from above, with how far a slab reaches.
void show_from_above(const BenchAnswer& answer, UnitChoice units);

}  // namespace tinwright::view
