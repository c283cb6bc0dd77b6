/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The one painter: a scene through a view onto a cairo context. Screen, print and files alike. */
#pragma once

#include <pango/pangocairo.h>

#include "drawing/scene.h"
#include "drawing/theme.h"

typedef enum
{
  SQ_MEDIUM_SCREEN, /* weights in pixels of the context's user space */
  SQ_MEDIUM_PAPER,  /* weights in mm: the context's unit is 1 / scale mm */
} SqMedium;

typedef struct
{
  double scale;   /* user units (pixels) per mm */
  SqPoint origin; /* where (0, 0) mm stands in user space, y down */
  SqMedium medium;
  const char *font; /* family, e.g. the desktop's; NULL: "Sans" */
  double weight;    /* of lines; 1 as usual, 0 counts as 1 */
} SqView;

/* A point in mm in the user space of @view; and back. */
SqPoint sq_view_to_device (const SqView *view, SqPoint mm);
SqPoint sq_view_to_mm (const SqView *view, SqPoint device);

/* The view in which @box fills @width × @height but for @margin on every side (user units), in the
 * middle. An empty @box gives scale 1. */
SqView sq_view_fit (SqBox box, double width, double height, double margin);

/* Paints @scene. The context's state is as before when it returns. */
void sq_paint_scene (cairo_t *cr, const SqView *view, const SqTheme *theme, const SqScene *scene);

/* Sets a 0xrrggbb colour as the source. */
void sq_paint_source (cairo_t *cr, guint32 rgb, double alpha);

/* Sets the figures before and after each fraction slash of @text small, the first ones raised, for
 * a font of @em user units: so it looks alike whether or not the font can do it itself (its own way
 * is switched off). For texts that others lay out; ours have it. */
void sq_paint_set_fractions (PangoAttrList *list, const char *text, double em);
