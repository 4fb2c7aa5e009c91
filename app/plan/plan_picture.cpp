// SPDX-FileCopyrightText: The Tinwright authors
// SPDX-License-Identifier: MIT
//
// See plan_picture.h.
#include "app/plan/plan_picture.h"

namespace tinwright {

BenchAnswer picture_of(const Job& job, const PanPlan& pan) {
  BenchAnswer answer;
  const Pan& own = job.cupboard[pan.own].pan;
  answer.my_pan = own;
  if (pan.shell.is_there()) {
    const Lining lining = lining_of(pan.shell, own);
    PressJob press{own, 0.0, {}};
    press.question.cover = lining.wall > 0.0 ? Cover::kFloorAndWall : Cover::kFloor;
    answer.press_job = press;
    PressAnswer pressed;
    pressed.floor_thickness = lining.floor;
    pressed.wall_thickness = lining.wall;
    pressed.wall_height = lining.wall > 0.0 ? lining.height : 0.0;
    pressed.coverage = pan.coverage;
    pressed.reaches_edges = pan.coverage >= 1.0;
    answer.press = pressed;
  }
  if (pan.filling > 0.0) {
    FillJob fill;
    fill.pan = own;
    fill.cavity = pan.cavity;
    if (pan.shell.is_there()) fill.lining = lining_of(pan.shell, own);
    fill.question.rise = rise_of_filling(job);
    answer.fill_job = fill;
    const auto filled =
        fill_cavity(pan.cavity, {.amount = pan.filling, .level = std::nullopt, .rise = fill.question.rise});
    if (filled) answer.fill = *filled;
  }
  const auto pointer = [](const auto& value) { return value ? &*value : nullptr; };
  answer.picture = draw_picture(own, pointer(answer.press_job), pointer(answer.press),
                                answer.fill ? pointer(answer.fill_job) : nullptr, pointer(answer.fill));
  return answer;
}

}  // namespace tinwright
