/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/packings.h"

#include <string.h>

static Rectangle
turned (Rectangle r)
{
  return (Rectangle){ r.width, r.length };
}

/* ---- skyline ------------------------------------------------------------------------------- */

typedef enum
{
  BOTTOM_LEFT,
  LEAST_WASTE,
  BEST_FIT,
} Skyline;
#define N_SKYLINES 3

/* How far the strip is laid at each of its heights; plain, and exact for whole ones. */
typedef struct
{
  gint *reach;
  gint width;
} Line;

static gint
reach_between (const Line *line, gint y, gint width)
{
  gint reach = 0;
  for (gint i = y; i < y + width; i++)
    reach = MAX (reach, line->reach[i]);
  return reach;
}

static void
lay_on_line (Line *line, gint y, gint width, gint reach)
{
  for (gint i = y; i < y + width; i++)
    line->reach[i] = reach;
}

/* How wide the level is that begins at @y. */
static gint
level_width (const Line *line, gint y)
{
  gint end = y;
  while (end < line->width && line->reach[end] == line->reach[y])
    end++;
  return end - y;
}

/* The cost of @r at @y, in *a, then *b. */
static void
skyline_cost (const Line *line, Skyline rule, Rectangle r, gint y, gint64 *a, gint64 *b)
{
  gint x = reach_between (line, y, r.width);
  gint64 waste = 0;

  for (gint i = y; i < y + r.width; i++)
    waste += x - line->reach[i];
  *a = rule == LEAST_WASTE ? waste : x + r.length;
  *b = rule == LEAST_WASTE ? x + r.length
       : rule == BEST_FIT  ? ABS (level_width (line, y) - r.width)
                           : y;
}

static gint
pack_skyline (const Rectangle *rectangles, guint n, gint width, Skyline rule)
{
  g_autofree gint *reach = g_new0 (gint, width);
  Line line = { reach, width };
  gint length = 0;

  for (guint i = 0; i < n; i++)
    {
      gint64 best_a = G_MAXINT64, best_b = G_MAXINT64, a, b;
      Rectangle best = rectangles[i];
      gint best_y = 0;
      for (guint k = 0; k < 2; k++)
        for (gint y = 0; y < width; y += level_width (&line, y))
          {
            Rectangle r = k == 0 ? rectangles[i] : turned (rectangles[i]);
            if (y + r.width > width)
              continue;
            skyline_cost (&line, rule, r, y, &a, &b);
            if (a > best_a || (a == best_a && b >= best_b))
              continue;
            best_a = a;
            best_b = b;
            best = r;
            best_y = y;
          }
      gint end = reach_between (&line, best_y, best.width) + best.length;
      lay_on_line (&line, best_y, best.width, end);
      length = MAX (length, end);
    }
  return length;
}

/* ---- what fits best next ------------------------------------------------------------------- */

static gint
pack_best_fit (const Rectangle *rectangles, guint n, gint width)
{
  g_autofree gint *reach = g_new0 (gint, width);
  g_autofree gboolean *laid = g_new0 (gboolean, n);
  Line line = { reach, width };
  gint length = 0;

  for (guint n_laid = 0; n_laid < n;)
    {
      gint low = 0, best_width = 0;
      guint best = 0;
      gboolean is_turned = FALSE;
      for (gint y = 0; y < width; y += level_width (&line, y))
        if (reach[y] < reach[low])
          low = y;
      gint room = level_width (&line, low);
      for (guint i = 0; i < n; i++)
        for (guint k = 0; k < 2 && !laid[i]; k++)
          {
            Rectangle r = k == 0 ? rectangles[i] : turned (rectangles[i]);
            if (r.width > room || r.width <= best_width)
              continue;
            best_width = r.width;
            best = i;
            is_turned = k == 1;
          }
      if (best_width == 0)
        {
          gint before = low > 0 ? reach[low - 1] : G_MAXINT;
          gint after = low + room < width ? reach[low + room] : G_MAXINT;
          lay_on_line (&line, low, room, MIN (before, after));
          continue;
        }
      Rectangle r = is_turned ? turned (rectangles[best]) : rectangles[best];
      gint end = reach[low] + r.length;
      lay_on_line (&line, low, r.width, end);
      length = MAX (length, end);
      laid[best] = TRUE;
      n_laid++;
    }
  return length;
}

/* ---- guillotine ---------------------------------------------------------------------------- */

typedef struct
{
  gint length, width; /* where it lies does not matter */
} Free;

static gint64
guillotine_cost (guint rule, Free free, Rectangle r)
{
  gint64 along = free.length - r.length, across = free.width - r.width;

  if (rule == 0)
    return (gint64) free.length * free.width - (gint64) r.length * r.width;
  return rule == 1 ? MIN (along, across) : MAX (along, across);
}

