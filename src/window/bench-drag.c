/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/bench-drag.h"

#include <stdlib.h>
#include <string.h>

/* Frames before anything is counted: fonts, caches. */
#define WARM_UP 40

/* Every so-many-th frame is compared with one drawn anew. */
#define COMPARE_EVERY 20

/* The corner goes round a circle of this radius, so many radians a frame (pixels). */
#define RADIUS 40
#define PACE 0.11

typedef enum
{
  RUN_WARM_UP,
  RUN_DRAG,
  RUN_DRAG_WHOLE,
  RUN_PAN,
  RUN_ZOOM,
  RUN_END,
} Run;

typedef struct
{
  SqWindow *window;
  SqCanvas *seat, *pieces, *roll;
  GdkFrameClock *clock;
  GskRenderer *renderer;
  SqPoint corner; /* where it stood */
  Run run;
  guint n, frame;
  gint64 began;
  GArray *times; /* of double: ms */
  guint n_compared, n_different, n_added;
} Bench;

static void (*draw_seat) (SqCanvas *canvas, GtkSnapshot *snapshot);
static void (*draw_pieces) (SqCanvas *canvas, GtkSnapshot *snapshot);
static void (*draw_roll) (SqCanvas *canvas, GtkSnapshot *snapshot);
static gboolean is_whole;

/* --- comparing ----------------------------------------------------------------------------- */

static guchar *
pixels_of (Bench *bench, SqCanvas *canvas, gboolean fresh, gsize *size)
{
  int width = gtk_widget_get_width (GTK_WIDGET (canvas));
  int height = gtk_widget_get_height (GTK_WIDGET (canvas));
  GskRenderNode *node = sq_canvas_record (canvas, fresh);
  g_autoptr (GdkTexture) texture = gsk_renderer_render_texture (
      bench->renderer, node, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  gsize stride = (gsize) width * 4;
  guchar *pixels;
  *size = stride * (gsize) height;
  pixels = g_malloc (*size);
  gdk_texture_download (texture, pixels, stride);
  gsk_render_node_unref (node);
  return pixels;
}

static void
compare (Bench *bench, SqCanvas *canvas)
{
  gsize size;
  g_autofree guchar *kept = pixels_of (bench, canvas, FALSE, &size);
  g_autofree guchar *fresh = pixels_of (bench, canvas, TRUE, &size);
  bench->n_compared++;
  if (memcmp (kept, fresh, size) != 0)
    bench->n_different++;
}

/* --- driving ------------------------------------------------------------------------------- */

/* A faint colour over all of it, another one each frame: so GTK paints all of it. */
static void
damage (SqCanvas *canvas, GtkSnapshot *snapshot)
{
  static guint frame;
  GdkRGBA colour = { (float) (frame++ % 7) / 7, 0, 0, 0.004F };
  if (is_whole)
    gtk_snapshot_append_color (
        snapshot, &colour,
        &GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (GTK_WIDGET (canvas)),
                             (float) gtk_widget_get_height (GTK_WIDGET (canvas))));
}

static void
draw_seat_damaged (SqCanvas *canvas, GtkSnapshot *snapshot)
{
  draw_seat (canvas, snapshot);
  damage (canvas, snapshot);
}

static void
draw_pieces_damaged (SqCanvas *canvas, GtkSnapshot *snapshot)
{
  draw_pieces (canvas, snapshot);
  damage (canvas, snapshot);
}

static void
draw_roll_damaged (SqCanvas *canvas, GtkSnapshot *snapshot)
{
  draw_roll (canvas, snapshot);
  damage (canvas, snapshot);
}

static void
drag (Bench *bench)
{
  double turn = bench->frame * PACE;
  SqCanvasClass *class = SQ_CANVAS_GET_CLASS (bench->seat);
  if (bench->frame == 0)
    class->press (bench->seat, bench->corner);
  class->drag (bench->seat, sq_add (bench->corner, sq_point (RADIUS * (cos (turn) - 1) / 2,
                                                             RADIUS * sin (turn) / 2)));
  if (is_whole)
    {
      gtk_widget_queue_draw (GTK_WIDGET (bench->pieces));
      gtk_widget_queue_draw (GTK_WIDGET (bench->roll));
    }
}

static void
step (Bench *bench)
{
  SqPoint middle = sq_point (gtk_widget_get_width (GTK_WIDGET (bench->seat)) / 2.0,
                             gtk_widget_get_height (GTK_WIDGET (bench->seat)) / 2.0);
  double back = bench->frame % 40 < 20 ? 1 : -1;
  switch (bench->run)
    {
    case RUN_WARM_UP:
    case RUN_DRAG:
    case RUN_DRAG_WHOLE:
      drag (bench);
      break;
    case RUN_PAN:
      sq_canvas_pan (bench->seat, 3 * back, 2 * back);
      sq_canvas_pan (bench->pieces, 3 * back, 2 * back);
      sq_canvas_pan (bench->roll, 3 * back, 2 * back);
      break;
    case RUN_ZOOM:
      sq_canvas_zoom (bench->seat, pow (1.02, back), middle);
      sq_canvas_zoom (bench->pieces, pow (1.02, back), middle);
      sq_canvas_zoom (bench->roll, pow (1.02, back), middle);
      break;
    case RUN_END:
    default:
      break;
    }
}

/* --- results ------------------------------------------------------------------------------- */

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;
  return (x > y) - (x < y);
}

static double
share (const GArray *sorted, double part)
{
  return g_array_index (sorted, double, (guint) ((sorted->len - 1) * part + 0.5));
}

