/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper-preview.h"

#include "words/paper-words.h"

#include <glib/gi18n.h>
#include <string.h>

/* Around the page (pixels), for its shadow. */
#define MARGIN 14
#define SHADOW 6

/* A page so many times as long as wide passes by, where it would otherwise be shown so many times
 * smaller. */
#define LONG 2
#define SMALLER 3
/* How far it passes with a key or a turn of the wheel, of what is seen of it. */
#define STEP 0.25

/* How the page lies in the preview, pixels. */
typedef struct
{
  double scale;         /* of a mm */
  double left, top;     /* of all of it: below 0 where it has passed by */
  double width, height; /* of all of it */
} Lie;

struct _SqPaperPreview
{
  GtkWidget parent;
  GPtrArray *papers;
  guint page;
  double passed;       /* of a long page, as a part of what can */
  GskRenderNode *node; /* of what is seen of the page, and how it then lay */
  Lie node_lie;
};

G_DEFINE_TYPE (SqPaperPreview, sq_paper_preview, GTK_TYPE_WIDGET)

static guint turned_signal;

guint
sq_paper_preview_n_pages (SqPaperPreview *preview)
{
  guint n = 0;
  g_return_val_if_fail (SQ_IS_PAPER_PREVIEW (preview), 0);
  for (guint i = 0; preview->papers != NULL && i < preview->papers->len; i++)
    n += ((const SqPaper *) g_ptr_array_index (preview->papers, i))->pages->len;
  return n;
}

const GPtrArray *
sq_paper_preview_get_papers (SqPaperPreview *preview)
{
  g_return_val_if_fail (SQ_IS_PAPER_PREVIEW (preview), NULL);
  return preview->papers;
}

guint
sq_paper_preview_page (SqPaperPreview *preview)
{
  g_return_val_if_fail (SQ_IS_PAPER_PREVIEW (preview), 0);
  return preview->page;
}

const SqPaper *
sq_paper_preview_paper (SqPaperPreview *preview, guint *page)
{
  g_return_val_if_fail (SQ_IS_PAPER_PREVIEW (preview), NULL);
  *page = preview->page;
  for (guint i = 0; preview->papers != NULL && i < preview->papers->len; i++)
    {
      const SqPaper *paper = g_ptr_array_index (preview->papers, i);
      if (*page < paper->pages->len)
        return paper;
      *page -= paper->pages->len;
    }
  return NULL;
}

static void
forget_node (SqPaperPreview *preview)
{
  g_clear_pointer (&preview->node, gsk_render_node_unref);
}

char *
sq_paper_preview_words (SqPaperPreview *preview)
{
  guint i, n = sq_paper_preview_n_pages (preview);
  const SqPaper *paper = sq_paper_preview_paper (preview, &i);
  if (paper == NULL)
    return g_strdup (_ ("No page"));
  /* Translators: a kind of paper, "Cut list"; of all pages that there are. */
  return g_strdup_printf (_ ("%s · page %u of %u"), sq_words_paper_kind (paper->kind),
                          preview->page + 1, n);
}

