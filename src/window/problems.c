/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/problems.h"

#include "window/edits.h"
#include "window/figures.h"
#include "window/look.h"
#include "window/wide-offers.h"
#include "words/fixes.h"
#include "words/names.h"
#include "words/problems.h"

#include <glib/gi18n.h>

struct _SqProblems
{
  GtkWidget parent;
  SqDocument *document;
  SqSelection *selection;
  GtkWidget *scrolled, *list;
  char *shown; /* all the list says, to see whether it has changed */
};

G_DEFINE_TYPE (SqProblems, sq_problems, GTK_TYPE_WIDGET)

/* The list grows up to this (pixels), then it scrolls. */
#define MOST_HEIGHT 190
/* Sentences that are wrapped take the toolkit long to measure. */
#define MOST_ROWS 60

char *
sq_problems_count_words (const SqPlan *plan, int *worst)
{
  SqFigures figures = sq_plan_figures (plan);
  GString *text = g_string_new (NULL);
  const struct
  {
    guint n;
    const char *words;
    int severity;
  } kinds[] = {
    { figures.faults, ngettext ("%u error", "%u errors", figures.faults), SQ_FAULT },
    { figures.warnings, ngettext ("%u warning", "%u warnings", figures.warnings), SQ_WARNING },
    { figures.notes, ngettext ("%u note", "%u notes", figures.notes), SQ_NOTE },
  };
  int found = -1;
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (kinds[i].n > 0)
      {
        if (text->len > 0)
          g_string_append (text, ", ");
        g_string_append_printf (text, kinds[i].words, kinds[i].n);
        found = MAX (found, kinds[i].severity);
      }
  if (text->len == 0)
    g_string_append (text, _ ("No problems"));
  if (worst != NULL)
    *worst = found;
  return g_string_free (text, FALSE);
}

/* --- rows ---------------------------------------------------------------------------------- */

/* What a row, or a button in it, stands for. */
static const SqProblem *
problem_of (GtkWidget *widget)
{
  return g_object_get_data (G_OBJECT (widget), "problem");
}

static void
set_problem (GtkWidget *widget, const SqProblem *problem)
{
  g_object_set_data_full (G_OBJECT (widget), "problem", g_memdup2 (problem, sizeof *problem),
                          g_free);
}

static void
on_fix (GtkButton *button, SqProblems *problems)
{
  SqProblem problem = *problem_of (GTK_WIDGET (button)); /* the button goes with the edit */
  guint i = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "fix"));
  sq_edit_fix (problems->document, problem.place.cushion, &problem.fixes[i]);
}

static void
on_row (GtkListBox *list, GtkListBoxRow *row, SqProblems *problems)
{
  SqPlace place = problem_of (GTK_WIDGET (row))->place;
  (void) list;
  if (place.kind == SQ_AT_KEY || place.kind == SQ_AT_JOB)
    place.kind = SQ_AT_CUSHION;
  if (place.cushion != 0)
    sq_selection_choose (problems->selection, &place);
}

/* As high as its rows are at the width the window has. */
static void
set_height (SqProblems *problems)
{
  GtkWidget *root = GTK_WIDGET (gtk_widget_get_root (problems->scrolled));
  int width = gtk_widget_get_width (root), height;
  /* Before it is shown for the first time. */
  if (width <= 0)
    gtk_window_get_default_size (GTK_WINDOW (root), &width, &height);
  gtk_widget_measure (problems->list, GTK_ORIENTATION_VERTICAL, width, NULL, &height, NULL, NULL);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (problems->scrolled),
                                              MIN (height, MOST_HEIGHT));
}

/* Whether @problem is of a face that is too wide. */
static gboolean
is_wide (const SqProblem *problem)
{
  return problem->code == SQ_PROBLEM_WIDER_THAN_CLOTH
         || problem->code == SQ_PROBLEM_ACROSS_NO_PLACE;
}

/* What is offered for all of a cushion's faces stands with the first. */
static gboolean
is_first_wide (const SqPlan *plan, const SqProblem *problem)
{
  for (guint i = 0; i < plan->covers->len; i++)
    for (guint k = 0; k < sq_plan_cover (plan, i)->problems->len; k++)
      {
        const SqProblem *other = sq_cover_problem (sq_plan_cover (plan, i), k);
        if (is_wide (other) && other->place.cushion == problem->place.cushion)
          return other == problem;
      }
  return FALSE;
}

