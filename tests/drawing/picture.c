/* SPDX-License-Identifier: GPL-3.0-or-later */
/* picture FILE.squab OUT.png [dark] [made-up] [WIDTHxHEIGHT] [CUSHION]: seat and pieces side by side
 * as the window shows them, to be looked at; made-up: the finished cushion instead of its seat. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "drawing/arrange.h"
#include "drawing/cushion-scene.h"
#include "drawing/paint.h"
#include "drawing/seat-scene.h"
#include "exchange/defaults-file.h"
#include "exchange/job-file.h"
#include "plan/plan.h"

#define EM 13.0
#define SEAT_SHARE 0.44
#define MADE_UP_SHARE 0.3

typedef struct
{
  cairo_t *cr;
  const SqTheme *theme;
  const SqPlan *plan;
  const SqCover *cover;
  SqLengthStyle style;
} Picture;

static void
paint_and_drop (const Picture *p, const SqView *view, SqScene *scene)
{
  sq_paint_scene (p->cr, view, p->theme, scene);
  sq_scene_unref (scene);
}

static void
paint_seat (const Picture *p, double width, double height)
{
  SqSeatLook look = { .em_mm = 1, .length = p->style };
  SqScene *lines = sq_seat_scene (p->cover, NULL, SQ_SEAT_LINES, &look);
  SqView view = sq_view_fit (sq_scene_box (lines), width, height, 5 * EM);
  const SqCloth *face = p->cover->pieces->len > 0
                            ? sq_plan_cloth (p->plan, sq_cover_piece (p->cover, 0)->cloth)
                            : NULL;
  sq_scene_unref (lines);
  look.em_mm = EM / view.scale;
  look.room.min = sq_view_to_mm (&view, sq_point (0, height));
  look.room.max = sq_view_to_mm (&view, sq_point (width, 0));
  cairo_save (p->cr);
  cairo_rectangle (p->cr, 0, 0, width, height);
  cairo_clip (p->cr);
  sq_paint_source (p->cr, p->theme->paper, 1);
  cairo_paint (p->cr);
  paint_and_drop (p, &view,
                  p->style.unit == SQ_UNIT_IN
                      ? sq_paper_grid_scene (look.room, 25.4, 12, 14 / view.scale)
                      : sq_paper_grid_scene (look.room, 10, 10, 14 / view.scale));
  for (int layer = SQ_SEAT_FILL; layer <= SQ_SEAT_DIMENSIONS; layer++)
    paint_and_drop (p, &view, sq_seat_scene (p->cover, face, (SqSeatLayer) layer, &look));
  cairo_restore (p->cr);
}

static void
paint_made_up (const Picture *p, guint cushion, double width, double height)
{
  SqScene *scene = sq_cushion_scene (p->plan, cushion, p->plan->job->defaults.cloth_colour);
  SqView view = sq_view_fit (sq_scene_box (scene), width, height, 2 * EM);

  sq_paint_source (p->cr, p->theme->paper, 1);
  cairo_rectangle (p->cr, 0, 0, width, height);
  cairo_fill (p->cr);
  paint_and_drop (p, &view, scene);
}

static void
paint_pieces (const Picture *p, double left, double width, double height)
{
  const GPtrArray *pieces = p->cover->pieces;
  g_autofree SqPieceLabel *labels = g_new0 (SqPieceLabel, pieces->len);
  SqTable table = { width, height, 22, 18, EM };
  for (guint i = 0; i < pieces->len; i++)
    sq_piece_label_init (&labels[i], p->cover, i, &p->style);
  g_autoptr (SqArrangement) a = sq_arrangement_new (pieces, labels, &table, NULL);
  sq_paint_source (p->cr, p->theme->table, 1);
  cairo_rectangle (p->cr, left, 0, width, height);
  cairo_fill (p->cr);
  for (guint i = 0; i < pieces->len; i++)
    {
      const SqPiece *piece = sq_cover_piece (p->cover, i);
      const SqCloth *cloth = sq_plan_cloth (p->plan, piece->cloth);
      SqVector offset = sq_scale (a->stands[i].offset, a->scale);
      SqView view = { .scale = a->scale, .origin = { left + offset.x, height - offset.y } };
      SqPieceLook look = { EM / a->scale };
      for (int layer = SQ_PIECE_CLOTH; layer <= SQ_PIECE_LABEL; layer++)
        paint_and_drop (p, &view,
                        sq_piece_scene (piece, cloth, p->plan->job->defaults.cloth_colour,
                                        (SqPieceLayer) layer, &labels[i], &look));
    }
  for (guint i = 0; i < pieces->len; i++)
    sq_piece_label_clear (&labels[i]);
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  SqDefaults defaults;
  Picture p = { .theme = sq_theme_light () };
  int width = 1280, height = 720;
  gboolean made_up = FALSE;
  guint cushion = 0;
  if (argc < 3)
    {
      fputs ("usage: picture FILE.squab OUT.png [dark] [made-up] [WIDTHxHEIGHT] [CUSHION]\n",
             stderr);
      return 2;
    }
  for (int i = 3; i < argc; i++)
    if (strcmp (argv[i], "dark") == 0)
      p.theme = sq_theme_dark ();
    else if (strcmp (argv[i], "made-up") == 0)
      made_up = TRUE;
    else if (strchr (argv[i], 'x') == NULL)
      cushion = (guint) atoi (argv[i]);
    else if (sscanf (argv[i], "%dx%d", &width, &height) != 2)
      return 2;
  sq_defaults_builtin (&defaults);
  g_autoptr (SqJob) job = sq_job_load (argv[1], &defaults, &error);
  if (job == NULL)
    {
      fprintf (stderr, "%s\n", error->message);
      return 2;
    }
  g_autoptr (SqPlan) plan = sq_plan_new (job, NULL);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  p.cr = cairo_create (surface);
  p.plan = plan;
  cushion = MIN (cushion, plan->covers->len - 1);
  p.cover = sq_plan_cover (plan, cushion);
  p.style = sq_length_style_default (job->units);
  p.style.set = TRUE;
  double left = (made_up ? MADE_UP_SHARE : SEAT_SHARE) * width;
  if (made_up)
    paint_made_up (&p, cushion, left, height);
  else
    paint_seat (&p, left, height);
  paint_pieces (&p, left, width - left, height);
  cairo_destroy (p.cr);
  cairo_status_t status = cairo_surface_write_to_png (surface, argv[2]);
  cairo_surface_destroy (surface);
  return status == CAIRO_STATUS_SUCCESS ? 0 : 2;
}
