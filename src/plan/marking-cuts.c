/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/marking-cuts.h"

/* What is nearer is one line: less than a thread. */
#define ONE_LINE_MM 0.05

/* Cuts across, along and across again: more no hand keeps in mind. */
#define MOST_TURNS 3

/* What is cut apart: some of the boxes, and the cloth they lie on. */
typedef struct
{
  GPtrArray *boxes; /* of SqMarkingBox */
  SqBox cloth;
} Section;

/* A way to cut it. */
typedef struct
{
  GArray *cuts;      /* of SqStraightCut */
  GPtrArray *strips; /* of SqMarkingBox: what is freed */
} Parting;

static double
from_of (const SqBox *box, gboolean across)
{
  return across ? box->min.x : box->min.y;
}

static double
to_of (const SqBox *box, gboolean across)
{
  return across ? box->max.x : box->max.y;
}

static gint
compare_from (gconstpointer a, gconstpointer b, gpointer across)
{
  const SqMarkingBox *p = *(SqMarkingBox *const *) a, *q = *(SqMarkingBox *const *) b;
  double x = from_of (&p->box, across != NULL), y = from_of (&q->box, across != NULL);

  return (x > y) - (x < y);
}

static Parting
parting_new (void)
{
  return (Parting){ g_array_new (FALSE, FALSE, sizeof (SqStraightCut)), g_ptr_array_new () };
}

static void
parting_clear (Parting *parting)
{
  g_array_unref (parting->cuts);
  g_ptr_array_unref (parting->strips);
}

static void
add_cut (Parting *parting, const Section *section, gboolean across, double at_mm)
{
  SqStraightCut cut = { .is_across = across,
                        .at_mm = at_mm,
                        .from_mm = from_of (&section->cloth, !across),
                        .to_mm = to_of (&section->cloth, !across) };

  if (at_mm <= from_of (&section->cloth, across) + ONE_LINE_MM
      || at_mm >= to_of (&section->cloth, across) - ONE_LINE_MM)
    return;
  if (parting->cuts->len > 0)
    {
      const SqStraightCut *last = &g_array_index (parting->cuts, SqStraightCut,
                                                  parting->cuts->len - 1);
      if (last->is_across == across && fabs (last->at_mm - at_mm) < ONE_LINE_MM)
        return;
    }
  g_array_append_val (parting->cuts, cut);
}

/* Boxes side by side that are all straight and equally broad. */
static gboolean
is_strip (const GPtrArray *boxes, SqBox all, gboolean across)
{
  for (guint i = 0; i < boxes->len; i++)
    {
      const SqMarkingBox *own = g_ptr_array_index (boxes, i);
      if (!own->is_rectangle || from_of (&own->box, across) > from_of (&all, across) + ONE_LINE_MM
          || to_of (&own->box, across) < to_of (&all, across) - ONE_LINE_MM)
        return FALSE;
    }
  return TRUE;
}

/* Whether what lies side by side between two cuts runs the other way: each a strip of its own. */
static gboolean
runs_other_way (const GPtrArray *boxes, gboolean across)
{
  const SqBox *first = &((SqMarkingBox *) g_ptr_array_index (boxes, 0))->box;

  return to_of (first, across) - from_of (first, across)
         > to_of (first, !across) - from_of (first, !across);
}

/* Parts what lies side by side on @cloth, cut off by cuts across or along. */
static void
part_strip (Parting *parting, GPtrArray *boxes, SqBox cloth, gboolean across)
{
  Section strip = { boxes, cloth };

  g_ptr_array_sort_with_data (boxes, compare_from, GINT_TO_POINTER (!across));
  for (guint i = 0; i < boxes->len; i++)
    {
      const SqMarkingBox *own = g_ptr_array_index (boxes, i);
      add_cut (parting, &strip, !across, from_of (&own->box, !across));
      add_cut (parting, &strip, !across, to_of (&own->box, !across));
    }
}

static Parting best_parting (const Section *section, guint turns);

/* What lies between two cuts, from box @from to before box @to: freed, or a section to go on with,
 * whose cuts come after those of @section, in @later. */
