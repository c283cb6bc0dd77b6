/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What holds of the lay of any task, looked at from outside: by GEOS, and by arithmetic of its own.
 * SQUAB_LAYS: how many tasks (1,000); SQUAB_LAYS_SEED: the first seed, to see a failure again. */
#include <stdlib.h>

#include "geometry/geos.h"
#include "roll/made-task.h"

#define DRAWN_IN_MM 0.005

static guint
number_from (const char *name, guint otherwise)
{
  const char *text = g_getenv (name);
  return text != NULL ? (guint) strtoul (text, NULL, 10) : otherwise;
}

/* ---- as the table has it, mm --------------------------------------------------------------- */

/* Mirrored, turned about (0, 0), then moved. */
static SqPoint
lying_point (const SqPlaced *placed, SqGrid p)
{
  double angle = placed->pose.turn * 2 * G_PI / SQ_GRID_WHOLE_TURN, c = cos (angle),
         s = sin (angle);
  if (placed->pose.turn % SQ_GRID_QUARTER == 0)
    {
      c = round (c);
      s = round (s);
    }
  double x = placed->pose.mirrored ? -p.x : p.x;

  return sq_point ((c * x - s * p.y + placed->at.x) / 1000,
                   (s * x + c * p.y + placed->at.y) / 1000);
}

static GEOSGeometry *
lying_ring (const SqPlaced *placed, const SqGridRing *ring)
{
  GEOSContextHandle_t geos = geos_context ();
  GEOSCoordSequence *points = GEOSCoordSeq_create_r (geos, ring->n + 1, 2);

  for (guint i = 0; i <= ring->n; i++)
    {
      SqPoint p = lying_point (placed, ring->points[i % ring->n]);
      GEOSCoordSeq_setXY_r (geos, points, i, p.x, p.y);
    }
  return GEOSGeom_createLinearRing_r (geos, points);
}

static GEOSGeometry *
lying_piece (const SqLayTask *task, const SqPlaced *placed)
{
  const SqLayItem *item = sq_lay_task_item (task, placed->item);
  GEOSGeometry *holes[8];

  g_assert_cmpuint (item->n_rings, <=, G_N_ELEMENTS (holes));
  for (guint i = 1; i < item->n_rings; i++)
    holes[i - 1] = lying_ring (placed, &item->rings[i]);
  return GEOSGeom_createPolygon_r (geos_context (), lying_ring (placed, &item->rings[0]), holes,
                                   item->n_rings - 1);
}

static SqBox
lying_box (const SqLayTask *task, const SqPlaced *placed)
{
  const SqGridRing *ring = &sq_lay_task_item (task, placed->item)->rings[0];
  SqBox box = sq_box_empty ();

  for (guint i = 0; i < ring->n; i++)
    box = sq_box_with (box, lying_point (placed, ring->points[i]));
  return box;
}

/* ---- the laws ------------------------------------------------------------------------------ */

/* Each copy lies once or is told as not laid. */
static const char *
law_counts (const SqLayTask *task, const SqLay *lay)
{
  for (guint i = 0; i < task->items->len; i++)
    {
      guint demand = sq_lay_task_item (task, i)->demand, unlaid = 0;
      g_autofree guint *seen = g_new0 (guint, demand);
      for (guint k = 0; k < lay->unlaid->len; k++)
        if (g_array_index (lay->unlaid, SqUnlaid, k).item == i)
          unlaid += g_array_index (lay->unlaid, SqUnlaid, k).count;
      for (guint k = 0; k < lay->placed->len; k++)
        {
          const SqPlaced *placed = sq_lay_placed (lay, k);
          if (placed->item == i && (placed->copy >= demand - unlaid || seen[placed->copy]++ > 0))
            return "a copy lies twice, or should not lie";
          if (placed->item == i && placed->tag != sq_lay_task_item (task, i)->tag)
            return "another's tag";
        }
      for (guint k = 0; k < demand - unlaid; k++)
        if (seen[k] != 1)
          return "a copy is missing";
    }
  return NULL;
}

static const char *
law_cloth (const SqLayTask *task, const SqLay *lay)
{
  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      const SqLayStrip *strip = sq_lay_task_strip (task, placed->strip);
      SqBox box = lying_box (task, placed);
      if (box.min.x < 0 || box.min.y < 0 || box.max.y > strip->width / 1000.0
          || box.max.x > sq_lay_length (lay, placed->strip) / 1000.0
          || (strip->length > 0 && box.max.x > strip->length / 1000.0))
        return "beyond the cloth";
      if (sq_lay_item_pose (sq_lay_task_item (task, placed->item), placed->pose) == G_MAXUINT)
        return "turned as it may not be";
    }
  return NULL;
}

/* How far @x_nm is from the nearest of at, at + repeat …; and how manieth that is. */
static gint64
off_by (gint64 x_nm, gint64 at_nm, gint64 repeat_nm, gint64 *which)
{
  *which = llround ((double) (x_nm - at_nm) / (double) repeat_nm);
  return llabs (x_nm - at_nm - *which * repeat_nm);
}

/* The anchor is on its place to half a micrometre, which is all that whole ones can do. */
static const char *
law_pattern (const SqLayTask *task, const SqLay *lay)
{
  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqPlaced *placed = sq_lay_placed (lay, i);
      const SqGridPhase *phase = &sq_lay_task_item (task, placed->item)->phase;
      const SqLayStrip *strip = sq_lay_task_strip (task, placed->strip);
      SqPoint at = lying_point (placed, phase->anchor);
      gint64 x = llround (at.x * 1e6) + strip->pattern.x * G_GINT64_CONSTANT (1000);
      gint64 y = llround (at.y * 1e6) + strip->pattern.y * G_GINT64_CONSTANT (1000);
      gint64 column = 0, row;
      if (phase->repeat_across_nm > 0
          && off_by (y, phase->across_nm, phase->repeat_across_nm, &column) > 500)
        return "off the pattern across";
      gint64 shift = column % 2 != 0 ? phase->drop_nm : 0;
      if (phase->repeat_along_nm > 0
          && off_by (x, phase->along_nm + shift, phase->repeat_along_nm, &row) > 500)
        return "off the pattern along";
    }
  return NULL;
}

