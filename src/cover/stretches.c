/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/stretches.h"

#include "base/units.h"

double
sq_station_on_ring_mm (double station, double whole)
{
  double s = fmod (station, whole);
  return s < 0 ? s + whole : s;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return x < y ? -1 : x > y;
}

/* All stations at which a run begins. */
static GArray *
all_breaks (const SqFinishedRing *ring, const GArray *more, const SqZipRun *zip)
{
  GArray *breaks = g_array_new (FALSE, FALSE, sizeof (double));
  double whole = sq_path_length_mm (ring->path), zero = 0;

  g_array_append_val (breaks, zero);
  for (guint i = 0; i < ring->n_edges; i++)
    {
      double own_start = sq_station_on_ring_mm (ring->edges[i].own_start_mm, whole);
      double own_end = sq_station_on_ring_mm (ring->edges[i].own_end_mm, whole);
      g_array_append_val (breaks, own_start);
      g_array_append_val (breaks, own_end);
    }
  for (guint i = 0; more != NULL && i < more->len; i++)
    {
      double at = sq_station_on_ring_mm (g_array_index (more, double, i), whole);
      g_array_append_val (breaks, at);
    }
  for (guint i = 0; zip != NULL && zip->is_there && i < 2; i++)
    {
      double at = sq_station_on_ring_mm (i == 0 ? zip->from_mm : zip->to_mm, whole);
      g_array_append_val (breaks, at);
    }
  g_array_sort (breaks, compare_doubles);
  return breaks;
}

static SqId
edge_at (const SqFinishedRing *ring, double station)
{
  for (guint i = 0; i < ring->n_edges; i++)
    if (station > ring->edges[i].own_start_mm && station < ring->edges[i].own_end_mm)
      return ring->edges[i].id;
  return 0;
}

static gboolean
is_in_zip (const SqZipRun *zip, double station, double whole)
{
  return zip != NULL && zip->is_there
         && sq_station_on_ring_mm (station - zip->from_mm, whole) < zip->to_mm - zip->from_mm;
}

GArray *
sq_stretches_new (const SqFinishedRing *ring, const GArray *breaks_mm, const SqZipRun *zip)
{
  GArray *stretches = g_array_new (FALSE, FALSE, sizeof (SqStretch));
  g_autoptr (GArray) breaks = all_breaks (ring, breaks_mm, zip);
  double whole = sq_path_length_mm (ring->path);

  for (guint i = 0; i < breaks->len; i++)
    {
      double from = g_array_index (breaks, double, i);
      double to = i + 1 < breaks->len ? g_array_index (breaks, double, i + 1) : whole;
      /* The node of a corner is used as it stands: its station is exact to the last bits only. */
      if (to - from <= SQ_COINCIDE_MM || whole - from <= SQ_COINCIDE_MM)
        continue;
      double middle = (from + to) / 2;
      SqStretch s = { from, to, edge_at (ring, middle), is_in_zip (zip, middle, whole) };
      if (stretches->len > 0)
        s.from_mm = g_array_index (stretches, SqStretch, stretches->len - 1).to_mm;
      g_array_append_val (stretches, s);
    }
  g_array_index (stretches, SqStretch, stretches->len - 1).to_mm = whole;
  return stretches;
}

guint
sq_stretch_from (const GArray *stretches, double station, double whole)
{
  double s = sq_station_on_ring_mm (station, whole);
  guint best = 0;
  double nearest = INFINITY;

  for (guint i = 0; i < stretches->len; i++)
    {
      double d = fabs (g_array_index (stretches, SqStretch, i).from_mm - s);
      d = fmin (d, whole - d);
      if (d < nearest)
        {
          nearest = d;
          best = i;
        }
    }
  return best;
}

void
sq_stretches_between (const GArray *stretches, double from, double to, double whole, guint *first,
                      guint *n)
{
  guint last = sq_stretch_from (stretches, to, whole);

  *first = sq_stretch_from (stretches, from, whole);
  *n = (last + stretches->len - *first) % stretches->len;
  if (*n == 0)
    *n = stretches->len;
}

guint
sq_draft_stretch (SqDraft *draft, const SqFinishedRing *ring, const SqStretch *s, gboolean mirrored,
                  SqRunRole role, double allowance)
{
  g_autoptr (SqPath) part = sq_path_part (ring->path, s->from_mm, s->to_mm);

  if (mirrored)
    {
      SqPath *turned = sq_path_mirrored (part);
      sq_path_unref (part);
      part = turned;
    }
  guint run = sq_draft_run (draft, role, s->edge, allowance);
  for (guint i = 0; i + 1 < sq_path_n_nodes (part); i++)
    sq_draft_node (draft, sq_path_nodes (part)[i].at, sq_path_nodes (part)[i].bulge);
  return run;
}

void
sq_draft_ring (SqDraft *draft, const SqMaking *making, const SqFinishedRing *ring,
               const GArray *stretches, gboolean mirrored, gboolean with_zip, guint *runs)
{
  const SqChoices *c = &making->choices;
  guint n = stretches->len;

  for (guint k = 0; k < n; k++)
    {
      guint i = mirrored ? n - 1 - k : k;
      const SqStretch *s = &g_array_index (stretches, SqStretch, i);
      gboolean zip = with_zip && s->is_zip;
      runs[i] = sq_draft_stretch (draft, ring, s, mirrored, zip ? SQ_RUN_ZIP : SQ_RUN_PERIMETER,
                                  zip ? c->zip_mm : c->perimeter_mm);
    }
}

SqSide
sq_ring_side (guint piece, const guint *runs, const GArray *stretches, guint first, guint n,
              gboolean mirrored)
{
  return (SqSide){ piece, runs[mirrored ? (first + n - 1) % stretches->len : first], n };
}
