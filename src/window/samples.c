/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/samples.h"

#include <string.h>

/* As a beginner goes through them, from the plain to the peculiar. */
static const char *const order[] = {
  "square-seat.squab", "worked-plate.squab",   "bay-seat.squab",        "half-round.squab",
  "dining-pads.squab", "folded-stool.squab",   "berth-pair.squab",      "striped-bench.squab",
  "bow-seat.squab",    "window-seat.squab",    "wheelhouse-seat.squab", "pier-bench.squab",
  "cabin-pads.squab",  "berth-bolsters.squab", "round-pad.squab"
};

/* Where it comes; last if it isn't one of ours. */
static guint
rank (const char *name)
{
  guint i = 0;
  while (i < G_N_ELEMENTS (order) && strcmp (order[i], name) != 0)
    i++;
  return i;
}

static int
compare_names (gconstpointer a, gconstpointer b)
{
  g_autofree char *x = g_file_get_basename (*(GFile *const *) a);
  g_autofree char *y = g_file_get_basename (*(GFile *const *) b);
  int difference = (int) rank (x) - (int) rank (y);
  return difference != 0 ? difference : strcmp (x, y);
}

GPtrArray *
sq_samples_list (void)
{
  const char *data = g_getenv ("SQUAB_DATADIR");
  g_autofree char *folder = g_build_filename (data != NULL ? data : SQ_DATA_DIR, "samples", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  GPtrArray *files = g_ptr_array_new_with_free_func (g_object_unref);
  const char *name;
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".squab"))
      g_ptr_array_add (files, g_file_new_build_filename (folder, name, NULL));
  g_ptr_array_sort (files, compare_names);
  return files;
}
