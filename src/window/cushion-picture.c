/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/cushion-picture.h"

#include "drawing/cushion-scene.h"
#include "drawing/paint.h"
#include "drawing/piece-scene.h"
#include "drawing/seat-drawn.h"
#include "window/figures.h"
#include "window/look.h"

struct _SqCushionPicture
{
  GtkWidget parent;
  int width, height; /* wanted */
  SqCover *cover;
  SqCloth *cloth;
  guint32 plain;
  SqScene *made_up; /* NULL: it is shown from above */
  /* The node, and what it was made for. */
  GskRenderNode *node;
  const SqTheme *theme;
  int node_width, node_height;
};

G_DEFINE_TYPE (SqCushionPicture, sq_cushion_picture, GTK_TYPE_WIDGET)

/* Around the drawing (pixels), for its line. */
#define MARGIN 3

/* Lines of small drawings are finer. */
#define WEIGHT 0.7

/* The outlines of what is seen from above: finished, or as drawn. */
static GPtrArray *
rings_of (const SqCover *cover)
{
  GPtrArray *rings = g_ptr_array_new_with_free_func ((GDestroyNotify) sq_path_unref);
  const SqOutline *outline = cover->cushion->outline;
  if (cover->finished != NULL)
    for (guint i = 0; i < cover->finished->n_rings; i++)
      g_ptr_array_add (rings, sq_path_ref (cover->finished->rings[i].path));
  else
    for (guint i = 0; i < sq_outline_n_rings (outline); i++)
      {
        SqPath *ring = sq_seat_ring (outline, i);
        if (ring != NULL)
          g_ptr_array_add (rings, ring);
      }
  return rings;
}

static SqScene *
make_scene (SqCushionPicture *picture)
{
  SqSceneBuilder *builder = sq_scene_builder_new ();
  g_autoptr (GPtrArray) rings = rings_of (picture->cover);
  const SqPiece *face = sq_figures_face (picture->cover);
  gboolean has_colour = picture->cloth != NULL && (picture->cloth->given & SQ_GIVEN_CLOTH_COLOUR);
  sq_scene_begin_colour (builder, has_colour ? picture->cloth->colour : picture->plain, 1);
  for (guint i = 0; i < rings->len; i++)
    sq_scene_add_path (builder, g_ptr_array_index (rings, i));
  if (face != NULL && rings->len > 0 && picture->cloth != NULL
      && sq_cloth_is_striped (picture->cloth))
    sq_scene_add_stripes (builder, rings, picture->cloth, face->grain_rad, &face->phase, 1);
  sq_scene_begin_stroke (builder, SQ_PEN_INK);
  for (guint i = 0; i < rings->len; i++)
    sq_scene_add_path (builder, g_ptr_array_index (rings, i));
  return sq_scene_builder_end (builder);
}

static GskRenderNode *
make_node (SqCushionPicture *picture)
{
  g_autoptr (SqScene) scene = picture->made_up != NULL ? sq_scene_ref (picture->made_up)
                                                       : make_scene (picture);
  int width = gtk_widget_get_width (GTK_WIDGET (picture));
  int height = gtk_widget_get_height (GTK_WIDGET (picture));
  SqView view = sq_view_fit (sq_scene_box (scene), width, height, MARGIN);
  GskRenderNode *node = gsk_cairo_node_new (
      &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  cairo_t *cr = gsk_cairo_node_get_draw_context (node);
  view.weight = WEIGHT;
  sq_paint_scene (cr, &view, picture->theme, scene);
  cairo_destroy (cr);
  return node;
}

static void
sq_cushion_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SqCushionPicture *picture = SQ_CUSHION_PICTURE (widget);
  const SqTheme *theme = sq_look_theme (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  if (picture->cover == NULL)
    return;
  if (picture->theme != theme || picture->node_width != width || picture->node_height != height)
    g_clear_pointer (&picture->node, gsk_render_node_unref);
  picture->theme = theme;
  picture->node_width = width;
  picture->node_height = height;
  if (picture->node == NULL)
    picture->node = make_node (picture);
  gtk_snapshot_append_node (snapshot, picture->node);
}

static void
sq_cushion_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                            int *minimum, int *natural, int *minimum_baseline,
                            int *natural_baseline)
{
  SqCushionPicture *picture = SQ_CUSHION_PICTURE (widget);
  (void) for_size;
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? picture->width
                                                                  : picture->height;
  *minimum_baseline = *natural_baseline = -1;
}

void
sq_cushion_picture_show (SqCushionPicture *picture, const SqPlan *plan, guint i)
{
  SqCover *cover = plan != NULL ? sq_cover_ref (sq_plan_cover (plan, i)) : NULL;
  const SqCloth *cloth = plan != NULL ? sq_figures_face_cloth (plan, cover) : NULL;
  gboolean is_same = cover == picture->cover && cloth == picture->cloth;
  g_clear_pointer (&picture->cover, sq_cover_unref);
  g_clear_pointer (&picture->cloth, sq_cloth_unref);
  picture->cover = cover;
  picture->cloth = cloth != NULL ? sq_cloth_ref (cloth) : NULL;
  picture->plain = plan != NULL ? plan->job->defaults.cloth_colour : 0;
  if (is_same)
    return;
  g_clear_pointer (&picture->node, gsk_render_node_unref);
  gtk_widget_queue_draw (GTK_WIDGET (picture));
}

void
sq_cushion_picture_show_made_up (SqCushionPicture *picture, const SqPlan *plan, guint i)
{
  g_clear_pointer (&picture->made_up, sq_scene_unref);
  sq_cushion_picture_show (picture, plan, i);
  picture->made_up = sq_cushion_scene (plan, i, picture->plain);
  if (sq_scene_n_items (picture->made_up) == 0)
    g_clear_pointer (&picture->made_up, sq_scene_unref);
  g_clear_pointer (&picture->node, gsk_render_node_unref);
  gtk_widget_queue_draw (GTK_WIDGET (picture));
}

GtkWidget *
sq_cushion_picture_new (int width, int height)
{
  SqCushionPicture *picture = g_object_new (SQ_TYPE_CUSHION_PICTURE, NULL);
  picture->width = width;
  picture->height = height;
  return GTK_WIDGET (picture);
}

static void
sq_cushion_picture_finalize (GObject *object)
{
  SqCushionPicture *picture = SQ_CUSHION_PICTURE (object);
  g_clear_pointer (&picture->cover, sq_cover_unref);
  g_clear_pointer (&picture->cloth, sq_cloth_unref);
  g_clear_pointer (&picture->made_up, sq_scene_unref);
  g_clear_pointer (&picture->node, gsk_render_node_unref);
  G_OBJECT_CLASS (sq_cushion_picture_parent_class)->finalize (object);
}

static void
sq_cushion_picture_class_init (SqCushionPictureClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->finalize = sq_cushion_picture_finalize;
  widget_class->snapshot = sq_cushion_picture_snapshot;
  widget_class->measure = sq_cushion_picture_measure;
  /* What it shows stands beside it in words. */
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_PRESENTATION);
}

static void
sq_cushion_picture_init (SqCushionPicture *picture)
{
  (void) picture;
}