static void
print_row (const Bench *bench)
{
  static const char *const names[] = { "warm-up", "window-drag", "window-drag-whole", "window-pan",
                                       "window-zoom" };
  const GArray *times = bench->times;
  g_array_sort (bench->times, compare_doubles);
  g_print ("%s\tms\t%u\t%.2f\t%.2f\t%.2f\t%.2f\t%.2f\n", names[bench->run], times->len,
           share (times, 0), share (times, 0.5), share (times, 0.9), share (times, 0.99),
           share (times, 1));
}

static void
finish (Bench *bench)
{
  g_print ("window-frames-compared\tcount\t%u\ndifferent\tcount\t%u\n", bench->n_compared,
           bench->n_different);
  g_print ("nodes-made-a-frame\tcount\t%.1f\n", (double) bench->n_added / bench->n);
  exit (bench->n_different > 0);
}

static guint
n_added (Bench *bench)
{
  return sq_kept_nodes_n_added (sq_canvas_get_kept (bench->seat))
         + sq_kept_nodes_n_added (sq_canvas_get_kept (bench->pieces))
         + sq_kept_nodes_n_added (sq_canvas_get_kept (bench->roll));
}

static void
next_run (Bench *bench)
{
  if (bench->run <= RUN_DRAG_WHOLE)
    {
      SQ_CANVAS_GET_CLASS (bench->seat)->release (bench->seat);
      if (bench->run == RUN_DRAG)
        bench->n_added = n_added (bench) - bench->n_added;
      sq_document_undo (sq_window_get_document (bench->window));
    }
  if (bench->run > RUN_WARM_UP)
    print_row (bench);
  g_array_set_size (bench->times, 0);
  bench->run++;
  bench->frame = 0;
  is_whole = bench->run == RUN_DRAG_WHOLE;
  if (bench->run == RUN_DRAG)
    bench->n_added = n_added (bench);
  if (bench->run == RUN_END)
    finish (bench);
}

/* --- frames -------------------------------------------------------------------------------- */

static void
on_before_paint (GdkFrameClock *clock, Bench *bench)
{
  (void) clock;
  bench->began = g_get_monotonic_time ();
}

static gboolean
on_tick (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  (void) widget, (void) clock;
  step (data);
  return G_SOURCE_CONTINUE;
}

static void
on_after_paint (GdkFrameClock *clock, Bench *bench)
{
  double ms = (double) (g_get_monotonic_time () - bench->began) / 1000;
  guint n = bench->run == RUN_WARM_UP ? WARM_UP : bench->n;
  (void) clock;
  g_array_append_val (bench->times, ms);
  bench->frame++;
  if (bench->run == RUN_DRAG && bench->frame % COMPARE_EVERY == 0)
    {
      compare (bench, bench->seat);
      compare (bench, bench->pieces);
      compare (bench, bench->roll);
    }
  if (bench->frame >= n)
    next_run (bench);
}

/* The window stands: the first corner but one is taken hold of. */
static gboolean
begin (gpointer data)
{
  Bench *bench = data;
  SqDocument *document = sq_window_get_document (bench->window);
  SqId cushion = sq_selection_cushion (sq_window_get_selection (bench->window));
  const SqCover *cover = sq_document_get_cover (document, cushion, NULL);
  guint n;
  const SqCorner *corners = sq_outline_ring (cover->cushion->outline, 0, &n);
  bench->seat = SQ_CANVAS (sq_window_get_seat (bench->window));
  bench->pieces = sq_window_get_pieces (bench->window);
  bench->roll = sq_window_get_roll (bench->window);
  draw_seat = SQ_CANVAS_GET_CLASS (bench->seat)->draw;
  draw_pieces = SQ_CANVAS_GET_CLASS (bench->pieces)->draw;
  draw_roll = SQ_CANVAS_GET_CLASS (bench->roll)->draw;
  SQ_CANVAS_GET_CLASS (bench->seat)->draw = draw_seat_damaged;
  SQ_CANVAS_GET_CLASS (bench->pieces)->draw = draw_pieces_damaged;
  SQ_CANVAS_GET_CLASS (bench->roll)->draw = draw_roll_damaged;
  sq_seat_canvas_corner_at (sq_window_get_seat (bench->window), corners[2 % n].id, &bench->corner);
  bench->renderer = gsk_cairo_renderer_new ();
  gsk_renderer_realize (bench->renderer, gtk_native_get_surface (GTK_NATIVE (bench->window)), NULL);
  bench->clock = gtk_widget_get_frame_clock (GTK_WIDGET (bench->window));
  g_print ("name\tunit\tn\tmin\tp50\tp90\tp99\tmax\n");
  g_signal_connect (bench->clock, "before-paint", G_CALLBACK (on_before_paint), bench);
  g_signal_connect (bench->clock, "after-paint", G_CALLBACK (on_after_paint), bench);
  gtk_widget_add_tick_callback (GTK_WIDGET (bench->window), on_tick, bench, NULL);
  return G_SOURCE_REMOVE;
}

void
sq_bench_drag (SqWindow *window)
{
  const char *asked = g_getenv ("SQUAB_BENCH");
  Bench *bench;
  if (asked == NULL || !g_str_has_prefix (asked, "drag:")
      || sq_window_get_document (window) == NULL)
    return;
  bench = g_new0 (Bench, 1);
  bench->window = window;
  bench->n = (guint) MAX (strtol (asked + strlen ("drag:"), NULL, 10), COMPARE_EVERY);
  bench->times = g_array_new (FALSE, FALSE, sizeof (double));
  g_timeout_add (1000, begin, bench); /* until it stands on the screen */
}
