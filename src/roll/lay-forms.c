/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "roll/lay-forms.h"

/* Half a gap may lie beyond the cloth's edges: room for any. */
#define BEYOND_UM G_GINT64_CONSTANT (2000000000)

static SqLayForm
form_of (const SqLayTask *task, const SqLayKind *kind, guint pose)
{
  const SqLayItem *item = sq_lay_task_item (task, kind->first);
  const SqLayShape *shape = kind->shapes[pose];
  SqGridBox cut = sq_lay_cut_box (item, item->poses[pose]);
  SqLayForm form = { .length = shape->length,
                     .width = shape->width,
                     .cut = { (gint64) cut.min.x - shape->at.x, (gint64) cut.min.y - shape->at.y,
                              (gint64) cut.max.x - shape->at.x, (gint64) cut.max.y - shape->at.y },
                     .phases = g_new (SqLayPhase, MAX (task->strips->len, 1)) };

  for (guint i = 0; i < task->strips->len; i++)
    form.phases[i] = sq_lay_phase (item, item->poses[pose], shape->at, sq_lay_task_strip (task, i));
  return form;
}

SqLayForms *
sq_lay_forms_new (const SqLayKinds *kinds)
{
  SqLayForms *forms = g_new0 (SqLayForms, 1);

  forms->kinds = kinds;
  forms->of_kind = g_new0 (SqLayKindForms, MAX (kinds->kinds->len, 1));
  forms->least_length = forms->least_width = G_MAXINT64;
  for (guint i = 0; i < kinds->kinds->len; i++)
    {
      const SqLayKind *kind = sq_lay_kind (kinds, i);
      SqLayKindForms *own = &forms->of_kind[i];
      own->n = kind->n_shapes;
      own->forms = g_new (SqLayForm, MAX (own->n, 1));
      for (guint k = 0; k < own->n; k++)
        {
          own->forms[k] = form_of (kinds->task, kind, k);
          forms->least_length = MIN (forms->least_length, own->forms[k].length);
          forms->least_width = MIN (forms->least_width, own->forms[k].width);
        }
    }
  return forms;
}

void
sq_lay_forms_free (SqLayForms *forms)
{
  for (guint i = 0; i < forms->kinds->kinds->len; i++)
    {
      for (guint k = 0; k < forms->of_kind[i].n; k++)
        g_free (forms->of_kind[i].forms[k].phases);
      g_free (forms->of_kind[i].forms);
    }
  g_free (forms->of_kind);
  g_free (forms);
}

/* ---- rectangles ---------------------------------------------------------------------------- */

SqLayRect
sq_lay_strip_rect (const SqLayStrip *strip)
{
  return (SqLayRect){ -BEYOND_UM, -BEYOND_UM, sq_lay_strip_end (strip) + BEYOND_UM,
                      strip->width + BEYOND_UM };
}

SqLayRect
sq_lay_rect_on_cloth (const SqLayStrip *strip, const SqLayRect *rect)
{
  return (SqLayRect){ MAX (rect->x0, 0), MAX (rect->y0, 0),
                      MIN (rect->x1, sq_lay_strip_end (strip)), MIN (rect->y1, strip->width) };
}

double
sq_lay_rect_area (const SqLayRect *rect)
{
  return (double) (rect->x1 - rect->x0) * (double) (rect->y1 - rect->y0);
}

gboolean
sq_lay_rects_meet (const SqLayRect *a, const SqLayRect *b)
{
  return a->x0 < b->x1 && b->x0 < a->x1 && a->y0 < b->y1 && b->y0 < a->y1;
}

SqLayRect
sq_lay_form_rect (const SqLayForm *form, gint64 x, gint64 y)
{
  return (SqLayRect){ x + form->cut.x0, y + form->cut.y0, x + form->cut.x1, y + form->cut.y1 };
}

gboolean
sq_lay_form_room (const SqLayForm *form, const SqLayStrip *strip, const SqLayRect *rect,
                  SqLayRect *room)
{
  room->x0 = MAX (rect->x0 - form->cut.x0, 0);
  room->x1 = MIN (rect->x1 - form->cut.x1, sq_lay_strip_end (strip) - form->length);
  room->y0 = MAX (rect->y0 - form->cut.y0, 0);
  room->y1 = MIN (rect->y1 - form->cut.y1, strip->width - form->width);
  return room->x0 <= room->x1 && room->y0 <= room->y1;
}

/* ---- what has no place --------------------------------------------------------------------- */

/* Whether the pattern falls somewhere in @room. Rows take turns in two ways at most. */
static gboolean
falls_in (const SqLayPhase *phase, const SqLayRect *room)
{
  gint64 y = sq_lay_phase_next_y (phase, room->y0);

  for (guint i = 0; i < 2 && y <= room->y1; i++)
    {
      if (sq_lay_phase_next_x (phase, y, room->x0) <= room->x1)
        return TRUE;
      y = sq_lay_phase_next_y (phase, y + 1);
    }
  return FALSE;
}

SqUnlaidWhy
sq_lay_forms_why (const SqLayForms *forms, guint kind)
{
  const SqLayTask *task = forms->kinds->task;
  const SqLayKindForms *own = &forms->of_kind[kind];
  SqUnlaidWhy why = SQ_UNLAID_TOO_WIDE;

  for (guint i = 0; i < task->strips->len; i++)
    for (guint k = 0; k < own->n; k++)
      {
        const SqLayStrip *strip = sq_lay_task_strip (task, i);
        SqLayRect all = sq_lay_strip_rect (strip), room;
        if (!sq_lay_form_room (&own->forms[k], strip, &all, &room))
          continue;
        if (falls_in (&own->forms[k].phases[i], &room))
          return SQ_UNLAID_NO_ROOM;
        why = SQ_UNLAID_PATTERN;
      }
  return why;
}
