/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/ways.h"

#include "base/units.h"

#include "words/lay-words.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/problems.h"
#include "words/text-table.h"
#include "words/wide.h"

#include <glib/gi18n.h>

#define MINUTES_PER_HOUR 60
#define INDENT 2
#define MOST 98 /* columns */
#define N_COLUMNS 8
#define WAY_COLUMN 1

const char *
sq_words_way (const SqWay *way)
{
  if (way->mixed)
    return _ ("Folded and boxed");
  if (way->build == SQ_BUILD_BOXED && way->welt)
    return _ ("Boxed with a welt");
  return sq_words_build (way->build);
}

char *
sq_words_way_why (const SqWay *way, const SqLengthStyle *style)
{
  return way->possible ? g_strdup ("") : sq_words_problem (&way->why, way->where, style);
}

char *
sq_words_minutes (double minutes)
{
  gint64 whole = (gint64) (minutes + 0.5);

  if (whole < MINUTES_PER_HOUR)
    return g_strdup_printf (_ ("%d min"), (int) whole);
  if (whole % MINUTES_PER_HOUR == 0)
    return g_strdup_printf (_ ("%" G_GINT64_FORMAT " h"), whole / MINUTES_PER_HOUR);
  /* TRANSLATORS: hours and minutes. */
  return g_strdup_printf (_ ("%d h %d min"), (int) (whole / MINUTES_PER_HOUR),
                          (int) (whole % MINUTES_PER_HOUR));
}

char *
sq_words_money (double money, const SqLengthStyle *style)
{
  return sq_words_number (money, 2, style);
}

/* What comes to a cost that is not all known. */
static const char *
lacking (guint lacks)
{
  if (lacks == (SQ_COST_CLOTH | SQ_COST_FOAM))
    return _ ("+ cloth + foam");
  if (lacks == SQ_COST_CLOTH)
    return _ ("+ cloth");
  return lacks == SQ_COST_FOAM ? _ ("+ foam") : "";
}

char *
sq_words_way_cost (const SqWay *way, const char *between, const SqLengthStyle *style)
{
  guint lacks;
  double cost = sq_way_cost (way, &lacks);
  g_autofree char *money = sq_words_money (cost, style);

  return lacks != 0 ? g_strconcat (money, between, lacking (lacks), NULL)
                    : g_steal_pointer (&money);
}

static char *
cloth_amount (const SqWayCloth *cloth, const SqLengthStyle *style)
{
  if (cloth->unlaid > 0)
    return g_strdup (_ ("finds no place"));
  return isnan (cloth->buy_mm) ? sq_words_area (cloth->area_mm2, style)
                               : sq_words_sold_length (cloth->buy_mm, style);
}

char *
sq_words_way_foam (const SqWay *way, const SqLengthStyle *style)
{
  return way->foam_mm3 > 0 ? sq_words_volume (way->foam_mm3, style) : g_strdup (_ ("none"));
}

char *
sq_words_way_cloth (const SqWay *way, const char *between, const SqLengthStyle *style)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < way->cloths->len; i++)
    {
      const SqWayCloth *cloth = &g_array_index (way->cloths, SqWayCloth, i);
      g_autofree char *amount = cloth_amount (cloth, style);
      g_autofree char *name = sq_words_cloth (sq_plan_cloth (way->plan, cloth->cloth));
      g_string_append (all, i > 0 ? between : "");
      if (way->cloths->len > 1)
        /* TRANSLATORS: a cloth's name and how much of it. */
        g_string_append_printf (all, _ ("%s %s"), name, amount);
      else
        g_string_append (all, amount);
    }
  return g_string_free (all, FALSE);
}

