/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/lay-finder.h"

#include "window/lay-search.h"

/* The work is told of after this; first lays begun for an older plan are given up after the other
 * (s). */
#define NOTICED_S 0.5
#define STALE_S 0.3
/* How often it is looked at meanwhile (ms). */
#define LOOK_MS 150

/* Better lays are looked for when the hand has rested so long (ms), and for so long at most (s): by
 * then the next cup of coffee is finished, and the fan may rest. */
#define REST_MS 1000
#define LONGEST_S 60.0

/* What was looked at for so long (s) is worth coming back to: of so many jobs, undone and redone, the
 * lays are remembered. */
#define SHOWN_S 0.3
#define MOST_REMEMBERED 16

struct _SqLayFinder
{
  GObject parent;
  SqDocument *document;
  SqLays *lays;
  gint64 since_us;      /* when the first of its job came */
  GQueue remembered;    /* of SqLays, the newest first */
  SqBackground *laying; /* NULL: nothing is */
  SqPlan *laid_plan;    /* that it was begun for */
  gboolean is_search;   /* it looks for better lays, not for first ones */
  double longest_s;     /* of a search; 0: there is none */
  guint look, rest;     /* sources; 0: none */
  SqPlan *stopped_for;  /* laying this, or searching for better, was given up; NULL: nothing was */
  guint64 searched;     /* what a search came to its end for; 0: nothing */
  guint64 n_searches;
  guint n_holders;
};

G_DEFINE_TYPE (SqLayFinder, sq_lay_finder, G_TYPE_OBJECT)

static guint changed_signal;

static void begin (SqLayFinder *finder);

static void
say (SqLayFinder *finder)
{
  g_signal_emit (finder, changed_signal, 0);
}

static void
end_waiting (SqLayFinder *finder)
{
  g_clear_handle_id (&finder->look, g_source_remove);
  g_clear_handle_id (&finder->rest, g_source_remove);
}

static gboolean
is_given_up (SqLayFinder *finder)
{
  return finder->stopped_for == sq_document_get_plan (finder->document);
}

/* The same for the same tasks. */
static guint64
digest_of (const SqLays *lays)
{
  guint64 digest = 1;
  for (guint i = 0; i < lays->cloths->len; i++)
    digest = digest * 31 + sq_lays_cloth (lays, i)->task->digest;
  return digest;
}

static void
remember (SqLayFinder *finder)
{
  g_queue_push_head (&finder->remembered, sq_lays_ref (finder->lays));
  if (finder->remembered.length > MOST_REMEMBERED)
    sq_lays_unref (g_queue_pop_tail (&finder->remembered));
}

static void
take (SqLayFinder *finder, const SqLays *lays)
{
  gint64 now_us = g_get_monotonic_time ();
  gboolean is_other = finder->lays == NULL || finder->lays->plan->job != lays->plan->job;
  if (finder->lays != NULL && is_other
      && now_us - finder->since_us > (gint64) (SHOWN_S * G_USEC_PER_SEC))
    remember (finder);
  g_clear_pointer (&finder->lays, sq_lays_unref);
  finder->lays = sq_lays_ref (lays);
  if (is_other)
    finder->since_us = now_us;
}

/* What lays of @job are begun from: those it had before, else what is shown. */
static const SqLays *
source_of (SqLayFinder *finder, const SqJob *job)
{
  for (GList *l = finder->remembered.head; l != NULL; l = l->next)
    if (((SqLays *) l->data)->plan->job == job)
      return l->data;
  return finder->lays;
}

static void
on_found (gpointer owner, gpointer found, gboolean is_over)
{
  SqLayFinder *finder = owner;
  gboolean was_search = finder->is_search;
  if (finder->document == NULL)
    return;
  if (found != NULL)
    take (finder, found);
  if (is_over)
    {
      g_clear_pointer (&finder->laying, sq_background_drop);
      finder->is_search = FALSE;
      end_waiting (finder);
      if (was_search && sq_lay_finder_is_current (finder) && finder->n_holders == 0)
        finder->searched = digest_of (finder->lays);
      begin (finder);
    }
  say (finder);
}

static gboolean
on_look (gpointer data)
{
  SqLayFinder *finder = data;
  if (finder->laying != NULL && sq_background_get_seconds (finder->laying) > NOTICED_S)
    say (finder);
  return G_SOURCE_CONTINUE;
}

static void
begin_first (SqLayFinder *finder)
{
  const SqPlan *plan = sq_document_get_plan (finder->document);
  g_clear_pointer (&finder->laid_plan, sq_plan_unref);
  finder->laid_plan = sq_plan_ref (plan);
  finder->laying = sq_lay_search_first (G_OBJECT (finder), plan, source_of (finder, plan->job),
                                        on_found);
  finder->look = g_timeout_add (LOOK_MS, on_look, finder);
}

static gboolean
on_rested (gpointer data)
{
  SqLayFinder *finder = data;
  end_waiting (finder);
  g_clear_pointer (&finder->laid_plan, sq_plan_unref);
  finder->laid_plan = sq_plan_ref (finder->lays->plan);
  finder->is_search = TRUE;
  finder->laying = sq_lay_search_better (G_OBJECT (finder), finder->lays, finder->longest_s,
                                         ++finder->n_searches, on_found);
  finder->look = g_timeout_add_seconds (1, on_look, finder);
  say (finder);
  return G_SOURCE_REMOVE;
}

/* Starts what there is to do, if nothing is being done. */
static void
begin (SqLayFinder *finder)
{
  if (finder->laying != NULL || is_given_up (finder))
    return;
  g_clear_pointer (&finder->stopped_for, sq_plan_unref);
  if (!sq_lay_finder_is_current (finder))
    begin_first (finder);
  else if (finder->rest == 0 && finder->longest_s > 0 && finder->n_holders == 0
           && finder->searched != digest_of (finder->lays)
           && sq_lay_search_is_worth_it (finder->lays))
    finder->rest = g_timeout_add (REST_MS, on_rested, finder);
}

