/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/cautions.h"

#include <glib/gi18n.h>

static gboolean
has_vinyl (const SqPlan *plan)
{
  for (guint i = 0; i < plan->cloths->len; i++)
    {
      const SqCloth *cloth = sq_plan_cloth (plan,
                                            g_array_index (plan->cloths, SqClothTotal, i).cloth);
      if (cloth != NULL && cloth->kind == SQ_CLOTH_VINYL)
        return TRUE;
    }
  return FALSE;
}

static gboolean
has_foam (const SqPlan *plan, SqFoamKind first, SqFoamKind last)
{
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const GPtrArray *foam = sq_plan_cover (plan, i)->foam;
      for (guint k = 0; k < foam->len; k++)
        {
          const SqFoamPart *part = g_ptr_array_index (foam, k);
          if (part->kind >= first && part->kind <= last)
            return TRUE;
        }
    }
  return FALSE;
}

static gboolean
has_edge (const SqPlan *plan, SqEdgeKind kind)
{
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqFinished *finished = sq_plan_cover (plan, i)->finished;
      for (guint k = 0; finished != NULL && k < finished->rings[0].n_edges; k++)
        if (finished->rings[0].edges[k].kind == kind)
          return TRUE;
    }
  return FALSE;
}

static void
add (GPtrArray *cautions, gboolean fits, const char *text)
{
  if (fits)
    g_ptr_array_add (cautions, (gpointer) gettext (text));
}

GPtrArray *
sq_words_cutting_cautions (const SqPlan *plan)
{
  GPtrArray *cautions = g_ptr_array_new ();
  gboolean vinyl = has_vinyl (plan);

  add (cautions, TRUE,
       N_ ("Blades, needles and saws: keep guards on, cut away from your hand, clamp stacks."));
  add (cautions, vinyl, N_ ("Never cut vinyl with a hot knife: its smoke is poisonous."));
  add (cautions, !vinyl, N_ ("Hot cutting gives off fumes: ventilate and extract them."));
  return cautions;
}

GPtrArray *
sq_words_cautions (const SqPlan *plan)
{
  GPtrArray *cautions = sq_words_cutting_cautions (plan);
  gboolean foam = has_foam (plan, SQ_FOAM_SEAT, SQ_FOAM_BONDED);
  gboolean afloat = has_foam (plan, SQ_FOAM_FAST_DRAINING, SQ_FOAM_CLOSED_CELL)
                    || has_edge (plan, SQ_EDGE_HULL_LINING);
  gboolean lid = has_edge (plan, SQ_EDGE_LID_HINGE);

  add (cautions, foam,
       N_ ("Foam and batting burn fast and with toxic smoke. No hot wire through polyurethane foam "
           "without its data sheet and extraction. Spray adhesive is flammable: ventilate."));
  add (cautions, TRUE,
       N_ ("Seats that are sold fall under flammability and labelling law, which judges cloth, "
           "foam and thread together: check what applies where you sell."));
  add (cautions, afloat, N_ ("A cushion is no life-saving flotation."));
  add (cautions, lid || afloat,
       N_ ("Never cover a hatch, vent, gas drain or heater; a loose cushion slides on a lid, step "
           "or deck."));
  return cautions;
}
