/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/actions.h"

#include "job/safe-edit.h"

gboolean
happens (Maker *maker, double probability)
{
  return g_rand_double (maker->chance) < probability;
}

double
between (Maker *maker, double low, double high)
{
  return g_rand_double_range (maker->chance, low, high);
}

guint
one_of (Maker *maker, guint n)
{
  return (guint) g_rand_int_range (maker->chance, 0, (gint32) n);
}

const SqCushion *
any_cushion (Maker *maker)
{
  const SqJob *job = sq_document_get_job (maker->document);
  return g_ptr_array_index (job->cushions, one_of (maker, job->cushions->len));
}

guint
n_corners (const SqOutline *outline)
{
  guint all = 0, n;
  for (guint ring = 0; ring < sq_outline_n_rings (outline); ring++)
    {
      sq_outline_ring (outline, ring, &n);
      all += n;
    }
  return all;
}

const SqCorner *
any_corner (Maker *maker, const SqCushion *cushion)
{
  guint i = one_of (maker, n_corners (cushion->outline)), n;
  for (guint ring = 0;; ring++)
    {
      const SqCorner *corners = sq_outline_ring (cushion->outline, ring, &n);
      if (i < n)
        return &corners[i];
      i -= n;
    }
}

void
push_outline (Maker *maker, const SqCushion *cushion, SqOutline *outline, const char *words)
{
  g_autoptr (SqCushion) changed = NULL;
  g_autoptr (SqJob) job = NULL;
  if (outline == NULL)
    return;
  changed = sq_cushion_with_outline (cushion, outline);
  sq_outline_unref (outline);
  job = sq_job_with_cushion (sq_document_get_job (maker->document), changed);
  sq_document_edit (maker->document, job, words, NULL);
}

/* --- the history ------------------------------------------------------------------------------- */

static void
act_undo (Maker *maker)
{
  sq_document_undo (maker->document);
}

static void
act_redo (Maker *maker)
{
  sq_document_redo (maker->document);
}

static void
act_seal (Maker *maker)
{
  sq_document_seal (maker->document);
}

/* --- all of them ------------------------------------------------------------------------------- */

static const struct
{
  const char *name;
  guint weight;
  void (*act) (Maker *maker);
} actions[] = {
  { "undo", 6, act_undo },
  { "redo", 3, act_redo },
  { "seal", 1, act_seal },
  { "length", 10, act_length },
  { "way", 3, act_way },
  { "rate", 1, act_rate },
  { "choice", 10, act_choice },
  { "name", 2, act_name },
  { "count", 2, act_count },
  { "cloth", 4, act_cloth },
  { "fix", 8, act_fix },
  { "stripes", 6, act_stripes },
  { "zip", 4, act_zip },
  { "drag", 12, act_drag },
  { "nudge", 8, act_nudge },
  { "extents", 4, act_extents },
  { "place length", 12, act_place_length },
  { "angle", 4, act_angle },
  { "edge kind", 4, act_edge_kind },
  { "add corner", 5, act_add_corner },
  { "remove corner", 5, act_remove_corner },
  { "curve", 2, act_curve },
  { "edge shape", 2, act_edge_shape },
  { "hole", 2, act_hole },
  { "symmetry", 2, act_symmetry },
  { "turn", 1, act_turn },
  { "add cushion", 2, act_add_cushion },
  { "copy cushion", 2, act_copy_cushion },
  { "mirror cushion", 2, act_mirror_cushion },
  { "remove cushion", 3, act_remove_cushion },
  { "move cushion", 2, act_move_cushion },
};

/* Whoever has bent a seat out of shape takes that back at once, mostly. */
static void
take_back_what_crosses (Maker *maker)
{
  const SqJob *job = sq_document_get_job (maker->document);
  for (guint i = 0; i < job->cushions->len; i++)
    {
      const SqCushion *cushion = g_ptr_array_index (job->cushions, i);
      if (sq_outline_is_good (cushion->outline, NULL))
        continue;
      if (happens (maker, 0.9))
        sq_document_undo (maker->document);
      return;
    }
}

const char *
maker_act (Maker *maker)
{
  guint all = 0, i = 0, at;
  for (guint k = 0; k < G_N_ELEMENTS (actions); k++)
    all += actions[k].weight;
  for (at = one_of (maker, all); at >= actions[i].weight; i++)
    at -= actions[i].weight;
  actions[i].act (maker);
  take_back_what_crosses (maker);
  return actions[i].name;
}