char *
sq_words_way_summary (const SqWay *way, gboolean is_in_use, const SqLengthStyle *style)
{
  const char *mark = is_in_use ? _ (", as it is built now") : "";

  if (!way->possible)
    {
      g_autofree char *why = sq_words_way_why (way, style);
      /* TRANSLATORS: a way of building; ", as it is built now" or nothing; why it is not possible. */
      return g_strdup_printf (_ ("%s%s: not possible. %s"), sq_words_way (way), mark, why);
    }
  g_autofree char *seam = sq_words_long_length (way->seam_mm, style);
  g_autofree char *cloth = sq_words_way_cloth (way, ", ", style);
  g_autofree char *foam = sq_words_way_foam (way, style);
  g_autofree char *time = sq_words_minutes (way->minutes);
  g_autofree char *cost = sq_words_way_cost (way, " ", style);
  return g_strdup_printf (
      ngettext ("%s%s: %u piece, seams %s, cloth %s, foam %s, time %s, cost %s",
                "%s%s: %u pieces, seams %s, cloth %s, foam %s, time %s, cost %s", way->pieces),
      sq_words_way (way), mark, way->pieces, seam, cloth, foam, time, cost);
}

const char *
sq_words_ways_reckoned (void)
{
  return _ (
      "Cost is cloth as it is bought for this cushion alone, foam, and time at the wage. Zip, "
      "cord, thread and batting come to it.");
}

const char *
sq_words_ways_samples (const SqJob *job)
{
  guint own = 0;

  for (SqRate rate = 0; rate < SQ_N_RATES; rate++)
    own += sq_job_has_rate (job, rate);
  return own == 0           ? _ ("Sample rates: put in your own.")
         : own < SQ_N_RATES ? _ ("Some rates are samples: put in your own.")
                            : "";
}

const char *
sq_words_rate (SqRate rate, SqUnit unit)
{
  static const char *const names[SQ_N_RATES] = {
    [SQ_RATE_WAGE] = N_ ("Wage, an hour"),
    [SQ_RATE_CUT] = N_ ("Marking and cutting, a piece"),
    [SQ_RATE_SEW] = N_ ("Sewing, a metre of seam"),
    [SQ_RATE_CORNER] = N_ ("A corner sewn or turned at"),
    [SQ_RATE_ZIP] = N_ ("Putting in a zip"),
    [SQ_RATE_WELT] = N_ ("Making welt, a metre"),
    [SQ_RATE_FOAM] = N_ ("Cutting foam, a block"),
    [SQ_RATE_HANDLING] = N_ ("All else, a cushion"),
  };

  g_return_val_if_fail (rate < SQ_N_RATES, "");
  if (unit == SQ_UNIT_IN && rate == SQ_RATE_SEW)
    return _ ("Sewing, a yard of seam");
  if (unit == SQ_UNIT_IN && rate == SQ_RATE_WELT)
    return _ ("Making welt, a yard");
  return _ (names[rate]);
}

double
sq_words_rate_share (SqRate rate, SqUnit unit)
{
  gboolean is_by_length = rate == SQ_RATE_SEW || rate == SQ_RATE_WELT;

  return is_by_length && unit == SQ_UNIT_IN ? SQ_MM_PER_YARD / SQ_MM_PER_M : 1;
}

/* ---- as plain text ---------------------------------------------------------------------------- */

static void
add_impossible (SqTextTable *table, const SqWay *way, const char *name, const char *mark,
                const SqLengthStyle *style)
{
  g_autofree char *why = sq_words_way_why (way, style);
  char *cells[N_COLUMNS];

  for (guint i = 0; i < N_COLUMNS; i++)
    cells[i] = g_strdup (i == 0 ? mark : i == WAY_COLUMN ? name : "");
  sq_text_table_add_row (table, cells);
  /* TRANSLATORS: followed by the sentence that says why. */
  sq_text_table_add_remark (table, WAY_COLUMN, g_strdup_printf (_ ("Not possible. %s"), why));
}