static void
on_changed (SqLayFinder *finder)
{
  g_clear_handle_id (&finder->rest, g_source_remove);
  if (finder->laying != NULL && finder->laid_plan != sq_document_get_plan (finder->document)
      && (finder->is_search || sq_background_get_seconds (finder->laying) > STALE_S))
    sq_background_stop (finder->laying);
  begin (finder);
}

const SqLays *
sq_lay_finder_get_lays (SqLayFinder *finder)
{
  g_return_val_if_fail (SQ_IS_LAY_FINDER (finder), NULL);
  return finder->lays;
}

gboolean
sq_lay_finder_is_current (SqLayFinder *finder)
{
  g_return_val_if_fail (SQ_IS_LAY_FINDER (finder), FALSE);
  return finder->lays != NULL && finder->document != NULL
         && finder->lays->plan == sq_document_get_plan (finder->document);
}

double
sq_lay_finder_get_progress (SqLayFinder *finder)
{
  g_return_val_if_fail (SQ_IS_LAY_FINDER (finder), -1);
  if (finder->laying == NULL || finder->is_search
      || sq_background_get_seconds (finder->laying) <= NOTICED_S)
    return -1;
  return sq_background_get_progress (finder->laying);
}

double
sq_lay_finder_get_searching (SqLayFinder *finder)
{
  g_return_val_if_fail (SQ_IS_LAY_FINDER (finder), -1);
  if (finder->laying == NULL || !finder->is_search || !sq_lay_finder_is_current (finder)
      || is_given_up (finder))
    return -1;
  return sq_background_get_seconds (finder->laying);
}

void
sq_lay_finder_stop (SqLayFinder *finder)
{
  g_return_if_fail (SQ_IS_LAY_FINDER (finder));
  if (finder->laying == NULL)
    return;
  sq_background_stop (finder->laying);
  g_clear_pointer (&finder->stopped_for, sq_plan_unref);
  finder->stopped_for = sq_plan_ref (sq_document_get_plan (finder->document));
  say (finder);
}

void
sq_lay_finder_again (SqLayFinder *finder)
{
  g_return_if_fail (SQ_IS_LAY_FINDER (finder));
  g_clear_pointer (&finder->stopped_for, sq_plan_unref);
  finder->searched = 0;
  begin (finder);
  say (finder);
}

gboolean
sq_lay_finder_is_stopped (SqLayFinder *finder)
{
  g_return_val_if_fail (SQ_IS_LAY_FINDER (finder), FALSE);
  return finder->laying == NULL && finder->document != NULL && is_given_up (finder)
         && !sq_lay_finder_is_current (finder);
}

gboolean
sq_lay_finder_can_search (SqLayFinder *finder)
{
  g_return_val_if_fail (SQ_IS_LAY_FINDER (finder), FALSE);
  return sq_lay_finder_is_current (finder) && finder->longest_s > 0
         && (is_given_up (finder) || finder->searched == digest_of (finder->lays))
         && sq_lay_search_is_worth_it (finder->lays);
}

void
sq_lay_finder_hold (SqLayFinder *finder)
{
  g_return_if_fail (SQ_IS_LAY_FINDER (finder));
  finder->n_holders++;
  g_clear_handle_id (&finder->rest, g_source_remove);
  if (finder->is_search && finder->laying != NULL)
    sq_background_stop (finder->laying);
}

void
sq_lay_finder_release (SqLayFinder *finder)
{
  g_return_if_fail (SQ_IS_LAY_FINDER (finder) && finder->n_holders > 0);
  finder->n_holders--;
  if (finder->document != NULL)
    begin (finder);
}

/* How long better lays are looked for (s). */
static double
longest_s (void)
{
  const char *told = g_getenv ("SQUAB_LAY_SECONDS");
  return told != NULL ? g_ascii_strtod (told, NULL) : LONGEST_S;
}

SqLayFinder *
sq_lay_finder_new (SqDocument *document)
{
  SqLayFinder *finder = g_object_new (SQ_TYPE_LAY_FINDER, NULL);
  finder->document = g_object_ref (document);
  finder->longest_s = longest_s ();
  g_signal_connect_object (document, "changed", G_CALLBACK (on_changed), finder, G_CONNECT_SWAPPED);
  begin (finder);
  return finder;
}

static void
sq_lay_finder_dispose (GObject *object)
{
  SqLayFinder *finder = SQ_LAY_FINDER (object);
  end_waiting (finder);
  g_clear_pointer (&finder->laying, sq_background_drop);
  if (finder->document != NULL)
    g_signal_handlers_disconnect_by_data (finder->document, finder);
  g_clear_object (&finder->document);
  G_OBJECT_CLASS (sq_lay_finder_parent_class)->dispose (object);
}

static void
sq_lay_finder_finalize (GObject *object)
{
  SqLayFinder *finder = SQ_LAY_FINDER (object);
  g_clear_pointer (&finder->lays, sq_lays_unref);
  g_queue_clear_full (&finder->remembered, (GDestroyNotify) sq_lays_unref);
  g_clear_pointer (&finder->laid_plan, sq_plan_unref);
  g_clear_pointer (&finder->stopped_for, sq_plan_unref);
  G_OBJECT_CLASS (sq_lay_finder_parent_class)->finalize (object);
}

static void
sq_lay_finder_class_init (SqLayFinderClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_lay_finder_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_lay_finder_finalize;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
sq_lay_finder_init (SqLayFinder *finder)
{
  g_queue_init (&finder->remembered);
}
