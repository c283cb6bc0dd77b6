/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/ways-finder.h"

#include "window/background.h"

/* What is compared on the thread. */
typedef struct
{
  SqJob *job;
  SqCushion *cushion;
} Compared;

struct _SqWaysFinder
{
  GObject parent;
  SqDocument *document;
  SqSelection *selection;
  SqJob *job;      /* what the ways are of */
  SqJob *laid_job; /* what is being laid is of this, NULL: nothing was */
  SqWays *ways;
  SqBackground *laying; /* NULL: nothing is being laid */
  guint later;
};

G_DEFINE_TYPE (SqWaysFinder, sq_ways_finder, G_TYPE_OBJECT)

static guint changed_signal;

/* --- on the thread --------------------------------------------------------------------------- */

static void
compared_free (gpointer data)
{
  Compared *compared = data;
  sq_job_unref (compared->job);
  sq_cushion_unref (compared->cushion);
  g_free (compared);
}

static gpointer
lay (SqBackground *background, gpointer data, const SqTask *watch)
{
  const Compared *compared = data;
  (void) background;
  return sq_ways_new (compared->job, compared->cushion, TRUE, watch);
}

/* --- here ------------------------------------------------------------------------------------ */

static void begin (SqWaysFinder *finder);

static void
say (SqWaysFinder *finder)
{
  g_signal_emit (finder, changed_signal, 0);
}

static void
on_laid (gpointer owner, gpointer found, gboolean is_over)
{
  SqWaysFinder *finder = owner;
  SqWays *ways = found;
  (void) is_over;
  g_clear_pointer (&finder->laying, sq_background_drop);
  if (ways != NULL && finder->ways != NULL && finder->laid_job == finder->job
      && finder->ways->cushion == ways->cushion)
    {
      g_clear_pointer (&finder->ways, sq_ways_unref);
      finder->ways = sq_ways_ref (ways);
      say (finder);
    }
  begin (finder);
}

static void
begin (SqWaysFinder *finder)
{
  static const SqBackgroundWork work = { lay, compared_free, (GDestroyNotify) sq_ways_unref };
  if (finder->laying != NULL || finder->ways == NULL || finder->ways->has_lays)
    return;
  Compared *compared = g_new0 (Compared, 1);
  compared->job = sq_job_ref (finder->job);
  compared->cushion = sq_cushion_ref (finder->ways->cushion);
  g_clear_pointer (&finder->laid_job, sq_job_unref);
  finder->laid_job = sq_job_ref (finder->job);
  finder->laying = sq_background_begin (G_OBJECT (finder), &work, compared, on_laid);
}

/* What is there now, without lays; what is being laid for something older is given up. */
static void
compare (SqWaysFinder *finder)
{
  const SqJob *job = sq_document_get_job (finder->document);
  const SqCushion *cushion = sq_job_cushion (job, sq_selection_cushion (finder->selection));
  if (job == finder->job && (finder->ways != NULL ? finder->ways->cushion : NULL) == cushion)
    return;
  if (finder->laying != NULL)
    sq_background_stop (finder->laying);
  g_clear_pointer (&finder->ways, sq_ways_unref);
  g_clear_pointer (&finder->job, sq_job_unref);
  finder->job = sq_job_ref (job);
  if (cushion != NULL)
    finder->ways = sq_ways_new (job, cushion, FALSE, NULL);
  begin (finder);
}

static gboolean
on_later (gpointer data)
{
  SqWaysFinder *finder = data;
  finder->later = 0;
  compare (finder);
  say (finder);
  return G_SOURCE_REMOVE;
}

/* After the frame of a drag, not in it. */
static void
on_changed (SqWaysFinder *finder)
{
  if (finder->later == 0)
    finder->later = g_idle_add (on_later, finder);
}

const SqWays *
sq_ways_finder_get_ways (SqWaysFinder *finder)
{
  g_return_val_if_fail (SQ_IS_WAYS_FINDER (finder), NULL);
  compare (finder);
  return finder->ways;
}

SqWaysFinder *
sq_ways_finder_new (SqDocument *document, SqSelection *selection)
{
  SqWaysFinder *finder = g_object_new (SQ_TYPE_WAYS_FINDER, NULL);
  finder->document = g_object_ref (document);
  finder->selection = g_object_ref (selection);
  g_signal_connect_object (document, "changed", G_CALLBACK (on_changed), finder, G_CONNECT_SWAPPED);
  g_signal_connect_object (selection, "changed", G_CALLBACK (on_changed), finder,
                           G_CONNECT_SWAPPED);
  return finder;
}

static void
sq_ways_finder_dispose (GObject *object)
{
  SqWaysFinder *finder = SQ_WAYS_FINDER (object);
  g_clear_handle_id (&finder->later, g_source_remove);
  g_clear_pointer (&finder->laying, sq_background_drop);
  g_clear_object (&finder->document);
  g_clear_object (&finder->selection);
  G_OBJECT_CLASS (sq_ways_finder_parent_class)->dispose (object);
}

static void
sq_ways_finder_finalize (GObject *object)
{
  SqWaysFinder *finder = SQ_WAYS_FINDER (object);
  g_clear_pointer (&finder->ways, sq_ways_unref);
  g_clear_pointer (&finder->job, sq_job_unref);
  g_clear_pointer (&finder->laid_job, sq_job_unref);
  G_OBJECT_CLASS (sq_ways_finder_parent_class)->finalize (object);
}

static void
sq_ways_finder_class_init (SqWaysFinderClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_ways_finder_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_ways_finder_finalize;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
}

static void
sq_ways_finder_init (SqWaysFinder *finder)
{
  (void) finder;
}
