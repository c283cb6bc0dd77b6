/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/foam-lays.h"

#include "base/units.h"

/* Sheets that differ by less are equally thick (mm). */
#define SAME_THICKNESS_MM 0.01

/* So many parts are tried turned over as well; of more there are always some that fit as they are. */
#define MOST_MIRRORED 100

static void
clear_lay (gpointer data)
{
  SqFoamLay *lay = data;

  g_array_unref (lay->parts);
  g_clear_pointer (&lay->task, sq_lay_task_unref);
  g_clear_pointer (&lay->lay, sq_lay_unref);
}

static const SqFoamPart *
part_of (const SqPlan *plan, const SqFoamOf *of)
{
  return g_ptr_array_index (sq_plan_cover (plan, of->cushion)->foam, of->part);
}

/* ---- what is cut from the same sheets ------------------------------------------------------ */

/* The job's foam of @kind; seat foam is firm by its figure. */
static const SqFoam *
foam_of (const SqJob *job, SqFoamKind kind)
{
  const SqFoam *foam = sq_job_foam (job, kind);

  return foam == NULL && kind == SQ_FOAM_FIRM ? sq_job_foam (job, SQ_FOAM_SEAT) : foam;
}

static SqFoamLay
new_lay (const SqJob *job, const SqFoamPart *part)
{
  const SqFoam *foam = foam_of (job, part->kind);
  guint32 given = foam != NULL ? foam->given : 0;
  const SqDefaults *house = &job->defaults;

  return (SqFoamLay){
    .kind = part->kind,
    .thickness_mm = part->thickness_mm,
    .length_mm = given & SQ_GIVEN_FOAM_SHEET_LENGTH ? foam->sheet_length_mm
                                                    : house->foam_sheet_length_mm,
    .width_mm = given & SQ_GIVEN_FOAM_SHEET_WIDTH ? foam->sheet_width_mm
                                                  : house->foam_sheet_width_mm,
    .kerf_mm = given & SQ_GIVEN_FOAM_KERF ? foam->kerf_mm : house->foam_kerf_mm,
    .parts = g_array_new (FALSE, FALSE, sizeof (SqFoamOf)),
  };
}

static void
add_part (GArray *lays, const SqPlan *plan, SqFoamOf of)
{
  const SqFoamPart *part = part_of (plan, &of);
  guint i = 0;

  while (
      i < lays->len
      && (sq_foam_lay (lays, i)->kind != part->kind
          || fabs (sq_foam_lay (lays, i)->thickness_mm - part->thickness_mm) > SAME_THICKNESS_MM))
    i++;
  if (i == lays->len)
    {
      SqFoamLay lay = new_lay (plan->job, part);
      g_array_append_val (lays, lay);
    }
  g_array_append_val (sq_foam_lay (lays, i)->parts, of);
}

static int
compare_lays (gconstpointer a, gconstpointer b)
{
  const SqFoamLay *x = a, *y = b;

  if (x->kind != y->kind)
    return x->kind < y->kind ? -1 : 1;
  return (x->thickness_mm > y->thickness_mm) - (x->thickness_mm < y->thickness_mm);
}

/* ---- laying -------------------------------------------------------------------------------- */

static guint
demand_of (const SqPlan *plan, const SqFoamOf *of)
{
  return part_of (plan, of)->count * sq_plan_cover (plan, of->cushion)->cushion->count;
}

/* Foam has no right side and no grain. */
static SqLayTask *
task_with (const SqPlan *plan, const SqFoamLay *lay, guint n_parts, guint n_sheets)
{
  SqLayTask *task = sq_lay_task_new (sq_grid_from_mm (lay->kerf_mm));
  SqLayStrip sheet = { .kind = SQ_STRIP_SHEET,
                       .width = MAX (sq_grid_from_mm (lay->width_mm), 1),
                       .length = MAX (sq_grid_from_mm (lay->length_mm), 1) };

  for (guint i = 0; i < n_sheets; i++)
    sq_lay_task_add_strip (task, &sheet);
  for (guint i = 0; i < lay->parts->len; i++)
    {
      const SqFoamOf *of = sq_foam_lay_part (lay, i);
      SqLayItemSpec spec = {
        .rings = part_of (plan, of)->rings,
        .turns = SQ_LAY_UPRIGHT | SQ_LAY_QUARTER | SQ_LAY_HALF | SQ_LAY_THREE_QUARTERS,
        .may_mirror = n_parts <= MOST_MIRRORED,
        .demand = demand_of (plan, of),
        .tag = i,
      };
      sq_lay_task_add (task, &spec);
    }
  sq_lay_task_seal (task);
  return task;
}

