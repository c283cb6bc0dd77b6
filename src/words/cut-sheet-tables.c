/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/cut-sheet-tables.h"

#include "base/units.h"
#include "plan/materials.h"
#include "words/cuts-words.h"
#include "words/lay-words.h"
#include "words/leftovers.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/piece-names.h"
#include "words/ply-words.h"
#include "words/strip-words.h"
#include "words/text-table.h"

#include <glib/gi18n.h>
#include <string.h>

void
sq_sheet_table_begin (SqSheetTable *table, const char *heading, const char *aligns,
                      const char *const *heads)
{
  table->heading = heading;
  table->aligns = aligns;
  table->heads = heads != NULL ? g_strdupv ((char **) heads) : NULL;
  table->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
}

void
sq_sheet_table_clear (SqSheetTable *table)
{
  g_clear_pointer (&table->heads, g_strfreev);
  g_clear_pointer (&table->rows, g_ptr_array_unref);
}

void
sq_sheet_table_add (SqSheetTable *table, char *const *cells)
{
  guint n = (guint) strlen (table->aligns);
  char **row = g_new0 (char *, n + 1);

  for (guint i = 0; i < n; i++)
    row[i] = cells[i];
  g_ptr_array_add (table->rows, row);
}

static char *
count_text (guint count)
{
  return g_strdup_printf ("%u", count);
}

char *
sq_sheet_cushion_name (const SqPlan *plan, guint i)
{
  return plan->covers->len > 1 ? sq_words_cover (plan->job, sq_plan_cover (plan, i))
                               : g_strdup ("");
}

/* How large the finished cushion is, its front along its width. */
static char *
finished_size (const SqCover *cover, const SqLengthStyle *style)
{
  g_autofree char *thickness = sq_words_length (cover->thickness_mm, style);

  if (cover->finished == NULL)
    return g_strdup_printf (_ ("%s thick"), thickness);

  SqBox box = cover->finished->extent;
  g_autofree char *width = sq_words_figure (box.max.x - box.min.x, style);
  g_autofree char *depth = sq_words_figure (box.max.y - box.min.y, style);
  /* TRANSLATORS: width, depth and, with its unit, thickness. */
  return g_strdup_printf (_ ("%s × %s × %s"), width, depth, thickness);
}

void
sq_sheet_add_cushions (SqSheetTable *table, const SqPlan *plan, const SqLengthStyle *style)
{
  sq_sheet_table_begin (table, _ ("CUSHIONS"), "lrll", NULL);
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      char *cells[] = {
        sq_words_cover (plan->job, cover),
        /* TRANSLATORS: how many of a cushion are made. */
        g_strdup_printf (_ ("%u ×"), cover->cushion->count),
        g_strdup (sq_words_build (cover->build)),
        finished_size (cover, style),
      };
      sq_sheet_table_add (table, cells);
    }
}

/* --- zips ---------------------------------------------------------------------------------- */

/* How far the zip in the boxing goes on round the corners at the ends of its edge. */
static void
zip_returns (const SqCover *cover, double *at_start_mm, double *at_end_mm)
{
  *at_start_mm = fmax (-cover->zip.from_mm, 0);
  *at_end_mm = 0;
  for (guint i = 0; i < cover->finished->rings[0].n_edges; i++)
    {
      const SqFinishedEdge *edge = &cover->finished->rings[0].edges[i];
      if (edge->id == cover->zip.edge)
        *at_end_mm = fmax (cover->zip.to_mm - (edge->end_mm - edge->start_mm), 0);
    }
}

static char *
zip_in_boxing_text (const SqCover *cover, const char *edge, const SqLengthStyle *style)
{
  double at_start_mm, at_end_mm;
  zip_returns (cover, &at_start_mm, &at_end_mm);
  gboolean start = at_start_mm > SQ_TIE_MM, end = at_end_mm > SQ_TIE_MM;
  g_autofree char *length = sq_words_length (fmax (at_start_mm, at_end_mm), style);

  if (start && end)
    return g_strdup_printf (_ ("in the boxing along %s and %s round both corners"), edge, length);
  if (start || end)
    return g_strdup_printf (_ ("in the boxing along %s and %s round one corner"), edge, length);
  return g_strdup_printf (_ ("in the boxing along %s"), edge);
}

static char *
zip_place_text (const SqCover *cover, const SqLengthStyle *style)
{
  g_autofree char *edge = sq_words_edge (cover, cover->zip.edge);
  g_autofree char *at = sq_words_length (cover->zip.at_mm, style);

  switch (cover->zip.place)
    {
    case SQ_ZIP_BOXING:
      return zip_in_boxing_text (cover, edge, style);
    case SQ_ZIP_UNDERSIDE:
      return g_strdup_printf (_ ("across the underside, %s from %s"), at, edge);
    case SQ_ZIP_BACK_SEAM:
      return g_strdup_printf (_ ("in the seam along %s"), edge);
    case SQ_ZIP_SIDE_SEAM:
      return g_strdup_printf (_ ("in the side seam along %s"), edge);
    case SQ_ZIP_TUBE:
      return g_strdup (_ ("along the tube"));
    case SQ_ZIP_NONE:
      break;
    }
  return g_strdup ("");
}

