/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/edits.h"

#include "job/frame.h"
#include "window/figures.h"
#include "words/fixes.h"
#include "words/names.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

typedef struct
{
  guint32 given;
  gsize offset; /* of a double in SqCushion */
  const char *words;
  gboolean of_way; /* the bit is of SqWayGiven */
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
  [SQ_LENGTH_ZIP_EXTENSION] = { SQ_GIVEN_ZIP_EXTENSION,
                                G_STRUCT_OFFSET (SqCushion, zip.extension_mm),
                                N_ ("Change zip extension") },
  [SQ_LENGTH_ZIP_TUCK] = { SQ_GIVEN_ZIP_TUCK, G_STRUCT_OFFSET (SqCushion, zip.tuck_mm),
                           N_ ("Change zip tuck") },
  [SQ_LENGTH_STRIPES_SHIFT] = { SQ_GIVEN_STRIPES_SHIFT,
                                G_STRUCT_OFFSET (SqCushion, stripes.shift_mm),
                                N_ ("Shift the stripes") },
  [SQ_LENGTH_FOAM_OVERSIZE] = { SQ_GIVEN_FOAM_OVERSIZE,
                                G_STRUCT_OFFSET (SqCushion, foam.oversize_mm),
                                N_ ("Change foam oversize") },
  [SQ_LENGTH_FOAM_BATTING] = { SQ_GIVEN_FOAM_BATTING, G_STRUCT_OFFSET (SqCushion, foam.batting_mm),
                               N_ ("Change batting") },
  [SQ_LENGTH_PROFILE_RADIUS] = { SQ_GIVEN_PROFILE_RADIUS,
                                 G_STRUCT_OFFSET (SqCushion, profile.radius_mm),
                                 N_ ("Change radius of the front"), TRUE },
  [SQ_LENGTH_SPLIT_UPPER] = { SQ_GIVEN_SPLIT_UPPER, G_STRUCT_OFFSET (SqCushion, split.upper_mm),
                              N_ ("Move the split"), TRUE },
  [SQ_LENGTH_DRAW_IN] = { SQ_GIVEN_DRAW_IN, G_STRUCT_OFFSET (SqCushion, knife_edge.draw_in_mm),
                          N_ ("Change draw-in"), TRUE },
  [SQ_LENGTH_BOLSTER_DIAMETER] = { SQ_GIVEN_BOLSTER_DIAMETER,
                                   G_STRUCT_OFFSET (SqCushion, bolster.diameter_mm),
                                   N_ ("Change diameter"), TRUE },
  [SQ_LENGTH_BOLSTER_LENGTH] = { SQ_GIVEN_BOLSTER_LENGTH,
                                 G_STRUCT_OFFSET (SqCushion, bolster.length_mm),
                                 N_ ("Change length"), TRUE },
  [SQ_LENGTH_BOLSTER_RISE] = { SQ_GIVEN_BOLSTER_RISE, G_STRUCT_OFFSET (SqCushion, bolster.rise_mm),
                               N_ ("Change rise"), TRUE },
  [SQ_LENGTH_WELT_CORD] = { SQ_GIVEN_WELT_CORD, G_STRUCT_OFFSET (SqCushion, welt.cord_mm),
                            N_ ("Change cord"), TRUE },
  [SQ_LENGTH_WELT_OVERLAP] = { SQ_GIVEN_WELT_OVERLAP, G_STRUCT_OFFSET (SqCushion, welt.overlap_mm),
                               N_ ("Change lap of the welt"), TRUE },
};

