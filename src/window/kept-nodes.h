/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Render nodes kept from frame to frame. GTK compares a frame's nodes with those of the frame
 * before, and a node that is the very same one costs nothing: it is not even painted. So every
 * piece and layer has a node of its own, made anew only when what it shows has changed. */
#pragma once

#include <gtk/gtk.h>

/* What a node shows. */
typedef struct
{
  gconstpointer subject; /* the immutable value that is drawn, known by its pointer; NULL: none */
  guint layer;           /* the drawer's number for a part of it */
  double look[6];        /* everything else it depends on: scale, size of text, room … */
} SqKeptKey;

typedef struct _SqKeptNodes SqKeptNodes;

SqKeptNodes *sq_kept_nodes_new (void);
void sq_kept_nodes_free (SqKeptNodes *kept);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqKeptNodes, sq_kept_nodes_free)

/* A frame: begin, find or add every node it needs, end. Ending lets go of what was not asked for. */
void sq_kept_nodes_begin (SqKeptNodes *kept);
void sq_kept_nodes_end (SqKeptNodes *kept);

/* The node for @key, borrowed; NULL: none is kept. */
GskRenderNode *sq_kept_nodes_find (SqKeptNodes *kept, const SqKeptKey *key);

/* Keeps @node (taken) for @key. @subject, a reference to key->subject that is taken and given back
 * by @unref, makes sure that its pointer names nothing else meanwhile. Returns @node, borrowed. */
GskRenderNode *sq_kept_nodes_add (SqKeptNodes *kept, const SqKeptKey *key, gpointer subject,
                                  GDestroyNotify unref, GskRenderNode *node);

/* Forgets all: the colours have changed. */
void sq_kept_nodes_clear (SqKeptNodes *kept);

/* How many nodes were added since it is there, and how many it has. */
guint sq_kept_nodes_n_added (const SqKeptNodes *kept);
guint sq_kept_nodes_n_kept (const SqKeptNodes *kept);
