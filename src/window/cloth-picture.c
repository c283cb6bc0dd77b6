/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/cloth-picture.h"

#include "drawing/paint.h"
#include "drawing/piece-scene.h"
#include "window/look.h"

struct _SqClothPicture
{
  GtkWidget parent;
  int width, height; /* wanted */
  SqCloth *cloth;
  guint32 plain;
  double span_mm;
};

G_DEFINE_TYPE (SqClothPicture, sq_cloth_picture, GTK_TYPE_WIDGET)

/* What is shown of a cloth without a pattern, and of one with it in repeats. */
#define PLAIN_SPAN_MM 300
#define SHOWN_REPEATS 2.5

double
sq_cloth_picture_span_mm (const SqCloth *cloth)
{
  double span = PLAIN_SPAN_MM;
  if (cloth == NULL)
    return span;
  if (cloth->repeat_across_mm > 0)
    return SHOWN_REPEATS * cloth->repeat_across_mm;
  for (guint i = 0; i < cloth->n_stripes; i++)
    span = fmax (span, cloth->stripes[i].at_mm + 2 * cloth->stripes[i].width_mm);
  return span;
}

static SqScene *
make_scene (SqClothPicture *picture, double width_mm, double height_mm)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  g_autoptr (SqPath) ring = sq_path_new_rectangle (0, 0, width_mm, height_mm);
  g_autoptr (GPtrArray) shape = g_ptr_array_new ();
  const SqPhase phase = { .across = TRUE, .along = TRUE };
  gboolean has_colour = picture->cloth != NULL && (picture->cloth->given & SQ_GIVEN_CLOTH_COLOUR);
  g_ptr_array_add (shape, ring);
  sq_scene_begin_colour (builder, has_colour ? picture->cloth->colour : picture->plain, 1);
  sq_scene_add_path (builder, ring);
  if (picture->cloth != NULL && sq_cloth_is_striped (picture->cloth))
    /* Along the roll is down, so that across it is from left to right. */
    sq_scene_add_stripes (builder, shape, picture->cloth, -M_PI / 2, &phase, 1);
  return sq_scene_builder_end (builder);
}

static void
sq_cloth_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SqClothPicture *picture = SQ_CLOTH_PICTURE (widget);
  float width = (float) gtk_widget_get_width (widget);
  float height = (float) gtk_widget_get_height (widget);
  double scale = width / picture->span_mm;
  graphene_rect_t area = GRAPHENE_RECT_INIT (0, 0, width, height);
  SqView view = { .scale = scale, .origin = sq_point (0, height), .weight = 1 };
  g_autoptr (SqScene) scene = NULL;
  cairo_t *cr;
  if (!(scale > 0))
    return;
  scene = make_scene (picture, picture->span_mm, height / scale);
  cr = gtk_snapshot_append_cairo (snapshot, &area);
  sq_paint_scene (cr, &view, sq_look_theme (widget), scene);
  cairo_destroy (cr);
}

static void
sq_cloth_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                          int *natural, int *minimum_baseline, int *natural_baseline)
{
  SqClothPicture *picture = SQ_CLOTH_PICTURE (widget);
  (void) for_size;
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? picture->width
                                                                  : picture->height;
  *minimum_baseline = *natural_baseline = -1;
}

void
sq_cloth_picture_show (SqClothPicture *picture, const SqCloth *cloth, guint32 plain, double span_mm)
{
  SqCloth *own = cloth != NULL ? sq_cloth_ref (cloth) : NULL;
  g_return_if_fail (SQ_IS_CLOTH_PICTURE (picture));
  g_clear_pointer (&picture->cloth, sq_cloth_unref);
  picture->cloth = own;
  picture->plain = plain;
  picture->span_mm = span_mm;
  gtk_widget_queue_draw (GTK_WIDGET (picture));
}

GtkWidget *
sq_cloth_picture_new (int width, int height)
{
  SqClothPicture *picture = g_object_new (SQ_TYPE_CLOTH_PICTURE, "overflow", GTK_OVERFLOW_HIDDEN,
                                          NULL);
  picture->width = width;
  picture->height = height;
  return GTK_WIDGET (picture);
}

static void
sq_cloth_picture_finalize (GObject *object)
{
  g_clear_pointer (&SQ_CLOTH_PICTURE (object)->cloth, sq_cloth_unref);
  G_OBJECT_CLASS (sq_cloth_picture_parent_class)->finalize (object);
}

static void
sq_cloth_picture_class_init (SqClothPictureClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->finalize = sq_cloth_picture_finalize;
  widget_class->snapshot = sq_cloth_picture_snapshot;
  widget_class->measure = sq_cloth_picture_measure;
  gtk_widget_class_set_css_name (widget_class, "clothpicture");
  /* What it shows stands beside it in words. */
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
sq_cloth_picture_init (SqClothPicture *picture)
{
  picture->span_mm = PLAIN_SPAN_MM;
}
