/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/cut-list.h"

#include "base/units.h"
#include "words/cautions.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/piece-names.h"
#include "words/piece-remarks.h"
#include "words/problems.h"
#include "words/text-table.h"

#include <glib/gi18n.h>

#define INDENT 2
#define MOST 98 /* columns */

/* What every part of the list is made from. */
typedef struct
{
  const SqPlan *plan;
  const SqJob *job;
  const SqLengthStyle *style;
  GString *out;
} List;

static void
add_heading (const List *list, const char *text)
{
  g_string_append_printf (list->out, "\n%s\n", text);
}

static void
add_underlined (const List *list, const char *text)
{
  g_string_append_printf (list->out, "%s\n", text);
  for (guint i = MIN (sq_text_width (text), MOST); i > 0; i--)
    g_string_append (list->out, "=");
  g_string_append_c (list->out, '\n');
}

static char *
count_text (guint count)
{
  return g_strdup_printf ("%u", count);
}

static char *
cushion_name (const List *list, guint i)
{
  return sq_words_cover (list->job, sq_plan_cover (list->plan, i));
}

static void
add_title (const List *list)
{
  g_autofree char *title = sq_text_clean (list->job->title != NULL ? list->job->title
                                                                   : _ ("Cushions to cut"));
  g_autofree char *customer = sq_text_clean (list->job->customer != NULL ? list->job->customer
                                                                         : "");

  add_underlined (list, title);
  if (customer[0] != '\0')
    g_string_append_printf (list->out, _ ("For %s\n"), customer);
  g_string_append_printf (list->out,
                          _ ("Lengths in %s. Sizes are of the cut line: width across the cloth, "
                             "length along it.\n"),
                          sq_words_unit (list->style->unit));
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

static void
add_cushions (const List *list)
{
  g_autoptr (SqTextTable) table = sq_text_table_new ("lrll");

  add_heading (list, _ ("CUSHIONS"));
  for (guint i = 0; i < list->plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (list->plan, i);
      char *cells[] = {
        cushion_name (list, i),
        /* TRANSLATORS: how many of a cushion are made. */
        g_strdup_printf (_ ("%u ×"), cover->cushion->count),
        g_strdup (sq_words_build (cover->build)),
        finished_size (cover, list->style),
      };
      sq_text_table_add_row (table, cells);
    }
  sq_text_table_append (table, list->out, INDENT, MOST);
}

static void
add_problems_of (const List *list, SqSeverity severity, SqTextTable *table)
{
  for (guint i = 0; i < list->plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (list->plan, i);
      for (guint k = 0; k < cover->problems->len; k++)
        {
          const SqProblem *problem = sq_cover_problem (cover, k);
          if (problem->severity != severity)
            continue;
          char *cells[] = {
            g_strdup (sq_words_severity (severity)),
            list->plan->covers->len > 1 ? cushion_name (list, i) : g_strdup (""),
            sq_words_problem (problem, cover, list->style),
          };
          sq_text_table_add_row (table, cells);
        }
    }
}

static void
add_problems (const List *list)
{
  SqFigures figures = sq_plan_figures (list->plan);
  g_autoptr (SqTextTable) table = sq_text_table_new ("lll");

  if (figures.notes + figures.warnings + figures.faults == 0)
    return;
  add_heading (list, _ ("BEFORE YOU CUT"));
  add_problems_of (list, SQ_FAULT, table);
  add_problems_of (list, SQ_WARNING, table);
  add_problems_of (list, SQ_NOTE, table);
  sq_text_table_append (table, list->out, INDENT, MOST);
}

/* Of what kind @cloth is and what of it matters in cutting; keys that were not given as the job's
 * defaults have them. */
static char *
cloth_text (const List *list, const SqCloth *cloth)
{
  const SqDefaults *house = &list->job->defaults;
  GString *text = g_string_new (NULL);
  SqClothClass kind = cloth->given & SQ_GIVEN_CLOTH_CLASS ? cloth->kind : house->cloth_class;
  g_autofree char *width = sq_words_length (
      cloth->given & SQ_GIVEN_CLOTH_WIDTH ? cloth->width_mm : house->cloth_width_mm, list->style);

  sq_text_add_to_list (text, g_strdup (sq_words_cloth_class (kind)));
  sq_text_add_to_list (text, g_strdup_printf (_ ("%s usable width"), width));
  if (sq_cloth_is_striped (cloth))
    sq_text_add_to_list (text, g_strdup (_ ("striped")));
  if (cloth->one_way)
    sq_text_add_to_list (text, g_strdup (_ ("one way up")));
  return g_string_free (text, FALSE);
}

static void
add_cloth_heading (const List *list, const SqClothTotal *total)
{
  const SqCloth *cloth = sq_plan_cloth (list->plan, total->cloth);
  g_autofree char *area = sq_words_area (total->area_mm2, list->style);
  g_autofree char *sum = g_strdup_printf (ngettext ("%u piece, %s", "%u pieces, %s", total->pieces),
                                          total->pieces, area);

  if (cloth == NULL)
    {
      g_string_append_printf (list->out, _ ("\nCLOTH  %s\n"), sum);
      return;
    }
  g_autofree char *name = sq_words_cloth (cloth);
  g_autofree char *text = cloth_text (list, cloth);
  g_string_append_printf (list->out, _ ("\nCLOTH  %s: %s\n"), name, sum);
  g_string_append_printf (list->out, "%*s%s\n", INDENT, "", text);
}

static void
add_entry (const List *list, SqTextTable *table, const SqCutEntry *entry)
{
  const SqCover *cover = sq_plan_cover (list->plan, entry->cushion);
  const SqPiece *piece = sq_cover_piece (cover, entry->piece);
  g_autoptr (GPtrArray) remarks = sq_words_piece_remarks (cover, entry->piece, list->style);
  char *cells[] = {
    count_text (entry->number),
    list->plan->covers->len > 1 ? cushion_name (list, entry->cushion) : g_strdup (""),
    sq_words_piece_on_plan (cover, entry->piece),
    count_text (entry->count),
    sq_words_figure (piece->width_mm, list->style),
    sq_words_figure (piece->height_mm, list->style),
  };

  sq_text_table_add_row (table, cells);
  for (guint i = 0; i < remarks->len; i++)
    sq_text_table_add_remark (table, 2, g_strdup (g_ptr_array_index (remarks, i)));
}

static void
add_cloth (const List *list, const SqClothTotal *total)
{
  g_autoptr (SqTextTable) table = sq_text_table_new ("rllrrr");
  char *heads[] = {
    g_strdup (_ ("No")),    g_strdup (list->plan->covers->len > 1 ? _ ("Cushion") : ""),
    g_strdup (_ ("Piece")), g_strdup (_ ("Count")),
    g_strdup (_ ("Width")), g_strdup (_ ("Length")),
  };

  add_cloth_heading (list, total);
  sq_text_table_add_row (table, heads);
  for (guint i = 0; i < list->plan->cut_list->len; i++)
    {
      const SqCutEntry *entry = &g_array_index (list->plan->cut_list, SqCutEntry, i);
      if (entry->cloth == total->cloth)
        add_entry (list, table, entry);
    }
  sq_text_table_append (table, list->out, INDENT, MOST);
}

static void
add_cloths (const List *list)
{
  for (guint i = 0; i < list->plan->cloths->len; i++)
    add_cloth (list, &g_array_index (list->plan->cloths, SqClothTotal, i));
}

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
    case SQ_ZIP_NONE:
      break;
    }
  return g_strdup ("");
}

