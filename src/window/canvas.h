/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What seat and pieces have in common: a sheet that is looked at through a view which fits until
 * the user zooms, is moved by the middle button, space or two fingers, and draws layers of scenes
 * from kept nodes. */
#pragma once

#include "drawing/paint.h"
#include "window/kept-nodes.h"

#define SQ_TYPE_CANVAS (sq_canvas_get_type ())
G_DECLARE_DERIVABLE_TYPE (SqCanvas, sq_canvas, SQ, CANVAS, GtkWidget)

/* Points are in pixels of the widget, y down. */
struct _SqCanvasClass
{
  GtkWidgetClass parent_class;

  /* What is shown is long and low: a mouse's wheel moves it to the side, with Shift up and down. */
  gboolean is_long;

  /* The view that shows everything in a widget of this size. */
  SqView (*fit) (SqCanvas *canvas, int width, int height);
  /* Appends all that is to be seen; between sq_kept_nodes_begin() and _end(). */
  void (*draw) (SqCanvas *canvas, GtkSnapshot *snapshot);
  /* The first button went down; TRUE: what is there is dragged from now on. */
  gboolean (*press) (SqCanvas *canvas, SqPoint at);
  void (*drag) (SqCanvas *canvas, SqPoint at);
  void (*release) (SqCanvas *canvas);
  /* The pointer is at @at, or away (NULL). */
  void (*hover) (SqCanvas *canvas, const SqPoint *at);
  /* A key that zooms nothing and moves nothing, or any while something is dragged; TRUE: it was for
   * us. */
  gboolean (*key) (SqCanvas *canvas, guint keyval, GdkModifierType state);
};

const SqView *sq_canvas_get_view (SqCanvas *canvas);
/* Everything in sight, from now on also when the size changes. */
void sq_canvas_fit (SqCanvas *canvas);
gboolean sq_canvas_is_fitted (SqCanvas *canvas);
/* @factor times as large, @at stays where it is. */
void sq_canvas_zoom (SqCanvas *canvas, double factor, SqPoint at);
/* The same about the middle, for buttons and keys. */
void sq_canvas_zoom_step (SqCanvas *canvas, int steps);
void sq_canvas_pan (SqCanvas *canvas, double dx, double dy);
/* What was pressed is let go: later moves of this press mean nothing. */
void sq_canvas_let_go (SqCanvas *canvas);
gboolean sq_canvas_is_dragging (SqCanvas *canvas);
/* The modifier keys that are down. */
GdkModifierType sq_canvas_get_modifiers (SqCanvas *canvas);
/* How far from a thing a press still takes hold of it (pixels): a fingertip covers more. */
double sq_canvas_get_reach (SqCanvas *canvas);

/* Of this canvas as the desktop has it now: colours, and pixels of the desktop's font, as far as the
 * canvas has room for it. */
const SqTheme *sq_canvas_get_theme (SqCanvas *canvas);
double sq_canvas_get_em (SqCanvas *canvas);
SqKeptNodes *sq_canvas_get_kept (SqCanvas *canvas);

/* One layer: what it shows, and how its scene is made where no node is kept. Scale, size of text
 * and theme are taken care of. */
typedef struct
{
  gconstpointer subject;
  gpointer (*ref) (gconstpointer subject); /* NULL where subject is */
  GDestroyNotify unref;
  guint layer;
  double look[4];
  double weight; /* of lines; 0: as usual */
  SqScene *(*make) (SqCanvas *canvas, gconstpointer data);
  gconstpointer data;
} SqLayer;

/* Appends @layer, (0, 0) mm being at the snapshot's own origin. */
void sq_canvas_append (SqCanvas *canvas, GtkSnapshot *snapshot, const SqLayer *layer);
/* The same for a scene that is another one in each frame. */
void sq_canvas_append_scene (SqCanvas *canvas, GtkSnapshot *snapshot, const SqScene *scene);

/* The node of the whole canvas, new; @fresh: with every layer made anew, keeping nothing. For
 * tests that compare both. */
GskRenderNode *sq_canvas_record (SqCanvas *canvas, gboolean fresh);
