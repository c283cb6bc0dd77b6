/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/edits.h"

#include "window/figures.h"
#include "words/fixes.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

typedef struct
{
  guint32 given;
  gsize offset; /* of a double in SqCushion */
  const char *words;
} LengthValue;

static const LengthValue lengths[SQ_N_LENGTH_VALUES] = {
  [SQ_LENGTH_THICKNESS] = { SQ_GIVEN_THICKNESS, G_STRUCT_OFFSET (SqCushion, thickness_mm),
                            N_ ("Change thickness") },
  [SQ_LENGTH_WRAP_DEPTH] = { SQ_GIVEN_WRAP_DEPTH, G_STRUCT_OFFSET (SqCushion, wrap.depth_mm),
                             N_ ("Change wrap depth") },
  [SQ_LENGTH_PERIMETER] = { SQ_GIVEN_ALLOWANCE_PERIMETER,
                            G_STRUCT_OFFSET (SqCushion, allowance.perimeter_mm),
                            N_ ("Change perimeter allowance") },
  [SQ_LENGTH_CORNER] = { SQ_GIVEN_ALLOWANCE_CORNER,
                         G_STRUCT_OFFSET (SqCushion, allowance.corner_mm),
                         N_ ("Change corner allowance") },
  [SQ_LENGTH_ZIP] = { SQ_GIVEN_ALLOWANCE_ZIP, G_STRUCT_OFFSET (SqCushion, allowance.zip_mm),
                      N_ ("Change zip allowance") },
  [SQ_LENGTH_JOIN] = { SQ_GIVEN_ALLOWANCE_JOIN, G_STRUCT_OFFSET (SqCushion, allowance.join_mm),
                       N_ ("Change join allowance") },
};

static const struct
{
  guint32 given;
  const char *words;
} choices[SQ_N_CHOICE_VALUES] = {
  [SQ_CHOICE_BUILD] = { SQ_GIVEN_BUILD, N_ ("Change way of building") },
  [SQ_CHOICE_WRAP_STYLE] = { SQ_GIVEN_WRAP_STYLE, N_ ("Change wrap") },
  [SQ_CHOICE_ZIP_PLACE] = { SQ_GIVEN_ZIP_PLACE, N_ ("Move zip") },
  [SQ_CHOICE_ZIP_EDGE] = { SQ_GIVEN_ZIP_EDGE, N_ ("Move zip") },
  [SQ_CHOICE_FOAM] = { SQ_GIVEN_FOAM_KIND, N_ ("Change foam") },
  [SQ_CHOICE_STRIPES_RUN] = { SQ_GIVEN_STRIPES_RUN, N_ ("Turn stripes") },
};

/* What tells the zip's line: all of it is left to the rules when its edge or place is chosen anew. */
#define GIVEN_ZIP_LINE (SQ_GIVEN_ZIP_EDGE | SQ_GIVEN_ZIP_FROM | SQ_GIVEN_ZIP_TO | SQ_GIVEN_ZIP_AT)

gboolean
sq_edit_length_is_given (const SqCushion *cushion, SqLengthValue value)
{
  return (cushion->given & lengths[value].given) != 0;
}

gboolean
sq_edit_choice_is_given (const SqCushion *cushion, SqChoiceValue value)
{
  return (cushion->given & choices[value].given) != 0;
}

static void
push_cushion (SqDocument *document, const SqCushion *changed, const char *words)
{
  g_autoptr (SqJob) job = sq_job_with_cushion (sq_document_get_job (document), changed);
  sq_document_edit (document, job, words, NULL);
}

void
sq_edit_length (SqDocument *document, SqId cushion, SqLengthValue value, const double *mm)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  g_autoptr (SqCushion) changed = NULL;
  double *field;
  g_return_if_fail (now != NULL && (guint) value < SQ_N_LENGTH_VALUES);
  changed = sq_cushion_dup (now);
  field = (double *) (gpointer) ((char *) changed + lengths[value].offset);
  *field = mm != NULL ? *mm : 0;
  changed->given &= ~lengths[value].given;
  if (mm != NULL)
    changed->given |= lengths[value].given;
  push_cushion (document, changed, _ (lengths[value].words));
}

static void
set_choice (SqCushion *cushion, SqChoiceValue value, guint32 choice)
{
  switch (value)
    {
    case SQ_CHOICE_BUILD:
      cushion->build = (SqBuild) choice;
      break;
    case SQ_CHOICE_WRAP_STYLE:
      cushion->wrap.style = (SqWrapStyle) choice;
      break;
    case SQ_CHOICE_ZIP_PLACE:
      cushion->zip.place = (SqZipPlace) choice;
      cushion->given &= ~(guint32) GIVEN_ZIP_LINE;
      break;
    case SQ_CHOICE_ZIP_EDGE:
      cushion->zip.edge = choice;
      cushion->given &= ~(guint32) GIVEN_ZIP_LINE;
      break;
    case SQ_CHOICE_FOAM:
      cushion->foam.kind = (SqFoamKind) choice;
      break;
    case SQ_CHOICE_STRIPES_RUN:
      cushion->stripes.run = (SqStripesRun) choice;
      break;
    }
}

void
sq_edit_choice (SqDocument *document, SqId cushion, SqChoiceValue value, const guint32 *choice)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  g_autoptr (SqCushion) changed = NULL;
  g_return_if_fail (now != NULL && (guint) value < SQ_N_CHOICE_VALUES);
  changed = sq_cushion_dup (now);
  set_choice (changed, value, choice != NULL ? *choice : 0);
  changed->given &= ~choices[value].given;
  if (choice != NULL)
    changed->given |= choices[value].given;
  push_cushion (document, changed, _ (choices[value].words));
}

void
sq_edit_fix (SqDocument *document, SqId cushion, const SqFix *fix)
{
  const SqJob *job = sq_document_get_job (document);
  const SqCushion *now = sq_job_cushion (job, cushion);
  g_autoptr (SqCushion) changed = now != NULL ? sq_fix_apply (fix, now) : NULL;
  SqLengthStyle style = sq_figures_style (job);
  g_autofree char *words = NULL;
  if (changed == NULL)
    return;
  words = sq_words_fix (fix, now, &style);
  push_cushion (document, changed, words);
}

SqJob *
sq_edit_moved (const SqJob *job, SqId cushion, SqId corner, gboolean is_edge, SqVector by)
{
  const SqCushion *now = sq_job_cushion (job, cushion);
  g_autoptr (SqOutline) outline = NULL;
  g_autoptr (SqCushion) changed = NULL;
  if (now == NULL || sq_outline_corner (now->outline, corner, NULL, NULL) == NULL)
    return NULL;
  outline = is_edge ? sq_outline_with_edge_moved (now->outline, corner, by)
                    : sq_outline_with_corner_moved (now->outline, corner, by);
  changed = sq_cushion_with_outline (now, outline);
  return sq_job_with_cushion (job, changed);
}

char *
sq_edit_moved_words (const SqCushion *cushion, SqId corner, gboolean is_edge)
{
  g_autofree char *name = is_edge ? sq_words_edge_corners (cushion, corner)
                                  : sq_words_corner (cushion, corner);
  /* Translators: %s is a corner's letter, or an edge's two: "Move edge A–B". */
  return g_strdup_printf (is_edge ? _ ("Move edge %s") : _ ("Move corner %s"), name);
}
