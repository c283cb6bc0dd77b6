/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window/rates-fields.h"

#include "base/units.h"
#include "window/edit-ways.h"
#include "window/figures.h"
#include "window/form.h"
#include "window/value-row.h"
#include "words/lengths.h"
#include "words/names.h"
#include "words/ways.h"

#include <glib/gi18n.h>
#include <math.h>

/* One field: a rate, or the price of a cloth or foam. */
typedef enum
{
  FIELD_RATE,
  FIELD_CLOTH,
  FIELD_FOAM,
} FieldKind;

typedef struct
{
  FieldKind kind;
  guint32 which; /* SqRate, SqId or SqFoamKind */
  SqValueRow *row;
} Field;

struct _SqRatesFields
{
  GtkWidget parent;
  SqDocument *document;
  GtkWidget *box, *rates, *prices;
  GArray *fields; /* of Field */
  char *made_for; /* which fields there are, and what they are called */
};

G_DEFINE_TYPE (SqRatesFields, sq_rates_fields, GTK_TYPE_WIDGET)

/* What a value in the job is multiplied by to be shown: prices and rates are by the metre there. */
static double
share_of (const Field *field, SqUnit unit)
{
  double yard_m = SQ_MM_PER_YARD / SQ_MM_PER_M, foot_m = SQ_MM_PER_FOOT / SQ_MM_PER_M;
  switch (field->kind)
    {
    case FIELD_RATE:
      return sq_words_rate_share ((SqRate) field->which, unit);
    case FIELD_CLOTH:
      return unit == SQ_UNIT_IN ? yard_m : 1;
    case FIELD_FOAM:
      return unit == SQ_UNIT_IN ? foot_m * foot_m * foot_m : 1;
    }
  g_return_val_if_reached (1);
}

static void
set (SqRatesFields *fields, const Field *field, const double *value)
{
  switch (field->kind)
    {
    case FIELD_RATE:
      sq_edit_rate (fields->document, (SqRate) field->which, value);
      break;
    case FIELD_CLOTH:
      sq_edit_cloth_price (fields->document, field->which, value);
      break;
    case FIELD_FOAM:
      sq_edit_foam_price (fields->document, (SqFoamKind) field->which, value);
      break;
    }
}

static const Field *
field_of (SqRatesFields *fields, SqValueRow *row)
{
  guint i = 0;
  while (g_array_index (fields->fields, Field, i).row != row)
    i++;
  return &g_array_index (fields->fields, Field, i);
}

static void
on_text (SqValueRow *row, const char *text, SqRatesFields *fields)
{
  const Field *field = field_of (fields, row);
  double value;
  if (!sq_words_read_number (text, sq_figures_decimal (), &value))
    {
      set (fields, field, NULL);
      return;
    }
  value /= share_of (field, sq_document_get_job (fields->document)->units);
  set (fields, field, &value);
}

static void
on_back (SqValueRow *row, SqRatesFields *fields)
{
  set (fields, field_of (fields, row), NULL);
}

static const char *
check (const char *text)
{
  double value;
  return text[0] == '\0' || sq_words_read_number (text, sq_figures_decimal (), &value)
             ? NULL
             : _ ("Type a number, without a sign of money.");
}

/* --- showing --------------------------------------------------------------------------------- */

/* The value that is given; NaN: none. */
static double
given_value (const SqJob *job, const Field *field)
{
  const SqCloth *cloth = sq_job_cloth (job, field->which);
  const SqFoam *foam = sq_job_foam (job, (SqFoamKind) field->which);
  switch (field->kind)
    {
    case FIELD_RATE:
      return sq_job_has_rate (job, (SqRate) field->which) ? job->rates.of[field->which] : NAN;
    case FIELD_CLOTH:
      return cloth != NULL && (cloth->given & SQ_GIVEN_CLOTH_PRICE) ? cloth->price : NAN;
    case FIELD_FOAM:
      return foam != NULL && (foam->given & SQ_GIVEN_FOAM_PRICE) ? foam->price : NAN;
    }
  g_return_val_if_reached (NAN);
}

/* Money with its cents, minutes without what says nothing. */
static char *
text_of (const Field *field, double value, const SqLengthStyle *style)
{
  gboolean is_money = field->kind != FIELD_RATE || field->which == SQ_RATE_WAGE;
  gboolean is_whole = fabs (value - round (value)) < 0.005;
  return sq_words_number (value, is_money ? 2 : is_whole ? 0 : 1, style);
}

static void
show_field (SqRatesFields *fields, const Field *field)
{
  const SqJob *job = sq_document_get_job (fields->document);
  SqLengthStyle style = sq_figures_style (job);
  double share = share_of (field, job->units), value = given_value (job, field);
  g_autofree char *usual = field->kind == FIELD_RATE ? text_of (
                               field, job->defaults.rates.of[field->which] * share, &style)
                                                     : g_strdup (_ ("none"));
  g_autofree char *text = isnan (value) ? g_strdup ("") : text_of (field, value * share, &style);
  sq_value_row_show_entry (field->row, text, usual, !isnan (value));
}

/* --- making ---------------------------------------------------------------------------------- */

