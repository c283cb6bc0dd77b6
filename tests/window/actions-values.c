/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/actions.h"
#include "window/edit-stripes.h"
#include "window/edit-ways.h"
#include "window/edits.h"

/* Least and most of what makers type. */
static const double ranges[SQ_N_LENGTH_VALUES][2] = {
  [SQ_LENGTH_THICKNESS] = { 20, 150 },
  [SQ_LENGTH_WRAP_DEPTH] = { 0, 45 },
  [SQ_LENGTH_PERIMETER] = { 2, 30 },
  [SQ_LENGTH_CORNER] = { 2, 30 },
  [SQ_LENGTH_ZIP] = { 2, 30 },
  [SQ_LENGTH_JOIN] = { 2, 30 },
  [SQ_LENGTH_ZIP_EXTENSION] = { 0, 60 },
  [SQ_LENGTH_ZIP_TUCK] = { 0, 45 },
  [SQ_LENGTH_STRIPES_SHIFT] = { -40, 40 },
  [SQ_LENGTH_FOAM_OVERSIZE] = { -10, 30 },
  [SQ_LENGTH_FOAM_BATTING] = { 0, 30 },
  [SQ_LENGTH_PROFILE_RADIUS] = { 0, 60 },
  [SQ_LENGTH_SPLIT_UPPER] = { 0, 100 },
  [SQ_LENGTH_DRAW_IN] = { 0, 40 },
  [SQ_LENGTH_BOLSTER_DIAMETER] = { 0, 300 },
  [SQ_LENGTH_BOLSTER_LENGTH] = { 0, 1500 },
  [SQ_LENGTH_BOLSTER_RISE] = { 0, 150 },
  [SQ_LENGTH_WELT_CORD] = { 2, 9 },
  [SQ_LENGTH_WELT_OVERLAP] = { 0, 60 },
};

void
act_length (Maker *maker)
{
  SqLengthValue value = (SqLengthValue) one_of (maker, SQ_N_LENGTH_VALUES);
  double mm = between (maker, ranges[value][0], ranges[value][1]);
  SqId cushion = any_cushion (maker)->id;
  if (happens (maker, 0.05))
    mm = 0; /* a problem for many of them */
  sq_edit_length (maker->document, cushion, value, happens (maker, 0.7) ? &mm : NULL);
}

static guint32
any_choice (Maker *maker, const SqCushion *cushion, SqChoiceValue value)
{
  const SqJob *job = sq_document_get_job (maker->document);
  switch (value)
    {
    case SQ_CHOICE_BUILD:
      return one_of (maker, SQ_N_BUILDS);
    case SQ_CHOICE_WRAP_STYLE:
    case SQ_CHOICE_STRIPES_RUN:
    case SQ_CHOICE_ZIP_METHOD:
    case SQ_CHOICE_REVERSIBLE:
    case SQ_CHOICE_SEAMS_ACROSS:
    case SQ_CHOICE_WELT_CUT:
      return one_of (maker, 2);
    case SQ_CHOICE_HAND:
    case SQ_CHOICE_PROFILE:
    case SQ_CHOICE_FILLING:
    case SQ_CHOICE_SECTION:
      return one_of (maker, 3);
    case SQ_CHOICE_ZIP_PLACE:
      return one_of (maker, SQ_N_ZIP_PLACES);
    case SQ_CHOICE_ZIP_EDGE:
      return any_corner (maker, cushion)->id;
    case SQ_CHOICE_FOAM:
      return one_of (maker, SQ_N_FOAM_KINDS);
    case SQ_CHOICE_CENTRE_ON:
    case SQ_CHOICE_WELT_AT:
      return one_of (maker, 4);
    case SQ_CHOICE_CLOTH_FACE:
    case SQ_CHOICE_CLOTH_UNDERSIDE:
    case SQ_CHOICE_CLOTH_SIDES:
    case SQ_CHOICE_CLOTH_WELT:
      return 1 + one_of (maker, job->cloths->len + 1);
    }
  g_return_val_if_reached (0);
}

void
act_choice (Maker *maker)
{
  SqChoiceValue value = (SqChoiceValue) one_of (maker, SQ_N_CHOICE_VALUES);
  const SqCushion *cushion = any_cushion (maker);
  guint32 choice = any_choice (maker, cushion, value);
  sq_edit_choice (maker->document, cushion->id, value, happens (maker, 0.7) ? &choice : NULL);
}

void
act_name (Maker *maker)
{
  static const char *const names[] = { NULL, "", "Window seat", "Café Nº 5", "a \"quoted\" one\n" };
  sq_edit_name (maker->document, any_cushion (maker)->id,
                names[one_of (maker, G_N_ELEMENTS (names))]);
}

void
act_count (Maker *maker)
{
  guint count = 1 + one_of (maker, 12);
  sq_edit_count (maker->document, any_cushion (maker)->id, happens (maker, 0.7) ? &count : NULL);
}

static void
set_stripes (Maker *maker, SqCloth *cloth)
{
  guint n = one_of (maker, 4);
  double at = 0;
  cloth->repeat_across_mm = n > 0 ? between (maker, 40, 200) : 0;
  for (guint i = 0; i < cloth->n_stripes; i++)
    g_clear_pointer (&cloth->stripes[i].unknown, g_ref_string_release);
  g_free (cloth->stripes);
  cloth->stripes = g_new0 (SqStripe, n);
  cloth->n_stripes = n;
  for (guint i = 0; i < n; i++)
    {
      double room = (cloth->repeat_across_mm - at) / (n - i);
      cloth->stripes[i] = (SqStripe){ at, room * between (maker, 0.2, 0.8), 0x203050, NULL };
      at += room;
    }
}