static void
show (SqPaperPreview *preview)
{
  g_autofree char *text = sq_paper_preview_words (preview);
  forget_node (preview);
  gtk_accessible_update_property (GTK_ACCESSIBLE (preview), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Preview"), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
  gtk_widget_queue_draw (GTK_WIDGET (preview));
  g_signal_emit (preview, turned_signal, 0);
}

void
sq_paper_preview_set_papers (SqPaperPreview *preview, GPtrArray *papers)
{
  guint n;
  g_return_if_fail (SQ_IS_PAPER_PREVIEW (preview));
  if (papers != NULL)
    g_ptr_array_ref (papers);
  g_clear_pointer (&preview->papers, g_ptr_array_unref);
  preview->papers = papers;
  n = sq_paper_preview_n_pages (preview);
  if (preview->page >= n)
    {
      preview->page = n > 0 ? n - 1 : 0;
      preview->passed = 0;
    }
  show (preview);
}

static void
go_to (SqPaperPreview *preview, guint page, double passed)
{
  preview->page = page;
  preview->passed = passed;
  show (preview);
}

void
sq_paper_preview_turn (SqPaperPreview *preview, int pages)
{
  int last = (int) sq_paper_preview_n_pages (preview) - 1;
  int page = CLAMP ((int) preview->page + pages, 0, MAX (last, 0));
  if (page != (int) preview->page)
    go_to (preview, (guint) page, 0);
}

/* To the first page of the paper after this one, or of this one, or of the one before where this is
 * its first page already. */
static void
turn_paper (SqPaperPreview *preview, gboolean is_forth)
{
  guint first = 0, before = 0;
  for (guint i = 0; preview->papers != NULL && i < preview->papers->len; i++)
    {
      guint n = ((const SqPaper *) g_ptr_array_index (preview->papers, i))->pages->len;
      if (is_forth && first > preview->page)
        {
          go_to (preview, first, 0);
          return;
        }
      if (first < preview->page)
        before = first;
      first += n;
    }
  if (!is_forth && preview->page > 0)
    go_to (preview, before, 0);
}

/* --- how it lies ----------------------------------------------------------------------------- */

/* FALSE: nothing is to be seen. */
static gboolean
lie_of (SqPaperPreview *preview, Lie *lie)
{
  double width = gtk_widget_get_width (GTK_WIDGET (preview)) - 2 * MARGIN;
  double height = gtk_widget_get_height (GTK_WIDGET (preview)) - 2 * MARGIN;
  guint i;
  const SqPaper *paper = sq_paper_preview_paper (preview, &i);
  if (paper == NULL || width <= 0 || height <= 0)
    return FALSE;
  const SqPage *page = sq_paper_page (paper, i);
  double across = width / page->width_mm, along = height / page->height_mm;
  gboolean is_high = page->height_mm > LONG * page->width_mm && across > SMALLER * along;
  gboolean is_wide = page->width_mm > LONG * page->height_mm && along > SMALLER * across;
  lie->scale = is_high || is_wide ? fmax (across, along) : fmin (across, along);
  lie->width = page->width_mm * lie->scale;
  lie->height = page->height_mm * lie->scale;
  lie->left = MARGIN + round ((width - lie->width) * (is_wide ? preview->passed : 0.5));
  lie->top = MARGIN + round ((height - lie->height) * (is_high ? preview->passed : 0.5));
  return TRUE;
}

/* How much of the page can pass by, in parts of what is seen of it; 0: all is seen. */
static double
beyond (SqPaperPreview *preview)
{
  double width = gtk_widget_get_width (GTK_WIDGET (preview)) - 2 * MARGIN;
  double height = gtk_widget_get_height (GTK_WIDGET (preview)) - 2 * MARGIN;
  Lie lie;
  if (!lie_of (preview, &lie))
    return 0;
  return fmax (fmax (lie.width / width, lie.height / height) - 1, 0);
}

/* A step along a page that is longer than is seen; over its end to the next one, over its start to the
 * end of the one before. */
static void
pass (SqPaperPreview *preview, gboolean is_forth)
{
  double most = beyond (preview);
  double passed = preview->passed + (most > 0 ? STEP / most : 0) * (is_forth ? 1 : -1);
  if (most > 0 && preview->passed < 1 && is_forth)
    go_to (preview, preview->page, fmin (passed, 1));
  else if (most > 0 && preview->passed > 0 && !is_forth)
    go_to (preview, preview->page, fmax (passed, 0));
  else if (is_forth)
    sq_paper_preview_turn (preview, 1);
  else if (preview->page > 0)
    go_to (preview, preview->page - 1, 1);
}

/* --- painting -------------------------------------------------------------------------------- */

/* What is seen of the page. A page may be so long that all of it would be too much for an image. */
static GskRenderNode *
node_of (SqPaperPreview *preview, const Lie *lie)
{
  graphene_rect_t all = GRAPHENE_RECT_INIT ((float) lie->left, (float) lie->top, (float) lie->width,
                                            (float) lie->height);
  graphene_rect_t here = GRAPHENE_RECT_INIT (0, 0,
                                             (float) gtk_widget_get_width (GTK_WIDGET (preview)),
                                             (float) gtk_widget_get_height (GTK_WIDGET (preview)));
  guint i;
  const SqPaper *paper = sq_paper_preview_paper (preview, &i);
  if (preview->node != NULL && memcmp (&preview->node_lie, lie, sizeof *lie) == 0)
    return preview->node;
  forget_node (preview);
  graphene_rect_intersection (&all, &here, &here);
  preview->node = gsk_cairo_node_new (&here);
  preview->node_lie = *lie;
  cairo_t *cr = gsk_cairo_node_get_draw_context (preview->node);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_translate (cr, lie->left, lie->top);
  sq_paper_paint_page (paper, i, cr, lie->scale);
  cairo_destroy (cr);
  return preview->node;
}

static void
sq_paper_preview_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SqPaperPreview *preview = SQ_PAPER_PREVIEW (widget);
  const GdkRGBA black = { 0, 0, 0, 0.3F };
  GskRoundedRect outline;
  Lie lie = { 0 };
  if (!lie_of (preview, &lie))
    return;
  gsk_rounded_rect_init_from_rect (&outline,
                                   &GRAPHENE_RECT_INIT ((float) lie.left, (float) lie.top,
                                                        (float) lie.width, (float) lie.height),
                                   0);
  gtk_snapshot_append_outset_shadow (snapshot, &outline, &black, 0, 1, 0, SHADOW);
  gtk_snapshot_append_node (snapshot, node_of (preview, &lie));
}

