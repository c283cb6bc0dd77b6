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

/* How many copies of an item are told as not laid. */
static guint
count_unlaid (const SqLay *lay, guint item)
{
  guint n = 0;

  for (guint i = 0; i < lay->unlaid->len; i++)
    if (g_array_index (lay->unlaid, SqUnlaid, i).item == item)
      n += g_array_index (lay->unlaid, SqUnlaid, i).count;
  return n;
}

/* Each copy lies once or is told as not laid; those are the last that are not pinned. */
static const char *
law_counts (const SqLayTask *task, const SqLay *lay)
{
  for (guint i = 0; i < task->items->len; i++)
    {
      guint demand = sq_lay_task_item (task, i)->demand, unlaid = count_unlaid (lay, i);
      g_autofree guint *seen = g_new0 (guint, demand);
      for (guint k = 0; k < lay->placed->len; k++)
        {
          const SqPlaced *placed = sq_lay_placed (lay, k);
          if (placed->item == i && (placed->copy >= demand || seen[placed->copy]++ > 0))
            return "a copy lies twice, or should not lie";
          if (placed->item == i && placed->tag != sq_lay_task_item (task, i)->tag)
            return "another's tag";
        }
      for (guint k = demand; k > 0; k--)
        if (unlaid > 0 && !sq_lay_task_is_pinned (task, i, k - 1))
          {
            unlaid--;
            if (seen[k - 1] != 0)
              return "a copy lies and does not";
          }
        else if (seen[k - 1] != 1)
          return "a copy is missing";
    }
  return NULL;
}

static const char *
law_pins (const SqLayTask *task, const SqLay *lay)
{
  guint n = 0;

  for (guint i = 0; i < task->pins->len; i++)
    for (guint k = 0; k < lay->placed->len; k++)
      {
        const SqLayPin *pin = &g_array_index (task->pins, SqLayPin, i);
        const SqPlaced *placed = sq_lay_placed (lay, k);
        n += placed->item == pin->item && placed->copy == pin->copy && placed->strip == pin->strip
             && placed->at.x == pin->at.x && placed->at.y == pin->at.y
             && sq_grid_pose_equal (placed->pose, pin->pose);
      }
  return n == task->pins->len ? NULL : "what is pinned lies elsewhere";
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

/* The anchor is on its place to half a micrometre, which is all that whole ones can do; to one where
 * it is turned so that it is none itself. */
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
      gint64 column = 0, row, off = placed->pose.turn % SQ_GRID_QUARTER == 0 ? 500 : 1001;
      if (phase->repeat_across_nm > 0
          && off_by (y, phase->across_nm, phase->repeat_across_nm, &column) > off)
        return "off the pattern across";
      gint64 shift = column % 2 != 0 ? phase->drop_nm : 0;
      if (phase->repeat_along_nm > 0
          && off_by (x, phase->along_nm + shift, phase->repeat_along_nm, &row) > off)
        return "off the pattern along";
    }
  return NULL;
}

/* All pieces drawn in a little. */
static GEOSGeometry **
draw (const SqLayTask *task, const SqLay *lay)
{
  GEOSContextHandle_t geos = geos_context ();
  GEOSGeometry **drawn = g_new0 (GEOSGeometry *, MAX (lay->placed->len, 1));

  for (guint i = 0; i < lay->placed->len; i++)
    {
      GEOSGeometry *piece = lying_piece (task, sq_lay_placed (lay, i));
      drawn[i] = GEOSBuffer_r (geos, piece, -DRAWN_IN_MM, 4);
      GEOSGeom_destroy_r (geos, piece);
    }
  return drawn;
}