static const struct
{
  guint32 given;
  const char *words;
  gboolean of_way; /* the bit is of SqWayGiven */
} choices[SQ_N_CHOICE_VALUES] = {
  [SQ_CHOICE_BUILD] = { SQ_GIVEN_BUILD, N_ ("Change way of building") },
  [SQ_CHOICE_WRAP_STYLE] = { SQ_GIVEN_WRAP_STYLE, N_ ("Change wrap") },
  [SQ_CHOICE_ZIP_PLACE] = { SQ_GIVEN_ZIP_PLACE, N_ ("Move zip") },
  [SQ_CHOICE_ZIP_EDGE] = { SQ_GIVEN_ZIP_EDGE, N_ ("Move zip") },
  [SQ_CHOICE_FOAM] = { SQ_GIVEN_FOAM_KIND, N_ ("Change foam") },
  [SQ_CHOICE_STRIPES_RUN] = { SQ_GIVEN_STRIPES_RUN, N_ ("Turn the stripes") },
  [SQ_CHOICE_CENTRE_ON] = { SQ_GIVEN_CENTRE_ON, N_ ("Centre the stripes") },
  [SQ_CHOICE_HAND] = { SQ_GIVEN_HAND, N_ ("Change hand") },
  [SQ_CHOICE_CLOTH_FACE] = { SQ_GIVEN_CLOTH_FACE, N_ ("Change cloth of the face") },
  [SQ_CHOICE_CLOTH_UNDERSIDE] = { SQ_GIVEN_CLOTH_UNDERSIDE, N_ ("Change cloth of the underside") },
  [SQ_CHOICE_CLOTH_SIDES] = { SQ_GIVEN_CLOTH_SIDES, N_ ("Change cloth of the sides") },
  [SQ_CHOICE_CLOTH_WELT] = { SQ_GIVEN_CLOTH_WELT, N_ ("Change cloth of the welt") },
  [SQ_CHOICE_ZIP_METHOD] = { SQ_GIVEN_ZIP_METHOD, N_ ("Put the zip in otherwise") },
  [SQ_CHOICE_REVERSIBLE] = { SQ_GIVEN_REVERSIBLE, N_ ("Make it turn over") },
  [SQ_CHOICE_SEAMS_ACROSS] = { SQ_GIVEN_SEAMS_ACROSS, N_ ("Change joins across") },
  [SQ_CHOICE_PROFILE] = { SQ_GIVEN_PROFILE, N_ ("Change the front"), TRUE },
  [SQ_CHOICE_FILLING] = { SQ_GIVEN_FILLING, N_ ("Change filling"), TRUE },
  [SQ_CHOICE_SECTION] = { SQ_GIVEN_BOLSTER_SECTION, N_ ("Change section"), TRUE },
  [SQ_CHOICE_WELT_AT] = { SQ_GIVEN_WELT_AT, N_ ("Change welt"), TRUE },
  [SQ_CHOICE_WELT_CUT] = { SQ_GIVEN_WELT_CUT, N_ ("Cut the welt otherwise"), TRUE },
};

static gboolean
is_given (const SqCushion *cushion, guint32 given, gboolean of_way)
{
  return ((of_way ? cushion->given_way : cushion->given) & given) != 0;
}

static void
set_given (SqCushion *cushion, guint32 given, gboolean of_way, gboolean is_given_now)
{
  guint32 *bits = of_way ? &cushion->given_way : &cushion->given;

  *bits = is_given_now ? *bits | given : *bits & ~given;
}

/* What tells the zip's line: all of it is left to the rules when its edge or place is chosen anew. */
#define GIVEN_ZIP_LINE (SQ_GIVEN_ZIP_EDGE | SQ_GIVEN_ZIP_FROM | SQ_GIVEN_ZIP_TO | SQ_GIVEN_ZIP_AT)

gboolean
sq_edit_length_is_given (const SqCushion *cushion, SqLengthValue value)
{
  return is_given (cushion, lengths[value].given, lengths[value].of_way);
}

gboolean
sq_edit_choice_is_given (const SqCushion *cushion, SqChoiceValue value)
{
  return is_given (cushion, choices[value].given, choices[value].of_way);
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
  set_given (changed, lengths[value].given, lengths[value].of_way, mm != NULL);
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
    case SQ_CHOICE_CENTRE_ON:
      cushion->stripes.centre_on = (SqCentreOn) choice;
      break;
    case SQ_CHOICE_HAND:
      cushion->hand = (SqHand) choice;
      break;
    case SQ_CHOICE_CLOTH_FACE:
      cushion->cloth.face = choice;
      break;
    case SQ_CHOICE_CLOTH_UNDERSIDE:
      cushion->cloth.underside = choice;
      break;
    case SQ_CHOICE_CLOTH_SIDES:
      cushion->cloth.sides = choice;
      break;
    case SQ_CHOICE_CLOTH_WELT:
      cushion->cloth.welt = choice;
      break;
    case SQ_CHOICE_ZIP_METHOD:
      cushion->zip.method = (SqZipMethod) choice;
      break;
    case SQ_CHOICE_REVERSIBLE:
      cushion->reversible = choice != 0;
      break;
    case SQ_CHOICE_SEAMS_ACROSS:
      cushion->seams_across = (SqSeamsAcross) choice;
      break;
    case SQ_CHOICE_PROFILE:
      cushion->profile.kind = (SqProfile) choice;
      cushion->given_way &= ~(guint32) SQ_GIVEN_PROFILE_RADIUS;
      break;
    case SQ_CHOICE_FILLING:
      cushion->knife_edge.filling = (SqFilling) choice;
      break;
    case SQ_CHOICE_SECTION:
      cushion->bolster.section = (SqBolsterSection) choice;
      break;
    case SQ_CHOICE_WELT_AT:
      cushion->welt.at = (SqWeltAt) choice;
      break;
    case SQ_CHOICE_WELT_CUT:
      cushion->welt.cut = (SqWeltCut) choice;
      break;
    }
}

/* The choice made, or left to the rules (NULL). */
static SqCushion *
with_choice (const SqCushion *cushion, SqChoiceValue value, const guint32 *choice)
{
  SqCushion *changed = sq_cushion_dup (cushion);
  set_choice (changed, value, choice != NULL ? *choice : 0);
  set_given (changed, choices[value].given, choices[value].of_way, choice != NULL);
  return changed;
}

