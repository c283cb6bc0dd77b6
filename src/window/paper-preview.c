/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/paper-preview.h"

#include <glib/gi18n.h>

/* Around the page (pixels), for its shadow. */
#define MARGIN 14
#define SHADOW 6

struct _SqPaperPreview
{
  GtkWidget parent;
  GPtrArray *papers;
  guint page;
  GskRenderNode *node; /* of the page, and the scale it was made for */
  double node_scale;
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

guint
sq_paper_preview_page (SqPaperPreview *preview)
{
  g_return_val_if_fail (SQ_IS_PAPER_PREVIEW (preview), 0);
  return preview->page;
}

/* The paper of the page that is shown, and the page's place in it; NULL: none. */
static const SqPaper *
shown (SqPaperPreview *preview, guint *page)
{
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

static void
show (SqPaperPreview *preview)
{
  guint n = sq_paper_preview_n_pages (preview);
  g_autofree char *text = n > 0 ? g_strdup_printf (_ ("Page %u of %u"), preview->page + 1, n)
                                : g_strdup (_ ("No page"));
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
  preview->page = MIN (preview->page, n > 0 ? n - 1 : 0);
  show (preview);
}

void
sq_paper_preview_turn (SqPaperPreview *preview, int pages)
{
  int last = (int) sq_paper_preview_n_pages (preview) - 1;
  int page = CLAMP ((int) preview->page + pages, 0, MAX (last, 0));
  if (page == (int) preview->page)
    return;
  preview->page = (guint) page;
  show (preview);
}

/* The page as a node, its upper left corner at (0, 0). */
static GskRenderNode *
node_of (SqPaperPreview *preview, const SqPaper *paper, guint i, double scale)
{
  const SqPage *page = sq_paper_page (paper, i);
  graphene_rect_t area = GRAPHENE_RECT_INIT (0, 0, (float) (page->width_mm * scale),
                                             (float) (page->height_mm * scale));
  if (preview->node == NULL || preview->node_scale != scale)
    {
      forget_node (preview);
      preview->node = gsk_cairo_node_new (&area);
      preview->node_scale = scale;
      cairo_t *cr = gsk_cairo_node_get_draw_context (preview->node);
      cairo_set_source_rgb (cr, 1, 1, 1);
      cairo_paint (cr);
      sq_paper_paint_page (paper, i, cr, scale);
      cairo_destroy (cr);
    }
  return preview->node;
}

static void
sq_paper_preview_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SqPaperPreview *preview = SQ_PAPER_PREVIEW (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  const GdkRGBA black = { 0, 0, 0, 0.3F };
  guint i;
  const SqPaper *paper = shown (preview, &i);
  if (paper == NULL || width <= 2 * MARGIN || height <= 2 * MARGIN)
    return;
  const SqPage *page = sq_paper_page (paper, i);
  double scale = fmin ((width - 2 * MARGIN) / page->width_mm,
                       (height - 2 * MARGIN) / page->height_mm);
  double left = round ((width - page->width_mm * scale) / 2);
  double top = round ((height - page->height_mm * scale) / 2);
  GskRoundedRect outline;
  gsk_rounded_rect_init_from_rect (&outline,
                                   &GRAPHENE_RECT_INIT ((float) left, (float) top,
                                                        (float) (page->width_mm * scale),
                                                        (float) (page->height_mm * scale)),
                                   0);
  gtk_snapshot_append_outset_shadow (snapshot, &outline, &black, 0, 1, 0, SHADOW);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) left, (float) top));
  gtk_snapshot_append_node (snapshot, node_of (preview, paper, i, scale));
  gtk_snapshot_restore (snapshot);
}

static gboolean
on_key (GtkEventControllerKey *controller, guint keyval, guint code, GdkModifierType state,
        SqPaperPreview *preview)
{
  gboolean is_turned = gtk_widget_get_direction (GTK_WIDGET (preview)) == GTK_TEXT_DIR_RTL;
  (void) controller, (void) code, (void) state;
  switch (keyval)
    {
    case GDK_KEY_Right:
    case GDK_KEY_Left:
      sq_paper_preview_turn (preview, (keyval == GDK_KEY_Right) != is_turned ? 1 : -1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Page_Down:
    case GDK_KEY_Down:
    case GDK_KEY_space:
      sq_paper_preview_turn (preview, 1);
      return GDK_EVENT_STOP;
    case GDK_KEY_Page_Up:
    case GDK_KEY_Up:
      sq_paper_preview_turn (preview, -1);
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
  sq_paper_preview_turn (preview, dy > 0 ? 1 : dy < 0 ? -1 : 0);
  return GDK_EVENT_STOP;
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
  gtk_widget_set_focusable (GTK_WIDGET (preview), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (preview), GTK_OVERFLOW_HIDDEN);
  g_signal_connect (key, "key-pressed", G_CALLBACK (on_key), preview);
  g_signal_connect (scroll, "scroll", G_CALLBACK (on_scroll), preview);
  gtk_widget_add_controller (GTK_WIDGET (preview), key);
  gtk_widget_add_controller (GTK_WIDGET (preview), scroll);
}
