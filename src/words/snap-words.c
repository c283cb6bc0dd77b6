/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words/snap-words.h"

#include "words/lengths.h"
#include "words/piece-names.h"

#include <glib/gi18n.h>

/* What a reason that names an edge or a corner says; %s is its letters. */
static const char *
pattern_of (SqDragKind drag, const SqSnapReason *reason)
{
  switch (reason->kind)
    {
    case SQ_SNAP_SQUARE:
      return _ ("square to %s");
    case SQ_SNAP_PARALLEL:
      return _ ("parallel to %s");
    case SQ_SNAP_EQUAL_LENGTH:
      return _ ("as long as %s");
    case SQ_SNAP_ALIGNED:
      return _ ("in line with %s");
    case SQ_SNAP_STRAIGHT:
      return _ ("straight on from %s");
    case SQ_SNAP_SYMMETRY:
      return _ ("mirror image of %s");
    case SQ_SNAP_MIDDLE:
      return drag == SQ_DRAG_EDGE ? _ ("in line with the middle of %s")
                                  : _ ("over the middle of %s");
    case SQ_SNAP_EQUAL_RISE:
      return _ ("rises as %s");
    case SQ_SNAP_TANGENT:
      return _ ("smooth into %s");
    case SQ_SNAP_EQUAL_RADIUS:
      return _ ("round as %s");
    case SQ_SNAP_GRID:
    case SQ_SNAP_HALF_CIRCLE:
    case SQ_SNAP_SHARP:
    default:
      return NULL;
    }
}

/* Whether what it names is a corner, not an edge. */
static gboolean
is_corner (SqDragKind drag, SqSnapKind kind)
{
  return kind == SQ_SNAP_ALIGNED || kind == SQ_SNAP_STRAIGHT || kind == SQ_SNAP_EQUAL_RADIUS
         || (kind == SQ_SNAP_SYMMETRY && drag != SQ_DRAG_EDGE);
}

/* What a reason that names nothing says; NULL: it does name something. New text. */
static char *
words_alone (SqDragKind drag, const SqSnapReason *reason, const SqLengthStyle *style)
{
  SqLengthStyle with_unit = *style;
  with_unit.with_unit = TRUE;
  switch (reason->kind)
    {
    case SQ_SNAP_GRID:
      {
        g_autofree char *step = sq_words_length (reason->figure, &with_unit);
        /* Translators: %s is a length: the dragged thing moves by such steps. */
        return g_strdup_printf (_ ("steps of %s"), step);
      }
    case SQ_SNAP_HALF_CIRCLE:
      return g_strdup (_ ("half circle"));
    case SQ_SNAP_SHARP:
      return g_strdup (_ ("no rounding"));
    case SQ_SNAP_STRAIGHT:
      return drag == SQ_DRAG_BOW ? g_strdup (_ ("straight")) : NULL;
    case SQ_SNAP_SYMMETRY:
      return reason->other == 0 ? g_strdup (_ ("on the axis")) : NULL;
    case SQ_SNAP_SQUARE:
    case SQ_SNAP_PARALLEL:
    case SQ_SNAP_EQUAL_LENGTH:
    case SQ_SNAP_ALIGNED:
    case SQ_SNAP_MIDDLE:
    case SQ_SNAP_EQUAL_RISE:
    case SQ_SNAP_TANGENT:
    case SQ_SNAP_EQUAL_RADIUS:
    default:
      return NULL;
    }
}

char *
sq_words_snap_reason (const SqCushion *cushion, SqDragKind drag, const SqSnapReason *reason,
                      const SqLengthStyle *style)
{
  char *alone = words_alone (drag, reason, style);
  if (alone != NULL)
    return alone;
  g_autofree char *name = is_corner (drag, reason->kind)
                              ? sq_words_corner (cushion, reason->other)
                              : sq_words_edge_corners (cushion, reason->other);
  return g_strdup_printf (pattern_of (drag, reason), name);
}