/* Drawn in, none meets another; with a gap, none comes nearer than that. */
static const char *
find_near (const SqLayTask *task, const SqLay *lay, GEOSGeometry **drawn, const SqBox *boxes)
{
  GEOSContextHandle_t geos = geos_context ();

  for (guint i = 0; i < lay->placed->len; i++)
    for (guint k = 0; k < i; k++)
      {
        const SqPlaced *a = sq_lay_placed (lay, i), *b = sq_lay_placed (lay, k);
        double gap = (sq_lay_task_item (task, a->item)->gap + sq_lay_task_item (task, b->item)->gap)
                     / 2000.0;
        if (a->strip != b->strip || !sq_box_meets (boxes[i], boxes[k], gap)
            || GEOSisEmpty_r (geos, drawn[i]) == 1 || GEOSisEmpty_r (geos, drawn[k]) == 1)
          continue;
        if (GEOSIntersects_r (geos, drawn[i], drawn[k]) != 0)
          return "two overlap";
        if (gap > 0 && GEOSDistanceWithin_r (geos, drawn[i], drawn[k], gap) != 0)
          return "two are nearer than the gap";
      }
  return NULL;
}

static const char *
find_on_flaw (const SqLayTask *task, const SqLay *lay, GEOSGeometry **drawn)
{
  GEOSContextHandle_t geos = geos_context ();
  const char *wrong = NULL;

  for (guint i = 0; i < lay->placed->len; i++)
    {
      const SqLayStrip *strip = sq_lay_task_strip (task, sq_lay_placed (lay, i)->strip);
      for (guint k = 0; k < strip->n_flaws; k++)
        {
          const SqGridBox *flaw = &strip->flaws[k];
          GEOSGeometry *box = GEOSGeom_createRectangle_r (
              geos, flaw->min.x / 1000.0, flaw->min.y / 1000.0, flaw->max.x / 1000.0,
              flaw->max.y / 1000.0);
          if (GEOSIntersects_r (geos, drawn[i], box) != 0)
            wrong = "on a flaw";
          GEOSGeom_destroy_r (geos, box);
        }
    }
  return wrong;
}

static const char *
law_apart (const SqLayTask *task, const SqLay *lay)
{
  GEOSContextHandle_t geos = geos_context ();
  g_autofree GEOSGeometry **drawn = draw (task, lay);
  g_autofree SqBox *boxes = g_new0 (SqBox, MAX (lay->placed->len, 1));

  for (guint i = 0; i < lay->placed->len; i++)
    boxes[i] = lying_box (task, sq_lay_placed (lay, i));
  const char *near = find_near (task, lay, drawn, boxes);
  const char *on_flaw = find_on_flaw (task, lay, drawn);
  for (guint i = 0; i < lay->placed->len; i++)
    GEOSGeom_destroy_r (geos, drawn[i]);
  return near != NULL ? near : on_flaw;
}

/* Whether some strip is wide and long enough for @item in one of its poses. */
static gboolean
fits_somewhere (const SqLayTask *task, guint i)
{
  const SqLayItem *item = sq_lay_task_item (task, i);

  for (guint p = 0; p < item->n_poses; p++)
    for (guint k = 0; k < task->strips->len; k++)
      {
        const SqLayStrip *strip = sq_lay_task_strip (task, k);
        SqPlaced placed = { .item = i, .pose = item->poses[p] };
        SqBox box = lying_box (task, &placed);
        if (box.max.y - box.min.y <= strip->width / 1000.0 + 1e-9
            && (strip->length == 0 || box.max.x - box.min.x <= strip->length / 1000.0 + 1e-9))
          return TRUE;
      }
  return FALSE;
}

static gboolean
is_endless (const SqLayTask *task)
{
  for (guint i = 0; i < task->strips->len; i++)
    if (sq_lay_task_strip (task, i)->length == 0)
      return TRUE;
  return FALSE;
}

