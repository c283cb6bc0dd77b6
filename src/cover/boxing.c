/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover/boxing.h"

#include "base/units.h"
#include "cover/report.h"

/* A strip shorter than this is no strip (mm). */
#define LEAST_STRIP_MM 10.0
/* Boxings with more joins, and the trying of more corners for the first one, are given up: no
 * cushion is like that, but a file may be. */
#define MOST_JOINS 100
#define MOST_STARTS 32

typedef enum
{
  PLACE_FREE,
  PLACE_CORNER,
  PLACE_BACK_CORNER,
} PlaceKind;

/* Where a join may be. */
typedef struct
{
  double at_mm;
  PlaceKind kind;
  SqPoint frame; /* in the seat frame, for ties */
} Place;

/* How good a choice of joins is. */
typedef struct
{
  guint back_corners, corners;
  double shortest_mm;
  double frame_y, frame_x; /* sums */
} Merit;

/* The stretch to divide: open, from @from_mm to @to_mm. */
typedef struct
{
  const SqMaking *making;
  const SqFinishedRing *ring;
  guint index;
  double from_mm, to_mm;
  double most_mm;                         /* flat length of one strip */
  double extra_before_mm, extra_after_mm; /* tucks at the two ends */
  double clear_mm;                        /* no strip is shorter */
  gboolean front_middle_free;
} Stretch;

/* Where choices are equally good, the rule for ties decides; but all of them must be within it of
 * the best, not each of the next. So the best is found first, and then the place. */
typedef enum
{
  BY_LENGTH,
  BY_PLACE,
} Criterion;

/* Sums of places that differ by less are the same (mm): what rounding leaves of a mirror image. */
#define SAME_PLACE_MM 1e-6

static int
sign_of (double a)
{
  return a < -SAME_PLACE_MM ? -1 : a > SAME_PLACE_MM;
}

/* < 0: @a is better. */
static int
compare_merit (const Merit *a, const Merit *b, Criterion by)
{
  if (a->back_corners != b->back_corners)
    return a->back_corners > b->back_corners ? -1 : 1;
  if (a->corners != b->corners)
    return a->corners > b->corners ? -1 : 1;
  if (by == BY_LENGTH)
    return sign_of (b->shortest_mm - a->shortest_mm);
  int y = sign_of (b->frame_y - a->frame_y);
  return y != 0 ? y : sign_of (b->frame_x - a->frame_x);
}

static SqPoint
frame_at (const Stretch *s, double station)
{
  return sq_finished_to_frame (s->making->cover->finished,
                               sq_path_point_at (s->ring->path, station, NULL));
}

static gboolean
is_back_corner (const Stretch *s, guint edge)
{
  guint back = s->making->cover->finished->back;
  return s->index == 0 && (edge == back || edge == (back + 1) % s->ring->n_edges);
}

/* A corner that a boxing turns at: a smooth meeting of two edges is as good as any other place. */
static gboolean
is_corner (const SqFinishedEdge *edge)
{
  return fabs (edge->turn_rad) > 5 * SQ_RAD_PER_DEG;
}

static void
add_place (const Stretch *s, GArray *places, double at, PlaceKind kind)
{
  if (at < s->from_mm + s->clear_mm - 1e-6 || at > s->to_mm - s->clear_mm + 1e-6)
    return;
  Place place = { at, kind, frame_at (s, at) };
  g_array_append_val (places, place);
}

static void
add_corners (const Stretch *s, GArray *places)
{
  double whole = sq_path_length_mm (s->ring->path);

  for (guint i = 0; i < s->ring->n_edges; i++)
    if (is_corner (&s->ring->edges[i]))
      for (double at = s->ring->edges[i].start_mm - whole; at < s->to_mm; at += whole)
        add_place (s, places, at, is_back_corner (s, i) ? PLACE_BACK_CORNER : PLACE_CORNER);
}

