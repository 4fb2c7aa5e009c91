// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Sentences and formats shared by the reports.
#pragma once

#include <string>

#include "app/plan/report.h"
#include "app/quantity/print.h"
#include "app/quantity/say.h"
#include "geometry/pan.h"

namespace tinwright {

/// Literals are looked up in the cook's language, see Said.
ReportLine figure(Said label, Said value, Said detail = std::string());
ReportLine remark(Said sentence);
ReportLine caution(Said sentence);

/// Whether a report has a line that says the same.
bool is_said(const Report& report, const ReportLine& line);

/// "2 × 20 cm springform"; one goes by its name alone.
std::string counted(int count, const std::string& name);

/// "380 cm² (59 sq in)", the chosen unit first.
std::string format_both_areas(double square_metres, UnitChoice choice);

/// seconds [s] of a bake: whole minutes from five on, halves below: "34 min".
std::string format_about(double seconds);

/// What a pan of this kind asks for in the oven: hot metal, glass and sudden cold, soft silicone, a ring's tray.
void add_pan_cautions(Report& report, const Pan& pan);

/// Doneness and cooling of an egg or dairy filling or batter.
void add_filling_caution(Report& report);

/// Raw dough and batter are not for tasting.
void add_raw_dough_caution(Report& report);

}  // namespace tinwright
