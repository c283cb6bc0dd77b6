/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/kept-nodes.h"

#include <string.h>

typedef struct
{
  SqKeptKey key;
  gpointer subject;
  GDestroyNotify unref;
  GskRenderNode *node;
  guint frame; /* that last asked for it */
} Entry;

struct _SqKeptNodes
{
  GHashTable *entries; /* of Entry, by its key */
  guint frame, n_added;
};

static guint
key_hash (gconstpointer data)
{
  const SqKeptKey *key = data;
  guint hash = g_direct_hash (key->subject) * 31 + key->layer;
  for (guint i = 0; i < G_N_ELEMENTS (key->look); i++)
    hash = hash * 31 + g_double_hash (&key->look[i]);
  return hash;
}

static gboolean
key_equal (gconstpointer a, gconstpointer b)
{
  const SqKeptKey *x = a, *y = b;
  return x->subject == y->subject && x->layer == y->layer
         && memcmp (x->look, y->look, sizeof x->look) == 0;
}

static void
entry_free (gpointer data)
{
  Entry *entry = data;
  gsk_render_node_unref (entry->node);
  if (entry->subject != NULL)
    entry->unref (entry->subject);
  g_free (entry);
}

SqKeptNodes *
sq_kept_nodes_new (void)
{
  SqKeptNodes *kept = g_new0 (SqKeptNodes, 1);
  kept->entries = g_hash_table_new_full (key_hash, key_equal, NULL, entry_free);
  return kept;
}

void
sq_kept_nodes_free (SqKeptNodes *kept)
{
  g_hash_table_unref (kept->entries);
  g_free (kept);
}

void
sq_kept_nodes_begin (SqKeptNodes *kept)
{
  kept->frame++;
}

static gboolean
is_stale (gpointer key, gpointer value, gpointer data)
{
  const Entry *entry = value;
  const SqKeptNodes *kept = data;
  (void) key;
  return entry->frame != kept->frame;
}

void
sq_kept_nodes_end (SqKeptNodes *kept)
{
  g_hash_table_foreach_remove (kept->entries, is_stale, kept);
}

GskRenderNode *
sq_kept_nodes_find (SqKeptNodes *kept, const SqKeptKey *key)
{
  Entry *entry = g_hash_table_lookup (kept->entries, key);
  if (entry == NULL)
    return NULL;
  entry->frame = kept->frame;
  return entry->node;
}

GskRenderNode *
sq_kept_nodes_add (SqKeptNodes *kept, const SqKeptKey *key, gpointer subject, GDestroyNotify unref,
                   GskRenderNode *node)
{
  Entry *entry = g_new (Entry, 1);
  *entry = (Entry){ *key, subject, unref, node, kept->frame };
  g_hash_table_replace (kept->entries, &entry->key, entry);
  kept->n_added++;
  return node;
}

void
sq_kept_nodes_clear (SqKeptNodes *kept)
{
  g_hash_table_remove_all (kept->entries);
}

guint
sq_kept_nodes_n_added (const SqKeptNodes *kept)
{
  return kept->n_added;
}

guint
sq_kept_nodes_n_kept (const SqKeptNodes *kept)
{
  return g_hash_table_size (kept->entries);
}