/* Places along the edges, alike from both ends, clear of corners and of the middle of the front. */
static void
add_free_places (const Stretch *s, GArray *places)
{
  const SqDefaults *house = s->making->choices.house;
  double whole = sq_path_length_mm (s->ring->path);

  for (guint i = 0; i < s->ring->n_edges; i++)
    {
      const SqFinishedEdge *e = &s->ring->edges[i];
      double length = e->end_mm - e->start_mm;
      gboolean front = s->index == 0 && i == 0 && !s->front_middle_free;
      guint n = (guint) CLAMP (ceil (length / fmax (s->clear_mm, length / 48) - 1e-6), 2, 48);
      for (guint k = 1; k < n; k++)
        {
          double share = (double) k / n, at = e->start_mm + share * length;
          if (fmin (share, 1 - share) * length < s->clear_mm - 1e-6
              || (front && fabs (share - 0.5) < house->join_front_free_share / 2 - 1e-9))
            continue;
          for (double turn = at - whole; turn < s->to_mm; turn += whole)
            add_place (s, places, turn, PLACE_FREE);
        }
    }
}

static int
compare_places (gconstpointer a, gconstpointer b)
{
  const Place *pa = a, *pb = b;
  return pa->at_mm < pb->at_mm ? -1 : pa->at_mm > pb->at_mm;
}

/* Chooses @n joins among @places (sorted), every strip short enough, by dynamic programming over
 * the last join chosen. */
static gboolean
choose (const Stretch *s, const GArray *places, guint n, Criterion by, double *joins, Merit *merit)
{
  guint m = places->len;
  if (n == 0)
    {
      double length = s->to_mm - s->from_mm;
      *merit = (Merit){ .shortest_mm = length };
      return length + s->extra_before_mm + s->extra_after_mm <= s->most_mm + 1e-6;
    }
  if (m < n)
    return FALSE;
  g_autofree Merit *best = g_new (Merit, (gsize) n * m);
  g_autofree gint *from = g_new (gint, (gsize) n * m);

  for (guint k = 0; k < n; k++)
    for (guint j = 0, near = 0; j < m; j++)
      {
        const Place *p = &g_array_index (places, Place, j);
        from[k * m + j] = -2;
        while (p->at_mm - g_array_index (places, Place, near).at_mm > s->most_mm + 1e-6)
          near++;
        guint first = k == 0 ? m : near; /* m: the stretch's start, with no join before */
        for (guint i = first; i < (k == 0 ? m + 1 : j); i++)
          {
            if (k > 0 && from[(k - 1) * m + i] == -2)
              continue;
            double start = k == 0 ? s->from_mm : g_array_index (places, Place, i).at_mm;
            double length = p->at_mm - start;
            double extra = k == 0 ? s->extra_before_mm : 0;
            if (length + extra > s->most_mm + 1e-6 || length < s->clear_mm - 1e-6)
              continue;
            Merit here = k == 0 ? (Merit){ .shortest_mm = INFINITY } : best[(k - 1) * m + i];
            here.back_corners += p->kind == PLACE_BACK_CORNER;
            here.corners += p->kind != PLACE_FREE;
            here.shortest_mm = fmin (here.shortest_mm, length);
            here.frame_y += p->frame.y;
            here.frame_x += p->frame.x;
            if (from[k * m + j] == -2 || compare_merit (&here, &best[k * m + j], by) < 0)
              {
                best[k * m + j] = here;
                from[k * m + j] = k == 0 ? -1 : (gint) i;
              }
          }
      }
  gint last = -1;
  for (guint j = 0; j < m; j++)
    {
      double length = s->to_mm - g_array_index (places, Place, j).at_mm;
      if (from[(n - 1) * m + j] == -2 || length + s->extra_after_mm > s->most_mm + 1e-6
          || length < s->clear_mm - 1e-6)
        continue;
      Merit here = best[(n - 1) * m + j];
      here.shortest_mm = fmin (here.shortest_mm, length);
      if (last < 0 || compare_merit (&here, merit, by) < 0)
        {
          *merit = here;
          last = (gint) j;
        }
    }
  for (gint k = (gint) n - 1, j = last; k >= 0 && last >= 0; k--)
    {
      joins[k] = g_array_index (places, Place, j).at_mm;
      j = from[(guint) k * m + (guint) j];
    }
  return last >= 0;
}