static void
add_zips (const List *list)
{
  g_autoptr (SqTextTable) table = sq_text_table_new ("lrrrrl");
  char *heads[] = {
    g_strdup (list->plan->covers->len > 1 ? _ ("Cushion") : ""),
    g_strdup (_ ("Count")),
    g_strdup (_ ("Cut to")),
    g_strdup (_ ("Opening")),
    g_strdup (_ ("Sliders")),
    g_strdup (_ ("Place")),
  };
  gboolean any = FALSE;

  sq_text_table_add_row (table, heads);
  for (guint i = 0; i < list->plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (list->plan, i);
      if (cover->zip.place == SQ_ZIP_NONE)
        continue;
      any = TRUE;
      char *cells[] = {
        list->plan->covers->len > 1 ? cushion_name (list, i) : g_strdup (""),
        count_text (cover->cushion->count),
        sq_words_figure (cover->zip.length_mm, list->style),
        sq_words_figure (cover->zip.run_mm, list->style),
        count_text (cover->zip.sliders),
        zip_place_text (cover, list->style),
      };
      sq_text_table_add_row (table, cells);
    }
  if (!any)
    return;
  add_heading (list, _ ("ZIP"));
  sq_text_table_append (table, list->out, INDENT, MOST);
}

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
add_foam_part (const List *list, SqTextTable *table, guint cushion, const SqFoamPart *part)
{
  const SqCover *cover = sq_plan_cover (list->plan, cushion);
  SqBox box = foam_extent (part, cover->finished);
  char *cells[] = {
    list->plan->covers->len > 1 ? cushion_name (list, cushion) : g_strdup (""),
    g_strdup (sq_words_foam_kind (part->kind)),
    count_text (part->count * cover->cushion->count),
    sq_words_figure (box.max.x - box.min.x, list->style),
    sq_words_figure (box.max.y - box.min.y, list->style),
    sq_words_figure (part->thickness_mm, list->style),
    sq_words_volume (part->volume_mm3, list->style),
    sq_words_weight (part->weight_g, list->style),
  };

  sq_text_table_add_row (table, cells);
}

