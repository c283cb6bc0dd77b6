/* SPDX-License-Identifier: GPL-3.0-or-later */
/* squab-cut: Squab's work without its window. */
#include "command/lay.h"
#include "command/options.h"
#include "command/run.h"
#include "words/text-table.h"

#include <glib/gi18n.h>
#include <locale.h>
#include <stdio.h>

#define STATUS_NOT_DONE 2

/* The user's language; tests bring translations of their own. */
static void
set_language (void)
{
  const char *folder = g_getenv ("SQUAB_LOCALEDIR");

  setlocale (LC_ALL, "");
  bindtextdomain ("squab", folder != NULL ? folder : SQ_LOCALE_DIR);
  bind_textdomain_codeset ("squab", "UTF-8");
  textdomain ("squab");
}

/* One line says why nothing was done. */
static int
give_up (const GError *error)
{
  g_autofree char *line = sq_text_clean (error->message);

  fprintf (stderr, "squab-cut: %s\n", line);
  return STATUS_NOT_DONE;
}

static int
print (const char *text)
{
  return fputs (text, stdout) >= 0 && fflush (stdout) == 0 ? 0 : STATUS_NOT_DONE;
}

int
main (int argc, char **argv)
{
  g_autoptr (GError) error = NULL;
  SqOptions options;

  set_language ();
  if (!sq_options_read (&options, argc, argv, &error))
    return give_up (error);
  if (options.what == SQ_DO_HELP)
    return print (sq_options_help ());
  if (options.what == SQ_DO_VERSION)
    return print ("squab-cut " SQ_VERSION "\n");

  int status = options.what == SQ_DO_LAY ? sq_command_lay (&options, &error)
                                         : sq_command_run (&options, &error);
  return status < 0 ? give_up (error) : status;
}