/* @merit: its shortest strip is the longest there can be; the choice may be SQ_TIE_MM short of it. */
static GArray *
choose_joins (const Stretch *s, const GArray *places, guint n, Merit *merit)
{
  GArray *joins = g_array_sized_new (FALSE, FALSE, sizeof (double), n);
  double *out = (double *) (gpointer) joins->data;
  Stretch equal = *s;

  g_array_set_size (joins, n);
  if (!choose (s, places, n, BY_LENGTH, out, merit))
    {
      g_array_unref (joins);
      return NULL;
    }
  double shortest = merit->shortest_mm;
  equal.clear_mm = fmax (s->clear_mm, shortest - SQ_TIE_MM);
  choose (&equal, places, n, BY_PLACE, out, merit);
  merit->shortest_mm = shortest;
  return joins;
}

/* The joins of an open stretch: as few as the cloth allows, at corners if that can be. New array
 * of double, or NULL. */
static GArray *
divide_stretch (const Stretch *s, Merit *merit)
{
  g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (Place));
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (Place));
  double flat = s->to_mm - s->from_mm + s->extra_before_mm + s->extra_after_mm;
  double least_joins = fmax (0, ceil ((flat - 1e-6) / s->most_mm) - 1);
  if (least_joins > MOST_JOINS)
    return NULL;
  guint least = (guint) least_joins;

  add_corners (s, corners);
  g_array_sort (corners, compare_places);
  g_array_append_vals (all, corners->data, corners->len);
  add_free_places (s, all);
  g_array_sort (all, compare_places);
  for (guint n = least; n <= MIN (2 * least + 2, MOST_JOINS); n++)
    {
      GArray *joins = choose_joins (s, corners, n, merit);
      /* A join more is better than one that shows along an edge; two more are not. */
      if (joins == NULL)
        joins = choose_joins (s, corners, n + 1, merit);
      if (joins == NULL)
        joins = choose_joins (s, all, n, merit);
      if (joins != NULL)
        return joins;
    }
  return NULL;
}

static void
add_strips (GArray *strips, SqStripKind kind, const Stretch *s, const GArray *joins, gboolean tucks)
{
  for (guint i = 0; i <= joins->len; i++)
    {
      SqStrip strip = { .kind = kind };
      strip.from_mm = i == 0 ? s->from_mm : g_array_index (joins, double, i - 1);
      strip.to_mm = i == joins->len ? s->to_mm : g_array_index (joins, double, i);
      strip.tuck_before = tucks && i == 0;
      strip.tuck_after = tucks && i == joins->len;
      g_array_append_val (strips, strip);
    }
}

/* A choice of joins for a ring without a zip. */
typedef struct
{
  double start_mm; /* the first join */
  GArray *joins;   /* the others; NULL: none can be had from there */
  Merit merit;
} Closed;

static Closed
start_at (Stretch *s, guint edge)
{
  Closed c = { .start_mm = s->ring->edges[edge].start_mm };

  s->from_mm = c.start_mm;
  s->to_mm = s->from_mm + sq_path_length_mm (s->ring->path);
  c.joins = divide_stretch (s, &c.merit);
  SqPoint frame = frame_at (s, c.start_mm);
  if (is_corner (&s->ring->edges[edge]))
    {
      c.merit.corners++;
      c.merit.back_corners += is_back_corner (s, edge);
    }
  c.merit.frame_y += frame.y;
  c.merit.frame_x += frame.x;
  return c;
}

/* A join more is better than one that shows along an edge; two more are not. */
static guint
cost_of (const Closed *c)
{
  gboolean shows = c->merit.corners < c->joins->len + 1;

  return 2 * c->joins->len + (shows ? 3 : 0);
}