static void
add_fixes (SqProblems *problems, GtkWidget *line, const SqProblem *problem,
           const SqCushion *cushion, const SqLengthStyle *style)
{
  for (guint i = 0; i < SQ_N_FIXES && problem->fixes[i].kind != SQ_FIX_NONE; i++)
    {
      g_autofree char *words = sq_words_fix (&problem->fixes[i], cushion, style);
      GtkWidget *button = gtk_button_new_with_label (words);
      sq_look_set_label (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (button))), words);
      gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
      gtk_widget_add_css_class (button, "fix");
      set_problem (button, problem);
      g_object_set_data (G_OBJECT (button), "fix", GUINT_TO_POINTER (i));
      g_signal_connect (button, "clicked", G_CALLBACK (on_fix), problems);
      gtk_box_append (GTK_BOX (line), button);
    }
}

/* @text with what is offered below it. */
static GtkWidget *
with_offers (SqProblems *problems, const SqProblem *problem, GtkWidget *text)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  gtk_box_append (GTK_BOX (box), text);
  if (is_first_wide (sq_document_get_plan (problems->document), problem))
    gtk_box_append (GTK_BOX (box), sq_wide_offers_new (problems->document, problem->place.cushion));
  return box;
}

static const char *
severity_class (SqSeverity severity)
{
  static const char *const classes[] = { "note", "warning", "fault" };
  return classes[severity];
}

static void
add_row (SqProblems *problems, const SqCover *cover, const SqProblem *problem,
         const SqLengthStyle *style)
{
  const SqJob *job = sq_document_get_job (problems->document);
  GtkWidget *row = gtk_list_box_row_new ();
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *kind = gtk_label_new (sq_words_severity (problem->severity));
  g_autofree char *sentence = sq_words_problem (problem, cover, style);
  g_autofree char *cushion = sq_words_cover (job, cover);
  /* Translators: a cushion's name, and what is wrong with it. */
  g_autofree char *named = g_strdup_printf (_ ("%s: %s"), cushion, sentence);
  GtkWidget *text = gtk_label_new (NULL);
  sq_look_set_label (GTK_LABEL (text), job->cushions->len > 1 ? named : sentence);
  gtk_widget_add_css_class (kind, "severity");
  gtk_widget_add_css_class (kind, severity_class (problem->severity));
  gtk_widget_set_valign (kind, GTK_ALIGN_CENTER);
  gtk_label_set_width_chars (GTK_LABEL (kind), 8);
  gtk_label_set_xalign (GTK_LABEL (text), 0);
  gtk_label_set_wrap (GTK_LABEL (text), TRUE);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (text), GTK_NATURAL_WRAP_NONE);
  gtk_widget_set_hexpand (text, TRUE);
  gtk_box_append (GTK_BOX (line), kind);
  gtk_box_append (GTK_BOX (line), is_wide (problem) ? with_offers (problems, problem, text) : text);
  if (!is_wide (problem))
    add_fixes (problems, line, problem, cover->cushion, style);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), line);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  gtk_label_get_text (GTK_LABEL (text)), -1);
  set_problem (row, problem);
  gtk_list_box_append (GTK_LIST_BOX (problems->list), row);
}

/* --- the list ------------------------------------------------------------------------------ */

static void
clear (SqProblems *problems)
{
  GtkWidget *row;
  while ((row = gtk_widget_get_first_child (problems->list)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (problems->list), row);
}

/* Everything the rows would say and do: while it is the same they stay, and with them the
 * keyboard's focus. */
static char *
say_all (const SqPlan *plan, const SqLengthStyle *style)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < plan->covers->len; i++)
    {
      const SqCover *cover = sq_plan_cover (plan, i);
      for (guint k = 0; k < cover->problems->len; k++)
        {
          const SqProblem *problem = sq_cover_problem (cover, k);
          g_autofree char *sentence = sq_words_problem (problem, cover, style);
          g_string_append_printf (text, "%u %d %u %s", cover->cushion->id, problem->place.kind,
                                  problem->place.item, sentence);
          for (guint f = 0; f < SQ_N_FIXES; f++)
            g_string_append_printf (text, " %d %u %a", problem->fixes[f].kind,
                                    problem->fixes[f].item, problem->fixes[f].value);
        }
    }
  return g_string_free (text, FALSE);
}