void
sq_sheet_add_zips (SqSheetTable *table, const SqPlan *plan, const SqLengthStyle *style)
{
  const char *const heads[] = {
    plan->covers->len > 1 ? _ ("Cushion") : "",
    _ ("Count"),
    _ ("Cut to"),
    _ ("Opening"),
    _ ("Sliders"),
    _ ("Place"),
    NULL,
  };

  sq_sheet_table_begin (table, _ ("ZIP"), "lrrrrl", heads);
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      if (cover->zip.place == SQ_ZIP_NONE)
        continue;
      char *cells[] = {
        sq_sheet_cushion_name (plan, i),
        count_text (cover->cushion->count),
        sq_words_figure (cover->zip.length_mm, style),
        sq_words_figure (cover->zip.run_mm, style),
        count_text (cover->zip.sliders),
        zip_place_text (cover, style),
      };
      sq_sheet_table_add (table, cells);
    }
}

/* --- foam ---------------------------------------------------------------------------------- */

/* The box round @part with the seat's front along its lower side. */
static SqBox
foam_extent (const SqFoamPart *part, const SqFinished *finished)
{
  double turn_rad = finished != NULL ? -atan2 (finished->front_dir.y, finished->front_dir.x) : 0;
  g_autoptr (SqPath) turned = sq_path_moved (g_ptr_array_index (part->rings, 0), turn_rad,
                                             sq_point (0, 0));

  return sq_path_box (turned);
}

static void
add_foam_part (SqSheetTable *table, const SqPlan *plan, guint cushion, const SqFoamPart *part,
               const SqLengthStyle *style)
{
  const SqCover *cover = sq_plan_cover (plan, cushion);
  SqBox box = foam_extent (part, cover->finished);
  char *cells[] = {
    sq_sheet_cushion_name (plan, cushion),
    g_strdup (sq_words_foam_kind (part->kind)),
    count_text (part->count * cover->cushion->count),
    sq_words_figure (box.max.x - box.min.x, style),
    sq_words_figure (box.max.y - box.min.y, style),
    sq_words_figure (part->thickness_mm, style),
    sq_words_volume (part->volume_mm3, style),
    sq_words_weight (part->weight_g, style),
  };

  sq_sheet_table_add (table, cells);
}

/* Soft filling, made up a little larger than the cover. */
static void
add_insert (SqSheetTable *table, const SqPlan *plan, guint cushion, const SqLengthStyle *style)
{
  const SqCover *cover = sq_plan_cover (plan, cushion);
  char *cells[] = {
    sq_sheet_cushion_name (plan, cushion),
    g_strdup (_ ("Soft insert")),
    count_text (cover->cushion->count),
    sq_words_figure (cover->insert.length_mm, style),
    sq_words_figure (cover->insert.depth_mm, style),
    sq_words_figure (cover->insert.thickness_mm, style),
    g_strdup (""),
    g_strdup (""),
  };

  sq_sheet_table_add (table, cells);
}

void
sq_sheet_add_foam (SqSheetTable *table, const SqPlan *plan, const SqLengthStyle *style)
{
  const char *const heads[] = {
    plan->covers->len > 1 ? _ ("Cushion") : "",
    _ ("Material"),
    _ ("Count"),
    _ ("Width"),
    _ ("Depth"),
    _ ("Thickness"),
    _ ("Volume each"),
    _ ("Weight each"),
    NULL,
  };

  sq_sheet_table_begin (table, _ ("FOAM"), "llrrrrrr", heads);
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const GPtrArray *foam = sq_plan_cover (plan, i)->foam;
      if (sq_plan_cover (plan, i)->insert.length_mm > 0)
        add_insert (table, plan, i, style);
      for (guint k = 0; k < foam->len; k++)
        add_foam_part (table, plan, i, g_ptr_array_index (foam, k), style);
    }
}

/* "2"; "0 and 3 parts that go on no sheet" */
static char *
sheets_text (const SqFoamLay *foam)
{
  if (foam->unlaid == 0)
    return count_text (foam->sheets);
  return g_strdup_printf (ngettext ("%u, and %u part larger than a sheet: glue it up",
                                    "%u, and %u parts larger than a sheet: glue them up",
                                    foam->unlaid),
                          foam->sheets, foam->unlaid);
}

void
sq_sheet_add_foam_sheets (SqSheetTable *table, const SqLays *lays, const SqLengthStyle *style)
{
  const char *const heads[] = {
    _ ("Material"), _ ("Thickness"), _ ("Size"), _ ("Waste"), _ ("Sheets"), NULL,
  };

  sq_sheet_table_begin (table, _ ("FOAM SHEETS"), "lrrrl", heads);
  for (guint i = 0; lays != NULL && i < lays->foams->len; i++)
    {
      const SqFoamLay *foam = sq_foam_lay (lays->foams, i);
      g_autofree char *length = sq_words_figure (foam->length_mm, style);
      g_autofree char *width = sq_words_figure (foam->width_mm, style);
      g_autofree char *waste = sq_words_number (100 * foam->waste, 0, style);
      char *cells[] = {
        g_strdup (sq_words_foam_kind (foam->kind)),
        sq_words_figure (foam->thickness_mm, style),
        g_strdup_printf (_ ("%s × %s"), length, width),
        foam->sheets > 0 ? g_strdup_printf (_ ("%s %%"), waste) : g_strdup (""),
        sheets_text (foam),
      };
      sq_sheet_table_add (table, cells);
    }
}