/* Drawn in a little, none meets another; with a gap, none comes nearer than that. */
static const char *
law_apart (const SqLayTask *task, const SqLay *lay)
{
  GEOSContextHandle_t geos = geos_context ();
  g_autofree GEOSGeometry **drawn = g_new0 (GEOSGeometry *, MAX (lay->placed->len, 1));
  g_autofree SqBox *boxes = g_new0 (SqBox, MAX (lay->placed->len, 1));
  double gap = task->gap / 1000.0;
  const char *wrong = NULL;

  for (guint i = 0; i < lay->placed->len; i++)
    {
      GEOSGeometry *piece = lying_piece (task, sq_lay_placed (lay, i));
      drawn[i] = GEOSBuffer_r (geos, piece, -DRAWN_IN_MM, 4);
      boxes[i] = lying_box (task, sq_lay_placed (lay, i));
      GEOSGeom_destroy_r (geos, piece);
    }
  for (guint i = 0; i < lay->placed->len; i++)
    for (guint k = 0; k < i && wrong == NULL; k++)
      {
        if (sq_lay_placed (lay, i)->strip != sq_lay_placed (lay, k)->strip
            || !sq_box_meets (boxes[i], boxes[k], gap) || GEOSisEmpty_r (geos, drawn[i]) == 1
            || GEOSisEmpty_r (geos, drawn[k]) == 1)
          continue;
        if (GEOSIntersects_r (geos, drawn[i], drawn[k]) != 0)
          wrong = "two overlap";
        else if (gap > 0 && GEOSDistanceWithin_r (geos, drawn[i], drawn[k], gap) != 0)
          wrong = "two are nearer than the gap";
      }
  for (guint i = 0; i < lay->placed->len; i++)
    GEOSGeom_destroy_r (geos, drawn[i]);
  return wrong;
}

/* What can't be laid is so for the reason told. */
static const char *
law_unlaid (const SqLayTask *task, const SqLay *lay)
{
  for (guint i = 0; i < lay->unlaid->len; i++)
    {
      const SqUnlaid *unlaid = &g_array_index (lay->unlaid, SqUnlaid, i);
      const SqLayItem *item = sq_lay_task_item (task, unlaid->item);
      SqPlaced upright = { .item = unlaid->item };
      SqBox box = lying_box (task, &upright);
      double least = sq_lay_item_pose (item, (SqGridPose){ SQ_GRID_QUARTER, FALSE }) != G_MAXUINT
                         ? MIN (box.max.x - box.min.x, box.max.y - box.min.y)
                         : box.max.y - box.min.y;
      double widest = 0;
      for (guint k = 0; k < task->strips->len; k++)
        widest = MAX (widest, sq_lay_task_strip (task, k)->width / 1000.0);
      if ((unlaid->why == SQ_UNLAID_TOO_WIDE) != (least > widest + 1e-9))
        return "not laid, for a wrong reason";
      if (unlaid->why == SQ_UNLAID_PATTERN && item->phase.repeat_across_nm == 0)
        return "not laid for a pattern it has not";
      /* The roll is endless: it must be the pattern that keeps it off that. */
      if (unlaid->why == SQ_UNLAID_NO_ROOM
          && (task->strips->len == 1 || item->phase.repeat_across_nm == 0))
        return "no room on an endless roll";
    }
  return NULL;
}

static const struct
{
  const char *name;
  const char *(*law) (const SqLayTask *, const SqLay *);
} laws[] = {
  { "counts", law_counts }, { "cloth", law_cloth },   { "pattern", law_pattern },
  { "apart", law_apart },   { "unlaid", law_unlaid },
};

static void
test_random (void)
{
  guint n = number_from ("SQUAB_LAYS", 1000), first = number_from ("SQUAB_LAYS_SEED", 1);
  guint n_laid = 0, n_unlaid = 0;

  for (guint32 seed = first; seed < first + n; seed++)
    {
      g_autoptr (SqLayTask) task = random_task (seed);
      g_autoptr (SqLay) lay = lay_of (task, seed % 8);
      guint at = 0;
      SqLayFault fault = sq_lay_fault (task, lay, &at);
      for (guint i = 0; i < G_N_ELEMENTS (laws); i++)
        {
          const char *wrong = laws[i].law (task, lay);
          if (wrong != NULL)
            g_test_message ("SQUAB_LAYS_SEED=%u: %s: %s", seed, laws[i].name, wrong);
          g_assert_null (wrong);
        }
      if (fault != SQ_LAY_RIGHT)
        g_test_message ("SQUAB_LAYS_SEED=%u: fault %d at %u", seed, fault, at);
      g_assert_cmpint (fault, ==, SQ_LAY_RIGHT);
      n_laid += lay->placed->len;
      n_unlaid += lay->unlaid->len;
    }
  g_test_message ("%u tasks, %u pieces laid, %u items not", n, n_laid, n_unlaid);
  if (n >= 100)
    {
      g_assert_cmpuint (n_laid, >, 5 * n);
      g_assert_cmpuint (n_unlaid, >, 0);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-laws/random-tasks", test_random);
  return g_test_run ();
}
