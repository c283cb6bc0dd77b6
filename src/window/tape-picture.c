/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/tape-picture.h"

#include "drawing/paint.h"
#include "drawing/seat-scene.h"
#include "window/figures.h"
#include "window/look.h"

struct _SqTapePicture
{
  GtkWidget parent;
  int width, height; /* wanted */
  SqPlan *plan;
  GArray *corners; /* of SqPoint */
};

G_DEFINE_TYPE (SqTapePicture, sq_tape_picture, GTK_TYPE_WIDGET)

/* Around the drawing, for its figures (em); their size in the desktop's (share), and how many of
 * them the picture is wide at least. */
#define MARGIN_EM 3.2
#define FIGURES_SIZE 0.85
#define MOST_EMS 21.0

static SqBox
box_of (SqTapePicture *picture)
{
  SqBox box = sq_box_empty ();
  if (picture->plan != NULL)
    return sq_figures_seat_box (sq_plan_cover (picture->plan, 0));
  for (guint i = 0; i < picture->corners->len; i++)
    box = sq_box_with (box, g_array_index (picture->corners, SqPoint, i));
  return box;
}

/* What is in sight of @view. */
static SqBox
room_of (SqTapePicture *picture, const SqView *view)
{
  int width = gtk_widget_get_width (GTK_WIDGET (picture));
  int height = gtk_widget_get_height (GTK_WIDGET (picture));
  SqBox box = sq_box_with (sq_box_empty (), sq_view_to_mm (view, sq_point (0, 0)));
  return sq_box_with (box, sq_view_to_mm (view, sq_point (width, height)));
}

static void
paint_seat (SqTapePicture *picture, cairo_t *cr, const SqView *view, const SqTheme *theme,
            double em)
{
  static const SqSeatLayer layers[] = { SQ_SEAT_FILL, SQ_SEAT_LINES, SQ_SEAT_DIMENSIONS };
  const SqCover *cover = sq_plan_cover (picture->plan, 0);
  SqSeatLook look = { .em_mm = em / view->scale,
                      .length = sq_figures_style (picture->plan->job),
                      .room = room_of (picture, view) };
  for (guint i = 0; i < G_N_ELEMENTS (layers); i++)
    {
      g_autoptr (SqScene) scene = sq_seat_scene (
          cover, sq_figures_face_cloth (picture->plan, cover), layers[i], &look);
      sq_paint_scene (cr, view, theme, scene);
    }
}

static void
paint_walk (SqTapePicture *picture, cairo_t *cr, const SqView *view, const SqTheme *theme)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  g_autoptr (SqScene) scene = NULL;
  sq_scene_begin_stroke (builder, SQ_PEN_INK);
  for (guint i = 0; i + 1 < picture->corners->len; i++)
    sq_scene_add_line (builder, g_array_index (picture->corners, SqPoint, i),
                       g_array_index (picture->corners, SqPoint, i + 1));
  scene = sq_scene_builder_end (builder);
  sq_paint_scene (cr, view, theme, scene);
}

static void
sq_tape_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SqTapePicture *picture = SQ_TAPE_PICTURE (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  const char *family;
  double em = fmin (FIGURES_SIZE * sq_look_em (widget, &family), width / MOST_EMS);
  SqView view = sq_view_fit (box_of (picture), width, height, MARGIN_EM * em);
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  view.font = family;
  if (picture->plan != NULL)
    paint_seat (picture, cr, &view, sq_look_theme (widget), em);
  else if (picture->corners->len > 1)
    paint_walk (picture, cr, &view, sq_look_theme (widget));
  cairo_destroy (cr);
}

static void
sq_tape_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                         int *natural, int *minimum_baseline, int *natural_baseline)
{
  SqTapePicture *picture = SQ_TAPE_PICTURE (widget);
  (void) for_size;
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? picture->width
                                                                  : picture->height;
  *minimum_baseline = *natural_baseline = -1;
}

void
sq_tape_picture_show (SqTapePicture *picture, const SqPlan *plan, const SqPoint *corners, guint n)
{
  g_return_if_fail (SQ_IS_TAPE_PICTURE (picture));
  g_clear_pointer (&picture->plan, sq_plan_unref);
  picture->plan = plan != NULL ? sq_plan_ref (plan) : NULL;
  g_array_set_size (picture->corners, 0);
  g_array_append_vals (picture->corners, corners, n);
  gtk_widget_queue_draw (GTK_WIDGET (picture));
}

GtkWidget *
sq_tape_picture_new (int width, int height)
{
  SqTapePicture *picture = g_object_new (SQ_TYPE_TAPE_PICTURE, NULL);
  picture->width = width;
  picture->height = height;
  return GTK_WIDGET (picture);
}

static void
sq_tape_picture_finalize (GObject *object)
{
  SqTapePicture *picture = SQ_TAPE_PICTURE (object);
  g_clear_pointer (&picture->plan, sq_plan_unref);
  g_array_unref (picture->corners);
  G_OBJECT_CLASS (sq_tape_picture_parent_class)->finalize (object);
}

static void
sq_tape_picture_class_init (SqTapePictureClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->finalize = sq_tape_picture_finalize;
  widget_class->snapshot = sq_tape_picture_snapshot;
  widget_class->measure = sq_tape_picture_measure;
  /* What it shows stands beside it in words. */
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
sq_tape_picture_init (SqTapePicture *picture)
{
  picture->corners = g_array_new (FALSE, FALSE, sizeof (SqPoint));
}