static void
add_foam (const List *list)
{
  g_autoptr (SqTextTable) table = sq_text_table_new ("llrrrrrr");
  char *heads[] = {
    g_strdup (list->plan->covers->len > 1 ? _ ("Cushion") : ""),
    g_strdup (_ ("Material")),
    g_strdup (_ ("Count")),
    g_strdup (_ ("Width")),
    g_strdup (_ ("Depth")),
    g_strdup (_ ("Thickness")),
    g_strdup (_ ("Volume")),
    g_strdup (_ ("Weight")),
  };
  gboolean any = FALSE;

  sq_text_table_add_row (table, heads);
  for (guint i = 0; i < list->plan->covers->len; i++)
    {
      const GPtrArray *foam = sq_plan_cover (list->plan, i)->foam;
      any |= foam->len > 0;
      for (guint k = 0; k < foam->len; k++)
        add_foam_part (list, table, i, g_ptr_array_index (foam, k));
    }
  if (!any)
    return;
  add_heading (list, _ ("FOAM  Volume and weight are of one."));
  sq_text_table_append (table, list->out, INDENT, MOST);
}

/* Takes @value. */
static void
add_total (SqTextTable *table, const char *label, char *value)
{
  char *cells[] = { g_strdup (label), value };

  sq_text_table_add_row (table, cells);
}

static void
add_totals (const List *list)
{
  SqFigures figures = sq_plan_figures (list->plan);
  g_autoptr (SqTextTable) table = sq_text_table_new ("ll");
  g_autofree char *volume = sq_words_volume (figures.foam_mm3, list->style);
  g_autofree char *weight = sq_words_weight (figures.foam_g, list->style);
  g_autofree char *zip = sq_words_long_length (figures.zip_mm, list->style);

  add_heading (list, _ ("TOTALS"));
  add_total (table, _ ("Cushions"), count_text (figures.cushions));
  add_total (table, _ ("Pieces"), count_text (figures.pieces));
  add_total (table, _ ("Cloth, cut"), sq_words_area (figures.cloth_mm2, list->style));
  if (figures.foam_parts > 0)
    add_total (table, _ ("Foam"), g_strdup_printf (_ ("%s, %s"), volume, weight));
  if (figures.sliders > 0)
    add_total (table, _ ("Zip"),
               g_strdup_printf (ngettext ("%s, %u slider", "%s, %u sliders", figures.sliders), zip,
                                figures.sliders));
  add_total (table, _ ("Seams"), sq_words_long_length (figures.seam_mm, list->style));
  sq_text_table_append (table, list->out, INDENT, MOST);
}

static void
add_cautions (const List *list)
{
  g_autoptr (GPtrArray) cautions = sq_words_cautions (list->plan);

  add_heading (list, _ ("AT WORK"));
  for (guint i = 0; i < cautions->len; i++)
    {
      g_string_append (list->out, "  - ");
      sq_text_append_wrapped (list->out, g_ptr_array_index (cautions, i), INDENT + 2, MOST);
    }
}

char *
sq_words_cut_list (const SqPlan *plan, const SqLengthStyle *style)
{
  List list = { plan, plan->job, style, g_string_new (NULL) };

  add_title (&list);
  add_cushions (&list);
  add_problems (&list);
  add_cloths (&list);
  add_zips (&list);
  add_foam (&list);
  add_totals (&list);
  add_cautions (&list);
  return g_string_free (list.out, FALSE);
}
