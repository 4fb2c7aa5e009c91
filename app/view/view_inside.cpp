// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// What happens inside the food, as it plays: which moment is shown, and the controls that move it.
#include <algorithm>

#include "app/plan/drawing_file.h"
#include "app/plan/drawing_words.h"
#include "app/view/views.h"

namespace tinwright::view {
namespace {

constexpr double kPlayTime = 8.0;                   // [s] from the first moment to the last
constexpr double kShortest = 0.08, kLongest = 0.4;  // [s] that one moment stands
constexpr double kCalmly = 1.0;                     // [s] the same where little movement is wanted
constexpr int kCalmMoments = 10;                    // and how many are shown then

/// The last frame that is not after the end of the oven.
int frame_at_end(const OvenAnswer& answer) {
  const auto& times = answer.frame_times;
  const auto after = std::upper_bound(times.begin(), times.end(), answer.oven_ends);
  return std::max(0, static_cast<int>(after - times.begin()) - 1);
}

/// Goes on to the next moment when it is time, and stops at the last one.
void play(OvenLook& look, int last) {
  Surface& s = surface();
  if (!look.is_playing) return;
  const bool calmly = s.viewport().less_motion;
  const double now = s.viewport().time;
  if (now >= look.next_at) {
    const int stride = calmly ? 1 + last / kCalmMoments : 1;
    look.moment = std::min(look.moment + stride, last);
    look.next_at = now + (calmly ? kCalmly : std::clamp(kPlayTime / std::max(last, 1), kShortest, kLongest));
    look.is_playing = look.moment < last;
  }
  if (look.is_playing) s.ask_frame_in(look.next_at - now);
}

void edit_moment(OvenLook& look, int shown, int last, const std::string& words) {
  begin_flow();
  if (button("inside/play", look.is_playing ? "Pause" : "Play", ButtonLook::kPrimary, last > 0)) {
    look.is_playing = !look.is_playing;
    const bool from_start = look.moment < 0 || look.moment == last;
    look.moment = look.is_playing && from_start ? 0 : shown;
    look.next_at = surface().viewport().time + kShortest;
  }
  if (button("inside/start", "Back to the start", ButtonLook::kPlain, shown > 0)) {
    look.moment = 0;
    look.is_playing = false;
  }
  end_flow();
  int moment = shown;
  if (slider("inside/moment", "Moment shown", moment, last + 1, words)) {
    look.moment = moment;
    look.is_playing = false;
  }
}

}  // namespace

void show_inside(const OvenAnswer& answer, bool is_ring, OvenLook& look, UnitChoice units, std::vector<Wish>* wishes) {
  const auto curve = [&](double moment) {
    show_curve(answer, look, moment, units);
    if (wishes == nullptr) return;
    const bool with_cooling = goes_on_cooling(answer) && look.shows_cooling;
    offer_drawing("curve/title", "temperatures", *wishes, [&] { return curve_file(answer, with_cooling, units); });
  };
  const int last = static_cast<int>(std::min(answer.frame_times.size(), answer.frames.size())) - 1;
  if (last < 0) {
    curve(-1.0);
    return;
  }
  play(look, last);
  const int shown = look.moment < 0 ? std::min(frame_at_end(answer), last) : std::min(look.moment, last);
  const double time = answer.frame_times[static_cast<std::size_t>(shown)];
  const std::string when = shown == 0                 ? "going in"
                           : time <= answer.oven_ends ? format_duration(time) + ", in the oven"
                                                      : format_duration(time) + ", out of the oven";
  curve(time);
  show_warmth(answer, is_ring, static_cast<std::size_t>(shown), units);
  edit_moment(look, shown, last, when);
}

}  // namespace tinwright::view