/* That there are @n more, in a row that does nothing. */
static void
add_more (SqProblems *problems, guint n)
{
  GtkWidget *row = gtk_list_box_row_new ();
  g_autofree char *words = g_strdup_printf (ngettext ("and %u more", "and %u more", n), n);
  GtkWidget *text = gtk_label_new (words);
  gtk_label_set_xalign (GTK_LABEL (text), 0);
  gtk_widget_add_css_class (text, "dim");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), text);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), FALSE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  gtk_list_box_append (GTK_LIST_BOX (problems->list), row);
}

/* The worst first; so many rows at most. */
static void
fill (SqProblems *problems, const SqPlan *plan, const SqLengthStyle *style)
{
  guint n = 0;
  for (int severity = SQ_FAULT; severity >= SQ_NOTE; severity--)
    for (guint i = 0; i < plan->covers->len; i++)
      {
        const SqCover *cover = sq_plan_cover (plan, i);
        for (guint k = 0; k < cover->problems->len; k++)
          if ((int) sq_cover_problem (cover, k)->severity == severity && n++ < MOST_ROWS)
            add_row (problems, cover, sq_cover_problem (cover, k), style);
      }
  if (n > MOST_ROWS)
    add_more (problems, n - MOST_ROWS);
}

static void
follow (SqProblems *problems)
{
  const SqPlan *plan = sq_document_get_plan (problems->document);
  SqLengthStyle style = sq_figures_style (plan->job);
  g_autofree char *all = NULL;
  if (!gtk_widget_get_mapped (GTK_WIDGET (problems)))
    {
      g_clear_pointer (&problems->shown, g_free);
      return;
    }
  all = say_all (plan, &style);
  if (g_strcmp0 (all, problems->shown) == 0)
    return;
  g_free (problems->shown);
  problems->shown = g_steal_pointer (&all);
  clear (problems);
  fill (problems, plan, &style);
  set_height (problems);
}

static void
sq_problems_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sq_problems_parent_class)->map (widget);
  if (SQ_PROBLEMS (widget)->document != NULL)
    follow (SQ_PROBLEMS (widget));
}

void
sq_problems_set_document (SqProblems *problems, SqDocument *document, SqSelection *selection)
{
  g_return_if_fail (SQ_IS_PROBLEMS (problems));
  if (problems->document != NULL)
    g_signal_handlers_disconnect_by_data (problems->document, problems);
  g_set_object (&problems->document, document);
  g_set_object (&problems->selection, selection);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (follow), problems);
  follow (problems);
}

void
sq_problems_show (SqProblems *problems, const SqPlace *place)
{
  GtkWidget *row;
  g_return_if_fail (SQ_IS_PROBLEMS (problems) && place != NULL);
  for (row = gtk_widget_get_first_child (problems->list); row != NULL;
       row = gtk_widget_get_next_sibling (row))
    {
      const SqProblem *problem = problem_of (row);
      const SqPlace *own = problem != NULL ? &problem->place : NULL;
      if (own != NULL && own->cushion == place->cushion && own->kind == place->kind
          && own->item == place->item)
        {
          gtk_widget_grab_focus (row);
          gtk_window_set_focus_visible (GTK_WINDOW (gtk_widget_get_root (row)), TRUE);
          return;
        }
    }
}

static void
sq_problems_dispose (GObject *object)
{
  SqProblems *problems = SQ_PROBLEMS (object);
  sq_problems_set_document (problems, NULL, NULL);
  g_clear_pointer (&problems->scrolled, gtk_widget_unparent);
  G_OBJECT_CLASS (sq_problems_parent_class)->dispose (object);
}

static void
sq_problems_finalize (GObject *object)
{
  g_free (SQ_PROBLEMS (object)->shown);
  G_OBJECT_CLASS (sq_problems_parent_class)->finalize (object);
}

static void
sq_problems_class_init (SqProblemsClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_problems_dispose;
  G_OBJECT_CLASS (class)->finalize = sq_problems_finalize;
  widget_class->map = sq_problems_map;
  gtk_widget_class_set_css_name (widget_class, "problems");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
sq_problems_init (SqProblems *problems)
{
  problems->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (problems->list), GTK_SELECTION_NONE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (problems->list), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Problems"), -1);
  g_signal_connect (problems->list, "row-activated", G_CALLBACK (on_row), problems);
  problems->scrolled = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (problems->scrolled), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (problems->scrolled), problems->list);
  gtk_widget_set_parent (problems->scrolled, GTK_WIDGET (problems));
}