/* --- hands ----------------------------------------------------------------------------------- */

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
        SqPaperPreview *preview)
{
  gboolean is_turned = gtk_widget_get_direction (GTK_WIDGET (preview)) == GTK_TEXT_DIR_RTL;
  gboolean is_far = (state & GDK_CONTROL_MASK) != 0;
  (void) controller, (void) code;
  switch (keyval)
    {
    case GDK_KEY_Right:
    case GDK_KEY_Left:
      sq_paper_preview_turn (preview, (keyval == GDK_KEY_Right) != is_turned ? 1 : -1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Page_Down:
    case GDK_KEY_Page_Up:
      if (is_far)
        turn_paper (preview, keyval == GDK_KEY_Page_Down);
      else
        sq_paper_preview_turn (preview, keyval == GDK_KEY_Page_Down ? 1 : -1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Down:
    case GDK_KEY_space:
      pass (preview, TRUE);
      return GDK_EVENT_STOP;
    case GDK_KEY_Up:
      pass (preview, FALSE);
      return GDK_EVENT_STOP;
    case GDK_KEY_Home:
      sq_paper_preview_turn (preview, -(int) preview->page);
      return GDK_EVENT_STOP;
    case GDK_KEY_End:
      sq_paper_preview_turn (preview, (int) sq_paper_preview_n_pages (preview));
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static gboolean
on_scroll (GtkEventControllerScroll *controller, double dx, double dy, SqPaperPreview *preview)
{
  (void) controller, (void) dx;
  if (dy != 0)
    pass (preview, dy > 0);
  return GDK_EVENT_STOP;
}

static void
on_pressed (SqPaperPreview *preview)
{
  gtk_widget_grab_focus (GTK_WIDGET (preview));
}

static void
sq_paper_preview_dispose (GObject *object)
{
  SqPaperPreview *preview = SQ_PAPER_PREVIEW (object);
  forget_node (preview);
  g_clear_pointer (&preview->papers, g_ptr_array_unref);
  G_OBJECT_CLASS (sq_paper_preview_parent_class)->dispose (object);
}

static void
sq_paper_preview_class_init (SqPaperPreviewClass *class)
{
  G_OBJECT_CLASS (class)->dispose = sq_paper_preview_dispose;
  GTK_WIDGET_CLASS (class)->snapshot = sq_paper_preview_snapshot;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (class), "preview");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_IMG);
  turned_signal = g_signal_new ("turned", G_TYPE_FROM_CLASS (class), G_SIGNAL_RUN_LAST, 0, NULL,
                                NULL, NULL, G_TYPE_NONE, 0);
}

static void
sq_paper_preview_init (SqPaperPreview *preview)
{
  GtkEventController *key = gtk_event_controller_key_new ();
  GtkEventController *scroll = gtk_event_controller_scroll_new (
      GTK_EVENT_CONTROLLER_SCROLL_VERTICAL | GTK_EVENT_CONTROLLER_SCROLL_DISCRETE);
  GtkGesture *press = gtk_gesture_click_new ();
  gtk_widget_set_focusable (GTK_WIDGET (preview), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (preview), GTK_OVERFLOW_HIDDEN);
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_key), preview);
  g_signal_connect (scroll, "scroll", G_CALLBACK (on_scroll), preview);
  g_signal_connect_swapped (press, "pressed", G_CALLBACK (on_pressed), preview);
  gtk_widget_add_controller (GTK_WIDGET (preview), GTK_EVENT_CONTROLLER (press));
  gtk_widget_add_controller (GTK_WIDGET (preview), key);
  gtk_widget_add_controller (GTK_WIDGET (preview), scroll);
}