/* A new cloth, or one made otherwise; perhaps put on a cushion at once. */
void
act_cloth (Maker *maker)
{
  const SqJob *job = sq_document_get_job (maker->document);
  gboolean is_new = job->cloths->len == 0 || (job->cloths->len < 4 && happens (maker, 0.3));
  const SqCloth *old = is_new ? NULL
                              : g_ptr_array_index (job->cloths, one_of (maker, job->cloths->len));
  g_autoptr (SqCloth) cloth = old != NULL ? sq_cloth_dup (old) : sq_cloth_new (0);
  SqChoiceValue value = (SqChoiceValue) (SQ_CHOICE_CLOTH_FACE + one_of (maker, 3));
  cloth->kind = (SqClothClass) one_of (maker, SQ_N_CLOTH_CLASSES);
  cloth->width_mm = between (maker, happens (maker, 0.1) ? 300 : 1000, 1800);
  cloth->one_way = happens (maker, 0.3);
  cloth->colour = one_of (maker, 0x1000000);
  cloth->given |= SQ_GIVEN_CLOTH_CLASS | SQ_GIVEN_CLOTH_WIDTH | SQ_GIVEN_CLOTH_ONE_WAY
                  | SQ_GIVEN_CLOTH_COLOUR;
  set_stripes (maker, cloth);
  sq_edit_cloth (maker->document, cloth, any_cushion (maker)->id,
                 happens (maker, 0.5) ? &value : NULL);
}

/* One of the ways out of one of the problems. */
void
act_fix (Maker *maker)
{
  const SqPlan *plan = sq_document_get_plan (maker->document);
  const SqCover *cover = sq_plan_cover (plan, one_of (maker, plan->covers->len));
  const SqProblem *problem;
  const SqFix *fix;
  if (cover->problems->len == 0)
    return;
  problem = sq_cover_problem (cover, one_of (maker, cover->problems->len));
  fix = &problem->fixes[one_of (maker, SQ_N_FIXES)];
  if (fix->kind != SQ_FIX_NONE)
    sq_edit_fix (maker->document, cover->cushion->id, fix);
}

/* A drag of the stripes on a piece, dropped now and then. */
static void
drag_stripes (Maker *maker, const SqCover *cover)
{
  g_autoptr (SqPlan) base = sq_plan_ref (sq_document_get_plan (maker->document));
  for (guint i = 1 + one_of (maker, 4); i > 0; i--)
    {
      SqVector by = { between (maker, -200, 200), between (maker, -200, 200) };
      g_autoptr (SqJob) moved = sq_stripes_moved (base->job, cover, by, 5);
      if (moved != NULL)
        sq_document_try (maker->document, moved);
    }
  if (happens (maker, 0.8))
    sq_document_keep (maker->document, sq_stripes_moved_words ());
  else
    sq_document_drop (maker->document);
}

void
act_stripes (Maker *maker)
{
  const SqPlan *plan = sq_document_get_plan (maker->document);
  const SqCover *cover = sq_plan_cover (plan, one_of (maker, plan->covers->len));
  const SqCentreOn centres[] = { SQ_CENTRE_STRIPE, SQ_CENTRE_GAP, SQ_CENTRE_NONE };
  if (sq_stripes_cloth (sq_document_get_job (maker->document), cover) == NULL)
    return;
  switch (one_of (maker, 4))
    {
    case 0:
      drag_stripes (maker, cover);
      break;
    case 1:
      sq_edit_step_stripes (maker->document, cover, happens (maker, 0.5) ? 1 : -10);
      break;
    case 2:
      sq_edit_turn_stripes (maker->document, cover);
      break;
    default:
      sq_edit_centre_stripes (maker->document, cover,
                              centres[one_of (maker, G_N_ELEMENTS (centres))]);
    }
}

/* The zip on another edge, or a part of it. */
void
act_zip (Maker *maker)
{
  const SqCushion *cushion = any_cushion (maker);
  SqId edge = any_corner (maker, cushion)->id;
  if (happens (maker, 0.5))
    {
      sq_edit_zip_on_edge (maker->document, cushion->id, edge);
      return;
    }
  g_autoptr (SqCushion) changed = sq_cushion_dup (cushion);
  changed->zip.from_mm = between (maker, -150, 150);
  changed->zip.to_mm = between (maker, 150, 900);
  changed->given |= SQ_GIVEN_ZIP_FROM | SQ_GIVEN_ZIP_TO;
  g_autoptr (SqJob) job = sq_job_with_cushion (sq_document_get_job (maker->document), changed);
  sq_document_edit (maker->document, job, "Move the zip", NULL);
}

/* One of all ways of building side by side, possible or not. */
void
act_way (Maker *maker)
{
  const SqJob *job = sq_document_get_job (maker->document);
  g_autoptr (SqWays) ways = sq_ways_new (job, any_cushion (maker), FALSE, NULL);
  sq_edit_way (maker->document, sq_ways_way (ways, one_of (maker, ways->ways->len)));
}

void
act_rate (Maker *maker)
{
  double value = between (maker, 0, 60);
  const double *given = happens (maker, 0.7) ? &value : NULL;
  if (happens (maker, 0.3))
    sq_edit_foam_price (maker->document, (SqFoamKind) one_of (maker, SQ_N_FOAM_KINDS), given);
  else
    sq_edit_rate (maker->document, (SqRate) one_of (maker, SQ_N_RATES), given);
}
