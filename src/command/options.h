/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the command line of squab-cut asks for. */
#pragma once

#include <glib.h>

typedef enum
{
  SQ_DO_HELP,
  SQ_DO_VERSION,
  SQ_DO_JOB,
} SqDo;

/* Texts are borrowed from the command line. */
typedef struct
{
  SqDo what;
  const char *file;  /* the job */
  const char *plan;  /* where to write the plan, "-": standard output; NULL: nowhere */
  const char *save;  /* the same for the job as it was opened */
  double flatten_mm; /* 0: arcs stay arcs */
} SqOptions;

/* Reads the command line into @options. FALSE with SQ_ERROR_USAGE, and a message in the user's
 * language, where it can't be followed. */
gboolean sq_options_read (SqOptions *options, int argc, char *const *argv, GError **error);

/* What --help prints. Static. */
const char *sq_options_help (void);
