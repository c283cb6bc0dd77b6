/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/lay.h"

#include "base/number.h"
#include "command/put.h"
#include "command/timed-lay.h"
#include "exchange/instance-lay.h"
#include "words/text-table.h"

#include <glib/gi18n.h>
#include <stdio.h>

static const char *
why_text (SqUnlaidWhy why)
{
  switch (why)
    {
    case SQ_UNLAID_TOO_WIDE:
      return _ ("it is wider than the strip");
    case SQ_UNLAID_CROSSES:
      return _ ("its outline crosses itself");
    case SQ_UNLAID_PATTERN:
    case SQ_UNLAID_NO_ROOM:
      break;
    }
  return _ ("the strip is full");
}

static void
say_unlaid (const SqInstance *instance, const SqLay *lay)
{
  for (guint i = 0; i < lay->unlaid->len; i++)
    {
      const SqUnlaid *unlaid = &g_array_index (lay->unlaid, SqUnlaid, i);
      /* TRANSLATORS: an item's number, how many of it, and why. */
      fprintf (stderr, _ ("squab-cut: error: item %u (%u of it) is not laid: %s\n"),
               sq_lay_task_item (instance->task, unlaid->item)->tag, unlaid->count,
               why_text (unlaid->why));
    }
}

static gboolean
put_outs (const SqOptions *options, const SqInstance *instance, const SqLay *lay, GError **error)
{
  const char *plan = options->outs[SQ_OUT_PLAN], *svg = options->outs[SQ_OUT_SVG];

  return (plan == NULL || sq_put_text (plan, sq_instance_lay_json (instance, lay), error))
         && (svg == NULL || sq_put_text (svg, sq_instance_lay_svg (instance, lay), error));
}

/* For programs: always with a point. */
static gboolean
put_line (const SqInstance *instance, const SqLay *lay, double seconds, GError **error)
{
  char seconds_text[SQ_NUMBER_SIZE], density[SQ_NUMBER_SIZE], length[SQ_NUMBER_SIZE];
  g_autofree char *name = sq_text_clean (instance->name);

  g_ascii_formatd (seconds_text, sizeof seconds_text, "%.3f", seconds);
  g_ascii_formatd (density, sizeof density, "%.3f", 100 * sq_instance_density (instance, lay));
  sq_number_write (sq_instance_length (instance, lay), length);
  return sq_put_text ("-", g_strdup_printf ("%s %s %s %s\n", name, seconds_text, density, length),
                      error);
}

int
sq_command_lay (const SqOptions *options, GError **error)
{
  double seconds;
  g_autoptr (SqInstance) instance = sq_instance_load (options->file, error);
  if (instance == NULL)
    return -1;

  g_autoptr (SqLay) lay = sq_timed_lay (instance->task, options, &seconds);
  if (!put_outs (options, instance, lay, error)
      || (!sq_options_has_standard_output (options) && !put_line (instance, lay, seconds, error)))
    return -1;
  say_unlaid (instance, lay);
  return lay->unlaid->len > 0 ? 1 : 0;
}