/* --- totals -------------------------------------------------------------------------------- */

/* Takes @value and @how; NULL: it says itself how it is reckoned. */
static void
add_total (SqSheetTable *table, const char *label, char *value, char *how)
{
  char *cells[] = { g_strdup (label), value, how != NULL ? how : g_strdup ("") };

  sq_sheet_table_add (table, cells);
}

/* How the cloth is cut, where there is a choice, and what is left of it. */
static void
add_cut_and_left (SqSheetTable *table, const SqLays *lays, const SqClothLay *cloth,
                  const SqLengthStyle *style)
{
  g_autofree char *straight = sq_words_straight_cuts (lays, cloth, style);
  g_autoptr (GArray) leftovers = sq_lays_leftovers (cloth);

  if (straight[0] != '\0')
    add_total (table, _ ("… cut"), g_strdup (cloth->task->straight ? _ ("straight") : _ ("freely")),
               g_steal_pointer (&straight));
  if (leftovers->len > 0)
    add_total (table, _ ("… left over"),
               g_strdup_printf (ngettext ("%u rectangle", "%u rectangles", leftovers->len),
                                leftovers->len),
               sq_words_leftovers (leftovers, style));
}

static void
add_cloths (SqSheetTable *table, const SqLays *lays, const SqLengthStyle *style)
{
  for (guint i = 0; i < lays->cloths->len; i++)
    {
      const SqClothLay *own = sq_lays_cloth (lays, i);
      const SqCloth *cloth = sq_plan_cloth (lays->plan, own->cloth);
      g_autofree char *name = sq_words_cloth (cloth);
      add_total (table, name, sq_words_purchase (&own->purchase, style),
                 sq_words_reckoned (lays, own, style));
      if (own->plies != NULL)
        add_total (table, _ ("… as a lot"), sq_words_plies (own->plies, style),
                   sq_words_plies_reckoned (own->plies, style));
      add_cut_and_left (table, lays, own, style);
    }
}

static void
add_sewing (SqSheetTable *table, const SqPlan *plan, const SqLengthStyle *style)
{
  SqMaterials materials = sq_plan_materials (plan);
  g_autofree char *waste = sq_words_number (100 * SQ_THREAD_WASTE, 0, style);

  add_total (table, _ ("Seams"), sq_words_long_length (materials.sewn_mm, style),
             g_strdup (_ ("each sewn once, along a zip twice")));
  if (materials.sewn_mm <= 0)
    return;
  add_total (
      table, _ ("Thread"), sq_words_long_length (materials.thread_mm, style),
      g_strdup_printf (_ ("an estimate: lockstitch, needle and bobbin, %s %% for ends"), waste));
  if (materials.tape_mm > 0)
    add_total (table, _ ("Basting tape"), sq_words_long_length (materials.tape_mm, style),
               g_strdup (_ ("both sides of zips, corner seams, once round each perimeter seam")));
  if (materials.cord_mm > 0)
    add_total (table, _ ("Cord"), sq_words_long_length (materials.cord_mm, style),
               g_strdup (_ ("once along each welted seam; leave the ends long")));
}

void
sq_sheet_add_totals (SqSheetTable *table, const SqPlan *plan, const SqLays *lays,
                     const SqLengthStyle *style)
{
  SqFigures figures = sq_plan_figures (plan);
  g_autofree char *volume = sq_words_volume (figures.foam_mm3, style);
  g_autofree char *weight = sq_words_weight (figures.foam_g, style);
  g_autofree char *zip = sq_words_long_length (figures.zip_mm, style);

  sq_sheet_table_begin (table, _ ("TOTALS"), "lll", NULL);
  add_total (table, _ ("Cushions"), count_text (figures.cushions), NULL);
  add_total (table, _ ("Pieces"), count_text (figures.pieces), NULL);
  if (lays != NULL)
    add_cloths (table, lays, style);
  add_total (table, _ ("Cloth, cut"), sq_words_area (figures.cloth_mm2, style),
             g_strdup (_ ("the pieces alone")));
  if (figures.foam_parts > 0)
    add_total (table, _ ("Foam"), g_strdup_printf (_ ("%s, %s"), volume, weight),
               g_strdup (_ ("as cut, with its oversize")));
  if (figures.sliders > 0)
    add_total (table, _ ("Zip"),
               g_strdup_printf (ngettext ("%s, %u slider", "%s, %u sliders", figures.sliders), zip,
                                figures.sliders),
               g_strdup (_ ("openings, with what stands out at both ends")));
  add_sewing (table, plan, style);
}