/* What can't be laid is so for the reason told. */
static const char *
law_unlaid (const SqLayTask *task, const SqLay *lay)
{
  for (guint i = 0; i < task->items->len; i++)
    if (sq_lay_task_item (task, i)->crosses
        && count_unlaid (lay, i) < sq_lay_task_item (task, i)->demand)
      return "it crosses itself and is laid";
  for (guint i = 0; i < lay->unlaid->len; i++)
    {
      const SqUnlaid *unlaid = &g_array_index (lay->unlaid, SqUnlaid, i);
      const SqLayItem *item = sq_lay_task_item (task, unlaid->item);
      gboolean bound = item->phase.repeat_across_nm != 0 || item->phase.repeat_along_nm != 0;
      if ((unlaid->why == SQ_UNLAID_CROSSES) != item->crosses)
        return "told as crossing itself, or not";
      if (!item->crosses
          && (unlaid->why == SQ_UNLAID_TOO_WIDE) == fits_somewhere (task, unlaid->item))
        return "not laid, for a wrong reason";
      if (unlaid->why == SQ_UNLAID_PATTERN && !bound)
        return "not laid for a pattern it has not";
      /* The roll is endless: it must be the pattern that keeps it off that. */
      if (unlaid->why == SQ_UNLAID_NO_ROOM && is_endless (task)
          && (task->strips->len == 1 || !bound))
        return "no room on an endless roll";
    }
  return NULL;
}

static const struct
{
  const char *name;
  const char *(*law) (const SqLayTask *, const SqLay *);
} laws[] = {
  { "counts", law_counts }, { "cloth", law_cloth }, { "pattern", law_pattern },
  { "pins", law_pins },     { "apart", law_apart }, { "unlaid", law_unlaid },
};

static void
assert_laws (const SqLayTask *task, const SqLay *lay, guint32 seed)
{
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
}

/* How much there was of all that tasks are made of. */
typedef struct
{
  guint laid, unlaid, pins, bad_pins, flaws, mirrored, free_turns, crossed;
} Counts;

static void
count (Counts *counts, const SqLayTask *task, const SqLay *lay)
{
  counts->laid += lay->placed->len;
  counts->unlaid += lay->unlaid->len;
  counts->pins += task->pins->len;
  counts->bad_pins += task->bad_pins->len;
  for (guint i = 0; i < task->strips->len; i++)
    counts->flaws += sq_lay_task_strip (task, i)->n_flaws;
  for (guint i = 0; i < task->items->len; i++)
    counts->crossed += sq_lay_task_item (task, i)->crosses ? 1 : 0;
  for (guint i = 0; i < lay->placed->len; i++)
    {
      counts->mirrored += sq_lay_placed (lay, i)->pose.mirrored ? 1 : 0;
      counts->free_turns += sq_lay_placed (lay, i)->pose.turn % SQ_GRID_QUARTER != 0;
    }
}

static void
test_random (void)
{
  guint n = number_from ("SQUAB_LAYS", 1000), first = number_from ("SQUAB_LAYS_SEED", 1);
  Counts counts = { 0 };

  for (guint32 seed = first; seed < first + n; seed++)
    {
      g_autoptr (SqLayTask) task = random_task (seed);
      g_autoptr (SqLay) lay = lay_of (task, seed % 20 == 0 ? 2 : 0);
      assert_laws (task, lay, seed);
      count (&counts, task, lay);
    }
  g_test_message ("%u tasks: %u laid, %u items not, %u pins, %u bad ones, %u flaws, %u mirrored, "
                  "%u in free turns, %u crossed",
                  n, counts.laid, counts.unlaid, counts.pins, counts.bad_pins, counts.flaws,
                  counts.mirrored, counts.free_turns, counts.crossed);
  if (n < 100)
    return;
  g_assert_cmpuint (counts.laid, >, 5 * n);
  g_assert_cmpuint (MIN (counts.pins, counts.flaws), >, n / 4);
  g_assert_cmpuint (MIN (counts.mirrored, counts.free_turns), >, n / 4);
  g_assert_cmpuint (MIN (MIN (counts.bad_pins, counts.crossed), counts.unlaid), >, n / 20);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/roll/lay-laws/random-tasks", test_random);
  return g_test_run ();
}
