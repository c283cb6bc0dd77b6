/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job/cloth.h"

#include <math.h>

/* More bands than this are not looked into: such a cloth is taken not to allow half turns. */
#define MOST_BANDS 200

/* Bands that differ by less are equally wide (mm): a tenth of what a weaver holds. */
#define SAME_BAND_MM 0.02

static void
clear_stock (gpointer data)
{
  g_clear_pointer (&((SqStock *) data)->unknown, g_ref_string_release);
}

static void
clear_flaw (gpointer data)
{
  g_clear_pointer (&((SqFlaw *) data)->unknown, g_ref_string_release);
}

static GArray *
new_list (guint size, GDestroyNotify clear)
{
  GArray *list = g_array_new (FALSE, TRUE, size);

  g_array_set_clear_func (list, clear);
  return list;
}

SqCloth *
sq_cloth_new (SqId id)
{
  SqCloth *cloth = g_new0 (SqCloth, 1);

  cloth->ref_count = 1;
  cloth->id = id;
  cloth->name = g_ref_string_new ("");
  cloth->stock = new_list (sizeof (SqStock), clear_stock);
  cloth->flaws = new_list (sizeof (SqFlaw), clear_flaw);
  return cloth;
}

static GRefString *
hold (GRefString *text)
{
  return text != NULL ? g_ref_string_acquire (text) : NULL;
}

SqCloth *
sq_cloth_dup (const SqCloth *cloth)
{
  SqCloth *copy = g_memdup2 (cloth, sizeof *cloth);

  copy->ref_count = 1;
  copy->stripes = g_memdup2 (cloth->stripes, cloth->n_stripes * sizeof *cloth->stripes);
  hold (copy->name);
  hold (copy->unknown);
  hold (copy->unknown_repeat);
  for (guint i = 0; i < copy->n_stripes; i++)
    hold (copy->stripes[i].unknown);
  copy->stock = new_list (sizeof (SqStock), clear_stock);
  g_array_append_vals (copy->stock, cloth->stock->data, cloth->stock->len);
  for (guint i = 0; i < copy->stock->len; i++)
    hold (sq_cloth_stock (copy, i)->unknown);
  copy->flaws = new_list (sizeof (SqFlaw), clear_flaw);
  g_array_append_vals (copy->flaws, cloth->flaws->data, cloth->flaws->len);
  for (guint i = 0; i < copy->flaws->len; i++)
    hold (sq_cloth_flaw (copy, i)->unknown);
  return copy;
}

SqCloth *
sq_cloth_ref (const SqCloth *cloth)
{
  SqCloth *shared = (SqCloth *) cloth;

  g_return_val_if_fail (cloth != NULL, NULL);
  g_atomic_int_inc (&shared->ref_count);
  return shared;
}

void
sq_cloth_unref (SqCloth *cloth)
{
  g_return_if_fail (cloth != NULL);
  if (!g_atomic_int_dec_and_test (&cloth->ref_count))
    return;
  for (guint i = 0; i < cloth->n_stripes; i++)
    g_clear_pointer (&cloth->stripes[i].unknown, g_ref_string_release);
  g_free (cloth->stripes);
  g_array_unref (cloth->stock);
  g_array_unref (cloth->flaws);
  g_clear_pointer (&cloth->name, g_ref_string_release);
  g_clear_pointer (&cloth->unknown, g_ref_string_release);
  g_clear_pointer (&cloth->unknown_repeat, g_ref_string_release);
  g_free (cloth);
}

const SqStock *
sq_cloth_find_stock (const SqCloth *cloth, SqId id)
{
  for (guint i = 0; i < cloth->stock->len; i++)
    if (sq_cloth_stock (cloth, i)->id == id)
      return sq_cloth_stock (cloth, i);
  return NULL;
}

const SqFlaw *
sq_cloth_find_flaw (const SqCloth *cloth, SqId id)
{
  for (guint i = 0; i < cloth->flaws->len; i++)
    if (sq_cloth_flaw (cloth, i)->id == id)
      return sq_cloth_flaw (cloth, i);
  return NULL;
}

gboolean
sq_cloth_is_striped (const SqCloth *cloth)
{
  return cloth->n_stripes > 0;
}

/* A stretch of one colour across the cloth. */
typedef struct
{
  double width_mm;
  guint32 colour;
} Band;

/* After what distance the stripes recur; stripes that don't, recur beyond all of them. */
static double
period_mm (const SqCloth *cloth)
{
  double from = INFINITY, to = -INFINITY;

  if (cloth->repeat_across_mm > 0)
    return cloth->repeat_across_mm;
  for (guint i = 0; i < cloth->n_stripes; i++)
    {
      from = fmin (from, cloth->stripes[i].at_mm);
      to = fmax (to, cloth->stripes[i].at_mm + fmax (cloth->stripes[i].width_mm, 0));
    }
  return to - from + 1;
}