void
sq_edit_choice (SqDocument *document, SqId cushion, SqChoiceValue value, const guint32 *choice)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  g_autoptr (SqCushion) changed = NULL;
  g_return_if_fail (now != NULL && (guint) value < SQ_N_CHOICE_VALUES);
  changed = with_choice (now, value, choice);
  push_cushion (document, changed, _ (choices[value].words));
}

void
sq_edit_name (SqDocument *document, SqId cushion, const char *name)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  g_autoptr (SqCushion) changed = NULL;
  g_autofree char *words = NULL, *called = NULL;
  g_return_if_fail (now != NULL);
  if (g_strcmp0 (now->name, name != NULL ? name : "") == 0)
    return;
  changed = sq_cushion_dup (now);
  g_ref_string_release (changed->name);
  changed->name = g_ref_string_new (name != NULL ? name : "");
  called = sq_words_cushion (sq_document_get_job (document), changed);
  /* Translators: %s is the cushion's new name. */
  words = g_strdup_printf (_ ("Rename to %s"), called);
  push_cushion (document, changed, words);
}

void
sq_edit_count (SqDocument *document, SqId cushion, const guint *count)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  g_autoptr (SqCushion) changed = NULL;
  g_return_if_fail (now != NULL);
  changed = sq_cushion_dup (now);
  changed->count = count != NULL ? *count : 1;
  changed->given &= ~(guint32) SQ_GIVEN_COUNT;
  if (count != NULL)
    changed->given |= SQ_GIVEN_COUNT;
  push_cushion (document, changed, _ ("Change count"));
}

gboolean
sq_edit_extents (SqDocument *document, SqId cushion, double width_mm, double depth_mm)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  g_autoptr (SqOutline) outline = NULL;
  g_autoptr (SqCushion) changed = NULL;
  g_return_val_if_fail (now != NULL, FALSE);
  outline = sq_outline_scaled_to (now->outline, width_mm, depth_mm);
  if (outline == NULL)
    return FALSE;
  changed = sq_cushion_with_outline (now, outline);
  push_cushion (document, changed, _ ("Change size of the seat"));
  return TRUE;
}

void
sq_edit_order (SqDocument *document, SqId cushion, int by)
{
  const SqJob *job = sq_document_get_job (document);
  const SqCushion *now = sq_job_cushion (job, cushion);
  g_autoptr (SqJob) next = now != NULL ? sq_job_with_cushion_moved (job, cushion, by) : NULL;
  g_autofree char *name = NULL, *words = NULL;
  if (next == NULL || by == 0)
    return;
  name = sq_words_cushion (job, now);
  words = g_strdup_printf (by < 0 ? _ ("Move %s up") : _ ("Move %s down"), name);
  sq_document_edit (document, next, words, NULL);
}

void
sq_edit_note (SqDocument *document, SqId cushion, SqId id, gboolean is_edge, const char *text)
{
  const SqCushion *now = sq_job_cushion (sq_document_get_job (document), cushion);
  const SqCorner *old = now != NULL ? sq_outline_corner (now->outline, id, NULL, NULL) : NULL;
  GRefString *note = text != NULL && text[0] != '\0' ? g_ref_string_new (text) : NULL;
  g_autoptr (SqOutline) outline = NULL;
  g_autoptr (SqCushion) changed = NULL;
  g_autofree char *words = NULL, *name = NULL;
  SqCorner corner;
  g_return_if_fail (old != NULL);
  corner = *old;
  *(is_edge ? &corner.note : &corner.corner_note) = note;
  outline = sq_outline_with_corner (now->outline, &corner);
  if (note != NULL)
    g_ref_string_release (note); /* the outline has its own */
  name = is_edge ? sq_words_edge_corners (now, id) : sq_words_corner (now, id);
  /* Translators: %s is an edge's two letters, or a corner's. */
  words = g_strdup_printf (_ ("Note at %s"), name);
  changed = sq_cushion_with_outline (now, outline);
  push_cushion (document, changed, words);
}

void
sq_edit_cloth (SqDocument *document, const SqCloth *cloth, SqId cushion, const SqChoiceValue *value)
{
  const SqJob *job = sq_document_get_job (document);
  const SqCushion *now = sq_job_cushion (job, cushion);
  g_autoptr (SqCloth) own = sq_cloth_dup (cloth);
  g_autoptr (SqJob) with_cloth = NULL, next = NULL;
  g_autofree char *words = NULL, *name = NULL;
  if (own->id == 0)
    own->id = sq_job_new_cloth_id (job);
  name = sq_words_cloth (own);
  words = g_strdup_printf (cloth->id == 0 ? _ ("New cloth %s") : _ ("Change cloth %s"), name);
  with_cloth = sq_job_with_cloth (job, own);
  if (now != NULL && value != NULL)
    {
      g_autoptr (SqCushion) changed = with_choice (now, *value, &own->id);
      next = sq_job_with_cushion (with_cloth, changed);
    }
  sq_document_edit (document, next != NULL ? next : with_cloth, words, NULL);
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