static void
add (SqRatesFields *fields, GtkWidget *box, FieldKind kind, guint32 which, const char *name)
{
  Field field = { kind, which, SQ_VALUE_ROW (sq_value_row_new_number (name, check)) };
  g_signal_connect (field.row, "text", G_CALLBACK (on_text), fields);
  g_signal_connect (field.row, "back", G_CALLBACK (on_back), fields);
  gtk_box_append (GTK_BOX (box), GTK_WIDGET (field.row));
  g_array_append_val (fields->fields, field);
}

static void
add_cloths (SqRatesFields *fields, const SqJob *job)
{
  for (guint i = 0; i < job->cloths->len; i++)
    {
      const SqCloth *cloth = g_ptr_array_index (job->cloths, i);
      g_autofree char *name = sq_words_cloth (cloth);
      g_autofree char *label = g_strdup_printf (
          job->units == SQ_UNIT_IN ? _ ("%s, a yard") : _ ("%s, a metre"), name);
      add (fields, fields->prices, FIELD_CLOTH, cloth->id, label);
    }
}

/* Bits: of the foams that the cushions are filled with. */
static guint
foam_kinds (const SqJob *job)
{
  guint kinds = 0;
  for (guint i = 0; i < job->cushions->len; i++)
    {
      const SqCushion *cushion = g_ptr_array_index (job->cushions, i);
      kinds |= 1u << (cushion->given & SQ_GIVEN_FOAM_KIND ? cushion->foam.kind
                                                          : job->defaults.foam_kind);
    }
  return kinds;
}

static void
add_foams (SqRatesFields *fields, const SqJob *job)
{
  guint kinds = foam_kinds (job);
  for (guint kind = 0; kind < SQ_N_FOAM_KINDS; kind++)
    if (kinds & 1u << kind)
      {
        const char *name = sq_words_foam_kind ((SqFoamKind) kind);
        g_autofree char *label = g_strdup_printf (
            job->units == SQ_UNIT_IN ? _ ("%s, a cubic foot") : _ ("%s, a cubic metre"), name);
        add (fields, fields->prices, FIELD_FOAM, kind, label);
      }
}

/* Tells which fields @job needs and what they are called. New. */
static char *
needs_of (const SqJob *job)
{
  GString *needs = g_string_new (NULL);
  g_string_append_printf (needs, "%d %x", job->units, foam_kinds (job));
  for (guint i = 0; i < job->cloths->len; i++)
    {
      const SqCloth *cloth = g_ptr_array_index (job->cloths, i);
      g_string_append_printf (needs, " %u %s", cloth->id, cloth->name);
    }
  return g_string_free (needs, FALSE);
}

static void
make (SqRatesFields *fields)
{
  const SqJob *job = sq_document_get_job (fields->document);
  for (guint i = 0; i < fields->fields->len; i++)
    {
      GtkWidget *row = GTK_WIDGET (g_array_index (fields->fields, Field, i).row);
      gtk_box_remove (GTK_BOX (gtk_widget_get_parent (row)), row);
    }
  g_array_set_size (fields->fields, 0);
  for (SqRate rate = 0; rate < SQ_N_RATES; rate++)
    add (fields, fields->rates, FIELD_RATE, rate, sq_words_rate (rate, job->units));
  add_cloths (fields, job);
  add_foams (fields, job);
}

static void
follow (SqRatesFields *fields)
{
  g_autofree char *needs = needs_of (sq_document_get_job (fields->document));
  if (g_strcmp0 (needs, fields->made_for) != 0)
    {
      make (fields);
      g_free (fields->made_for);
      fields->made_for = g_steal_pointer (&needs);
    }
  for (guint i = 0; i < fields->fields->len; i++)
    show_field (fields, &g_array_index (fields->fields, Field, i));
}

GtkWidget *
sq_rates_fields_new (SqDocument *document)
{
  SqRatesFields *fields = g_object_new (SQ_TYPE_RATES_FIELDS, NULL);
  fields->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (follow), fields, G_CONNECT_SWAPPED);
  follow (fields);
  return GTK_WIDGET (fields);
}

static void
sq_rates_fields_dispose (GObject *object)
{
  SqRatesFields *fields = SQ_RATES_FIELDS (object);
  g_clear_pointer (&fields->box, gtk_widget_unparent);
  g_clear_object (&fields->document);
  g_clear_pointer (&fields->fields, g_array_unref);
  g_clear_pointer (&fields->made_for, g_free);
  G_OBJECT_CLASS (sq_rates_fields_parent_class)->dispose (object);
}

static void
sq_rates_fields_class_init (SqRatesFieldsClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_rates_fields_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

/* A column under a heading. */
static GtkWidget *
new_column (SqRatesFields *fields, const char *heading)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  gtk_widget_set_hexpand (box, TRUE);
  gtk_box_append (GTK_BOX (box), sq_form_heading (heading));
  gtk_box_append (GTK_BOX (fields->box), box);
  return box;
}

static void
sq_rates_fields_init (SqRatesFields *fields)
{
  fields->fields = g_array_new (FALSE, FALSE, sizeof (Field));
  fields->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 40);
  gtk_widget_add_css_class (fields->box, "rates-fields");
  gtk_box_set_homogeneous (GTK_BOX (fields->box), TRUE);
  gtk_widget_set_parent (fields->box, GTK_WIDGET (fields));
  fields->rates = new_column (fields, _ ("Minutes, and the wage"));
  fields->prices = new_column (fields, _ ("Prices"));
}