static double
within_period (double at_mm, double period)
{
  double rest = fmod (at_mm, period);
  return rest < 0 ? rest + period : rest;
}

/* The colour at @at_mm: the last stripe's that covers it, else the ground's. */
static guint32
colour_at (const SqCloth *cloth, double at_mm, double period)
{
  guint32 colour = cloth->given & SQ_GIVEN_CLOTH_COLOUR ? cloth->colour : G_MAXUINT32;

  for (guint i = 0; i < cloth->n_stripes; i++)
    if (within_period (at_mm - cloth->stripes[i].at_mm, period) < cloth->stripes[i].width_mm)
      colour = cloth->stripes[i].colour;
  return colour;
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

/* Where colours may change within one period, increasing. */
static GArray *
borders (const SqCloth *cloth, double period)
{
  GArray *places = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i < cloth->n_stripes; i++)
    {
      const SqStripe *stripe = &cloth->stripes[i];
      double ends[] = { within_period (stripe->at_mm, period),
                        within_period (stripe->at_mm + stripe->width_mm, period) };

      g_array_append_vals (places, ends, 2);
    }
  g_array_sort (places, compare_doubles);
  return places;
}

/* The bands of one period in order, round and round; neighbours differ in colour. */
static GArray *
bands (const SqCloth *cloth)
{
  double period = period_mm (cloth);
  g_autoptr (GArray) places = borders (cloth, period);
  GArray *result = g_array_new (FALSE, FALSE, sizeof (Band));

  for (guint i = 0; i < places->len; i++)
    {
      double from = g_array_index (places, double, i);
      double to = i + 1 < places->len ? g_array_index (places, double, i + 1)
                                      : g_array_index (places, double, 0) + period;
      Band band = { to - from, colour_at (cloth, (from + to) / 2, period) };
      Band *last = result->len > 0 ? &g_array_index (result, Band, result->len - 1) : NULL;

      if (band.width_mm < SAME_BAND_MM)
        continue;
      if (last != NULL && last->colour == band.colour)
        last->width_mm += band.width_mm;
      else
        g_array_append_val (result, band);
    }
  if (result->len > 1)
    {
      Band *first = &g_array_index (result, Band, 0);
      const Band *last = &g_array_index (result, Band, result->len - 1);

      if (first->colour == last->colour)
        {
          first->width_mm += last->width_mm;
          g_array_set_size (result, result->len - 1);
        }
    }
  return result;
}

/* Whether the bands read the same both ways from the middle of band @middle. A line between two
 * bands can't be an axis: their colours differ. */
static gboolean
is_axis (const GArray *round, guint middle)
{
  for (guint k = 1; k <= round->len / 2; k++)
    {
      const Band *before = &g_array_index (round, Band, (middle + round->len - k) % round->len);
      const Band *after = &g_array_index (round, Band, (middle + k) % round->len);

      if (before->colour != after->colour
          || fabs (before->width_mm - after->width_mm) > SAME_BAND_MM)
        return FALSE;
    }
  return TRUE;
}

gboolean
sq_cloth_allows_half_turn (const SqCloth *cloth)
{
  g_autoptr (GArray) round = NULL;

  if (cloth->one_way || cloth->repeat_along_mm > 0 || cloth->n_stripes > MOST_BANDS)
    return FALSE;
  if (cloth->n_stripes == 0)
    return !(cloth->repeat_across_mm > 0);
  round = bands (cloth);
  if (round->len == 0)
    return TRUE;
  for (guint i = 0; i < round->len; i++)
    if (is_axis (round, i))
      return TRUE;
  return FALSE;
}

/* Between any two borders of the pattern or of its mirror image the colours are the same. */
gboolean
sq_cloth_is_mirrored_about (const SqCloth *cloth, double at_mm)
{
  double period = period_mm (cloth);
  g_autoptr (GArray) places = borders (cloth, period);
  guint n = places->len;

  for (guint i = 0; i < n; i++)
    {
      double image = within_period (2 * at_mm - g_array_index (places, double, i), period);
      g_array_append_val (places, image);
    }
  g_array_sort (places, compare_doubles);
  for (guint i = 0; i < places->len; i++)
    {
      double from = g_array_index (places, double, i);
      double to = i + 1 < places->len ? g_array_index (places, double, i + 1)
                                      : g_array_index (places, double, 0) + period;
      double middle = (from + to) / 2;
      if (to - from > SAME_BAND_MM
          && colour_at (cloth, middle, period) != colour_at (cloth, 2 * at_mm - middle, period))
        return FALSE;
    }
  return TRUE;
}

gboolean
sq_cloth_has_phase (const SqCloth *cloth, gboolean *across, gboolean *along)
{
  *across = cloth->repeat_across_mm > 0 || cloth->n_stripes > 0;
  *along = cloth->repeat_along_mm > 0;
  return *across || *along;
}
