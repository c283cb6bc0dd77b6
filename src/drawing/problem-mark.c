/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/problem-mark.h"

SqScene *
sq_problem_mark_scene (SqSeverity severity, double em_mm)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  double radius = SQ_PROBLEM_MARK_EM * em_mm;
  sq_scene_begin_fill (builder, SQ_FILL_HANDLE);
  sq_scene_add_circle (builder, sq_point (0, 0), radius);
  sq_scene_begin_stroke (builder, severity == SQ_NOTE ? SQ_PEN_HANDLE : SQ_PEN_ACCENT);
  sq_scene_add_circle (builder, sq_point (0, 0), radius);
  sq_scene_add_text (builder, &(SqText){ .em_mm = 0.85 * em_mm,
                                         .width_mm = 2 * radius,
                                         .tone = severity == SQ_NOTE ? SQ_TONE_DIM : SQ_TONE_ACCENT,
                                         .bold = TRUE,
                                         .text = severity == SQ_NOTE ? "i" : "!" });
  return sq_scene_builder_end (builder);
}
