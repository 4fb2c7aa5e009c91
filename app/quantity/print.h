// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// Quantities as a cook reads them, with no more digits than they deserve. The decimal sign is that of the language
// (say.h), a point in English; a minus is "-", and what is printed reads back through parse_quantity (both-unit forms,
// factors, negatives and "under ..." aside). Kitchen measures and fractions of an inch or ounce are in
// kitchen_measure.h.
//
// Precondition of every function: the value is finite, and below 1e12 in size in the unit printed. A breach is the
// caller's fault: it is asserted, and where checks are off the text is kUnprintable, never "nan", "inf" or rubbish.
#pragma once

#include <string>
#include <string_view>

namespace tinwright {

/// Which household the cook has. Temperatures, lengths, volumes and weights follow it.
enum class UnitChoice { kMetric, kUs };

/// Printed for a value that breaks the precondition, in builds without checks.
inline constexpr std::string_view kUnprintable = "?";

/// value rounded to at most max_decimals (0 to 9) behind the point, halves away from zero; no trailing zeros, no "-0".
std::string format_number(double value, int max_decimals);

/// The same with a point whatever the language, for files and fields.
std::string plain_number(double value, int max_decimals);

/// metres [m] in millimetres: "6.4 mm" to a tenth below 10 mm, "25 mm" whole from there.
std::string format_mm(double metres);

/// metres [m] in centimetres: "23.5 cm" to the millimetre below 1 m, "120 cm" whole from there.
std::string format_cm(double metres);

/// metres [m]: metric in mm below 2 cm, else in cm; US in inches to the nearest sixteenth ("9½ in", "1 5/16 in").
/// US rounding is silent; is_whole_sixteenths says whether the text may stand without "about".
std::string format_length(double metres, UnitChoice choice);

/// Both, the chosen one first: "6.4 mm (¼ in)".
std::string format_both_lengths(double metres, UnitChoice choice);

/// cubic_metres [m³], 0 or more: metric "4.9 ml" below 10 ml, "640 ml", "1.25 l" from 1 l, "12.5 l" from 10 l;
/// US the nearest set of kitchen measures ("2⅔ cups", "2 cups + 1 tbsp", "1½ tsp").
std::string format_volume(double cubic_metres, UnitChoice choice);

/// Both, the chosen one first: "640 ml (2⅔ cups)".
std::string format_both_volumes(double cubic_metres, UnitChoice choice);

/// What is printed by format_volume less the true volume [m³], so that a caller can show what rounding did.
double volume_rounding_error(double cubic_metres, UnitChoice choice);

/// kilograms [kg], 0 or more: metric "7.5 g" below 10 g, "640 g", "1.25 kg" from 1 kg, "12.5 kg" from 10 kg;
/// US "3/8 oz" by eighths below 1 oz, by quarters below 1 lb, "1 lb 6½ oz" by halves from there.
std::string format_mass(double kilograms, UnitChoice choice);

/// kilograms [kg] as the scale shows it, always grams: "7.5 g" below 10 g, whole from there ("1254 g").
std::string format_grams(double kilograms);

/// Both, the chosen one first: "640 g (1 lb 6½ oz)".
std::string format_both_masses(double kilograms, UnitChoice choice);

/// density [kg/m³] as "1.20 g/ml".
std::string format_density(double density);

/// kelvin [K, 0 or more], both scales in whole degrees, the chosen one first: "180 °C (356 °F)".
std::string format_temperature(double kelvin, UnitChoice choice);

/// seconds [s], 0 or more: "40 s", "1 min 30 s" below 10 min, "45 min", "1 h 20 min", from 48 h "2 d 4 h".
std::string format_duration(double seconds);

/// share [1] in per cent: whole, but with one decimal below 1 % and between 99 % and 100 %, where it matters.
std::string format_percent(double share);

/// factor [1]: "× 0.87", two decimals below 10, one from there, three below 0.1.
std::string format_factor(double factor);

}  // namespace tinwright
