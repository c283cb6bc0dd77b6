/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/make-papers.h"

typedef struct
{
  guint kinds;
  SqKeptSpec *spec;
} Making;

static void
making_free (gpointer data)
{
  Making *making = data;
  sq_kept_spec_unref (making->spec);
  g_free (making);
}

static gpointer
ref_paper (gconstpointer paper, gpointer data)
{
  (void) data;
  return sq_paper_ref (paper);
}

static gpointer
make (SqBackground *background, gpointer data, const SqTask *watch)
{
  const Making *making = data;
  GPtrArray *papers = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_paper_unref);
  for (guint kind = 0; kind < SQ_N_PAPER_KINDS; kind++)
    {
      if (!(making->kinds & 1u << kind))
        continue;
      if (papers->len > 0)
        sq_background_publish (background, g_ptr_array_copy (papers, (GCopyFunc) ref_paper, NULL));
      g_ptr_array_add (papers, sq_paper_new ((SqPaperKind) kind, &making->spec->spec));
      if (!sq_task_step (watch, (kind + 1.0) / SQ_N_PAPER_KINDS))
        {
          g_ptr_array_unref (papers);
          return NULL;
        }
    }
  return papers;
}

SqBackground *
sq_make_papers (GObject *owner, guint kinds, SqKeptSpec *spec, SqBackgroundFound found)
{
  static const SqBackgroundWork work = { make, making_free, (GDestroyNotify) g_ptr_array_unref };
  Making *making = g_new (Making, 1);
  *making = (Making){ kinds, g_atomic_rc_box_acquire (spec) };
  return sq_background_begin (owner, &work, making, found);
}