static void
take_slab (Parting *parting, Parting *later, const Section *section, gboolean across, guint from,
           guint to, guint turns)
{
  g_autoptr (GPtrArray) boxes = g_ptr_array_new ();
  SqBox all = sq_box_empty ();

  for (guint i = from; i < to; i++)
    {
      SqMarkingBox *own = g_ptr_array_index (section->boxes, i);
      g_ptr_array_add (boxes, own);
      all = sq_box_union (all, own->box);
    }
  double from_mm = from_of (&all, across), to_mm = to_of (&all, across);
  Section slab = { boxes, section->cloth };
  *(across ? &slab.cloth.min.x : &slab.cloth.min.y) = from_mm;
  *(across ? &slab.cloth.max.x : &slab.cloth.max.y) = to_mm;
  if (is_strip (boxes, all, across))
    {
      add_cut (parting, section, across, from_mm);
      add_cut (parting, section, across, to_mm);
      g_ptr_array_extend (parting->strips, boxes, NULL, NULL);
      if (runs_other_way (boxes, across))
        part_strip (later, boxes, slab.cloth, across);
      return;
    }
  if (turns == 0 || boxes->len == section->boxes->len)
    return;
  Parting inner = best_parting (&slab, turns - 1);
  if (inner.strips->len > 0)
    {
      add_cut (parting, section, across, from_mm);
      add_cut (parting, section, across, to_mm);
      g_array_append_vals (later->cuts, inner.cuts->data, inner.cuts->len);
      g_ptr_array_extend (parting->strips, inner.strips, NULL, NULL);
    }
  parting_clear (&inner);
}

/* By cuts of one direction, wherever one goes right through. */
static Parting
parting_of (const Section *section, gboolean across, guint turns)
{
  Parting parting = parting_new (), later = parting_new ();
  guint first = 0;
  double to_mm = -HUGE_VAL;

  g_ptr_array_sort_with_data (section->boxes, compare_from, GINT_TO_POINTER (across));
  for (guint i = 0; i <= section->boxes->len; i++)
    {
      const SqMarkingBox *own = i < section->boxes->len ? g_ptr_array_index (section->boxes, i)
                                                        : NULL;
      if (i > first && (own == NULL || from_of (&own->box, across) > to_mm - ONE_LINE_MM))
        {
          take_slab (&parting, &later, section, across, first, i, turns);
          first = i;
        }
      if (own != NULL)
        to_mm = fmax (to_mm, to_of (&own->box, across));
    }
  g_array_append_vals (parting.cuts, later.cuts->data, later.cuts->len);
  parting_clear (&later);
  return parting;
}

/* The one that frees more; then that by fewer cuts, then across. */
static Parting
best_parting (const Section *section, guint turns)
{
  Parting across = parting_of (section, TRUE, turns), along = parting_of (section, FALSE, turns);
  gboolean is_across = across.strips->len > along.strips->len
                       || (across.strips->len == along.strips->len
                           && across.cuts->len <= along.cuts->len);

  parting_clear (is_across ? &along : &across);
  return is_across ? across : along;
}

GArray *
sq_marking_cuts (GArray *boxes, double laid_mm, double width_mm, gboolean goes_on)
{
  g_autoptr (GPtrArray) all = g_ptr_array_new ();
  Section section = { all, { { 0, 0 }, { laid_mm, width_mm } } };
  SqStraightCut end = { TRUE, laid_mm, 0, width_mm, TRUE, TRUE };

  for (guint i = 0; i < boxes->len; i++)
    g_ptr_array_add (all, &g_array_index (boxes, SqMarkingBox, i));
  Parting best = best_parting (&section, MOST_TURNS - 1);
  for (guint i = 0; i < best.strips->len; i++)
    ((SqMarkingBox *) g_ptr_array_index (best.strips, i))->is_in_strip = TRUE;
  /* Nobody tears along a whole bolt. */
  if (goes_on && best.cuts->len > 0 && !g_array_index (best.cuts, SqStraightCut, 0).is_across)
    g_array_prepend_val (best.cuts, end);
  for (guint i = 0; i < best.cuts->len; i++)
    {
      SqStraightCut *cut = &g_array_index (best.cuts, SqStraightCut, i);
      cut->from_edge = cut->from_mm <= ONE_LINE_MM;
      cut->to_edge = cut->to_mm >= (cut->is_across ? width_mm : laid_mm) - ONE_LINE_MM;
    }
  g_ptr_array_unref (best.strips);
  return best.cuts;
}
