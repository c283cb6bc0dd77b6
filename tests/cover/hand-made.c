/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/hand-made.h"

#include "exchange/defaults-file.h"
#include "exchange/job-file.h"

SqJob *
job_of_text (const char *text)
{
  g_autofree char *json = g_strdelimit (g_strdup (text), "'", '"');
  SqDefaults defaults;
  GError *error = NULL;

  sq_defaults_builtin (&defaults);
  SqJob *job = sq_job_read (json, -1, &defaults, &error);
  g_assert_no_error (error);
  return job;
}

SqJob *
job_of (const char *cushion, const char *rest)
{
  g_autofree char *text = g_strdup_printf (
      "{'format':'squab job','version':1,%s'cushions':[{'id':1,%s}]}", rest != NULL ? rest : "",
      cushion);
  return job_of_text (text);
}

SqCover *
cover_in (const char *rest, const char *cushion)
{
  g_autoptr (SqJob) job = job_of (cushion, rest);
  return sq_cover_new (job, g_ptr_array_index (job->cushions, 0), FALSE, NULL);
}

SqCover *
cover_of (const char *cushion)
{
  return cover_in (NULL, cushion);
}

char *
rectangle (double width_mm, double depth_mm, const char *const keys[4])
{
  const SqPoint at[] = { { 0, 0 }, { width_mm, 0 }, { width_mm, depth_mm }, { 0, depth_mm } };
  GString *text = g_string_new ("'outline':[");

  for (guint i = 0; i < 4; i++)
    g_string_append_printf (text, "%s{'id':%u,'x':%.10g,'y':%.10g%s}", i > 0 ? "," : "", i + 1,
                            at[i].x, at[i].y, keys != NULL && keys[i] != NULL ? keys[i] : "");
  g_string_append (text, "]");
  return g_string_free (text, FALSE);
}

SqCover *
cover_of_rectangle (double width_mm, double depth_mm, const char *keys)
{
  g_autofree char *outline = rectangle (width_mm, depth_mm, NULL);
  g_autofree char *cushion = g_strconcat (outline, ",", keys, NULL);
  return cover_of (cushion);
}

const SqProblem *
find_problem (const SqCover *cover, SqProblemCode code)
{
  for (guint i = 0; i < cover->problems->len; i++)
    if (sq_cover_problem (cover, i)->code == code)
      return sq_cover_problem (cover, i);
  return NULL;
}

const SqPiece *
piece_of (const SqCover *cover, SqPieceRole role)
{
  for (guint i = 0; i < cover->pieces->len; i++)
    if (sq_cover_piece (cover, i)->role == role)
      return sq_cover_piece (cover, i);
  g_assert_not_reached ();
}

void
assert_node (const SqPath *path, double x, double y)
{
  double nearest = INFINITY;

  for (guint i = 0; i < sq_path_n_nodes (path); i++)
    nearest = fmin (nearest, sq_distance (sq_path_nodes (path)[i].at, sq_point (x, y)));
  g_assert_cmpfloat (nearest, <, 1e-6);
}

double
seams_mm (const SqCover *cover, SqSeamKind kind)
{
  double sum = 0;

  for (guint i = 0; i < cover->seams->len; i++)
    if (sq_cover_seam (cover, i)->kind == kind)
      sum += sq_cover_seam (cover, i)->length_a_mm;
  return sum;
}