/* Whether all go into @length; split at the shorter axis that is left. */
static gboolean
guillotine_fits (const Rectangle *rectangles, guint n, gint length, gint width, guint rule)
{
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (Free));
  Free whole = { length, width };

  g_array_append_val (all, whole);
  for (guint i = 0; i < n; i++)
    {
      gint64 best_cost = G_MAXINT64;
      guint best = 0;
      Rectangle best_r = rectangles[i];
      for (guint f = 0; f < all->len; f++)
        for (guint k = 0; k < 2; k++)
          {
            Rectangle r = k == 0 ? rectangles[i] : turned (rectangles[i]);
            Free free = g_array_index (all, Free, f);
            if (r.length > free.length || r.width > free.width
                || guillotine_cost (rule, free, r) >= best_cost)
              continue;
            best_cost = guillotine_cost (rule, free, r);
            best = f;
            best_r = r;
          }
      if (best_cost == G_MAXINT64)
        return FALSE;
      Free free = g_array_index (all, Free, best);
      gboolean across = free.length - best_r.length >= free.width - best_r.width;
      Free behind = { free.length - best_r.length, across ? free.width : best_r.width };
      Free above = { across ? best_r.length : free.length, free.width - best_r.width };
      g_array_remove_index (all, best);
      g_array_append_val (all, behind);
      g_array_append_val (all, above);
    }
  return TRUE;
}

static gint
pack_guillotine (const Rectangle *rectangles, guint n, gint width, guint rule, gint most)
{
  gint fits = most, least = 0;

  while (fits - least > MAX (most / 500, 1))
    {
      gint middle = (fits + least) / 2;
      if (guillotine_fits (rectangles, n, middle, width, rule))
        fits = middle;
      else
        least = middle;
    }
  return fits;
}

/* ---- orders -------------------------------------------------------------------------------- */

static int
compare_sizes (gconstpointer a, gconstpointer b, gpointer data)
{
  const Rectangle *p = a, *q = b;
  const gint64 sizes[][4] = { { (gint64) p->length * p->width, MAX (p->length, p->width),
                                p->length + p->width, MIN (p->length, p->width) },
                              { (gint64) q->length * q->width, MAX (q->length, q->width),
                                q->length + q->width, MIN (q->length, q->width) } };
  guint by = GPOINTER_TO_UINT (data);

  return (sizes[0][by] < sizes[1][by]) - (sizes[0][by] > sizes[1][by]);
}

static void
shuffle (Rectangle *rectangles, guint n, GRand *chance)
{
  for (guint i = n; i > 1; i--)
    {
      guint k = (guint) g_rand_int_range (chance, 0, (gint) i);
      Rectangle other = rectangles[k];
      rectangles[k] = rectangles[i - 1];
      rectangles[i - 1] = other;
    }
}

gint
best_packing (const Rectangle *rectangles, guint n, gint width, guint n_orders, GRand *chance)
{
  g_autofree Rectangle *order = g_memdup2 (rectangles, n * sizeof *order);
  gint best = G_MAXINT;

  for (guint i = 0; i < n_orders; i++)
    {
      if (i < 4)
        g_qsort_with_data (order, (gint) n, sizeof *order, compare_sizes, GUINT_TO_POINTER (i));
      else
        shuffle (order, n, chance);
      for (guint rule = 0; rule < N_SKYLINES; rule++)
        best = MIN (best, pack_skyline (order, n, width, (Skyline) rule));
      best = MIN (best, pack_best_fit (order, n, width));
      for (guint rule = 0; rule < 3; rule++)
        if (guillotine_fits (order, n, best - 1, width, rule))
          best = pack_guillotine (order, n, width, rule, best - 1);
    }
  return best;
}

/* ---- sets ---------------------------------------------------------------------------------- */

Rectangle *
cut_up (gint length, gint width, guint n, GRand *chance)
{
  Rectangle *rectangles = g_new (Rectangle, n);

  rectangles[0] = (Rectangle){ length, width };
  for (guint i = 1; i < n; i++)
    {
      /* One of a few, the largest of them, so that none becomes a sliver. */
      guint cut = 0;
      for (guint k = 0; k < 3; k++)
        {
          guint other = (guint) g_rand_int_range (chance, 0, (gint) i);
          if (k == 0
              || (gint64) rectangles[other].length * rectangles[other].width
                     > (gint64) rectangles[cut].length * rectangles[cut].width)
            cut = other;
        }
      Rectangle *r = &rectangles[cut];
      gboolean across = r->length > r->width;
      gint side = across ? r->length : r->width;
      gint at = (gint) (side * g_rand_double_range (chance, 0.25, 0.75));
      rectangles[i] = across ? (Rectangle){ side - at, r->width }
                             : (Rectangle){ r->length, side - at };
      *r = across ? (Rectangle){ at, r->width } : (Rectangle){ r->length, at };
    }
  return rectangles;
}
