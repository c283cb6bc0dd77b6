/* SPDX-License-Identifier: GPL-3.0-or-later */
/* squab: the window. */
#include "window/application.h"

#include <glib/gi18n.h>
#include <locale.h>
#include <malloc.h>

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

/* A frame is painted into large surfaces that are freed with it. Given back to the system each
 * time, their pages have to be fetched anew for every frame, which took half of its time. */
static void
keep_memory (void)
{
  mallopt (M_MMAP_THRESHOLD, 1 << 30);
  mallopt (M_TRIM_THRESHOLD, G_MAXINT);
  mallopt (M_TOP_PAD, 64 << 20);
}

int
main (int argc, char **argv)
{
  g_autoptr (SqApplication) application = NULL;
  keep_memory ();
  set_language ();
  g_set_application_name ("Squab");
  application = sq_application_new ();
  return g_application_run (G_APPLICATION (application), argc, argv);
}