static gboolean
is_better (const Closed *a, const Closed *b, Criterion by)
{
  if (a->joins == NULL || b->joins == NULL)
    return a->joins != NULL && b->joins == NULL;
  if (cost_of (a) != cost_of (b))
    return cost_of (a) < cost_of (b);
  return compare_merit (&a->merit, &b->merit, by) < 0;
}

/* The choice that is best by length, or by place among those which a tie's breadth does not part
 * from it. */
static guint
best_closed (const Closed *choices, guint n)
{
  guint longest = 0, best;

  for (guint i = 1; i < n; i++)
    if (is_better (&choices[i], &choices[longest], BY_LENGTH))
      longest = i;
  best = longest;
  for (guint i = 0; i < n && choices[longest].joins != NULL; i++)
    if (choices[i].merit.shortest_mm > choices[longest].merit.shortest_mm - SQ_TIE_MM
        && is_better (&choices[i], &choices[best], BY_PLACE))
      best = i;
  return best;
}

/* Whether a ring without a zip may have its first join at the start of @edge: at every corner, or
 * at back corners alone where there are too many to try; where there is none, at every edge's end.
 */
static gboolean
may_start_at (const Stretch *s, guint edge, guint n_corners)
{
  guint n = n_corners > 0 ? n_corners : s->ring->n_edges;

  if (n_corners > 0 && !is_corner (&s->ring->edges[edge]))
    return FALSE;
  return n <= MOST_STARTS || (s->index == 0 ? is_back_corner (s, edge) : edge == 0);
}

/* A ring without a zip has no end to start from: the best of all first joins is. */
static GArray *
divide_closed (Stretch *s)
{
  g_autofree Closed *choices = g_new0 (Closed, s->ring->n_edges);
  guint n = 0, n_corners = 0;

  for (guint i = 0; i < s->ring->n_edges; i++)
    n_corners += is_corner (&s->ring->edges[i]) ? 1 : 0;
  for (guint i = 0; i < s->ring->n_edges; i++)
    if (may_start_at (s, i, n_corners))
      choices[n++] = start_at (s, i);
  if (n == 0)
    choices[n++] = start_at (s, 0);
  guint best = best_closed (choices, n);
  for (guint i = 0; i < n; i++)
    if (i != best)
      g_clear_pointer (&choices[i].joins, g_array_unref);
  s->from_mm = choices[best].start_mm;
  s->to_mm = s->from_mm + sq_path_length_mm (s->ring->path);
  return choices[best].joins;
}

static GArray *
divide_open (Stretch *s)
{
  Merit merit;
  return divide_stretch (s, &merit);
}

/* Divides @s, with the rules about places given up one by one where nothing else goes. */
static GArray *
divide_somehow (Stretch *s, GArray *(*divide) (Stretch *s), GArray *problems)
{
  double clear = s->clear_mm;
  GArray *joins = divide (s);
  if (joins != NULL)
    return joins;
  s->front_middle_free = TRUE;
  if ((joins = divide (s)) == NULL)
    {
      s->clear_mm = LEAST_STRIP_MM;
      joins = divide (s);
    }
  if (joins != NULL)
    sq_report_cushion (problems, SQ_PROBLEM_JOIN_NO_ROOM, SQ_WARNING, s->making->choices.cushion)
        ->facts[0]
        = clear;
  return joins;
}

/* Moves strips that run over the ring's start to where they hold station 0. */
static void
bring_home (GArray *strips, double whole)
{
  for (guint i = 0; i < strips->len; i++)
    {
      SqStrip *strip = &g_array_index (strips, SqStrip, i);
      while (strip->to_mm > whole + 1e-6)
        {
          strip->from_mm -= whole;
          strip->to_mm -= whole;
        }
      while (strip->to_mm <= 1e-6)
        {
          strip->from_mm += whole;
          strip->to_mm += whole;
        }
    }
}

/* The flat length of the longest strip. Across the cloth it is the width less both ends'
 * allowances; a strip of the outer boxing that must fall on the pattern may have to be moved in by
 * up to a repeat for that, and is so much shorter, as long as half of the width is left. */
