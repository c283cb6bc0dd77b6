/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Open instances of laying polygons on a strip, as the literature passes them on: JSON with
 * `strip_height`, the strip's width, and `items[]`, each with `demand`, `allowed_orientations`
 * (degrees counter-clockwise; none: as it is drawn) and `shape.data`, a ring of [x, y]. Their units
 * are their own. */
#pragma once

#include "roll/lay.h"

typedef struct
{
  char *name;          /* the file's own, else what the file is called */
  double per_unit_mm;  /* a power of ten: what a unit of the instance is in the task, so that its
                         strip is 1,000 … 9,999 mm wide and a micrometre is fine enough */
  double strip_height; /* in units, as are the next */
  double area;         /* of all items as often as they are wanted */
  SqLayTask *task;     /* an item's tag is its place in the file */
} SqInstance;

/* The instance in the file @path; NULL with SQ_ERROR_READ, SQ_ERROR_SYNTAX, or SQ_ERROR_VALUE and a
 * message with the path of the key that is wrong. Keys that are not named above may be there. */
SqInstance *sq_instance_load (const char *path, GError **error);
void sq_instance_free (SqInstance *instance);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqInstance, sq_instance_free)

/* How long @lay, of the instance's task, is; the share of that length of the strip that lies under
 * items, reckoned from the file's own numbers: 0 … 1, 0 where nothing is laid. */
double sq_instance_length (const SqInstance *instance, const SqLay *lay);
double sq_instance_density (const SqInstance *instance, const SqLay *lay);