/* What no lay can go below: the parts' own area. */
static guint
least_sheets (const SqPlan *plan, const SqFoamLay *lay, guint *n_parts)
{
  double area_mm2 = 0, sheet_mm2 = lay->length_mm * lay->width_mm;

  *n_parts = 0;
  for (guint i = 0; i < lay->parts->len; i++)
    {
      const SqFoamPart *part = part_of (plan, sq_foam_lay_part (lay, i));
      guint n = demand_of (plan, sq_foam_lay_part (lay, i));
      area_mm2 += n * part->volume_mm3 / part->thickness_mm;
      *n_parts += n;
    }
  return (guint) CLAMP (ceil (area_mm2 / fmax (sheet_mm2, 1)), 1, *n_parts);
}

static gboolean
is_full (const SqLay *lay)
{
  for (guint i = 0; i < lay->unlaid->len; i++)
    if (g_array_index (lay->unlaid, SqUnlaid, i).why == SQ_UNLAID_NO_ROOM)
      return TRUE;
  return FALSE;
}

static guint
sheets_used (const SqLay *lay)
{
  guint n = 0;

  for (guint i = 0; i < lay->lengths->len; i++)
    n += sq_lay_length (lay, i) > 0;
  return n;
}

static const SqLay *
same_lay (const GArray *before, guint64 digest)
{
  for (guint i = 0; before != NULL && i < before->len; i++)
    if (sq_foam_lay (before, i)->task->digest == digest)
      return sq_foam_lay (before, i)->lay;
  return NULL;
}

/* FALSE if it was stopped. */
static gboolean
run (SqFoamLay *lay, const GArray *before, const SqTask *watch)
{
  const SqLayBudget budget = { .seed = 1, .steps = 0 };
  SqLayWatch lay_watch = { watch != NULL ? *watch : (SqTask){ NULL, NULL, NULL }, NULL };
  const SqLay *same = same_lay (before, lay->task->digest);

  lay_watch.task.progress = NULL;
  lay->lay = same != NULL ? sq_lay_ref (same) : sq_lay_run (lay->task, NULL, &budget, &lay_watch);
  return lay->lay != NULL;
}

/* What sheets there are more than are needed is left empty: a lay fills one after the other. So
 * there are half as many again as the parts' own area, and more if these are full. */
static gboolean
lay_parts (SqFoamLay *lay, const SqPlan *plan, const GArray *before, const SqTask *watch)
{
  guint n_parts, least = least_sheets (plan, lay, &n_parts);
  guint n = MIN (n_parts, least + least / 2 + 1);

  for (;;)
    {
      lay->task = task_with (plan, lay, n_parts, n);
      if (!run (lay, before, watch))
        return FALSE;
      if (!is_full (lay->lay) || n >= n_parts)
        break;
      g_clear_pointer (&lay->task, sq_lay_task_unref);
      g_clear_pointer (&lay->lay, sq_lay_unref);
      n = MIN (n_parts, 2 * n);
    }
  return TRUE;
}

static void
take_figures (SqFoamLay *lay)
{
  double cut_mm2 = 0;

  lay->sheets = sheets_used (lay->lay);
  for (guint i = 0; i < lay->lay->lengths->len; i++)
    cut_mm2 += sq_lay_area_mm2 (lay->task, lay->lay, i);
  for (guint i = 0; i < lay->lay->unlaid->len; i++)
    lay->unlaid += g_array_index (lay->lay->unlaid, SqUnlaid, i).count;
  lay->waste = lay->sheets > 0 ? 1 - cut_mm2 / (lay->sheets * lay->length_mm * lay->width_mm) : 0;
}

GArray *
sq_foam_lays_new (const SqPlan *plan, const GArray *before, const SqTask *watch)
{
  g_autoptr (GArray) lays = g_array_new (FALSE, FALSE, sizeof (SqFoamLay));

  g_array_set_clear_func (lays, clear_lay);
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      for (guint k = 0; k < cover->foam->len && cover->build != SQ_BUILD_BOLSTER; k++)
        if (part_of (plan, &(SqFoamOf){ i, k })->thickness_mm > 0)
          add_part (lays, plan, (SqFoamOf){ i, k });
    }
  g_array_sort (lays, compare_lays);
  for (guint i = 0; i < lays->len; i++)
    {
      if (!lay_parts (sq_foam_lay (lays, i), plan, before, watch))
        return NULL;
      take_figures (sq_foam_lay (lays, i));
    }
  return g_steal_pointer (&lays);
}
