// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// The weigh check: everything goes into one bowl on the scale, so the scale knows what was forgotten. For each step
// there is a reading to expect; given the readings that were taken, this says whether all is there, and if not, which
// slip explains it best.
//
// Slips that are thought of: one step left out, added twice, or only half of it; two left out; one left out and one
// added twice; the bowl (counted when it was tared away, or the other way round). Each explanation is judged by
//
//     posterior ∝ prior · Gauss(readings − expected under it; covariance)
//
// The covariance has the scale's own error for each reading and, for every pair of readings, the uncertainty of all
// that was in the bowl at the earlier one (what is left out brings none, what is added twice brings it twice). All
// readings since the last right one count together, that one included: so a right reading clears the steps before it,
// and two readings off by the same clear the steps between them. A reading that is right by itself ends the question:
// what was wrong before has been put right.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "geometry/problem.h"

namespace tinwright {

/// How likely a slip is at one step, against none. Our own estimates, no source: only their order matters, and that two
/// slips are rarer than one.
inline constexpr double kPriorLeftOut = 0.02;
inline constexpr double kPriorTwice = 0.005;
inline constexpr double kPriorHalf = 0.005;
inline constexpr double kPriorBowl = 0.01;  // once, where the bowl's weight is known

/// An explanation that leaves a reading off by more than this many standard deviations explains nothing.
inline constexpr double kPoorFit = 3.0;

/// The best explanation has to be so many times likelier than the next, or it cannot be told.
inline constexpr double kClearRatio = 5.0;

/// Explanations returned at most.
inline constexpr std::size_t kMostExplanations = 8;

struct WeighStep {
  std::string label;         // "the ground almonds"
  double mass = 0.0;         // [kg] it adds, > 0
  double uncertainty = 0.0;  // [kg] one standard deviation; see the two functions below
};

struct ScaleReading {
  std::size_t after = 0;  // index of the last step that is in the bowl
  double mass = 0.0;      // [kg] as shown
};

struct WeighQuestion {
  std::vector<WeighStep> steps;
  std::optional<double> bowl;  // [kg] if known, > 0
  bool is_tared = true;        // the scale was set to zero with the bowl on it; false: readings include the bowl
  double resolution = 1e-3;    // [kg] one step of the display, > 0
  std::vector<ScaleReading> readings;  // in the order of `after`; the last one is asked about
};

enum class SlipKind { kLeftOut, kTwice, kHalf, kBowl };

struct Slip {
  SlipKind kind = SlipKind::kLeftOut;
  std::size_t step = 0;  // not for the bowl

  bool operator==(const Slip&) const = default;
};

struct Explanation {
  std::vector<Slip> slips;   // none: all is there
  double change = 0.0;       // [kg] of the last reading, were it so
  double probability = 0.0;  // [1] among all that is thought of
  double misfit = 0.0;       // [1] standard deviations by which it leaves the worst reading off
};

enum class WeighVerdict { kAllThere, kLikely, kCannotTell, kNothingExplains };

struct WeighAnswer {
  WeighVerdict verdict = WeighVerdict::kAllThere;
  double expected = 0.0;                  // [kg] of the last reading
  double difference = 0.0;                // [kg] reading less expected
  double uncertainty = 0.0;               // [kg] one standard deviation of that difference if all is there
  std::vector<Explanation> explanations;  // likeliest first, at most kMostExplanations. For kCannotTell, those that are
                                          // about equally likely, and nothing else
  std::vector<std::size_t> unseen;        // steps too light for this reading to show that they are missing
};

/// [kg] one standard deviation of a reading: the scale's error, taken as evenly spread within the limits of OIML R 76-1
/// table 6 for class III in service (twice ±0.5, 1 and 1.5 divisions up to 500, 2000 and more divisions; the same
/// limits are in the UK's SI 1995/1907, schedule 2, table 3), and the display's rounding (JCGM 100:2008, 4.3.7 and
/// F.2.2.1). That a kitchen scale is as good as a shop's is an assumption.
///  load        [kg] on the scale, bowl included, >= 0
///  resolution  [kg] of the display, > 0
double scale_uncertainty(double load, double resolution);

/// [kg] one standard deviation of an ingredient weighed by itself on that scale.
double weighed_uncertainty(double mass, double resolution);

/// [kg] of an ingredient measured by cup or spoon: 5 % of it for liquids, 10 % for flour and other powders.
/// Common practice, no source: dry cups of flour differ by a fifth between hands.
double measured_uncertainty(double mass, bool is_liquid);

/// The reading to expect after each step [kg], bowl included unless it is tared.
std::vector<double> expected_readings(const WeighQuestion& question);

/// Refused: a mass, uncertainty, resolution or bowl that cannot be (kOutOfRange, places "steps[N].mass",
/// "steps[N].uncertainty", "resolution", "bowl"), readings that are not tared with a bowl of unknown weight (kMissing,
/// "bowl"), no reading (kMissing, "readings"), one after no step of these, not in order, or not a number (kOutOfRange,
/// "readings[N]").
Result<WeighAnswer> weigh_check(const WeighQuestion& question);

/// What is wrong with a question, as weigh_check refuses it; an empty message if nothing is.
Problem weigh_fault(const WeighQuestion& question);

/// "62 g short: the ground almonds left out, most likely", or why that cannot be said; one sentence or two.
std::string weigh_words(const WeighQuestion& question, const WeighAnswer& answer);

}  // namespace tinwright