static double
most_of_strip_mm (const SqChoices *c, gboolean matches)
{
  const SqClothChoice *cloth = &c->sides;
  double across_mm = cloth->width_mm - 2 * c->join_mm;

  if (sq_boxing_lies_along (c))
    return c->house->boxing_plain_most_mm;
  if (matches && cloth->phase_across && c->centre_on != SQ_CENTRE_NONE
      && cloth->repeat_across_mm <= across_mm / 2)
    return across_mm - cloth->repeat_across_mm;
  return across_mm;
}

static Stretch
stretch_of (const SqMaking *making, guint ring, gboolean matches)
{
  const SqChoices *c = &making->choices;

  return (Stretch){ .making = making,
                    .ring = &making->cover->finished->rings[ring],
                    .index = ring,
                    .clear_mm = c->house->join_clear_mm,
                    .most_mm = most_of_strip_mm (c, matches) };
}

static void
report_too_short (const SqMaking *making)
{
  const SqChoices *c = &making->choices;

  sq_report_key (making->cover->problems, SQ_PROBLEM_BOXING_TOO_SHORT, SQ_FAULT, c->cushion,
                 "cloth.sides")
      ->facts[0]
      = c->sides.width_mm;
}

/* Divides @s and adds its strips; FALSE where that can't be. */
static gboolean
divide_into (GArray *strips, Stretch *s, SqStripKind kind, gboolean tucks,
             GArray *(*divide) (Stretch *s))
{
  g_autoptr (GArray) joins = divide_somehow (s, divide, s->making->cover->problems);

  if (joins == NULL)
    return FALSE;
  add_strips (strips, kind, s, joins, tucks);
  return TRUE;
}

GArray *
sq_boxing_divide (const SqMaking *making, guint ring, const SqZipRun *zip)
{
  const SqChoices *c = &making->choices;
  double whole = sq_path_length_mm (making->cover->finished->rings[ring].path);
  g_autoptr (GArray) strips = g_array_new (FALSE, TRUE, sizeof (SqStrip));
  Stretch s = stretch_of (making, ring, ring == 0);
  gboolean divided = s.most_mm >= 2 * s.clear_mm + 4 * c->zip_tuck_mm;

  if (divided && !zip->is_there)
    divided = divide_into (strips, &s, SQ_STRIP_PLAIN, FALSE, divide_closed);
  else if (divided)
    {
      Stretch z = stretch_of (making, ring, FALSE);
      s.from_mm = zip->to_mm;
      s.to_mm = zip->from_mm + whole;
      s.extra_before_mm = s.extra_after_mm = 2 * c->zip_tuck_mm;
      z.from_mm = zip->from_mm;
      z.to_mm = zip->to_mm;
      divided = divide_into (strips, &s, SQ_STRIP_PLAIN, c->zip_tuck_mm > 0, divide_open)
                && divide_into (strips, &z, SQ_STRIP_ZIP, FALSE, divide_open);
    }
  if (!divided)
    {
      report_too_short (making);
      return NULL;
    }
  bring_home (strips, whole);
  return g_steal_pointer (&strips);
}

GArray *
sq_boxing_divide_part (const SqMaking *making, guint ring, double from_mm, double to_mm)
{
  g_autoptr (GArray) strips = g_array_new (FALSE, TRUE, sizeof (SqStrip));
  Stretch s = stretch_of (making, ring, ring == 0);

  s.from_mm = from_mm;
  s.to_mm = to_mm;
  if (s.most_mm < 2 * s.clear_mm || !divide_into (strips, &s, SQ_STRIP_PLAIN, FALSE, divide_open))
    {
      report_too_short (making);
      return NULL;
    }
  bring_home (strips, sq_path_length_mm (s.ring->path));
  return g_steal_pointer (&strips);
}

gboolean
sq_boxing_lies_along (const SqChoices *c)
{
  const SqClothChoice *cloth = &c->sides;

  if (cloth->one_way)
    return FALSE;
  return c->stripes_run == SQ_STRIPES_SIDE_TO_SIDE || !cloth->phase_across;
}