static void
add_row (SqTextTable *table, const SqWay *way, const char *name, gboolean is_in_use,
         const SqLengthStyle *style)
{
  const char *mark = is_in_use ? "•" : "";

  if (!way->possible)
    {
      add_impossible (table, way, name, mark, style);
      return;
    }
  gboolean is_one_cloth = way->cloths->len == 1;
  char *cells[N_COLUMNS] = {
    g_strdup (mark),
    g_strdup (name),
    g_strdup_printf ("%u", way->pieces),
    sq_words_long_length (way->seam_mm, style),
    is_one_cloth ? sq_words_way_cloth (way, "", style) : g_strdup (""),
    sq_words_way_foam (way, style),
    sq_words_minutes (way->minutes),
    sq_words_way_cost (way, " ", style),
  };
  sq_text_table_add_row (table, cells);
  if (!is_one_cloth)
    sq_text_table_add_remark (table, WAY_COLUMN, sq_words_way_cloth (way, ", ", style));
}

static void
add_wrapped (GString *out, const char *text)
{
  g_string_append_printf (out, "%*s", INDENT, "");
  sq_text_append_wrapped (out, text, INDENT, MOST);
}

static SqTextTable *
new_table (void)
{
  SqTextTable *table = sq_text_table_new ("llrrrrrr");
  char *heads[N_COLUMNS] = {
    g_strdup (""),          g_strdup (_ ("Way")),  g_strdup (_ ("Pieces")), g_strdup (_ ("Seam")),
    g_strdup (_ ("Cloth")), g_strdup (_ ("Foam")), g_strdup (_ ("Time")),   g_strdup (_ ("Cost")),
  };

  sq_text_table_add_row (table, heads);
  return table;
}

static void
add_cushion (GString *out, const SqJob *job, const SqCushion *cushion, const SqLengthStyle *style)
{
  g_autoptr (SqWays) ways = sq_ways_new (job, cushion, TRUE, NULL);
  g_autoptr (SqTextTable) table = new_table ();
  g_autofree char *name = sq_words_cushion (job, cushion);
  if (cushion->count > 1)
    /* TRANSLATORS: a cushion's name and how many are made of it. */
    g_string_append_printf (out, _ ("\nWAYS OF BUILDING  %s, %u in all\n"), name, cushion->count);
  else
    g_string_append_printf (out, _ ("\nWAYS OF BUILDING  %s\n"), name);
  for (guint i = 0; i < ways->ways->len; i++)
    add_row (table, sq_ways_way (ways, i), sq_words_way (sq_ways_way (ways, i)), i == ways->in_use,
             style);
  sq_text_table_append (table, out, INDENT, MOST);
}

/* The ways out for a face wider than its cloth, if there is one. */
static void
add_wide (GString *out, const SqJob *job, const SqCushion *cushion, const SqLengthStyle *style)
{
  g_autoptr (SqWide) wide = sq_wide_new (job, cushion, TRUE, NULL);
  g_autofree char *name = sq_words_cushion (job, cushion);

  if (wide->ways->len == 0)
    return;
  g_autoptr (SqTextTable) table = new_table ();
  g_string_append_printf (out, _ ("\nWIDER THAN ITS CLOTH  %s\n"), name);
  for (guint i = 0; i < wide->ways->len; i++)
    {
      const SqWideWay *way = sq_wide_way (wide, i);
      g_autofree char *label = sq_words_wide_way (way, style);
      add_row (table, &way->way, label, (gint) i == wide->in_use, style);
    }
  sq_text_table_append (table, out, INDENT, MOST);
}

char *
sq_words_ways (const SqJob *job, const SqLengthStyle *style)
{
  GString *out = g_string_new (NULL);
  const char *samples = sq_words_ways_samples (job);

  for (guint i = 0; i < job->cushions->len; i++)
    {
      add_cushion (out, job, g_ptr_array_index (job->cushions, i), style);
      add_wide (out, job, g_ptr_array_index (job->cushions, i), style);
    }
  g_string_append_c (out, '\n');
  add_wrapped (out, _ ("• as it is built now"));
  add_wrapped (out, sq_words_ways_reckoned ());
  if (samples[0] != '\0')
    add_wrapped (out, samples);
  if (out->str[0] == '\n')
    g_string_erase (out, 0, 1);
  return g_string_free (out, FALSE);
}
